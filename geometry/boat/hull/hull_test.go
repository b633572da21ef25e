package hull

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

func shipped(t *testing.T, name string) *design.Design {
	t.Helper()
	d, err := design.Shipped(name)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func newHull(t *testing.T, d *design.Design) *Hull {
	t.Helper()
	h, err := New(d)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// TestOneSpreader holds the gunwales at midship only: a straight batten pinned
// at both ends and pushed out in the middle. Source: Timoshenko, Strength of
// Materials, beam on two supports with a load in the middle: y = D (3 u - 4 u^3)
// with u the share of the length, 0.6875 D at the quarter, end slope 3 D / L. That
// holds for slight bends, so the boat is made 40 mm wide: the slope's square is 8e-5.
func TestOneSpreader(t *testing.T) {
	d := shipped(t, "brook")
	d.Hull.Spreaders, d.Hull.Beam = nil, 40
	h := newHull(t, d)
	aft, fore := h.Gunwale.Ends()
	pin := float64(d.Bow.Siding) / 2
	deflection := float64(d.Hull.Beam)/2 - pin
	quarter := h.Gunwale.Point(aft + (fore-aft)/4).Y
	if want := pin + 0.6875*deflection; math.Abs(quarter-want) > 1e-4*deflection {
		t.Errorf("half-breadth at the quarter length %.9f mm, want %.9f", quarter, want)
	}
	slope, _ := h.Gunwale.Slopes(aft)
	if want := 3 * deflection / (fore - aft); math.Abs(slope-want) > 1e-4*want {
		t.Errorf("slope at the stem %.12f, want %.12f", slope, want)
	}
}

// TestNaturalSheer checks that a gunwale without edge-set lies in its tilted
// plane: every point satisfies z cos(tilt) + y sin(tilt) = constant. Source:
// geometry of a stick that bends about its weak axis only.
func TestNaturalSheer(t *testing.T) {
	d := shipped(t, "river")
	d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = 0, 0
	h := newHull(t, d)
	sin, cos := math.Sincos(float64(d.Gunwale.Tilt))
	mid := h.Gunwale.Point(0)
	want := mid.Z*cos + mid.Y*sin
	aft, fore := h.Gunwale.Ends()
	for x := aft; x <= fore; x += 10 {
		p := h.Gunwale.Point(x)
		if got := p.Z*cos + p.Y*sin; math.Abs(got-want) > 1e-9 {
			t.Fatalf("at station %.0f mm the gunwale leaves its plane by %.2e mm", x, got-want)
		}
	}
}

// TestEdgeSet checks rise, radius and strain of a parabola of edge-set: over a
// run c a rise e has the radius c^2/(2e), and the faces of a stick of height h
// strain by h/(2R). Source: elementary beam theory.
func TestEdgeSet(t *testing.T) {
	d := shipped(t, "brook")
	d.Gunwale.EdgeSetBow = 40
	d.Gunwale.EdgeSetAft = 40
	h := newHull(t, d)
	d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = 0, 0
	flat := newHull(t, d)
	run := h.Bow.GunwaleX - float64(d.Gunwale.EdgeSetFrom)
	if got, want := h.Sheer.BowSet.Radius(), run*run/80; math.Abs(got-want) > 1e-9*want {
		t.Errorf("radius %.6f mm, want %.6f", got, want)
	}
	if got, want := h.Sheer.BowSet.Strain(36), 18/(run*run/80); math.Abs(got-want) > 1e-15 {
		t.Errorf("strain %.9f, want %.9f", got, want)
	}
	if rise := h.Sheer.BowZ - flat.Sheer.BowZ; math.Abs(rise-40) > 1e-9 {
		t.Errorf("the bow rises by %.9f mm, want 40", rise)
	}
	if !math.IsInf(flat.Sheer.BowSet.Radius(), 1) {
		t.Errorf("radius without edge-set %v, want infinite", flat.Sheer.BowSet.Radius())
	}
}

// TestStems checks what a stem must hold: the outermost point stands at half the
// length overall, the outer edge leaves the keel smoothly and the gunwales end
// at the horn.
func TestStems(t *testing.T) {
	for _, name := range design.ShippedNames() {
		for _, head := range []struct{ radius, turn float64 }{{}, {radius: 900}, {turn: 0.7}, {120, 0.7}, {90, 1.1}} {
			d := shipped(t, name)
			d.Bow.HeadRadius, d.Bow.HeadTurn = measure.Length(head.radius), measure.Angle(head.turn)
			h := newHull(t, d)
			far := 0.0
			for s := 0.0; s < h.Bow.Outer.Length()+0.05; s += 0.05 {
				p, _ := h.Bow.Point(math.Min(s, h.Bow.Outer.Length()))
				far = math.Max(far, p.X)
			}
			if want := float64(d.Hull.Length) / 2; math.Abs(far-want) > 0.001 {
				t.Errorf("%s, head %v: the stem reaches %.4f mm, want %.4f", name, head, far, want)
			}
			z, slope := h.KeelZ(h.Bow.Toe.X)
			if math.Abs(z-h.Bow.Toe.Y) > 1e-9 || math.Abs(math.Atan(slope)-h.Bow.Heading) > 1e-9 {
				t.Errorf("%s: the keel meets the stem at %.6f mm with slope %.6f, want %.6f mm and %.6f", name, z, slope, h.Bow.Toe.Y, math.Tan(h.Bow.Heading))
			}
			top, _ := h.Bow.Point(h.Bow.Outer.Length())
			if math.Abs(top.Y-h.Bow.TopZ) > 1e-6 {
				t.Errorf("%s: the stem ends %.6f mm up, want %.6f", name, top.Y, h.Bow.TopZ)
			}
			if got := h.Bow.OuterAt(h.Bow.GunwaleZ) - h.Bow.GunwaleX; math.Abs(got-float64(d.Bow.Horn)) > 1e-6 {
				t.Errorf("%s: the horn is %.6f mm, want %v", name, got, d.Bow.Horn)
			}
		}
	}
}

// TestKeelLine checks straight keel, rocker at the toe and the smooth joint
// between them.
func TestKeelLine(t *testing.T) {
	d := shipped(t, "river")
	h := newHull(t, d)
	straight := float64(d.Hull.KeelStraight) / 2
	for _, x := range []float64{0, straight, -straight} {
		if z, slope := h.KeelZ(x); z != 0 || slope != 0 {
			t.Errorf("keel at %.0f mm: %.9f mm, slope %.9f; want level on the baseline", x, z, slope)
		}
	}
	if z, _ := h.KeelZ(h.Bow.Toe.X); math.Abs(z-40) > 1e-9 {
		t.Errorf("rocker at the bow %.9f mm, want 40", z)
	}
	if z, slope := h.KeelZ(-h.Stern.Toe.X); math.Abs(z-30) > 1e-9 || slope >= 0 {
		t.Errorf("rocker at the stern %.9f mm (slope %.4f), want 30 and rising aft", z, slope)
	}
}

// TestMidshipSection checks that the midship section has the beam and depth the
// design asks for.
func TestMidshipSection(t *testing.T) {
	for _, name := range design.ShippedNames() {
		d := shipped(t, name)
		h := newHull(t, d)
		s, err := h.Section(0)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(s.HalfBreadth-float64(d.Hull.Beam)/2) > 1e-9 || math.Abs(s.Depth-float64(d.Hull.Depth)) > 1e-9 {
			t.Errorf("%s: midship %.6f by %.6f mm, want %v and %v", name, 2*s.HalfBreadth, s.Depth, d.Hull.Beam, d.Hull.Depth)
		}
		// The keel's parts lie between baseline and rib: skin, keel, half a rib.
		if want := float64(d.Skin.Thickness() + d.Keel.Depth + d.Ribs.Thickness/2); math.Abs(s.KeelZ-want) > 1e-9 {
			t.Errorf("%s: keel point %.6f mm up, want %.6f", name, s.KeelZ, want)
		}
	}
}

// TestHullRefusals checks messages for shapes that do not close.
func TestHullRefusals(t *testing.T) {
	tests := []struct {
		name   string
		change func(*design.Design)
		want   string
	}{
		{"forefoot too large for the depth", func(d *design.Design) { d.Bow.ForefootRadius = 1200 }, "bow: a forefoot radius of 1200 mm"},
		{"straight keel too long", func(d *design.Design) { d.Hull.KeelStraight = 3300 }, "shorten hull.keel_straight"},
		{"head curls over", func(d *design.Design) { d.Bow.HeadRadius, d.Bow.HeadTurn = 60, 0 }, "curls over"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := shipped(t, "brook")
			tt.change(d)
			if _, err := New(d); err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("got %v, want a message with %q", err, tt.want)
			}
		})
	}
	h := newHull(t, shipped(t, "brook"))
	if _, err := h.Section(1740); err == nil || !strings.Contains(err.Error(), "past the toe") {
		t.Errorf("a section past the stem gave %v", err)
	}
}

// TestTip: the outermost place of an end is half the length overall, also of a head that
// curls back in; under it a height read at a distance leads back to the distance.
func TestTip(t *testing.T) {
	for _, head := range []struct{ radius, turn float64 }{{}, {radius: 400}, {turn: 0.8}, {100, 0.8}} {
		d := shipped(t, "brook")
		d.Bow.HeadRadius, d.Bow.HeadTurn = measure.Length(head.radius), measure.Angle(head.turn)
		h := newHull(t, d)
		if got, want := h.Bow.Tip(), float64(d.Hull.Length)/2; math.Abs(got-want) > 1e-6 {
			t.Errorf("head %v: the tip stands at %.6f mm, want %.6f", head, got, want)
		}
		for u, want := range map[float64]float64{0: 0, h.Bow.Tip() + 100: h.Bow.farthest()} {
			if end, _ := h.Bow.Point(want); h.Bow.HeightAt(u) != end.Y {
				t.Errorf("head %v: height %.3f mm at %.0f mm, want that of the edge's end, %.3f mm", head, h.Bow.HeightAt(u), u, end.Y)
			}
		}
		low := h.Bow.Toe
		for u := low.X + 1; u < h.Bow.Tip(); u += 5 {
			z := h.Bow.HeightAt(u)
			if back := h.Bow.OuterAt(z); math.Abs(back-u) > 1e-6 || z < low.Y {
				t.Fatalf("head %v: height %.3f mm at %.3f mm leads back to %.6f mm", head, z, u, back)
			}
			low.Y = z
		}
	}
}

// TestMadeEdgeSet: what is made into the gunwales leaves their line where it is, and only
// the rest of the rise bends them: over a run c to the radius c^2/(2 (e - m)). An end that
// rises less than is made has nothing left to spring.
func TestMadeEdgeSet(t *testing.T) {
	made := func(m measure.Length) *Hull {
		d := shipped(t, "river")
		d.Gunwale.EdgeSetMade = m
		return newHull(t, d)
	}
	all, most, none := made(54), made(45), made(0)
	for x := -2400.0; x <= 2400; x += 300 {
		for _, h := range []*Hull{all, most} {
			if p, q := h.Gunwale.Point(x), none.Gunwale.Point(x); p != q {
				t.Errorf("at %.0f mm the made gunwale lies at %v, the sprung one at %v", x, p, q)
			}
		}
	}
	for _, e := range []EdgeSet{all.Sheer.BowSet, all.Sheer.SternSet, most.Sheer.SternSet} {
		if e.Sprung() != 0 || !math.IsInf(e.Radius(), 1) || e.Strain(42) != 0 || e.EndShift(42) != 0 {
			t.Errorf("all is made, and the wood is bent to %g mm, strained %g, shifted %g mm", e.Radius(), e.Strain(42), e.EndShift(42))
		}
	}
	e := most.Sheer.BowSet
	run := most.Bow.GunwaleX - 620
	for what, pair := range map[string][2]float64{
		"radius": {e.Radius(), run * run / (2 * 9)}, "strain": {e.Strain(42), 21 * 2 * 9 / (run * run)},
		"shift": {e.EndShift(42), 21 * 2 * 9 / run}, "slope of all": {e.EndSlope(), 2 * 54 / run}, "slope made": {e.MadeSlope(), 2 * 45 / run},
		"made half-way": {e.RisesMade(620 + run/2), 45.0 / 4}, "unmade": {e.Unmade().Radius(), run * run / (2 * 54)},
	} {
		if math.Abs(pair[0]-pair[1]) > 1e-9*math.Abs(pair[1]) {
			t.Errorf("%s %g, want %g", what, pair[0], pair[1])
		}
	}
}
