package design

import (
	"encoding"
	"fmt"
	"reflect"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"ribwright/geometry/measure"
)

// Key describes one key of the design file.
type Key struct {
	Name string // with its table, "ribs.thickness"
	Want string // the kind of value it takes, in words
	Doc  string // what it means
}

// Keys lists every key of the design file in the order of the types.
func Keys() []Key { return keysOf("", reflect.TypeFor[Design]()) }

func keysOf(prefix string, t reflect.Type) []Key {
	var out []Key
	for i := range t.NumField() {
		f := t.Field(i)
		tag, _, _ := strings.Cut(f.Tag.Get("toml"), ",")
		name := prefix + tag
		out = append(out, Key{name, kindOf(f.Type), f.Tag.Get("comment")})
		if table := tableOf(f.Type); table != nil {
			out = append(out, keysOf(name+".", table)...)
		}
	}
	return out
}

// tableOf returns the struct behind a field that is a table or a list of
// tables, nil for a plain value.
func tableOf(t reflect.Type) reflect.Type {
	if t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice {
		t = t.Elem()
	}
	if t.Kind() != reflect.Struct {
		return nil
	}
	return t
}

func kindOf(t reflect.Type) string {
	switch {
	case t == reflect.TypeFor[measure.Length]():
		return `a length with its unit, such as "720 mm" or "28 3/8 in"`
	case t == reflect.TypeFor[[]measure.Length]():
		return `a list of lengths, such as ["-900 mm", "900 mm"]`
	case t == reflect.TypeFor[measure.Angle]():
		return `an angle with its unit, such as "12 deg"`
	case t.Implements(reflect.TypeFor[encoding.TextMarshaler]()), t.Kind() == reflect.String:
		return "text in quotes"
	case t.Kind() == reflect.Bool:
		return "true or false"
	case t.Kind() == reflect.Int:
		return "a whole number"
	case t.Kind() == reflect.Float64:
		return "a number"
	case t == reflect.TypeFor[[]float64]():
		return "a list of numbers, such as [0.3, 0.6]"
	case t.Kind() == reflect.Slice:
		return "tables, each begun with [[ ]]"
	}
	return "a table begun with [ ]"
}

// wanted says what the value of a key should be; empty for an unknown key.
func wanted(key string) string {
	for _, k := range Keys() {
		if k.Name == key {
			return k.Want
		}
	}
	return ""
}

// nearestKey suggests the known key of the same table, or of any, that is
// spelled most like the given one.
func nearestKey(parts []string) string {
	key := strings.Join(parts, ".")
	best, least := "", 1<<30
	for _, k := range Keys() {
		// The last word counts most: a right key in a wrong table is near.
		d := 2*distance(last(k.Name), last(key)) + distance(k.Name, key)
		if d < least {
			best, least = k.Name, d
		}
	}
	return fmt.Sprintf("; the nearest known key is %s", best)
}

func last(key string) string { return key[strings.LastIndexByte(key, '.')+1:] }

// distance is the number of single-letter changes from a to b (Levenshtein),
// for words of at most 64 letters; the rest of a longer word is not compared.
func distance(a, b string) int {
	a, b = a[:min(len(a), 64)], b[:min(len(b), 64)]
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := diagonal
			if a[i] != b[j] {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}

// lineOf finds the line on which a key stands in the file, "hull.section.1.flare"
// being in the second [[hull.section]]. A key that is not there gives the line
// of its table, and 0 when that is not there either.
func lineOf(data []byte, key string) int {
	lines := map[string]int{}
	counts := map[string]int{}
	var p unstable.Parser
	p.Reset(data)
	table := ""
	for p.NextExpression() {
		e := p.Expression()
		name, line := keyText(&p, e)
		switch e.Kind {
		case unstable.Table:
			table = name + "."
		case unstable.ArrayTable:
			name = fmt.Sprintf("%s.%d", name, counts[name])
			counts[name[:strings.LastIndexByte(name, '.')]]++
			table = name + "."
		case unstable.KeyValue:
			name = table + name
		}
		if name != "" && lines[name] == 0 {
			lines[name] = line
		}
	}
	for key != "" && lines[key] == 0 {
		key = key[:max(0, strings.LastIndexByte(key, '.'))]
	}
	return lines[key]
}

func keyText(p *unstable.Parser, e *unstable.Node) (string, int) {
	var parts []string
	line := 0
	if e.Kind != unstable.Table && e.Kind != unstable.ArrayTable && e.Kind != unstable.KeyValue {
		return "", 0
	}
	for it := e.Key(); it.Next(); {
		n := it.Node()
		if line == 0 {
			line = p.Shape(n.Raw).Start.Line
		}
		parts = append(parts, string(n.Data))
	}
	return strings.Join(parts, "."), line
}
