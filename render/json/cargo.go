package json

import "ribwright/geometry/trial/cargo"

// liveCargo tells what happens when live cargo moves; null without any.
func liveCargo(r *cargo.Report) field {
	if r == nil {
		return field{"live_cargo", none}
	}
	return field{"live_cargo", Object{
		{"who", r.Who}, {"mass_kg", r.Mass}, {"held_aside_mm", r.Held},
		{"moves", each(r.Moves, func(m cargo.Move) Object {
			return Object{{"what", m.What}, {"by_mm", m.By}, {"upset", m.Upset}, {"heel_deg", inDegrees(m.Heel)}, {"freeboard_mm", m.Freeboard},
				{"lever_left_mm", m.Lever}, {"paddlers_the_other_way_mm", m.Against}}
		})},
	}}
}
