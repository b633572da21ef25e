package job

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/fittings"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/layout/pattern"
)

// shares are how high a person's weight lies over the hips, of the sitting height, as the
// people of the weights have it.
var shares = map[design.Posture]float64{design.Bench: 0.30, design.Kneeling: 0.25, design.Floor: 0.33}

// seatsAgree holds the seats of a boat to one another everywhere: what flotation seats people
// at, the marks (of which the numbers are made), the pattern and the cut list.
func seatsAgree(t *testing.T, who string, f *frame.Frame) {
	t.Helper()
	near := func(what string, got, want float64) {
		t.Helper()
		if !(math.Abs(got-want) <= 0.1) {
			t.Errorf("%s: %s %.3f, want %.3f", who, what, got, want)
		}
	}
	list, err := marks.Of(f, nil)
	if err != nil {
		t.Fatal(err)
	}
	b, err := aboard.New(f, f.Design.Crew, f.Design.Gear)
	if err != nil {
		t.Fatal(err)
	}
	told := marks.Index(list)
	for i, p := range f.Design.Crew {
		n := f.Design.FindSeat(p.Seat)
		if n < 0 {
			if p.Seat != design.OnFloor {
				t.Errorf("%s: %s sits nowhere", who, p.Name)
			}
			continue
		}
		top := told[marks.Name{Part: fmt.Sprintf("seat %d", n+1), Quantity: "top"}].Value
		near(p.Name+"'s seat by flotation", b.Crew[i].Load().At.Z-shares[p.Posture]*weight.Sitting(p), top)
	}
	plan := cutlist.Heat(nil).Sticks(f, b.Fittings...)
	drawn := pattern.SeatsOf(f, measure.Metric)
	for _, s := range f.Seats {
		part := fmt.Sprintf("seat %d", s.Number+1)
		near(part+" over the floor", told[marks.Name{Part: part, Quantity: "top over floor"}].Value, s.TopZ()-f.Hull.FloorZ(s.At))
		if s.Hung == nil {
			continue
		}
		for which, r := range map[string]seat.Rail{"front": s.Hung.Front, "after": s.Hung.After} {
			want := told[marks.Name{Part: part, Quantity: which + " hanger length"}].Value
			// From the gunwale's top the foot lies as far down as the height leaves.
			g := &f.Gunwale
			middle := func(off float64) geometry.Point3 { // of the board's upper end
				return g.EdgeAt(r.Hanger.Station+off, -g.Width/2-r.Hanger.Block-10, g.Height)
			}
			edge, along := middle(0).Z, middle(5).Sub(middle(-5))
			// A sprung sheer rises more than the lean alone makes it: the board hangs square to it.
			rises := (along.Y*math.Sin(g.Tilt) + along.Z*math.Cos(g.Tilt)) / along.Norm()
			foot := r.TopZ - s.Hung.Depth - 20*math.Cos(g.Tilt)
			near(which+" hanger from gunwale, floor and height", want, (edge-foot)/math.Cos(g.Tilt)*math.Sqrt(1-rises*rises))
			for _, d := range drawn {
				if d.Name == fmt.Sprintf("seat-%d-%s", s.Number+1, which) {
					box := geometry.EmptyBox()
					for _, l := range d.Strokes {
						if l.Pen == 0 { // cut
							box = box.Union(l.Path.Bounds())
						}
					}
					near(which+" hanger drawn", box.H(), want)
				}
			}
			i := slices.IndexFunc(plan, func(k cutlist.Stick) bool { return strings.Contains(k.Part, s.Name+", "+which+" hanger") })
			if i < 0 {
				t.Fatalf("%s: no %s hanger in the cut list", who, which)
			}
			// Rough lengths are told to the next whole millimeter.
			if over := plan[i].Length - 50 - want; over < -0.001 || over > 1.001 {
				t.Errorf("%s: %s hanger in the cut list is %.3f mm longer than it and 25 mm at each end, want 0 to 1", who, which, over)
			}
		}
	}
}

// TestSeatsAgree: for every shipped boat and for those that the families give 10 bodies
// each, 200 in a long run, a seat has one height.
func TestSeatsAgree(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frameOf(t, name)
		seatsAgree(t, name, f)
		var told struct {
			Seats []struct {
				Name, Kind string
				Top        float64 `json:"top_z_mm"`
				Over       float64 `json:"top_over_floor_mm"`
				Crew       []string
			}
		}
		if err := json.Unmarshal(ask(t, "loft", name, "--nest", "quick").numbers(t), &told); err != nil {
			t.Fatal(err)
		}
		if len(told.Seats) != len(f.Design.Seats) || len(told.Seats) == 0 {
			t.Fatalf("%s: %d seats", name, len(told.Seats))
		}
		for i, s := range told.Seats {
			d := f.Design.Seats[i]
			if s.Name != d.Name || s.Kind != d.Kind.String() || s.Over != float64(d.Height) || math.Abs(s.Top-s.Over-f.Hull.FloorZ(float64(d.At))) > 1e-3 || len(s.Crew) != 1 {
				t.Errorf("%s: %+v for %+v", name, s, d)
			}
		}
	}
	bodies := 10
	if os.Getenv("RIBWRIGHT_LONG") != "" {
		bodies = 67
	}
	for _, name := range family.Names() {
		f, err := family.Shipped(name)
		if err != nil {
			t.Fatal(err)
		}
		for n := range bodies {
			boat, err := sizing.Size(f, sizing.Trying{Family: f}.Body(n))
			if err != nil {
				t.Errorf("%s, body %d: %v", name, n, err)
				continue
			}
			if len(boat.Design.Crew) == 0 {
				t.Fatalf("%s, body %d: nobody", name, n)
			}
			seatsAgree(t, fmt.Sprintf("%s, body %d", name, n), boat.Frame)
		}
	}
}

func frameOf(t *testing.T, name string) *frame.Frame {
	t.Helper()
	k, err := world().factsOf(name)
	if err != nil {
		t.Fatal(err)
	}
	f, err := k.frame()
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// TestSeatTakenOut: taking a seat out takes exactly what the seat weighs, wood by volume
// and density and what is bought; whoever sat there sits on the floor at the same place.
func TestSeatTakenOut(t *testing.T) {
	f := frameOf(t, "river")
	b, err := aboard.New(f, f.Design.Crew, f.Design.Gear)
	if err != nil {
		t.Fatal(err)
	}
	out, err := b.WithoutSeats([]int{0})
	if err != nil {
		t.Fatal(err)
	}
	const ash = 672e-9 // kg/mm3, FPL-GTR-282 table 5-3b
	mass := 0.0
	k := fittings.Seat(f.Seats[0])
	for _, p := range k.Pieces {
		mass += float64(p.Count) * p.Long * p.Wide * p.Thick * p.Fill * ash
	}
	for _, v := range k.Things {
		mass += v.Mass
	}
	if got := b.Own().Mass - out.Own().Mass; math.Abs(got-mass) > 1e-9 || mass < 1.5 || mass > 3 {
		t.Errorf("the boat is %.4f kg lighter for a seat of %.4f kg", got, mass)
	}
	if p := out.People[0]; p.Seat != design.OnFloor || p.At != 1010 || len(out.Notes) != 1 || len(out.Seats) != 1 || out.Seats[0].Name != "Stern seat" {
		t.Errorf("%+v, notes %q, seats %d", p, out.Notes, len(out.Seats))
	}
	if out.People[1] != b.People[1] || len(b.Seats) != 2 || b.People[0].Seat != "Bow seat" {
		t.Error("more than the bow seat has changed")
	}
}

// TestCrewOnSeats: people are named to seats and to the floor, with or without a unit.
func TestCrewOnSeats(t *testing.T) {
	d, err := design.Shipped("river")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		text string
		want []string // seat, posture and where the weight comes
	}{
		{"60:seat-1,25:floor", []string{"Bow seat kneeling 1010", "floor floor -1370"}},
		{"60kg:stern seat", []string{"Stern seat kneeling -1370"}},
		{"60kg:bench:SEAT-2", []string{"Stern seat bench -1420"}},
		{"70kg:floor@-200mm", []string{"floor floor -200"}},
		{"70kg:kneeling@300 mm", []string{"floor kneeling 300"}},
		{"70kg,80kg", []string{"Bow seat kneeling 1010", "Stern seat kneeling -1370"}},
		{"60,60,25:floor", []string{"Bow seat kneeling 1010", "Stern seat kneeling -1370", "floor floor 0"}},
	} {
		p, err := parsePeople(c.text)
		if err != nil {
			t.Fatal(err)
		}
		got, err := p.seated(d)
		if err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		for i, one := range got {
			if said := fmt.Sprintf("%s %v %.0f", one.Seat, one.Posture, d.WeightAt(one)); i >= len(c.want) || said != c.want[i] {
				t.Errorf("%s: %s, want %v", c.text, said, c.want)
			}
		}
	}
	for text, want := range map[string]string{"70:roof": "no seat of this boat", "70:bench@0mm": "bench does not go", "70:seat-1@0mm": "the one or the other", "1:seat-1": "15 kg", "70,70,70": "has no place"} {
		p, err := parsePeople(text)
		if err == nil {
			_, err = p.seated(d)
		}
		if err == nil || !strings.Contains(err.Error(), want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %v, want %q", text, err, want)
		}
	}
}
