package bend

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
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
		bay := b.bay(s, 0, 140)
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
	bay := batten{wood, 20, 10}.bay(s, 0, 150)
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
		if v.About == "stringer 1, between its ends" {
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

// TestHot: a stretch is hot from tie to tie where bays in a row bend or wring the stick
// harder than half of what dry wood bears (the share that assembly may take), and told
// along the straight stock. Stresses of the bays are laid down here; the wood has an MOE
// of 10,000 N/mm2 and bears 80 N/mm2, so that a depth of 10 mm bends dry to 1/1250 mm.
func TestHot(t *testing.T) {
	b := batten{timber.Species{Name: "trial", MOE: 10000, MOR: 80, FreeRatio: 20, StrapRatio: 10}, 20, 10}
	dry, steam := Bay{Off: 1 / 1300.0}, Bay{Off: 1 / 1000.0}
	wring := Bay{Shear: 1.01 * 0.5 * 0.09 * 80, Twist: 0.3}
	rising, err := curve.NewTrack(-500, 500, 0, curve.Apart(func(float64) (float64, float64) { return 0, 0 }, func(x float64) (float64, float64) { return 0.75 * x, 0.75 }))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		bays []Bay
		want [][2]float64
		bent frame.Zone // of the first
		turn float64
	}{
		{[]Bay{dry, dry, dry}, nil, frame.Zone{}, 0},
		{[]Bay{steam, steam, dry, dry, steam}, [][2]float64{{-500, -300}, {-100, 0}}, frame.Zone{From: -500, To: -300}, 0},
		{[]Bay{dry, steam, wring, dry}, [][2]float64{{-400, -200}}, frame.Zone{From: -400, To: -300}, 0.3},
		{[]Bay{wring, dry, wring}, [][2]float64{{-500, -400}, {-300, -200}}, frame.Zone{}, 0.3},
	} {
		s := Stringer{}
		for i, y := range c.bays {
			y.From, y.To = -500+100*float64(i), -400+100*float64(i)
			s.Bays = append(s.Bays, y)
		}
		hot := b.hot(s, rising)
		if len(hot) != len(c.want) {
			t.Fatalf("%+v: hot in %+v, want %v", c.bays, hot, c.want)
		}
		if len(hot) > 0 && hot[0].Bent != c.bent {
			t.Errorf("%+v: bent in %+v, want %+v", c.bays, hot[0].Bent, c.bent)
		}
		for i, h := range hot {
			near(t, "from", h.Bays.From, c.want[i][0], 1e-9)
			near(t, "to", h.Bays.To, c.want[i][1], 1e-9)
			near(t, "from, along", h.Along.From, 1.25*c.want[i][0], 1e-6) // a slope of 3 in 4 is 5 long
			near(t, "to, along", h.Along.To, 1.25*c.want[i][1], 1e-6)
			near(t, "turn", h.Twist, c.turn, 1e-12)
		}
	}
}

// TestHotStringers: a stringer has hot stretches when its findings say that it is steamed
// or wrung, and none else, with the minutes of its depth.
func TestHotStringers(t *testing.T) {
	for _, name := range []string{"brook", "lake", "river"} {
		r := report(t, name, nil)
		for _, s := range r.Stringers {
			about := fmt.Sprintf("stringer %d, ", s.Number)
			steamed, twist := false, false
			for _, f := range r.Findings {
				dry := f.Verdict == finding.Dry || f.Verdict == finding.Eases
				steamed = steamed || (f.About == about+"ends" || f.About == about+"between its ends") && !dry
				twist = twist || f.About == about+"twist"
			}
			turned := 0.0
			for _, h := range s.Hot {
				turned = math.Max(turned, h.Twist)
			}
			if hot := len(s.Hot) > 0; hot != (steamed || twist) || (turned > 0) != twist || twist && turned != s.Twist {
				t.Errorf("%s: %s%+v, found steamed %v, wrung %v", name, about, s.Hot, steamed, twist)
			}
			if got := r.Heat()[s.Number]; len(got) != len(s.Hot) {
				t.Errorf("%s: %sheat %v", name, about, got)
			}
			near(t, about+"minutes", s.Minutes, timber.SteamTime(float64(r.Frame.Design.Stringers.Depth), r.Frame.Design.Bending.Moisture, false), 0)
		}
	}
}
