package float

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"ribwright/geometry"
)

// canoe is a parabolic hull of canoe proportions with flat topsides.
func canoe(t testing.TB) *Hull {
	return form{4800, 720, 300, wigley, nil}.hull(t, 41, 21, 0, even)
}

// TestSettleFaults has a load for each way of going wrong.
func TestSettleFaults(t *testing.T) {
	h := canoe(t)
	for _, c := range []struct {
		name string
		l    Load
		want Outcome
	}{
		{"more than the hull holds", Load{500, geometry.Point3{Z: 100}}, Sinks},
		{"far out on the bow", Load{120, geometry.Point3{X: 2300, Z: 100}}, Outside},
		{"forward, bow under", Load{250, geometry.Point3{X: 600, Z: 100}}, Swamps},
		{"high up", Load{120, geometry.Point3{Z: 900}}, Capsizes},
		{"far to port", Load{120, geometry.Point3{Y: 300, Z: 200}}, Capsizes},
	} {
		_, _, err := h.Settle(c.l, 1000)
		var f *Fault
		if !errors.As(err, &f) || f.Outcome != c.want {
			t.Errorf("%s: %v, want %v", c.name, err, c.want)
		}
	}
	for _, mass := range []float64{0, -3, math.NaN()} {
		if _, _, err := h.Settle(Load{Mass: mass}, 1000); err == nil {
			t.Errorf("a load of %g kg floats", mass)
		}
	}
}

// TestLean compares the heel of a weight moved aside in a round trough with the
// closed form: tan p = shift of the whole weight / distance under the axis.
func TestLean(t *testing.T) {
	var half []geometry.Point
	for i := range 301 {
		a := float64(i) / 300 * 2.2
		half = append(half, geometry.Point{X: 400 * math.Sin(a), Y: 400 - 400*math.Cos(a)})
	}
	h := trough(t, half...)
	l := Load{h.Immerse(Level(400)).Volume * 1e-6, geometry.Point3{Z: 300}}
	for _, y := range []float64{10, -10, 40, -40} {
		l.At.Y = y
		p, _, err := h.Settle(l, 1000)
		if err != nil {
			t.Fatal(err)
		}
		near64(t, "heel", p.Heel, -math.Atan(y/100), 1e-3)
	}
}

// TestTrim moves a weight along a box: tan trim = shift / GML. Closed form; B L
// and T of the box, KG at the keel.
func TestTrim(t *testing.T) {
	h := form{4000, 800, 400, barge, nil}.hull(t, 9, 2, 0, even)
	mass := 4000 * 800 * 120 * 1e-6
	gml := 60 + 4000*4000/(12*120.) - 50
	p, m, err := h.Settle(Load{mass, geometry.Point3{X: 100, Z: 50}}, 1000)
	if err != nil {
		t.Fatal(err)
	}
	near64(t, "volume", m.Volume, 4000*800*120, 1e-9)
	// Exact for a wall-sided box: the wedge moves the buoyancy by BML tan, and up
	// by half BML tan squared.
	tan := math.Tan(-p.Trim)
	near64(t, "trim", tan*(gml+(4000*4000/(12*120.))*tan*tan/2), 100, 1e-6)
}

// randomHull makes a hull that is new each time: length, beam, depth, ends and
// fullness at random within what is built.
func randomHull(t *testing.T, r *rand.Rand) *Hull {
	t.Helper()
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	l, b, d := between(2000, 6500), between(450, 1200), between(180, 500)
	full, power, flare := between(1, 4), between(0.2, 1.5), between(-0.15, 0.4)
	skew := between(-0.2, 0.2)
	var s []Station
	n := 21 + 2*r.IntN(20)
	for i := range n {
		u := 2*float64(i)/float64(n-1) - 1
		v := math.Min(1, math.Abs((u-skew)/(1-skew*math.Copysign(1, u-skew))))
		wide := b / 2 * (1 - math.Pow(v, full))
		keel := 60 * math.Pow(v, 6)
		sta := Station{X: u * l / 2}
		for k := range 11 {
			w := float64(k) / 10
			y := wide * math.Pow(w, power) * (1 + flare*w*w)
			sta.Half = append(sta.Half, geometry.Point{X: math.Max(0, y), Y: keel + (d+40*v*v-keel)*w})
		}
		s = append(s, sta)
	}
	h, err := New(s)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// TestAlwaysSettlesOrSaysWhy sets a thousand random hulls under random loads. A
// settled one must truly balance: weight equal to buoyancy, the buoyancy under
// the weight both ways, the sheer out of the water.
func TestAlwaysSettlesOrSaysWhy(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1883))
	outcomes := map[string]int{}
	for i := range 1000 {
		h := randomHull(t, r)
		aft, fore := h.Ends()
		l := Load{h.Holds() * 1e-6 * r.Float64() * 1.1, geometry.Point3{
			X: (fore - aft) / 2 * 0.4 * r.NormFloat64() * r.Float64(), Z: 100 + 500*r.Float64(),
		}}
		if r.IntN(3) == 0 {
			l.At.Y = 60 * r.NormFloat64()
		}
		p, m, err := h.Settle(l, 1000)
		var f *Fault
		if errors.As(err, &f) {
			outcomes[f.Outcome.String()]++
			if f.Text == "" {
				t.Errorf("hull %d: no reason is given", i)
			}
			continue
		}
		if err != nil {
			t.Fatalf("hull %d: %v", i, err)
		}
		outcomes["floats"]++
		b := m.Center()
		off := geometry.Point3{X: b.X - l.At.X, Y: b.Y - l.At.Y, Z: b.Z - l.At.Z}
		if math.Abs(m.Volume*1e-6/l.Mass-1) > 1e-9 || math.Abs(p.Ahead().Dot(off)) > 1e-5 || math.Abs(p.ToPort().Dot(off)) > 1e-4 {
			t.Errorf("hull %d: buoyancy %.6f kg of %.6f, out of line by %g mm along and %g mm across", i, m.Volume*1e-6, l.Mass, p.Ahead().Dot(off), p.ToPort().Dot(off))
		}
		if free := h.Freeboard(p).Least; free <= 0 {
			t.Errorf("hull %d: settled with the sheer %.1f mm under", i, -free)
		}
	}
	t.Log(fmt.Sprint(outcomes))
	for _, o := range []string{"floats", "sinks", "swamps", "capsizes", "load outside the hull"} {
		if outcomes[o] == 0 {
			t.Errorf("no hull %s: the loads do not cover it", o)
		}
	}
}

// TestInvariance: volume rises with draft, GZ is odd, and no dependence on the unit of length, over random
// hulls.
func TestInvariance(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 108))
	for range 60 {
		h := randomHull(t, r)
		last := 0.0
		for z := 1.0; z < 500; z += 7 {
			v := h.Immerse(Level(z)).Volume
			if v < last*(1-1e-12) {
				t.Fatalf("volume falls from %g to %g mm3 at a draft of %g mm", last, v, z)
			}
			last = v
		}
		l := Load{h.Holds() * 0.4e-6, geometry.Point3{Z: 250}}
		for _, deg := range []float64{3, 12, 31} {
			a, err1 := h.Righting(l, 1000, deg*degree, nil)
			b, err2 := h.Righting(l, 1000, -deg*degree, nil)
			if err1 != nil || err2 != nil || math.Abs(a.GZ+b.GZ) > 1e-6 {
				t.Fatalf("GZ %.9f mm at %g deg and %.9f mm to the other side (%v, %v)", a.GZ, deg, b.GZ, err1, err2)
			}
		}
		scaled(t, h, l)
	}
}

// scaled draws the hull in inches and asks the same.
func scaled(t *testing.T, h *Hull, l Load) {
	t.Helper()
	const k = 1 / 25.4
	var s []Station
	for i := range h.sections {
		st := Station{X: h.sections[i].x * k}
		for _, q := range h.sections[i].half {
			st.Half = append(st.Half, q.Scale(k))
		}
		s = append(s, st)
	}
	small, err := New(s)
	if err != nil {
		t.Fatal(err)
	}
	big := l
	l.At.Z *= k
	l.Mass *= k * k * k
	a, err1 := h.Righting(big, 1000, 10*degree, nil)
	b, err2 := small.Righting(l, 1000, 10*degree, nil)
	if err1 != nil || err2 != nil || math.Abs(a.GZ-b.GZ/k) > 1e-5 {
		t.Fatalf("GZ %.9f mm in mm and %.9f mm in inches (%v, %v)", a.GZ, b.GZ/k, err1, err2)
	}
}

// TestCapacity loads a box to a freeboard: closed form L B (D - f) less the boat.
func TestCapacity(t *testing.T) {
	h := form{4000, 800, 400, barge, nil}.hull(t, 9, 2, 0, even)
	boat, pay := Load{20, geometry.Point3{Z: 50}}, Load{100, geometry.Point3{Z: 50}}
	got := h.Capacity(boat, pay, 1000, 150) * pay.Mass
	near64(t, "load at 150 mm", got, 4000*800*250*1e-6-20, 1e-6)
	if k := h.Capacity(boat, pay, 1000, 399); k != 0 {
		t.Errorf("a freeboard that the empty boat does not leave gives %g", k)
	}
}

// TestLeanNearTheSheer: a load that leaves a box at rest less than a whole degree before its
// sheer dips, by the wall-sided formula GZ = sin(p) (GM + BM tan(p)^2 / 2), is found there.
func TestLeanNearTheSheer(t *testing.T) {
	const wide, deep, draft = 800.0, 300.0, 180.0 // the bilge stays under
	h := trough(t, geometry.Point{}, geometry.Point{X: wide / 2}, geometry.Point{X: wide / 2, Y: deep})
	mass := h.Immerse(Level(draft)).Volume * 1e-6
	dips := math.Atan((deep - draft) / (wide / 2)) // 16.70 deg
	rests := dips - 0.1*math.Pi/180
	bm := wide * wide / (12 * draft)
	gm := draft/2 + bm - 100
	for _, way := range []float64{-1, 1} {
		y := way * math.Tan(rests) * (gm + bm*math.Pow(math.Tan(rests), 2)/2)
		p, _, err := h.Settle(Load{mass, geometry.Point3{Y: y, Z: 100}}, 1000)
		if err != nil {
			t.Fatal(err)
		}
		near64(t, "heel, radians", p.Heel, -way*rests, 1e-6)
	}
	c, err := h.Curve(Load{mass, geometry.Point3{Z: 100}}, 1000, Fine)
	if err != nil {
		t.Fatal(err)
	}
	near64(t, "heel at which water comes in, radians", c.Flooding, dips, 1e-8)
}
