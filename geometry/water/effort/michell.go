package effort

import (
	"math"

	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
)

// Waves returns the wave resistance of a thin ship in N at the speed u, m/s, in
// water of the density, kg/m3.
//
// How: Michell's integral
//
//	R = 4 rho g2 / (pi U2) * integral over l from 1 of (P2 + Q2) l2 / sqrt(l2 - 1)
//
// with l = cosh v, so that the end is smooth, by five-point Gauss in panels that
// follow the phase, until the rest is under 1e-5 of the sum.
// Accuracy: for the parabolic hull, 1 % with 21 stations and 11 waterlines, 0.3 %
// with 41 and 21, 0.1 % with 81 and 41. The theory itself overstates humps and
// hollows, and says nothing of transoms or of planing.
// Source: J. H. Michell, "The wave resistance of a ship", Phil. Mag. (5) 45, 1898.
func (g Grid) Waves(density, u float64) float64 {
	if !(u > 0) {
		return 0
	}
	k0 := measure.Gravity / (u * u)
	hull := g.steps()
	energy := func(l float64) float64 {
		p, q := hull.amplitude(k0, l)
		return p*p + q*q
	}
	return scale(density, u) * sum(energy, func(v float64) float64 { return step(k0*g.Length/1000, v) })
}

// scale is what stands before Michell's integral.
func scale(density, u float64) float64 {
	return 4 * density * measure.Gravity * measure.Gravity / (math.Pi * u * u)
}

// The panels: no wider than widest in v, so narrow that the phase turns by
// longest at most; far enough out that nothing is missed and, in the end, no
// farther than lastL, beyond which a canoe makes ripples that friction counts.
const (
	widest  = 0.25
	longest = 4.0
	lastL   = 80.0
	rest    = 1e-5
)

// step returns the width of a panel at v for a phase of P2 + Q2 that turns at the
// rate, per unit of l: rate sinh v per unit of v. Near v = 0 the turn grows along
// the panel, which the second term bounds.
func step(rate, v float64) float64 {
	return min(widest, longest/(rate*math.Sinh(v)+math.Sqrt(rate*longest/2)))
}

// sum adds up energy(l) l2 over v, in panels as wide as width says.
func sum(energy, width func(float64) float64) float64 {
	total, quiet := 0.0, 0
	felt := func(v float64) float64 { l := math.Cosh(v); return energy(l) * l * l }
	for v := 0.0; ; {
		l := math.Cosh(v)
		if l > lastL {
			return total
		}
		w := width(v)
		part := curve.Integrate(felt, v, v+w, 1)
		total += part
		// The tail falls as the fourth power of l: what is left is about a
		// quarter of the last part times l over its step.
		if left := part * l / (4 * math.Sinh(v+w) * w); left < rest*total && l > 3 {
			quiet++
		} else {
			quiet = 0
		}
		if quiet > 8 {
			return total
		}
		v += w
	}
}

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
	hullA, hullB := a.steps(), b.steps()
	apart := math.Abs(spacing) / 1000
	energy := func(l float64) float64 {
		pa, qa := hullA.amplitude(k0, l)
		pb, qb := hullB.amplitude(k0, l)
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
