package family

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/sizing/formula"
)

// Design puts the values of a run into a design. It has not passed Check yet.
//
// Errors: *formula.Fault for a value that a key does not take.
func (f *Family) Design(r *formula.Run) (*design.Design, error) {
	d := design.Defaults()
	for _, s := range f.setters {
		v, _, _ := r.Value(s.name)
		if err := s.put(d, v); err != nil {
			return nil, &formula.Fault{At: f.Program.Where(s.name), Name: s.name, Text: err.Error()}
		}
	}
	for _, l := range f.rows {
		all := func(label string) bool { return isFitted(r, l, label) }
		if !every(l.labels, all) {
			drop(r, l, reflect.ValueOf(d).Elem())
		}
	}
	f.likeBow(d)
	return d, nil
}

// list is a list of tables with the labels of its rows, in order.
type list struct {
	table  string // "hull.section"
	labels []string
}

// labelledRows gathers the labelled rows from the names.
func (f *Family) labelledRows() []list {
	var out []list
	for _, name := range f.design {
		table, label, ok := labelled(name)
		if !ok {
			continue
		}
		i := slices.IndexFunc(out, func(l list) bool { return l.table == table })
		if i < 0 {
			i, out = len(out), append(out, list{table: table})
		}
		if !slices.Contains(out[i].labels, label) {
			out[i].labels = append(out[i].labels, label)
		}
	}
	return out
}

// labelled splits the name of a key in a row: hull.section.mid.flare.
func labelled(name string) (table, label string, ok bool) {
	typ := reflect.TypeFor[design.Design]()
	for rest := name; ; {
		word, after, more := strings.Cut(rest, ".")
		field, found := tagged(typ, word)
		if !found || !more {
			return "", "", false
		}
		if typ, rest = field.Type, after; typ.Kind() != reflect.Slice {
			continue
		}
		label, _, ok = strings.Cut(rest, ".")
		return strings.TrimSuffix(name, "."+rest), label, ok
	}
}

// isFitted reports whether a row is there: unless the file says it is not.
func isFitted(r *formula.Run, l list, label string) bool {
	v, _, ok := r.Value(l.table + "." + label + "." + fitted)
	return !ok || v.True()
}

func every(list []string, ok func(string) bool) bool {
	return !slices.ContainsFunc(list, func(s string) bool { return !ok(s) })
}

// drop takes out the rows that are not fitted.
func drop(r *formula.Run, l list, d reflect.Value) {
	at := d
	for _, word := range strings.Split(l.table, ".") {
		field, _ := tagged(at.Type(), word)
		at = at.FieldByIndex(field.Index)
	}
	keep := reflect.Zero(at.Type())
	for i, label := range l.labels {
		if isFitted(r, l, label) && i < at.Len() {
			keep = reflect.Append(keep, at.Index(i))
		}
	}
	at.Set(keep)
}

// likeBow gives the stern what the bow has where the file has no formula for it.
func (f *Family) likeBow(d *design.Design) {
	if !f.Program.HasFormula("hull.rocker_stern") {
		d.Hull.RockerStern = d.Hull.RockerBow
	}
	if !f.Program.HasFormula("gunwale.edge_set_stern") {
		d.Gunwale.EdgeSetAft = d.Gunwale.EdgeSetBow
	}
	if !f.Program.HasFormula("ribs.from_stern") {
		d.Ribs.FromStern = d.Ribs.FromBow
	}
}

// Sources tells for every key of the design, numbered as in design.Problem
// ("hull.section.1.flare"), the name of the formula it came from.
func (f *Family) Sources(r *formula.Run) map[string]string {
	rows := map[string]int{}
	for _, l := range f.rows {
		n := 0
		for _, label := range l.labels {
			if isFitted(r, l, label) {
				rows[l.table+"."+label] = n
				n++
			}
		}
	}
	out := map[string]string{}
	for _, name := range f.design {
		table, label, ok := labelled(name)
		if !ok {
			out[name] = name
			continue
		}
		if n, there := rows[table+"."+label]; there {
			rest := strings.TrimPrefix(name, table+"."+label+".")
			out[fmt.Sprintf("%s.%d.%s", table, n, rest)] = name
		}
	}
	return out
}
