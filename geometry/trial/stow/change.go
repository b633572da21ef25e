package stow

import (
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// Measure is one measure of a design that may be changed to make boats nest.
type Measure int

// The measures.
const (
	Beam Measure = iota
	Flare
	Depth
	Length
)

// String returns the word for the measure.
func (m Measure) String() string { return [...]string{"beam", "flare", "depth", "length"}[m] }

// steps returns the least change that is of use at the bench and the greatest
// that still leaves the same kind of boat: mm, or radians of flare.
func (m Measure) steps(d *design.Design) (least, most float64) {
	switch m {
	case Beam:
		return 1, 0.2 * float64(d.Hull.Beam)
	case Flare:
		return 0.25 * math.Pi / 180, 8 * math.Pi / 180
	case Depth:
		return 1, 0.25 * float64(d.Hull.Depth)
	}
	return 5, 0.25 * float64(d.Hull.Length)
}

// changed returns a copy of a design with one measure changed by the given
// amount: widths in proportion all along, flare everywhere alike, places along
// the boat in proportion to its length. Ribs, thwarts and scantlings stay.
func changed(d *design.Design, m Measure, by float64) *design.Design {
	c := *d
	c.Hull.Spreaders = slices.Clone(d.Hull.Spreaders)
	c.Hull.Sections = slices.Clone(d.Hull.Sections)
	c.Gunwale.Scarfs = slices.Clone(d.Gunwale.Scarfs)
	switch m {
	case Beam:
		k := 1 + measure.Length(by)/d.Hull.Beam
		c.Hull.Beam = whole(d.Hull.Beam * k)
		for i := range c.Hull.Spreaders {
			c.Hull.Spreaders[i].Beam = whole(c.Hull.Spreaders[i].Beam * k)
		}
	case Flare:
		for i := range c.Hull.Sections {
			c.Hull.Sections[i].Flare += measure.Angle(by)
		}
	case Depth:
		c.Hull.Depth += measure.Length(by)
	case Length:
		k := 1 + measure.Length(by)/d.Hull.Length
		for _, v := range []*measure.Length{&c.Hull.Length, &c.Hull.KeelStraight, &c.Gunwale.EdgeSetFrom} {
			*v = whole(*v * k)
		}
		for i := range c.Hull.Spreaders {
			c.Hull.Spreaders[i].At = whole(c.Hull.Spreaders[i].At * k)
		}
		for i := range c.Hull.Sections {
			c.Hull.Sections[i].At = whole(c.Hull.Sections[i].At * k)
		}
	}
	return &c
}

func whole(v measure.Length) measure.Length { return measure.Length(math.Round(float64(v))) }

// made builds a design; nil when it cannot be built.
func made(d *design.Design) *frame.Frame {
	if d.Check() != nil {
		return nil
	}
	f, err := frame.Build(d)
	if err != nil {
		return nil
	}
	return f
}
