// Package fan makes one board serve many builders of one family: straight rays that are
// read at a builder's own midship rib, or at half the length of the boat, where each of
// the boat's marks lies.
package fan

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
)

// Kind says what a mark is.
type Kind int

// The kinds of marks that a board holds. Distances along a rib are from its middle, those
// of mortises from midship along the gunwale's straight stock.
const (
	Length   Kind = iota // half of a rib, shoulder to shoulder
	Bend                 // where one bend passes into the next
	Stringer             // where a stringer's middle crosses
	Mortise              // the middle of a rib's mortise
)

func (k Kind) String() string { return [...]string{"length", "bend", "stringer", "mortise"}[k] }

// Tolerance is how far a reading may be off the builder's own loft, mm: a rib 2 mm in its
// whole length and so 1 mm in half of it, bends 5, stringers 2, mortises 1. Common
// practice, no source: what lashings, hands and tenons take up.
func (k Kind) Tolerance() float64 { return [...]float64{1, 5, 2, 1}[k] }

// Mark names one mark of half a boat.
type Mark struct {
	Kind   Kind
	Rib    int // 0 at midship, 1 the pair next to it
	Number int // of bends and stringers, from the keel, 0 the first
}

// String names the mark as the boat's own patterns do.
func (m Mark) String() string {
	switch m.Kind {
	case Bend:
		return fmt.Sprintf("bend %d of rib %s", m.Number+1, RibName(m.Rib))
	case Stringer:
		return fmt.Sprintf("stringer %d on rib %s", m.Number+1, RibName(m.Rib))
	case Mortise:
		return "mortise of rib " + RibName(m.Rib)
	}
	return "length of rib " + RibName(m.Rib)
}

// Whole is a measure of the mark as it is told: lengths of ribs are told whole, and are
// drawn as halves.
func (m Mark) Whole(mm float64) float64 {
	if m.Kind == Length {
		return 2 * mm
	}
	return mm
}

// RibName names the ribs that are alike fore and aft.
func RibName(rib int) string {
	if rib == 0 {
		return "M"
	}
	return fmt.Sprintf("F%d and A%d", rib, rib)
}

// Reading is where on a board a builder reads, mm.
type Reading struct {
	Rib  float64 // the whole length of the midship rib, shoulder to shoulder
	Half float64 // half of the boat's length
	Beam float64 // amidships, on the gunwale line
}

// at is the reading at which a kind of mark is read.
func (r Reading) at(k Kind) float64 {
	if k == Mortise {
		return r.Half
	}
	return r.Rib
}

// Boat is what a board needs of a builder's boat.
type Boat struct {
	Builder string
	Reading
	Ribs  int // of half the boat, the one at midship not counted
	Marks map[Mark]float64
}

// Of takes the marks off a frame.
//
// Errors: a boat whose halves differ, or without a rib at midship.
func Of(builder string, f *frame.Frame) (Boat, error) {
	mid := len(f.Ribs) / 2
	if !f.Design.EndsAlike() || !f.Design.Ribs.AtMidship || len(f.Ribs)%2 == 0 {
		return Boat{}, fmt.Errorf("%s: a fan board serves boats that are alike fore and aft with a rib at midship", builder)
	}
	b := Boat{Builder: builder, Ribs: mid, Marks: map[Mark]float64{}, Reading: Reading{
		Rib: f.Ribs[mid].Length, Half: float64(f.Design.Hull.Length) / 2, Beam: float64(f.Design.Hull.Beam)}}
	for k, r := range f.Ribs[mid:] {
		b.Marks[Mark{Length, k, 0}] = r.Length / 2
		for n, at := range r.BendMarks {
			b.Marks[Mark{Bend, k, n}] = at
		}
		for n, at := range r.StringerMarks {
			b.Marks[Mark{Stringer, k, n}] = at
		}
		if k > 0 {
			b.Marks[Mark{Mortise, k, 0}] = math.Abs(f.Gunwale.Mortises[mid+k].FromMidship)
		}
	}
	return b, nil
}
