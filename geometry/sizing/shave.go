package sizing

import (
	"math"

	"ribwright/geometry/sizing/formula"
)

// made is a finished boat with the free values that gave it.
type made struct {
	values []float64
	boat   *Boat
	checks []formula.Check
	cost   float64
	short  float64 // how far it misses what was asked, as shares of the limits
}

// valuesOf are the free values of a candidate.
func (s *search) valuesOf(l candidate) []float64 {
	out := make([]float64, len(s.free))
	for i, f := range s.free {
		out[i] = f.Lo + (f.Hi-f.Lo)*l.x[i]
	}
	return out
}

// make finishes the boat of some free values. It begins from the guesses, so that the
// same values give the same boat whatever was looked at before.
func (s *search) make(values []float64) (made, error) {
	out := made{values: values}
	s.c.forget()
	for i, f := range s.free {
		if err := s.c.Set(f.Name, values[i]); err != nil {
			return out, err
		}
	}
	err := s.c.Settle()
	if err == nil {
		out.boat, err = s.c.Finish()
	}
	if err == nil {
		out.cost, out.checks = s.cost(), out.boat.Checks
		for _, t := range s.asked {
			m, _ := s.judge(t, out.checks)
			out.short += math.Max(0, -m)
		}
	}
	return out, err
}

// passes reports whether a finished boat meets all that was asked and fails no check of
// the family that the boat before it passed.
func (m made) passes(before made) bool {
	for i, v := range m.checks {
		if !v.Passed && before.checks[i].Passed {
			return false
		}
	}
	return m.short == 0
}

// shave steps each free length of a finished boat down, stride by stride, while
// all that was asked still holds and the aim grows no worse; and again from the first
// until none moves, so that of the boat that is left every length one millimeter less
// would fail, and so would one less of one length for one or two more of another. A boat
// that misses what was asked is left as it is. With wider strides, mm, it comes down
// sooner from far off, but not to the last millimeter.
func (s *search) shave(best made, stride float64) made {
	for moved := best.short == 0; moved; {
		moved = false
		for i, f := range s.free {
			for f.Dim == formula.Length {
				next, ok := s.moved(best.values, s.move(i, -stride))
				if !ok || next.cost > best.cost || !next.passes(best) {
					break
				}
				best, moved = next, true
			}
		}
		if !moved && stride == 1 && best.short == 0 {
			best, moved = s.traded(best)
		}
	}
	return best
}

// traded is a boat that one millimeter less of one length for one or two more of another
// makes better; false where none is.
func (s *search) traded(best made) (made, bool) {
	for i := range s.free {
		for j := range s.free {
			if i == j || s.free[i].Dim != formula.Length || s.free[j].Dim != formula.Length {
				continue
			}
			for _, more := range []float64{1, 2} {
				by := s.move(i, -1)
				by[j] = s.move(j, more)[j]
				if next, ok := s.moved(best.values, by); ok && next.cost < best.cost-1e-9 && next.passes(best) {
					return next, true
				}
			}
		}
	}
	return best, false
}
