package design

import (
	"bytes"
	"fmt"
	"reflect"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
)

// survey is a first walk over a file: it notes on which line each key stands
// and finds keys and kinds of value that have no place in a design. The TOML
// library alone would take a bare number for a length, and names a key that is
// given twice without its table.
type survey struct {
	parser unstable.Parser
	file   string
	lines  map[string]int // by path
	begun  map[string]int // how many [[ ]] of a path have been begun
	table  place          // the one whose keys are being read

	passed, line int // bytes already counted, and the line on which they end
}

func newSurvey(data []byte, file string) *survey {
	s := &survey{file: file, lines: make(map[string]int, 200), begun: map[string]int{}, table: wholeFile(), line: 1}
	s.parser.Reset(data)
	return s
}

// walk goes through the file up to the first fault. It stops without one where
// the file cannot be read; the reading proper says why.
func (s *survey) walk() (fault *wording.Fault) {
	defer func() {
		switch f := recover().(type) {
		case nil:
		case *wording.Fault:
			fault = f
		default:
			panic(f)
		}
	}()
	for s.parser.NextExpression() {
		switch e := s.parser.Expression(); e.Kind {
		case unstable.Table, unstable.ArrayTable:
			s.header(e)
		case unstable.KeyValue:
			s.entry(s.table, e)
		}
	}
	return nil
}

// lineOf returns the line on which a path stands, or the table it belongs in
// when it is not given; 0 when that is not given either.
func (s *survey) lineOf(path string) int {
	for path != "" && s.lines[path] == 0 {
		path = path[:max(0, len(path)-len(last(path))-1)]
	}
	return s.lines[path]
}

func (s *survey) given(path string) bool { return s.lines[path] != 0 }

// begins reports whether a table, or any key of it, stands in the file.
func (s *survey) begins(table string) bool {
	key := table + "."
	for path := range s.lines {
		if path == table || strings.HasPrefix(path, key) {
			return true
		}
	}
	return false
}

// lineAt counts on to the place of n. Nodes must be asked for in the order of
// the file; some have no place of their own and stand on the line before them.
func (s *survey) lineAt(n *unstable.Node) {
	if to := int(n.Raw.Offset); to > s.passed {
		s.line += bytes.Count(s.parser.Data()[s.passed:to], []byte("\n"))
		s.passed = to
	}
}

// fail leaves the walk.
func (s *survey) fail(at place, format string, args ...any) {
	panic(&wording.Fault{File: s.file, Line: s.line, Key: at.name, Text: fmt.Sprintf(format, args...)})
}

func (s *survey) header(e *unstable.Node) {
	at := wholeFile()
	for it := e.Key(); it.Next(); {
		double := it.IsLast() && e.Kind == unstable.ArrayTable
		at = s.tableIn(at, it.Node(), double)
		if double && !at.isTables() {
			s.fail(at, "there is only one; begin it with single brackets, [%s]", at.name)
		}
		if double {
			s.begun[at.path]++
			at = at.numbered(s.begun[at.path] - 1)
		}
	}
	s.table = at
	s.note(at, "is begun twice, first on line %d; put all its keys there")
}

// tableIn goes into a table of a table; a list of tables must be meant where there may
// be several.
func (s *survey) tableIn(at place, key *unstable.Node, several bool) place {
	s.lineAt(key)
	at = at.child(string(key.Data))
	switch {
	case at.typ == nil:
		s.fail(at, "no such key; the nearest known key is %s", nearestKey(at.name))
	case tableOf(at.typ) == nil:
		s.fail(at, "takes %s, not a table of its own", kindOf(at.typ))
	case at.isTables() && !several:
		s.fail(at, "there may be several; begin each with double brackets, [[%s]]", at.name)
	}
	return at
}

// note keeps the line of a place, which must not have been met before.
func (s *survey) note(at place, twice string) {
	if first := s.lines[at.path]; first != 0 {
		s.fail(at, twice, first)
	}
	s.lines[at.path] = s.line
}

func (s *survey) entry(at place, kv *unstable.Node) {
	for it := kv.Key(); it.Next(); {
		if !it.IsLast() {
			at = s.tableIn(at, it.Node(), false)
			continue
		}
		s.lineAt(it.Node())
		if at = at.child(string(it.Node().Data)); at.typ == nil {
			s.fail(at, "no such key; the nearest known key is %s", nearestKey(at.name))
		}
	}
	s.note(at, "is given twice, first on line %d; keep one")
	s.value(at, kv.Value())
}

// value checks that a value is of the kind that its key takes.
func (s *survey) value(at place, v *unstable.Node) {
	s.lineAt(v)
	switch {
	case at.typ.Kind() == reflect.Struct && v.Kind == unstable.InlineTable:
		for it := v.Children(); it.Next(); {
			s.entry(at, it.Node())
		}
	case at.typ.Kind() == reflect.Slice && v.Kind == unstable.Array:
		i := 0
		for it := v.Children(); it.Next(); i++ {
			s.value(at.numbered(i), it.Node())
		}
	case !fits(at.typ, v.Kind):
		s.misfit(at, v)
	}
}

func fits(t reflect.Type, k unstable.Kind) bool {
	switch {
	case isMeasure(t), isChoice(t), t.Kind() == reflect.String:
		return k == unstable.String
	case t.Kind() == reflect.Bool:
		return k == unstable.Bool
	case t.Kind() == reflect.Int:
		return k == unstable.Integer
	case t.Kind() == reflect.Float64:
		return k == unstable.Integer || k == unstable.Float
	}
	return false
}

func isMeasure(t reflect.Type) bool {
	return t == reflect.TypeFor[measure.Length]() || t == reflect.TypeFor[measure.Angle]()
}

// misfit says what stands where something else should.
func (s *survey) misfit(at place, v *unstable.Node) {
	shown := wording.Clip(string(v.Data), 40)
	switch v.Kind {
	case unstable.Integer, unstable.Float:
		if isMeasure(at.typ) {
			s.fail(at, "%s has no unit; takes %s", shown, kindOf(at.typ))
		}
	case unstable.String:
		shown = fmt.Sprintf("%q", shown)
	case unstable.Array:
		shown = "a list"
	case unstable.InlineTable:
		shown = "a table"
	}
	s.fail(at, "takes %s, not %s", kindOf(at.typ), shown)
}
