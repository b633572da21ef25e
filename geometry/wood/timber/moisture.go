package timber

import "math"

// ServiceMoisture is the moisture of wood under cover in use, and of the strength
// table, %.
const ServiceMoisture = 12.0

// LeastMoisture returns the moisture in % that stock should have for a bend of
// the band: 16 for a mild one, 23 for a severe one, 0 where it does not matter.
//
// Source: extension articles on bending, which give at least 16 % for mild bends
// and 23 to 25 % for severe ones.
func LeastMoisture(b Band) float64 {
	switch b {
	case Steamed:
		return 16
	case Picked, Strap:
		return 23
	}
	return 0
}

// dryStock is the moisture in % under which stock is steamed longer.
const dryStock = 20.0

// SteamTime returns how many minutes a piece is steamed at 100 C: SteamMinutes
// from 20 % of moisture up, at least 30 minutes for 10 mm when it is drier.
//
// Units: thickness mm >= 0, moisture %.
// Source: the shop rule; the longer time from memory of the Wood Handbook. About
// twice the time makes the inner face wrinkle.
func SteamTime(thickness, moisture float64) float64 {
	if moisture >= dryStock {
		return SteamMinutes(thickness)
	}
	return math.Max(SteamMinutes(thickness), 3*thickness)
}

// Shrink returns by how much a piece of the given size in mm across the grain
// shrinks when it dries from one moisture to another, %: size times coefficient
// times the difference. Negative when it takes up moisture.
//
// Source: Wood Handbook, chapter on moisture; good between 6 and 25 %.
func Shrink(size, coefficient, from, to float64) float64 {
	return size * coefficient * (from - to)
}
