package design

import (
	"encoding"
	"fmt"
	"math"
	"reflect"
	"strings"

	"ribwright/geometry/measure"
)

// Difference is a key that two designs give other values.
type Difference struct {
	Key      string // numbered as in Problem: "hull.section.1.flare"; a whole list where one has more rows
	Old, New string // as a file has them; "none" for what is not there, "3 rows" for a list of tables
}

// Differ lists the keys in which two designs differ, in the order of the types. Edition
// and what it changed are no differences.
func Differ(old, new *Design) []Difference {
	var out []Difference
	each("", reflect.ValueOf(old).Elem(), reflect.ValueOf(new).Elem(), func(key string, a, b reflect.Value) {
		out = append(out, Difference{key, shown(a), shown(b)})
	})
	return out
}

// each visits the values that differ.
func each(key string, a, b reflect.Value, visit func(key string, a, b reflect.Value)) {
	switch {
	case a.Kind() == reflect.Struct:
		for i := range a.NumField() {
			name := keyName(a.Type().Field(i))
			if key == "" && (name == "edition" || name == "changed") {
				continue
			}
			each(joined(key, name), a.Field(i), b.Field(i), visit)
		}
	case a.Kind() == reflect.Pointer && !a.IsNil() && !b.IsNil():
		each(key, a.Elem(), b.Elem(), visit)
	case a.Kind() == reflect.Slice && tableOf(a.Type()) != nil && a.Len() == b.Len():
		for i := range a.Len() {
			each(fmt.Sprintf("%s.%d", key, i), a.Index(i), b.Index(i), visit)
		}
	case !reflect.DeepEqual(a.Interface(), b.Interface()):
		visit(key, a, b)
	}
}

// shown writes a value as a file has it.
func shown(v reflect.Value) string {
	switch {
	case v.Kind() == reflect.Pointer && v.IsNil(), v.Kind() == reflect.Slice && v.Len() == 0, v.Kind() == reflect.String && v.Len() == 0:
		return "none"
	case v.Kind() == reflect.Pointer && tableOf(v.Type()) != nil:
		return "given"
	case v.Kind() == reflect.Pointer:
		return shown(v.Elem())
	case v.Kind() == reflect.Slice && tableOf(v.Type()) != nil:
		return fmt.Sprintf("%d rows", v.Len())
	case v.Kind() == reflect.Slice:
		var all []string
		for i := range v.Len() {
			all = append(all, shown(v.Index(i)))
		}
		return strings.Join(all, ", ")
	}
	if m, ok := v.Interface().(encoding.TextMarshaler); ok {
		if text, err := m.MarshalText(); err == nil {
			return string(text)
		}
	}
	return fmt.Sprint(v.Interface())
}

// Copy returns a design that shares nothing with d.
func (d *Design) Copy() *Design {
	out := copied(reflect.ValueOf(d)).Interface().(*Design)
	return out
}

func copied(v reflect.Value) reflect.Value {
	out := reflect.New(v.Type()).Elem()
	out.Set(v)
	switch {
	case v.Kind() == reflect.Pointer && !v.IsNil():
		out.Set(reflect.New(v.Type().Elem()))
		out.Elem().Set(copied(v.Elem()))
	case v.Kind() == reflect.Slice && !v.IsNil():
		out.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
		for i := range v.Len() {
			out.Index(i).Set(copied(v.Index(i)))
		}
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			out.Field(i).Set(copied(v.Field(i)))
		}
	}
	return out
}

// Toward returns a design like old, but with the keys of a share of the way to their
// values in new: 0 keeps old's, 1 takes new's. Lengths stop at whole millimeters, angles
// at tenths of a degree, shares and masses at thousandths; what is no such measure is
// taken when its share is 1 and kept otherwise. Keys are those of Differ.
func Toward(old, new *Design, share map[string]float64) *Design {
	out, other := old.Copy(), new.Copy()
	each("", reflect.ValueOf(out).Elem(), reflect.ValueOf(other).Elem(), func(key string, a, b reflect.Value) {
		s := share[key]
		step, ok := stepOf(a)
		switch {
		case s >= 1:
			a.Set(b)
		case s > 0 && ok:
			from, to := a.Float(), b.Float()
			v := math.Round((from+s*(to-from))/step) * step
			a.SetFloat(math.Max(math.Min(from, to), math.Min(math.Max(from, to), v)))
		}
	})
	return out
}

// stepOf is how finely a value is set that may go part of the way.
func stepOf(v reflect.Value) (float64, bool) {
	switch v.Interface().(type) {
	case measure.Length:
		return 1, true
	case measure.Angle:
		return 0.1 * math.Pi / 180, true
	case float64:
		return 0.001, true
	}
	return 0, false
}

// Steps is how many steps a key of Differ may take between two designs: 1 for one that
// cannot go part of the way.
func Steps(old, new *Design, key string) int {
	n := 1
	each("", reflect.ValueOf(old).Elem(), reflect.ValueOf(new).Elem(), func(k string, a, b reflect.Value) {
		if step, ok := stepOf(a); ok && k == key {
			n = max(1, int(math.Ceil(math.Abs(b.Float()-a.Float())/step-1e-9)))
		}
	})
	return n
}
