package balance

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/equations"
)

// tied is a bare frame with cross pieces in it.
type tied struct {
	*bare
	in    []int             // the numbers of those that are in
	stiff equations.Profile // factored: how far they are apart for what each of them pushes
}

// with puts all cross pieces in but those that are out.
//
// How: superposition. A piece of the stiffness k that is w too long pushes with p = k (w
// - 2 v), and v is what it was without and what all of them add.
func (b *bare) with(out map[int]bool) (*tied, error) {
	m, t := b.m, &tied{bare: b}
	for i := range m.struts {
		if !out[i] {
			t.in = append(t.in, i)
		}
	}
	t.stiff = equations.NewProfile(make([]int, len(t.in))) // full: each moves every other
	for r, i := range t.in {
		for c, j := range t.in[:r+1] {
			t.stiff.Add(r, c, 2*b.struts[j][m.strutAt[i]])
		}
		t.stiff.Add(r, r, 1/m.struts[i].Stiffness)
	}
	if !t.stiff.Factor() {
		return nil, fmt.Errorf("the cross pieces bear on one another so that no shape can be worked out")
	}
	return t, nil
}

// pushes returns how each cross piece of the given slack pushes, but those that are out,
// on gunwales that rest at offset(k) without any.
func (t *tied) pushes(offset func(k int) float64, slack []float64) []float64 {
	room := make([]float64, len(t.m.struts)+len(t.in))
	push, p := room[:len(t.m.struts):len(t.m.struts)], room[len(t.m.struts):]
	for r, i := range t.in {
		p[r] = value(slack, i) - 2*offset(t.m.strutAt[i])
	}
	t.stiff.Solve(p)
	for r, i := range t.in {
		push[i] = p[r]
	}
	return push
}

// at returns where every unknown comes to rest, and how each cross piece pushes, with
// what the ribs do that are opened.
func (t *tied) at(c Case, opened, slack []float64) (u, push []float64) {
	u = make([]float64, t.m.unknowns)
	for k := range u {
		u[k] = t.free(k, c, opened)
	}
	push = t.pushes(func(k int) float64 { return u[k] }, slack)
	for i, p := range push {
		add(u, p, t.struts[i])
	}
	return u, push
}

// add adds so many times a list to another.
func add(to []float64, times float64, v []float64) {
	for k, v := range v {
		to[k] += times * v
	}
}

// rest reads the state with ribs that stand open so much wider, which does what opened is.
func (t *tied) rest(c Case, open, opened, slack []float64) (*State, error) {
	m := t.m
	u, push := t.at(c, opened, slack)
	ribs, nodes := equations.Rows(2, len(m.ribs)), equations.Rows(2, len(m.x))
	out := &State{X: m.x, Struts: push, Ribs: ribs[0], Bent: ribs[1], Offset: nodes[0], Turn: nodes[1]}
	for i, at := range m.first {
		if !geometry.Finite(u[at]) || math.Abs(u[at]) > 1e5 {
			return nil, fmt.Errorf("at station %.0f mm the gunwales would move by %g mm: ribs and gunwales do not go together", m.x[i], u[at])
		}
		out.Offset[i], out.Turn[i] = u[at], u[at+1]
	}
	var bears []float64
	out.Moment, bears = m.bears(u)
	for i, at := range m.strutAt {
		bears[at] -= push[i]
	}
	for i, at := range m.ribAt {
		open := value(open, i)
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
