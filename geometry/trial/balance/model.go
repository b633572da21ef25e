package balance

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
)

// Spring is a bent rib as the gunwales feel it.
type Spring struct {
	Name      string
	At        float64 // station, mm
	Stiffness float64 // of the pair of heads, N per mm of opening, >= 0
}

// Strut is a cross piece between the gunwales.
type Strut struct {
	Name      string
	At        float64 // station of its middle, mm
	Stiffness float64 // along itself, N per mm, > 0
}

// Model is a gunwale on its ribs and cross pieces. It does not change.
type Model struct {
	rail   Rail
	ribs   []Spring
	struts []Strut

	x         []float64 // nodes, from aft forward, mm
	elements  []element // between them
	ribNode   []int
	strutNode []int
	beam      band // of the bare rail, before anything is pinned
	push      []float64
}

// New puts a model together. fine, 1 or more, cuts every element into that many,
// for tests of convergence.
//
// Errors: a member off the rail, a stiffness that is none, a rail that bends
// nothing. Each names the member.
func New(rail Rail, ribs []Spring, struts []Strut, fine int) (*Model, error) {
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
	for _, r := range ribs {
		places = append(places, r.At)
	}
	for _, s := range struts {
		places = append(places, s.At)
	}
	slices.Sort(places)
	m.x = cuts(places, max(1, fine))
	for _, r := range ribs {
		m.ribNode = append(m.ribNode, m.nodeAt(r.At))
	}
	for _, s := range struts {
		m.strutNode = append(m.strutNode, m.nodeAt(s.At))
	}
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

// nodeAt returns the node nearest to the station x.
func (m *Model) nodeAt(x float64) int {
	i, _ := slices.BinarySearch(m.x, x)
	if i == len(m.x) || i > 0 && x-m.x[i-1] < m.x[i]-x {
		i--
	}
	return i
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
	for i, r := range m.ribs {
		if !s.ribOut(i) {
			b.add(2*m.ribNode[i], 2*m.ribNode[i], 2*r.Stiffness)
		}
	}
	for i, t := range m.struts {
		if !s.strutOut(i) {
			b.add(2*m.strutNode[i], 2*m.strutNode[i], 2*t.Stiffness)
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
