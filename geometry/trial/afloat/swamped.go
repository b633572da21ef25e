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
	about := "swamped"
	if s.Where == design.NoFlotation {
		r.Findings.Warn(about, finding.Estimate, "the design has no flotation: full of water the boat lifts %.0f kg itself when its wood is soaked, and people who sit in it want %.0f l more", s.Need.Soaked, math.Ceil(s.Need.Seat))
	}
	hold, sit := s.Fitted[0], s.Fitted[1]
	r.lies(about+", people holding on", hold, "")
	r.lies(about+", people sitting in it", sit, r.better(s))
	for _, b := range s.Bags {
		if b.Wanted-b.Liters < 1 {
			continue
		}
		text := fmt.Sprintf("there is room for %.0f l of the %.0f l that are wanted there", b.Liters, b.Wanted)
		if sit.Fault == "" {
			r.Findings.Say("flotation, "+b.Where, finding.Estimate, "%s; what else there is carries the people all the same, with less to spare", text)
		} else {
			r.Findings.Judge(finding.Missed, "flotation, "+b.Where, finding.Estimate, "%s: people cannot sit in the swamped boat", text)
		}
	}
	if len(s.Bags) > 0 {
		r.Findings.Say("flotation", finding.Estimate, "%.0f l in all, where %.0f l would just carry people sitting to the navel in water: half their weight, and a quarter of the gear's, is taken. %s", s.Liters(), math.Ceil(s.Need.Seat), compared(s))
	}
}

// compared says what the same need at the sides alone and in the ends alone would do.
func compared(s *swamped.Report) string {
	one := func(l swamped.Lying) string {
		if l.Fault != "" {
			return l.Fault
		}
		if l.GM <= 0 {
			return fmt.Sprintf("GM %.0f mm: it rolls over under people who sit in it", l.GM)
		}
		return fmt.Sprintf("GM %.0f mm, %s", l.GM, overWater(l))
	}
	return fmt.Sprintf("Sitting, with %.0f l at the sides alone: %s. With %.0f l in the ends alone: %s", s.Sides.Liters, one(s.Sides), s.Ends.Liters, one(s.Ends))
}

// overWater says where the sheer lies, lowest first named.
func overWater(l swamped.Lying) string {
	place, least := "amidships", l.Midship
	if l.Bow < least {
		place, least = "at the bow", l.Bow
	}
	if l.Stern < least {
		place, least = "at the stern", l.Stern
	}
	if least < 0 {
		return fmt.Sprintf("the sheer %.0f mm under water %s", -least, place)
	}
	return fmt.Sprintf("the sheer %.0f mm out of water %s", least, place)
}

// lies tells one case.
func (r *Report) lies(about string, l swamped.Lying, cure string) {
	switch {
	case l.Fault != "":
		r.Findings.Judge(finding.Unsafe, about, finding.Estimate, "%s%s", l.Fault, cure)
	case l.GM <= 0:
		r.Findings.Warn(about, finding.Estimate, "the boat full of water floats with %s, and rolls over (GM %.0f mm): hold on to it outside and do not climb in%s", overWater(l), l.GM, cure)
	case l.GM < steady:
		r.Findings.Warn(about, finding.Estimate, "the boat full of water floats with %s, hardly upright (GM %.0f mm, which the height of people's weight alone may take away): sit low and still, or hold on outside%s", overWater(l), l.GM, cure)
	default:
		r.Findings.Say(about, finding.Estimate, "the boat full of water floats upright with %s (GM %.0f mm), and would carry %.0f kg more before it is under", overWater(l), l.GM, math.Floor(l.Spare))
	}
}

// steady is the GM under which nobody should rely on it, mm: how high people's weight lies
// is known to some 30 mm, and twice that counts where half of it is carried by the water.
const steady = 60.0

// better names the place of flotation that would keep people sitting upright.
func (r *Report) better(s *swamped.Report) string {
	if s.Where.Sides() || !s.Sides.Upright() {
		return ""
	}
	return fmt.Sprintf("; %.0f l at the sides would keep it upright", s.Sides.Liters)
}
