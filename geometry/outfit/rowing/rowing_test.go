package rowing

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/water"
	"ribwright/geometry/wood/timber"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %.4f, want %.4f within %g", what, got, want, tol)
	}
}

// TestOarMaker has the oar maker's rule as printed: inboard half the span and 2 in,
// 25/7 of that the oar; 48 in gives 92.86 in and 52 in gives 100.00 in, worked on
// two pages on rowing. The others follow from the formula.
func TestOarMaker(t *testing.T) {
	for _, c := range []struct{ span, inboard, length float64 }{
		{48, 26, 92.86}, {52, 28, 100.00}, {42, 23, 82.14}, {46, 25, 89.29}, {50, 27, 96.43},
	} {
		o := ForSpan(c.span * 25.4)
		near(t, "inboard, in", o.Inboard/25.4, c.inboard, 1e-9)
		near(t, "oar, in", o.Length/25.4, c.length, 0.01)
		near(t, "leverage", o.Leverage(), 7.0/18, 1e-12)
		near(t, "overlap, in", o.Overlap(c.span*25.4)/25.4, 4, 1e-9)
	}
	// The maker's other table, in cm, rounded down there to whole ones.
	for span, cm := range map[float64]float64{36: 163, 40: 181, 48: 218, 54: 245, 60: 272} {
		near(t, "short oar, cm", Short(span*25.4).Length/10, cm, 1)
	}
}

// TestLock: the handle, the rowlock and the blade hold the oar in balance; moments
// about the blade give the force on the rowlock.
func TestLock(t *testing.T) {
	o := ForSpan(1219.2)
	near(t, "moments about the blade", o.AtLock(200)*o.Outboard(), 200*o.Length, 1e-6)
	near(t, "times the pull", o.AtLock(1), 25.0/18, 1e-12)
}

// TestMedians: the lines reproduce the medians of ANSUR II (US Army 2012) to their
// own scatter of one standard deviation.
func TestMedians(t *testing.T) {
	for _, c := range []struct {
		body                                                    design.Body
		sitting, buttockKnee, popliteal, knee, thigh, hip, sill float64
	}{
		{design.Woman, 857, 589, 387, 510, 167, 397, 563},
		{design.Man, 918, 617, 430, 553, 180, 378, 602},
	} {
		b := BodyOf(c.body, 0, 0)
		near(t, "sitting height", b.Sitting, c.sitting, 21)
		near(t, "buttock-knee", b.ButtockKnee, c.buttockKnee, 18)
		near(t, "popliteal height", b.Popliteal, c.popliteal, 13)
		near(t, "knee height", b.Knee, c.knee, 13)
		near(t, "thigh clearance", b.Thigh, c.thigh, 8)
		near(t, "hip breadth", b.Hip, c.hip, 14)
		near(t, "shoulder over the seat", b.Shoulder, c.sill, 21) // sitting height less stature less acromial height
	}
}

// TestLegs: the two links keep their lengths, and the average of the two medians
// reaches as far as rowers say, 36 to 40 in from the seat's back with the heels 6
// to 8 in down.
func TestLegs(t *testing.T) {
	sum := 0.0
	for _, kind := range []design.Body{design.Woman, design.Man} {
		b := BodyOf(kind, 0, 0)
		l := b.Stretched(180)
		half := (b.Knee - b.Popliteal) / 2
		kneeY := l.KneeTop - half - b.Thigh/2 // over the hip joint
		thigh := b.ButtockKnee - hipAhead - half
		kneeX := math.Sqrt(thigh*thigh - kneeY*kneeY)
		shank := math.Hypot(l.Heel-hipAhead-kneeX, kneeY+b.Thigh/2+180)
		near(t, "shank", shank, b.Popliteal+half, 1e-6)
		if l2 := b.Stretched(60); l2.Heel <= l.Heel {
			t.Errorf("heels higher up reach %.0f mm, lower down %.0f", l2.Heel, l.Heel)
		}
		sum += l.Heel / 2
	}
	if in := sum / 25.4; in < 36 || in > 40 {
		t.Errorf("the average median reaches %.1f in, want 36 to 40", in)
	}
}

// TestBear: the portal of two bars is in balance: the moment of the pull about the
// gunwale equals what the roots bend and what push and tie make.
func TestBear(t *testing.T) {
	o := ForSpan(1219.2)
	s := bear(o, 1219.2, 819.2, 280, 250, 45, 20, timber.Species{MOE: 10000, MOR: 80})
	near(t, "reach", s.Reach, 200, 1e-9)
	// By hand: P 347.22 N, reach 200. Roots 2 x (173.61 x 100), push and tie
	// 124.008 N over 280 mm: 34722 + 34722 = 347.22 x 200.
	root := s.AtLock / 2 * s.Reach / 2
	push := s.AtLock * s.Reach / 2 / 280
	near(t, "moments", 2*root+push*280, s.AtLock*s.Reach, 1e-6)
	near(t, "flat", s.Flat, root/(20*45*45/6.0)+push/900, 1e-9)
	// Down: 0.6 x 347.22 / 2 = 104.17 N on 200 mm: 20833 N mm over 45 x 20^2 / 6 = 3000.
	near(t, "upright", s.Upright, 104.1667*200/3000, 1e-3)
	// A beam on two rests with a load on each end beyond: P a2 w / 2 E I + P a3 / 3 E I.
	ei := 10000.0 * 45 * 20 * 20 * 20 / 12
	near(t, "sag", s.Sag, 104.1667*200*200*819.2/2/ei+104.1667*200*200*200/3/ei, 1e-3)
	// The four clips along the boat with one oar: force and couple.
	near(t, "clip", s.Clip*2, s.AtLock*(0.5+609.6/819.2), 1e-9)
	weaker := bear(o, 1219.2, 819.2, 280, 500, 45, 20, timber.Species{MOE: 10000, MOR: 80})
	near(t, "twice the pull", weaker.Flat/s.Flat, 2, 1e-9)
}

func boat(t *testing.T, name string) aboard.Boat {
	t.Helper()
	f := frametest.Shipped(t, name, nil)
	b, err := aboard.New(f, nil, f.Design.Gear)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func fresh(t *testing.T) water.Water {
	t.Helper()
	w, err := water.At(water.Fresh, 15)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// TestFit: the boat floats level under the rower it is fitted to, the blades reach
// the water, and both oars are the rule's.
func TestFit(t *testing.T) {
	for _, name := range design.ShippedNames() {
		b := boat(t, name)
		for _, body := range []design.Body{design.Woman, design.Man} {
			r := b.Frame.Design.Row()
			r.Body = body
			f, err := New(b, r, fresh(t))
			if err != nil {
				t.Fatal(err)
			}
			near(t, name+": trim over the waterline, mm", math.Tan(f.Rest.Trim)*f.Rest.LWL, 0, 2)
			near(t, name+": oar, in", f.Oar.Length/25.4, 92.857, 0.001)
			if !f.Reaches || f.Level.Drive <= f.Level.Recover || f.HighSide.Slope <= f.Level.Slope {
				t.Errorf("%s: the handles go %+v, %+v", name, f.Level, f.HighSide)
			}
			// Pythagoras of the oar with the blade in: its tip lies 150 mm under water.
			tip := f.WaterLock - f.Oar.Outboard()*math.Sin(f.Level.Slope)
			near(t, name+": the tip under water", tip, -150, 1e-6)
			if math.Max(f.Strength.Flat, f.Strength.Upright) > f.Strength.Working {
				t.Errorf("%s: the frame carries %+v", name, f.Strength)
			}
			if len(f.Ranges) < 8 || len(f.Findings) < 6 {
				t.Errorf("%s: %d ranges and %d notes", name, len(f.Ranges), len(f.Findings))
			}
			for _, g := range f.Ranges {
				if g.Source == "" || !(g.Low < g.High) {
					t.Errorf("%s has no source or no range", g.Name)
				}
			}
		}
	}
}

// TestNotAfloat: nothing that depends on the water is found of a boat that does not
// float upright under its rower: 200 kg far forward, which no trim brings buoyancy under, and on a
// seat in the middle.
func TestNotAfloat(t *testing.T) {
	b := boat(t, "brook")
	for _, at := range []float64{1000, 110} {
		r := b.Frame.Design.Row()
		r.Mass, r.SeatAt = 200, measure.Length(at)
		f, err := New(b, r, fresh(t))
		if err != nil {
			t.Fatal(err)
		}
		if f.Fault == nil {
			t.Fatalf("floats with the seat at %.0f mm: this shows nothing", at)
		}
		for _, n := range f.Findings {
			if n.About == "trim" || n.About == "blades" || strings.HasPrefix(n.Text, "the hands pass") {
				t.Errorf("%s: %s", n.About, n.Text)
			}
		}
	}
}

// TestRefused has what cannot be rowed.
func TestRefused(t *testing.T) {
	b := boat(t, "lake")
	for _, c := range []struct {
		name   string
		change func(r *design.Row)
	}{
		{"a span inside the gunwales", func(r *design.Row) { r.Span = 780 }},
		{"oars shorter than the span", func(r *design.Row) { r.Oar = 1100 }},
		{"oars shorter than twice the inboard part", func(r *design.Row) { r.Oar = 1300 }},
		{"rowlocks past the last rib", func(r *design.Row) { r.SeatAt = -1200 }},
		{"a wood that nobody knows", func(r *design.Row) { r.Species = "tin" }},
	} {
		r := b.Frame.Design.Row()
		c.change(&r)
		if f, err := New(b, r, fresh(t)); err == nil {
			t.Errorf("%s is accepted: %+v", c.name, f.Oar)
		}
	}
}
