package json

import (
	"ribwright/geometry/outfit/pair"
	"ribwright/geometry/wood/beam"
	"ribwright/layout"
)

// Pair gathers what was worked out of a pair; the design is the first one's; doc are
// the sheets of its patterns, nil without any.
//
// Errors: a design that has no fingerprint, which Check would have refused.
func Pair(c *pair.Craft, doc *layout.Document) (Object, error) {
	_, lash := c.Worst()
	first, second, b := c.Boats[0].Frame.Design, c.Boats[1].Frame.Design, c.Beams
	return outfit(first, "pair", Object{
		{"boats", []string{first.Title, second.Title}},
		{"purpose", c.Pair.Purpose.String()}, {"spacing_mm", c.Spacing}, {"width_over_all_mm", c.Over}, {"displacement_kg", c.Load.Mass},
		{"bm_mm", c.BM}, {"gm_mm", c.GM}, {"gm_single_mm", c.Single},
		{"list_deg", inDegrees(c.Rest.Heel)}, {"freeboard_min_mm", c.Rest.Freeboard},
		{"beams_over_water_mm", c.Beneath}, {"lifting_moment_n_m", c.Lifting},
		{"to_starboard", pairCurve(c.Curves[0])}, {"to_port", pairCurve(c.Curves[1])}, {"lesser_of_both", pairCurve(c.Lesser())},
		{"beam_stations_mm", as[significant](b.At...)},
		{"beam_width_mm", b.Width}, {"beam_depth_mm", b.Depth}, {"beam_length_mm", b.Long}, {"beam_species", b.Wood.Name},
		{"beam_kg", c.BeamMass()}, {"working_stress_n_mm2", beam.Working(b.Wood)}, {"beams_enough", b.Enough},
		{"lashing_turns", pair.Turns(lash)},
		{"cases", each(c.Cases, pairCase)},
		{"waves", each(c.Waves, func(v pair.Wave) Object {
			return Object{{"speed_m_s", v.Speed}, {"far_apart_n", v.Apart}, {"together_n", v.Together}}
		})},
		{"practice", ranges(c.Practices)}, {"findings", notes(c.Findings)},
	}, doc)
}

func pairCase(k pair.Case) Object {
	sag := k.Sag
	if sag == 0 { // not worked
		sag = none
	}
	return Object{{"name", k.Name}, {"load_n", k.Load}, {"moment_n_m", k.Moment}, {"stress_n_mm2", k.Stress},
		{"sag_mm", sag}, {"lashing_n", k.Lash}, {"taken_as", k.Why}}
}

func pairCurve(c pair.Curve) Object {
	return Object{
		{"gz", each(c.Levers, func(v pair.Lever) Object {
			return Object{{"heel_deg", inDegrees(v.Heel)}, {"gz_mm", v.GZ}, {"windward_share", v.Share}, {"freeboard_mm", v.Freeboard}}
		})},
		{"lift_deg", inDegrees(c.Lift)}, {"downflooding_deg", inDegrees(c.Flooded)},
	}
}
