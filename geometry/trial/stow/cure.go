package stow

import (
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/skin"
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
		best := math.Inf(1)
		for _, sign := range c.signs {
			if by := p.least(c.upper, c.m, sign, o); math.Abs(by) < math.Abs(best) {
				best = by
			}
		}
		if math.IsInf(best, 0) {
			continue
		}
		cure := Cure{p.Lower, c.upper, c.m, best}
		if c.upper {
			cure.Boat = p.Upper
		}
		out = append(out, cure)
	}
	return out
}

// least returns the smallest change of one sign that makes the pair nest, +Inf
// when none up to the greatest does.
func (p *Pair) least(upper bool, m Measure, sign float64, o Options) float64 {
	boat := p.Lower
	if upper {
		boat = p.Upper
	}
	step, most := m.steps(boat.Frame.Design)
	good := func(n int) bool {
		f := made(changed(boat.Frame.Design, m, sign*float64(n)*step))
		if upper {
			return stands(p.Lower, f, p.Place, o)
		}
		return receives(f, p.Upper, p.Place, o)
	}
	n := firstGood(int(most/step), good)
	if n == 0 {
		return math.Inf(1)
	}
	return sign * float64(n) * step
}

// firstGood returns a good number from 1 to most whose predecessor is not good,
// 0 when none is found: by threes, then by halves. Where good and bad alternate,
// as with joints in each other's way, it need not be the very least.
func firstGood(most int, good func(int) bool) int {
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

// stands reports whether a boat of the frame given, nil for none, stands in
// another at a shift.
func stands(lower *Boat, f *frame.Frame, at Place, o Options) bool {
	if f == nil {
		return false
	}
	cloth, err := skin.Of(f)
	if err != nil {
		return false
	}
	out, err := OutsideOf(f, cloth.Press(f))
	return err == nil && seeker{lower.open(o), out, o.Pad}.stands(at)
}

// receives reports whether the upper boat stands in one of the frame given.
func receives(f *frame.Frame, upper *Boat, at Place, o Options) bool {
	if f == nil {
		return false
	}
	cloth, err := skin.Of(f)
	if err != nil {
		return false
	}
	in, err := InsideOf(f, cloth)
	if err != nil {
		return false
	}
	if !o.LeftIn {
		in = in.Bare()
	}
	return seeker{in, upper.Outside, o.Pad}.stands(at)
}

// stands reports whether there is the room asked for with the boat on its pads.
func (s seeker) stands(at Place) bool {
	at.Z = s.seat(at)
	s.pad = max(0, s.pad-slack)
	return s.roomy(at)
}
