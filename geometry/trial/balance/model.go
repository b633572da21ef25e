// Package balance works out what holds a frame's shape when there is no mould:
// the gunwales want to straighten, the bent ribs want to open, cross pieces hold
// what is left. It gives the force in every cross piece, how far the boat moves
// when some are taken out, and how far each rib should stand open before it is
// fitted so that the cross pieces carry nothing.
//
// The model is the port side; the other is its mirror. Changes from the design are
// small against the boat, offsets outward positive.
//
//   - The gunwale in plan is a beam of cubic elements, pinned at the stems.
//   - Each rib is a curved beam, level and in the middle at the keel. It bends in a few
//     ways: as a level push at the head bends it, and with curvature that is a polynomial
//     along it. Its head bears a share of the moment of a head that cannot turn in its
//     mortise, as a spring there does.
//   - Stringers, and the keel with half of its width, are beams about both axes of the
//     stick, straight before they were bent, pinned at the stems and moved by the ribs
//     where they are lashed. Between ribs they follow cubics, as the ribs' ways do along
//     the boat. Bends beyond the last rib but one are steamed, so that no spring is left
//     in them, or forced cold.
//   - The cloth is pulled from gunwale to gunwale outside the ribs, by so many newtons
//     for each mm along the boat. Where it runs e mm outside the middle of a rib it bends
//     the rib open with pull times e, a tendon outside a beam.
//
// Gunwales are tall and keep their height: what the ribs do to it moves keel and
// stringers, not them. Their twist, the cloth's pull along the boat and the breasthooks'
// grip are left out, and the ends are free to draw together by the fraction of a
// millimetre that widening takes.
//
// What no drawing settles is a Case; the likely one makes the neutral set, and the
// corners of all that may be make a Band.
//
// Source: beam theory as in S. Timoshenko, Strength of Materials (Castigliano's theorem
// for curved beams), and M. Hetenyi, Beams on Elastic Foundation; recalled, and checked
// by closed forms and an independent solution in the tests.
package balance

import (
	"fmt"
	"math"
	"slices"
	"sync"

	"ribwright/geometry"
	"ribwright/geometry/equations"
	"ribwright/geometry/sidebyside"
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
	hoops        []*hoop   // the ribs as they give, nil for one that is not there; none when ribs are springs and no more
	battens      []*batten // lashed to the hoops
	pitches      []float64 // length of cloth along the boat that each rib bears, mm
	likely       Case

	x              []float64 // nodes, from aft forward, mm
	first          []int     // the unknown that is the offset at each node; its turn follows
	elements       []element // of the rail between them
	ribAt, strutAt []int     // the unknown that is the offset at each
	unknowns       int
	beam           equations.Profile // of the bare rail and the battens, before anything is pinned
	push           [][]float64       // of rail and battens in the middle, of the battens' ends, of 1 N/mm in the cloth
	settled        *bare             // with heads as they are likely, without cross pieces
	opens          [][]float64       // what each rib that stands a millimeter wider does to it

	held func() (map[float64]*bare, error) // with heads of every share that is tried; made when first asked for
}

// build puts the model together. fine, 1 or more, cuts every element into that many,
// for tests of convergence.
//
// Errors: a member off the rail, a stiffness that is no number, a rail that bends
// nothing. Each names the member.
func (m *Model) build(fine int) error {
	if err := m.check(); err != nil {
		return err
	}
	rail := m.rail
	places := []float64{rail.From, rail.To}
	for _, k := range rail.Kinks {
		if k > rail.From && k < rail.To {
			places = append(places, k)
		}
	}
	for _, s := range slices.Concat(m.ribs, m.struts) {
		places = append(places, s.At)
	}
	slices.Sort(places)
	m.x = cuts(places, max(1, fine))
	m.number()
	if err := m.assemble(); err != nil {
		return err
	}
	var err error
	if m.settled, err = m.bare(m.likely.Heads); err != nil {
		return err
	}
	m.held = sync.OnceValues(m.bares)
	m.opens = equations.Rows(len(m.ribs), m.unknowns)
	sidebyside.Each(len(m.ribs), func(i int) {
		m.open(m.opens[i], i, 1, m.likely.Upright)
		m.settled.under(m.opens[i])
	})
	return nil
}

func (m *Model) check() error {
	r := m.rail
	if !(r.From < r.To) || !geometry.Finite(r.From) || !geometry.Finite(r.To) {
		return fmt.Errorf("the gunwale runs from %.0f to %.0f mm; its after end must lie behind its forward one", r.From, r.To)
	}
	inside := func(at float64) bool { return at > r.From+sameStation && at < r.To-sameStation }
	for _, s := range m.ribs {
		if !inside(s.At) || !(s.Stiffness >= 0) || !geometry.Finite(s.Stiffness) {
			return fmt.Errorf("rib %s at %.0f mm with a stiffness of %.6g N per mm; accepted: between the gunwale's ends, 0 or more", s.Name, s.At, s.Stiffness)
		}
	}
	for _, s := range m.struts {
		if !inside(s.At) || !(s.Stiffness > 0) || !geometry.Finite(s.Stiffness) {
			return fmt.Errorf("%s at %.0f mm with a stiffness of %.6g N per mm; accepted: between the gunwale's ends, more than 0", s.Name, s.At, s.Stiffness)
		}
	}
	return nil
}

// hoop returns rib i as it gives, nil when it is a spring and no more, or not there.
func (m *Model) hoop(i int) *hoop {
	if m.hoops == nil {
		return nil
	}
	return m.hoops[i]
}

// number gives every node its unknowns: offset and turn, and at a rib the amounts of its
// other ways, each with its slope along the boat.
func (m *Model) number() {
	wide := make([]int, len(m.x))
	for i := range wide {
		wide[i] = 2
	}
	node := func(members []Member) []int {
		out := make([]int, len(members))
		for k, b := range members {
			i, _ := slices.BinarySearch(m.x, b.At)
			if i == len(m.x) || i > 0 && b.At-m.x[i-1] < m.x[i]-b.At {
				i--
			}
			out[k] = i
		}
		return out
	}
	ribs, struts := node(m.ribs), node(m.struts)
	for k, i := range ribs {
		if m.hoop(k) != nil {
			wide[i] = 2 * modes
		}
	}
	m.first, m.unknowns = make([]int, len(m.x)), 0
	for i, w := range wide {
		m.first[i] = m.unknowns
		m.unknowns += w
	}
	m.ribAt, m.strutAt = make([]int, len(ribs)), make([]int, len(struts))
	for k, i := range ribs {
		m.ribAt[k] = m.first[i]
	}
	for k, i := range struts {
		m.strutAt[k] = m.first[i]
	}
}

// assemble adds the elements up.
func (m *Model) assemble() error {
	m.beam = equations.NewProfile(m.shape())
	m.push = equations.Rows(3, m.unknowns)
	m.elements = make([]element, 0, len(m.x)-1)
	for i := range len(m.x) - 1 {
		e := m.rail.element(m.x[i], m.x[i+1])
		m.elements = append(m.elements, e)
		at := m.ends(i)
		for p := range 4 {
			if !(e.k[p][p] > 0) || math.IsInf(e.k[p][p], 1) || !geometry.Finite(e.push[p]) {
				return fmt.Errorf("the gunwale at %.0f mm has a stiffness or a curve that is no number above 0", m.x[i])
			}
			m.push[0][at[p]] += e.push[p]
			for q := range p + 1 {
				m.beam.Add(at[p], at[q], e.k[p][q])
			}
		}
	}
	m.lashAll()
	for i, h := range m.hoops {
		if h != nil {
			for k, v := range h.cloth {
				m.push[2][m.ribAt[i]+2*k] += v * m.pitches[i]
			}
		}
	}
	return nil
}

// ends are the unknowns of element i of the rail.
func (m *Model) ends(i int) [4]int {
	a, b := m.first[i], m.first[i+1]
	return [4]int{a, a + 1, b, b + 1}
}

// shape tells how far back from the diagonal each row reaches: to the node before, and
// at a rib to the rib before.
func (m *Model) shape() []int {
	out := make([]int, 0, m.unknowns)
	for i := range m.x {
		end := m.unknowns
		if i+1 < len(m.x) {
			end = m.first[i+1]
		}
		for len(out) < end {
			out = append(out, m.first[max(0, i-1)])
		}
	}
	last := m.unknowns
	for i, at := range m.ribAt {
		if m.hoop(i) == nil {
			continue
		}
		for k := at; k < at+2*modes; k++ {
			out[k] = min(out[k], last)
		}
		last = at
	}
	return out
}

// lashAll lashes the battens to the ribs that are there; a batten wants two of them.
func (m *Model) lashAll() {
	live, on := make([]int, 0, len(m.hoops)), make([]*hoop, 0, len(m.hoops))
	for i, h := range m.hoops {
		if h != nil {
			live, on = append(live, i), append(on, h)
		}
	}
	m.steady(live)
	if len(live) < 2 {
		return
	}
	all := make([]lashed, len(m.battens))
	for j, b := range m.battens {
		all[j] = m.lash(b.over(live), j, on)
	}
	for i := range len(live) - 1 {
		m.lashBay(i, live, all)
	}
}

// lashBay adds what the battens do between two neighboring ribs of those that are there,
// and beyond the last ones.
func (m *Model) lashBay(i int, live []int, all []lashed) {
	var y bay
	for k := range 2 * modes {
		y.at[k], y.at[2*modes+k] = m.ribAt[live[i]]+k, m.ribAt[live[i+1]]+k
	}
	last := len(live) - 2
	for k := range all {
		b, push := &all[k], all[k].middle
		b.follow(i)
		if i == 0 {
			push = b.ends
			y.runOut(b, 0, 0)
		}
		if i == last {
			push = b.ends
			y.runOut(b, last+2, 1)
		}
		y.stretch(b, i, push)
	}
	for r, row := range y.sum {
		for c, v := range row[:r+1] {
			m.beam.Add(y.at[r], y.at[c], v)
		}
	}
}

// limp is the share of a rib's own stiffness that nobody could notice.
const limp = 1e-9

// steady gives the slopes of the ribs' ways along the boat a stiffness next to nothing:
// where few battens lie, or none, nothing else resists some of them, and none is wanted.
func (m *Model) steady(live []int) {
	for _, i := range live {
		h := m.hoops[i]
		for k := 1; k < modes; k++ {
			at := m.ribAt[i] + 2*k + 1
			m.beam.Add(at, at, limp*h.stiff*h.energy[k][k]*h.length*h.length)
		}
	}
}

// RibStiffness returns the stiffness of the heads of rib i as it stands free, N per mm
// of opening: what a spring balance between its heads shows.
func (m *Model) RibStiffness(i int) float64 { return m.ribs[i].Stiffness }

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
