package flaw

import (
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/solid"
)

// Stand is where a builder stands who looks at the frame.
type Stand int

// The places.
const (
	AtBow Stand = iota
	AtStern
	Abeam
)

// Stands lists the places.
func Stands() []Stand { return []Stand{AtBow, AtStern, Abeam} }

// String is the place in a word.
func (s Stand) String() string { return [...]string{"bow", "stern", "abeam"}[s] }

// Seen is one fault beside the fair boat from one place.
type Seen struct {
	Look
	Sighted int // number of the stringer along the bilge; 0 for none
}

// See shows a frame with a fault of a kind and size, mm, that a builder meets at a place;
// the rib is the one that Of takes.
//
// Errors: sticks that do not run past the ribs.
func See(f *frame.Frame, kind Kind, size float64, at Stand) (*Seen, error) {
	shown := f.Nearest(f.Hull.Length / 8)
	rib := slices.IndexFunc(f.Ribs, func(r frame.Rib) bool { return r.Name == shown.Name })
	r := &Report{Frame: f, Sighted: sighted(f.Ribs[rib])}
	fault := Fault{kind, size, rib}
	m, err := New(f, fault)
	if err != nil {
		return nil, err
	}
	fair, faulty := r.standing(solid.AsDrawn{}), r.standing(m)
	return &Seen{Look{Fault: fault, Moved: m, Eye: r.from(fault, at), Fair: r.with(fair, fault, solid.AsDrawn{}), Faulty: r.with(faulty, fault, m)}, r.Sighted}, nil
}

// from is where the eye is at a place: past the stern as it is past the bow, abeam a
// boat's length off and a little over the gunwale.
func (r *Report) from(fault Fault, at Stand) solid.Eye {
	const over = 300.0 // mm
	h := r.Frame.Hull
	switch {
	case at == Abeam:
		z, _ := h.KeelZ(0)
		middle := geometry.Point3{Z: z + h.Depth/2}
		return solid.Eye{At: geometry.Point3{Y: h.Length, Z: z + h.Depth + over}, To: middle}
	case at == AtStern && fault.Kind == Proud:
		return r.along(fault, -1)
	}
	e := r.eye(fault)
	if at == AtStern {
		e.At.X = -h.Stern.Tip() - (e.At.X - h.Bow.Tip())
	}
	return e
}

// Looked tells whether a line is what the eye runs along for a fault; sighted is the number
// of the stringer along the bilge.
func Looked(f Fault, sighted int, l solid.Line) bool {
	switch f.Kind {
	case Proud:
		return l.Part == solid.Stringers && l.Side > 0 || l.Part == solid.Ribs && sighted == 0 && l.Number == f.Rib
	case OneSide:
		return l.Part == solid.Ribs && l.Number == f.Rib
	case Wavy:
		return l.Part == solid.Keel
	case Aside:
		return l.Part == solid.Gunwales || l.Part == solid.Tool
	}
	return l.Part == solid.Tool
}
