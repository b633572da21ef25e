package sail

import (
	"fmt"
	"math"
)

// Gale is the top of force 8 of the scale, m/s: that a boat would go over in more
// than that needs no figure.
const Gale = 20.7

// TakeIn returns the wind, m/s, to take a size of sail in at with the crew in a
// place, to the tenth below; Rough when it is carried until all sail comes down.
func (f *Fit) TakeIn(size int, p Place) float64 {
	s := f.States[size]
	reef := s.Limits[p].Reef
	if f.Run != nil {
		reef = math.Min(reef, f.Run.Bow/Gust*math.Sqrt(f.States[0].Area*f.States[0].Arm/(s.Area*s.Arm)))
	}
	if reef >= Rough {
		return Rough
	}
	return math.Floor(reef*10) / 10
}

// Needed returns how many sizes of the sail are of use with the crew in a place: none
// after the first that is carried until all sail comes down.
func (f *Fit) Needed(p Place) int {
	for i := range f.States {
		if f.TakeIn(i, p) == Rough {
			return i + 1
		}
	}
	return len(f.States)
}

// Useful returns how many sizes are of use wherever the crew sits.
func (f *Fit) Useful() int {
	n := 1
	for _, p := range Places() {
		n = max(n, f.Needed(p))
	}
	return n
}

// Spared says which reefs change nothing with the crew as chosen; nothing when each
// does something.
func (f *Fit) Spared() string {
	switch n := f.Needed(f.Chosen()); {
	case n == len(f.States):
		return ""
	case n == 1:
		return "no reef is needed, for full sail is carried until all sail comes down"
	default:
		return fmt.Sprintf("no further reef is needed, for with %s the sail is carried until all of it comes down", f.States[n-1].Name)
	}
}

// InMiddle says when full sail comes in with everyone left in the middle.
func (f *Fit) InMiddle() string {
	v := f.TakeIn(0, Middle)
	if v == Rough {
		return "with everyone left in the middle full sail is carried as long"
	}
	return fmt.Sprintf("with everyone left in the middle full sail must come in at %.1f m/s (%.0f kn)", v, Knots(v))
}

// Over letters a wind, m/s, in which a boat goes over.
func Over(v float64) string {
	if v > Gale {
		return fmt.Sprintf("over %.0f", math.Floor(Gale))
	}
	return fmt.Sprintf("%.1f", v)
}
