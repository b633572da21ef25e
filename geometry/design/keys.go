package design

import (
	"encoding"
	"fmt"
	"reflect"
	"strings"

	"ribwright/geometry/measure"
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
	for i := range v.NumField() {
		f := v.Type().Field(i)
		tag, _, _ := strings.Cut(f.Tag.Get("toml"), ",")
		name := prefix + tag
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

// numFields is the number of keys of a table, 0 for what is none.
func numFields(table reflect.Type) int {
	if table == nil {
		return 0
	}
	return table.NumField()
}

func kindOf(t reflect.Type) string {
	switch {
	case t == reflect.TypeFor[measure.Length]():
		return `a length in quotes with its unit, such as "720 mm" or "28 3/8 in"`
	case t == reflect.TypeFor[[]measure.Length]():
		return `a list of lengths, such as ["-900 mm", "900 mm"]`
	case t == reflect.TypeFor[measure.Angle]():
		return `an angle in quotes with its unit, such as "12 deg"`
	case t == reflect.TypeFor[Kind]():
		return `"thwart", "yoke" or "seat bar"`
	case t == reflect.TypeFor[Posture]():
		return `"kneeling", "floor" or "bench"`
	case t == reflect.TypeFor[Rig]():
		return `"spritsail", "leg-of-mutton", "lug" or "vee"`
	case t == reflect.TypeFor[Body]():
		return `"woman" or "man"`
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
