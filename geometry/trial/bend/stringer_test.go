package bend

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve/stick"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/wood/timber"
)

// TestRadiusInPlace holds a stick through pins on an arc of 2400 mm, 140 mm apart, to
// E t / 2 R both ways, its flat across the arc's plane and in it. Source: beam theory.
// A batten through pins of an arc keeps its radius to 2 % away from its ends.
func TestRadiusInPlace(t *testing.T) {
	wood, err := timber.Lookup("Douglas-fir")
	if err != nil {
		t.Fatal(err)
	}
	const r, wide, deep = 2400.0, 20.0, 12.0
	for name, flat := range map[string]float64{"on edge": 0, "flat": math.Pi / 2} {
		var pins []stick.Pin
		for k := -8; k <= 8; k++ {
			x := 140 * float64(k)
			pins = append(pins, stick.Pin{Point3: geometry.Point3{X: x, Y: math.Sqrt(r*r - x*x)}, Flat: flat})
		}
		s, err := stick.New(pins, wide*wide/deep/deep)
		if err != nil {
			t.Fatal(err)
		}
		b := batten{wood, wide, deep}
		bay := b.bay(frame.Stringer{Number: 1, Stick: s}, 0, 140)
		edge, off := wood.MOE*wide/2/r, 0.0
		if name == "flat" {
			edge, off = 0, wood.MOE*deep/2/r
		}
		near(t, name+", along the flat", bay.Edgewise, edge, 0.02*edge+1e-9)
		near(t, name+", off it", bay.Flatwise, off, 0.02*off+1e-9)
		near(t, name+", twist", bay.Twist, 0, 1e-12)
	}
}

// TestWarp: a straight stick whose flat turns by 30 degrees in a bay of 150 mm bends not at
// all and is in shear by G twist times the factor of Timoshenko and Goodier for 2 to 1.
func TestWarp(t *testing.T) {
	wood, err := timber.Lookup("Sitka spruce")
	if err != nil {
		t.Fatal(err)
	}
	const turn = 30 * math.Pi / 180
	s, err := stick.New([]stick.Pin{{Flat: 0.2}, {Point3: geometry.Point3{X: 150}, Flat: 0.2 + turn}}, 4)
	if err != nil {
		t.Fatal(err)
	}
	bay := batten{wood, 20, 10}.bay(frame.Stringer{Stick: s}, 0, 150)
	near(t, "edgewise", bay.Edgewise, 0, 1e-12)
	near(t, "flatwise", bay.Flatwise, 0, 1e-12)
	near(t, "twist", bay.Twist, turn, 1e-12)
	near(t, "shear", bay.Shear, 0.930*wood.MOE/16*turn/150*10, 0.02)
}

// TestStringersInPlace looks at every bay of the shipped boats, ends included: they join
// from stem to stem, the flat turns from the heading of the ribs to the upright stem, and
// the worst of a whole stringer is the worst of its bays.
func TestStringersInPlace(t *testing.T) {
	for _, name := range design.ShippedNames() {
		r := report(t, name, nil)
		f := r.Frame
		for i, s := range r.Stringers {
			if len(s.Bays) != len(f.Ribs)+1 || s.Bays[0].From != -f.Stern.Landings[i].X || s.Bays[len(f.Ribs)].To != f.Bow.Landings[i].X {
				t.Fatalf("%s, stringer %d: %d bays for %d ribs", name, i+1, len(s.Bays), len(f.Ribs))
			}
			edge, twist := 0.0, 0.0
			for k, b := range s.Bays {
				edge, twist = math.Max(edge, b.Edgewise), math.Max(twist, b.Twist)
				from, to := math.Pi/2, math.Pi/2
				if k > 0 {
					_, from = f.Ribs[k-1].Section.Half.At(f.Ribs[k-1].Stringers[i])
				}
				if k < len(f.Ribs) {
					_, to = f.Ribs[k].Section.Half.At(f.Ribs[k].Stringers[i])
				}
				near(t, name+", twist of a bay", b.Twist, math.Abs(to-from), 1e-9)
			}
			near(t, name+", edgewise", s.Edgewise, edge, 0)
			near(t, name+", twist", s.Twist, twist, 0)
		}
	}
}

// TestLooks: looking at 25 times as many places finds no more than 2 % more stress.
func TestLooks(t *testing.T) {
	for _, name := range design.ShippedNames() {
		r := report(t, name, nil)
		d := r.Frame.Design
		b := batten{width: float64(d.Stringers.Width), depth: float64(d.Stringers.Depth), wood: timber.Species{MOE: 1e4}}
		for i, s := range r.Stringers {
			for _, bay := range s.Bays {
				most := 0.0
				for k := range 25*looks + 1 {
					off, along := r.Frame.Stringers[i].Stick.About(bay.From + (bay.To-bay.From)*float64(k)/(25*looks))
					most = math.Max(most, b.stress(math.Abs(off), math.Abs(along)))
				}
				if found := b.stress(bay.Off, bay.Along); found < 0.98*most {
					t.Errorf("%s, stringer %d at %.0f mm: %.2f of the worst", name, i+1, bay.From, found/most)
				}
			}
		}
	}
}

// TestFewRibs: with three ribs a stringer is all ends; what cannot run fair is told.
func TestFewRibs(t *testing.T) {
	r := report(t, "river", func(d *design.Design) {
		d.Stringers.At, d.Ribs.Pitch, d.Ribs.FromBow, d.Ribs.FromStern = []float64{0.5}, 400, 1700, 1700
	})
	if n := len(r.Frame.Ribs); n > 4 {
		t.Fatalf("%d ribs", n)
	}
	for _, v := range r.Findings {
		if v.About == "stringer 1" {
			t.Errorf("there is a middle: %s", v)
		}
	}
}

// TestRunOut: an end that turns harder than is fair is told of, with what to do.
func TestRunOut(t *testing.T) {
	r := &Report{}
	r.judgeRunOut("stringer 2, bow", Bay{From: 1000, To: 1300, Turn: 0.2}, Bay{From: 850, To: 1000, Turn: 0.05})
	if len(r.Findings) != 1 || !r.Findings[0].Verdict.Passes() || !strings.Contains(r.Findings[0].Cure, "turns by 11.5 degrees, where 5.7 would look fair") {
		t.Errorf("got %v", r.Findings)
	}
	r.judgeRunOut("stringer 2, bow", Bay{From: 1000, To: 1300, Turn: 0.1}, Bay{From: 850, To: 1000, Turn: 0.05})
	if len(r.Findings) != 1 {
		t.Errorf("what is just fair is told of: %v", r.Findings[1])
	}
}

// TestEndRun: an end reaches from the stem over the last three bays, or over half of them
// where there are few, and is told by the longer side.
func TestEndRun(t *testing.T) {
	for _, c := range []struct {
		ties []float64 // stations, the stems' among them
		want float64
	}{
		{[]float64{-900, -700, -500, -300, 0, 200, 400, 800, 1000}, 800},
		{[]float64{-900, -700, -500, -100, 0, 300, 500, 800, 1000}, 800},
		{[]float64{-1000, 100, 900}, 1100},
		{[]float64{-1000, 0, 100, 900}, 1000},
	} {
		s := Stringer{}
		for i := 1; i < len(c.ties); i++ {
			s.Bays = append(s.Bays, Bay{From: c.ties[i-1], To: c.ties[i]})
		}
		near(t, "end", s.EndRun(), c.want, 0)
	}
}

// TestHotEnds: what is steamed is what its findings say, with the minutes of its depth.
func TestHotEnds(t *testing.T) {
	for _, name := range []string{"brook", "lake", "river"} {
		r := report(t, name, nil)
		for _, s := range r.Stringers {
			about := fmt.Sprintf("stringer %d", s.Number)
			var ends, whole, twist bool
			for _, f := range r.Findings {
				dry := f.Verdict == finding.Dry || f.Verdict == finding.Eases
				ends = ends || f.About == about+", ends" && !dry
				whole = whole || f.About == about && !dry
				twist = twist || f.About == about+", twist"
			}
			if s.Steamed != ends || s.Whole != whole || s.Wrung != twist {
				t.Errorf("%s: %s: %v %v %v, found %v %v %v", name, about, s.Steamed, s.Whole, s.Wrung, ends, whole, twist)
			}
			near(t, about+", minutes", s.Minutes, timber.SteamTime(float64(r.Frame.Design.Stringers.Depth), r.Frame.Design.Bending.Moisture, false), 0)
		}
	}
}
