package balance

import (
	"errors"
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

// fitted is a member as it is put in.
type fitted struct {
	Member
	at   int     // the unknown that is its offset
	wide float64 // how much wider or longer than its place it is, mm
	out  bool
}

// fitted lists the ribs and then the cross pieces.
func (m *Model) fitted(s Setting) []fitted {
	var all []fitted
	list := func(members []Member, at []int, wide []float64, out map[int]bool) {
		for i, b := range members {
			f := fitted{Member: b, at: at[i], out: out[i]}
			if i < len(wide) {
				f.wide = wide[i]
			}
			all = append(all, f)
		}
	}
	list(m.ribs, m.ribAt, s.Open, s.RibsOut)
	list(m.struts, m.strutAt, s.Slack, s.StrutsOut)
	return all
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
	for _, f := range m.fitted(s) {
		if !f.out {
			load[f.at] += f.Stiffness * f.wide
		}
	}
	load[0], load[len(load)-2] = 0, 0
	return m.read(f.solve(load), s)
}

func (m *Model) read(u []float64, s Setting) (*State, error) {
	out := &State{X: m.x, Moment: m.moments(u)}
	for i := range m.x {
		if !geometry.Finite(u[2*i]) || math.Abs(u[2*i]) > 1e5 {
			return nil, fmt.Errorf("at station %.0f mm the gunwales would move by %g mm: ribs and gunwales do not go together", m.x[i], u[2*i])
		}
		out.Offset, out.Turn = append(out.Offset, u[2*i]), append(out.Turn, u[2*i+1])
	}
	push := make([]float64, len(m.ribs)+len(m.struts))
	for i, f := range m.fitted(s) {
		if !f.out {
			push[i] = f.Stiffness * (f.wide - 2*u[f.at])
		}
	}
	out.Ribs, out.Struts = push[:len(m.ribs)], push[len(m.ribs):]
	return out, nil
}

// moments returns the bending moment of the rail at each node, from the forces on
// the ends of the elements: exact at the nodes for even stiffness.
func (m *Model) moments(u []float64) []float64 {
	out := make([]float64, len(m.x))
	for i, e := range m.elements {
		f := e.forces([4]float64{u[2*i], u[2*i+1], u[2*i+2], u[2*i+3]})
		out[i], out[i+1] = -f[1], f[3]
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

// effort weighs a rib's opening against an error of the boat's beam in the search
// for the neutral set: 1 mm of beam counts as much as 1/effort mm of opening at
// one rib. More would leave the shape; less would ask one rib to carry what its
// neighbours can share. Our own choice; the tests hold what it brings.
const effort = 0.02

// ErrNoNeutral says that the ribs cannot take the load off the cross pieces.
var ErrNoNeutral = errors.New("no setting of the ribs takes the load off every cross piece: the ribs bear nothing there, or two cross pieces lie on one place")

// Neutral returns how much wider than its place in the boat each rib should stand
// before it is fitted, mm, so that every cross piece carries nothing and can be
// taken out without the boat moving.
//
// How: without cross pieces the offsets v follow from the openings o by v = v0 +
// G o. The offset at every cross piece is held at 0; of all openings that do so,
// those are taken that make
//
//	Σ (2 v)² + effort² Σ o²
//
// over the ribs least. Both terms are lengths, so the stiffness of the wood as
// such plays no part.
// Errors: ErrNoNeutral.
func (m *Model) Neutral() ([]float64, error) {
	start, effect, err := m.responses()
	if err != nil {
		return nil, err
	}
	n, all := len(m.ribs), len(m.ribs)+len(m.struts)
	a, y := make([][]float64, all), make([]float64, all)
	for i := range a {
		a[i] = make([]float64, all)
	}
	for i := range n {
		for _, at := range m.ribAt {
			y[i] -= 4 * effect[i][at] * start[at]
			for j := range n {
				a[i][j] += 4 * effect[i][at] * effect[j][at]
			}
		}
		a[i][i] += effort * effort
		for t, at := range m.strutAt {
			a[i][n+t], a[n+t][i] = effect[i][at], effect[i][at]
		}
	}
	for t, at := range m.strutAt {
		y[n+t] = -start[at]
	}
	x, ok := eliminate(a, y)
	if !ok || n == 0 {
		return nil, ErrNoNeutral
	}
	return x[:n], nil
}

// responses returns the unknowns of the frame without cross pieces: with its ribs
// unset, and what 1 mm of opening at each rib adds.
func (m *Model) responses() (start []float64, effect [][]float64, err error) {
	bare := Setting{StrutsOut: map[int]bool{}}
	for i := range m.struts {
		bare.StrutsOut[i] = true
	}
	f, err := m.held(bare)
	if err != nil {
		return nil, nil, err
	}
	load := append([]float64(nil), m.push...)
	load[0], load[len(load)-2] = 0, 0
	for i, r := range m.ribs {
		unit := make([]float64, len(load))
		unit[m.ribAt[i]] = r.Stiffness
		effect = append(effect, f.solve(unit))
	}
	return f.solve(load), effect, nil
}
