package json

import (
	"ribwright/geometry/boat/flotation"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/trial/swamped"
)

// swampedOf tells how the boat lies full of water: what it lifts and lacks, where its
// flotation is, and how it lies with people holding on and sitting. Sheers are over the
// water, negative under it; trim is positive with the bow up; a case that finds no rest
// says why.
func swampedOf(s *swamped.Report) any {
	if s == nil {
		return nil
	}
	n := s.Need
	return Object{
		{"lift_kg", Object{{"dry", n.Dry}, {"soaked", n.Soaked}}},
		{"wants_l", Object{{"holding_on", n.Holding}, {"two_fifteenths", n.Basic}, {"sitting", n.Seat}, {"all_weight", n.Whole}}},
		{"assumes", Object{{"sitting_share", flotation.Sitting}, {"gear_share", flotation.WithGear}, {"wood", "soaked"}}},
		{"flotation", each(s.Bags, bagOf)},
		{"lies", each(s.All(), func(l swamped.Lying) Object {
			out := Object{{"people", string(l.Posture)}, {"flotation", l.Where.String()}, {"liters", l.Liters}, {"why_not", nil}, {"carried_kg", l.Carried}}
			if l.Fault != "" {
				out[3].value = l.Fault
				return out
			}
			return append(out, Object{{"gm_mm", l.GM}, {"righting_n_m_deg", l.Righting}, {"trim_deg", -inDegrees(l.Trim())}, {"takes_more_kg", l.More},
				{"sheer_over_water_mm", Object{{"bow", l.Bow}, {"midship", l.Midship}, {"stern", l.Stern}}}}...)
		})},
	}
}

func bagOf(b flotation.Bag) Object {
	kind := "bag"
	if b.Foam {
		kind = "foam"
	}
	return Object{{"where", b.Where}, {"kind", kind}, {"liters", b.Liters}, {"wanted_l", b.Wanted}, {"aft_mm", b.Aft}, {"fore_mm", b.Fore},
		{"across_mm", b.Across}, {"tall_mm", b.Tall}, {"straps", b.Straps}, {"strap_pull_n", b.Pull}}
}

// carriedOf tells where the boat balances as it is carried, and by what.
func carriedOf(c *afloat.Carried) any {
	if c == nil {
		return nil
	}
	out := Object{{"mass_kg", c.Mass}, {"balance_mm", c.Balance}, {"by", nil}, {"by_at_mm", nil}}
	if c.By != "" {
		out[2].value, out[3].value = c.By, c.At
	}
	return out
}
