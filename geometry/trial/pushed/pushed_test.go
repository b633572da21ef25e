package pushed

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/wood/timber"
)

// TestKept checks what every rib keeps: its length, level at the keel, its head in its
// place, and a clamped head within the slack of its mortise.
func TestKept(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		for i, r := range Of(f, wood(t, "white ash")) {
			s := f.Ribs[i].Section
			if r.Why != nil {
				t.Fatal(name, f.Ribs[i].Name, r.Why)
			}
			for _, h := range []Head{r.Hinged, r.Clamped} {
				kept(t, name+" "+f.Ribs[i].Name, h, s)
				if h.Least < r.Hinged.Least/3 || h.Least > 400 || h.Push <= 0 || len(h.Moved) != len(f.Stringers) {
					t.Errorf("%s %s: least radius %.0f mm, push %.0f N, %d marks", name, f.Ribs[i].Name, h.Least, h.Push, len(h.Moved))
				}
			}
			if off := math.Abs(r.Clamped.Flare - s.Shape.Flare); off > Slack+1e-9 {
				t.Errorf("%s %s: a clamped head leans %.2f deg off its mortise", name, f.Ribs[i].Name, off*180/math.Pi)
			}
		}
	}
}

func kept(t *testing.T, name string, h Head, s hull.Section) {
	t.Helper()
	near(t, name+": length", h.Half.Length(), s.Half.Length(), 1e-6)
	_, heading := h.Half.At(0)
	near(t, name+": heading at the keel", heading, 0, 0)
	end, heading := h.Half.End()
	near(t, name+": half-breadth", end.X, s.HalfBreadth, 1e-6)
	near(t, name+": depth", end.Y, s.Depth, 1e-6)
	near(t, name+": flare", h.Flare, math.Pi/2-heading, 1e-9)
}

func wood(t testing.TB, name string) timber.Species {
	t.Helper()
	w, err := timber.Lookup(name)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// TestStiffer checks that a stiffer wood changes no shape, and its forces in proportion.
func TestStiffer(t *testing.T) {
	f, w := frametest.Shipped(t, "lake", nil), wood(t, "white ash")
	soft := Of(f, w)
	ei := 12000 * 22 * 6.5 * 6.5 * 6.5 / 12 // white ash, 22 x 6.5 mm
	near(t, "push of M, by the independent solution", soft[13].Hinged.Push, 2.712129521e-05*ei, 0.5)
	w.MOE *= 2
	for i, stiff := range Of(f, w) {
		for _, pair := range [][2]Head{{stiff.Hinged, soft[i].Hinged}, {stiff.Clamped, soft[i].Clamped}} {
			a, b := pair[0], pair[1]
			if a.Flare != b.Flare || a.Out != b.Out || a.In != b.In || a.Least != b.Least {
				t.Errorf("rib %s changes shape with its stiffness", f.Ribs[i].Name)
			}
			near(t, "push", a.Push, 2*b.Push, 1e-9*b.Push)
			near(t, "lift", a.Lift, 2*b.Lift, 1e-9*math.Abs(b.Lift))
		}
	}
}

// TestSlack checks that heads which turn by less than the slack by themselves are left
// alone, and that others lean to its end.
func TestSlack(t *testing.T) {
	w := newWanted(section(t, 190, 420, 20, 150, 20, 0), nil) // turns by 1.95 deg
	if r := w.pushedIn(newYield(arcs)); r.Clamped.Flare != r.Hinged.Flare {
		near(t, "flare within the slack", r.Clamped.Flare, r.Hinged.Flare, 1e-6)
	}
	w = newWanted(section(t, 386, 310, 17, 120, 9, 0), nil)
	near(t, "flare at the slack's end", w.pushedIn(newYield(arcs)).Clamped.Flare, 9*math.Pi/180-Slack, 1e-9)
}

// TestApart measures curves whose distance from the section is known.
func TestApart(t *testing.T) {
	straight := newWanted(hull.Section{Half: curve.Chain{curve.Straight(100)}}, nil)
	bent := curve.Chain{curve.Turned(1000, 0.05), curve.Turned(1000, 0.045)}
	out, in := straight.measure(bent.Walk(), func(float64) {})
	near(t, "inside a straight run", in.By, 1000*(1-math.Cos(0.095)), 1e-9)
	near(t, "where", in.At, 1000*math.Sin(0.095), 1e-9)
	near(t, "outside", out.By, 0, 0)
	arc := newWanted(hull.Section{Half: curve.Chain{curve.Straight(50), curve.Turned(200, math.Pi/2)}}, nil)
	out, in = arc.measure(curve.Chain{curve.Straight(50), curve.Straight(100)}.Walk(), func(float64) {})
	near(t, "outside an arc", out.By, math.Hypot(200, 100)-200, 1e-9)
	near(t, "where", out.At, 50+200*math.Atan2(100, 200), 1e-9)
	soon, _ := arc.measure(curve.Chain{curve.Straight(50), curve.Straight(15)}.Walk(), func(float64) {})
	near(t, "soon after a joint", soon.By, math.Hypot(200, 15)-200, 1e-9)
	if out.Bend != 1 || in.By != 0 {
		t.Errorf("outside at bend %d, inside by %g", out.Bend, in.By)
	}
	if h := (Head{Out: out, In: Apart{By: 1}}); h.Off() != out {
		t.Error("off is not the greater")
	}
}

// TestMoved compares a mark's way with the places that it lies between.
func TestMoved(t *testing.T) {
	w := newWanted(section(t, 386, 310, 17, 120, 9, 0), []float64{0.25, 1})
	h := w.pushedIn(newYield(arcs)).Hinged
	is, _ := h.Half.At(w.length / 4)
	was, _ := w.Half.At(w.length / 4)
	near(t, "a quarter of the way", h.Moved[0], is.Sub(was).Norm(), 1e-9)
	near(t, "the head stays", h.Moved[1], 0, 1e-6)
}

// TestNoRest: a rib too short for its place, and one that would have to turn all at once
// by the keel, get words and no curve.
func TestNoRest(t *testing.T) {
	s := section(t, 386, 310, 17, 120, 9, 0)
	s.HalfBreadth, s.Depth = 500, 400
	for _, c := range []struct {
		s     hull.Section
		words string
	}{
		{s, "half of it is 588.3 mm long and its heads stand 640.3 mm from the keel"},
		{section(t, 83.26, 391.93, 5.1955, 175.373, 11.974, 0), "no even bend"},
	} {
		r := newWanted(c.s, nil).pushedIn(newYield(arcs))
		if r.Why == nil || !strings.Contains(r.Why.Error(), c.words) || r.Hinged.Half != nil {
			t.Errorf("got %v, want %q", r.Why, c.words)
		}
	}
}

// TestOdd goes through odd sections: wherever half a rib is 3 % longer than the straight
// way to its head there is a rest, it keeps what it must, and it stores less than the
// section.
func TestOdd(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 5))
	for tried := 0; tried < 1000; {
		shape := hull.Shape{BottomTurn: 0.8 * r.Float64(), BilgeRadius: 30 + 200*r.Float64(), Flare: 0.8 * (r.Float64() - 0.35), TopsideCurve: math.Max(0, 0.6*(r.Float64()-0.5))}
		if r.IntN(8) == 0 {
			shape.BottomTurn = 0
		}
		s, err := hull.Solve(20+500*r.Float64(), 40+500*r.Float64(), shape)
		if err != nil || s.Half.Length() < 1.03*math.Hypot(s.HalfBreadth, s.Depth) {
			continue
		}
		tried++
		got := newWanted(s, []float64{0.3}).pushedIn(newYield(arcs))
		if got.Why != nil {
			t.Fatalf("%+v: %v", s, got.Why)
		}
		for _, h := range []Head{got.Hinged, got.Clamped} {
			kept(t, "odd", h, s)
			if e := energy(h.Half); !(e < energy(s.Half)*1.01) || !(h.Least > 0) || !(h.Off().By >= 0) {
				t.Errorf("%+v stores %.4g for %.4g, least radius %g, off %g", s, e, energy(s.Half), h.Least, h.Off().By)
			}
		}
	}
}

func BenchmarkOf(b *testing.B) {
	f, w := frametest.Shipped(b, "river", nil), wood(b, "white ash")
	for b.Loop() {
		Of(f, w)
	}
}
