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
	m.beam, m.push = newBand(2*len(m.x)), make([]float64, 2*len(m.x))
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
