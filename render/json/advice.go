package json

import (
	"strings"

	"ribwright/geometry/finding"
	"ribwright/geometry/sizing/advice"
)

// Advice tells of the boats that would do, the one to begin with first.
func Advice(all []advice.Boat) Object {
	return Object{{"boats", each(all, func(b advice.Boat) Object {
		return Object{{"family", b.Family}, {"for", b.For}, {"length_mm", fixed(b.Length)}, {"beam_mm", fixed(b.Beam)}, {"mass_kg", fixed(b.Mass)},
			{"hours", fixed(b.Hours)}, {"cost", fixed(b.Cost)}, {"longest_stick_mm", fixed(b.Stick)}, {"scarfs", b.Scarfs}, {"gz_max_mm", fixed(b.Lever)},
			{"hard_bends", b.Hard}, {"missed", each(b.Missed, func(f finding.Finding) Object { return Object{{"about", f.About}, {"text", f.Words()}} })},
			{"dangers", b.Dangers}, {"why", strings.Join(b.Why, "; ")}, {"reasons", b.Why}, {"no_boat", b.NoBoat}}
	})}}
}
