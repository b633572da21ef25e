package edgeset

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
)

// Chord is a stick that runs from end to end. mm, N mm2, N.
type Chord struct {
	From, To float64                 // stations of its ends
	Height   func(x float64) float64 // of its middle
	Bend     float64                 // stiffness against bending up and down, > 0
	Stretch  float64                 // stiffness along itself, > 0
}

// Post keeps the chords apart: N for each mm of height, at a station.
type Post struct{ At, Free, Held float64 }

// Set is where the gunwales are bent beyond how they lie by themselves.
type Set struct {
	From  float64 // off midship, mm; it runs to the gunwales' end
	Curve float64 // upward, 1/mm
}

// Model is a frame in profile.
type Model struct {
	Gunwales, Keel Chord
	Posts          []Post  // from aft forward
	Sets           [2]Set  // stern, bow
	Level          float64 // places off midship at which the keel is set level to read heights, mm
}

// straight reports whether nothing is sprung.
func (m *Model) straight() bool { return m.Sets[0].Curve == 0 && m.Sets[1].Curve == 0 }

// Held says what holds the frame when it is let go.
type Held struct {
	Feet bool // the stems' feet are joined to the keel so that it cannot slide or turn; else it is only held to them in height
	Ends bool // the gunwales' ends cannot turn on the stems
	Ribs bool // the ribs cannot spread
}

// Likely is how a frame is usually held: gunwale ends lashed on their shelves, cross
// pieces in.
var Likely = Held{Feet: true, Ribs: true}

// Rest is the frame let go. Changes are upward positive, mm.
type Rest struct {
	Sheer  Pair    // of the gunwales' ends over the gunwales at midship
	Rocker Pair    // of the keel's ends over the keel at midship
	Depth  float64 // of the gunwales over the keel at midship
	Keel   float64 // greatest moment in the keel, N mm
	Thrust float64 // along the keel at midship, positive when it is pressed, N
	Pull   float64 // greatest pull of a rib between the gunwales and the keel, N
}

// Worst returns the greatest change of the profile, mm.
func (r *Rest) Worst() float64 {
	return slices.Max([]float64{r.Sheer.Worst(), r.Rocker.Worst(), math.Abs(r.Depth)})
}

// Settle lets the frame go.
//
// Errors: a post off the chords, a stiffness that is none, chords that do not span
// midship, a frame that does not stand.
func (m *Model) Settle(h Held) (*Rest, error) {
	if err := m.check(); err != nil {
		return nil, err
	}
	return m.settle(m.room(), h)
}

// settle lets the frame go in room made for the model, which it may have been let go in
// before, otherwise held.
func (m *Model) settle(b *built, h Held) (*Rest, error) {
	m.build(b, h)
	u, ok := b.solve()
	if !ok {
		return nil, fmt.Errorf("gunwales, ribs and keel do not make a frame that stands")
	}
	return b.read(u), nil
}

func (m *Model) check() error {
	for i, c := range []Chord{m.Gunwales, m.Keel} {
		if !(c.From < 0 && c.To > 0) || !(c.Bend > 0 && c.Stretch > 0) || !geometry.Finite(c.Bend+c.Stretch) {
			return fmt.Errorf("the %s from %.0f to %.0f mm with a stiffness of %.6g N mm2; accepted: across midship, more than 0",
				[]string{"gunwales run", "keel runs"}[i], c.From, c.To, c.Bend)
		}
	}
	for _, p := range m.Posts {
		if !(p.At > max(m.Gunwales.From, m.Keel.From) && p.At < min(m.Gunwales.To, m.Keel.To)) || !(p.Free >= 0 && p.Held >= 0) || !geometry.Finite(p.Free+p.Held) {
			return fmt.Errorf("the rib at %.0f mm with %.6g N per mm of height; accepted: between the ends of keel and gunwales, 0 or more", p.At, p.Held)
		}
	}
	return nil
}

// room makes the room for a model, its nodes where they lie, however it is held.
func (m *Model) room() *built {
	level := min(m.Level, -m.Keel.From, m.Keel.To)
	nodes := func(c Chord, others ...float64) (out []node) {
		for _, x := range places(c, m.Posts, others...) {
			out = append(out, node{x: x, z: c.Height(x)})
		}
		return out
	}
	b := &built{gunwale: nodes(m.Gunwales, -m.Sets[0].From, m.Sets[1].From), keel: nodes(m.Keel, -level, level), level: level}
	n := len(b.gunwale) + len(b.keel)
	const terms = 17 // of the movements of a node and of the three springs beside it
	b.terms, b.springs = make([]term, 0, terms*n), make([]spring, 0, 3*n+len(m.Posts))
	b.posts, b.keels = make([]spring, 0, len(m.Posts)), make([]piece, 0, len(b.keel))
	return b
}

// build lays the frame out as springs on unknowns.
func (m *Model) build(b *built, h Held) {
	b.clear()
	b.join(h)
	b.lay(b.gunwale, m.Gunwales, m.wanted)
	b.lay(b.keel, m.Keel, func(float64) float64 { return 0 })
	for _, p := range m.Posts {
		stiff := p.Free
		if h.Ribs {
			stiff = p.Held
		}
		b.post(p.At, stiff)
	}
}

// wanted is how much more the gunwales are bent at the station x than they lie.
func (m *Model) wanted(x float64) float64 {
	s := m.Sets[1]
	if x < 0 {
		s, x = m.Sets[0], -x
	}
	if x < s.From {
		return 0
	}
	return s.Curve
}

// same is the distance under which two places are one, mm: far below what can be
// marked, and long enough for a stick.
const same = 0.01

// places returns the stations of a chord's nodes: its ends, midship, the posts and the
// others given that lie between.
func places(c Chord, posts []Post, others ...float64) []float64 {
	all := append([]float64{c.From, 0, c.To}, others...)
	for _, p := range posts {
		all = append(all, p.At)
	}
	slices.Sort(all)
	all = slices.DeleteFunc(all, func(x float64) bool { return x < c.From || x > c.To })
	out := all[:1]
	for _, x := range all[1:] {
		if x-out[len(out)-1] >= same {
			out = append(out, x)
		}
	}
	out[len(out)-1] = c.To
	return out
}
