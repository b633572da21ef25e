package stow

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
)

func shipped(t testing.TB, name string, change func(*design.Design)) *Boat {
	t.Helper()
	f := frametest.Shipped(t, name, change)
	b, err := NewBoat(f)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestShippedFleet: Brook nests in Lake in River in whatever order they are
// given, all the cross pieces of the two lower boats out, Brook's left in; the
// nest is as long, and here as wide and high, as River.
func TestShippedFleet(t *testing.T) {
	brook, lake, river := shipped(t, "brook", nil), shipped(t, "lake", nil), shipped(t, "river", nil)
	for _, given := range [][]*Boat{{brook, lake, river}, {river, brook, lake}} {
		s, err := Nest(given, Options{Pad: 5})
		if err != nil {
			t.Fatal(err)
		}
		if s.Boats[0] != river || s.Boats[1] != lake || s.Boats[2] != brook || !s.Nests {
			t.Errorf("order %s, %s, %s, nests %v; want River, Lake, Brook", s.Boats[0].Title, s.Boats[1].Title, s.Boats[2].Title, s.Nests)
		}
		for i, want := range []int{5, 3, 0} {
			if len(s.Out[i]) != want {
				t.Errorf("%s: %d cross pieces and seats must come out, want %d", s.Boats[i].Title, len(s.Out[i]), want)
			}
		}
		if s.Length != river.Length() || s.Height != river.Outside.Top || math.Abs(s.Mass-brook.Mass-lake.Mass-river.Mass) > 1e-9 {
			t.Errorf("stack %.0f x %.0f mm, %.1f kg", s.Length, s.Height, s.Mass)
		}
	}
}

// TestCureOfBeam: gunwales that lack s a side are cured by 2 s of beam, to the
// next whole millimetre, whichever boat gives way.
func TestCureOfBeam(t *testing.T) {
	lake := shipped(t, "lake", func(d *design.Design) { d.Hull.Beam -= 16 })
	p := Fit(lake, shipped(t, "brook", nil), Options{Pad: 5})
	if p.Nests || p.Short <= 0 || p.Bound.Lower.Kind != Gunwale {
		t.Fatalf("%+v: want gunwales in the way", p.Bound)
	}
	found := 0
	for _, c := range p.Cures(Options{Pad: 5}) {
		if c.Measure != Beam {
			continue
		}
		found++
		want := math.Ceil(2 * p.Short)
		if math.Abs(math.Abs(c.By)-want) > 1 || (c.By < 0) != c.Upper {
			t.Errorf("%s: beam by %.0f mm for %.2f mm a side, want %.0f", c.Boat.Title, c.By, p.Short, want)
		}
	}
	if found != 2 {
		t.Errorf("%d changes of beam cure it, want one of each boat", found)
	}
}

// TestLeftIn: with the yoke left in, the boat above stands on what is highest
// under it, its keel at the height of the cross piece's upper face.
func TestLeftIn(t *testing.T) {
	river, brook := shipped(t, "river", nil), shipped(t, "brook", nil)
	p := Fit(river, brook, Options{Pad: 5, LeftIn: true})
	if p.Nests || p.First.Lower.Kind != CrossPiece {
		t.Fatalf("nests %v, touches %+v; want it on a cross piece", p.Nests, p.First)
	}
	for _, w := range river.Frame.Thwarts {
		if w.Name == p.First.Lower.Name {
			keel, _ := brook.Frame.Hull.KeelZ(p.First.At.X - p.Place.X)
			if want := river.Frame.Gunwale.Line.Point(w.At).Z - keel; math.Abs(p.Touch-want) > 0.5 {
				t.Errorf("stands %.2f mm up, want %.2f", p.Touch, want)
			}
		}
	}
}

// TestRisingRoom: lifting a boat never takes room away, in any zone, with flare
// or tumblehome.
func TestRisingRoom(t *testing.T) {
	bulged := func(d *design.Design) {
		d.Gunwale.Tilt = 0.14
		for i := range d.Hull.Sections {
			d.Hull.Sections[i].Flare = -0.06
			d.Hull.Sections[i].TopsideCurve = 0.2
			d.Hull.Sections[i].BilgeRadius = 70
		}
	}
	for _, c := range []struct {
		name  string
		lower *Boat
		upper *Boat
	}{
		{"brook in lake", shipped(t, "lake", nil), shipped(t, "brook", nil)},
		{"river in river", shipped(t, "river", nil), shipped(t, "river", nil)},
		{"brook in a lake with tumblehome", shipped(t, "lake", bulged), shipped(t, "brook", nil)},
	} {
		var was Rooms
		for z := range was {
			was[z].Room = math.Inf(-1)
		}
		touch, _ := Drop(c.lower.bare, c.upper.Outside, 0, false)
		for z := -10.0; z < touch+80; z += 16.3 {
			now := Clearance(c.lower.bare, c.upper.Outside, Place{Z: z})
			for k := range now {
				if now[k].Room < was[k].Room-1e-9 {
					t.Errorf("%s: at %.1f mm the room at the %v falls from %.4f to %.4f mm", c.name, z, Zone(k), was[k].Room, now[k].Room)
				}
			}
			was = now
		}
	}
}

// TestTable: passing over places by the table changes nothing.
func TestTable(t *testing.T) {
	lake, brook := shipped(t, "lake", nil), shipped(t, "brook", nil)
	slow := *brook.Outside
	slow.table.low = make([]float64, len(brook.Outside.table.low))
	for i := range slow.table.low {
		slow.table.low[i] = math.Inf(-1)
	}
	for _, x := range []float64{0, 37, -150, 420} {
		for _, pad := range []float64{0, 5} {
			got, _ := drop(lake.Inside, brook.Outside, Place{X: x}, pad, anyZone)
			want, _ := drop(lake.Inside, &slow, Place{X: x}, pad, anyZone)
			if got != want {
				t.Errorf("x %.0f, pad %.0f: %.6f mm, without the table %.6f", x, pad, got, want)
			}
		}
	}
}

// TestTurned: a boat turned end for end lies as its mirror image does.
func TestTurned(t *testing.T) {
	river := shipped(t, "river", nil)
	lake := shipped(t, "lake", func(d *design.Design) {
		d.Hull.Symmetric = false
		d.Hull.Spreaders = append(d.Hull.Spreaders, d.Hull.Spreaders[0])
		d.Hull.Spreaders[1].At *= -1
		d.Hull.Spreaders[1].Beam -= 30
		d.Hull.Sections = append(d.Hull.Sections, d.Hull.Sections[1])
		d.Hull.Sections[2].At *= -1
	})
	q := Place{X: 120, Z: 40, Turned: true}
	p := geometry.Point3{X: -300, Y: 200, Z: 90}
	if got := q.Outer(q.local(p)); got.Sub(p).Norm() > 1e-9 {
		t.Errorf("there and back: %+v, want %+v", got, p)
	}
	// The room of a turned boat is the room in the other direction of the mirrored one.
	a := Clearance(river.bare, lake.Outside, Place{Z: 60, Turned: true}).Least()
	b := Clearance(river.bare, lake.Outside, Place{Z: 60}).Least()
	if a.Room == b.Room && a.At == b.At {
		t.Error("turning a boat of unlike ends changes nothing")
	}
}

// TestRefused: what is no shape is refused.
func TestRefused(t *testing.T) {
	good := Section{Half: []geometry.Point{{}, {X: 1, Y: 1}}}
	bad := Section{X: 1, Half: []geometry.Point{{}, {X: math.NaN(), Y: 1}}}
	parts := []Part{{Cloth, "cloth"}}
	for name, s := range map[string][]Section{"one": {good}, "nan": {good, bad}, "backwards": {{X: 2, Half: good.Half}, good}, "points": {good, {X: 1, Half: bad.Half[:1]}}} {
		if _, err := NewOutside(s, parts); err == nil {
			t.Errorf("outside %s: no error", name)
		}
	}
	for name, e := range map[string][]Edge{"none": nil, "nan": {{A: geometry.Point3{Z: math.NaN()}}}, "part": {{Part: 3}}} {
		if _, err := NewInside(e, parts); err == nil {
			t.Errorf("inside %s: no error", name)
		}
	}
	if _, err := Nest(make([]*Boat, 40), Options{}); err == nil {
		t.Error("forty boats: no error")
	}
}

func BenchmarkFit(b *testing.B) {
	lake, brook := shipped(b, "lake", nil), shipped(b, "brook", nil)
	for b.Loop() {
		Fit(lake, brook, Options{Pad: 5})
	}
}

// TestPlaces: where a boat lies in a boat that lies in a third, and back, turned
// or not.
func TestPlaces(t *testing.T) {
	for _, p := range []Place{{X: 30, Z: 20}, {X: -40, Z: 5, Turned: true}} {
		for _, q := range []Place{{X: 12, Z: 7}, {X: 9, Z: -3, Turned: true}} {
			if got := p.from(p.then(q)); got != q {
				t.Errorf("%+v in %+v comes back as %+v", q, p, got)
			}
			v := geometry.Point3{X: 100, Y: 3, Z: 50}
			if a, b := p.then(q).Outer(v), p.Outer(q.Outer(v)); a.Sub(b).Norm() > 1e-9 {
				t.Errorf("%+v in %+v: a point lies at %+v, by two steps at %+v", q, p, a, b)
			}
		}
	}
}

// TestFarther: a long boat that would stand in a short one is held up by the
// stems of the boat around both: they are 300 mm high, so it lies there with its
// pad.
func TestFarther(t *testing.T) {
	hollow := func(length, half, wood float64) *Boat {
		inner := trough(half-wood, 0.2, 200, length-60, 10)
		b := &Boat{Frame: &frame.Frame{Design: &design.Design{}}, Outside: outside(t, trough(half, 0.2, 200, length, 0))}
		b.Inside = shell(t, inner)
		b.bare = b.Inside
		return b
	}
	low, mid, long := hollow(3000, 400, 20), hollow(1000, 300, 20), hollow(2900, 200, 20)
	low.bare.parts = append(low.bare.parts, Part{Stem, "bow stem"})
	low.bare.edges = append(low.bare.edges, Edge{geometry.Point3{X: 1400, Z: 300}, geometry.Point3{X: 1400, Y: 10, Z: 300}, 1})
	o := Options{Pad: 5}
	s := &Stack{Boats: []*Boat{low, mid, long}, Places: []Place{{}}, Out: [][]int{nil, nil, nil}, Nests: true}
	for k := 1; k < 3; k++ {
		p := settle(s.Boats[k-1], s.Boats[k], s.Boats[k-1].bare, Place{}, o)
		if !p.Nests {
			t.Fatalf("boat %d does not stand in the one under it: %+v", k, p.Bound)
		}
		s.Pairs = append(s.Pairs, p)
		s.add(k, p, o)
	}
	last := s.Pairs[1]
	if z := s.Places[2].Z; math.Abs(z-305) > 0.05 || last.Nests || last.Far != low || s.Nests {
		t.Errorf("lies at %.2f mm, nests %v, held by %+v; want 305 mm on the bow stem", z, last.Nests, last.Bound)
	}
}
