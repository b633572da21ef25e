package json

import (
	"math"

	"ribwright/geometry/trial/balance"
)

// promised is the trial of the neutral set, or of unset ribs when there is none.
func promised(trials []balance.Trial) balance.Trial { return trials[min(1, len(trials)-1)] }

// without tells of every member that is taken out by itself and, where they are several,
// of all of them together.
func without(out *balance.Without, t balance.Trial, alone []balance.Band) []Object {
	list := []Object{}
	for i, name := range out.Names {
		list = append(list, changed(name, alone[i]))
	}
	if len(out.Names) > 1 {
		list = append(list, changed("all of them together", t.Band))
	}
	return list
}

// changed tells by how much the beam changes where it changes most.
func changed(member string, b balance.Band) Object {
	return Object{{"member", member}, {"beam_change_mm", ranged(b.Over())},
		{"least_station_mm", fixed(b.Least.X)}, {"most_station_mm", fixed(b.Most.X)}}
}

// ranged gives a range to the tenth: it is an estimate.
func ranged(r balance.Range) Object {
	return Object{{"least", tenth(r.Least)}, {"likely", tenth(r.Likely)}, {"most", tenth(r.Most)}}
}

func tenth(v float64) fixed { return fixed(math.Round(v*10) / 10) }

func unsettled(c balance.Cause) Object {
	return Object{{"heads_held_share", fixed(c.Case.Heads)}, {"opened_by_width_alone", c.Case.Upright > 0}, {"ends_forced_cold", c.Case.Cold > 0},
		{"cloth_n_per_mm", fixed(c.Case.Cloth)}, {"narrower_mm", tenth(-c.Least)}, {"wider_mm", tenth(c.Most)}}
}
