package sizing

import (
	"math"
	"slices"

	"ribwright/geometry/sizing/formula"
)

// made is a finished boat with the free values that gave it.
type made struct {
	values []float64
	boat   *Boat
	cost   float64
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
		out.cost = s.cost()
	}
	return out, err
}

// passes reports whether a finished boat meets all that was asked and fails no check of
// the family that the boat before it passed.
func (s *search) passes(now, before made) bool {
	for _, t := range s.asked {
		if m, _ := s.judge(t, now.boat.Checks); m < 0 {
			return false
		}
	}
	for i, v := range now.boat.Checks {
		if !v.Passed && before.boat.Checks[i].Passed {
			return false
		}
	}
	return true
}

// shave steps each free length of a finished boat down, millimeter by millimeter, while
// all that was asked still holds and the aim grows no worse; and again from the first
// until none moves, so that of the boat that is left every length one millimeter less
// would fail. A boat that misses what was asked, or that cannot be made anew, is left as
// it is.
func (s *search) shave(values []float64) (made, error) {
	best, err := s.make(values)
	if err != nil || !s.passes(best, best) {
		return best, err
	}
	// The design rounds lengths; what is told of them should be what is built.
	if whole, err := s.make(s.whole(values)); err == nil && s.passes(whole, best) {
		best = whole
	}
	for moved := true; moved; {
		moved = false
		for i, f := range s.free {
			for f.Dim == formula.Length {
				next, ok := s.less(best, i)
				if !ok {
					break
				}
				best, moved = next, true
			}
		}
	}
	return best, nil
}

// whole rounds the free lengths.
func (s *search) whole(values []float64) []float64 {
	out := slices.Clone(values)
	for i, f := range s.free {
		if f.Dim == formula.Length {
			out[i] = max(f.Lo, min(f.Hi, math.Round(values[i])))
		}
	}
	return out
}

// less is the boat with one free value a millimeter less, or at the whole millimeter under
// it; ok is false when it fails.
func (s *search) less(best made, i int) (next made, ok bool) {
	const whole = 1e-6 // mm: rounding of a value that is a whole millimeter
	values := slices.Clone(best.values)
	values[i] = math.Ceil(values[i]-whole) - 1
	if values[i] < s.free[i].Lo {
		return next, false
	}
	next, err := s.make(values)
	return next, err == nil && next.cost <= best.cost && s.passes(next, best)
}
