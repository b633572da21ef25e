package inside

import (
	"math"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %g, want %g within %g", what, got, want, tol)
	}
}

// TestLeg: medians of ANSUR II: women of 1628 mm have legs of 1042 mm, men of 1756 mm of
// 1131 mm, seat back to sole.
func TestLeg(t *testing.T) {
	near(t, "woman, mm", Leg(design.Person{Stature: 1628}), 1042, 5)
	near(t, "man, mm", Leg(design.Person{Stature: 1756}), 1131, 5)
	unknown := Leg(design.Person{Mass: 66.8}) // the median woman's mass; sitting height 857 mm
	near(t, "by mass, mm", unknown, 0.676*857/0.525-57, 1e-9)
}

// TestBrace: Brook's paddler of 1700 mm has a leg of 1092 mm. The soles are 0.95 of it from
// the back, which is 220 mm aft of the weight and 20 mm, the pad's height, over the floor:
// the leg is the long side of a right triangle. On a bench of 260 mm likewise, the weight
// 50 mm forward of its middle. The board moves 75 mm either way.
func TestBrace(t *testing.T) {
	set := func(p design.Posture) func(*design.Design) {
		return func(d *design.Design) { d.Crew[0].Stature, d.Crew[0].Posture = 1700, p }
	}
	f := Of(frametest.Shipped(t, "brook", set(design.Floor)))
	at := float64(-60 - 220)
	near(t, "board, mm", f.Braces[0].At, at+math.Sqrt(math.Pow(0.95*(0.676*1700-57), 2)-20*20), 1e-9)
	near(t, "back, mm", f.Backs[0].At, at, 1e-9)
	near(t, "moves, mm", Step*(Holes-1)/2, 75, 0)
	if b := f.Braces[0]; b.Bar > b.Room || b.Rail < Step*(Holes-1) || 2*b.Across+b.RailWide > b.Bar {
		t.Errorf("%+v", b)
	}
	for _, fl := range f.Floors { // the rails lie between the slats that reach so far
		if fl.Fore < f.Braces[0].RailAft {
			continue
		}
		for _, y := range fl.Across {
			if apart := math.Abs(math.Abs(y)-f.Braces[0].Across) - (fl.Wide+f.Braces[0].RailWide)/2; apart < 2 {
				t.Errorf("a rail %.1f mm out and a slat at %.1f mm are %.1f mm apart", f.Braces[0].Across, y, apart)
			}
		}
	}
	bench := Of(frametest.Shipped(t, "brook", func(d *design.Design) {
		set(design.Bench)(d)
		d.Seats = []design.Seat{{Name: "Bench", Kind: design.Hung, At: -187.5, Height: 260}}
		d.Crew[0].Seat = "Bench"
	}))
	near(t, "board before a bench, mm", bench.Braces[0].At, -187.5+50-220+math.Sqrt(math.Pow(0.95*(0.676*1700-57), 2)-260*260), 1e-6)
	if k := Of(frametest.Shipped(t, "brook", set(design.Kneeling))); len(k.Braces)+len(k.Backs) != 0 {
		t.Errorf("one who kneels has %+v and %+v", k.Braces, k.Backs)
	}
}

// TestKnees: a footbrace's peg goes level through its rail and the knee beside it: the knee
// stands off the slats, the hole 1.5 diameters from every edge of both, inside the board; and
// all holes of a rail are in it, with five diameters to its ends.
func TestKnees(t *testing.T) {
	for _, slats := range []int{0, 5} {
		f := Of(frametest.Shipped(t, "brook", func(d *design.Design) { d.Inside.Slats = slats }))
		b, thick := f.Braces[0], 5.0
		if slats == 0 {
			thick = 0
		}
		near(t, "knee over the slats, mm", b.KneeFoot-thick, 1, 1e-9)
		near(t, "hole over the knee's foot, mm", b.HoleUp-b.KneeFoot, 12, 1e-9)
		near(t, "hole under the rail's top, mm", b.RailTall-b.HoleUp, 12, 1e-9)
		near(t, "knee beside the rail, mm", b.Across-b.KneeAcross()-b.RailWide/2-10, 1, 1e-9)
		if b.KneeAcross() < 10 || b.KneeAcross()+10 > b.Bar/2 {
			t.Errorf("a knee %.1f mm out behind a board of %.0f mm", b.KneeAcross(), b.Bar)
		}
		near(t, "hole forward of the board, mm", b.HoleAt-b.At-15, 30, 1e-9)
		if first, last := b.HoleAt-75, b.HoleAt+75; first-b.RailAft < 40 || b.RailAft+b.Rail-last < 40 {
			t.Errorf("holes from %.0f to %.0f mm in a rail from %.0f mm, %.0f mm long", first, last, b.RailAft, b.Rail)
		}
	}
}

// TestFloors: slats lie on two ribs or more, alike to both sides, apart, on floor that is
// nearly flat, under the people; none where none are wanted.
func TestFloors(t *testing.T) {
	for _, name := range design.ShippedNames() {
		fr := frametest.Shipped(t, name, nil)
		f := Of(fr)
		if len(f.Floors) == 0 {
			t.Fatalf("%s has no floor", name)
		}
		for _, fl := range f.Floors {
			if len(fl.Ribs) < 2 || fl.Count > fl.Wanted || len(fl.Across) != fl.Count {
				t.Errorf("%s: %+v", name, fl)
			}
			for i, y := range fl.Across {
				near(t, name+": mirrored, mm", y, -fl.Across[fl.Count-1-i], 1e-9)
				if i > 0 && y-fl.Across[i-1]-fl.Wide < leastGap-1e-9 {
					t.Errorf("%s: slats %.0f mm apart", name, y-fl.Across[i-1]-fl.Wide)
				}
			}
			for _, r := range fr.Ribs {
				if edge := fl.Across[fl.Count-1] + fl.Wide/2; r.Station > fl.Aft && r.Station < fl.Fore && edge > framed(fr).flat(Rib{r.Name, r.Section}, risen)+0.02 {
					t.Errorf("%s: at rib %s the outer slat's edge lies %.0f mm out, past where the rib has risen", name, r.Name, edge)
				}
			}
		}
	}
	none := frametest.Shipped(t, "river", func(d *design.Design) { d.Inside.Slats = 0 })
	if k := Of(none).Kit(none.Hull, none.Design); len(k.Pieces)+len(k.Things)+len(k.Works) != 0 {
		t.Errorf("%+v", k)
	}
}

// TestCheeks: a saddle's cheeks stand on slats, however wide it is, and a seat that nobody
// sits on has slats under it too.
func TestCheeks(t *testing.T) {
	for _, wide := range []measure.Length{160, 200, 240, 300} {
		f := frametest.Shipped(t, "lake", func(d *design.Design) {
			d.Seats[0].Kind, d.Seats[0].Wide = design.Saddle, wide
			d.Seats = append(d.Seats, design.Seat{Name: "Spare", Kind: design.Saddle, At: 900, Height: 150, Wide: 200})
		})
		for _, s := range f.Seats {
			borne := false
			for _, fl := range Of(f).Floors {
				for _, y := range fl.Across {
					borne = borne || s.At > fl.Aft && s.At < fl.Fore && math.Abs(y-s.Saddle.Apart/2) <= (fl.Wide-seat.BoardThick)/2
				}
			}
			if !borne {
				t.Errorf("%s, %.0f mm wide: no slat under a cheek %.0f mm from the middle line", s.Name, s.Wide, s.Saddle.Apart/2)
			}
		}
	}
}

// TestFlat goes out along a rib's upper face in small steps until it has risen.
func TestFlat(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		for _, r := range f.Ribs {
			for _, by := range []float64{5, 20} {
				const step = 0.02
				in := -float64(f.Design.Ribs.Thickness) / 2
				along, want := 0.0, r.Section.Face(0, in)
				for rim := want.Y + by; want.Y < rim && along < r.Section.Half.Length(); along += step {
					want = r.Section.Face(along, in)
				}
				if got := framed(f).flat(Rib{r.Name, r.Section}, by); math.Abs(got-want.X) > 0.04 {
					t.Errorf("%s, rib %s has risen by %.0f mm at %.2f mm, want %.2f mm", name, r.Name, by, got, want.X)
				}
			}
		}
	}
}
