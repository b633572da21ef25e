package flotation_test

import (
	"math"
	"slices"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/flotation"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/inside"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/water/float"
	"ribwright/geometry/wood/timber"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %g, want %g within %g", what, got, want, tol)
	}
}

// canoe is redcedar 10 kg, ash 8 kg, coated skin 10 kg of 1200 kg/m3, metal 0.3 kg of 8000.
func canoe(t *testing.T) []weight.Item {
	t.Helper()
	wood := func(name string, kg float64) weight.Item {
		s, err := timber.Lookup(name)
		if err != nil {
			t.Fatal(err)
		}
		return weight.Item{Name: name, Loads: []float.Load{{Mass: kg}}, Solid: weight.SolidWood(kg, s)}
	}
	other := func(name string, kg, density float64) weight.Item {
		return weight.Item{Name: name, Loads: []float.Load{{Mass: kg}}, Solid: weight.SolidOf(kg, density)}
	}
	return []weight.Item{wood("western redcedar", 10), wood("white ash", 8), other("skin", 10, 1200), other("metal", 0.3, 8000)}
}

// TestCanoe by hand: dry +17.90 + 3.90 - 1.67 - 0.26 kg, soaked 28.80 l of redcedar of 11.61
// kg and 12.99 l of ash of 9.29 kg, +18.97 kg. (The gravity of the Wood Handbook gives
// redcedar 358.4 kg/m3.) Two people of 80 kg sitting lack 61.0 l, 2/15 of them 2.4 l, all
// of their weight 141 l; holding on they lack nothing.
func TestCanoe(t *testing.T) {
	dry, soaked := flotation.Own(canoe(t))
	near(t, "dry, kg", dry, 10*(1000/358.4-1)+8*(1000/672.0-1)-10*(1-1000/1200.0)-0.3*(1-1000/8000.0), 1e-9)
	near(t, "dry, kg", dry, 19.91, 0.05)
	near(t, "soaked, kg", soaked, 18.97, 0.01)
	n := flotation.NeedOf(canoe(t), 160, 0)
	near(t, "sitting, l", n.Seat, 61.0, 0.05)
	near(t, "2/15, l", n.Basic, 2.4, 0.05)
	near(t, "all, l", n.Whole, 141, 0.1)
	near(t, "holding on, l", n.Holding, 0, 0)
	near(t, "sitting with 20 kg of gear, l", flotation.NeedOf(canoe(t), 160, 20).Seat-n.Seat, 5, 1e-9)
}

// TestPlaced: each boat's flotation carries what it must net of its own weight, pieces
// hold what their blocks do, lie inside the cloth, leave hips their room, and no strap is
// alone or weaker than twice the lift.
func TestPlaced(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		b, err := aboard.New(f, f.Design.Crew, f.Design.Gear)
		if err != nil {
			t.Fatal(err)
		}
		fit, lift, sides := b.Flotation, 0.0, 0.0
		for _, p := range fit.Bags {
			held, mass := 0.0, 0.0
			for _, k := range p.Blocks {
				held, mass = held+k.Volume()*1e-6, mass+k.Mass
				out := math.Abs(k.At.Y) + k.Wide/2
				if half := b.Hull.Side(k.At.X, k.At.Z); out > half {
					t.Errorf("%s: %s reaches %.0f mm out at station %.0f mm, the cloth %.0f mm", name, p.Where, out, k.At.X, half)
				}
				for _, c := range f.Design.Crew {
					at := f.Design.WeightAt(c)
					if left := math.Abs(k.At.Y) - k.Wide/2; p.Foam && k.At.X > at-250 && k.At.X < at+150 && left < 240-1e-9 {
						t.Errorf("%s: %s leaves %.0f mm beside the middle line at the hips of %s", name, p.Where, left, c.Name)
					}
				}
			}
			near(t, name+": "+p.Where+", l", p.Liters, held, 1e-9)
			near(t, name+": "+p.Where+", kg", mass, p.Mass, 1e-9)
			near(t, name+": strap, N", p.Pull, 2*(held-p.Mass)*measure.Gravity, 1e-9)
			if p.Straps < 2 {
				t.Errorf("%s: %s hangs on %d strap", name, p.Where, p.Straps)
			}
			tied(t, name, f, p)
			lift += held - p.Mass
			if p.Foam {
				sides += held - p.Mass
			}
		}
		if lift < 1.5*fit.Need.Seat {
			t.Errorf("%s: all lifts %.1f kg, for a need of %.1f kg", name, lift, fit.Need.Seat)
		}
		if short := 1.25*fit.Need.Seat - sides; short > 0.1 && fit.Bags[0].Wanted-fit.Bags[0].Liters < short/2/0.97-1 {
			t.Errorf("%s: the sides lift %.1f kg, for a need of %.1f kg, and nothing says so", name, sides, fit.Need.Seat)
		}
	}
}

// TestShort: what the sides have no room for is asked of the ends, so that twice the need is
// asked for in all, whoever sits in the boat.
func TestShort(t *testing.T) {
	for _, mass := range []float64{50, 75, 100, 150} {
		f := frametest.Shipped(t, "river", func(d *design.Design) { d.Crew[0].Mass, d.Crew[1].Mass = mass, mass })
		b, err := aboard.New(f, f.Design.Crew, f.Design.Gear)
		if err != nil {
			t.Fatal(err)
		}
		if fit := b.Flotation; fit.Wanted() < 2*fit.Need.Seat || fit.Liters() > fit.Wanted()+1 {
			t.Errorf("two of %.0f kg need %.0f l: %.0f l wanted, %.0f l fitted", mass, fit.Need.Seat, fit.Wanted(), fit.Liters())
		}
	}
}

// TestClear: no foam is where a hanger, a rail, a cross piece, a footbrace or an end bag
// is, along the boat, across it and in height.
func TestClear(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		b, err := aboard.New(f, f.Design.Crew, f.Design.Gear)
		if err != nil {
			t.Fatal(err)
		}
		type solid struct {
			what   string
			lo, hi geometry.Point3
		}
		var fixed []solid
		box := func(what string, x, long, y, z0, z1 float64) {
			fixed = append(fixed, solid{what: what, lo: geometry.Point3{X: x - long/2, Y: -y, Z: z0}, hi: geometry.Point3{X: x + long/2, Y: y, Z: z1}})
		}
		for _, w := range f.Thwarts {
			z := f.Gunwale.Line.Point(w.At).Z
			box(w.Name, w.At, w.Outline.Bounds().H(), w.Length/2, z-w.Thickness, z)
		}
		for _, s := range f.Seats {
			if s.Hung == nil {
				continue
			}
			for _, r := range []seat.Rail{s.Hung.Front, s.Hung.After} {
				h := r.Hanger
				foot, top := h.Point(h.Length, 0), h.Point(0, h.Block+seat.Thick)
				box(s.Name+"'s hanger", h.Station, h.Wide, math.Max(foot.X, top.X)+20, math.Min(foot.Y, top.Y), math.Max(foot.Y, top.Y))
				box(s.Name+"'s rail", r.Station, s.Hung.Width, r.Length/2, r.TopZ-s.Hung.Depth, r.TopZ)
			}
		}
		for _, v := range inside.Of(f).Braces {
			box("footbrace", v.At, inside.Step*inside.Holes, v.Bar/2, v.Floor, v.Floor+v.Tall)
		}
		for _, v := range inside.Of(f).Backs { // a loop of webbing round a rib's head, from side to side
			box("backrest's loop", v.RibAt, float64(f.Design.Ribs.Width)+6, v.Gunwale/2, v.Floor, f.Gunwale.Line.Point(v.RibAt).Z)
		}
		for _, p := range b.Flotation.Bags {
			for _, k := range p.Blocks {
				for _, o := range fixed {
					meets := func(a, lo, hi, half float64) bool { return a+half > lo && a-half < hi }
					if p.Foam && meets(k.At.X, o.lo.X, o.hi.X, k.Long/2) && meets(k.At.Y, o.lo.Y, o.hi.Y, k.Wide/2) && meets(k.At.Z, o.lo.Z, o.hi.Z, k.Tall/2) {
						t.Errorf("%s: %s runs into %s at station %.0f mm", name, p.Where, o.what, k.At.X)
					}
				}
			}
			for _, q := range b.Flotation.Bags {
				if p.Foam && !q.Foam && p.Fore > q.Aft && p.Aft < q.Fore {
					t.Errorf("%s: %s runs into the bag at the %s", name, p.Where, q.Where)
				}
			}
		}
	}
}

// TestNone: a boat that wants none has none, and weighs less.
func TestNone(t *testing.T) {
	f := frametest.Shipped(t, "brook", func(d *design.Design) { d.Inside.Flotation = design.NoFlotation })
	b, err := aboard.New(f, f.Design.Crew, nil)
	if err != nil || len(b.Flotation.Bags) > 0 || b.Flotation.Need.Seat <= 0 {
		t.Errorf("%+v, %v", b.Flotation, err)
	}
	for _, p := range b.Parts {
		if p.Name == flotation.Group {
			t.Errorf("%+v", p)
		}
	}
}

// tied: every strap of a side piece has a rib of its own that it can be led onto the piece
// from, and what a bag is laced to stands clear of the bag.
func tied(t *testing.T, name string, f *frame.Frame, p flotation.Bag) {
	t.Helper()
	at := map[string]float64{}
	for _, r := range f.Ribs {
		at[r.Name] = r.Station
	}
	if !p.Foam {
		if x, ok := at[p.LaceRib(f)]; !ok || p.Aft < x && x < p.Fore || math.Abs(x) > math.Abs(p.At.X) {
			t.Errorf("%s: %s is laced to rib %q at %.0f mm", name, p.Where, p.LaceRib(f), x)
		}
		return
	}
	ribs, spacing := p.StrapRibs(f), f.Ribs[1].Station-f.Ribs[0].Station
	if len(ribs) != p.Straps {
		t.Errorf("%s: %s has %d straps at ribs %v", name, p.Where, p.Straps, ribs)
	}
	for i, r := range ribs {
		if x, ok := at[r]; !ok || slices.Contains(ribs[:i], r) || x < p.Aft-spacing/2 || x > p.Fore+spacing/2 {
			t.Errorf("%s: a strap of %s, %.0f to %.0f mm, is tied to rib %q at %.0f mm", name, p.Where, p.Aft, p.Fore, r, x)
		}
	}
}

// TestStrapsApart: two straps of a piece that is shorter than the ribs stand apart are tied to
// two ribs, not both to the nearest.
func TestStrapsApart(t *testing.T) {
	f := frametest.Shipped(t, "brook", nil)
	mid := f.Ribs[len(f.Ribs)/2]
	short := flotation.Bag{Foam: true, Straps: 2, Aft: mid.Station - 30, Fore: mid.Station + 40}
	if ribs := short.StrapRibs(f); len(ribs) != 2 || ribs[0] == ribs[1] || !slices.Contains(ribs, mid.Name) {
		t.Errorf("tied to %v", ribs)
	}
}
