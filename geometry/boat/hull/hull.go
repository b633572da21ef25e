// Package hull turns a design into the shape of the boat: keel line and stems,
// the gunwales as bent sticks with their natural sheer, and the section at
// any station. No mould stands behind it: only what a builder can hold.
package hull

import (
	"fmt"
	"math"

	"ribwright/geometry/curve"
	"ribwright/geometry/design"
)

// Hull is the shape of one boat. Its methods may be called from several
// goroutines at once; nothing in it changes after New.
type Hull struct {
	Length, Beam, Depth float64 // mm, as designed: overall; between and under the gunwale lines at midship
	Bow, Stern          End
	Gunwale             *curve.Track    // the port gunwale line; lengths from midship, forward positive
	Plan                *curve.Elastica // its half-breadth, as spreaders and stems bend it
	Sheer               Sheer

	seat, onRib float64 // skin face of the keel to mid-thickness of the rib and to its upper face, mm
	slats       float64 // thickness of the floor slats on the ribs, mm
	level       float64 // half the straight length of the keel, mm
	shapes      shapes
	drawn       *drawn // what it was before it came out otherwise; nil as designed
}

// New works out the hull of a checked design.
//
// Errors: a stem whose curves do not meet, a gunwale that cannot be drawn, or
// controls that contradict each other; each names the place and what to change.
func New(d *design.Design) (*Hull, error) {
	h := &Hull{
		Length: float64(d.Hull.Length), Beam: float64(d.Hull.Beam), Depth: float64(d.Hull.Depth),
		seat:  float64(d.Skin.Thickness() + d.Keel.Depth + d.Ribs.Thickness/2),
		onRib: float64(d.Skin.Thickness() + d.Keel.Depth + d.Ribs.Thickness),
		slats: float64(d.Inside.Floor()),
		level: float64(d.Hull.KeelStraight) / 2,
	}
	h.Sheer = newSheer(d, h.seat+h.Depth)
	var err error
	if h.Bow, err = newEnd("bow", d, d.Bow, float64(d.Hull.RockerBow), h.Sheer.BowZ); err != nil {
		return nil, err
	}
	h.Stern = h.Bow // the search for the toe is most of the work here
	if !d.EndsAlike() {
		if h.Stern, err = newEnd("stern", d, d.After(), float64(d.Hull.RockerStern), h.Sheer.SternZ); err != nil {
			return nil, err
		}
	}
	if h.Gunwale, err = h.gunwaleLine(d); err != nil {
		return nil, fmt.Errorf("gunwale: %w", err)
	}
	if h.shapes, err = newShapes(d.AllSections()); err != nil {
		return nil, fmt.Errorf("sections: %w", err)
	}
	return h, nil
}

// End returns the end of the boat on the side of the station x, and how far x lies
// from midship, mm.
func (h *Hull) End(x float64) (End, float64) {
	if x < 0 {
		return h.Stern, -x
	}
	return h.Bow, x
}

// KeelZ returns the height of the keel's skin face above the baseline at the
// station x, mm, and its slope along x: straight amidships, then a parabola of
// rocker to each toe. Beyond the toes of the stems, where the forefoot begins, the
// keel line is continued by its rocker.
func (h *Hull) KeelZ(x float64) (z, slope float64) {
	if h.drawn != nil {
		return h.drawn.keelZ(x)
	}
	end, u := h.End(x)
	rise, run := end.Toe.Y, end.Toe.X-h.level
	if u <= h.level || rise == 0 {
		return 0, 0
	}
	share := (u - h.level) / run
	return rise * share * share, math.Copysign(2*rise*share/run, x)
}

// RibsZ returns the height of the upper face of a rib over the keel at the station x, mm.
func (h *Hull) RibsZ(x float64) float64 {
	z, _ := h.KeelZ(x)
	return z + h.onRib
}

// FloorZ returns the height of the floor at the station x, mm, that people sit, kneel and
// stand on: of the slats' upper faces over the keel, or of the ribs' in a boat without
// slats.
func (h *Hull) FloorZ(x float64) float64 { return h.RibsZ(x) + h.slats }

// Section returns the section at the station x, from the keel point up.
//
// Errors: a station beyond the keel, or a half-breadth and depth from which the
// shape set for that place cannot be made; the message names station, cause
// and cure.
func (h *Hull) Section(x float64) (Section, error) {
	if end, u := h.End(x); u > end.Toe.X {
		return Section{}, fmt.Errorf("station %.0f mm lies past the toe of the stem, where the keel ends at %.0f mm; move the last rib in (ribs.from_bow, ribs.from_stern)",
			x, math.Copysign(end.Toe.X, x))
	}
	skin, _ := h.KeelZ(x)
	g := h.Gunwale.Point(x)
	s, err := Solve(g.Y, g.Z-skin-h.seat, h.shapes.at(x))
	if err != nil {
		return Section{}, fmt.Errorf("station %.0f mm: %w", x, err)
	}
	s.Station, s.KeelZ = x, skin+h.seat
	return s, nil
}
