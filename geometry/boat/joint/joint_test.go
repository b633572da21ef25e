package joint

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

func of(t *testing.T, name string, change func(*design.Design)) *Joints {
	t.Helper()
	j, err := Of(frametest.Shipped(t, name, change))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.4f, want %.4f within %g", what, got, want, tol)
	}
}

// TestLashing has a worked lashing: 25 x 6 mm on 25 x 12 mm, four turns and 200 mm
// of tails take 626.8 mm, 106.71 mm a turn (plane geometry); 119 of them with a
// tenth to spare some 82 m.
func TestLashing(t *testing.T) {
	one := Lashing(25, 6, 25, 12, 4, 200)
	if math.Abs(one-626.8) > 0.05 {
		t.Errorf("a lashing takes %.2f mm, want 626.8", one)
	}
	if turn := (one - 200) / 4; math.Abs(turn-106.71) > 0.005 {
		t.Errorf("a turn takes %.3f mm, want 106.71", turn)
	}
	// The whole by hand: a clove hitch goes twice round the rib, 2 x 62 mm, 25 mm run level, and a
	// turn round the strands is 100 mm.
	if whole := one + begun(25, 6) + frap(25, 25); math.Abs(whole-(626.8+124+25+100)) > 0.05 {
		t.Errorf("with its beginning it takes %.2f mm, want 875.8", whole)
	}
	if all := 119 * one * 1.1 / 1000; math.Abs(all-82) > 0.5 {
		t.Errorf("119 lashings take %.1f m, want 82", all)
	}
}

// TestHeadOfBrook by hand: a tenon of 18 mm leaves 8 mm of height for a peg of 2.5 mm,
// four diameters off its end; the peg shears at 4810 x 0.60^0.926 x 0.32^0.778 psi, and
// tears 10 x 6 mm of ash out on two planes.
func TestHeadOfBrook(t *testing.T) {
	h := of(t, "brook", nil).Head
	near(t, "peg", h.Fastener.Diameter, 2.5, 0)
	near(t, "up", h.Up, 8, 0)
	near(t, "to the tenon's end", h.TenonEnd, 10, 1e-9)
	// Midship leans least: a wall of 6.35, 8 mm up at -0.5 degrees, and a slot of 6.3: 12.6.
	near(t, "hole", h.Long, 13, 0)
	near(t, "stays beyond it", h.Outer, 6, 1e-9)
	psi := 4810 * math.Pow(0.60, 0.926) * math.Pow(0.32, 0.778)
	near(t, "shears, N", h.Shears, psi*0.00689476*math.Pi/4*2.5*2.5, 0.01)
	near(t, "crushes, N", h.Crushes, 2.5*h.Wall*3.17, 0.01)
	near(t, "tears out, N", h.TearsOut, 2*10*6*13.17, 0.1)
	// Lifted: 30 kg of boat, 65 of paddler and 6 of bag, half as much again, on 46 heads.
	near(t, "lifted, N", h.Lifted, 1.5*(30+65+6)*9.80665/46, 1e-9)
	if h.Glued != 2 || h.All() || h.Count != 46 {
		t.Errorf("%d ribs at each end are glued, of %d heads", h.Glued, h.Count)
	}
	none := of(t, "brook", func(d *design.Design) { d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = 0, 0 }).Head
	if none.Glued != 0 || none.Glue != 0 {
		t.Errorf("without an edge-set %d ribs at each end are glued", none.Glued)
	}
	heavy := of(t, "brook", func(d *design.Design) { d.Crew[0].Mass = 250 }).Head
	if !heavy.All() || heavy.Glue != 2*18*20 {
		t.Errorf("pegs of %.0f N under %.0f N: %d ribs at each end are glued, %.0f mm2 each", heavy.Bears(), heavy.Lifted, heavy.Glued, heavy.Glue)
	}
	// A thin wall takes a thinner peg.
	thin := of(t, "brook", func(d *design.Design) { d.Ribs.Thickness = 8 }).Head
	near(t, "peg in a thin wall", thin.Fastener.Diameter, 2, 0)
}

// TestFootOfBrook: screws of No. 6 stand 2.5 diameters and more from the sides of a stem
// of 20 mm, five from the ends of keel and foot and ten from each other, and reach six into the foot. Two
// of them bear twice the least of the yield modes over 2.2, by the closed form of NDS
// mode IIIs: side 12 mm of redcedar, Fe 16600 G^1.84 psi, root 2.87 mm, Fyb 100 ksi.
func TestFootOfBrook(t *testing.T) {
	f := of(t, "brook", func(d *design.Design) { d.Bow.Made = design.StemsSolid }).Feet[1]
	d := f.Fastener.Diameter
	if f.Side < 2.5*d || f.FromEnd[0] < 5*d || f.FromEnd[1]-f.FromEnd[0] < 10*d-1 || f.FootEnd < 5*d || f.Deep < 6*d || f.Shortage != "" || f.Fastener.Each != 2 {
		t.Errorf("%+v", f)
	}
	for i, p := range f.At {
		near(t, "along the keel", p.Sub(f.Stem[0]).Norm(), f.FromEnd[i], 0.3)
	}
	const psi, root, ls = 0.00689476, 2.87, 12.0
	fes, fem, fyb := 16600*math.Pow(0.32, 1.84)*psi, 16600*math.Pow(0.60, 1.84)*psi, 100000*psi
	re := fem / fes
	k3 := -1 + math.Sqrt(2*(1+re)/re+2*fyb*(2+re)*root*root/(3*fem*ls*ls))
	iiis := k3 * root * ls * fem / (2 + re)
	near(t, "bears, N", f.Bears, 2*0.7*iiis/2.2, 0.5)
}

// TestPlaces: every hole lies in its wood by its own distances, measured again from the
// edges that are told, in all boats and in odd ones.
func TestPlaces(t *testing.T) {
	odd := map[string]func(*design.Design){
		"as shipped":   nil,
		"one stringer": func(d *design.Design) { d.Stringers.At = []float64{0.5} },
		"no thwarts":   func(d *design.Design) { d.Thwarts = nil },
		"short foot":   func(d *design.Design) { d.Bow.Landing = 30 },
		"thin keel":    func(d *design.Design) { d.Keel.Depth = 4 },
		"no lean": func(d *design.Design) {
			d.Gunwale.Tilt = 0
			d.Bow.Siding += 4
			if d.Stern != nil {
				d.Stern.Siding += 4
			}
		},
		"shallow mortise": func(d *design.Design) { d.Ribs.MortiseDepth = 6; d.Ribs.TenonGap = 0 },
		"thin cross piece": func(d *design.Design) {
			for i := range d.Thwarts {
				d.Thwarts[i].Width, d.Thwarts[i].Waist = 20, 20
			}
		},
	}
	for _, name := range design.ShippedNames() {
		for what, change := range odd {
			j := of(t, name, change)
			finite(t, name+", "+what, reflect.ValueOf(*j))
			for i, l := range j.Landings {
				e := j.Frame.Hull.Stern
				if i == 1 {
					e = j.Frame.Hull.Bow
				}
				for _, h := range l.Holes {
					if !(h.FromEdge >= l.Edge) || h.FromEdge < 0 {
						t.Errorf("%s, %s: a hole lies %.1f mm from the edge, the least is %.1f", name, what, h.FromEdge, l.Edge)
					}
					// Down the outer edge from the head, then square in.
					q, _ := e.Inside(e.Outer.Length()-h.FromHead, float64(j.Frame.Design.Skin.Thickness())+h.FromOut)
					near(t, name+", "+what+": hole by its distances", q.Sub(h.At).Norm(), 0, 0.6)
				}
			}
			for i, c := range j.Cross {
				if c.PerEnd*4 != 2*len(j.Frame.Thwarts[i].Holes) || c.Mortise < j.Usual.BoltHole {
					t.Errorf("%s, %s: %+v", name, what, c)
				}
			}
			if h := j.Head; h.Shortage == "" && (h.Up < 2.5*h.Fastener.Diameter || h.TenonEnd < 4*h.Fastener.Diameter-1e-9) {
				t.Errorf("%s, %s: the peg stands %.1f mm up and %.1f mm from the tenon's end", name, what, h.Up, h.TenonEnd)
			}
		}
	}
	if j := of(t, "brook", odd["shallow mortise"]); j.Head.Shortage == "" {
		t.Error("a tenon of 6 mm has room for a peg")
	}
	if j := of(t, "brook", odd["short foot"]); j.Feet[1].Shortage == "" || len(j.Feet[1].FromEnd) != 1 {
		t.Errorf("a foot of 30 mm has room for screws: %+v", j.Feet[1])
	}
}

// finite fails where a number of v is not one.
func finite(t *testing.T, at string, v reflect.Value) {
	t.Helper()
	switch v.Kind() {
	case reflect.Float64:
		if !geometry.Finite(v.Float()) {
			t.Errorf("%s: %v", at, v.Float())
		}
	case reflect.Struct:
		for i := range v.NumField() {
			finite(t, at+"."+v.Type().Field(i).Name, v.Field(i))
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			finite(t, at, v.Index(i))
		}
	}
}

// TestHooks: pegs lie in the plate to their ends and away from its corner.
func TestHooks(t *testing.T) {
	for _, name := range design.ShippedNames() {
		j := of(t, name, nil)
		for i, h := range j.Hooks {
			part := j.Frame.SternHook
			if i == 1 {
				part = j.Frame.BowHook
			}
			outline := part.Outline.Flatten(0.01)
			for k, p := range h.At {
				if room := outlineOf(outline).edgeTo(p.Sub(h.Out[k].Scale(h.Reach()))); room < 2.5*h.Fastener.Diameter {
					t.Errorf("%s, %s: peg %d ends %.1f mm from the plate's edge", name, h.End, k, room)
				}
				if math.Abs(h.Out[k].Norm()-1) > 1e-9 || h.Out[k].Y > 0 {
					t.Errorf("%s: outward is %v", name, h.Out[k])
				}
			}
			walkPeg(t, name+", "+h.End, h, part, j.Frame.Gunwale.Width)
		}
	}
}

// walkPeg follows a peg square through a gunwale and on into the plate, in the section square to
// the plate's edge, and measures to the gunwale's upper face and to both faces of the plate: 2.5
// diameters everywhere (a 1999 report on pegged joints, from memory), and no more than is said.
func walkPeg(t *testing.T, about string, h Hook, plate frame.Breasthook, width float64) {
	t.Helper()
	// y outward from the gunwale's inner upper edge, z up, both in and square to the plate.
	out := geometry.Polar(1, -plate.Bevel) // across the gunwale's upper face, outward
	down := geometry.Polar(1, -plate.Bevel-math.Pi/2)
	start := out.Scale(width).Add(down.Scale(h.Down))
	least := math.Inf(1)
	for s := 0.0; s <= h.Fastener.Length; s += 0.1 {
		p := start.Sub(out.Scale(s))
		if s <= width {
			least = math.Min(least, p.Dot(down)) // to the upper face
		} else {
			least = math.Min(least, math.Min(-p.Y, plate.Thickness+p.Y))
		}
	}
	if want := 2.5 * h.Fastener.Diameter; least < want-1e-9 {
		t.Errorf("%s: a peg comes within %.2f mm of a face, %.2f are wanted", about, least, want)
	}
	near(t, about+": edge", h.Edge*h.Fastener.Diameter, least, 0.03)
}

// TestHookThin: a plate too thin for any peg says how thick it should be, and that much does.
func TestHookThin(t *testing.T) {
	thin := func(mm float64) *Joints {
		return of(t, "brook", func(d *design.Design) { d.Breasthook.Thickness = measure.Length(mm) })
	}
	said := thin(9).Hooks[1].Short
	if !strings.Contains(said, "breasthook.thickness 13 mm") {
		t.Error(said)
	}
	if said := thin(13).Hooks[1].Short; said != "" {
		t.Error(said)
	}
}

// TestPegsMeetNothing walks every peg of a breasthook from its plate's edge inward by a
// millimeter: it stays clear of its twin from the other side, whose way is its mirror, of
// the pegs beside it, and of the painter's hole.
func TestPegsMeetNothing(t *testing.T) {
	for _, name := range design.ShippedNames() {
		for _, change := range []func(*design.Design){nil, func(d *design.Design) { d.Outside.Painters = 0 }, func(d *design.Design) { d.Breasthook.Thickness = 25 }} {
			j := of(t, name, change)
			for i, part := range []frame.Breasthook{j.Frame.SternHook, j.Frame.BowHook} {
				h := j.Hooks[i]
				var all []geometry.Point
				for k, at := range h.At {
					for deep := 0.0; deep <= h.Reach(); deep++ {
						p := at.Sub(h.Out[k].Scale(deep))
						if p.Y > -h.Fastener.Diameter {
							t.Errorf("%s, %s: peg %d comes within %.1f mm of the middle line", name, h.End, k+1, -p.Y)
						}
						if room := p.Sub(geometry.Point{X: -part.Painter}).Norm() - 5; part.Painter > 0 && room < 2*h.Fastener.Diameter {
							t.Errorf("%s, %s: peg %d comes within %.1f mm of the painter's hole", name, h.End, k+1, room)
						}
						for _, q := range all {
							if p.Sub(q).Norm() < 3*h.Fastener.Diameter {
								t.Errorf("%s, %s: peg %d meets the one before", name, h.End, k+1)
							}
						}
					}
					all = append(all, at, at.Sub(h.Out[k].Scale(h.Reach())))
				}
				if h.Into < 4*h.Fastener.Diameter {
					t.Errorf("%s, %s: pegs go only %.0f mm into the plate", name, h.End, h.Into)
				}
			}
		}
	}
}

// TestBoltsOfCrossPieces: square to a gunwale that leans by psi, a bolt comes out of a
// piece of thickness t that lies level t tan psi from where it went in.
func TestBoltsOfCrossPieces(t *testing.T) {
	for _, name := range design.ShippedNames() {
		j := of(t, name, nil)
		for _, c := range j.Cross {
			near(t, name+", "+c.Piece+": lean", c.Lean, j.Frame.Gunwale.Tilt, 0)
			near(t, name+", "+c.Piece+": drift", c.Drift, c.Of.Thickness*math.Tan(c.Lean), 1e-9)
			near(t, name+", "+c.Piece+": seat of a washer", c.Seat, c.Washer*math.Sin(c.Lean), 1e-9)
			if out := c.In - c.Of.Under + c.Drift; out < 1.5*c.Fastener.Diameter {
				t.Errorf("%s, %s: its bolts come out %.1f mm from the lower end", name, c.Piece, out)
			}
			if through := j.Frame.Gunwale.Height + c.Of.Thickness/math.Cos(c.Lean); c.Fastener.Length < through+6 {
				t.Errorf("%s, %s: bolts of %.0f mm through %.1f mm of wood leave no room for a nut", name, c.Piece, c.Fastener.Length, through)
			}
		}
	}
}

// TestCounts: what is bought is what the joints hold, and a boat of twice the ribs has
// twice the heads.
func TestCounts(t *testing.T) {
	j := of(t, "river", nil)
	ribs, holes := len(j.Frame.Ribs), 0
	for _, c := range j.Frame.Thwarts {
		holes += len(c.Holes)
	}
	for key, want := range map[string]int{"peg": 2*ribs + 12, "screw": 4, "bolt-5": holes, "nail": 0} {
		if got := j.Fasteners(key); got != want {
			t.Errorf("%d of %s, want %d", got, key, want)
		}
	}
	if got := j.Lashings(); got != 2*(4+1+1) {
		t.Errorf("%d lashings at the ends, want 12: four stringers, gunwales and foot at each", got)
	}
	// Each lashing is cut to whole steps of 50 mm, as the table of the book has it.
	cut := func(o Joint) float64 { return 50 * math.Ceil(o.Cord/50) }
	cord := float64(ribs)*cut(j.Keel.Joint) + 8*float64(ribs)*cut(j.Stringers.Joint)
	for i := range 2 {
		cord += cut(j.Feet[i].Joint) + 4*cut(j.Landings[i].Joint) + cut(j.Ends[i].Joint)
	}
	near(t, "cord", j.Cord(), cord, 1e-6)
}

// TestUnknownWood: a wood that nobody knows is an error.
func TestUnknownWood(t *testing.T) {
	f := frametest.Shipped(t, "brook", nil)
	d := *f.Design
	d.Keel.Species = "cheese"
	f.Design = &d
	if _, err := Of(f); err == nil {
		t.Error("cheese holds a screw")
	}
}

// TestEdgeTo on a square of 10 mm, and deep through it.
func TestEdgeTo(t *testing.T) {
	square := []geometry.Point{{}, {X: 10}, {X: 10, Y: 10}, {Y: 10}}
	for p, want := range map[geometry.Point]float64{{X: 5, Y: 5}: 5, {X: 1, Y: 5}: 1, {X: 12, Y: 5}: -2, {X: 9, Y: 8}: 1} {
		near(t, "edge", outlineOf(square).edgeTo(p), want, 1e-12)
	}
}

// TestEdgesUnderCord: what the cord of the usual lashing wants, twice its 1.5 mm, on sticks of 12
// mm and more; a quarter of thinner ones, so that half of a narrow face stays.
func TestEdgesUnderCord(t *testing.T) {
	m := maker{Joints: &Joints{Usual: Remembered()}}
	for thick, want := range map[float64]float64{30: 3, 12: 3, 10: 2.5, 6: 1.5, 5: 1, 1: 0.5} {
		if got := m.edge(thick); got != want {
			t.Errorf("%g mm thick: %g mm, want %g", thick, got, want)
		}
	}
}
