package balance

import (
	"fmt"
	"math"

	"ribwright/geometry"
)

// Setting says how the members are put in.
type Setting struct {
	Open      []float64    // how much wider than its place in the boat each rib stands before it is fitted, mm; nil for none
	Slack     []float64    // how much longer than its place each cross piece is, mm; nil for none
	RibsOut   map[int]bool // ribs that are taken out, by their number
	StrutsOut map[int]bool // cross pieces that are taken out
}

func (s Setting) ribOut(i int) bool   { return s.RibsOut[i] }
func (s Setting) strutOut(i int) bool { return s.StrutsOut[i] }

func (s Setting) open(i int) float64  { return pick(s.Open, i) }
func (s Setting) slack(i int) float64 { return pick(s.Slack, i) }

func pick(v []float64, i int) float64 {
	if i < len(v) {
		return v[i]
	}
	return 0
}

// State is the frame at rest.
type State struct {
	X      []float64 // stations of the nodes, from aft forward, mm
	Offset []float64 // change of half-breadth there, outward positive, mm
	Turn   []float64 // change of slope there, radians
	Moment []float64 // bending of the gunwale there, as it bears it sideways, N mm; negative where it bulges
	Ribs   []float64 // push of each rib on either gunwale, outward positive, N; 0 when out
	Struts []float64 // push of each cross piece on either gunwale: positive a strut, negative a tie, N; 0 when out
}

// Settle returns where the frame comes to rest.
//
// Errors: a setting that is not for this model; a frame that does not stand.
func (m *Model) Settle(s Setting) (*State, error) {
	f, err := m.held(s)
	if err != nil {
		return nil, err
	}
	load := append([]float64(nil), m.push...)
	for i, r := range m.ribs {
		if !s.ribOut(i) {
			load[2*m.ribNode[i]] += r.Stiffness * s.open(i)
		}
	}
	for i, t := range m.struts {
		if !s.strutOut(i) {
			load[2*m.strutNode[i]] += t.Stiffness * s.slack(i)
		}
	}
	load[0], load[len(load)-2] = 0, 0
	return m.read(f.solve(load), s)
}

// read turns the unknowns into a state.
func (m *Model) read(u []float64, s Setting) (*State, error) {
	out := &State{X: m.x, Moment: m.moments(u)}
	for i := range m.x {
		if !geometry.Finite(u[2*i]) || math.Abs(u[2*i]) > 1e5 {
			return nil, fmt.Errorf("at station %.0f mm the gunwales would move by %g mm: ribs and gunwales do not go together", m.x[i], u[2*i])
		}
		out.Offset, out.Turn = append(out.Offset, u[2*i]), append(out.Turn, u[2*i+1])
	}
	for i, r := range m.ribs {
		push := 0.0
		if !s.ribOut(i) {
			push = r.Stiffness * (s.open(i) - 2*u[2*m.ribNode[i]])
		}
		out.Ribs = append(out.Ribs, push)
	}
	for i, t := range m.struts {
		push := 0.0
		if !s.strutOut(i) {
			push = t.Stiffness * (s.slack(i) - 2*u[2*m.strutNode[i]])
		}
		out.Struts = append(out.Struts, push)
	}
	return out, nil
}

// moments returns the bending moment of the rail at each node, from the forces on
// the ends of the elements: exact at the nodes for even stiffness.
func (m *Model) moments(u []float64) []float64 {
	out := make([]float64, len(m.x))
	for i, e := range m.elements {
		f := e.forces([4]float64{u[2*i], u[2*i+1], u[2*i+2], u[2*i+3]})
		out[i] = -f[1]
		out[i+1] = f[3]
	}
	return out
}

// At returns the change of half-breadth at the station x, mm: 0 beyond the ends.
func (s *State) At(x float64) float64 {
	for i := range len(s.X) - 1 {
		a, b := s.X[i], s.X[i+1]
		if x < a || x > b {
			continue
		}
		h := b - a
		t := (x - a) / h
		return s.Offset[i]*(1-3*t*t+2*t*t*t) + s.Offset[i+1]*(3*t*t-2*t*t*t) +
			h*(s.Turn[i]*(t-2*t*t+t*t*t)+s.Turn[i+1]*(t*t*t-t*t))
	}
	return 0
}
