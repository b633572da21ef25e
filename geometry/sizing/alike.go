package sizing

import (
	"cmp"
	"math"

	"ribwright/geometry/sizing/family"
)

// SectionSteps is how many steps the fill of the section is taken in by boats that share
// a board: sharp, between, full.
const SectionSteps = 3

// Alike is a boat that is sized to share a board with others of its family.
type Alike struct {
	*Boat
	Step int // of the section, 0 the sharpest; always 0 where a family has no fill
}

// Sharing says how a boat is held so that it shares a board.
type Sharing struct {
	Least int     // the least step of its section, 0 to SectionSteps - 1
	Wider float64 // than the formulas make it, mm; negative for narrower
}

// SizeAlike sizes a boat as Size does, and takes from it what keeps marks of one family
// from lying on straight rays: its section is filled in whole steps (the formula "fill",
// 0 to 1), the next one up from what its standing asks for, so that it stands no worse; and
// the ribs' pitch and the uppermost stringer's share (the formulas "pitch" and
// "top_stringer") are left as they come, not rounded. A family without one of these
// formulas keeps what it has.
//
// Errors: those of Size.
func SizeAlike(f *family.Family, b Brief, s Sharing) (Alike, error) {
	c, err := NewCase(f, b)
	if err != nil {
		return Alike{}, err
	}
	if err := c.Settle(); err != nil {
		return Alike{}, c.Refused(err)
	}
	step, err := c.inSteps(s)
	if err != nil {
		return Alike{}, c.Refused(err)
	}
	if err := c.unrounded(); err != nil {
		return Alike{}, err
	}
	boat, err := c.Finish()
	return Alike{boat, step}, c.Refused(err)
}

// nearly is by how much of a step a section may be fuller than the step that it is taken
// for: a firmness is found no closer.
const nearly = 0.02

// inSteps settles the case again with the beam as asked and the section in steps.
func (c *Case) inSteps(s Sharing) (step int, err error) {
	if s.Wider != 0 && c.Family.Program.HasFormula("beam") {
		if err := cmp.Or(c.Set("beam", c.run.Number("beam")+s.Wider), c.Settle()); err != nil {
			return 0, err
		}
	}
	if !c.Family.Program.HasFormula("fill") {
		return 0, nil
	}
	const most = SectionSteps - 1
	step = min(max(s.Least, int(math.Ceil(c.run.Number("fill")*most-nearly))), most)
	return step, cmp.Or(c.Set("fill", float64(step)/most), c.Settle())
}

// unrounded keeps values of a settled case as they are, which finishing would round.
func (c *Case) unrounded() error {
	if c.Family.Program.HasFormula("pitch") && c.Family.Program.HasFormula("ribs.pitch") {
		if err := c.Set("ribs.pitch", c.run.Number("pitch")); err != nil {
			return err
		}
	}
	if c.Family.Program.HasFormula("top_stringer") {
		return c.Set("top_stringer", c.run.Number("top_stringer"))
	}
	return nil
}
