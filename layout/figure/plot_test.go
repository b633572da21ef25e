package figure

import (
	"math"
	"slices"
	"testing"

	"ribwright/geometry"
	"ribwright/layout"
)

// TestAxis checks that ticks are round, cover the values and stand well apart.
func TestAxis(t *testing.T) {
	for _, c := range []struct {
		lo, hi, mm float64
		want       axis
	}{
		{0, 48, 60, axis{0, 50, 10}},
		{0, 41.9, 105, axis{0, 45, 5}},
		{-0.3, 0.7, 105, axis{-0.4, 0.8, 0.2}},
		{0, 1e6, 60, axis{0, 1e6, 2e5}},
		{0, 0, 60, axis{0, 1, 0.2}},
		{0, 0.0000312, 60, axis{0, 4e-5, 1e-5}},
	} {
		got := newAxis(c.lo, c.hi, c.mm)
		if math.Abs(got.lo-c.want.lo)+math.Abs(got.hi-c.want.hi)+math.Abs(got.step-c.want.step) > 1e-9*math.Abs(c.want.hi) {
			t.Errorf("%g to %g on %g mm: %+v, want %+v", c.lo, c.hi, c.mm, got, c.want)
		}
		if got.lo > c.lo || got.hi < c.hi {
			t.Errorf("%g to %g is not covered by %+v", c.lo, c.hi, got)
		}
	}
}

func TestLetter(t *testing.T) {
	for _, c := range []struct {
		a    axis
		v    float64
		want string
	}{{axis{0, 50, 10}, 20, "20"}, {axis{-0.4, 0.8, 0.2}, 0.2, "0.2"}, {axis{-0.4, 0.8, 0.2}, -1e-17, "0.0"}, {axis{0, 5, .05}, .15, "0.15"}} {
		if got := c.a.letter(c.v); got != c.want {
			t.Errorf("%g is lettered %s, want %s", c.v, got, c.want)
		}
	}
}

// TestPlace reads points back out of the drawing: a straight line over the whole
// range must run from corner to corner, and nothing that is no number gets in.
func TestPlace(t *testing.T) {
	p := Plot{Title: "T", XLabel: "x", YLabel: "y", W: 100, H: 50, Curves: []Curve{{
		Name: "line", Pen: layout.Cut,
		Points: []geometry.Point{{}, {X: math.NaN(), Y: 1}, {X: 5, Y: 50}, {X: 10, Y: math.Inf(1)}, {X: 10, Y: 100}},
	}}, Marks: []Mark{{X: 5, Name: "here"}}}
	var d layout.Drawing
	p.Draw(&d, geometry.Pt(7, 9))
	found := false
	for _, s := range d.Strokes {
		if s.Pen != layout.Cut {
			continue
		}
		found = true
		a, b := s.Path[0].Start(), s.Path[len(s.Path)-1].End()
		if len(s.Path) != 2 || a != (geometry.Pt(7, 9)) || b.Sub(geometry.Pt(107, 59)).Norm() > 1e-9 {
			t.Errorf("the line runs %v to %v in %d pieces", a, b, len(s.Path))
		}
	}
	if !found {
		t.Error("no curve is drawn")
	}
}

// TestEmpty draws axes without a number.
func TestEmpty(t *testing.T) {
	var d layout.Drawing
	Plot{W: 60, H: 40, Curves: []Curve{{Name: "none"}, {Points: []geometry.Point{{X: math.NaN()}}}}}.Draw(&d, geometry.Point{})
	if b := d.Bounds(); !b.Min.Finite() || !b.Max.Finite() || b.W() < 60 {
		t.Errorf("drawn over %+v", b)
	}
}

// TestNamesInOrder: names whose curves end close together lie apart, in the order of the ends,
// whichever curve comes first, and under the top.
func TestNamesInOrder(t *testing.T) {
	to := func(y float64) []geometry.Point { return []geometry.Point{{}, {X: 12, Y: y}} }
	for _, high := range [][2]float64{{66.7, 34.6}, {36, 34.6}, {79, 78}} {
		for _, turned := range []bool{false, true} {
			curves := []Curve{{Name: "all", Points: to(high[0])}, {Name: "friction", Points: to(high[1])}, {Name: "waves", Points: to(31.9)}}
			if turned {
				slices.Reverse(curves)
			}
			var d layout.Drawing
			Plot{W: 80, H: 47, Curves: curves}.Draw(&d, geometry.Point{})
			at := map[string]float64{}
			for _, w := range d.Texts {
				at[w.Words] = w.At.Y
			}
			if !(at["all"] >= at["friction"]+plotSmall && at["friction"] >= at["waves"]+plotSmall && at["all"] <= 47-plotSmall+1e-9) {
				t.Errorf("%v: all at %.1f, friction at %.1f, waves at %.1f mm", high, at["all"], at["friction"], at["waves"])
			}
		}
	}
}

// TestMarkPastCurve: a mark past the last point stands inside the axes.
func TestMarkPastCurve(t *testing.T) {
	var d layout.Drawing
	p := Plot{W: 100, H: 50, Curves: []Curve{{Pen: layout.Cut, Points: []geometry.Point{{}, {X: 30, Y: 1}}}}, Marks: []Mark{{X: 30.4, Name: "end"}}}
	p.Draw(&d, geometry.Point{})
	for _, s := range d.Strokes {
		if x := s.Path[0].Start().X; s.Pen == layout.Center && x > 100 {
			t.Errorf("the mark stands at %.2f mm, the axes end at 100", x)
		}
	}
}

// TestCurvesUnderMarks: the names of curves that end together under the upper edge stand one
// under the other, none beside the name of a mark there.
func TestCurvesUnderMarks(t *testing.T) {
	var d layout.Drawing
	up := []geometry.Point{{}, {X: 30, Y: 1}}
	Plot{W: 100, H: 50, Curves: []Curve{{Name: "one", Points: up}, {Name: "two", Points: up}, {Name: "three", Points: up}}, Marks: []Mark{{X: 30, Name: "end"}}}.Draw(&d, geometry.Point{})
	at := map[string]float64{}
	for _, w := range d.Texts {
		at[w.Words] = w.At.Y
	}
	for _, pair := range [][2]string{{"end", "one"}, {"one", "two"}, {"two", "three"}} {
		if apart := at[pair[0]] - at[pair[1]]; apart < plotSmall {
			t.Errorf("%s stands %.2f mm over %s: %v", pair[0], apart, pair[1], at)
		}
	}
}
