package inside

import (
	"slices"

	"ribwright/geometry/design"
)

// Room that people want between what lies at both sides of them, mm: hips, 456 mm for 95
// of 100 women (ANSUR II), in their clothes, and so the knees of one who kneels; legs and
// feet that are stretched out.
const (
	hipRoom = 480.0
	legRoom = 430.0
)

// Where hips are of one whose weight comes down at a place, mm behind it and ahead.
// Estimates.
const hipsAft, hipsFore = 250.0, 150.0

// Stretch is a length of the boat in which people want so much room across it, mm.
type Stretch struct{ Aft, Fore, Across float64 }

// Rooms cuts the boat from one station to another into stretches in which people want the
// same room, from aft forward; none where nobody sits or reaches.
func Rooms(d *design.Design, aft, fore float64) []Stretch {
	var people []Stretch
	cuts := []float64{aft, fore}
	for _, p := range d.Crew {
		w, at := placed(d, p), d.WeightAt(p)
		hips := Stretch{at - hipsAft, at + hipsFore, hipRoom}
		if !w.braces {
			hips.Fore = w.fore
		}
		for _, s := range []Stretch{hips, {w.aft, w.ahead(), legRoom}} {
			people, cuts = append(people, s), append(cuts, s.Aft, s.Fore)
		}
	}
	slices.Sort(cuts)
	var out []Stretch
	for i := 1; i < len(cuts); i++ {
		s := Stretch{Aft: max(aft, cuts[i-1]), Fore: min(fore, cuts[i])}
		if s.Fore <= s.Aft {
			continue
		}
		for _, p := range people {
			if p.Aft < s.Fore && p.Fore > s.Aft {
				s.Across = max(s.Across, p.Across)
			}
		}
		if n := len(out); n > 0 && out[n-1].Across == s.Across {
			out[n-1].Fore = s.Fore
			continue
		}
		out = append(out, s)
	}
	return out
}
