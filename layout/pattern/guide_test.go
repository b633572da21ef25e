package pattern

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/layout/lettering"
)

// TestGuide rolls a bush round inside the opening: the bit in its middle must cut
// the slot's length and width, and the slot lie in the middle of the gunwale.
func TestGuide(t *testing.T) {
	f := frametest.Shipped(t, "brook", nil)
	slot := f.Gunwale.Mortises[0]
	for _, c := range []struct{ bush, bit float64 }{{16, 6}, {f.Gunwale.Width, slot.Width}, {9.525, 3.175}} {
		parts, err := Guide(f, c.bush, c.bit)
		if err != nil {
			t.Fatal(err)
		}
		if len(parts) != 2 {
			t.Fatalf("%d parts, want a plate and its cheek", len(parts))
		}
		opening := parts[0].Cut[0]
		b := opening.Bounds()
		// The bush's middle runs half a bush inside the opening, and the bit cuts
		// half a bit past it.
		cut := b.Grow(c.bit/2 - c.bush/2)
		if math.Abs(cut.W()-slot.Length) > 1e-9 || math.Abs(cut.H()-slot.Width) > 1e-9 {
			t.Errorf("bush %g, bit %g cut %.4f x %.4f mm, want %.4f x %.4f", c.bush, c.bit, cut.W(), cut.H(), slot.Length, slot.Width)
		}
		if math.Abs(b.Center().Y-f.Gunwale.Width/2) > 1e-9 || math.Abs(b.Center().X) > 1e-9 {
			t.Errorf("the slot's middle lies at %v, want half the gunwale, %.2f mm, from its edge", b.Center(), f.Gunwale.Width/2)
		}
		if edge := parts[0].Marks[0]; edge.Bounds().Min.Y != 0 || edge.Bounds().Max.Y != 0 {
			t.Error("the gunwale's edge is not at 0")
		}
		for _, l := range parts[0].Letters {
			if wide := lettering.StrokeWidth(l.Words, l.Height); l.At.Y < b.Max.Y && l.At.X+wide/2 > b.Min.X-2 {
				t.Errorf("%q runs into the opening", l.Words)
			}
		}
		if b.Min.Y < -1e-9 {
			t.Error("the opening reaches over the cheek")
		}
		if !opening.Closed() || !opening.Joined() {
			t.Error("the opening is not closed")
		}
		// As round as the bush: a rectangle less the corners' (4 - pi) r².
		r := c.bush / 2
		want := b.W()*b.H() - (4-math.Pi)*r*r
		got := 0.0
		pts := opening.Flatten(0.0005)
		for i, p := range pts {
			got += p.Cross(pts[(i+1)%len(pts)]) / 2
		}
		if math.Abs(got-want) > 0.05 {
			t.Errorf("the opening's area is %.3f, want %.3f", got, want)
		}
	}
	for _, c := range []struct {
		bush, bit float64
		want      string
	}{{30, slot.Width + 0.1, "at most"}, {6, 6, "accepted: 7 to "}, {6.1 + f.Gunwale.Width - slot.Width, 6, "accepted: 7 to "}, {16, 0, "at most"}, {math.NaN(), 6, "accepted: 7 to "}, {16, math.NaN(), "at most"}} {
		if _, err := Guide(f, c.bush, c.bit); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("bush %g, bit %g: error %v, want %q", c.bush, c.bit, err, c.want)
		}
	}
}

// TestPartsKnowTheirWood checks what the nest needs: a thickness for every part,
// and a grain for all but gauges. A stem's runs from its foot to its head.
func TestPartsKnowTheirWood(t *testing.T) {
	f := frametest.Shipped(t, "river", nil)
	for _, p := range Parts(bent(t, f)) {
		if p.Thickness <= 0 {
			t.Errorf("%s has no thickness", p.Name)
		}
		if strings.HasPrefix(p.Name, "gauge") != p.Loose {
			t.Errorf("%s: may it lie any way? %v", p.Name, p.Loose)
		}
		if strings.HasSuffix(p.Name, "stem") {
			level := p.Mapped(geometry.Turn(-p.Grain)).Bounds()
			if level.W() < 2*level.H() {
				t.Errorf("%s lies %.0f x %.0f mm with its grain level; it should lie along", p.Name, level.W(), level.H())
			}
		}
	}
}
