package skin

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame/frametest"
)

// TestPressed: where ribs stand proud, the pressed cloth lies on their faces, a skin's
// thickness out; elsewhere it is the flat cloth. A shipped boat is not pressed at all.
func TestPressed(t *testing.T) {
	f := frametest.Shipped(t, "brook", nil)
	rearrange(f, 0.27, 0.5, 0.74)
	c := cover(t, f)
	p := c.Press(f)
	seen := 0
	for _, r := range f.Ribs {
		flat, pts := c.At(r.Station), p.At(r.Station)
		if len(pts) != len(flat)+Between*(len(f.Stringers)+1) {
			t.Fatalf("%d points for %d corners", len(pts), len(flat))
		}
		for gap := range len(f.Stringers) + 1 {
			a, b := flat[1+2*gap], flat[2+2*gap]
			for k := range Between {
				q := pts[2+gap*(Between+2)+k]
				out := b.Sub(a).Unit().Cross(a.Sub(q)) // to the right of the way out
				if out < 1e-9 {
					continue
				}
				seen++
				least := math.Inf(1)
				for s := 0.0; s < r.Section.Half.Length(); s += 0.5 {
					least = math.Min(least, q.Sub(r.Face(s, r.Thickness/2+c.boat.Thickness())).Norm())
				}
				if least > 0.5 {
					t.Errorf("rib %s: the pressed cloth lies %.2f mm off its face", r.Name, least)
				}
			}
		}
	}
	if seen == 0 {
		t.Error("no rib presses the cloth out")
	}
	whole := frametest.Shipped(t, "brook", nil)
	for i, by := range cover(t, whole).Press(whole).out {
		if by != nil {
			t.Errorf("rib %s of the shipped boat is proud", whole.Ribs[i].Name)
		}
	}
}

// TestOutlineEverywhere: every outline has as many corners as a rib's, none inside the
// middle line or under the keel, and between two ribs it lies between theirs.
func TestOutlineEverywhere(t *testing.T) {
	for _, name := range []string{"brook", "lake", "river"} {
		c := cover(t, frametest.Shipped(t, name, nil))
		stern, bow := c.Ends()
		corners := len(c.covered[0])
		for x := -stern.Tip - 5; x <= bow.Tip+5; x += 7 {
			pts := c.At(x)
			if len(pts) != corners {
				t.Fatalf("%s at %.0f mm: %d corners, want %d", name, x, len(pts), corners)
			}
			for _, p := range pts {
				if !p.Finite() || p.X < 0 || p.Y < pts[0].Y {
					t.Errorf("%s at %.0f mm: a corner at %v", name, x, p)
				}
			}
			if out := x > bow.Tip || x < -stern.Tip; out != (pts[corners-1].X == 0) {
				t.Errorf("%s at %.0f mm: the top lies %.2f mm out", name, x, pts[corners-1].X)
			}
		}
		for i := 1; i < len(c.ribs); i++ {
			mid := c.At((c.ribs[i-1].Station + c.ribs[i].Station) / 2)
			for k, p := range mid {
				a, b := c.covered[i-1][k], c.covered[i][k]
				const sag = 3.0 // mm that a batten may leave its chord over a bay
				if box := geometry.Around(a, b).Grow(sag); !box.Holds(p) {
					t.Errorf("%s between ribs %d and %d: corner %d at %v, want near %v and %v", name, i, i+1, k, p, a, b)
				}
			}
		}
	}
}
