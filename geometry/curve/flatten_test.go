package curve

import (
	"fmt"
	"math"
	"testing"

	"ribwright/geometry"
)

// distance returns how far p is from the straight piece from a to b, mm.
func distance(p, a, b geometry.Point) float64 {
	along := b.Sub(a)
	if along.Norm() == 0 {
		return p.Sub(a).Norm()
	}
	share := math.Min(1, math.Max(0, p.Sub(a).Dot(along)/along.Dot(along)))
	return p.Sub(a.Lerp(b, share)).Norm()
}

// Property: no sample of the curve is farther than tol from the chords, and
// the chords meet at points of the curve, first and last exactly.
func TestFlattenKeepsTolerance(t *testing.T) {
	for i, s := range AllKinds() {
		for _, tol := range []float64{10, 1, 0.1, 0.01} {
			t.Run(fmt.Sprintf("%d %T to %g mm", i, s, tol), func(t *testing.T) {
				pts := Path{s}.Flatten(tol)
				nearPoint(t, "first", pts[0], s.Start(), 0)
				nearPoint(t, "last", pts[len(pts)-1], s.End(), 1e-12)
				worst := 0.0
				const n = 1000
				for k := 0; k <= n; k++ {
					p, least := s.At(float64(k)/n), math.Inf(1)
					for j := 1; j < len(pts); j++ {
						least = math.Min(least, distance(p, pts[j-1], pts[j]))
					}
					worst = math.Max(worst, least)
				}
				if !(worst <= tol*(1+1e-9)) {
					t.Errorf("%v: chords leave the curve by %g mm, allowed %g", s, worst, tol)
				}
			})
		}
	}
}

func TestFlattenCount(t *testing.T) {
	sagitta := 100 * (1 - math.Cos(math.Pi/8)) // of one eighth of a circle of 100 mm
	arch := Cubic{pt(0, 0), pt(10, 10), pt(20, 10), pt(30, 0)}
	for _, row := range []struct {
		name string
		p    Path
		tol  float64
		want int // points
	}{ // arithmetic
		{"nothing", nil, 1, 0},
		{"a line needs no point between", Polyline(pt(0, 0), pt(1000, 0)), 0.001, 2},
		{"a rectangle", Rectangle(geometry.Box{Max: pt(9, 9)}), 0.001, 5},
		{"just eight chords of a circle", Circle(pt(0, 0), 100), sagitta * 1.0001, 9},
		{"just not eight chords", Circle(pt(0, 0), 100), sagitta * 0.9999, 10},
		{"eight chords clockwise", Circle(pt(0, 0), 100).Reverse(), sagitta * 1.0001, 9},
		{"a quarter of it", Path{Arc{pt(0, 0), 100, 1, math.Pi / 2}}, sagitta * 1.0001, 3},
		{"less of it than one chord spans", Path{Arc{pt(0, 0), 100, 1, math.Pi / 5}}, sagitta * 1.0001, 2},
		{"a tolerance above the radius", Circle(pt(0, 0), 100), 250, 3},
		// y = 30 t (1 - t): a chord over 1/10 errs by 60/100/8 = 0.075 mm.
		{"just ten chords of an arch", Path{arch}, 0.0751, 11},
		{"just not ten chords", Path{arch}, 0.0749, 12},
		{"an arch below the tolerance", Path{arch}, 8, 2},
		// The end with the sharper bend decides: second differences 10 and 40 mm.
		{"sharper at its end", Path{Cubic{pt(0, 0), pt(10, 10), pt(20, 10), pt(30, -30)}}, 0.3001, 11},
		{"sharper at its start", Path{Cubic{pt(30, -30), pt(20, 10), pt(10, 10), pt(0, 0)}}, 0.3001, 11},
		{"straight cubic", Path{Cubic{pt(0, 0), pt(10, 0), pt(20, 0), pt(30, 0)}}, 0.001, 2},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := row.p.Flatten(row.tol); len(got) != row.want {
				t.Errorf("%v to %g mm: %d points, want %d", row.p, row.tol, len(got), row.want)
			}
		})
	}
}
