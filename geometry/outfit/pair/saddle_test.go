package pair

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/water"
)

// pairs are shipped boats beside themselves, as they come and with other ribs, gunwales
// and outwales.
func pairs(t *testing.T, try func(name string, c *Craft)) {
	t.Helper()
	w, err := water.At(water.Fresh, 15)
	if err != nil {
		t.Fatal(err)
	}
	for _, boat := range design.ShippedNames() {
		for name, change := range map[string]func(*design.Design){
			boat:                      nil,
			boat + ", ribs nearer":    func(d *design.Design) { d.Ribs.Pitch -= 11; d.Thwarts, d.Seats, d.Crew = nil, nil, nil },
			boat + ", wide outwales":  func(d *design.Design) { d.Outside.Outwale = 15 },
			boat + ", plumb gunwales": func(d *design.Design) { d.Gunwale.Tilt = measure.Angle(4 * math.Pi / 180) },
		} {
			f := frametest.Shipped(t, boat, change)
			b, err := aboard.New(f, f.Design.Crew, f.Design.Gear)
			if err != nil {
				t.Fatal(err)
			}
			for _, beams := range []int{2, 3} {
				p := f.Design.Pair()
				p.Purpose, p.Beams = design.OpenWater, beams
				c, err := New(b, b, p, w)
				if err != nil {
					t.Fatal(err)
				}
				try(name, c)
			}
		}
	}
}

// TestSlotTakesGunwale: over all of its thickness no wood of a saddle lies within the
// leather of the finished gunwale's sides, 0.5 mm less for the leather's give, as far down as
// its cheeks reach; and of the gunwale's top no more stands into the saddle than is planed off.
func TestSlotTakesGunwale(t *testing.T) {
	pairs(t, func(name string, c *Craft) {
		for _, s := range c.Saddles() {
			b := c.Boats[s.Boat]
			g, d := b.Frame.Gunwale, b.Frame.Design
			wide := g.Width/2 + float64(d.Skin.Thickness()+d.Outside.Outwale) + Leather - 0.5
			inner, outer := b.GunwaleTop(s.Station)
			mid := inner.Add(outer).Scale(0.5)
			for x := s.Station - c.Beams.Width/2; x <= s.Station+c.Beams.Width/2; x += 2.5 {
				for _, across := range []float64{-g.Width/2 - Leather + 0.5, 0, wide} {
					for down := math.Abs(s.Rises) + 0.5; down < cheekDown; down += 2 {
						p := g.EdgeAt(x, across, g.Height-down).Sub(mid)
						if curve.Holds(s.Outline, geometry.Pt(p.Y, p.Z)) {
							t.Fatalf("%s, %s: wood stands in the gunwale at station %.1f, %.1f mm across and %.1f mm down", name, s.Name, x, across, down)
						}
					}
				}
			}
			// The back is as thick as it is told, over the highest gunwale of all.
			if back := s.Top - math.Max(inner.Z, outer.Z) + mid.Z; back < SaddleBack {
				t.Errorf("%s, %s: %.1f mm of wood over the gunwale", name, s.Name, back)
			}
		}
	})
}

// TestSlotByHand: where the gunwale runs along the boat, in the middle of it, the slot is as
// wide as gunwale, cloth, outwale and two leathers, by plain addition; where it runs in by m,
// it is wider by m times the saddle's thickness and the same oblique cut of all of it.
func TestSlotByHand(t *testing.T) {
	c := rivers(t)
	b := c.Boats[0]
	d := b.Frame.Design
	all := float64(d.Gunwale.Width + d.Skin.Thickness() + d.Outside.Outwale)
	slot := func(s Saddle) float64 { return s.Outline[4].Sub(s.Outline[3]).Norm() }
	check := func(s Saddle, off float64) {
		dy, _ := b.Frame.Gunwale.Line.Slopes(s.Station)
		m, cos := math.Abs(dy), math.Cos(b.Frame.Gunwale.Tilt)
		near(t, s.Name, slot(s), all*math.Hypot(1, m/cos)+2*Leather+m*cos*c.Beams.Width, off)
	}
	for _, s := range c.Saddles() {
		check(s, 0.6) // the gunwale bows in the stretch
	}
	c.Beams.At, c.Beams.Width = []float64{0}, 30
	check(c.saddle(0, 0, 4), 0.1)
}

// TestBarsUnderGunwales: a bar meets no head of a rib, no cross piece and no hanger, at each
// of its four corners it reaches under the gunwale, and it stays off the cloth.
func TestBarsUnderGunwales(t *testing.T) {
	pairs(t, func(name string, c *Craft) {
		if !c.Beams.Clear {
			t.Errorf("%s: no room for a bar", name)
		}
		for _, s := range c.Bars() {
			b := c.Boats[s.Boat]
			from, to := s.Station-c.Beams.Bar/2, s.Station+c.Beams.Bar/2
			for _, r := range b.Frame.Ribs {
				if half := float64(b.Frame.Design.Ribs.Width) / 2; r.Station+half > from-2.9 && r.Station-half < to+2.9 {
					t.Errorf("%s: %s from %.1f to %.1f meets rib %s at %.1f", name, s.Name, from, to, r.Name, r.Station)
				}
			}
			for _, w := range b.Frame.Thwarts {
				if half := w.Outline.Bounds().H() / 2; w.At+half > from && w.At-half < to {
					t.Errorf("%s: %s lies where %s is", name, s.Name, w.Name)
				}
			}
			g := b.Frame.Gunwale
			for _, v := range [][2]float64{{from, s.Aft}, {to, s.Fore}} {
				in, out := g.EdgeAt(v[0], -g.Width/2, 0).Y, g.EdgeAt(v[0], g.Width/2, 0).Y
				if v[1]-in < 10 || out-v[1] < 5 {
					t.Errorf("%s: %s ends %.1f mm under the gunwale and %.1f mm off the cloth", name, s.Name, v[1]-in, out-v[1])
				}
			}
		}
	})
}

// TestBarBears: by hand, a pull of 1500 N beside a bar of 60 mm that reaches 12 mm under: 2.08
// N/mm2 on 720 mm2; bent by it on an arm of 34 mm, a bar at 21.25 N/mm2 wants 15.5 mm, and no
// bar is thinner than 25 mm.
func TestBarBears(t *testing.T) {
	c := rivers(t)
	c.Beams.Bar, c.Beams.Wood.MOR = 60, 85
	c.Cases = []Case{{Lash: 1500}}
	got, asked := c.press()
	near(t, "N/mm2", got, 1500.0/(60*12), 1e-9)
	wood, err := c.Boats[0].Frame.Design.Wood(c.Boats[0].Frame.Design.Gunwale.Species)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "asked", asked, wood.Crush/1.5, 1e-9)
	near(t, "deep", c.BarDeep(), 25, 0)
	c.Cases[0].Lash = 9000 // sqrt(6 x 9000 x 34 / (60 x 21.25)) = 37.9
	near(t, "deep", c.BarDeep(), 40, 0)
}
