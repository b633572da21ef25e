// Package edgeset works out what edge-set costs that is sprung into the gunwales: the
// moment that must hold it, and what the boat's profile does when the finished frame is
// let go.
//
// The model is a plane frame in profile. The pair of gunwales is one chord, bent in its
// tall way: E h³ w/12 for each. Let alone it would lie in the natural sheer; it is wanted
// with the set, so that over the set it is bent by 1/R more than it lies by itself. The
// keel is the other chord and lies as it is wanted. Ribs are posts that keep the chords a
// depth apart and carry nothing along the boat. Stems are stiff. Where their feet are
// joined to the keel, the chords and the stems close a ring: to straighten, the gunwales
// would have to stretch over the keel, so ring tension N with the lever of the depth d
// holds the set,
//
//	M gunwales + M keel + N d = 0
//
// at every station, where loose feet leave N = 0 and only the keel's own bending, some
// thirtieth of the gunwales', so that the gunwales straighten. With joined feet the change
// of curvature, weighed with the depth, sums to nought over the boat: what the gunwales
// lose at the ends they gain amidships, and the whole boat sags a little in the middle
// where it would have drooped at its ends.
//
// Two things are not known well and make the band that is told: whether gunwale ends turn
// on the stems (a lashing) or not (a tight notch, pegged), and whether ribs are held
// sideways where they would spread under the load (gunwales and cross pieces hold them
// nearly). Stringers and cloth come later and are left out: stringers are lashed on when
// the shape is there, and each is bent alone with a sixtieth of the gunwales' stiffness.
// Changes are small against the depth; that they narrow the beam by some millimeters
// between cross pieces is left out too.
//
// Source: the displacement method and beam theory, as in S. Timoshenko and D. H. Young,
// Theory of Structures; recalled, and checked by closed forms in the tests and by an
// independent program, testdata/reference/edgeset.py.
package edgeset

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
)

// Report is what the sprung edge-set of a frame asks and does.
type Report struct {
	Moment Pair // that holds each gunwale in its set, N mm; 0 at an end without one

	Loose *Rest // let go with the stems' feet loose
	Free  *Rest // feet joined, the set held least: gunwale ends turn on the stems, ribs spread
	Usual *Rest // feet joined, gunwale ends turn on the stems, cross pieces hold the ribs
	Fast  *Rest // feet joined, gunwale ends cannot turn

	KeelModulus float64 // of the keel against bending up and down, mm3

	Holds []Hold // from the stern's end forward, while the set is sprung in

	model Model
}

// Pair is a figure at the stern and at the bow.
type Pair [2]float64

// Worst returns the larger of the two sizes.
func (p Pair) Worst() float64 { return math.Max(math.Abs(p[0]), math.Abs(p[1])) }

// Of works out the report of a frame; nil when no edge-set is sprung.
//
// Errors: a wood that is not known; a frame that does not stand.
func Of(f *frame.Frame) (*Report, error) {
	m, err := modelOf(f)
	if err != nil || m.straight() {
		return nil, err
	}
	d := f.Design.Keel
	r := &Report{model: m, KeelModulus: float64(d.Width*d.Depth*d.Depth) / 6}
	for i, s := range m.Sets {
		r.Moment[i] = m.Gunwales.Bend / 2 * s.Curve
	}
	if err := m.check(); err != nil {
		return nil, fmt.Errorf("edge-set: %w", err)
	}
	b := m.room()
	for _, c := range []struct {
		to   **Rest
		held Held
	}{{&r.Loose, Held{Ends: true, Ribs: true}}, {&r.Free, Held{Feet: true}}, {&r.Usual, Likely}, {&r.Fast, Held{Feet: true, Ends: true, Ribs: true}}} {
		if *c.to, err = m.settle(b, c.held); err != nil {
			return nil, fmt.Errorf("edge-set: %w", err)
		}
	}
	if r.Holds, err = m.springing(f); err != nil {
		return nil, err
	}
	return r, nil
}

// modelOf reads the model from a frame.
func modelOf(f *frame.Frame) (Model, error) {
	d := f.Design
	var m Model
	var moe [3]float64
	for i, name := range []string{d.Gunwale.Species, d.Keel.Species, d.Ribs.Species} {
		wood, err := d.Wood(name)
		if err != nil {
			return m, err
		}
		moe[i] = wood.MOE
	}
	aft, fore := f.Gunwale.Line.Ends()
	w, h := f.Gunwale.Width, f.Gunwale.Height
	m.Gunwales = Chord{aft, fore, func(x float64) float64 { return f.Gunwale.Line.Point(x).Z }, 2 * moe[0] * w * h * h * h / 12, 2 * moe[0] * w * h}
	w, h = float64(d.Keel.Width), float64(d.Keel.Depth)
	keel := func(x float64) float64 { z, _ := f.Hull.KeelZ(x); return z + h/2 }
	m.Keel = Chord{-f.Hull.Stern.Toe.X, f.Hull.Bow.Toe.X, keel, moe[1] * w * h * h * h / 12, moe[1] * w * h}
	for _, r := range f.Ribs {
		m.Posts = append(m.Posts, postOf(r, moe[2], float64(d.Ribs.Width)))
	}
	for i, s := range [2]hull.EdgeSet{f.Hull.Sheer.SternSet, f.Hull.Sheer.BowSet} {
		if s.Sprung() > 0 {
			m.Sets[i] = Set{From: s.From, Curve: 1 / s.Radius()}
		}
	}
	m.Level = math.Max(float64(d.Hull.KeelStraight)/2, f.Hull.Length/8)
	return m, nil
}

// postOf is a rib as a post. Its half is held level at the keel and loaded at the head:
// up by V, outward by H, with the levers a = b - y and c = d - z of a place (y, z) of it,
//
//	E I up  = V ∫ a² ds - H ∫ a c ds
//	E I out = H ∫ c² ds - V ∫ a c ds
//
// Free, H is nought; held, out is. Length given away along the wood is added, so that a
// rib without a bend is no rigid post.
// Source: Castigliano, as in S. Timoshenko, Strength of Materials.
func postOf(r frame.Rib, moe, width float64) Post {
	t := r.Thickness
	flex := moe * width * t * t * t / 12
	half := r.Section.Half
	end, _ := half.End()
	var up, out, both float64
	half.Along(func(_ int, p geometry.Point, ds float64) {
		a, c := end.X-p.X, end.Y-p.Y
		up, out, both = up+ds*a*a, out+ds*c*c, both+ds*a*c
	})
	along := half.Length() / (moe * width * t)
	held := up / flex
	if out > 0 {
		held = (up - both*both/out) / flex
	}
	return Post{At: r.Station, Free: 2 / (up/flex + along), Held: 2 / (math.Max(held, 0) + along)}
}
