package balance

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
