// Package balance works out what holds a frame's shape when there is no mould:
// the gunwales want to straighten, the bent ribs want to open, cross pieces hold
// what is left. It gives the force in every cross piece, how far the boat moves
// when some are taken out, and how far each rib should stand open before it is
// fitted so that the cross pieces carry nothing.
//
// The model is one gunwale in plan; the other is its mirror. It is a beam of
// cubic elements, pinned at the stems, on the springs of the ribs. Offsets are
// changes of half-breadth from the design, outward positive, small against the
// boat. Rib heads are hinged in their mortises; the twist of the gunwales, the
// stringers, the skin and the breasthooks' grip are left out, and the ends are
// free to draw together by the fraction of a millimetre that widening takes.
// Source: beam theory as in S. Timoshenko, Strength of Materials, and M. Hetenyi,
// Beams on Elastic Foundation; recalled, and checked by closed forms in the tests.
package balance

import "math"

// Rail is one gunwale seen from above, between its pinned ends. Station x in mm.
type Rail struct {
	From, To  float64                 // stations of the ends, From < To, mm
	Stiffness func(x float64) float64 // against bending sideways, N mm2, > 0
	Strain    func(x float64) float64 // how much more it is curved than it lies by itself, d2y/dx2, 1/mm; negative where it bulges
	Kinks     []float64               // stations where either of them has a corner, mm
}

// The three-point Gauss rule on [-1, 1], exact to the fifth degree. Abramowitz
// and Stegun, table 25.4.
var (
	gaussAt     = [3]float64{-0.7745966692414834, 0, 0.7745966692414834}
	gaussWeight = [3]float64{5.0 / 9, 8.0 / 9, 5.0 / 9}
)

// element is one piece of the rail between two nodes: its stiffness against
// offset and turn at either end, and the push of its strain on them.
type element struct {
	k    [4][4]float64
	push [4]float64
}

// element integrates the piece from a to b. With the curvatures B of the four
// cubic shapes (Hermite),
//
//	k = ∫ S Bᵀ B dx    push = -∫ S g B dx
//
// S the stiffness and g the strain. It is exact for even S and a strain that
// runs straight.
func (r Rail) element(a, b float64) element {
	var e element
	h := b - a
	for i, at := range gaussAt {
		x, w := (a+b)/2+at*h/2, gaussWeight[i]*h/2
		s, g := r.Stiffness(x), r.Strain(x)
		shape := curvatures((at+1)/2, h)
		for p := range 4 {
			e.push[p] -= w * s * g * shape[p]
			for q := range 4 {
				e.k[p][q] += w * s * shape[p] * shape[q]
			}
		}
	}
	return e
}

// curvatures returns the second derivatives of the four cubic shapes at the
// share t of an element of length h.
func curvatures(t, h float64) [4]float64 {
	return [4]float64{(12*t - 6) / (h * h), (6*t - 4) / h, (6 - 12*t) / (h * h), (6*t - 2) / h}
}

// forces returns what the ends of the element bear at the given offsets and
// turns: force and moment at its first node, then at its second.
func (e element) forces(u [4]float64) [4]float64 {
	var out [4]float64
	for p := range 4 {
		out[p] = -e.push[p]
		for q := range 4 {
			out[p] += e.k[p][q] * u[q]
		}
	}
	return out
}

// longest is the greatest length of an element, mm: where ribs stand farther
// apart the rail is cut finer, so that its changing slope is followed.
const longest = 150.0

// cuts returns the nodes: the given places in order, without doubles, with the
// stretches between them cut into pieces of at most longest/fine.
func cuts(places []float64, fine int) []float64 {
	out := []float64{places[0]}
	for _, p := range places[1:] {
		from := out[len(out)-1]
		if p-from < sameStation {
			continue
		}
		n := int(math.Ceil((p - from) / longest * float64(fine)))
		n = max(n, fine)
		for i := 1; i <= n; i++ {
			out = append(out, from+(p-from)*float64(i)/float64(n))
		}
	}
	return out
}

// sameStation is the distance in mm under which two members push on one place:
// far below what can be marked, and long enough for an element.
const sameStation = 0.01
