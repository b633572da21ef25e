// Package stringer finds the way of every stringer: where it crosses the ribs and
// where on the stems it ends. A stringer is a batten through its marks, so it lands
// where the stem bends it least, and where that is not fair its marks on the last ribs
// give way.
package stringer

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve/stick"
	"ribwright/geometry/design"
)

// LashingRoom is the least room between neighboring battens on a rib, and between
// their ends on a stem, mm: a lashing must pass between them. Common practice, no
// source.
const LashingRoom = 5.0

// Courses are the ways of all stringers of one side.
type Courses struct {
	On          [][]float64      // by rib from aft forward, then by stringer from the keel up: how far along the half section from the keel, mm
	Stern, Bow  []geometry.Point // by stringer: the middle of its end on the stem's side, X from midship, positive, Y up, mm
	design      *design.Design
	ribs        []hull.Section
	tied        []tied // by rib and stringer
	sternSiding float64
}

// tied is where a stringer is tied to a rib, as was asked for last. The ways are looked for
// from the same pins again and again.
type tied struct {
	known bool
	along float64
	stick.Pin
}

// Of finds the ways over the ribs, given from aft forward.
//
// How: each end by itself. A stringer's line beyond the last rib is that of a stick
// tied to its marks and to the stem's side; its bending energy about both of its axes
// is least at one place of the stem. Ends that would crowd are pushed apart by the
// least energy of all together (spread). Where a stringer would turn more beyond the
// last rib than is fair, its marks on the last two ribs move along the ribs by as
// little as makes it fair (ease).
//
// Errors: a stem that has no room for the ends of so many stringers.
func Of(d *design.Design, h *hull.Hull, ribs []hull.Section) (*Courses, error) {
	n := len(d.Stringers.At)
	c := &Courses{design: d, ribs: ribs, sternSiding: float64(d.After().Siding), On: make([][]float64, len(ribs)), tied: make([]tied, n*len(ribs))}
	all := make([]float64, n*len(ribs))
	for k, r := range ribs {
		long := r.Half.Length()
		c.On[k] = all[n*k : n*(k+1) : n*(k+1)]
		for i, share := range d.Stringers.At {
			c.On[k][i] = share * long
		}
	}
	var err error
	if c.Bow, err = c.land("bow", h.Bow, d.Bow, h.Sheer.BowSet.EndSlope(), 1); err != nil {
		return nil, err
	}
	if d.EndsAlike() {
		c.mirror()
	} else if c.Stern, err = c.land("stern", h.Stern, d.After(), h.Sheer.SternSet.EndSlope(), -1); err != nil {
		return nil, err
	}
	for k, on := range c.On {
		for i, along := range on {
			c.onRib(k, i, along)
		}
	}
	return c, nil
}

// mirror makes the stern like the bow.
func (c *Courses) mirror() {
	c.Stern = c.Bow
	n := len(c.On)
	for k := range n / 2 {
		copy(c.On[k], c.On[n-1-k])
	}
}

// Stiff is how many times as stiff a stringer is along its flat as off it.
func Stiff(d *design.Design) float64 {
	ratio := float64(d.Stringers.Width / d.Stringers.Depth)
	return ratio * ratio
}

// Pins returns where a stringer is tied, from its end on the stern's stem to that on
// the bow's: the middle of its depth, with its flat on the ribs and on the stems' sides.
func (c *Courses) Pins(i int) []stick.Pin {
	out := make([]stick.Pin, len(c.ribs)+2)
	for k := range out {
		out[k] = c.Pin(i, k)
	}
	return out
}

// Pin is the k-th of them, from 0 on.
func (c *Courses) Pin(i, k int) stick.Pin {
	switch k {
	case 0:
		return onStem(geometry.Point{X: -c.Stern[i].X, Y: c.Stern[i].Y}, c.sternSiding)
	case len(c.ribs) + 1:
		return onStem(c.Bow[i], float64(c.design.Bow.Siding))
	}
	return c.tied[len(c.Bow)*(k-1)+i].Pin
}

// onRib ties a stringer to a rib so far along the half section.
func (c *Courses) onRib(k, i int, along float64) stick.Pin {
	t := &c.tied[len(c.On[k])*k+i]
	if !t.known || t.along != along {
		r := &c.ribs[k]
		p, heading := r.Half.At(along)
		p = p.Add(geometry.Polar(float64(c.design.Ribs.Thickness+c.design.Stringers.Depth)/2, heading-math.Pi/2))
		*t = tied{true, along, stick.Pin{Point3: geometry.Point3{X: r.Station, Y: p.X, Z: r.KeelZ + p.Y}, Flat: heading}}
	}
	return t.Pin
}

// onStem is where a stringer ends on a stem's side.
func onStem(p geometry.Point, siding float64) stick.Pin {
	return stick.Pin{Point3: geometry.Point3{X: p.X, Y: siding / 2, Z: p.Y}, Flat: math.Pi / 2}
}

// land finds the ends of all stringers on one stem, and moves their marks where that is
// needed; side is 1 forward and -1 aft, slope the rise of the gunwales' undersides over
// their run there.
func (c *Courses) land(name string, e hull.End, s design.Stem, slope, side float64) ([]geometry.Point, error) {
	wide := float64(c.design.Stringers.Width)
	st, err := newSide(e, float64(c.design.Skin.Thickness()+c.design.Stringers.Depth), float64(s.Siding))
	if err != nil {
		return nil, fmt.Errorf("%s: where the stringers end: %w", name, err)
	}
	// Each end is a stick's width and a lashing from its neighbor. The first lies a
	// width past the end of the keel, the last that far under the gunwale.
	more, gap := len(c.design.Stringers.At)-1, wide+LashingRoom
	lo, hi := wide, st.under(e.GunwaleX, e.GunwaleZ-wide/2-LashingRoom, slope)
	if need := gap * float64(more); !(hi-lo >= need) {
		return nil, fmt.Errorf("%s: between keel and gunwale its edge has %.0f mm for the ends of %d stringers, with room to lash them they need %.0f mm; give fewer stringers (stringers.at) or narrower ones (stringers.width)",
			name, math.Max(0, hi-lo), more+1, need)
	}
	lots := make([]lot, more+1)
	for i := range lots {
		w := c.newWay(i, side, st)
		w.ease(lo+gap*float64(i), hi-gap*float64(more-i))
		lots[i] = lot{energy: []func(float64) float64{w.energy}, first: w.at - gap*float64(i)}
	}
	var out []geometry.Point
	for _, l := range spread(lots, lo, hi-gap*float64(more), gap) {
		for range l.energy {
			out = append(out, st.point(l.first+gap*float64(len(out))))
		}
	}
	return out, nil
}
