// Package stow puts boats into one another: how far one comes down into the
// next, what touches first, how much room is left, in which order a few boats
// go and what would make them fit.
//
// A boat is lowered straight down, thwarts and seats of the boat below taken
// out, shifted along and turned end for end as serves best. What is lowered is
// the outside of its cloth; what it is lowered into is the inner faces of ribs,
// battens, gunwales and stems. Nothing is taken to bend.
package stow

import (
	"math"

	"ribwright/geometry"
)

// Kind is a kind of part that boats touch with.
type Kind int

// The kinds of parts.
const (
	Rib Kind = iota
	Keel
	Stringer
	Cloth
	Gunwale
	Stem
	Breasthook
	CrossPiece // a thwart, yoke or seat, which can be taken out
)

// Part is one part of a boat.
type Part struct {
	Kind Kind
	Name string // as the frame has it: "rib F3", "stringer 2", "bow stem", "Yoke"
}

// Zone is where in a nest two boats meet.
type Zone int

// The zones. The floor is where ribs, keel, stringers and cloth of the lower boat
// lie flatter than 45 degrees; ends are stems, breasthooks and the gunwales'
// ends under a keel.
const (
	Floor Zone = iota
	Sides
	Ends
	Across // thwarts, yoke and seats that are left in
	zones
)

// Contact is a place where two boats touch or come nearest.
type Contact struct {
	Room         float64         // mm; +Inf when nothing is near
	At           geometry.Point3 // in the axes of the lower boat
	Lower, Upper Part            // of the boat below and of the one above
}

// nowhere is the contact of boats that do not meet.
func nowhere() Contact { return Contact{Room: math.Inf(1)} }

// Meets reports whether there is a contact at all.
func (c Contact) Meets() bool { return !math.IsInf(c.Room, 0) }

// Place is where the upper boat lies in the lower one's axes.
type Place struct {
	X, Z   float64 // its midship and its baseline, mm
	Turned bool    // end for end
}

// way is a step along one boat as a step along the other.
func (p Place) way(x float64) float64 {
	if p.Turned {
		return -x
	}
	return x
}

// local takes a point of the lower boat into the axes of the upper boat.
func (p Place) local(q geometry.Point3) geometry.Point3 {
	return geometry.Point3{X: p.way(q.X - p.X), Y: q.Y, Z: q.Z - p.Z}
}

// Outer takes a point of the upper boat into the axes of the lower one. Boats
// are alike to port and starboard, so y stays.
func (p Place) Outer(q geometry.Point3) geometry.Point3 {
	return geometry.Point3{X: p.way(q.X) + p.X, Y: q.Y, Z: q.Z + p.Z}
}

// then returns where something lies that lies at q in the axes of a boat at p.
func (p Place) then(q Place) Place {
	return Place{X: p.X + p.way(q.X), Z: p.Z + q.Z, Turned: p.Turned != q.Turned}
}

// from returns where a boat at q lies in the axes of a boat at p.
func (p Place) from(q Place) Place {
	return Place{X: p.way(q.X - p.X), Z: q.Z - p.Z, Turned: p.Turned != q.Turned}
}
