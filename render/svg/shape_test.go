package svg_test

import (
	"fmt"
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/render/rendertest"
)

func at(t *testing.T, what string, got rendertest.Point, want geometry.Point, tol float64) {
	t.Helper()
	if !(math.Abs(got.X-want.X) <= tol && math.Abs(got.Y-want.Y) <= tol) {
		t.Errorf("%s at (%.5f, %.5f), want (%.5f, %.5f), allowed %g mm", what, got.X, got.Y, want.X, want.Y, tol)
	}
}

func TestArcIsTrue(t *testing.T) {
	const radius, tol = 500, 0.02
	for _, row := range []struct{ from, sweep float64 }{
		{0, math.Pi / 2}, {0.3, 3.1}, {2, -1}, {-1, 0.01}, {4, -6}, {0, 2 * math.Pi}, {0.1, 179 * math.Pi / 180},
	} {
		for _, turn := range []float64{0, 2.2} {
			arc := curve.Arc{Center: pt(40, -25), Radius: radius, From: row.from, Sweep: row.sweep}
			move := geometry.Turn(turn).Then(geometry.Shift(600, 410))
			o := readOne(t, plate([]geometry.Affine{move}, marks(curve.Path{arc})), "MARK")
			center := move.Apply(arc.Center)
			turned, last := 0.0, math.NaN()
			for _, q := range o.Points(64) {
				x, y := q.X-center.X, q.Y-center.Y
				if off := math.Hypot(x, y) - radius; math.Abs(off) > tol {
					t.Fatalf("from %g by %g: radius off by %.4f mm at (%.2f, %.2f)", row.from, row.sweep, off, q.X, q.Y)
				}
				a := math.Atan2(y, x)
				if !math.IsNaN(last) {
					turned += math.Remainder(a-last, 2*math.Pi)
				}
				last = a
			}
			if off := (turned - row.sweep) * radius; math.Abs(off) > tol {
				t.Errorf("from %g by %g: swept %.6f, %.4f mm off at the end", row.from, row.sweep, turned, off)
			}
			pts := o.Points(1)
			at(t, "start", pts[0], move.Apply(arc.Start()), step)
			at(t, "end", pts[len(pts)-1], move.Apply(arc.End()), step)
		}
	}
}

func TestEveryKindIsDrawn(t *testing.T) {
	for i, k := range rendertest.Segments() {
		t.Run(fmt.Sprintf("%d %T", i, k), func(t *testing.T) {
			p := plate([]geometry.Affine{geometry.Shift(500, 400)}, marks(curve.Path{k}))
			if k.Length() == 0 { // nothing to draw
				if n := len(read(t, p).Paths("MARK")); n > 0 {
					t.Errorf("%d paths for a line of no length", n)
				}
				return
			}
			o := readOne(t, p, "MARK")
			n := float64(len(o.Pieces))
			for i, piece := range o.Pieces {
				for _, s := range []float64{0, 0.5, 1} {
					want := k.At((float64(i) + s) / n).Add(pt(500, 400))
					at(t, fmt.Sprintf("piece %d at %g", i, s), piece.At(s), want, step+5e-7*500) // the arc's own 5e-7 of its radius
				}
			}
		})
	}
}

func TestCheckSquareIs100(t *testing.T) {
	squares := 0
	for _, e := range read(t, everything()).Paths("SCALE") {
		if b, ok := e.Outlines[0].Rectangle(0); ok && b.W() > 50 { // a full stop is a square too
			squares++
			// Its corners have few decimals, so nothing is rounded.
			if math.Abs(b.W()-100) > 1e-9 || math.Abs(b.H()-100) > 1e-9 || b.Off(rendertest.Box{X0: 12, Y0: 12, X1: 112, Y1: 112}) > 1e-9 {
				t.Errorf("check square %v, want 100 by 100 mm from (12, 12)", b)
			}
		}
	}
	if squares != 1 {
		t.Errorf("%d squares in SCALE, want 1", squares)
	}
}

// letterF is an outline that is none of its own mirrors, counter-clockwise.
func letterF() []geometry.Point {
	return []geometry.Point{pt(0, 0), pt(10, 0), pt(10, 30), pt(30, 30), pt(30, 40), pt(10, 40), pt(10, 60), pt(40, 60), pt(40, 70), pt(0, 70)}
}

func TestFIsNotMirrored(t *testing.T) {
	for _, turn := range []float64{0, math.Pi / 2, 3.7} {
		move := geometry.Turn(turn).Then(geometry.Shift(300, 250))
		o := readOne(t, plate([]geometry.Affine{move}, cut(curve.Polygon(letterF()...))), "CUT")
		want := letterF()
		if got := o.Corners(); len(got) != len(want) {
			t.Fatalf("%d corners, want %d", len(got), len(want))
		}
		for i, q := range o.Corners() {
			at(t, fmt.Sprintf("turned %g, corner %d", turn, i), q, move.Apply(want[i]), step)
		}
		// By hand: 10 x 70 + 20 x 10 + 30 x 10, counter-clockwise with y up.
		if a := o.Area(1); math.Abs(a-1200) > 0.02 {
			t.Errorf("turned %g: area %.3f mm2, want +1200", turn, a)
		}
	}
}

func TestYIsTurnedOnce(t *testing.T) {
	s := read(t, plate(still(), marks(curve.Polyline(pt(3, 0), pt(7, 50)))))
	// 800.25 mm high: y 0 is the lowest line of the file, y 50 is 750.25 down.
	if d := s.Paths("MARK")[0].Attr("d"); d != "M3,800.25L7,750.25" {
		t.Errorf("path %q, want M3,800.25L7,750.25", d)
	}
}

func TestClosedPathsHaveNoTinySide(t *testing.T) {
	// Starts that lie on the edge between two decimals, so that start and end,
	// equal to 1e-13, may be rounded apart.
	for i := range 150 {
		x, y := 200+float64(i)*0.00005, 300+float64(i)*0.00015
		bottom := curve.Line{A: pt(x, y), B: pt(x+90, y)}
		up := curve.Path{bottom, curve.Line{A: pt(x+90, y), B: pt(x, y+90)},
			curve.Line{A: pt(x, y+90), B: pt(x+0.0004, y)}, curve.Line{A: pt(x+0.0004, y), B: pt(x, y)}}
		all := []curve.Path{curve.Circle(pt(x-7, y), 7),
			{bottom, curve.Cubic{P0: pt(x+90, y), P1: pt(x+90, y+60), P2: pt(x+40, y+80), P3: pt(x+4e-7, y-4e-7)}},
			up.Map(geometry.Shift(0, 100.00005))}
		paths := read(t, plate(still(), cut(all...))).Paths("CUT")
		if len(paths) != len(all) {
			t.Fatalf("%d outlines, want %d", len(paths), len(all))
		}
		for k, e := range paths {
			o := e.Outlines[0]
			if !o.Closed {
				t.Fatalf("outline %d of %d is not closed", k, i)
			}
			for j, p := range o.Pieces {
				if d := p.From.To(p.To); d < 0.01 {
					t.Fatalf("outline %d of %d: side %d of %d is %.6f mm long", k, i, j, len(o.Pieces), d)
				}
			}
		}
	}
}

func TestLettersStandWhereTheyShould(t *testing.T) {
	const high = 10
	wide := lettering.StrokeWidth("H", high)
	for _, row := range []struct {
		name  string
		align layout.Align
		angle float64
		want  rendertest.Box // of the letter about its place
	}{
		{"left", layout.Left, 0, rendertest.Box{X1: wide, Y1: high}},
		{"middle", layout.Middle, 0, rendertest.Box{X0: -wide / 2, X1: wide / 2, Y1: high}},
		{"right", layout.Right, 0, rendertest.Box{X0: -wide, Y1: high}},
		{"upright", layout.Left, math.Pi / 2, rendertest.Box{X0: -high, Y1: wide}},
		{"upright, right", layout.Right, math.Pi / 2, rendertest.Box{X0: -high, Y0: -wide}},
	} {
		p := plate([]geometry.Affine{geometry.Shift(100, 200)}, layout.Part{Name: "yoke",
			Letters: []layout.Text{{At: pt(300, 50), Height: high, Angle: row.angle, Align: row.align, Words: "H"}}})
		var pts []rendertest.Point
		for _, e := range read(t, p).Paths("LETTERING") {
			for _, q := range e.Outlines[0].Points(1) {
				pts = append(pts, rendertest.Point{X: q.X - 400, Y: q.Y - 250})
			}
		}
		if b := rendertest.Around(pts...); b.Off(row.want) > step {
			t.Errorf("%s: H fills %v about its place, want %v", row.name, b, row.want)
		}
	}
}
