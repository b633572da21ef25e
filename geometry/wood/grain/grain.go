// Package grain tells how much of its strength wood keeps where the load does not run
// with its fibers: short grain in pieces sawn to a curve, plies that cross, bends that
// are pulled open. N, mm, N/mm2, radians.
package grain

import "math"

// The powers of Hankinson's formula for bending: that of the mean, and of the cautious
// side of what tests gave. Wood Handbook, from memory: 1.5 to 2.
const (
	Mean     = 2.0
	Cautious = 1.5
)

// Hankinson returns the strength of wood at an angle to its grain,
//
//	P Q / (P sin^n + Q cos^n)
//
// from the strengths along it (P) and across it (Q).
//
// Requires: along, across > 0; the angle's sign and half turns do not matter.
// Source: R. L. Hankinson, 1921, as in the Wood Handbook chapter 5.
func Hankinson(along, across, angle, power float64) float64 {
	sin, cos := math.Sincos(angle)
	s, c := sin*sin, cos*cos
	if power != Mean {
		s, c = math.Pow(s, power/2), math.Pow(c, power/2)
	}
	return along * across / (along*s + across*c)
}

// Short is the slope of grain past which a curved piece is looked at, 1 in 10, radians.
const Short = 0.0996686525

// Off returns the angle between two directions of lines, 0 to pi/2.
func Off(a, b float64) float64 {
	d := math.Abs(a - b)
	if d >= math.Pi {
		d = math.Mod(d, math.Pi)
	}
	return min(d, math.Pi-d)
}

// Diagonal is the share of the wood's strength in bending that plywood on edge has where
// the load runs between its plies' ways, at 45 degrees: 0.2 to 0.3, from memory.
const Diagonal = 0.2

// SheetPlies is how many plies a sheet of plywood has at the least. Common practice for
// sheets of 9 mm and more.
const SheetPlies = 5

// OnEdge returns the share of the wood's strength in bending that plywood of n equal
// plies has on edge, with the load at the angle to the grain of its faces. Plies along
// the load bear alone; between the two ways it falls to Diagonal.
//
// How: shares at 0, 45 and 90 degrees are (n+1)/2n, Diagonal and (n-1)/2n; between them
// by Hankinson's formula, scaled to meet all three.
func OnEdge(n int, angle float64) float64 {
	a := Off(angle, 0)
	end := float64(n+1) / 2 / float64(n)
	if a > math.Pi/4 {
		end, a = float64(n-1)/2/float64(n), math.Pi/2-a
	}
	// At 45 degrees: P Q / ((P + Q)/2) = Diagonal gives Q.
	across := Diagonal * end / (2*end - Diagonal)
	return Hankinson(end, across, a, Mean)
}

// RadialTension returns the greatest tension across the plies of a curved piece that a
// moment opens, N/mm2: 3 M/(2 R b h), R at mid-depth. From memory of timber codes; it
// follows from the equilibrium of the half of the section outside the middle.
func RadialTension(moment, radius, width, depth float64) float64 {
	return 1.5 * moment / (radius * width * depth)
}
