package stow

import (
	"fmt"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/skin"
)

// Boat is one boat of a fleet, made ready to go into another and to take one.
type Boat struct {
	Title   string
	Frame   *frame.Frame
	Cloth   skin.Pressed
	Outside *Outside
	Inside  *Inside // with its thwarts, yoke and seat bars
	Mass    float64 // empty, kg, everything aboard that the design names as a part

	bare *Inside
	like string // designs with the same text are the same boat
}

// NewBoat makes a boat ready.
//
// Errors: a wood that is not known.
func NewBoat(f *frame.Frame) (*Boat, error) {
	a, err := aboard.New(f, nil, nil)
	if err != nil {
		return nil, err
	}
	b := &Boat{Title: a.Title, Frame: f, Cloth: a.Cloth.Press(f), Mass: a.Own().Mass}
	if b.like, err = f.Design.Fingerprint(); err != nil {
		return nil, err
	}
	if b.Outside, err = OutsideOf(f, b.Cloth); err != nil {
		return nil, fmt.Errorf("%s: %w", b.Title, err)
	}
	if b.Inside, err = InsideOf(f, b.Cloth.Cloth); err != nil {
		return nil, fmt.Errorf("%s: %w", b.Title, err)
	}
	b.bare = b.Inside.Bare()
	return b, nil
}

// open returns the inside that another boat is lowered into.
func (b *Boat) open(o Options) *Inside {
	if o.LeftIn {
		return b.Inside
	}
	return b.bare
}

// alike reports whether a boat is the same from both ends.
func (b *Boat) alike() bool { return b.Frame.Design.EndsAlike() }

// Length returns the boat's length overall with its cloth, mm.
func (b *Boat) Length() float64 { return b.Outside.Fore - b.Outside.Aft }
