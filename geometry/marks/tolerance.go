package marks

import (
	"math"

	"ribwright/geometry/boat/frame"
)

// How far work may be off, in steps that a shop can hold. All of them are common
// practice, no source, unless a comment says where they come from.
const (
	pencil  = Penciled            // mm: a place from a strip or rule. A strip may be 1 mm off in 3 m, as the patterns say.
	sawn    = 2.0                 // mm: a length cut to be trimmed or butted
	joined  = Joined              // mm: a place that a lashing takes up
	held    = Held                // mm: the beam at a spreader while the gunwales are glued or bent
	planed  = 0.5                 // mm: width and thickness of planed stock
	ribbed  = Ribbed              // mm: thickness of a rib
	slot    = 0.3                 // mm: a mortise across and along; the room that a rib is given in it by default
	placed  = Placed              // mm: a mortise along the stock
	bored   = 0.3                 // mm: a hole by its drill
	deep    = 1.0                 // mm: depth of a mortise; half of the gap that a tenon is given by default
	set     = 3.0                 // mm: the frame as it is set up; diagonals may differ by so much, as the book says
	sprung  = 5.0                 // mm: rise that is sprung in, and the ends of the sheer
	bevel   = 1.0 * math.Pi / 180 // radians: an angle set by a bevel
	cloth   = 10.0                // mm: cloth, which is cut over size
	coating = 0.1                 // mm: thickness of cloth and coating
	turned  = 0.02                // of a radius: a form is faired by eye
	seatSet = 3.0                 // mm: the height of a seat; it moves GM by a millimeter or two
	least   = 0.5                 // mm: no mark is nearer than the width of a pencil line
)

// Placed is how far along the stock a mortise may be off, mm, before its rib stands out
// of the row and off its mark on the keel. The shape takes more: a millimeter moves the
// beam by less than a tenth. Common practice, no source.
const Placed = 2.0

// Ribbed is how far the thickness of a rib may be off, mm: it decides how the rib bends.
// Common practice, no source.
const Ribbed = 0.2

// Joined is how far a place may be off that a lashing, a bevel or a peg takes up, mm:
// where ribs stand on keel and stringers, where stringers land on a stem and gunwales
// rest on it. Common practice, no source. A stem that stands so much too high gives as
// much more rocker, and no more.
const Joined = 2.0

// Penciled is how far a place may be off that is pricked through or measured with a rule,
// mm, as bolts of cross pieces from the middle line and pegs of breasthooks along their
// edges. Common practice, no source. Both ends of a cross piece so far off move the beam
// there by twice as much, which is under half of what a builder would mind.
const Penciled = 1.0

// Held is how far off the length of a spreader may be, mm: an eighth of an inch, for a
// tape is read over two edges. Common practice, no source. The boat's beam moves by at
// most two thirds of it.
const Held = 3.2

// ShoulderSlack returns by how much a rib's shoulder may lie too far out or in, mm: what
// the gap under its tenon takes up, and no less than a pencil line. The boat takes more:
// where all ribs are a millimeter too long it comes out half a millimeter deeper.
func ShoulderSlack(f *frame.Frame) float64 { return math.Max(least, float64(f.Design.Ribs.TenonGap)) }

// FreeWidth is how far off the width of a free rib or the beam at its heads may be,
// mm: what a spreader takes up by hand. Common practice, no source.
const FreeWidth = 5.0

// BilgeSlack returns by how much the marks of a rib's tightest bend may lie too far
// out or in before the rib stands FreeWidth wider or narrower at its heads, mm; +Inf
// for a straight rib.
//
// How: moving a bend by e along the blank moves the head by e (cos a - cos b), a and
// b the headings before and after it. A rib that is one bend and a straight side has
// a bend that begins at the middle.
func BilgeSlack(r frame.Rib) float64 {
	tight, from := r.Bilge()
	if tight < 0 {
		return math.Inf(1)
	}
	_, a := r.Section.Half.At(from)
	_, b := r.Section.Half.At(from + r.Section.Half[tight].Length)
	return FreeWidth / 2 / (math.Cos(a) - math.Cos(b))
}

// alike is how far the lengths of a rib may be off: by less than that ribs share one
// marking strip, as the design says (ribs.tolerance).
func alike(f *frame.Frame) float64 { return math.Max(least, float64(f.Design.Ribs.Tolerance)) }
