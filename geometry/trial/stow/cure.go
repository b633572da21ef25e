package stow

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// Cure is the smallest change of one measure of one boat that lets the upper
// boat stand in the lower one.
type Cure struct {
	Boat    *Boat
	Upper   bool // of the pair
	Measure Measure
	By      float64 // mm; of flare radians
}

// Cures returns, for a pair that does not nest, the smallest change of each
// single measure that makes it nest at the same place: of the upper boat beam,
// flare, depth and length, of the lower one beam. What no such change mends, or
// only one that cannot be built, is left out; a cross piece is taken out, not cured.
func (p *Pair) Cures(o Options) []Cure {
	if p.Nests || p.Far != nil || p.Bound.Lower.Kind == CrossPiece {
		return nil
	}
	var out []Cure
	for _, c := range []struct {
		upper bool
		m     Measure
		signs []float64
	}{
		{true, Beam, []float64{-1}}, {false, Beam, []float64{1}}, {true, Flare, []float64{1, -1}},
		{true, Depth, []float64{1, -1}}, {true, Length, []float64{-1}},
	} {
		cure := Cure{p.Lower, c.upper, c.m, math.Inf(1)}
		if c.upper {
			cure.Boat = p.Upper
		}
		for _, sign := range c.signs {
			if by := p.least(cure, sign, o); math.Abs(by) < math.Abs(cure.By) {
				cure.By = by
			}
		}
		if !math.IsInf(cure.By, 0) {
			out = append(out, cure)
		}
	}
	return out
}

// least returns the smallest change of one sign that makes the pair nest, +Inf
// when none up to the greatest does.
func (p *Pair) least(c Cure, sign float64, o Options) float64 {
	was := c.Boat.Frame.Design
	step, most := c.Measure.steps(was)
	good := func(n int) bool {
		d := changed(was, c.Measure, sign*float64(n)*step)
		if c.Upper {
			return stands(p.Lower, d, p.Place, o)
		}
		return receives(d, p.Upper, p.Place, o)
	}
	n := FirstGood(int(most/step), good)
	if n == 0 {
		return math.Inf(1)
	}
	return sign * float64(n) * step
}

// FirstGood returns a good number from 1 to most whose predecessor is not good,
// 0 when none is found: by threes, then by halves. Where good and bad alternate,
// as with joints in each other's way, it need not be the very least.
func FirstGood(most int, good func(int) bool) int {
	lo, hi := 0, min(4, most)
	for hi > 0 && !good(hi) {
		if hi == most {
			return 0
		}
		lo, hi = hi, min(3*hi, most)
	}
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; good(mid) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return hi
}

// stands reports whether a design, built, stands in another boat at a shift.
func stands(lower *Boat, d *design.Design, at Place, o Options) bool {
	f, cloth, ok := made(d)
	if !ok {
		return false
	}
	out, err := OutsideOf(f, cloth.Press(f))
	return err == nil && seeker{lower.open(o), out, o.Pad}.stands(at)
}

func receives(d *design.Design, upper *Boat, at Place, o Options) bool {
	f, cloth, ok := made(d)
	if !ok {
		return false
	}
	in, err := InsideOf(f, cloth)
	if err != nil {
		return false
	}
	lower := &Boat{Frame: f, Inside: in, bare: in.Bare()}
	return seeker{lower.open(o), upper.Outside, o.Pad}.stands(at)
}

// stands reports whether there is the room asked for with the boat on its pads.
func (s seeker) stands(at Place) bool {
	at.Z = s.seat(at)
	s.pad = max(0, s.pad-slack)
	return s.roomy(at)
}

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
	stretch := func(k measure.Length, v *measure.Length) { *v = measure.Length(math.Round(float64(*v * k))) }
	switch m {
	case Beam:
		k := 1 + measure.Length(by)/d.Hull.Beam
		stretch(k, &c.Hull.Beam)
		for i := range c.Hull.Spreaders {
			stretch(k, &c.Hull.Spreaders[i].Beam)
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
			stretch(k, v)
		}
		for i := range c.Hull.Spreaders {
			stretch(k, &c.Hull.Spreaders[i].At)
		}
		for i := range c.Hull.Sections {
			stretch(k, &c.Hull.Sections[i].At)
		}
	}
	return &c
}

// made builds and covers a design; false when it cannot be built.
func made(d *design.Design) (f *frame.Frame, cloth *skin.Cloth, ok bool) {
	if d.Check() != nil {
		return nil, nil, false
	}
	f, err := frame.Build(d)
	if err == nil {
		cloth, err = skin.Of(f)
	}
	return f, cloth, err == nil
}

// Refit proposes a boat like the upper one of a pair that stands in the lower
// one with the room asked for: narrower to the least whole millimetre, and only
// when that does not serve shorter as well, by steps of 5 mm. It bears the title
// given; a pair that nests returns its upper boat.
//
// Errors: no boat up to a quarter shorter and a fifth narrower nests, or none
// that can be built.
func (p *Pair) Refit(o Options, title string) (*Boat, error) {
	if p.Nests {
		return p.Upper, nil
	}
	was := p.Upper.Frame.Design
	_, most := Beam.steps(was)
	step, longest := Length.steps(was)
	stands := func(shorter, narrower int) bool {
		return stands(p.Lower, smaller(was, float64(shorter)*step, float64(narrower)), p.Place, o)
	}
	const tries = 3
	for k := range tries + 1 {
		shorter := int(longest/step) * k / tries
		narrower := FirstGood(int(most), func(n int) bool { return stands(shorter, n) })
		if narrower == 0 {
			continue
		}
		if shorter > 0 {
			shorter = FirstGood(shorter, func(n int) bool { return stands(n, narrower) })
		}
		d := smaller(was, float64(shorter)*step, float64(narrower))
		d.Title = title
		d.Next(was, fmt.Sprintf("%.0f mm narrower and %.0f mm shorter, to stand in another boat", float64(was.Hull.Beam-d.Hull.Beam), float64(was.Hull.Length-d.Hull.Length)))
		f, err := frame.Build(d)
		if err != nil {
			return nil, err
		}
		return NewBoat(f)
	}
	return nil, fmt.Errorf("no %s that can be built stands in %s, up to %.0f mm shorter and %.0f mm narrower; ask for less room, or draw a smaller boat",
		p.Upper.Title, p.Lower.Title, longest, most)
}

func smaller(d *design.Design, shorter, narrower float64) *design.Design {
	return changed(changed(d, Length, -shorter), Beam, -narrower)
}
