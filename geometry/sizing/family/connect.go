package family

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/sizing/formula"
)

// setter puts one value into a design.
type setter struct {
	name string
	put  func(d *design.Design, v formula.Value) error
}

// tables are the first words of the design's keys; a name that begins with one
// is a key of the design.
func tables() []string {
	var out []string
	for _, k := range design.Keys() {
		if first, _, ok := strings.Cut(k.Name, "."); ok && !slices.Contains(out, first) {
			out = append(out, first)
		}
	}
	return out
}

// connect finds the key of the design for every name that is one.
func (f *Family) connect() error {
	c := connector{family: f, rows: map[string][]string{}}
	for _, name := range f.Program.Names() {
		first, _, dotted := strings.Cut(name, ".")
		if !dotted || !slices.Contains(tables(), first) {
			continue
		}
		if err := c.key(name); err != nil {
			return err
		}
		f.design = append(f.design, name)
	}
	f.rows = f.labelledRows()
	return nil
}

// connector remembers which rows of lists of tables have been met: the label in
// thwart.yoke.at names a row, in the order of the file.
type connector struct {
	family *Family
	rows   map[string][]string // table, with the labels of its rows
}

// fitted is the word that says whether a row is there at all.
const fitted = "fitted"

func (c *connector) key(name string) error {
	words := strings.Split(name, ".")
	at := func(d *design.Design) reflect.Value { return reflect.ValueOf(d).Elem() }
	typ := reflect.TypeFor[design.Design]()
	path := ""
	for len(words) > 0 {
		field, ok := tagged(typ, words[0])
		if !ok {
			return c.fault(name, "the design has no key %s; its keys in [%s] are %s", name, strings.Trim(path, "."), strings.Join(keysIn(typ), ", "))
		}
		outer, index := at, field.Index
		at = func(d *design.Design) reflect.Value { return outer(d).FieldByIndex(index) }
		typ, path = field.Type, path+words[0]+"."
		words = words[1:]
		switch {
		case typ.Kind() == reflect.Slice && typ.Elem().Kind() == reflect.Struct:
			if len(words) != 2 {
				return c.fault(name, "takes a label and a key, as %slabel.at", path)
			}
			return c.row(name, path, at, typ.Elem(), words)
		case typ.Kind() == reflect.Pointer:
			outer, elem := at, typ.Elem()
			at = func(d *design.Design) reflect.Value { return made(outer(d), elem) }
			typ = elem
		}
	}
	return c.value(name, typ, at)
}

// made returns what a pointer points to, made when there is nothing yet.
func made(v reflect.Value, elem reflect.Type) reflect.Value {
	if v.IsNil() {
		v.Set(reflect.New(elem))
	}
	return v.Elem()
}

// row connects a key of a labelled row.
func (c *connector) row(name, table string, list func(*design.Design) reflect.Value, typ reflect.Type, words []string) error {
	label, field := words[0], words[1]
	row := slices.Index(c.rows[table], label)
	if row < 0 {
		row = len(c.rows[table])
		c.rows[table] = append(c.rows[table], label)
	}
	at := func(d *design.Design) reflect.Value {
		v := list(d)
		for v.Len() <= row {
			v.Set(reflect.Append(v, reflect.Zero(typ)))
		}
		return v.Index(row)
	}
	if field == fitted {
		if k, _ := c.family.Program.Kind(name); k.Class != formula.Truth {
			return c.fault(name, "is %s; accepted: true or false", k)
		}
		return nil
	}
	f, ok := tagged(typ, field)
	if !ok {
		return c.fault(name, "the design has no key %s; its keys there are %s, and %s", name, strings.Join(keysIn(typ), ", "), fitted)
	}
	return c.value(name, f.Type, func(d *design.Design) reflect.Value { return at(d).FieldByIndex(f.Index) })
}

func (c *connector) fault(name, format string, args ...any) error {
	return &formula.Fault{At: c.family.Program.Where(name), Name: name, Text: fmt.Sprintf(format, args...)}
}

// tagged finds the field of a key.
func tagged(t reflect.Type, key string) (reflect.StructField, bool) {
	for i := range numFields(t) {
		f := t.Field(i)
		if tag, _, _ := strings.Cut(f.Tag.Get("toml"), ","); tag == key {
			return f, true
		}
	}
	return reflect.StructField{}, false
}

func numFields(t reflect.Type) int {
	if t.Kind() != reflect.Struct {
		return 0
	}
	return t.NumField()
}

func keysIn(t reflect.Type) []string {
	var out []string
	for i := range numFields(t) {
		tag, _, _ := strings.Cut(t.Field(i).Tag.Get("toml"), ",")
		out = append(out, tag)
	}
	return out
}

// value connects a plain key and checks that its kind is the formula's.
func (c *connector) value(name string, typ reflect.Type, at func(*design.Design) reflect.Value) error {
	want, put := kindOf(name, typ)
	if put == nil {
		return c.fault(name, "is a table of the design, not a value; give a key in it")
	}
	if k, _ := c.family.Program.Kind(name); k != want {
		return c.fault(name, "is %s; the design takes %s", k, want)
	}
	c.family.setters = append(c.family.setters, setter{name, func(d *design.Design, v formula.Value) error { return put(at(d), v) }})
	return nil
}

// filler puts a value into a field of the design.
type filler func(reflect.Value, formula.Value) error

// kindOf returns the kind that a field of the design takes and how to fill it;
// nil for a table.
func kindOf(name string, t reflect.Type) (formula.Kind, filler) {
	switch {
	case t == reflect.TypeFor[measure.Length]():
		return formula.Of(formula.Length), fillNumber(1)
	case t == reflect.TypeFor[measure.Angle]():
		return formula.Of(formula.Angle), fillNumber(1)
	case t == reflect.TypeFor[design.Kind]():
		return formula.Kind{Class: formula.Text}, fillKind
	case t == reflect.TypeFor[design.Posture]():
		return formula.Kind{Class: formula.Text}, fillPosture
	case t == reflect.TypeFor[[]measure.Length]():
		return formula.Kind{Class: formula.List, Dim: formula.Length}, fillLengths
	case t == reflect.TypeFor[[]float64]():
		return formula.Kind{Class: formula.List}, func(r reflect.Value, v formula.Value) error {
			r.Set(reflect.ValueOf(slices.Clone(v.List)))
			return nil
		}
	case t.Kind() == reflect.String:
		return formula.Kind{Class: formula.Text}, func(r reflect.Value, v formula.Value) error { r.SetString(v.Text); return nil }
	case t.Kind() == reflect.Bool:
		return formula.Kind{Class: formula.Truth}, func(r reflect.Value, v formula.Value) error { r.SetBool(v.True()); return nil }
	case t.Kind() == reflect.Int:
		return formula.Of(formula.Plain), fillCount
	case t.Kind() == reflect.Float64 && name == "skin.mass":
		return formula.Of(formula.Cloth), fillNumber(1e9) // the design has it in g/m2, formulas in kg/mm2
	case t.Kind() == reflect.Float64 && strings.HasSuffix(name, ".mass"):
		return formula.Of(formula.Mass), fillNumber(1)
	case t.Kind() == reflect.Float64:
		return formula.Of(formula.Plain), fillNumber(1)
	}
	return formula.Kind{}, nil
}

func fillNumber(times float64) filler {
	return func(r reflect.Value, v formula.Value) error { r.SetFloat(v.Num * times); return nil }
}

func fillKind(r reflect.Value, v formula.Value) error {
	var k design.Kind
	err := k.UnmarshalText([]byte(v.Text))
	r.Set(reflect.ValueOf(k))
	return err
}

func fillPosture(r reflect.Value, v formula.Value) error {
	var p design.Posture
	err := p.UnmarshalText([]byte(v.Text))
	r.Set(reflect.ValueOf(p))
	return err
}

func fillLengths(r reflect.Value, v formula.Value) error {
	var list []measure.Length
	for _, n := range v.List {
		list = append(list, measure.Length(n))
	}
	r.Set(reflect.ValueOf(list))
	return nil
}

func fillCount(r reflect.Value, v formula.Value) error {
	n := math.Round(v.Num)
	if !(math.Abs(n) <= 1e6) {
		return fmt.Errorf("%g is no count", v.Num)
	}
	r.SetInt(int64(n))
	return nil
}
