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
	CrossPiece // a thwart, yoke or seat bar
)

// String returns the name of the kind in the trade's words.
func (k Kind) String() string {
	return [...]string{"rib", "keel", "stringer", "cloth", "gunwale", "stem", "breasthook", "cross piece"}[k]
}

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
	Across // thwarts, yoke and seat bars that are left in
	zones
)

// String returns the name of the zone.
func (z Zone) String() string { return [...]string{"floor", "sides", "ends", "cross pieces"}[z] }

// Contact is a place where two boats touch or come nearest.
type Contact struct {
	Room  float64         // mm; +Inf when nothing is near
	At    geometry.Point3 // in the axes of the lower boat
	Lower Part            // of the boat below
	Upper Part            // of the boat above
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

// local takes a point of the lower boat into the axes of the upper boat.
func (p Place) local(q geometry.Point3) geometry.Point3 {
	q.X, q.Z = q.X-p.X, q.Z-p.Z
	if p.Turned {
		q.X = -q.X
	}
	return q
}

// Outer takes a point of the upper boat into the axes of the lower one. Boats
// are alike to port and starboard, so y stays.
func (p Place) Outer(q geometry.Point3) geometry.Point3 {
	if p.Turned {
		q.X = -q.X
	}
	q.X, q.Z = q.X+p.X, q.Z+p.Z
	return q
}
