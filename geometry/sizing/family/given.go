package family

import (
	"ribwright/geometry/body"
	"ribwright/geometry/sizing/formula"
)

// The words that formulas meet as texts.
const (
	Sheltered = "sheltered"
	Open      = "open"
	Moving    = "moving"

	Beginner    = "beginner"
	Average     = "average"
	Experienced = "experienced"

	Sitting  = "sitting"
	Kneeling = "kneeling"
	Either   = "either"
)

// Waters, Skills and Postures list the accepted words.
func Waters() []string   { return []string{Sheltered, Open, Moving} }
func Skills() []string   { return []string{Beginner, Average, Experienced} }
func Postures() []string { return []string{Either, Sitting, Kneeling} }

// Inputs lists what formulas may use of the people and the water, and what is
// found when the boat is drawn and floated.
func Inputs(seats int) []formula.Input {
	length, weight, word, plain := formula.Of(formula.Length), formula.Of(formula.Mass), formula.Kind{Class: formula.Text}, formula.Of(formula.Plain)
	out := []formula.Input{
		{Name: "gear", Kind: weight, Doc: "everything carried besides the people"},
		{Name: "waters", Kind: word, Doc: "sheltered, open or moving"},
		{Name: "skill", Kind: word, Doc: "of the builder: beginner, average or experienced"},
		{Name: "longest_stick", Kind: length, Doc: "the longest sticks at hand"},
		{Name: "wood", Kind: word, Doc: "of gunwales, keel and stringers"},
		{Name: "rib_wood", Kind: word, Doc: "of the ribs"},
	}
	for _, who := range []string{"paddler", "partner"}[:seats] {
		out = append(out,
			formula.Input{Name: who + ".weight", Kind: weight, Doc: "as told"},
			formula.Input{Name: who + ".stature", Kind: length, Doc: "as told"},
			formula.Input{Name: who + ".posture", Kind: word, Doc: "sitting, kneeling or either"},
			formula.Input{Name: who + ".span_spread", Kind: length, Doc: "one standard deviation of the arm span, 0 when it was measured"},
		)
		for _, e := range (body.Person{Weight: 70, Stature: 1700}).Estimates() {
			out = append(out, formula.Input{Name: who + "." + e.Name, Kind: length, Doc: e.Doc + "; estimated from stature, weight and arm span"})
		}
	}
	afloat := func(name string, k formula.Kind, doc string) {
		out = append(out, formula.Input{Name: name, Kind: k, Doc: doc, Afloat: true})
	}
	afloat("draft", length, "water over the lowest point, loaded")
	afloat("freeboard", length, "least height of the gunwale line over the water, loaded")
	afloat("gm", length, "height of the metacenter over the weights, loaded")
	afloat("km", length, "height of the metacenter above the baseline, loaded")
	afloat("boat_center", length, "height of the empty boat's center of weight above the baseline")
	afloat("trim", formula.Of(formula.Angle), "bow up, loaded")
	afloat("all_up", weight, "boat, people and gear")
	afloat("boat_weight", weight, "the empty boat")
	afloat("waterline_length", length, "along the water, loaded")
	afloat("waterline_beam", length, "across the water, loaded")
	afloat("wetted", formula.Of(formula.Area), "skin under water, loaded")
	afloat("effort", formula.Of(formula.Force), "resistance at the speed asked for; to compare designs only")
	afloat("seat_width", length, "between the gunwales' outer faces at the paddler's seat")
	if seats == 2 {
		afloat("partner_seat_width", length, "between the gunwales' outer faces at the partner's seat")
	}
	afloat("extreme_beam", length, "greatest beam outside the gunwales")
	afloat("girth", length, "of the midship rib from gunwale to gunwale")
	afloat("gunwale_stick", length, "length of a gunwale before it is bent")
	afloat("rib_stick", length, "the longest rib blank")
	afloat("stem_length", length, "the greater side of a stem piece")
	afloat("stem_width", length, "the lesser side of a stem piece")
	afloat("tightest_rib", plain, "least inner radius over thickness of any rib")
	return out
}

// Required lists what a family must give besides the keys of the design.
func Required() []formula.Input {
	length := formula.Of(formula.Length)
	return []formula.Input{
		{Name: "seat_at", Kind: length, Doc: "place of the paddler along the boat, forward of midship positive"},
		{Name: "reach", Kind: length, Doc: "the width outside the gunwales that the paddler reaches over"},
	}
}

func requiredOfTwo() []formula.Input {
	length := formula.Of(formula.Length)
	return []formula.Input{
		{Name: "partner_seat_at", Kind: length, Doc: "place of the partner along the boat"},
		{Name: "partner_reach", Kind: length, Doc: "the width outside the gunwales that the partner reaches over"},
	}
}
