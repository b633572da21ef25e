package json

import (
	"ribwright/geometry/trial/yardstick"
	"ribwright/geometry/water/float"
)

// standing tells how a boat stands; what it never comes to is null. Trim is over the
// waterline's length, positive with the bow up.
func standing(s float.Standing) field {
	return field{"standing", Object{
		{"gz_max_mm", s.Most}, {"gz_max_deg", inDegrees(s.MostAt)}, {"righting_moment_max_n_m", s.Moment / 1000},
		{"goes_over_deg", inDegrees(s.GoesOver)}, {"flooding_deg", inDegrees(s.Flooding)},
		{"held_shift_mm", s.Held}, {"trim_mm", s.Trim},
	}}
}

// known tells how known boats stand with so many people, the steadiest first.
func known(people int) field {
	return field{"known_boats", each(yardstick.For(people), func(b yardstick.Boat) Object {
		return Object{{"name", b.Name}, {"from", b.From}, {"mass_kg", b.Mass}, {"gz_max_mm", b.Lever}, {"righting_moment_max_n_m", b.Moment},
			{"flooding_deg", b.Flooding}, {"held_shift_mm", b.Held}}
	})}
}
