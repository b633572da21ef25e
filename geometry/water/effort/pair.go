package effort

import (
	"math"

	"ribwright/geometry/measure"
)

// Together returns the wave resistance in N of two thin ships side by side at the
// speed u, m/s, their middle lines spacing mm apart and the middle of b ahead mm
// before the middle of a, in water of the density, kg/m3.
//
// How: the amplitudes of both add in every direction, each with the phase of its
// place; over both sides of the wake what is left of the cross term is
//
//	2 Re(A conj B) cos(k0 l sqrt(l2 - 1) spacing)
//
// Returns: four times one ship's for two alike at spacing 0, twice when they are far
// apart; the same with the ships changed over.
// Accuracy: as Waves. The waves of one hull are not bent by the other, and nothing
// is said of the water squeezed between hulls that nearly touch.
func Together(a, b Grid, ahead, spacing, density, u float64) float64 {
	if !(u > 0) {
		return 0
	}
	k0 := measure.Gravity / (u * u)
	rowA, rowB := make([]float64, len(a.Half)), make([]float64, len(b.Half))
	apart := math.Abs(spacing) / 1000
	energy := func(l float64) float64 {
		pa, qa := a.amplitude(k0, l, rowA)
		pb, qb := b.amplitude(k0, l, rowB)
		sin, cos := math.Sincos(k0 * l * ahead / 1000)
		pb, qb = pb*cos-qb*sin, qb*cos+pb*sin
		cross := math.Cos(k0 * l * math.Sqrt(l*l-1) * apart)
		return pa*pa + qa*qa + pb*pb + qb*qb + 2*(pa*pb+qa*qb)*cross
	}
	rate := k0 * (math.Max(a.Length, b.Length) + 2*math.Abs(ahead)) / 1000
	return scale(density, u) * sum(energy, func(v float64) float64 {
		// The cross term's phase is k0 spacing sinh(2 v) / 2.
		w := step(rate, v)
		return min(w, longest/(k0*apart*math.Cosh(2*(v+w))+1e-9))
	})
}
