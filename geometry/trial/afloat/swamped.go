package afloat

import (
	"fmt"
	"math"

	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/trial/swamped"
)

// findSwamped tells how the boat lies when it is full of water.
func (r *Report) findSwamped() {
	if r.Boat.Frame == nil {
		return
	}
	s := swamped.Of(r.Boat, r.Options.Water.Density)
	r.Swamped = s
	const about = "swamped"
	if s.Where == design.NoFlotation {
		r.Findings.Warn(about, finding.Estimate, "the design has no flotation: full of water the boat lifts %.0f kg itself when its wood is soaked, and people who sit in it want %.0f l more", s.Need.Soaked, math.Ceil(s.Need.Seat))
	}
	for _, l := range s.Fitted {
		r.lies(about+", people "+string(l.Posture), l, cure(s, l))
	}
	if len(s.Bags) == 0 {
		return
	}
	text := fmt.Sprintf("%.0f l in all, where %.0f l would just carry people sitting to the navel in water, who weigh half then, and a quarter of the gear's weight", s.Liters(), math.Ceil(s.Need.Seat))
	if want := s.Wanted(); want-s.Liters() > 1 {
		text += fmt.Sprintf("; %.0f l were wanted, and there is room for no more beside people, hangers and cross pieces", want)
	}
	if len(s.Fitted) > 1 {
		text += ". " + compared(s)
	}
	r.Findings.Say("flotation", finding.Estimate, "%s", text)
}

// compared says what as much as is needed at the sides alone and in the ends alone would do.
func compared(s *swamped.Report) string {
	one := func(l swamped.Lying) string {
		switch {
		case l.Fault != "":
			return l.Fault
		case l.GM <= 0:
			return fmt.Sprintf("GM %.0f mm: it rolls over", l.GM)
		}
		return fmt.Sprintf("GM %.0f mm, %s", l.GM, overWater(l))
	}
	return fmt.Sprintf("People on the floor, with %.0f l at the sides alone: %s. With %.0f l in the ends alone: %s", s.Sides.Liters, one(s.Sides), s.Ends.Liters, one(s.Ends))
}

// overWater says where the sheer lies, by its lowest place.
func overWater(l swamped.Lying) string {
	place := "amidships"
	switch least := l.Least(); least {
	case l.Midship:
	case l.Bow:
		place = "at the bow"
	default:
		place = "at the stern"
	}
	if l.Least() < 0 {
		return fmt.Sprintf("the sheer %.0f mm under water %s", -l.Least(), place)
	}
	return fmt.Sprintf("the sheer %.0f mm out of water %s", l.Least(), place)
}

// lies tells one case.
func (r *Report) lies(about string, l swamped.Lying, cure string) {
	floats := "the boat full of water floats with " + overWater(l)
	switch {
	case l.Fault != "":
		r.Findings.Judge(finding.Unsafe, about, finding.Estimate, "%s%s", l.Fault, cure)
	case l.Least() < 0:
		r.Findings.Warn(about, finding.Estimate, "%s (GM %.0f mm): nobody can bail it so%s", floats, l.GM, cure)
	case l.GM <= 0:
		r.Findings.Warn(about, finding.Estimate, "%s and rolls over (GM %.0f mm)%s", floats, l.GM, cure)
	case l.GM < swamped.Steady:
		r.Findings.Warn(about, finding.Estimate, "%s, hardly upright (GM %.0f mm, and how high people's weight lies is known to some 30 mm)%s", floats, l.GM, cure)
	case l.Posture == swamped.Holding:
		r.Findings.Say(about, finding.Estimate, "%s, upright (GM %.0f mm): hold on to it from both sides or at its ends", floats, l.GM)
	default:
		r.Findings.Say(about, finding.Estimate, "%s, upright (GM %.0f mm), carries %.0f kg of people and gear while the water carries the rest, and takes %.0f kg more before the sheer is under: it can be bailed and paddled ashore%s", floats, l.GM, l.Carried, math.Floor(l.More), steadier(l))
	}
}

// steadier says where a swamped boat is steadier than under people on their seats.
func steadier(l swamped.Lying) string {
	if l.Posture == swamped.Seated {
		return ", steadier from its floor than from its seats"
	}
	return ""
}

// cure says what to do about a case that is no good.
func cure(s *swamped.Report, l swamped.Lying) string {
	if l.Posture == swamped.Holding {
		return ". Fit more flotation"
	}
	low := s.Fitted[1]
	switch {
	case l.Posture == swamped.Seated && low.Upright() && low.Least() > 0:
		return ". Go down from the seats to the floor, or hold on outside"
	case !s.Where.Sides() && s.Sides.Upright() && s.Sides.Least() > 0:
		return fmt.Sprintf(". Hold on outside and do not climb in; %.0f l at the sides would keep it upright under people on its floor", s.Sides.Liters)
	case s.Where != design.SidesAndEnds:
		return ". Hold on outside and do not climb in; flotation at the sides and in the ends does more (inside.flotation)"
	}
	return ". Hold on outside and do not climb in; more beam or less gear does more than more foam"
}
