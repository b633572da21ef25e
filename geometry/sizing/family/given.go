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

// inputs lists what formulas may use of the people and the water, and what is found
// when the boat is drawn and floated.
func inputs(seats int) []formula.Input {
	length, weight, word, plain := formula.Of(formula.Length), formula.Of(formula.Mass), formula.Kind{Class: formula.Text}, formula.Of(formula.Plain)
	angle := formula.Of(formula.Angle)
	out := []formula.Input{
		{Name: "gear", Kind: weight, Doc: "everything carried besides the people"},
		{Name: "live", Kind: weight, Doc: "live cargo: passengers and dogs, but for one who sits in the bow of a tandem"},
		{Name: "placed", Kind: weight, Doc: "of that, what was given a place"},
		{Name: "placed_at", Kind: length, Doc: "where the weight of what was given a place comes down"},
		{Name: "live_long", Kind: length, Doc: "the floor that the rest takes up along the boat, one behind the other"},
		{Name: "live_center", Kind: length, Doc: "how far its weight comes down ahead of the after end of that"},
		{Name: "waters", Kind: word, Doc: "sheltered, open or moving"},
		{Name: "skill", Kind: word, Doc: "of the builder: beginner, average or experienced"},
		{Name: "longest_stick", Kind: length, Doc: "the longest sticks at hand"},
		{Name: "wood", Kind: word, Doc: "of gunwales, keel and stringers"},
		{Name: "rib_wood", Kind: word, Doc: "of the ribs"},
	}
	if seats == 2 {
		out = append(out, formula.Input{Name: "partner.role", Kind: word, Doc: "paddler; or passenger or dog, who sits on the floor in the bow"})
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
	for _, found := range []formula.Input{
		{Name: "draft", Kind: length, Doc: "water over the lowest point, loaded"},
		{Name: "freeboard", Kind: length, Doc: "least height of the gunwale line over the water, loaded"},
		{Name: "gm", Kind: length, Doc: "height of the metacenter over the weights, loaded"},
		{Name: "km", Kind: length, Doc: "height of the metacenter above the baseline, loaded"},
		{Name: "boat_center", Kind: length, Doc: "height of the empty boat's center of weight above the baseline"},
		{Name: "trim", Kind: angle, Doc: "bow up, loaded"},
		{Name: "trim_rise", Kind: length, Doc: "the same over the waterline's length"},
		{Name: "gz_max", Kind: length, Doc: "the greatest righting lever, loaded"},
		{Name: "righting_moment", Kind: formula.Of(formula.Moment), Doc: "the greatest, loaded"},
		{Name: "stands_to", Kind: angle, Doc: "heel past which the boat goes over by itself, or water comes in if that is earlier, loaded"},
		{Name: "gz_left", Kind: length, Doc: "the righting lever left at 40 degrees of heel, or where water comes in if that is earlier, loaded"},
		{Name: "flooding", Kind: angle, Doc: "heel at which water comes in, loaded"},
		{Name: "held_shift", Kind: length, Doc: "how far all people's weight can be moved aside at once and held, loaded"},
		{Name: "live_held", Kind: length, Doc: "how far all live cargo's weight can be moved aside at once and held while the paddlers sit still, loaded; 0 without live cargo"},
		{Name: "firmness", Kind: plain, Doc: "the least, from its guess on, with which standing comes to 1"},
		{Name: "all_up", Kind: weight, Doc: "boat, people and gear"},
		{Name: "boat_weight", Kind: weight, Doc: "the empty boat"},
		{Name: "waterline_length", Kind: length, Doc: "along the water, loaded"},
		{Name: "waterline_beam", Kind: length, Doc: "across the water, loaded"},
		{Name: "wetted", Kind: formula.Of(formula.Area), Doc: "skin under water, loaded"},
		{Name: "effort", Kind: formula.Of(formula.Force), Doc: "resistance at the speed asked for; to compare designs only"},
		{Name: "seat_width", Kind: length, Doc: "between the gunwales' outer faces at the paddler's seat"},
		{Name: "partner_seat_width", Kind: length, Doc: "between the gunwales' outer faces at the partner's seat"},
		{Name: "extreme_beam", Kind: length, Doc: "greatest beam outside the gunwales"},
		{Name: "girth", Kind: length, Doc: "of the midship rib from gunwale to gunwale"},
		{Name: "gunwale_stick", Kind: length, Doc: "length of a gunwale before it is bent"},
		{Name: "rib_stick", Kind: length, Doc: "the longest rib blank"},
		{Name: "stem_length", Kind: length, Doc: "the greater side of a stem piece"},
		{Name: "stem_width", Kind: length, Doc: "the lesser side of a stem piece"},
		{Name: "tightest_rib", Kind: plain, Doc: "least inner radius over thickness of any rib"},
	} {
		if found.Afloat = true; seats == 2 || found.Name != "partner_seat_width" {
			out = append(out, found)
		}
	}
	return out
}

// required lists what a family must give besides the keys of the design.
func required(seats int) []formula.Input {
	length := formula.Of(formula.Length)
	return []formula.Input{
		{Name: "seat_at", Kind: length, Doc: "place of the paddler along the boat, forward of midship positive"},
		{Name: "reach", Kind: length, Doc: "the width outside the gunwales that the paddler reaches over"},
		{Name: "partner_seat_at", Kind: length, Doc: "place of the partner along the boat"},
		{Name: "partner_reach", Kind: length, Doc: "the width outside the gunwales that the partner reaches over"},
	}[:2*seats]
}
