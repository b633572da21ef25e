// Package sail sizes a small sail for a canoe from the boat's own righting moment:
// what area, in what wind, with the crew where; where mast and leeboard go and what
// they bear. Nothing in it certifies a boat.
package sail

import (
	"fmt"
	"math"

	"ribwright/geometry/measure"
)

// Air is the density of air at 15 degrees and sea level, kg/m3.
const Air = 1.225

// Force is the coefficient of a sail's sideways force on its area, an upper bound
// close-hauled. From memory, 1.0 to 1.5.
const Force = 1.2

// Gust is how much harder a gust blows than the wind that a sailor judges. From
// memory, 1.3 to 1.6 on lakes.
const Gust = 1.4

// Pressure returns the dynamic pressure of a wind in m/s, N/m2.
func Pressure(v float64) float64 { return Air * v * v / 2 }

// Carries returns the wind, m/s, in which a sail heels a boat to a heel: the wind's
// moment q C A h cos^n(heel) equals the righting moment given for that heel.
//
//	moment in N m, area in m2, arm in m from the lateral resistance to the sail's
//	center, heel in radians; n is 1.3 for a sail that leans with the boat, or 0 for
//	an upright arm, which errs on the safe side.
func Carries(moment, area, arm, heel, n float64) float64 {
	return math.Sqrt(2 * math.Max(0, moment) / (Air * Force * area * arm * math.Pow(math.Cos(heel), n)))
}

// Windage returns the moment of a beam wind on what stands over the water, N m: 0.3
// ALV (ALV/LWL + TM) v2, with the area in m2, waterline and draft in m, wind in m/s.
//
// Source: wind heel of the worksheets of ISO 12217-1, a borrowed yardstick.
func Windage(area, waterline, draft, v float64) float64 {
	return 0.3 * area * (area/waterline + draft) * v * v
}

// Sailing returns the area, m2, from which a boat of a mass, kg, counts as a sailing
// boat: 0.07 m^(2/3).
//
// Source: ISO 12217-3 (2002), table 2, which leaves canoes out: a borrowed yardstick.
func Sailing(mass float64) float64 { return 0.07 * math.Pow(mass, 2.0/3) }

// Knots turns a limit in m/s into whole knots, down: the next one would be past it.
func Knots(v float64) int { return int(v/measure.Knot + 1e-9) }

// Beaufort returns the number of the scale for a wind, m/s, by v = 0.836 B^1.5.
func Beaufort(v float64) int { return int(math.Round(math.Pow(math.Max(0, v)/0.836, 2.0/3))) }

// Gale is the top of force 8 of the scale, m/s: that a boat would go over in more
// than that needs no figure.
const Gale = 20.7

// TakeIn returns the wind, m/s, to take a size of sail in at with the crew in a
// place, to the tenth below; Rough when it is carried until all sail comes down.
func (f *Fit) TakeIn(size int, p Place) float64 {
	s := f.States[size]
	reef := s.Limits[p].Reef
	if f.Run != nil {
		reef = math.Min(reef, f.Run.Most()/Gust*math.Sqrt(f.States[0].Area*f.States[0].Arm/(s.Area*s.Arm)))
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

// Spared says which reefs change nothing with the crew as chosen; nothing when each does something.
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
	return fmt.Sprintf("with everyone left in the middle full sail must come in at %.1f m/s (%d kn)", v, Knots(v))
}

// Over letters a wind, m/s, in which a boat goes over.
func Over(v float64) string {
	if v > Gale {
		return fmt.Sprintf("over %.0f", math.Floor(Gale))
	}
	return fmt.Sprintf("%.1f", math.Floor(v*10)/10)
}

// Rough is the wind, m/s, past which no open canoe has a sail up, whatever its
// righting moment: the top of force 4, where waves break into it. Common practice,
// no source.
const Rough = 7.9

func (f *Fit) tabulate() {
	f.Wind = Wind{}
	for i := range f.States {
		f.Wind.Reef = append(f.Wind.Reef, f.TakeIn(i, f.Chosen()))
	}
	f.Wind.Stop = f.Wind.Reef[len(f.Wind.Reef)-1]
}
