package sizing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/sizing/formula"
)

// merit weighs what a finished boat misses against its cost.
func (m made) merit() float64 { return m.cost + missing*m.short }

// whole rounds the free lengths to whole millimeters within their limits.
func (s *search) whole(values []float64) []float64 {
	out := slices.Clone(values)
	for i, f := range s.free {
		if f.Dim == formula.Length {
			out[i] = max(math.Ceil(f.Lo), min(math.Floor(f.Hi), math.Round(values[i])))
		}
	}
	return out
}

// stand finds the boat of least cost that stands on whole millimeters, can be built and
// meets all that was asked, beside some free values. A boat that cannot be built is one
// that fails: the search then goes on from the nearest that can be, either way of each
// free value, and takes the best of what it finds there.
//
// Errors: why the boat of these values cannot be built when none beside it can be
// either; *Clash when none meets all that was asked.
func (s *search) stand(values []float64) (made, error) {
	s.finished = map[string]finished{}
	first, err := s.finishedAt(s.whole(values))
	starts, strides := []made{first}, []float64{1}
	if err != nil {
		strides = []float64{16, 4, 1}
		if starts = s.builtBeside(first.values); len(starts) == 0 {
			return first, err
		}
	}
	best := made{cost: math.Inf(1)}
	for _, m := range starts {
		m = s.mend(m, best.merit())
		for _, stride := range strides {
			m = s.shave(m, stride)
		}
		if m.merit() < best.merit() {
			best = m
		}
	}
	return best, s.falls(best)
}

// finished is a boat made before, or why it cannot be.
type finished struct {
	made
	err error
}

// finishedAt is the boat of some free values, made once; of the boat itself it keeps no
// more than the checks, for a search makes hundreds.
func (s *search) finishedAt(values []float64) (made, error) {
	key := fmt.Sprint(values)
	f, known := s.finished[key]
	if !known {
		f.made, f.err = s.make(values)
		f.boat = nil
		s.finished[key] = f
	}
	return f.made, f.err
}

// builtBeside are the boats nearest to some free values that can be built, each with one
// free value moved one way; the most promising first.
func (s *search) builtBeside(values []float64) (out []made) {
	for i := range s.free {
		for _, way := range []float64{1, -1} {
			if m, ok := s.built(values, i, way); ok {
				out = append(out, m)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b made) int { return cmp.Compare(a.merit(), b.merit()) })
	return out
}

// built is the first boat that can be built when one free value moves one way, by ever
// wider steps to the end of its limits.
func (s *search) built(values []float64, i int, way float64) (made, bool) {
	for steps := 1.0; ; steps *= 2 {
		m, ok := s.moved(values, s.move(i, way*steps))
		if ok || steps*s.grain(i) > s.free[i].Hi-s.free[i].Lo {
			return m, ok
		}
	}
}

// mend steps a boat that misses what was asked to the best of those beside it, until one
// misses nothing or none is better; or until it costs more than is worth while, for a
// boat mostly grows as it is mended. Where no one step helps and no other boat is known,
// so that any is worth while, it tries two at once: a rounded part may stand between. It
// does not with trials of the finished boat, which take far longer.
func (s *search) mend(best made, worth float64) made {
	for best.short > 0 && best.cost < worth {
		next := s.bestOf(best, s.oneStep())
		if next.merit() > best.merit()-1e-9 && math.IsInf(worth, 1) && len(s.c.Trials) == 0 {
			next = s.firstOf(best, s.twoSteps())
		}
		if next.merit() > best.merit()-1e-9 {
			break
		}
		best = next
	}
	return best
}

// bestOf is the best of a boat and of those that lie some moves of the free values off.
func (s *search) bestOf(from made, moves [][]float64) made {
	best := from
	for _, by := range moves {
		if m, ok := s.moved(from.values, by); ok && m.merit() < best.merit() {
			best = m
		}
	}
	return best
}

// firstOf is the first better boat than one among those that lie some moves off, itself
// where none is.
func (s *search) firstOf(from made, moves [][]float64) made {
	for _, by := range moves {
		if m, ok := s.moved(from.values, by); ok && m.merit() < from.merit()-1e-9 {
			return m
		}
	}
	return from
}

// oneStep lists moves of one free value.
func (s *search) oneStep() (out [][]float64) {
	for i := range s.free {
		for _, steps := range []float64{1, -1, 4, -4, 16, -16} {
			out = append(out, s.move(i, steps))
		}
	}
	return out
}

// twoSteps lists moves of two free values at once.
func (s *search) twoSteps() (out [][]float64) {
	steps := []float64{1, -1, 2, -2, 3, -3, 8, -8}
	for i := range s.free {
		for j := range i {
			for _, a := range steps {
				for _, b := range steps {
					by := s.move(i, a)
					by[j] = s.move(j, b)[j]
					out = append(out, by)
				}
			}
		}
	}
	return out
}

// move is a move of one free value by some of its least steps.
func (s *search) move(i int, steps float64) []float64 {
	by := make([]float64, len(s.free))
	by[i] = steps * s.grain(i)
	return by
}

// grain is the least step of a free value: a millimeter, or a five hundredth of the way
// between its limits.
func (s *search) grain(i int) float64 {
	f := s.free[i]
	if f.Dim == formula.Length {
		return 1
	}
	return (f.Hi - f.Lo) / 500
}

// moved is the boat with its free values moved; ok is false when that is beyond the limits
// or cannot be built.
func (s *search) moved(values, by []float64) (m made, ok bool) {
	values = slices.Clone(values)
	for i, f := range s.free {
		values[i] += by[i]
		if values[i] < f.Lo || values[i] > f.Hi {
			return m, false
		}
	}
	m, err := s.finishedAt(values)
	return m, err == nil
}

// falls tells what a boat misses of what was asked, nil when nothing.
func (s *search) falls(m made) error {
	if m.short == 0 {
		return nil
	}
	m, err := s.make(m.values)
	if err != nil {
		return err
	}
	var missed []string
	for _, t := range s.asked {
		if by, _ := s.judge(t, m.boat.Checks); by < 0 {
			missed = append(missed, s.missed(t, m.boat.Checks))
		}
	}
	return &Clash{Whole: true, Nearest: s.near(missed)}
}
