package json

import (
	"ribwright/geometry/design"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
)

// Sizing tells everything of a sized boat: every value of its family, and the checks.
//
// Errors: a design that has no fingerprint, which Check would have refused.
func Sizing(b *sizing.Boat) (Object, error) {
	values := map[string]Object{}
	for _, name := range b.Case.Family.Program.AllNames() {
		v, kind, _ := b.Case.Run().Value(name)
		values[name] = sizedValue(v, kind, b.Why(name))
	}
	return of(b.Design, field{"values", values}, field{"checks", each(b.Checks, func(v formula.Check) Object {
		return Object{{"name", v.Name}, {"holds", v.Passed}, {"text", v.Finding().Text}}
	})}, standing(b.Standing), known(len(b.Design.Crew)), liveCargo(b.Cargo))
}

// sizedValue is a number in the unit that people read it in, true or false, a word, or
// a list of numbers; the unit is "" for what has none.
func sizedValue(v formula.Value, k formula.Kind, why string) Object {
	unit, worth := k.Dim.Unit()
	var value any = fixed(v.Num / worth)
	switch k.Class {
	case formula.Truth:
		value, unit = v.True(), ""
	case formula.Text:
		value, unit = v.Text, ""
	case formula.List:
		value = each(v.List, func(n float64) fixed { return fixed(n / worth) })
	}
	return Object{{"value", value}, {"unit", unit}, {"why", why}}
}

// Derivation tells how one value of a sized boat came about: each value before those
// it uses, at depth 0 the one asked for.
//
// Errors: a design that has no fingerprint, which Check would have refused.
func Derivation(d *design.Design, steps []formula.Step) (Object, error) {
	return of(d, field{"steps", each(steps, func(s formula.Step) Object {
		return Object{{"depth", s.Depth}, {"name", s.Name}, {"value", s.Value}, {"formula", s.Formula}, {"where", s.Where}, {"why", s.Reason}}
	})})
}

// Sweep tells of the boats of a sweep, which is of no one design. Where a step has no
// boat its fault says why.
func Sweep(f *family.Family, s sizing.Sweep, rows []sizing.Row) Object {
	unit, worth := s.Dim.Unit()
	return Object{{"family", f.Name}, {"value", s.Name}, {"steps", each(rows, func(r sizing.Row) Object {
		values := map[string]Object{}
		for name, v := range r.Values {
			kind, _ := f.Program.Kind(name) // the sweep knows only names of the family
			values[name] = sizedValue(formula.Num(v), kind, "")
		}
		return Object{{"at", fixed(r.At / worth)}, {"unit", unit}, {"values", values},
			{"checks_failed", append([]string{}, r.Failed...)}, {"fault", r.Fault}}
	})}}
}

// Population tells how a family came out that was tried on many, the most frequent
// failure first.
func Population(family string, p sizing.Population) Object {
	return Object{{"family", family}, {"tried", p.Tried}, {"passed", p.Passed}, {"fails", each(p.Counts(), func(c sizing.Count) Object {
		return Object{{"name", c.Name}, {"times", c.Times}, {"worst_number", c.Worst.Number}, {"worst_for", c.Worst.Brief.Who()},
			{"worst", c.Text}}
	})}}
}

// Class tells how the rows of a class came out, in their order. The design and the
// boat are null where there is none; why says that it failed or was not done.
func Class(all []sizing.Outcome) Object {
	return Object{{"rows", each(all, func(o sizing.Outcome) Object {
		var head, boat any
		if o.Folder != "" {
			head = header(o.Name, o.Folder, o.Edition, o.Fingerprint)
			boat = Object{
				{"length_mm", fixed(o.Length)}, {"beam_mm", fixed(o.Beam)}, {"depth_mm", fixed(o.Depth)}, {"all_up_kg", fixed(o.AllUp)},
				{"boat_kg", fixed(o.BoatWeight)}, {"draft_mm", fixed(o.Draft)}, {"freeboard_mm", fixed(o.Freeboard)}, {"gm_mm", fixed(o.GM)},
				{"checks_failed", append([]string{}, o.ChecksFailed...)},
			}
		}
		return Object{{"design", head}, {"line", o.Line}, {"name", o.Name}, {"family", o.Use}, {"status", o.Status}, {"why", o.Why},
			{"folder", o.Folder}, {"boat", boat}}
	})}}
}
