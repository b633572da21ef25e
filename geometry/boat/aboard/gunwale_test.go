package aboard

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/finding"
	"ribwright/geometry/water/float"
)

func river(t *testing.T) Boat {
	t.Helper()
	f := frametest.Shipped(t, "river", nil)
	b, err := New(f, f.Design.Crew, f.Design.Gear)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestSayOutfits tells of other outfits with their whole weight, and of none when
// there are none.
func TestSayOutfits(t *testing.T) {
	b := river(t)
	var n finding.List
	if b.SayOutfits(&n); len(n) != 0 {
		t.Errorf("nothing is fitted: %+v", n)
	}
	b.Outfits = []weight.Item{{Name: "Rig", Loads: []float.Load{{Mass: 9}}}, {Name: "Sail", Loads: []float.Load{{Mass: 1.5}}}}
	if b.SayOutfits(&n); len(n) != 1 || !strings.Contains(n[0].Text, "10.5 kg") {
		t.Errorf("%+v, want 10.5 kg told", n)
	}
}

// TestCrosses names the cross pieces between two stations and no others.
func TestCrosses(t *testing.T) {
	b := river(t)
	far := b.Frame.Hull.Length
	if got := b.Crosses(-far, far); len(got) != len(b.Frame.Thwarts) {
		t.Errorf("%d of %d cross pieces in the whole boat", len(got), len(b.Frame.Thwarts))
	}
	for _, c := range b.Frame.Thwarts {
		if got := b.Crosses(c.At, c.At); len(got) != 1 || !strings.HasPrefix(got[0], c.Name) {
			t.Errorf("at %.0f mm: %q, want %s", c.At, got, c.Name)
		}
	}
	if got := b.Crosses(far, 2*far); len(got) != 0 {
		t.Errorf("past the bow: %q", got)
	}
}

// TestGunwaleTop: the two upper edges lie a gunwale's width apart, the outer one
// outboard and, where the gunwale leans out, lower; both stand its height over the
// line of its underside.
func TestGunwaleTop(t *testing.T) {
	b := river(t)
	g := b.Frame.Gunwale
	for _, x := range []float64{-1500, 0, 800} {
		inner, outer := b.GunwaleTop(x)
		if inner.Y <= 0 || outer.Y <= inner.Y || g.Tilt > 0 && outer.Z >= inner.Z {
			t.Errorf("at %.0f mm: inner %+v, outer %+v", x, inner, outer)
		}
		// A station cuts a gunwale that runs in towards the end aslant.
		slope, _ := g.Line.Slopes(x)
		if d := math.Hypot(outer.Y-inner.Y, outer.Z-inner.Z) * math.Cos(math.Atan(slope)); math.Abs(d-g.Width) > 0.1 {
			t.Errorf("at %.0f mm the edges lie %.2f mm apart, the gunwale is %.2f wide", x, d, g.Width)
		}
		under := g.Line.Point(x)
		mid := geometry.Point3{Y: (inner.Y + outer.Y) / 2, Z: (inner.Z + outer.Z) / 2}
		if d := math.Hypot(mid.Y-under.Y, mid.Z-under.Z); math.Abs(d-g.Height) > 0.5 {
			t.Errorf("at %.0f mm the top stands %.2f mm over the underside, the gunwale is %.2f tall", x, d, g.Height)
		}
	}
}
