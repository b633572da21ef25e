package curve

import (
	"fmt"
	"math"
	"testing"

	"ribwright/geometry"
)

func TestArcLength(t *testing.T) {
	for _, row := range []struct {
		name      string
		a         Arc
		want, tol float64
	}{ // arithmetic, radius times sweep
		{"quarter", Arc{pt(3, 4), 100, 0, math.Pi / 2}, 157.07963267948966, 1e-13},
		{"quarter clockwise", Arc{pt(3, 4), 100, 1, -math.Pi / 2}, 157.07963267948966, 1e-13},
		{"half turn", Arc{pt(3, 4), 100, -2, math.Pi}, 314.1592653589793, 1e-13},
		{"full turn", Arc{pt(3, 4), 100, 9, 2 * math.Pi}, 628.3185307179587, 1e-12},
		{"one radian", Arc{pt(3, 4), 250, 5, 1}, 250, 0},
		{"no sweep", Arc{pt(3, 4), 100, 5, 0}, 0, 0},
	} {
		t.Run(row.name, func(t *testing.T) { near(t, fmt.Sprint(row.a), row.a.Length(), row.want, row.tol, "mm") })
	}
}

func TestArcPoints(t *testing.T) {
	root := math.Sqrt(3)
	for _, row := range []struct {
		name       string
		a          Arc
		start, end geometry.Point
		middle     geometry.Point
		tol        float64
	}{ // arithmetic, by hand
		{"quarter", Arc{pt(3, 4), 10, 0, math.Pi / 2}, pt(13, 4), pt(3, 14), pt(3+5*math.Sqrt2, 4+5*math.Sqrt2), 1e-14},
		{"clockwise from the top", Arc{pt(0, 0), 2, math.Pi / 2, -math.Pi / 3}, pt(0, 2), pt(root, 1), pt(1, root), 1e-14},
		{"across the back", Arc{pt(0, 0), 2, 5 * math.Pi / 6, math.Pi / 3}, pt(-root, 1), pt(-root, -1), pt(-2, 0), 1e-14},
	} {
		t.Run(row.name, func(t *testing.T) {
			nearPoint(t, "start", row.a.Start(), row.start, row.tol)
			nearPoint(t, "end", row.a.End(), row.end, row.tol)
			nearPoint(t, "middle", row.a.At(0.5), row.middle, row.tol)
		})
	}
}

func TestArcBounds(t *testing.T) {
	const r = 10.0
	half, root := r/2, r*math.Sqrt(3)/2
	degrees := math.Pi / 180
	for _, row := range []struct {
		name             string
		from, sweep      float64 // degrees
		left, low, right float64
		high             float64
	}{ // arithmetic, by hand: sines and cosines of 30 and 60 degrees
		{"full turn", 30, 360, -r, -r, r, r},
		{"full turn clockwise", 30, -360, -r, -r, r, r},
		{"within a quarter", 30, 30, half, half, root, root},
		{"within a quarter clockwise", 60, -30, half, half, root, root},
		{"over the top", 30, 120, -root, half, root, r},
		{"over the top clockwise", 150, -120, -root, half, root, r},
		{"across the back", 150, 60, -r, -half, -root, half},
		{"under the bottom", -150, 120, -root, -r, root, -half},
		{"across x", -30, 60, root, -half, r, half},
		{"all but the right", 30, 300, -r, -r, root, r},
		{"exactly one quarter", 0, 90, 0, 0, r, r},
		{"a turn later", 390, 120, -root, half, root, r},
		{"a turn before", -690, 120, -root, half, root, r},
		{"no sweep", 30, 0, root, half, root, half},
	} {
		t.Run(row.name, func(t *testing.T) {
			a := Arc{pt(100, -200), r, row.from * degrees, row.sweep * degrees}
			b := a.Bounds()
			nearPoint(t, fmt.Sprintf("lower left of %v", a), b.Min, pt(100+row.left, -200+row.low), 1e-12)
			nearPoint(t, fmt.Sprintf("upper right of %v", a), b.Max, pt(100+row.right, -200+row.high), 1e-12)
		})
	}
}

// The arc as cubics against the circle itself. The radius may err by
// (2/27) sin(q)^6 / cos(q)^2 of itself with q a quarter of a piece's sweep,
// 3.8e-7 at 30 degrees (from memory); the doc allows 5e-7, and a pattern 0.0005 mm
// at 500 mm.
func TestArcAsCubics(t *testing.T) {
	for _, row := range []struct {
		name        string
		from, sweep float64
		pieces      int
	}{
		{"a hair", 0.3, 1e-6, 1},
		{"one piece", 0.3, 0.5, 1},
		{"one piece clockwise", 0.3, -0.5, 1},
		{"quarter", 0, math.Pi / 2, 3},
		{"half turn", 2, math.Pi, 6},
		{"half turn clockwise", 2, -math.Pi, 6},
		{"past a half turn", -1, 4.5, 9},
		{"full turn", 5, 2 * math.Pi, 12},
		{"no sweep", 1, 0, 1},
	} {
		t.Run(row.name, func(t *testing.T) {
			const radius = 500.0
			a := Arc{pt(-120, 340), radius, row.from, row.sweep}
			cubics := a.Cubics()
			if len(cubics) != row.pieces {
				t.Errorf("%v: %d cubics, want %d", a, len(cubics), row.pieces)
			}
			nearPoint(t, "start", cubics[0].P0, a.Start(), 1e-10)
			nearPoint(t, "end", cubics[len(cubics)-1].P3, a.End(), 1e-10)
			worst := 0.0
			for i, c := range cubics {
				if i > 0 {
					nearPoint(t, fmt.Sprintf("joint %d", i), c.P0, cubics[i-1].P3, 1e-10)
					nearPoint(t, fmt.Sprintf("direction at joint %d", i), c.Slope(0), cubics[i-1].Slope(1), 1e-9)
				}
				for k := 0; k <= 200; k++ {
					worst = math.Max(worst, math.Abs(c.At(float64(k)/200).Sub(a.Center).Norm()-radius))
				}
				// The middle of each piece lies at the middle of its share of the sweep.
				u := (float64(i) + 0.5) / float64(len(cubics))
				nearPoint(t, fmt.Sprintf("middle of piece %d", i), c.At(0.5), a.At(u), 0.0005)
			}
			if worst > 0.0005 || worst > 5e-7*radius {
				t.Errorf("%v: cubics leave the circle by %g mm, allowed %g", a, worst, 5e-7*radius)
			}
			sum := 0.0
			for _, c := range cubics {
				sum += c.Length()
			}
			near(t, "length of the cubics", sum, a.Length(), 5e-7*a.Length()+1e-12, "mm")
		})
	}
}
