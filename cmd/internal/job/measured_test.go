package job

import (
	"math"
	"testing"

	"ribwright/geometry/marks"
)

// markRead is a mark as finished paper has it, mm or radians.
type markRead struct {
	value  float64
	within float64 // how far the paper may be off: what the file rounds by, or half of the last figure lettered
	where  string  // "drawn" or "lettered"
}

// offPaper are the marks of a boat measured out of its finished sheets and its book. What
// stands on both must agree.
type offPaper struct {
	t  *testing.T
	of map[marks.Name]markRead
}

// How far a place in a PDF may be off its own, mm: it is rounded to 0.0018 of them, by the
// matrix of its page too.
const drawnWithin = 0.01

// Half of the last figure of a lettered value: lengths to a tenth or a whole millimeter,
// and widths that wood keeps to no finer than 5 mm.
const (
	toTenth = 0.05
	toWhole = 0.5
	toFive  = 2.5
	crumb   = 1e-6 // where the half itself is rounded
)

// degree is one of an angle, radians.
const degree = math.Pi / 180

// put notes a mark that is read, and holds it to what was read of it before: the finer
// one stays.
func (m *offPaper) put(part, quantity string, n int, value, within float64) {
	if math.IsNaN(value) || part == "" {
		return
	}
	where := "lettered"
	if within <= drawnWithin {
		where = "drawn"
	}
	name := marks.Name{Part: part, Quantity: quantity, Number: n}
	within += crumb
	if was, twice := m.of[name]; twice {
		if math.Abs(was.value-value) > was.within+within {
			m.t.Errorf("%s, %s %d is %s as %.4f and %s as %.4f", part, quantity, n, was.where, was.value, where, value)
		}
		if was.within <= within {
			return
		}
	}
	m.of[name] = markRead{value, within, where}
}

// get is what was read of a mark; NaN for nothing.
func (m *offPaper) get(part, quantity string, n int) float64 {
	r, is := m.of[marks.Name{Part: part, Quantity: quantity, Number: n}]
	if !is {
		return math.NaN()
	}
	return r.value
}
