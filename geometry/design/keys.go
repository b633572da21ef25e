package design

import (
	"encoding"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
)

// Key describes one key of the design file.
type Key struct {
	Name    string // with its table, "ribs.thickness"
	Want    string // the kind of value it takes, in words
	Doc     string // what it means
	Default string // the value it has when left out, "" when it has none
}

// Keys lists every key of the design file in the order of the types.
func Keys() []Key { return keysOf("", reflect.ValueOf(Defaults()).Elem()) }

// keysOf lists the keys of a table; v holds the values they have when left out.
func keysOf(prefix string, v reflect.Value) []Key {
	var out []Key
	for i, key := range KeyNames(v.Type()) {
		f, name := v.Type().Field(i), prefix+key
		table := tableOf(f.Type)
		if table == nil {
			out = append(out, Key{name, kindOf(f.Type), f.Tag.Get("comment"), leftOut(v.Field(i))})
			continue
		}
		out = append(out, Key{name, kindOf(f.Type), f.Tag.Get("comment"), ""})
		values := standard(table)
		if f.Type == table {
			values = v.Field(i)
		}
		out = append(out, keysOf(name+".", values)...)
	}
	return out
}

// standard returns what a table holds that Defaults leaves out, where its keys are
// not given.
func standard(table reflect.Type) reflect.Value {
	for _, v := range []any{defaultSail(), defaultPair(), defaultRow()} {
		if e := reflect.ValueOf(v).Elem(); e.Type() == table {
			return e
		}
	}
	return reflect.New(table).Elem()
}

// leftOut writes a value as a file would hold it, "" for one that says nothing.
func leftOut(v reflect.Value) string {
	if v.IsZero() || v.Kind() == reflect.Slice {
		return ""
	}
	if m, ok := v.Interface().(encoding.TextMarshaler); ok {
		if text, err := m.MarshalText(); err == nil {
			return string(text)
		}
	}
	return fmt.Sprint(v.Interface())
}

// tableOf returns the struct behind a field that is a table or a list of
// tables, nil for a plain value and for no type at all.
func tableOf(t reflect.Type) reflect.Type {
	if t == nil {
		return nil
	}
	if t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice {
		t = t.Elem()
	}
	if t.Kind() != reflect.Struct {
		return nil
	}
	return t
}

// KeyNames lists the keys of a table by the order of its fields, none for a type that
// is no table.
func KeyNames(table reflect.Type) []string {
	if table == nil || table.Kind() != reflect.Struct {
		return nil
	}
	var out []string
	for i := range table.NumField() {
		out = append(out, keyName(table.Field(i)))
	}
	return out
}

// keyName reads the key from where it stands, first in every tag: it is asked for
// thousands of times a file.
func keyName(f reflect.StructField) string {
	name := strings.TrimPrefix(string(f.Tag), `toml:"`)
	for i := range len(name) {
		if name[i] == '"' || name[i] == ',' {
			return name[:i]
		}
	}
	return ""
}

func kindOf(t reflect.Type) string {
	if t.Kind() == reflect.Pointer && tableOf(t) == nil { // a value that may be left out
		t = t.Elem()
	}
	switch {
	case t == reflect.TypeFor[measure.Length]():
		return `a length in quotes with its unit, such as "720 mm" or "28 3/8 in"`
	case t == reflect.TypeFor[[]measure.Length]():
		return `a list of lengths, such as ["-900 mm", "900 mm"]`
	case t == reflect.TypeFor[measure.Angle]():
		return `an angle in quotes with its unit, such as "12 deg"`
	case isChoice(t):
		words := slices.DeleteFunc(slices.Clone(reflect.Zero(t).Interface().(choice).words()), func(w string) bool { return w == "" })
		last := len(words) - 1
		return fmt.Sprintf(`"%s" or "%s"`, strings.Join(words[:last], `", "`), words[last])
	case t.Kind() == reflect.String:
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

func isChoice(t reflect.Type) bool { return t.Implements(reflect.TypeFor[choice]()) }

// place is a key or a table of the file with the Go type behind it.
type place struct {
	name string       // as a builder says it: "hull.section.flare"
	path string       // with the number of its table, from 0: "hull.section.1.flare"
	typ  reflect.Type // without the pointer of a table that may be left out
}

func wholeFile() place { return place{typ: reflect.TypeFor[Design]()} }

// child returns the place of a key in a table. An unknown key, or one in
// something that is no table, gives a place with its name and no type. Capitals
// count: a second spelling of a key would win over the first unseen.
func (at place) child(part string) place {
	said := spelled(part)
	out := place{name: joined(at.name, said)}
	if out.path = out.name; at.name != at.path || said != part { // one text for both, mostly
		out.path = joined(at.path, part)
	}
	table := tableOf(at.typ)
	if table == nil {
		return out
	}
	for i := range table.NumField() {
		if f := table.Field(i); keyName(f) == part {
			if out.typ = f.Type; out.typ.Kind() == reflect.Pointer {
				out.typ = out.typ.Elem()
			}
			break
		}
	}
	return out
}

func (at place) numbered(i int) place {
	return place{name: at.name, path: at.path + "." + strconv.Itoa(i), typ: at.typ.Elem()}
}

func (at place) isTables() bool {
	return at.typ.Kind() == reflect.Slice && tableOf(at.typ) != nil
}

func joined(table, key string) string {
	if table == "" {
		return key
	}
	return table + "." + key
}

// spelled quotes a key that a file could only hold in quotes.
func spelled(part string) string {
	plain := part != ""
	for i := range len(part) {
		b := part[i]
		plain = plain && (b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z' || b >= '0' && b <= '9' || b == '-' || b == '_')
	}
	if plain {
		return part
	}
	return strconv.Quote(part)
}

// unnumbered turns a path into a name: "hull.section.1.flare" into
// "hull.section.flare", for the line of the message tells which section.
func unnumbered(path string) string {
	var keep []string
	for _, part := range strings.Split(path, ".") {
		if _, err := strconv.Atoi(part); err != nil {
			keep = append(keep, part)
		}
	}
	return strings.Join(keep, ".")
}

// nearestKey returns the known key that is spelled most like the given one, in
// its own table or in any, and says where it stands when that is not plain.
func nearestKey(key string) string {
	best, least := "", 1<<30
	for _, k := range Keys() {
		// The last word counts most: a right key in a wrong table is near.
		d := 2*wording.Edits(last(k.Name), last(key)) + wording.Edits(k.Name, key)
		if d < least {
			best, least = k.Name, d
		}
	}
	if strings.Contains(key, ".") && !strings.Contains(best, ".") && last(key) == best {
		return best + ", which stands at the top, before the first table"
	}
	return best
}

func last(key string) string { return key[strings.LastIndexByte(key, '.')+1:] }
