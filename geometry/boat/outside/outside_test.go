package outside

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/design"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %g, want %g within %g", what, got, want, tol)
	}
}

// of works out what a frame has outside.
func of(t *testing.T, f *frame.Frame) Fit {
	t.Helper()
	j, err := joint.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	return Of(f, j.Driven())
}

// full is a boat with all there is outside.
func full(d *design.Design) { d.Outside.Drain, d.Outside.Outwale = true, 8 }

// TestAlongGunwale: the upper edge of the outer face is as long as the gunwale's own line
// but for what the sheer and the end cuts change; a strip beside it, by the theorem of
// parallel curves, gains in the bend what it loses at the ends, within 1 mm.
func TestAlongGunwale(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		from, to := -f.Hull.Stern.GunwaleX, f.Hull.Bow.GunwaleX
		aft, _ := f.Gunwale.Line.Slopes(from)
		fore, _ := f.Gunwale.Line.Slopes(to)
		long, middle := alongGunwale(f, 0)
		near(t, name, long, f.Gunwale.Line.Length(to)-f.Gunwale.Line.Length(from), 5)
		near(t, name+": 15 mm farther off", 15*(math.Atan(aft)-math.Atan(fore)-(aft-fore)), 0, 1)
		if low, high := f.Gunwale.Outer(0)[1].Y, f.Gunwale.Outer(to)[1].Y; middle.Z <= low || middle.Z >= high || middle.Y != 0 {
			t.Errorf("%s: the middle of both lies at %+v, the edges from %.0f to %.0f mm up", name, middle, low, high)
		}
	}
}

// TestStrips: outwales are as long as the gunwales within a hand's breadth, the strip as
// the keel.
func TestStrips(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, full)
		o := of(t, f)
		near(t, name+": outwale", o.Outwale.Long, f.Gunwale.Fore-f.Gunwale.Aft, 60)
		near(t, name+": strip under the keel", o.Keel.Long, f.Keel.Fore-f.Keel.Aft, 1e-9)
		for _, h := range []frame.Breasthook{f.BowHook, f.SternHook} {
			if h.Painter < 10 || h.Painter > float64(f.Design.Breasthook.Length-f.Design.Breasthook.Hollow)-10 {
				t.Errorf("%s: the painter's hole is %.0f mm from the gunwale ends", name, h.Painter)
			}
		}
	}
}

// TestFarRibs: where ribs stand 260 mm apart there are two screws in each bay.
func TestFarRibs(t *testing.T) {
	f := frametest.Shipped(t, "lake", func(d *design.Design) { d.Ribs.Pitch = 260 })
	s := of(t, f).Outwale
	for i := 1; i < len(f.Ribs); i++ {
		from, to, n := f.Gunwale.Mortises[i-1].FromMidship, f.Gunwale.Mortises[i].FromMidship, 0
		for _, at := range s.Screws {
			if at > from && at < to {
				n++
			}
		}
		if n != 2 {
			t.Errorf("%d screws between ribs %s and %s, want 2", n, f.Ribs[i-1].Name, f.Ribs[i].Name)
		}
	}
}

// TestHeldByScrews: a screw No. 6, of 2.87 mm at the root (NDS appendix L), wants a pilot hole of
// 0.7 of that in soft wood and 0.9 in hard (Wood Handbook chapter 8, from memory), and 2.5
// diameters to either edge of its strip (NDS commentary, from memory).
func TestHeldByScrews(t *testing.T) {
	for species, want := range map[string]float64{"sitka spruce": 2, "white ash": 2.5} {
		f := frametest.Shipped(t, "lake", func(d *design.Design) { d.Gunwale.Species = species })
		o := of(t, f)
		near(t, "pilot hole in "+species, o.Outwale.Pilot, want, 0)
		near(t, "in the keel of spruce", o.Keel.Pilot, 2, 0)
		near(t, "in the gunwale", o.Outwale.Into, o.Outwale.Screw-8-float64(f.Design.Skin.Thickness()), 1e-9) // through 9 mm, its head 1 mm sunk
	}
	for _, name := range design.ShippedNames() {
		o := of(t, frametest.Shipped(t, name, full))
		if o.Outwale.EdgeShort() > 0 || o.Keel.EdgeShort() > 0 {
			t.Errorf("%s: screws stand too near the edges of strips of %g and %g mm", name, o.Outwale.Tall, o.Keel.Tall)
		}
	}
	low := of(t, frametest.Shipped(t, "lake", func(d *design.Design) { d.Outside.OutwaleHeight = 14 }))
	near(t, "a low outwale wants", low.Outwale.EdgeShort(), 3.5, 1e-9)
}

// TestThinKeel: where no screw that is sold stays in the wood there are none.
func TestThinKeel(t *testing.T) {
	f := frametest.Shipped(t, "lake", func(d *design.Design) { d.Keel.Depth, d.Outside.KeelStrip = 3, 10 })
	if s := of(t, f).Keel; s.Screws != nil || s.Screw != 0 {
		t.Errorf("%+v", s)
	}
	for _, i := range kitOf(t, f) {
		if i.Key == "strip-screw" && strings.Contains(i.How, "keel") {
			t.Errorf("%+v", i)
		}
	}
}

// kitOf is what is bought for a frame.
func kitOf(t *testing.T, f *frame.Frame) []struct{ Key, How string } {
	t.Helper()
	k := of(t, f).Kit(f)
	var out []struct{ Key, How string }
	for _, v := range k.Things {
		out = append(out, struct{ Key, How string }{v.Key, v.How})
	}
	return out
}

// TestWeighed weighs Brook's strips by hand: white ash is 672 kg/m3 (FPL-GTR-282, gravity
// 0.60), and the painters are 6 m of line of 45 g.
func TestWeighed(t *testing.T) {
	f := frametest.Shipped(t, "brook", func(d *design.Design) { d.Outside.Outwale = 8 })
	o, d := of(t, f), f.Design.Outside
	k := o.Kit(f)
	items, err := k.Items(f.Design)
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]float64{}
	for _, i := range items {
		got[i.Name] = i.Load().Mass
	}
	wood := (2*o.Outwale.Long*float64(d.Outwale*d.OutwaleHeight) + o.Keel.Long*float64(d.KeelStrip*d.KeelStripWidth)) * 672e-9
	near(t, "strips, kg", got[strips], wood+screwMass*float64(2*len(o.Outwale.Screws)+len(o.Keel.Screws)), 1e-9)
	near(t, "painters, kg", got[painters], 6*0.045, 1e-9)
	volume, bought := Roughly(f.Design, f.Gunwale.Fore-f.Gunwale.Aft, f.Keel.Fore-f.Keel.Aft, len(f.Ribs))
	near(t, "before there is a frame, kg", volume*672e-9+bought, got[strips]+got[painters], 0.01)
}

// TestNone: what a design does not want is nowhere.
func TestNone(t *testing.T) {
	f := frametest.Shipped(t, "river", func(d *design.Design) {
		d.Outside.Outwale, d.Outside.KeelStrip, d.Outside.Painters = 0, 0, 0
	})
	if k := of(t, f).Kit(f); len(k.Pieces)+len(k.Things)+len(k.Works) != 0 {
		t.Errorf("%+v", k)
	}
	if volume, bought := Roughly(f.Design, 4000, 4000, 20); volume != 0 || bought != 0 {
		t.Errorf("%g mm3 and %g kg of nothing", volume, bought)
	}
}

// TestDrain: the pad lies on the skin beside the keel, between two ribs.
func TestDrain(t *testing.T) {
	f := frametest.Shipped(t, "lake", full)
	o := of(t, f)
	if o.pad.Y-PadAcross/2 < float64(f.Design.Keel.Width)/2-1e-9 {
		t.Errorf("the pad lies on the keel: %+v", o.pad)
	}
	for _, r := range f.Ribs {
		if math.Abs(r.Station-o.DrainAt) < float64(f.Design.Ribs.Width)/2 {
			t.Errorf("the drain lies under rib %s", r.Name)
		}
	}
}

// TestUnderKeel: over the straight keel amidships the strip hangs half its depth under the
// baseline, and the rocker lifts its middle over that, by less than it rises at the ends.
func TestUnderKeel(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		d := f.Design
		most := math.Max(float64(d.Hull.RockerBow), float64(d.Hull.RockerStern))
		if z := of(t, f).Keel.At.Z + float64(d.Outside.KeelStrip)/2; z <= 0 || z >= most {
			t.Errorf("%s: the strip's middle lies %.1f mm over the baseline with a rocker of %.0f mm", name, z, most)
		}
	}
}
