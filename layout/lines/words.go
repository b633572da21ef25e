package lines

import (
	"fmt"
	"math"

	"ribwright/geometry/trial/afloat"
	"ribwright/layout/report"
)

// Told says how the boat lies and stands, each in a sentence, by what it is about.
type Told struct{ About, Says string }

// Tell says it in a system of units.
func Tell(r *afloat.Report, l report.Letters) []Told {
	out := []Told{{"load", fmt.Sprintf("The boat itself weighs about %s; with all aboard it is %s.", l.Mass(r.Boat.Own().Mass), l.Mass(r.Load.Mass))}}
	if r.Fault != nil {
		return append(out, Told{"standing", "It does not stay upright: " + r.Fault.Text + "."})
	}
	o := r.Rest
	out = append(out,
		Told{"draft", fmt.Sprintf("It floats %s deep and leaves %s of side over the water at the lowest place.", l.Length(o.Draft), l.Length(o.Freeboard.Least))},
		Told{"trim", trim(o.TrimRise(), l)})
	if f := r.Curve.Flooding; !math.IsNaN(f) {
		out = append(out, Told{"standing", fmt.Sprintf("Heeled to %.0f degrees, water comes in over the side; up to there it comes back by itself where the curve is above zero.", f*180/math.Pi)})
	}
	return out
}

// trim says how the ends lie, mm between them over the waterline, bow up positive.
func trim(mm float64, l report.Letters) string {
	const level = 5.0 // mm: nobody sees less
	switch {
	case mm > level:
		return fmt.Sprintf("The bow rides %s higher than the stern; move weight forward to level it.", l.Length(mm))
	case mm < -level:
		return fmt.Sprintf("The bow lies %s deeper than the stern; move weight aft to level it.", l.Length(-mm))
	}
	return "It lies level."
}
