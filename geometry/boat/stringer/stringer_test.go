package stringer

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
	"ribwright/geometry/curve/stick"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

func shipped(t testing.TB, name string) *design.Design {
	t.Helper()
	d, err := design.Shipped(name)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func ways(t testing.TB, d *design.Design) *Courses {
	t.Helper()
	h, ribs := sections(t, d)
	c, err := Of(d, h, ribs)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// wedge is a boat with equal ends and straight sides: every section is an arc of the same
// sweep about the middle line, its radius falling evenly to the ends, so that every
// stringer runs straight from midship out to one place in space.
type wedge struct {
	radius, falls, sweep, rise float64 // at midship, mm; mm a mm; radians; of the keel, mm a mm
}

func (w wedge) sections(pitch float64, each int) []hull.Section {
	var out []hull.Section
	for k := -each; k <= each; k++ {
		x := pitch * float64(k)
		r := w.radius - w.falls*math.Abs(x)
		out = append(out, hull.Section{Station: x, KeelZ: 110 + w.rise*math.Abs(x), Half: curve.Chain{curve.Turned(r, w.sweep)}})
	}
	return out
}

// at is the middle of a stringer that lies off mm outside the ribs, at the share of the
// half sections and x mm from midship, by geometry.
func (w wedge) at(share, off, x float64) geometry.Point {
	r, turned := w.radius-w.falls*x, share*w.sweep
	return geometry.Point{X: (r + off) * math.Sin(turned), Y: 110 + w.rise*x + r - (r+off)*math.Cos(turned)}
}

// TestWedge: on a wedge the fair run is a straight line, which meets the stem's side where
// a line meets a plane. An upright stem whose inset edge passes through that place gets
// the stringer there, at no energy, and no mark moves.
func TestWedge(t *testing.T) {
	for _, share := range []float64{0.3, 0.5, 0.8} {
		for _, rake := range []float64{0, 0.2, 0.5} {
			d := shipped(t, "brook")
			d.Stringers.At = []float64{share}
			w := wedge{radius: 300, falls: 0.11, sweep: 1.4, rise: 0.012}
			ribs := w.sections(125, 14)
			off := float64(d.Ribs.Thickness+d.Stringers.Depth) / 2
			in := float64(d.Skin.Thickness() + d.Stringers.Depth)
			half := float64(d.Bow.Siding) / 2
			// It comes to half the siding where its half-breadth, which falls evenly, does.
			a, b := w.at(share, off, 0), w.at(share, off, 1000)
			x := (a.X - half) / (a.X - b.X) * 1000
			want := geometry.Point{X: x, Y: w.at(share, off, x).Y}
			// A stem from a small forefoot up, its inset edge through that place.
			const fore, low = 40.0, 15.0
			turn := math.Pi/2 - rake
			e := hull.End{Outer: curve.Chain{curve.Turned(fore, turn), curve.Straight(600)}, GunwaleX: 5000, GunwaleZ: 500}
			foot := geometry.Point{X: (fore - in) * math.Sin(turn), Y: in + (fore-in)*(1-math.Cos(turn))} // of the straight inset edge, from the toe
			e.Toe = geometry.Point{Y: low}
			e.Toe.X = want.X - foot.X - (want.Y-low-foot.Y)*math.Tan(rake)
			h := &hull.Hull{Bow: e, Stern: e}
			c, err := Of(d, h, ribs)
			if err != nil {
				t.Fatal(err)
			}
			if miss := c.Bow[0].Sub(want).Norm(); miss > 0.01 || c.Stern[0] != c.Bow[0] {
				t.Errorf("share %g, rake %g: lands at %v, want %v", share, rake, c.Bow[0], want)
			}
			for k, r := range ribs {
				if math.Abs(c.On[k][0]-share*r.Half.Length()) > 1e-9 {
					t.Errorf("share %g: the mark at %.0f mm has moved by %.3f mm", share, r.Station, c.On[k][0]-share*r.Half.Length())
				}
			}
		}
	}
}

// TestLeastEnergy moves every landing of the shipped boats by 5 mm along the stem, either
// way, and bends the whole stick anew: each costs energy. The least of the parabola
// through three places lies within a millimeter.
func TestLeastEnergy(t *testing.T) {
	for _, name := range design.ShippedNames() {
		d := shipped(t, name)
		c := ways(t, d)
		h, _ := sections(t, d)
		for i := range d.Stringers.At {
			in := float64(d.Skin.Thickness() + d.Stringers.Depth)
			fore, aft := edgeAt(h.Bow, in, c.Bow[i]), edgeAt(h.Stern, in, c.Stern[i])
			energy := func(bow, stern float64) float64 {
				pins := c.Pins(i)
				a, _ := h.Stern.Inside(aft+stern, in)
				b, _ := h.Bow.Inside(fore+bow, in)
				pins[0].X, pins[0].Z = -a.X, a.Y
				pins[len(pins)-1].X, pins[len(pins)-1].Z = b.X, b.Y
				s, err := stick.New(pins, Stiff(d))
				if err != nil {
					t.Fatal(err)
				}
				return s.Energy(-1e6, 1e6, Stiff(d))
			}
			base := energy(0, 0)
			for _, m := range [][2]float64{{5, 0}, {-5, 0}, {0, 5}, {0, -5}, {5, 5}, {-5, 5}} {
				if more := energy(m[0], m[1]) - base; !(more > 0) {
					t.Errorf("%s, stringer %d moved by %v: %.3g less energy", name, i+1, m, -more)
				}
			}
			// The search takes the flexibility of a bay for a parabola (package stick); in river's
			// lowest bay, which twists by 57 degrees, that is most off.
			up, down := energy(5, 0)-base, energy(-5, 0)-base
			if at := 5 * (down - up) / (2 * (down + up)); math.Abs(at) > 1 {
				t.Errorf("%s, stringer %d: the least lies %.2f mm on", name, i+1, at)
			}
		}
	}
}

// edgeAt finds how far along the stem's edge a landing lies, by stepping.
func edgeAt(e hull.End, in float64, land geometry.Point) float64 {
	best, miss := 0.0, math.Inf(1)
	for s := 0.0; s < e.Outer.Length(); s += 0.02 {
		if p, _ := e.Inside(s, in); p.Sub(land).Norm() < miss {
			best, miss = s, p.Sub(land).Norm()
		}
	}
	return best
}

// TestShippedLandings: ends lie in order, a width and a lashing apart, clear of the keel's
// end and the gunwale; two boats with equal ends have equal landings.
func TestShippedLandings(t *testing.T) {
	for _, name := range design.ShippedNames() {
		d := shipped(t, name)
		c := ways(t, d)
		h, _ := sections(t, d)
		for k, land := range [][]geometry.Point{c.Stern, c.Bow} {
			e := []hull.End{h.Stern, h.Bow}[k]
			apart(t, name, d, e, land)
		}
		if d.EndsAlike() && fmt.Sprint(c.Bow) != fmt.Sprint(c.Stern) {
			t.Errorf("%s: equal ends, unlike landings", name)
		}
	}
}

func apart(t *testing.T, name string, d *design.Design, e hull.End, land []geometry.Point) {
	t.Helper()
	wide := float64(d.Stringers.Width)
	for i, p := range land {
		if i > 0 && (p.Sub(land[i-1]).Norm() < wide || p.Y <= land[i-1].Y) {
			t.Errorf("%s: ends %d and %d lie %.1f mm apart", name, i, i+1, p.Sub(land[i-1]).Norm())
		}
	}
	if p := land[0]; p.X < e.Toe.X+wide/2 {
		t.Errorf("%s: the first end, %.0f mm from midship, lies on the keel's at %.0f mm", name, p.X, e.Toe.X)
	}
	if p := land[len(land)-1]; p.Y > e.GunwaleZ-wide/2 {
		t.Errorf("%s: the last end, %.0f mm up, lies on the gunwale at %.0f mm", name, p.Y, e.GunwaleZ)
	}
}

// TestCrowded: many stringers, low, high and all over, keep their order and their room.
func TestCrowded(t *testing.T) {
	for _, at := range [][]float64{{0.55, 0.62, 0.69, 0.76, 0.83, 0.9}, {0.2, 0.27, 0.34, 0.41}, {0.15, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85, 0.93}} {
		for _, name := range design.ShippedNames() {
			d := shipped(t, name)
			d.Stringers.At = at
			c := ways(t, d)
			h, _ := sections(t, d)
			apart(t, name, d, h.Bow, c.Bow)
			apart(t, name, d, h.Stern, c.Stern)
		}
	}
}

// TestNoRoom: more ends than the stem has room for.
func TestNoRoom(t *testing.T) {
	d := shipped(t, "brook")
	h, ribs := sections(t, d)
	d.Stringers.At = nil
	for k := range 20 {
		d.Stringers.At = append(d.Stringers.At, float64(k+1)/21)
	}
	_, err := Of(d, h, ribs)
	if err == nil || !strings.Contains(err.Error(), "bow: between keel and gunwale its edge has") {
		t.Errorf("got %v", err)
	}
}

// TestSpread: two ends that crowd lie round the middle of their wishes, weighed by how
// much each resists; a third far off stays.
func TestSpread(t *testing.T) {
	wish := func(at, weight float64) lot {
		return lot{energy: []func(float64) float64{func(x float64) float64 { return weight * (x - at) * (x - at) }}, first: at}
	}
	// Wishes 100 and 110, 25 apart: weights 3 and 1 let the pair begin at the weighed mean
	// of 100 and 85; the third wishes 200, less the gaps of two before it 150.
	third := wish(200, 1)
	third.first = 150
	second := wish(110, 1)
	second.first = 85
	got := spread([]lot{wish(100, 3), second, third}, 0, 1000, 25)
	if len(got) != 2 || math.Abs(got[0].first-96.25) > 1e-3 || got[1].first != 150 {
		t.Errorf("%d lots, first at %.4f, %v", len(got), got[0].first, got)
	}
}

// TestSpreadByTrying holds it to trying all places of four ends, 2 mm apart.
func TestSpreadByTrying(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	const gap, hi, step = 20.0, 100.0, 2.0
	for range 12 {
		var lots []lot
		var energy []func(float64) float64
		top := hi - 3*gap
		for i := range 4 {
			at, weight := hi*r.Float64(), 0.3+r.Float64()
			u := func(x float64) float64 { return weight * ((x-at)*(x-at) + math.Pow(x-at, 4)/5000) }
			energy = append(energy, u)
			lots = append(lots, lot{[]func(float64) float64{u}, math.Min(math.Max(at-gap*float64(i), 0), top)})
		}
		sum, n := 0.0, 0
		for _, l := range spread(lots, 0, top, gap) {
			for range l.energy {
				sum += energy[n](l.first + gap*float64(n))
				n++
			}
		}
		tried := math.Inf(1)
		for a := 0.0; a <= top; a += step {
			for b := a; b <= top; b += step {
				for c := b; c <= top; c += step {
					for e := c; e <= top; e += step {
						tried = math.Min(tried, energy[0](a)+energy[1](b+gap)+energy[2](c+2*gap)+energy[3](e+3*gap))
					}
				}
			}
		}
		if sum > tried+1e-9 {
			t.Errorf("%.4f spread, %.4f by trying", sum, tried)
		}
	}
}

// TestEase: a low stringer of river turns harder beyond the last ribs than in the bay
// before; the marks that move are those of the last two ribs, towards the keel, and the
// run is then just fair.
func TestEase(t *testing.T) {
	d := shipped(t, "river")
	_, ribs := sections(t, d)
	c := ways(t, d)
	n := len(ribs)
	for k, r := range ribs {
		move := c.On[k][0] - d.Stringers.At[0]*r.Half.Length()
		end := k < eased || k >= n-eased
		if end != (move < -1) || !end && move != 0 || math.Abs(move) > 2*float64(d.Stringers.Width) {
			t.Errorf("the mark at %.0f mm has moved by %.2f mm", r.Station, move)
		}
	}
	s, err := stick.New(c.Pins(0), Stiff(d))
	if err != nil {
		t.Fatal(err)
	}
	run := func(x float64) geometry.Point { _, v, _ := s.Run(x); return v }
	for _, x := range [][3]float64{{ribs[n-2].Station, ribs[n-1].Station, c.Bow[0].X}, {ribs[1].Station, ribs[0].Station, -c.Stern[0].X}} {
		bay, turn := stick.Turn(run(x[0]), run(x[1])), stick.Turn(run(x[1]), run(x[2]))
		most := math.Min(bay/math.Abs(x[1]-x[0])*math.Abs(x[2]-x[1]), 2*bay+2*math.Pi/180)
		if share := turn / most; share > 1 || share < 0.96 {
			t.Errorf("beyond the rib at %.0f mm it turns %.3f of what is fair", x[1], share)
		}
	}
}

// TestSmooth: a little change of the design moves the landings a little, so that a search
// can follow them.
func TestSmooth(t *testing.T) {
	for _, name := range design.ShippedNames() {
		var last *Courses
		for step := range 12 {
			d := shipped(t, name)
			d.Hull.Beam += measure.Length(0.4 * float64(step))
			c := ways(t, d)
			if last != nil {
				for i := range c.Bow {
					if move := c.Bow[i].Sub(last.Bow[i]).Norm(); move > 1.5 {
						t.Errorf("%s, step %d: stringer %d lands %.2f mm on", name, step, i+1, move)
					}
				}
			}
			last = c
		}
	}
}
