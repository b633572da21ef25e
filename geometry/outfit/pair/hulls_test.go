package pair

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/water/float"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %.6f, want %.6f within %g", what, got, want, tol)
	}
}

// box is a box of length, breadth and depth, mm.
func box(t *testing.T, long, wide, deep float64) *float.Hull {
	t.Helper()
	var at []float.Station
	for i := range 5 {
		at = append(at, float.Station{X: long * (float64(i)/4 - 0.5), Half: []geometry.Point{{X: wide / 2}, {X: wide / 2, Y: deep}}})
	}
	h, err := float.New(at)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// parabolic is the parabolic hull of the tank, y = B/2 (1 - (2x/L)^2)(1 - (d/T)^2),
// with upright sides over the water.
func parabolic(t *testing.T, long, wide, deep, side float64) *float.Hull {
	t.Helper()
	var at []float.Station
	const n = 40
	for i := range n + 1 {
		x := long * (float64(i)/n - 0.5)
		u := 2 * x / long
		var half []geometry.Point
		for j := range 81 {
			d := 1 - float64(j)/80
			half = append(half, geometry.Point{X: wide / 2 * (1 - u*u) * (1 - d*d), Y: deep * (1 - d)})
		}
		half = append(half, geometry.Point{X: wide / 2 * (1 - u*u), Y: deep + side})
		at = append(at, float.Station{X: x, Half: half})
	}
	h, err := float.New(at)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// TestTwoBoxes: BM of two boxes is (b2/12 + s2/4)/T: b 0.5, T 0.2, s 2 m gives
// 5.104167 m; two boxes at plus and minus 2.5 b give 19 b2 / 3 T.
func TestTwoBoxes(t *testing.T) {
	b := box(t, 4000, 500, 400)
	for _, c := range []struct{ s, t, want float64 }{{2000, 200, 5104.1667}, {2500, 150, 19 * 500 * 500 / (3 * 150.0)}} {
		h := NewHulls(b, b, c.s, 0)
		p := float.Level(c.t)
		i, _ := h.Inertia(p)
		near(t, "BM", i/h.immerse(p).volume, c.want, 1e-3)
		one := b.Immerse(p)
		near(t, "inertia", i, 2*(one.AcrossInertia()+one.Area*c.s*c.s/4), 1e-9*i)
	}
}

// TestTwoParabolas: BM = 3 B2 / 35 T + 3 s2 / 8 T.
func TestTwoParabolas(t *testing.T) {
	hull := parabolic(t, 4800, 720, 120, 200)
	h := NewHulls(hull, hull, 2400, 0)
	p := float.Level(120)
	i, _ := h.Inertia(p)
	want := 3*720*720/(35*120.0) + 3*2400*2400/(8*120.0)
	near(t, "BM over its closed form", i/h.immerse(p).volume/want, 1, 5e-4)
}

// TestBoxesHeel follows two boxes through the exact statics. With both in the water
// and no bilge out, each is a parallelogram at its own draft T + y tan p; past the
// lift one box carries all, its buoyancy at b2 tan p / 12 T and T/2 + b2 tan2 p /
// 24 T of its own axes.
func TestBoxesHeel(t *testing.T) {
	const long, b, deep, s, density, kg = 4000.0, 500.0, 900.0, 2000.0, 1000.0, 300.0
	hull := box(t, long, b, deep)
	h := NewHulls(hull, hull, s, 0)
	const draft = 200.0
	mass := 2 * long * b * draft * density * 1e-9
	l := float.Load{Mass: mass, At: geometry.Point3{Z: kg}}
	for _, deg := range []float64{1, 3, 5} {
		tan := math.Tan(deg * math.Pi / 180)
		sin, cos := math.Sincos(deg * math.Pi / 180)
		// Small enough that neither bilge leaves the water: tan (s/2 + b/2) < T.
		y := (b*b/12 + s*s/4) * tan / draft
		z := draft/2 + (b*b/12+s*s/4)*tan*tan/2/draft
		want := y*cos + (z-kg)*sin
		v, err := h.righting(l, density, deg*math.Pi/180, toStarboard, float.Plane{})
		if err != nil {
			t.Fatal(err)
		}
		if (s+b)/2*tan < draft {
			near(t, "GZ with both in the water", v.GZ, want, 1e-3)
		}
	}
	// One box alone, at 2 T, at 20 degrees; its bilge stays in: tan 20 x b/2 = 91.
	tan := math.Tan(20 * math.Pi / 180)
	sin, cos := math.Sincos(20 * math.Pi / 180)
	two := 2 * draft
	y, z := s/2+b*b*tan/(12*two), two/2+b*b*tan*tan/(24*two)
	v, err := h.righting(l, density, 20*math.Pi/180, toStarboard, float.Plane{})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "GZ on one hull", v.GZ, y*cos+(z-kg)*sin, 1e-2)
	if v.Share != 0 {
		t.Errorf("the windward hull still carries %g", v.Share)
	}
}

// TestCap: the lever never passes half the spacing and half a beam, however large
// GM is, and the lift comes near tan p = 2 T / s.
func TestCap(t *testing.T) {
	const b, s, draft = 500.0, 2000.0, 150.0
	hull := box(t, 4000, b, 700)
	h := NewHulls(hull, hull, s, 0)
	mass := 2 * 4000 * b * draft * 1e-6
	c, err := h.Curve(float.Load{Mass: mass, At: geometry.Point3{Z: 300}}, 1000, math.Pi/180)
	if err != nil {
		t.Fatal(err)
	}
	p := float.Level(draft)
	i, _ := h.Inertia(p)
	gm := i/h.immerse(p).volume + draft/2 - 300
	for _, v := range c.Levers {
		if v.GZ > s/2+b/2 {
			t.Errorf("GZ %.0f mm at %.0f deg passes %.0f", v.GZ, v.Heel*180/math.Pi, s/2+b/2)
		}
	}
	if over := gm * math.Sin(20*math.Pi/180); over < 1.5*c.Most.GZ {
		t.Errorf("GM would give %.0f mm at 20 deg, the curve's most is %.0f: this test shows nothing", over, c.Most.GZ)
	}
	// All the weight on one box of twice the draft: the windward bilge leaves when
	// tan p (s + b/2 x (inner bilge)) = 2 T within the box's own breadth.
	near(t, "lift, tan p times s over 2 T", math.Tan(c.Lift)*s/(2*draft), 1, 0.2)
	if !(c.Lift < c.Flooded) {
		t.Errorf("lift at %g, flooded at %g", c.Lift, c.Flooded)
	}
	// To the other side the same.
	d, err := h.Curve(float.Load{Mass: mass, At: geometry.Point3{Z: 300}}, 1000, -math.Pi/180)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "most to port", d.Most.GZ, c.Most.GZ, 1e-3)
}

// TestUneven: upright, boxes 500 and 700 mm wide at one draft and 2 m apart hold 5/12
// and 7/12 of the whole, buoyed 1/6 m to starboard of the middle, where the weight
// is. So much rights them from starboard and as much is lacking to port.
func TestUneven(t *testing.T) {
	h := NewHulls(box(t, 4000, 500, 700), box(t, 4000, 700, 700), 2000, 0)
	l := float.Load{Mass: 4000 * 1200 * 150 * 1e-6, At: geometry.Point3{Z: 300}}
	for _, c := range []struct{ step, gz, share float64 }{{1, 500 / 3.0, 5 / 12.0}, {-1, -500 / 3.0, 7 / 12.0}} {
		curve, err := h.Curve(l, 1000, c.step*math.Pi/180)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "GZ upright", curve.Levers[0].GZ, c.gz, 1e-3)
		near(t, "windward share upright", curve.Levers[0].Share, c.share, 1e-6)
	}
}

// TestTrimmed: a load off midship trims the pair as BML says, and one off the
// middle lists it to that side.
func TestTrimmed(t *testing.T) {
	hull := box(t, 4000, 500, 700)
	h := NewHulls(hull, hull, 2000, 0)
	l := float.Load{Mass: 800, At: geometry.Point3{X: 20, Z: 300}}
	v, err := h.righting(l, 1000, 0, toStarboard, float.Plane{})
	if err != nil {
		t.Fatal(err)
	}
	// BML - BG = L2 / 12 T - (300 - 100) with T 200 mm.
	near(t, "trim", math.Tan(-v.Plane.Trim), 20/(4000*4000/12.0/200-200), 2e-5)
	l.At = geometry.Point3{Y: 30, Z: 300}
	r, err := h.list(l, 1000)
	if err != nil {
		t.Fatal(err)
	}
	bm := (500*500/12.0 + 2000*2000/4.0) / 200
	near(t, "list to port", -math.Tan(r.Heel), 30/(bm-200), 2e-4)
}

// TestSinks refuses what both hulls cannot hold.
func TestSinks(t *testing.T) {
	hull := box(t, 4000, 500, 300)
	h := NewHulls(hull, hull, 2000, 0)
	if _, err := h.Curve(float.Load{Mass: 1300, At: geometry.Point3{Z: 300}}, 1000, math.Pi/180); err == nil {
		t.Error("1300 kg float in hulls that hold 1200")
	}
}
