package clip

import (
	"math"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/wood/timber"
)

// TestKeepsItsDistance: at every station the bolt stands as far from the true line of the
// gunwale's upper inner edge as the clip is made for, measured to the nearest point of it.
func TestKeepsItsDistance(t *testing.T) {
	tilted := func(deg float64) func(*design.Design) {
		return func(d *design.Design) { d.Gunwale.Tilt = measure.Angle(deg * math.Pi / 180) }
	}
	all := map[string]*frame.Frame{"upright": frametest.Shipped(t, "lake", tilted(0)), "leaning": frametest.Shipped(t, "lake", tilted(13)),
		"wide": frametest.Shipped(t, "brook", func(d *design.Design) { d.Hull.Beam += 60 }), "close ribs": frametest.Shipped(t, "lake", func(d *design.Design) {
			d.Ribs.Pitch, d.Thwarts, d.Seats, d.Crew = 105, nil, nil, nil
		})}
	for _, name := range design.ShippedNames() {
		all[name] = frametest.Shipped(t, name, nil)
	}
	for name, f := range all {
		g := f.Gunwale
		for x := f.Ribs[1].Station; x < f.Ribs[len(f.Ribs)-2].Station; x += 37 {
			c, least := Lay(f, x), math.Inf(1)
			for s := x - 30; s <= x+30; s += 0.25 {
				e := g.EdgeAt(s, -g.Width/2, g.Height)
				least = math.Min(least, math.Hypot(s-c.Hole.X, e.Y-c.Hole.Y))
			}
			if c.Hole.X != x || math.Abs(least-22) > 0.1 {
				t.Errorf("%s: at %.0f mm the hole is %.2f mm from the gunwale, want 22", name, x, least)
			}
		}
	}
}

// TestClearOfRibs: a clip that is placed near a rib has its hook's four corners off the
// rib's head, and one in the middle of a bay stays there.
func TestClearOfRibs(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, func(d *design.Design) { d.Seats, d.Crew, d.Thwarts = nil, nil, nil })
		wide := float64(f.Design.Ribs.Width)
		for i := 2; i < len(f.Ribs)-2; i++ {
			at, next := f.Ribs[i].Station, f.Ribs[i+1].Station
			c, ok := Near(f, at, at-60, at+60)
			if !ok {
				t.Fatalf("%s: no room beside rib %s", name, f.Ribs[i].Name)
			}
			for _, r := range f.Ribs {
				if c.To > r.Station-wide/2-ribRoom+1e-9 && c.From < r.Station+wide/2+ribRoom-1e-9 {
					t.Errorf("%s: a hook from %.1f to %.1f lies on rib %s at %.1f", name, c.From, c.To, r.Name, r.Station)
				}
			}
			if mid := (at + next) / 2; next-at > 80 && len(f.Thwarts) == 0 {
				if c, ok := Near(f, mid, at, next); !ok || math.Abs(c.Hole.X-mid) > 1e-9 {
					t.Errorf("%s: %.1f for a clip amid a bay at %.1f", name, c.Hole.X, mid)
				}
			}
		}
		if _, ok := Near(f, f.Ribs[3].Station, f.Ribs[3].Station-5, f.Ribs[3].Station+5); ok {
			t.Errorf("%s: a clip on a rib's head", name)
		}
	}
}

// TestClearOfThwarts: a clip that is wanted amid a cross piece goes beside it.
func TestClearOfThwarts(t *testing.T) {
	f := frametest.Shipped(t, "lake", nil)
	for _, w := range f.Thwarts {
		half := w.Outline.Bounds().H() / 2
		c, ok := Near(f, w.At, w.At-130, w.At+130)
		if d := math.Abs(c.Hole.X - w.At); !ok || d < half+kit.ClipThick/2 {
			t.Errorf("%s at %.0f mm: a clip at %.1f", w.Name, w.At, c.Hole.X)
		}
	}
}

// TestHookStations: on a gunwale that runs in by 12.4 degrees forward and does not lean the
// hook's middle lies 27 mm outboard of the bolt and so 27 sin 12.4 forward of it.
func TestHookStations(t *testing.T) {
	f := frametest.Shipped(t, "lake", func(d *design.Design) { d.Gunwale.Tilt = 0 })
	c := Lay(f, 1235)
	if want := 27 * math.Sin(-c.Turn); math.Abs((c.From+c.To)/2-1235-want) > 1e-6 || c.Turn > -0.15 {
		t.Errorf("the hook's middle is at %.2f, want %.2f; turned %.3f", (c.From+c.To)/2, 1235+want, c.Turn)
	}
}

// TestBears: an upright gunwale's clip by hand. The load 5 mm outboard of the gunwale's
// face, the bolt 22 inboard, the rim 40: 1000 N x 45 / 18 is 2500 N in the bolt and 1500 N at
// the rim. The hook: 1000 x 5 over 18 x 16 x 16 / 6 = 768 mm3 is 6.5 N/mm2; on 180 mm2 5.6.
func TestBears(t *testing.T) {
	g := frame.Gunwale{Width: 20, Height: 40}
	p := Bears(g, 1000, timber.Species{MOR: 100}, timber.Species{Crush: 9})
	for what, v := range map[string][2]float64{"bolt": {p.Bolt, 2500}, "rim": {p.Press, 1500}, "hook": {p.Lip, 5000.0 / 768}, "under": {p.Under, 1000.0 / 180}, "asked": {p.Asked, 25}, "dents": {p.Dents, 6}} {
		if math.Abs(v[0]-v[1]) > 1e-9 {
			t.Errorf("%s: %g, want %g", what, v[0], v[1])
		}
	}
	if !p.Holds() || Bears(g, 1200, timber.Species{MOR: 100}, timber.Species{Crush: 9}).Holds() {
		t.Error("1000 N hold and 1200 N dent the gunwale")
	}
	if kit.ClipThick*kit.ClipLip != 180 {
		t.Error("another hook")
	}
}
