package beam

import "math"

// Rigidity is the modulus of rigidity of wood along the grain over its MOE: 0.06 to 0.09 in most
// woods. From memory of the Wood Handbook, FPL-GTR-282, table 5-1; common practice takes one
// sixteenth.
const Rigidity = 1.0 / 16

// TwistStress returns the greatest shear stress, N/mm2, of a solid rectangular stick
// with sides a and b (mm) and the modulus of rigidity g (N/mm2) that is twisted by so
// many radians per mm. It stands at the middles of the longer sides.
//
//	g twist c (1 - 8/pi^2 sum over odd n of 1/(n^2 cosh(n pi long/2c))), c the shorter side
//
// Source: S. P. Timoshenko and J. N. Goodier, Theory of Elasticity, torsion of
// rectangular bars. Wood is stiffer one way than another, which this leaves out.
func TwistStress(a, b, g, twist float64) float64 {
	short, long := math.Min(a, b), math.Max(a, b)
	sum, less := 0.0, math.Exp(-math.Pi*long/(2*short))
	for n, e := 1.0, less; n < 40; n, e = n+2, e*less*less {
		sum += 2 * e / (n * n * (1 + e*e)) // 1/cosh u is 2/(e^u + e^-u)
	}
	return g * twist * short * (1 - 8/(math.Pi*math.Pi)*sum)
}
