package json

import (
	"ribwright/geometry/design"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
)

// SizingReport is a sized boat: every value of its family, and the checks.
type SizingReport struct {
	Design Header                `json:"design"`
	Values map[string]sizedValue `json:"values"`
	Checks []checkPart           `json:"checks"`
}

// sizedValue is a number in its unit, true or false, a word, or a list of numbers.
type sizedValue struct {
	Value any    `json:"value"`
	Unit  string `json:"unit"` // "" for what has none
	Why   string `json:"why"`
}

type checkPart struct {
	Name  string `json:"name"`
	Holds bool   `json:"holds"`
	Text  string `json:"text"`
}

// Sizing tells everything of a sized boat.
//
// Errors: a design that has no fingerprint, which Check would have refused.
func Sizing(b *sizing.Boat) (SizingReport, error) {
	head, err := HeaderOf(b.Design)
	out := SizingReport{Design: head, Values: map[string]sizedValue{}, Checks: []checkPart{}}
	for _, name := range b.Case.Family.Program.AllNames() {
		v, kind, _ := b.Case.Run().Value(name)
		value, unit := valueOf(v, kind)
		out.Values[name] = sizedValue{value, unit, b.Why(name)}
	}
	for _, v := range b.Checks {
		out.Checks = append(out.Checks, checkPart{v.Name, v.Passed, v.Finding().Text})
	}
	return out, err
}

// valueOf puts a value into the unit that people read it in.
func valueOf(v formula.Value, k formula.Kind) (value any, unit string) {
	unit, worth := k.Dim.Unit()
	switch k.Class {
	case formula.Truth:
		return v.True(), ""
	case formula.Text:
		return v.Text, ""
	case formula.List:
		out := make([]fixed, len(v.List))
		for i, n := range v.List {
			out[i] = fixed(n / worth)
		}
		return out, unit
	}
	return fixed(v.Num / worth), unit
}

// DerivationReport is how one value came about.
type DerivationReport struct {
	Design Header     `json:"design"`
	Steps  []stepPart `json:"steps"` // each value before those it uses
}

type stepPart struct {
	Depth   int    `json:"depth"` // 0 for the value asked for
	Name    string `json:"name"`
	Value   string `json:"value"`
	Formula string `json:"formula"`
	Where   string `json:"where"`
	Why     string `json:"why"`
}

// Derivation tells how one value of a sized boat came about.
//
// Errors: a design that has no fingerprint, which Check would have refused.
func Derivation(d *design.Design, steps []formula.Step) (DerivationReport, error) {
	head, err := HeaderOf(d)
	out := DerivationReport{Design: head}
	for _, s := range steps {
		out.Steps = append(out.Steps, stepPart{s.Depth, s.Name, s.Value, s.Formula, s.Where, s.Reason})
	}
	return out, err
}

// SweepReport is a boat for each step of a value. It is of no one design.
type SweepReport struct {
	Family string      `json:"family"`
	Value  string      `json:"value"`
	Steps  []sweptPart `json:"steps"`
}

type sweptPart struct {
	At     fixed                 `json:"at"`
	Unit   string                `json:"unit"`
	Values map[string]sizedValue `json:"values"`
	Failed []string              `json:"checks_failed"`
	Fault  string                `json:"fault"` // why there is no boat, "" where there is one
}

// Sweep tells of the boats of a sweep.
func Sweep(f *family.Family, s sizing.Sweep, rows []sizing.Row) SweepReport {
	unit, worth := s.Dim.Unit()
	out := SweepReport{f.Name, s.Name, []sweptPart{}}
	for _, r := range rows {
		p := sweptPart{fixed(r.At / worth), unit, map[string]sizedValue{}, append([]string{}, r.Failed...), r.Fault}
		for name, v := range r.Values {
			kind, _ := f.Program.Kind(name) // the sweep knows only names of the family
			value, unit := valueOf(formula.Num(v), kind)
			p.Values[name] = sizedValue{Value: value, Unit: unit}
		}
		out.Steps = append(out.Steps, p)
	}
	return out
}

// PopulationReport is a family tried on many.
type PopulationReport struct {
	Family string        `json:"family"`
	Tried  int           `json:"tried"`
	Passed int           `json:"passed"`
	Fails  []failurePart `json:"fails"` // the most frequent first
}

type failurePart struct {
	Name   string `json:"name"`
	Times  int    `json:"times"`
	Number int    `json:"worst_number"`
	Who    string `json:"worst_for"`
	Text   string `json:"worst"`
}

// Population tells how a family came out that was tried on many.
func Population(family string, p sizing.Population) PopulationReport {
	out := PopulationReport{family, p.Tried, p.Passed, []failurePart{}}
	for _, c := range p.Counts() {
		out.Fails = append(out.Fails, failurePart{c.Name, c.Times, c.Worst.Number, c.Worst.Brief.Who(), c.Text})
	}
	return out
}

// ClassReport is how the rows of a class came out, in their order.
type ClassReport struct {
	Rows []classRow `json:"rows"`
}

type classRow struct {
	Design *Header   `json:"design"` // null without a boat
	Line   int       `json:"line"`
	Name   string    `json:"name"`
	Family string    `json:"family"`
	Status string    `json:"status"`
	Why    string    `json:"why"` // it failed or was not done
	Folder string    `json:"folder"`
	Boat   *boatPart `json:"boat"` // null without one
}

type boatPart struct {
	Length       fixed    `json:"length_mm"`
	Beam         fixed    `json:"beam_mm"`
	Depth        fixed    `json:"depth_mm"`
	AllUp        fixed    `json:"all_up_kg"`
	BoatWeight   fixed    `json:"boat_kg"`
	Draft        fixed    `json:"draft_mm"`
	Freeboard    fixed    `json:"freeboard_mm"`
	GM           fixed    `json:"gm_mm"`
	ChecksFailed []string `json:"checks_failed"`
}

// Class tells how the rows of a class came out.
func Class(all []sizing.Outcome) ClassReport {
	out := ClassReport{[]classRow{}}
	for _, o := range all {
		r := classRow{Line: o.Line, Name: o.Name, Family: o.Use, Status: string(o.Status), Why: o.Why, Folder: o.Folder}
		if o.Folder != "" {
			r.Design = &Header{Title: o.Name, Slug: o.Folder, Fingerprint: o.Fingerprint}
			r.Boat = &boatPart{fixed(o.Length), fixed(o.Beam), fixed(o.Depth), fixed(o.AllUp), fixed(o.BoatWeight),
				fixed(o.Draft), fixed(o.Freeboard), fixed(o.GM), append([]string{}, o.ChecksFailed...)}
		}
		out.Rows = append(out.Rows, r)
	}
	return out
}
