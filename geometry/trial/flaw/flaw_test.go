package flaw

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/solid"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/water/float"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.9g, want %.9g", what, got, want)
	}
}

func given(t *testing.T, f *frame.Frame, fault Fault) *Moved {
	t.Helper()
	m, err := New(f, fault)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// quarter is a frame whose ribs are half circles of a radius, 100 mm apart, as far as
// the shape of ribs goes.
func quarter(radius float64, ribs int) *frame.Frame {
	f := &frame.Frame{}
	for i := range ribs {
		half := curve.Chain{curve.Turned(radius, math.Pi/2)}
		f.Ribs = append(f.Ribs, frame.Rib{Station: 100 * float64(i-ribs/2), Thickness: 6, Section: hull.Section{HalfBreadth: radius, Depth: radius, Half: half}})
	}
	return f
}

// TestBulge: on a quarter circle the bulge is 16 t2 (1-t)2, so at half way it is all of
// its size along 45 degrees, at a quarter of the way 9/16 of it. A rib that bulges to the
// first order grows by the size times pi/2 times the mean of that, 16 B(3,3) = 8/15.
func TestBulge(t *testing.T) {
	const radius, size = 300.0, 9.0
	f := quarter(radius, 5)
	m := &Moved{fault: Fault{Proud, size, 2}, f: f, bulge: bulgeOf(f.Ribs[2])}
	for _, side := range []float64{1, -1} {
		p := m.Rib(2, side, 0.5)
		near(t, "bilge, out", p.Y, side*size*math.Sqrt2/2, 1e-9)
		near(t, "bilge, down", p.Z, -size*math.Sqrt2/2, 1e-9)
		p = m.Rib(2, side, 0.25)
		near(t, "a quarter on, out", p.Y, side*size*9/16*math.Sin(math.Pi/8), 1e-9)
		near(t, "a quarter on, down", p.Z, -size*9/16*math.Cos(math.Pi/8), 1e-9)
	}
	for _, share := range []float64{0, 1} {
		near(t, "an end", m.Rib(2, 1, share).Norm(), 0, 1e-12)
	}
	near(t, "its neighbor", m.Rib(3, 1, 0.5).Norm(), 0, 0)
	near(t, "longer", (m.girth(0.01)-m.girth(-0.01))/0.02, math.Pi/2*8/15, 1e-4)
	m.fault.Kind = OneSide
	near(t, "one side, port", m.Rib(2, 1, 0.5).Y, size*math.Sqrt2/2, 1e-9)
	near(t, "one side, starboard", m.Rib(2, -1, 0.5).Y, size*math.Sqrt2/2, 1e-9) // its flat half comes in, to port
	near(t, "one side, starboard up", m.Rib(2, -1, 0.5).Z, size*math.Sqrt2/2, 1e-9)
}

// TestPeak: the bulge is 1 at the middle of the tightest bend and nowhere more, and
// leaves both ends level.
func TestPeak(t *testing.T) {
	for _, name := range design.ShippedNames() {
		for _, r := range frametest.Shipped(t, name, nil).Ribs {
			u := bulgeOf(r)
			near(t, r.Name, u.at(u.peak), 1, 1e-12)
			for k := range 101 {
				if v := u.at(float64(k) / 100); v > 1 || v < 0 {
					t.Errorf("%s, %s: the bulge is %g at %d hundredths", name, r.Name, v, k)
				}
			}
			near(t, r.Name+" at the keel", u.at(1e-4), 0, 1e-6)
			near(t, r.Name+" at the head", u.at(1-1e-4), 0, 1e-6)
		}
	}
}

// TestStringerOverProudRib: over one pin of an even row that stands up by 1 the natural
// spline is 0.6005 half way to the next, and in the bay after that at the deepest -0.1364.
// Its second derivatives go down by 3^(1/2) - 2 from pin to pin (any text on splines);
// with them from the equations at the pin and beside it, -4.392 and 2.785 over the bay
// squared, the cubic gives both.
func TestStringerOverProudRib(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		n := len(f.Ribs)/2 + 2
		m := given(t, f, Fault{Proud, 12, n})
		for k, s := range f.Stringers {
			r := f.Ribs[n]
			share := r.Stringers[k] / r.Section.Half.Length()
			full := m.bulge.at(share) * 12
			for _, side := range []float64{1, -1} {
				near(t, name+" at the rib", m.Stringer(k, side, r.Station).Norm(), full, 1e-9)
				near(t, name+" half way", m.Stringer(k, side, r.Station+(f.Ribs[n+1].Station-r.Station)/2).Norm()/full, 0.6005, 1e-3)
				near(t, name+" at the next rib", m.Stringer(k, side, f.Ribs[n+1].Station).Norm(), 0, 1e-9)
			}
			near(t, name+" hollow", m.hollow(s.Number), 0.1364, 1e-3)
			near(t, name+" port and starboard", m.Stringer(k, 1, r.Station).Y, -m.Stringer(k, -1, r.Station).Y, 1e-12)
		}
		if m.Keel(f.Ribs[n].Station) != (geometry.Point3{}) || m.Gunwale(1, f.Ribs[n].Station) != (geometry.Point3{}) {
			t.Errorf("%s: a rib that bulges moves keel or gunwale", name)
		}
	}
}

// TestWave: the keel is 0, up, 0, down from the rib in the middle forward and as drawn at
// the ends of the row, in short rows too; heads stay.
func TestWave(t *testing.T) {
	for _, c := range []struct {
		n    int
		want []float64
	}{{3, []float64{-1, 0, 1}}, {5, []float64{0, -1, 0, 1, 0}}, {9, []float64{0, 0, 0, -1, 0, 1, 0, 0, 0}}, {11, []float64{0, 0, 1, 0, -1, 0, 1, 0, -1, 0, 0}}} {
		for i := range c.n {
			near(t, "wave", wave(i, c.n), c.want[i], 0)
		}
	}
	f := frametest.Shipped(t, "river", nil)
	m := given(t, f, Fault{Wavy, 6, 0})
	i := len(f.Ribs)/2 + 1
	for _, side := range []float64{1, -1} {
		near(t, "keel", m.Rib(i, side, 0).Z, 6, 1e-12)
		near(t, "half way", m.Rib(i, side, 0.5).Z, 3, 1e-12)
		near(t, "head", m.Rib(i, side, 1).Norm(), 0, 1e-12)
	}
	near(t, "the keel's stick", m.Keel(f.Ribs[i].Station).Z, 6, 1e-9)
	near(t, "its toe", m.Keel(f.Hull.Bow.Toe.X).Z, 0, 0.5)
}

// TestAside: gunwales shift to one side as a stick pinned at its ends: all at midship,
// 11/16 half way out, nothing at the ends, and both alike.
func TestAside(t *testing.T) {
	f := frametest.Shipped(t, "lake", nil)
	m := given(t, f, Fault{Aside, 8, 0})
	aft, fore := f.Gunwale.Line.Ends()
	for _, side := range []float64{1, -1} {
		for x, want := range map[float64]float64{0: 8, fore / 2: 5.5, aft / 2: 5.5, fore: 0, aft: 0} {
			near(t, "gunwale", m.Gunwale(side, x).Y, want, 0.01) // the spline goes through the ribs, whose places are these
		}
		near(t, "head", m.Rib(3, side, 1).Y, m.Gunwale(side, f.Ribs[3].Station).Y, 1e-9)
		near(t, "keel", m.Rib(3, side, 0).Norm(), 0, 0)
	}
}

// TestTwist: every place keeps its distance from the line that it turns about and from
// its neighbors in its own section; bow and stern are turned by half of the angle each.
func TestTwist(t *testing.T) {
	f := frametest.Shipped(t, "brook", nil)
	const angle = 0.05
	m := given(t, f, Fault{Twist, angle, 0})
	mid := f.Hull.Depth / 2
	for _, x := range []float64{-f.Hull.Length / 2, -500, 0, f.Hull.Length / 2} {
		for _, q := range []geometry.Point{{X: 300, Y: 250}, {X: -300, Y: 40}} {
			p := geometry.Point3{X: x, Y: q.X, Z: q.Y}
			is := p.Add(m.turned(p))
			near(t, "reach", math.Hypot(is.Y, is.Z-mid), math.Hypot(p.Y, p.Z-mid), 1e-9)
			turn := math.Atan2(is.Z-mid, is.Y) - math.Atan2(p.Z-mid, p.Y)
			near(t, "turn", math.Remainder(turn, 2*math.Pi), angle*x/f.Hull.Length, 1e-9)
		}
	}
	r := f.Ribs[2]
	along := r.Section.Half.Length()
	head := r.Face(along, 0)
	p := geometry.Point3{X: r.Station, Y: -head.X, Z: head.Y}
	near(t, "a rib's head", m.Rib(2, -1, 1).Sub(m.turned(p)).Norm(), 0, 1e-9)
	near(t, "the gunwale there", m.Gunwale(-1, r.Station).Sub(m.turned(p)).Norm(), 0, 1e-6)
}

// TestTouches: a rib that is not proud is as near to the cloth as the exact measure has
// it; where it touches, it is at the cloth, and a little more is through it.
func TestTouches(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		for n := 0; n < len(f.Ribs); n += 4 {
			r := f.Ribs[n]
			m := given(t, f, Fault{Proud, 0, n})
			is := skin.ProudAt(f, r).By
			near(t, name+" "+r.Name, m.outside(), is, 0.02)
			touch := m.touches()
			switch {
			case is > 0.02 && touch > 0.01:
				t.Errorf("%s, %s is proud of the cloth as drawn and touches at %g", name, r.Name, touch)
			case is < -0.02 && !math.IsInf(touch, 1):
				near(t, name+" "+r.Name+" where it touches", m.sized(touch).outside(), 0, 1e-6)
				near(t, name+" "+r.Name+" off the stringers", offCloth(t, f, n, touch), 0, 0.1)
				if m.sized(touch+0.5).outside() <= 0 {
					t.Errorf("%s, %s is free again past where it touches", name, r.Name)
				}
			}
		}
	}
}

// offCloth is how far the outer face of a rib that is proud stands outside the lines from
// each stringer, where it is tied now, to the next, mm.
func offCloth(t *testing.T, f *frame.Frame, n int, size float64) float64 {
	t.Helper()
	m, r := given(t, f, Fault{Proud, size, n}), f.Ribs[n]
	corners := f.Corners(r)
	for k := range f.Stringers {
		by := m.Stringer(k, 1, r.Station)
		for c := 2 + 2*k; c < 4+2*k; c++ {
			corners[c] = corners[c].Add(geometry.Pt(by.Y, by.Z))
		}
	}
	worst := math.Inf(-1)
	const looks = 300
	for k := range looks + 1 {
		share := float64(k) / looks
		by := m.Rib(n, 1, share)
		p := r.Face(share*r.Section.Half.Length(), r.Thickness/2).Add(geometry.Pt(by.Y, by.Z))
		for c := 1; c+1 < len(corners)-1; c += 2 {
			a, b := corners[c], corners[c+1]
			if way := b.Sub(a); p.Sub(a).Dot(way) > 0 && b.Sub(p).Dot(way) > 0 {
				worst = math.Max(worst, -way.Cross(p.Sub(a))/way.Norm())
			}
		}
	}
	return worst
}

// TestHeels: one rib of a quarter circle all under water that is full to port by w and
// flat to starboard moves the buoyancy aside by 2 R2 times the integral of w(a) sin(a) da
// over the quarter, times the bay, over the volume; the rib's face lies half a thickness
// out. Integrated here by Simpson's rule; the metacentric height rights it.
func TestHeels(t *testing.T) {
	const radius, size, volume, gm, bay = 300.0, 8.0, 1.2e8, 150.0, 100.0
	f := quarter(radius, 5)
	m := &Moved{fault: Fault{OneSide, size, 2}, f: f, bulge: bulgeOf(f.Ribs[2])}
	sum := 0.0
	const n = 1000
	for k := range n + 1 {
		c := 2.0
		if k%2 == 1 {
			c = 4
		}
		if k == 0 || k == n {
			c = 1
		}
		share := float64(k) / n
		sum += c / (3 * n) * 16 * share * share * (1 - share) * (1 - share) * math.Sin(share*math.Pi/2)
	}
	moment := 2 * size * sum * (radius + 3) * radius * math.Pi / 2 * bay
	got := heels(m, &float.Hydrostatics{Volume: volume, GM: gm, Plane: float.Level(2 * radius)})
	near(t, "heels", got, math.Atan(moment/volume/gm), 2e-3*got)
	near(t, "out of the water", heels(m, &float.Hydrostatics{Volume: volume, GM: gm, Plane: float.Level(-10)}), 0, 0)
	m.fault.Kind = Proud
	near(t, "both sides alike", heels(m, &float.Hydrostatics{Volume: volume, GM: gm, Plane: float.Level(2 * radius)}), 0, 1e-12)
	for _, rest := range []*float.Hydrostatics{nil, {Volume: volume, GM: -5}} {
		if v := heels(m, rest); !math.IsNaN(v) {
			t.Errorf("without a rest it leans by %g", v)
		}
	}
}

// TestLooks: for odd boats too every look has its eye off the boat, both boats as many
// lines, and places that are numbers.
func TestLooks(t *testing.T) {
	odd := map[string]func(*design.Design){
		"as it is":     nil,
		"one stringer": func(d *design.Design) { d.Stringers.At = []float64{0.5} },
		"bare":         func(d *design.Design) { d.Thwarts = nil },
		"few ribs":     func(d *design.Design) { d.Ribs.Pitch *= 3 },
	}
	for _, name := range design.ShippedNames() {
		for what, change := range odd {
			f := frametest.Shipped(t, name, change)
			b, err := aboard.New(f, f.Design.Crew, f.Design.Gear)
			if err != nil {
				t.Fatal(err)
			}
			l := b.Load()
			p, _, err := b.Hull.Settle(l, 1000)
			if err != nil {
				t.Fatal(err)
			}
			rest := b.Hull.Upright(p, l, 1000)
			r, err := Of(f, &rest)
			if err != nil {
				t.Errorf("%s, %s: %v", name, what, err)
				continue
			}
			for _, k := range r.Looks {
				if k.Eye.At.X <= f.Hull.Bow.Tip() {
					t.Errorf("%s, %s: the eye stands in the boat, at %v", name, what, k.Eye.At)
				}
				if len(k.Fair.Lines) != len(k.Faulty.Lines) || len(k.Fair.Faces) != len(k.Faulty.Faces) {
					t.Errorf("%s, %s: fault %d changes what there is of the boat", name, what, k.Fault.Kind)
				}
				// By the heel alone a tender boat would look worse than it is built.
				if off := rest.GM * math.Sin(k.Heels); !(off >= 0 && off < 4) {
					t.Errorf("%s, %s: fault %d leans it by %g degrees, which moves its buoyancy %.1f mm aside", name, what, k.Fault.Kind, k.Heels*180/math.Pi, off)
				}
				finite(t, name+", "+what, k.Faulty)
			}
		}
	}
}

func finite(t *testing.T, what string, b *solid.Boat) {
	t.Helper()
	for _, l := range b.Lines {
		for _, p := range l.Points {
			if !geometry.Finite(p.X + p.Y + p.Z) {
				t.Fatalf("%s: %v is no place", what, p)
			}
		}
	}
}

// TestNoSuchRib: a fault of a rib that is not there is refused.
func TestNoSuchRib(t *testing.T) {
	f := frametest.Shipped(t, "brook", nil)
	for _, n := range []int{-1, len(f.Ribs)} {
		if _, err := New(f, Fault{Proud, 1, n}); err == nil {
			t.Errorf("rib %d is taken", n)
		}
	}
}
