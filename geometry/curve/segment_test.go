package curve

import (
	"fmt"
	"math"
	"testing"

	"ribwright/geometry"
)

// near fails the test unless got is within tol of want; what names the inputs.
func near(t *testing.T, what string, got, want, tol float64, unit string) {
	t.Helper()
	if d := math.Abs(got - want); !(d <= tol) {
		t.Errorf("%s: got %v, want %v %s, off by %g, allowed %g", what, got, want, unit, d, tol)
	}
}

// nearPoint fails the test unless got is within tol mm of want.
func nearPoint(t *testing.T, what string, got, want geometry.Point, tol float64) {
	t.Helper()
	if d := got.Sub(want).Norm(); !(d <= tol) {
		t.Errorf("%s: got %v, want %v mm, off by %g, allowed %g", what, got, want, d, tol)
	}
}

// pt returns the point (x, y) mm.
func pt(x, y float64) geometry.Point { return geometry.Point{X: x, Y: y} }

// chords returns the length of s in mm from the chords of 4000 and of 8000
// steps, which err by the square of the step: Richardson's extrapolation.
func chords(s Segment) float64 {
	sum := func(n int) float64 {
		total, last := 0.0, s.At(0)
		for i := 1; i <= n; i++ {
			p := s.At(float64(i) / float64(n))
			total, last = total+p.Sub(last).Norm(), p
		}
		return total
	}
	return (4*sum(8000) - sum(4000)) / 3
}

func TestSegmentEnds(t *testing.T) {
	for i, s := range AllKinds() { // property
		t.Run(fmt.Sprintf("%d %T", i, s), func(t *testing.T) {
			nearPoint(t, fmt.Sprintf("start of %v", s), s.Start(), s.At(0), 0)
			nearPoint(t, fmt.Sprintf("end of %v", s), s.End(), s.At(1), 1e-12)
		})
	}
}

// Property: no step along the curve is missed, whatever the kind.
func TestSegmentLength(t *testing.T) {
	for i, s := range AllKinds() {
		t.Run(fmt.Sprintf("%d %T", i, s), func(t *testing.T) {
			near(t, fmt.Sprint(s), s.Length(), chords(s), 1e-7*s.Length()+1e-12, "mm")
		})
	}
}

// Property: the box holds every sample of the curve and each of its edges is
// touched by one.
func TestSegmentBounds(t *testing.T) {
	const n = 20000
	for i, s := range AllKinds() {
		t.Run(fmt.Sprintf("%d %T", i, s), func(t *testing.T) {
			samples := geometry.EmptyBox()
			for k := 0; k <= n; k++ {
				samples = samples.Union(geometry.Around(s.At(float64(k) / n)))
			}
			b := s.Bounds()
			// Between samples a curve rises above them by the square of the step,
			// here less than 1e-5 mm.
			nearPoint(t, fmt.Sprintf("lower left of %v", s), b.Min, samples.Min, 1e-5)
			nearPoint(t, fmt.Sprintf("upper right of %v", s), b.Max, samples.Max, 1e-5)
			if grown := b.Grow(1e-9); !grown.Holds(samples.Min) || !grown.Holds(samples.Max) {
				t.Errorf("%v: the box %v does not hold the samples %v", s, b, samples)
			}
		})
	}
}

// Property: the reverse runs through the same points the other way, and the
// reverse of the reverse is the segment.
func TestSegmentReverse(t *testing.T) {
	for i, s := range AllKinds() {
		t.Run(fmt.Sprintf("%d %T", i, s), func(t *testing.T) {
			r, back := s.Reverse(), s.Reverse().Reverse()
			if fmt.Sprintf("%T", r) != fmt.Sprintf("%T", s) {
				t.Errorf("the reverse of %T is a %T", s, r)
			}
			near(t, fmt.Sprintf("length of %v reversed", s), r.Length(), s.Length(), 1e-9, "mm")
			for k := 0; k <= 10; k++ {
				u := float64(k) / 10
				nearPoint(t, fmt.Sprintf("%v reversed at %g", s, u), r.At(u), s.At(1-u), 1e-10)
				nearPoint(t, fmt.Sprintf("%v reversed twice at %g", s, u), back.At(u), s.At(u), 1e-10)
			}
		})
	}
}

// The parameter reaches beyond both ends: along the line, round the circle.
// Arithmetic.
func TestSegmentExtended(t *testing.T) {
	for _, row := range []struct {
		name string
		s    Segment
		at   float64
		want geometry.Point
		tol  float64
	}{
		{"line before", Line{pt(10, 20), pt(13, 24)}, -1, pt(7, 16), 0},
		{"line behind", Line{pt(10, 20), pt(13, 24)}, 3, pt(19, 32), 0},
		{"arc behind", Arc{pt(5, 5), 10, 0, math.Pi / 2}, 2, pt(-5, 5), 1e-14},
		{"arc before", Arc{pt(5, 5), 10, 0, math.Pi / 2}, -1, pt(5, -5), 1e-14},
	} {
		t.Run(row.name, func(t *testing.T) {
			nearPoint(t, fmt.Sprintf("%v at %g", row.s, row.at), row.s.At(row.at), row.want, row.tol)
		})
	}
}

// AllKinds must go on holding each kind and the awkward cases it promises.
func TestAllKinds(t *testing.T) {
	found := map[string]bool{}
	for _, s := range AllKinds() {
		found[fmt.Sprintf("%T", s)] = true
		switch s := s.(type) {
		case Line:
			found["upright line"] = found["upright line"] || s.A.X == s.B.X && s.A != s.B
			found["line of no length"] = found["line of no length"] || s.A == s.B
		case Arc:
			found["left arc"] = found["left arc"] || s.Sweep > 0
			found["right arc"] = found["right arc"] || s.Sweep < 0
			found["arc past a half turn"] = found["arc past a half turn"] || math.Abs(s.Sweep) > math.Pi
		}
	}
	for _, name := range []string{"curve.Line", "curve.Arc", "curve.Cubic",
		"upright line", "line of no length", "left arc", "right arc", "arc past a half turn"} {
		if !found[name] {
			t.Errorf("AllKinds lacks a %s", name)
		}
	}
	AllKinds()[0] = nil
	if AllKinds()[0] == nil {
		t.Error("a change to one copy of AllKinds shows in the next")
	}
}
