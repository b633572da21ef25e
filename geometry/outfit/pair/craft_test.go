package pair

import (
	"math"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/water"
	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wood/timber"
)

// TestLoads works the cases by hand for two beams 2 m apart, hulls 2.4 m apart of
// 2000 N each, waterline 4.8 m, gunwales gripped 0.8 m apart, a person of 1000 N.
func TestLoads(t *testing.T) {
	b := bearing{spacing: 2400, at: []float64{-1000, 1000}, hull: 2000, waterline: 4800, grip: 800, person: 1000,
		area: [2]float64{2.4e6, 2.4e6}, inertia: 2 * (0.08e12 + 2.4e6*1200*1200)}
	s := beam.Rectangle(80, 120)
	wood := timber.Species{Name: "test", MOE: 10000, MOR: 80}
	all := b.cases(s, wood)
	// Middle: 1500 N x 2.4 / 4. Side: 1500 x 0.4 m over two beams. Opposite ends:
	// 2000 x 1.2 m over 2 m = 1200 N, swaying over 2.4 m: 1440 N m. Sail: 1000 N at
	// 1.2 m.
	for i, want := range []float64{900, 300, 1440, 1200} {
		near(t, all[i].Name, all[i].Moment, want, 1e-6)
		near(t, all[i].Name+": stress", all[i].Stress, want*1000/(80*120*120/6.0), 1e-9)
	}
	// P L3 / 48 E I with I 80 x 120^3 / 12 = 11.52e6.
	near(t, "sag under a person", all[0].Sag, 1000*math.Pow(2400, 3)/(48*10000*11.52e6), 1e-9)
	near(t, "sag of the sway", all[2].Sag, 1200*math.Pow(2400, 3)/(12*10000*11.52e6), 1e-9)
	near(t, "lashing at opposite ends", all[2].Lash, 1440e3/800+600, 1e-6)
	// Of a person on the outer gunwale nearly nothing but the turning passes over:
	// moments about one hull's middle, 1500 x 400 = force x 2400, less what the hulls
	// hold by their own breadth.
	near(t, "force passed over", all[1].Load*2/(1500*400/2400.0), 1, 0.1)
	// Four beams over the same length share the turning as their distances squared.
	b.at = []float64{-1000, -1000.0 / 3, 1000.0 / 3, 1000}
	near(t, "outer of four", b.cases(s, wood)[2].Load, 2000*1200*1000/(2*(1e6+1e6/9)), 1e-6)
	if Turns(900) != 4 || Turns(4100) != 5 {
		t.Errorf("turns %d and %d", Turns(900), Turns(4100))
	}
}

// TestSize: the beam that is found carries all cases and the next smaller does not.
func TestSize(t *testing.T) {
	wood := timber.Species{MOE: 13400, MOR: 85}
	b := bearing{spacing: 2400, at: []float64{-1000, 1000}, hull: 2000, waterline: 4800, grip: 800, person: 1000,
		area: [2]float64{2.4e6, 2.4e6}, inertia: 7e12}
	w, d, ok := size(b, wood, 0, 0)
	good := func(w, d float64) bool {
		stress, _, sag := worst(b.cases(beam.Rectangle(w, d), wood))
		return stress <= 85.0/4 && sag <= 40
	}
	if !ok || !good(w, d) || good(math.Ceil((d-5)/1.5/5)*5, d-5) {
		t.Errorf("%g x %g mm, enough %v", w, d, ok)
	}
	if _, _, ok := size(b, wood, 30, 40); ok {
		t.Error("a slat is said to be enough")
	}
	if w, d, ok := size(b, wood, 140, 0); !ok || w != 140 || !good(140, d) {
		t.Errorf("%g x %g for a width of 140", w, d)
	}
}

func boat(t *testing.T, name string) aboard.Boat {
	t.Helper()
	f := frametest.Shipped(t, name, nil)
	b, err := aboard.New(f, f.Design.Crew, f.Design.Gear)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestCraft pairs shipped boats: two of a kind lie level and far stiffer than one,
// never past what both hulls could give; unlike ones list the same way whichever is
// named first.
func TestCraft(t *testing.T) {
	w, err := water.At(water.Fresh, 15)
	if err != nil {
		t.Fatal(err)
	}
	river, lake := boat(t, "river"), boat(t, "lake")
	c, err := New(river, river, river.Frame.Design.Pair(), w)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "list", c.Rest.Heel, 0, 1e-9)
	if !c.Beams.Enough || c.GM < 10*c.Single {
		t.Errorf("beams %+v, GM %.0f beside %.0f of one", c.Beams, c.GM, c.Single)
	}
	for _, v := range c.Curves[0].Levers {
		if v.GZ > c.Spacing/2+425 || v.GZ > c.GM*math.Sin(v.Heel)*1.02+1 {
			t.Errorf("GZ %.0f at %.1f deg", v.GZ, v.Heel*180/math.Pi)
		}
	}
	// Half a hull's breadth and its mean draft say when it lifts, within a third:
	// tan p near 2 T / s with T the draft of a box of the same waterplane.
	mean := float64(c.Load.Mass) / 999.1 * 1e9 / 2 / 2.6e6
	if k := math.Tan(c.Curves[0].Lift) * c.Spacing / 2 / mean; k < 0.8 || k > 2.2 {
		t.Errorf("lifts at %.1f deg, %.2f times the rule for boxes", c.Curves[0].Lift*180/math.Pi, k)
	}
	ab, err := New(river, lake, river.Frame.Design.Pair(), w)
	if err != nil {
		t.Fatal(err)
	}
	ba, err := New(lake, river, river.Frame.Design.Pair(), w)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "list to the heavier", ab.Rest.Heel, -ba.Rest.Heel, 1e-6)
	near(t, "waves", ab.Waves[4].Together/ba.Waves[4].Together, 1, 1e-4)
	near(t, "GM", ab.GM/ba.GM, 1, 1e-6)
}

// TestRefused has pairs that cannot be.
func TestRefused(t *testing.T) {
	w, _ := water.At(water.Fresh, 15)
	river, lake := boat(t, "river"), boat(t, "lake")
	for _, c := range []struct {
		name   string
		change func(p *design.Pair)
	}{
		{"hulls that touch", func(p *design.Pair) { p.Spacing = 860 }},
		{"beams past the ribs", func(p *design.Pair) { p.Apart = 3900 }},
		{"a wood that nobody knows", func(p *design.Pair) { p.Species = "tin" }},
	} {
		p := river.Frame.Design.Pair()
		c.change(&p)
		if _, err := New(river, lake, p, w); err == nil {
			t.Errorf("%s are accepted", c.name)
		}
	}
}
