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
//
// Source: beam theory as in S. Timoshenko, Strength of Materials, and M. Hetenyi,
// Beams on Elastic Foundation; recalled, and checked by closed forms in the tests.
package balance

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
)

// Member is a bent rib or a cross piece as the gunwales feel it.
type Member struct {
	Name      string
	At        float64 // station of its middle, mm
	Stiffness float64 // N per mm: of a rib's pair of heads against opening, >= 0; of a cross piece along itself, > 0
}

// Model is a gunwale on its ribs and cross pieces. It does not change.
type Model struct {
	rail         Rail
	ribs, struts []Member

	x              []float64 // nodes, from aft forward, mm
	elements       []element // between them
	ribAt, strutAt []int     // the unknown that is the offset at each
	beam           band      // of the bare rail, before anything is pinned
	push           []float64
}

// New puts a model together. fine, 1 or more, cuts every element into that many,
// for tests of convergence.
//
// Errors: a member off the rail, a stiffness that is none, a rail that bends
// nothing. Each names the member.
func New(rail Rail, ribs, struts []Member, fine int) (*Model, error) {
	m := &Model{rail: rail, ribs: ribs, struts: struts}
	if err := m.check(); err != nil {
		return nil, err
	}
	places := []float64{rail.From, rail.To}
	for _, k := range rail.Kinks {
		if k > rail.From && k < rail.To {
			places = append(places, k)
		}
	}
	for _, s := range slices.Concat(ribs, struts) {
		places = append(places, s.At)
	}
	slices.Sort(places)
	m.x = cuts(places, max(1, fine))
	m.ribAt, m.strutAt = m.offsets(ribs), m.offsets(struts)
	return m, m.assemble()
}

func (m *Model) check() error {
	r := m.rail
	if !(r.From < r.To) || !geometry.Finite(r.From) || !geometry.Finite(r.To) {
		return fmt.Errorf("the gunwale runs from %.0f to %.0f mm; its after end must lie behind its forward one", r.From, r.To)
	}
	inside := func(at float64) bool { return at > r.From+sameStation && at < r.To-sameStation }
	for _, s := range m.ribs {
		if !inside(s.At) || !(s.Stiffness >= 0) || !geometry.Finite(s.Stiffness) {
			return fmt.Errorf("rib %s at %.0f mm with a stiffness of %g N per mm; accepted: between the gunwale's ends, 0 or more", s.Name, s.At, s.Stiffness)
		}
	}
	for _, s := range m.struts {
		if !inside(s.At) || !(s.Stiffness > 0) || !geometry.Finite(s.Stiffness) {
			return fmt.Errorf("%s at %.0f mm with a stiffness of %g N per mm; accepted: between the gunwale's ends, more than 0", s.Name, s.At, s.Stiffness)
		}
	}
	return nil
}

// offsets returns the unknowns that are the offsets at the members: those of the nodes
// nearest to them.
func (m *Model) offsets(members []Member) []int {
	out := make([]int, len(members))
	for k, b := range members {
		i, _ := slices.BinarySearch(m.x, b.At)
		if i == len(m.x) || i > 0 && b.At-m.x[i-1] < m.x[i]-b.At {
			i--
		}
		out[k] = 2 * i
	}
	return out
}

// assemble adds the elements up. Unknown 2i is the offset of node i, 2i+1 its
// turn.
func (m *Model) assemble() error {
	m.beam, m.push = make(band, 2*len(m.x)), make([]float64, 2*len(m.x))
	for i := range len(m.x) - 1 {
		e := m.rail.element(m.x[i], m.x[i+1])
		m.elements = append(m.elements, e)
		for p := range 4 {
			if !(e.k[p][p] > 0) || math.IsInf(e.k[p][p], 1) || !geometry.Finite(e.push[p]) {
				return fmt.Errorf("the gunwale at %.0f mm has a stiffness or a curve that is no number above 0", m.x[i])
			}
			m.push[2*i+p] += e.push[p]
			for q := p; q < 4; q++ {
				m.beam.add(2*i+p, 2*i+q, e.k[p][q])
			}
		}
	}
	return nil
}

// held returns the stiffness of the rail with the ribs and cross pieces that are
// in, pinned at both ends and factored.
func (m *Model) held(s Setting) (band, error) {
	b := append(band(nil), m.beam...)
	for _, f := range m.fitted(s) {
		if !f.out {
			b.add(f.at, f.at, 2*f.Stiffness)
		}
	}
	b.pin(0)
	b.pin(len(b) - 2)
	f, ok := b.factor()
	if !ok {
		return nil, fmt.Errorf("the gunwales are so stiff or so limp beside the ribs that no shape can be worked out")
	}
	return f, nil
}

// RibStiffness returns the stiffness of the heads of rib i, N per mm of opening.
func (m *Model) RibStiffness(i int) float64 { return m.ribs[i].Stiffness }

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
