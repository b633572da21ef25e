// Package hull turns a design into the shape of the boat: keel line and stems,
// the gunwales as elastic battens with their natural sheer, and the section at
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
	Gunwale             *curve.Track // the port gunwale line; lengths from midship, forward positive
	Sheer               Sheer

	seat   float64 // skin face of the keel to mid-thickness of the rib, mm
	floor  float64 // and to the rib's upper face, mm
	keel   keelLine
	shapes shapes
}

// New works out the hull of a checked design.
//
// Errors: a stem whose curves do not meet, a gunwale that cannot be drawn, or
// controls that contradict each other; each names the place and what to change.
func New(d *design.Design) (*Hull, error) {
	h := &Hull{
		Length: float64(d.Hull.Length), Beam: float64(d.Hull.Beam), Depth: float64(d.Hull.Depth),
		seat:  float64(d.Skin.Thickness + d.Keel.Depth + d.Ribs.Thickness/2),
		floor: float64(d.Skin.Thickness + d.Keel.Depth + d.Ribs.Thickness),
	}
	h.Sheer = newSheer(d, h.seat+h.Depth)
	var err error
	if h.Bow, err = newEnd("bow", d, d.Bow, float64(d.Hull.RockerBow), h.Sheer.BowZ); err != nil {
		return nil, err
	}
	h.Stern = h.Bow
	if d.EndsAlike() {
		// Worked out once: the search for the toe is most of the work here.
	} else if h.Stern, err = newEnd("stern", d, d.After(), float64(d.Hull.RockerStern), h.Sheer.SternZ); err != nil {
		return nil, err
	}
	h.keel = keelLine{float64(d.Hull.KeelStraight) / 2, h.Bow, h.Stern}
	if h.Gunwale, err = h.gunwaleLine(d); err != nil {
		return nil, fmt.Errorf("gunwale: %w", err)
	}
	if h.shapes, err = newShapes(d.AllSections()); err != nil {
		return nil, fmt.Errorf("sections: %w", err)
	}
	return h, nil
}

// KeelZ returns the height of the keel's skin face above the baseline at the
// station x, mm, and its slope along x. Beyond the toes of the stems, where
// the forefoot begins, the keel line is continued by its rocker.
func (h *Hull) KeelZ(x float64) (z, slope float64) { return h.keel.at(x) }

// FloorZ returns the height of the floor at the station x, mm: the upper face of a rib
// over the keel.
func (h *Hull) FloorZ(x float64) float64 {
	z, _ := h.KeelZ(x)
	return z + h.floor
}

// Section returns the section at the station x, from the keel point up.
//
// Errors: a station beyond the keel, or a half-breadth and depth from which the
// shape set for that place cannot be made; the message names station, cause
// and cure.
func (h *Hull) Section(x float64) (Section, error) {
	if x > h.Bow.Toe.X || -x > h.Stern.Toe.X {
		return Section{}, fmt.Errorf("station %.0f mm lies past the toe of the stem, where the keel ends at %.0f mm; move the last rib in (ribs.from_bow, ribs.from_stern)",
			x, math.Copysign(h.toe(x), x))
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

func (h *Hull) toe(x float64) float64 {
	if x < 0 {
		return h.Stern.Toe.X
	}
	return h.Bow.Toe.X
}

// keelLine is the skin face of the keel: straight amidships, then a parabola
// of rocker to each toe.
type keelLine struct {
	half       float64 // half the straight length, mm
	bow, stern End
}

func (k keelLine) at(x float64) (z, slope float64) {
	end, u := k.bow, x
	if x < 0 {
		end, u = k.stern, -x
	}
	if u <= k.half {
		return 0, 0
	}
	run := end.Toe.X - k.half
	share := (u - k.half) / run
	return end.Toe.Y * share * share, math.Copysign(2*end.Toe.Y*share/run, x) * nonzero(end.Toe.Y)
}

// nonzero keeps a level keel from getting the slope minus zero.
func nonzero(v float64) float64 {
	if v == 0 {
		return 0
	}
	return 1
}
