package curve

import (
	"fmt"
	"math"
	"testing"

	"ribwright/geometry"
)

// Property: transforms that keep shapes keep the kind of every segment, take
// each of its points where they take a point, and change its length by one
// factor.
func TestMapSimilar(t *testing.T) {
	for _, row := range []struct {
		name   string
		m      geometry.Affine
		factor float64
	}{
		{"nothing", geometry.Shift(0, 0), 1},
		{"shift", geometry.Shift(1200, -340), 1},
		{"turn", geometry.Turn(0.7), 1},
		{"half turn", geometry.Turn(math.Pi), 1},
		{"mirror port to starboard", geometry.Stretch(1, -1), 1},
		{"mirror bow to stern", geometry.Stretch(-1, 1), 1},
		{"mirror in both", geometry.Stretch(-1, -1), 1},
		{"turn, mirror and shift", geometry.Turn(2.5).Then(geometry.Stretch(1, -1)).Then(geometry.Shift(-70, 8)), 1},
		{"half size", geometry.Stretch(0.5, 0.5), 0.5},
		{"mirrored at three times the size", geometry.Turn(-1).Then(geometry.Stretch(3, -3)), 3},
	} {
		for i, s := range AllKinds() {
			t.Run(fmt.Sprintf("%s, %d %T", row.name, i, s), func(t *testing.T) {
				got := Path{s}.Map(row.m)
				if len(got) != 1 || fmt.Sprintf("%T", got[0]) != fmt.Sprintf("%T", s) {
					t.Fatalf("%v became %v", s, got)
				}
				near(t, "length", got.Length(), row.factor*s.Length(), 1e-9, "mm")
				for k := -2; k <= 12; k++ {
					u := float64(k) / 10
					nearPoint(t, fmt.Sprintf("%v at %g", s, u), got[0].At(u), row.m.Apply(s.At(u)), 1e-9)
				}
			})
		}
	}
}

// Arithmetic: a circle stretched by 2 and by a half is the ellipse
// (x/2)^2 + (2y)^2 = r^2, turned with whatever comes after.
func TestMapToEllipse(t *testing.T) {
	turn := geometry.Turn(0.4)
	for _, row := range []struct {
		name string
		a    Arc
	}{
		{"circle", Arc{pt(0, 0), 100, 0, 2 * math.Pi}},
		{"arc", Arc{pt(0, 0), 100, 0.5, 2}},
		{"arc clockwise", Arc{pt(0, 0), 100, 3, -4.5}},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := Path{row.a}.Map(geometry.Stretch(2, 0.5).Then(turn))
			if len(got) < 2 || !got.Joined() {
				t.Fatalf("%d segments, joined %v", len(got), got.Joined())
			}
			to := func(p geometry.Point) geometry.Point {
				return turn.Apply(pt(2*p.X, p.Y/2))
			}
			nearPoint(t, "start", got[0].Start(), to(row.a.Start()), 1e-10)
			nearPoint(t, "end", got[len(got)-1].End(), to(row.a.End()), 1e-10)
			worst := 0.0
			for i, s := range got {
				c, ok := s.(Cubic)
				if !ok {
					t.Fatalf("piece %d is a %T, want a Cubic", i, s)
				}
				for k := 0; k <= 50; k++ {
					p := geometry.Turn(-0.4).Apply(c.At(float64(k) / 50))
					worst = math.Max(worst, math.Abs(math.Hypot(p.X/2, p.Y*2)-100))
				}
				u := (float64(i) + 0.5) / float64(len(got))
				nearPoint(t, fmt.Sprintf("middle of piece %d", i), c.At(0.5), to(row.a.At(u)), 1e-3)
			}
			if worst > 5e-7*100 {
				t.Errorf("%v: off the ellipse by %g of 100 mm, allowed %g", row.a, worst, 5e-7*100)
			}
		})
	}
}

// Lines and cubics keep their kind under any transform, at every point.
// Property: an affine transform commutes with means of points.
func TestMapUneven(t *testing.T) {
	m := geometry.Affine{A: 2, B: 0.3, C: -0.7, D: 0.5, E: 40, F: -9}
	for i, s := range AllKinds() {
		t.Run(fmt.Sprintf("%d %T", i, s), func(t *testing.T) {
			got := Path{s}.Map(m)
			if _, arc := s.(Arc); arc {
				for _, piece := range got {
					if _, ok := piece.(Cubic); !ok {
						t.Errorf("an arc became a %T, want a Cubic", piece)
					}
				}
				return
			}
			if len(got) != 1 || fmt.Sprintf("%T", got[0]) != fmt.Sprintf("%T", s) {
				t.Fatalf("%v became %v", s, got)
			}
			for k := 0; k <= 10; k++ {
				u := float64(k) / 10
				nearPoint(t, fmt.Sprintf("%v at %g", s, u), got[0].At(u), m.Apply(s.At(u)), 1e-10)
			}
		})
	}
}

// Order is kept and nothing is dropped; the path itself stays as it is.
func TestMapWholePath(t *testing.T) {
	p := Path(AllKinds())
	before := fmt.Sprint(p)
	got := p.Map(geometry.Shift(10, 0))
	if fmt.Sprint(p) != before {
		t.Errorf("Map changed its path to %v", p)
	}
	if len(got) != len(p) {
		t.Fatalf("%d segments became %d", len(p), len(got))
	}
	for i, s := range p {
		nearPoint(t, fmt.Sprintf("start of %d", i), got[i].Start(), s.Start().Add(pt(10, 0)), 1e-10)
	}
	if got := Path(nil).Map(geometry.Turn(1)); len(got) != 0 {
		t.Errorf("the empty path became %v", got)
	}
}
