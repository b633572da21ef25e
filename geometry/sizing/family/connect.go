package family

import (
	"encoding"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/sizing/formula"
)

// fitted is the word that says whether a row is there at all.
const fitted = "fitted"

// target is the key of the design that a formula fills.
type target struct {
	name   string // of the formula, and of the key but for a label
	slot   int    // of its value in a run
	fields []int  // the way to it through the tables of the design
	table  string // "hull.section" for a key in a labelled row
	row    int    // which of the family's rows, noRow for a key in none
	key    string // without its table and row; fitted for whether the row is there
}

const noRow = -1

// row is a labelled row of a table of the design, "hull.section.mid".
type row struct {
	name  string
	table string
	there int // slot of what says whether it is there, or always
}

const always = -1

// connect finds the key of the design for every name that is one: a name that begins
// with a table of the design.
func (f *Family) connect() error {
	for _, name := range f.Program.Names() {
		first, _, dotted := strings.Cut(name, ".")
		if field, ok := tagged(reflect.TypeFor[design.Design](), first); !dotted || !ok || field.Type.Kind() == reflect.String {
			continue
		}
		t, err := f.target(name)
		if err != nil {
			return err
		}
		f.targets = append(f.targets, t)
	}
	return nil
}

// target follows a name through the tables of the design. In a list of tables the
// word after it is the label of a row.
func (f *Family) target(name string) (target, error) {
	words, t := strings.Split(name, "."), target{name: name, row: noRow}
	t.slot, _ = f.Program.Slot(name)
	typ := reflect.TypeFor[design.Design]()
	for i := 0; i < len(words); i++ {
		t.key = words[i]
		field, ok := tagged(typ, t.key)
		switch {
		case t.row != noRow && t.key == fitted:
			return t, f.checkKind(name, formula.Kind{Class: formula.Truth}, "accepted:")
		case !ok && t.row != noRow:
			return t, f.fault(name, "the design has no key %s; its keys there are %s, and %s", name, strings.Join(design.KeyNames(typ), ", "), fitted)
		case !ok:
			return t, f.fault(name, "the design has no key %s; its keys in [%s] are %s", name, strings.Join(words[:i], "."), strings.Join(design.KeyNames(typ), ", "))
		}
		t.fields, typ = append(t.fields, field.Index[0]), field.Type
		if typ.Kind() == reflect.Pointer {
			typ = typ.Elem()
		}
		if isTables(typ) {
			t.table = strings.Join(words[:i+1], ".")
			if len(words) != i+3 {
				return t, f.fault(name, "takes a label and a key, as %s.label.at", t.table)
			}
			i++
			t.row, typ = f.row(t.table, t.table+"."+words[i]), typ.Elem()
		}
	}
	want, ok := kindOf(name, typ)
	if !ok {
		return t, f.fault(name, "is a table of the design, not a value; give a key in it")
	}
	return t, f.checkKind(name, want, "the design takes")
}

// row is the number of a row, which is a new one when it is met first.
func (f *Family) row(table, name string) int {
	if i := slices.IndexFunc(f.rows, func(r row) bool { return r.name == name }); i >= 0 {
		return i
	}
	r := row{name, table, always}
	if slot, said := f.Program.Slot(name + "." + fitted); said {
		r.there = slot
	}
	f.rows = append(f.rows, r)
	return len(f.rows) - 1
}

func (f *Family) checkKind(name string, want formula.Kind, accepted string) error {
	if k, _ := f.Program.Kind(name); k != want {
		return f.fault(name, "is %s; %s %s", k, accepted, want)
	}
	return nil
}

func (f *Family) fault(name, format string, args ...any) error {
	return f.Program.Where(name).Fault(name, fmt.Sprintf(format, args...))
}

func isTables(t reflect.Type) bool {
	return t.Kind() == reflect.Slice && t.Elem().Kind() == reflect.Struct
}

func tagged(table reflect.Type, key string) (reflect.StructField, bool) {
	if i := slices.Index(design.KeyNames(table), key); i >= 0 {
		return table.Field(i), true
	}
	return reflect.StructField{}, false
}

// Design puts the values of a run into a design. It has not passed Check yet.
//
// Errors: *wording.Fault for a value that a key does not take.
func (f *Family) Design(r *formula.Run) (*design.Design, error) {
	d := design.Defaults()
	rows := f.fittedRows(r)
	for _, t := range f.targets {
		row := t.in(rows)
		if t.key == fitted || row == absent {
			continue
		}
		if err := fill(t.name, t.field(d, row), r.At(t.slot)); err != nil {
			return nil, f.fault(t.name, "%v", err)
		}
	}
	d.SternLikeBow(f.Program.HasFormula)
	// The families that come with the program all say the cloth: who writes a mass over
	// theirs means it.
	d.SkinOfMass(func(key string) bool { return key != "skin.cloth" && f.Program.HasFormula(key) })
	d.OutsideWithin(f.Program.HasFormula)
	return d, nil
}

// absent is the number of a row that is not fitted.
const absent = -1

// fittedRows numbers the rows of each table that are there, in the order of the file: all but
// those of which it says that they are not fitted.
func (f *Family) fittedRows(r *formula.Run) []int {
	rows := make([]int, len(f.rows))
	for i, v := range f.rows {
		if rows[i] = absent; v.there != always && !r.At(v.there).True() {
			continue
		}
		rows[i] = 0
		for k := i - 1; k >= 0; k-- {
			if f.rows[k].table == v.table && rows[k] != absent {
				rows[i] = rows[k] + 1
				break
			}
		}
	}
	return rows
}

// in is the number of the key's row in its table: 0 for a key in none.
func (t target) in(rows []int) int {
	if t.row == noRow {
		return 0
	}
	return rows[t.row]
}

// field is the place of the key in a design, in the row given where it is in one;
// tables and rows on the way are made.
func (t target) field(d *design.Design, row int) reflect.Value {
	v := reflect.ValueOf(d).Elem()
	for _, i := range t.fields {
		v = v.Field(i)
		if v.Kind() == reflect.Pointer {
			if v.IsNil() {
				v.Set(reflect.New(v.Type().Elem()))
			}
			v = v.Elem()
		}
		if isTables(v.Type()) {
			for v.Len() <= row {
				v.Set(reflect.Append(v, reflect.Zero(v.Type().Elem())))
			}
			v = v.Index(row)
		}
	}
	return v
}

// Sources tells for every key of the design, numbered as in design.Problem
// ("hull.section.1.flare"), the name of the formula it came from.
func (f *Family) Sources(r *formula.Run) map[string]string {
	rows, out := f.fittedRows(r), map[string]string{}
	for _, t := range f.targets {
		if t.row == noRow {
			out[t.name] = t.name
		} else if row := t.in(rows); row != absent {
			out[strings.Join([]string{t.table, strconv.Itoa(row), t.key}, ".")] = t.name
		}
	}
	return out
}

// kindOf returns the kind of value that a field of the design takes; ok is false for a table.
func kindOf(name string, t reflect.Type) (k formula.Kind, ok bool) {
	_, choice := reflect.New(t).Interface().(encoding.TextUnmarshaler)
	switch {
	case t == reflect.TypeFor[measure.Length]():
		return formula.Of(formula.Length), true
	case t == reflect.TypeFor[measure.Angle]():
		return formula.Of(formula.Angle), true
	case choice, t.Kind() == reflect.String:
		return formula.Kind{Class: formula.Text}, true
	case t == reflect.TypeFor[[]measure.Length]():
		return formula.Kind{Class: formula.List, Dim: formula.Length}, true
	case t == reflect.TypeFor[[]float64]():
		return formula.Kind{Class: formula.List}, true
	case t.Kind() == reflect.Bool:
		return formula.Kind{Class: formula.Truth}, true
	case t.Kind() == reflect.Float64 && isCloth(name):
		return formula.Of(formula.Cloth), true
	case t.Kind() == reflect.Float64 && strings.HasSuffix(name, ".mass"):
		return formula.Of(formula.Mass), true
	}
	return formula.Of(formula.Plain), t.Kind() == reflect.Float64 || t.Kind() == reflect.Int
}

// isCloth reports whether a key is in g/m2 in the design and in kg/mm2 in formulas.
func isCloth(name string) bool { return name == "skin.cloth" || name == "skin.mass" }

// fill puts a value of the kind that a field takes into it.
func fill(name string, field reflect.Value, v formula.Value) error {
	switch {
	case isCloth(name):
		field.SetFloat(fine(v.Num * 1e9))
	case field.Type() == reflect.TypeFor[measure.Length]():
		field.SetFloat(fine(v.Num))
	case strings.HasSuffix(name, ".mass"): // people are not known to the gram
		field.SetFloat(math.Round(v.Num*1000) / 1000)
	case field.Type() == reflect.TypeFor[measure.Angle]():
		field.SetFloat(float64(measure.Angle(v.Num).Short()))
	case field.Kind() == reflect.Float64:
		field.SetFloat(fine(v.Num))
	default:
		return fillOther(field, v)
	}
	return nil
}

// fillOther is fill of what is no measure.
func fillOther(field reflect.Value, v formula.Value) error {
	choice, _ := field.Addr().Interface().(encoding.TextUnmarshaler)
	switch {
	case choice != nil: // one of the words that the design knows
		return choice.UnmarshalText([]byte(v.Text))
	case field.Kind() == reflect.String:
		field.SetString(v.Text)
	case field.Kind() == reflect.Bool:
		field.SetBool(v.True())
	case field.Kind() == reflect.Slice:
		field.SetZero()
		for _, n := range v.List {
			field.Set(reflect.Append(field, reflect.ValueOf(fine(n)).Convert(field.Type().Elem())))
		}
	case !(math.Abs(v.Num) < 1e6+0.5):
		return fmt.Errorf("%g is no count", v.Num)
	default:
		field.SetInt(int64(math.Round(v.Num)))
	}
	return nil
}

// fine rounds a length, or a share of one, to a millionth, so that a file says 5.6 mm and not
// 5.6000000000000005 mm, which a sum of steps may give, and reads back the same.
func fine(mm float64) float64 { return math.Round(mm*1e6) / 1e6 }
