package balance

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/equations"
)

// Case says how what no drawing settles turns out. The zero Case is a frame of hinged
// heads and steamed ends without cloth.
type Case struct {
	Heads   float64 // share of the moment that the ribs' heads bear of what heads that cannot turn in their mortises would: 0 hinged, 1 fast
	Upright float64 // how ribs were opened, relaxed or bent over: 0 all along, as their forms are made; 1 by their width alone, heads as they stand in the boat
	Cold    float64 // share of the stringers' end bends that is forced cold: 0 steamed, 1 forced
	Cloth   float64 // tension, N for each mm along the boat
}

// Setting says how the members are put in.
type Setting struct {
	Open      []float64    // how much wider than its place in the boat each rib stands before it is fitted, mm; nil for none
	Slack     []float64    // how much longer than its place each cross piece is, mm; nil for none
	RibsOut   map[int]bool // ribs that are taken out, by their number
	StrutsOut map[int]bool // cross pieces that are taken out
	Case      *Case        // nil for the likely one
}

// State is the frame at rest.
type State struct {
	X      []float64 // stations of the nodes, from aft forward, mm
	Offset []float64 // change of half-breadth there, outward positive, mm
	Turn   []float64 // change of slope there, radians
	Moment []float64 // bending of the gunwale there, as it bears it sideways, N mm; negative where it bulges
	Ribs   []float64 // push of each rib, with what is lashed to it, on either gunwale, outward positive, N; 0 when out
	Bent   []float64 // greatest bending in each rib beyond what it stands free with, N mm; 0 when out
	Struts []float64 // push of each cross piece on either gunwale: positive a strut, negative a tie, N; 0 when out
}

// bare is the frame without its cross pieces, with heads held so much, ready to be
// loaded.
type bare struct {
	m      *Model
	stiff  equations.Profile // pinned and factored
	own    [3][]float64      // what the model's own pushes do, in their order
	struts [][]float64       // what a push of 1 N by each cross piece does to both gunwales
}

// bare holds the ribs' heads by a share.
func (m *Model) bare(heads float64) (*bare, error) {
	b := &bare{m: m, stiff: m.beam.Clone()}
	for i, r := range m.ribs {
		h := m.hoop(i)
		if h == nil {
			b.stiff.Add(m.ribAt[i], m.ribAt[i], 2*r.Stiffness)
			continue
		}
		for k, row := range h.held(heads) {
			for l := range k + 1 {
				b.stiff.Add(m.ribAt[i]+2*k, m.ribAt[i]+2*l, row[l])
			}
		}
	}
	b.stiff.Pin(0)
	b.stiff.Pin(m.first[len(m.first)-1])
	if !b.stiff.Factor() {
		return nil, fmt.Errorf("the gunwales are so stiff or so limp beside the ribs that no shape can be worked out")
	}
	for k, load := range m.push {
		b.own[k] = b.under(append([]float64(nil), load...))
	}
	for _, at := range m.strutAt {
		b.struts = append(b.struts, b.under(m.unit(at, 1)))
	}
	return b, nil
}

func (m *Model) unit(at int, force float64) []float64 {
	load := make([]float64, m.unknowns)
	load[at] = force
	return load
}

// under returns where a load brings the frame. It overwrites the load.
func (b *bare) under(load []float64) []float64 {
	load[0], load[b.m.first[len(b.m.first)-1]] = 0, 0
	b.stiff.Solve(load)
	return load
}

// opened returns what ribs that stand so much wider than their places do to the frame
// without cross pieces; nil for ribs that are not.
func (b *bare) opened(open []float64, upright float64) []float64 {
	if open == nil {
		return nil
	}
	m := b.m
	load := make([]float64, m.unknowns)
	for i := range min(len(open), len(m.ribs)) {
		h, at := m.hoop(i), m.ribAt[i]
		if h == nil {
			load[at] += m.ribs[i].Stiffness * open[i]
			continue
		}
		free := h.opened(open[i], upright)
		for k, row := range h.energy {
			load[at+2*k] += h.stiff * row.dot(free)
		}
	}
	return b.under(load)
}

// free is where the unknown k rests in a case without cross pieces, with what the ribs do.
func (b *bare) free(k int, c Case, opened []float64) float64 {
	v := b.own[0][k] + c.Cold*b.own[1][k] + c.Cloth*b.own[2][k]
	if opened != nil {
		v += opened[k]
	}
	return v
}

// pushes returns how each cross piece of the given slack pushes, but those that are out,
// on gunwales that rest at offset(k) without any.
//
// How: superposition. A piece of the stiffness k that is w too long pushes with p = k (w
// - 2 v), and v is what it was without and what all of them add.
func (b *bare) pushes(offset func(k int) float64, slack []float64, out map[int]bool) ([]float64, error) {
	m := b.m
	push := make([]float64, len(m.struts))
	var in []int
	for i := range m.struts {
		if !out[i] {
			in = append(in, i)
		}
	}
	a, y := make([][]float64, len(in)), make([]float64, len(in))
	for r, i := range in {
		a[r] = make([]float64, len(in))
		for c, j := range in {
			a[r][c] = 2 * b.struts[j][m.strutAt[i]]
		}
		a[r][r] += 1 / m.struts[i].Stiffness
		y[r] = -2 * offset(m.strutAt[i])
		if i < len(slack) {
			y[r] += slack[i]
		}
	}
	p, ok := equations.Eliminate(a, y)
	if !ok {
		return nil, fmt.Errorf("the cross pieces bear on one another so that no shape can be worked out")
	}
	for r, i := range in {
		push[i] = p[r]
	}
	return push, nil
}

// Settle returns where the frame comes to rest.
//
// Errors: a setting that is not for this model; a frame that does not stand.
func (m *Model) Settle(s Setting) (*State, error) {
	c := m.likely
	if s.Case != nil {
		c = *s.Case
	}
	b := m.settled
	if c.Heads != m.likely.Heads || len(s.RibsOut) > 0 {
		less, err := m.lacking(s.RibsOut)
		if err != nil {
			return nil, err
		}
		if b, err = less.bare(c.Heads); err != nil {
			return nil, err
		}
	}
	return b.rest(c, s)
}

// Stiffer returns by how much the half-breadth changes at the nodes of a state, mm, for a
// whole share by which the gunwales become stiffer, and in turn the ribs: the slope of
// what Settle gives for the setting in the likely case.
//
// How: what bears more by a share of what it bears pushes with that on where it is.
// Errors: those of Settle.
func (m *Model) Stiffer(s Setting) (gunwales, ribs *State, err error) {
	b, c := m.settled, m.likely
	u, _, err := b.at(c, s)
	if err != nil {
		return nil, nil, err
	}
	_, rail := m.bears(u)
	load := make([]float64, m.unknowns)
	for k, v := range rail {
		load[k] = -v
	}
	if gunwales, err = b.moved(load, s.StrutsOut); err != nil {
		return nil, nil, err
	}
	clear(load)
	for i, at := range m.ribAt {
		open := value(s.Open, i)
		h := m.hoop(i)
		if h == nil {
			load[at] += m.ribs[i].Stiffness * (open - 2*u[at])
			continue
		}
		free, held := h.opened(open, c.Upright), h.held(c.Heads)
		var now ways
		for k := range now {
			now[k] = u[at+2*k]
		}
		for k := range held {
			load[at+2*k] += h.stiff*h.energy[k].dot(free) - held[k].dot(now)
		}
	}
	ribs, err = b.moved(load, s.StrutsOut)
	return gunwales, ribs, err
}

// moved is the change that a load makes, with the cross pieces in it. It overwrites the
// load.
func (b *bare) moved(load []float64, out map[int]bool) (*State, error) {
	u := b.under(append([]float64(nil), load...))
	if _, err := b.hold(u, nil, out); err != nil {
		return nil, err
	}
	s := &State{X: b.m.x}
	for _, at := range b.m.first {
		s.Offset, s.Turn = append(s.Offset, u[at]), append(s.Turn, u[at+1])
	}
	return s, nil
}

// value is what a list has at i, 0 where it ends before.
func value(list []float64, i int) float64 {
	if i < len(list) {
		return list[i]
	}
	return 0
}

// lacking is the model without some of its ribs, on the same nodes.
func (m *Model) lacking(out map[int]bool) (*Model, error) {
	if len(out) == 0 {
		return m, nil
	}
	less := *m
	less.ribs, less.hoops = append([]Member(nil), m.ribs...), append([]*hoop(nil), m.hoops...)
	for i := range less.ribs {
		if !out[i] {
			continue
		}
		less.ribs[i].Stiffness = 0
		if less.hoops != nil {
			less.hoops[i] = nil
		}
	}
	less.elements = nil
	less.number()
	return &less, less.assemble()
}

// at puts ribs and cross pieces in and returns where every unknown comes to rest, and
// how each cross piece pushes.
func (b *bare) at(c Case, s Setting) (u, push []float64, err error) {
	opened := b.opened(s.Open, c.Upright)
	u = make([]float64, b.m.unknowns)
	for k := range u {
		u[k] = b.free(k, c, opened)
	}
	push, err = b.hold(u, s.Slack, s.StrutsOut)
	return u, push, err
}

// hold puts the cross pieces into a frame that rests at u without them. u follows.
func (b *bare) hold(u, slack []float64, out map[int]bool) (push []float64, err error) {
	push, err = b.pushes(func(k int) float64 { return u[k] }, slack, out)
	for i, p := range push {
		for k, v := range b.struts[i] {
			u[k] += p * v
		}
	}
	return push, err
}

// rest reads the state of a setting.
func (b *bare) rest(c Case, s Setting) (*State, error) {
	m := b.m
	u, push, err := b.at(c, s)
	if err != nil {
		return nil, err
	}
	out := &State{X: m.x, Struts: push, Ribs: make([]float64, len(m.ribs)), Bent: make([]float64, len(m.ribs)),
		Offset: make([]float64, 0, len(m.x)), Turn: make([]float64, 0, len(m.x))}
	for i, at := range m.first {
		if !geometry.Finite(u[at]) || math.Abs(u[at]) > 1e5 {
			return nil, fmt.Errorf("at station %.0f mm the gunwales would move by %g mm: ribs and gunwales do not go together", m.x[i], u[at])
		}
		out.Offset, out.Turn = append(out.Offset, u[at]), append(out.Turn, u[at+1])
	}
	var bears []float64
	out.Moment, bears = m.bears(u)
	for i, at := range m.strutAt {
		bears[at] -= push[i]
	}
	for i, at := range m.ribAt {
		open := value(s.Open, i)
		if h := m.hoop(i); h != nil {
			out.Ribs[i] = bears[at]
			out.Bent[i] = h.bent(u[at:], h.opened(open, c.Upright))
		} else if m.ribs[i].Stiffness > 0 {
			out.Ribs[i] = m.ribs[i].Stiffness * (open - 2*u[at])
		}
	}
	return out, nil
}

// bears returns the bending moment of the rail at each node, from the forces on the
// ends of the elements, exact at the nodes for even stiffness; and for each unknown the
// force that the rail bears there.
func (m *Model) bears(u []float64) (moments, bears []float64) {
	moments, bears = make([]float64, len(m.x)), make([]float64, m.unknowns)
	for i, e := range m.elements {
		at := m.ends(i)
		f := e.forces([4]float64{u[at[0]], u[at[1]], u[at[2]], u[at[3]]})
		moments[i], moments[i+1] = -f[1], f[3]
		for p, v := range f {
			bears[at[p]] += v
		}
	}
	return moments, bears
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
