package aboard

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/water/float"
)

func river(t *testing.T) Boat {
	t.Helper()
	d, err := design.Shipped("river")
	if err != nil {
		t.Fatal(err)
	}
	f, err := frame.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	b, err := New(f, d.Crew, d.Gear)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestLoadIsItsParts: boat, outfits, people, gear and what else is given, each once,
// in mass and in moment.
func TestLoadIsItsParts(t *testing.T) {
	b := river(t)
	b.Fitted = []weight.Item{{Name: "Rig", Loads: []float.Load{{Mass: 9, At: geometry.Point3{X: 700, Z: 900}}}}}
	more := float.Load{Mass: 4, At: geometry.Point3{X: -1000, Y: 50, Z: 100}}
	parts := []float.Load{b.Empty, b.Fitted[0].Load(), more}
	crew, gear := 0.0, 0.0
	for _, i := range b.Crew {
		parts, crew = append(parts, i.Load()), crew+i.Load().Mass
	}
	for _, i := range b.Gear {
		parts, gear = append(parts, i.Load()), gear+i.Load().Mass
	}
	if crew == 0 || gear == 0 || b.Empty.Mass == 0 {
		t.Fatalf("crew of %g kg, gear of %g kg, boat of %g kg: this shows nothing", crew, gear, b.Empty.Mass)
	}
	mass, moment := 0.0, geometry.Point3{}
	for _, p := range parts {
		mass += p.Mass
		moment = moment.Add(geometry.Point3{X: p.Mass * p.At.X, Y: p.Mass * p.At.Y, Z: p.Mass * p.At.Z})
	}
	all := b.Load(more)
	if math.Abs(all.Mass-mass) > 1e-9 {
		t.Errorf("%.3f kg, the parts weigh %.3f", all.Mass, mass)
	}
	for i, got := range []float64{all.At.X, all.At.Y, all.At.Z} {
		if want := []float64{moment.X, moment.Y, moment.Z}[i] / mass; math.Abs(got-want) > 1e-9 {
			t.Errorf("axis %d: %.4f mm, sums of moments give %.4f", i, got, want)
		}
	}
	if got := b.Light().Mass; math.Abs(got-(mass-crew-gear-4)) > 1e-9 {
		t.Errorf("without people and gear %.3f kg, want %.3f", got, mass-crew-gear-4)
	}
}

// TestManned: a design's own people, else one of 75 kg, the crew mass of ISO 12217.
func TestManned(t *testing.T) {
	b := river(t)
	d := *b.Frame.Design
	if got := Manned(&d); len(got) != len(d.Crew) || got[0].Mass != d.Crew[0].Mass {
		t.Errorf("%+v, the design has %+v", got, d.Crew)
	}
	d.Crew = nil
	if got := Manned(&d); len(got) != 1 || got[0].Mass != 75 || got[0].At != 0 {
		t.Errorf("nobody named: %+v, want one of 75 kg amidships", got)
	}
}

// TestSayFitted tells of other outfits with their whole weight, and of none when
// there are none.
func TestSayFitted(t *testing.T) {
	b := river(t)
	var n finding.List
	if b.SayFitted(&n); len(n) != 0 {
		t.Errorf("nothing is fitted: %+v", n)
	}
	b.Fitted = []weight.Item{{Name: "Rig", Loads: []float.Load{{Mass: 9}}}, {Name: "Sail", Loads: []float.Load{{Mass: 1.5}}}}
	if b.SayFitted(&n); len(n) != 1 || !strings.Contains(n[0].Text, "10.5 kg") {
		t.Errorf("%+v, want 10.5 kg told", n)
	}
}

// TestCrosses names the cross pieces between two stations and no others.
func TestCrosses(t *testing.T) {
	b := river(t)
	far := b.Frame.Hull.Length
	if got := b.Crosses(-far, far); len(got) != len(b.Frame.Thwarts) {
		t.Errorf("%d of %d cross pieces in the whole boat", len(got), len(b.Frame.Thwarts))
	}
	for _, c := range b.Frame.Thwarts {
		if got := b.Crosses(c.At, c.At); len(got) != 1 || !strings.HasPrefix(got[0], c.Name) {
			t.Errorf("at %.0f mm: %q, want %s", c.At, got, c.Name)
		}
	}
	if got := b.Crosses(far, 2*far); len(got) != 0 {
		t.Errorf("past the bow: %q", got)
	}
}

// TestGunwaleTop: the two upper edges lie a gunwale's width apart, the outer one
// outboard and, where the gunwale leans out, lower; both stand its height over the
// line of its underside.
func TestGunwaleTop(t *testing.T) {
	b := river(t)
	g := b.Frame.Gunwale
	for _, x := range []float64{-1500, 0, 800} {
		inner, outer := b.GunwaleTop(x)
		if inner.Y <= 0 || outer.Y <= inner.Y || g.Tilt > 0 && outer.Z >= inner.Z {
			t.Errorf("at %.0f mm: inner %+v, outer %+v", x, inner, outer)
		}
		// A station cuts a gunwale that runs in towards the end aslant.
		slope, _ := g.Line.Slopes(x)
		if d := math.Hypot(outer.Y-inner.Y, outer.Z-inner.Z) * math.Cos(math.Atan(slope)); math.Abs(d-g.Width) > 0.1 {
			t.Errorf("at %.0f mm the edges lie %.2f mm apart, the gunwale is %.2f wide", x, d, g.Width)
		}
		under := g.Line.Point(x)
		mid := geometry.Point3{Y: (inner.Y + outer.Y) / 2, Z: (inner.Z + outer.Z) / 2}
		if d := math.Hypot(mid.Y-under.Y, mid.Z-under.Z); math.Abs(d-g.Height) > 0.5 {
			t.Errorf("at %.0f mm the top stands %.2f mm over the underside, the gunwale is %.2f tall", x, d, g.Height)
		}
	}
}

// TestFloor: over the straight keel the floor is skin, keel and rib, one on the other.
func TestFloor(t *testing.T) {
	b := river(t)
	d := b.Frame.Design
	if got, want := b.Floor(0), float64(d.Skin.Thickness+d.Keel.Depth+d.Ribs.Thickness); math.Abs(got-want) > 1e-9 {
		t.Errorf("%.2f mm, want %.2f", got, want)
	}
}
