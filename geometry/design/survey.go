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
	s := &survey{file: file, lines: map[string]int{}, begun: map[string]int{}, table: wholeFile(), line: 1}
	s.parser.Reset(data)
	return s
}

// walk goes through the file up to the first fault. It stops without one where
// the file cannot be read; the reading proper says why.
func (s *survey) walk() *Fault {
	for s.parser.NextExpression() {
		var f *Fault
		switch e := s.parser.Expression(); e.Kind {
		case unstable.Table, unstable.ArrayTable:
			f = s.header(e)
		case unstable.KeyValue:
			f = s.entry(s.table, e)
		}
		if f != nil {
			return f
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

// given reports whether a path stands in the file.
func (s *survey) given(path string) bool { return s.lines[path] != 0 }

// begins reports whether a table, or any key of it, stands in the file.
func (s *survey) begins(table string) bool {
	for path := range s.lines {
		if path == table || strings.HasPrefix(path, table+".") {
			return true
		}
	}
	return false
}

// lineAt counts on to the place of n. Nodes must be asked for in the order of
// the file; some have no place of their own and stand on the line before them.
func (s *survey) lineAt(n *unstable.Node) int {
	if to := int(n.Raw.Offset); to > s.passed {
		s.line += bytes.Count(s.parser.Data()[s.passed:to], []byte("\n"))
		s.passed = to
	}
	return s.line
}

func (s *survey) fault(at place, format string, args ...any) *Fault {
	return &Fault{File: s.file, Line: s.line, Key: at.name, Text: fmt.Sprintf(format, args...)}
}

// header takes the table that a line begins.
func (s *survey) header(e *unstable.Node) *Fault {
	at := wholeFile()
	for it := e.Key(); it.Next(); {
		s.lineAt(it.Node())
		at = at.child(string(it.Node().Data))
		if f := s.checkTable(at); f != nil {
			return f
		}
		double := it.IsLast() && e.Kind == unstable.ArrayTable
		switch {
		case double && !at.isTables():
			return s.fault(at, "there is only one; begin it with single brackets, [%s]", at.name)
		case double:
			s.begun[at.path]++
			at = at.numbered(s.begun[at.path] - 1)
		case at.isTables():
			return s.fault(at, "there may be several; begin each with double brackets, [[%s]]", at.name)
		}
	}
	s.table = at
	if first := s.lines[at.path]; first != 0 {
		return s.fault(at, "is begun twice, first on line %d; put all its keys there", first)
	}
	s.lines[at.path] = s.line
	return nil
}

// checkTable refuses what is unknown or no table.
func (s *survey) checkTable(at place) *Fault {
	switch {
	case at.typ == nil:
		return s.fault(at, "no such key; the nearest known key is %s", nearestKey(at.name))
	case tableOf(at.typ) == nil:
		return s.fault(at, "takes %s, not a table of its own", kindOf(at.typ))
	}
	return nil
}

// entry takes a key with its value, in a table or in braces.
func (s *survey) entry(at place, kv *unstable.Node) *Fault {
	for it := kv.Key(); it.Next(); {
		s.lineAt(it.Node())
		at = at.child(string(it.Node().Data))
		if at.typ == nil {
			return s.fault(at, "no such key; the nearest known key is %s", nearestKey(at.name))
		}
		if it.IsLast() {
			break
		}
		if f := s.checkTable(at); f != nil {
			return f
		}
		if at.isTables() {
			return s.fault(at, "there may be several; begin each with double brackets, [[%s]]", at.name)
		}
	}
	if first := s.lines[at.path]; first != 0 {
		return s.fault(at, "is given twice, first on line %d; keep one", first)
	}
	s.lines[at.path] = s.line
	return s.value(at, kv.Value())
}

// value checks that a value is of the kind that its key takes.
func (s *survey) value(at place, v *unstable.Node) *Fault {
	s.lineAt(v)
	switch {
	case at.typ.Kind() == reflect.Struct && v.Kind == unstable.InlineTable:
		for it := v.Children(); it.Next(); {
			if f := s.entry(at, it.Node()); f != nil {
				return f
			}
		}
		return nil
	case at.typ.Kind() == reflect.Slice && v.Kind == unstable.Array:
		i := 0
		for it := v.Children(); it.Next(); i++ {
			if f := s.value(at.numbered(i), it.Node()); f != nil {
				return f
			}
		}
		return nil
	case fits(at.typ, v.Kind):
		return nil
	}
	return s.misfit(at, v)
}

// fits reports whether a plain value is of the kind that a type takes.
func fits(t reflect.Type, k unstable.Kind) bool {
	switch {
	case isMeasure(t), t == reflect.TypeFor[Kind](), t == reflect.TypeFor[Posture](), t == reflect.TypeFor[Rig](), t == reflect.TypeFor[Body](), t.Kind() == reflect.String:
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
func (s *survey) misfit(at place, v *unstable.Node) *Fault {
	shown := wording.Clip(string(v.Data), 40)
	switch v.Kind {
	case unstable.Integer, unstable.Float:
		if isMeasure(at.typ) {
			return s.fault(at, "%s has no unit; takes %s", shown, kindOf(at.typ))
		}
	case unstable.String:
		shown = fmt.Sprintf("%q", shown)
	case unstable.Array:
		shown = "a list"
	case unstable.InlineTable:
		shown = "a table"
	}
	return s.fault(at, "takes %s, not %s", kindOf(at.typ), shown)
}
