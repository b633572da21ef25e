package balance

import (
	"fmt"
	"slices"
	"sync"

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
	loads := equations.Rows(len(b.own)+len(m.strutAt), m.unknowns)
	for k, load := range m.push {
		copy(loads[k], load)
	}
	b.struts = loads[len(b.own):]
	for i, at := range m.strutAt {
		b.struts[i][at] = 1
	}
	for _, load := range loads {
		b.under(load)
	}
	b.own = [3][]float64(loads)
	return b, nil
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
	load := make([]float64, b.m.unknowns)
	for i := range min(len(open), len(b.m.ribs)) {
		b.m.open(load, i, open[i], upright)
	}
	return b.under(load)
}

// open adds to a load how rib i pushes that stands so much wider than its place.
func (m *Model) open(load []float64, i int, wide, upright float64) {
	h, at := m.hoop(i), m.ribAt[i]
	if h == nil {
		load[at] += m.ribs[i].Stiffness * wide
		return
	}
	free := h.opened(wide, upright)
	for k, row := range h.energy {
		load[at+2*k] += h.stiff * row.dot(free)
	}
}

// free is where the unknown k rests in a case without cross pieces, with what the ribs do.
func (b *bare) free(k int, c Case, opened []float64) float64 {
	v := b.own[0][k] + c.Cold*b.own[1][k] + c.Cloth*b.own[2][k]
	if opened != nil {
		v += opened[k]
	}
	return v
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
	t, err := b.with(s.StrutsOut)
	if err != nil {
		return nil, err
	}
	return t.rest(c, s.Open, t.opened(s.Open, c.Upright), s.Slack)
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
	less.elements, less.settled, less.opens = nil, nil, nil
	less.held = sync.OnceValues(less.bares)
	less.number()
	return &less, less.assemble()
}

// At returns the change of half-breadth at the station x, mm: 0 beyond the ends.
func (s *State) At(x float64) float64 {
	i, by := cubics(s.X, x)
	if i < 0 {
		return 0
	}
	return s.Offset[i]*by[0] + s.Turn[i]*by[1] + s.Offset[i+1]*by[2] + s.Turn[i+1]*by[3]
}

// cubics returns the element between nodes in which the station x lies, and what the
// offset and the turn of its first node, and those of its second, count for there. The
// element is -1 beyond the ends.
func cubics(nodes []float64, x float64) (i int, by [4]float64) {
	if !(x >= nodes[0] && x <= nodes[len(nodes)-1]) {
		return -1, by
	}
	i, _ = slices.BinarySearch(nodes[1:len(nodes)-1], x)
	h := nodes[i+1] - nodes[i]
	t := (x - nodes[i]) / h
	return i, [4]float64{1 - 3*t*t + 2*t*t*t, h * (t - 2*t*t + t*t*t), 3*t*t - 2*t*t*t, h * (t*t*t - t*t)}
}
