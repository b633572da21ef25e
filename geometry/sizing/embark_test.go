package sizing

import (
	"math"
	"testing"

	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/sizing/family"
)

// TestRow: who was given no place sits in a row, each just ahead of the one behind, and their
// weight together comes down where it was asked for; who was given one stays there. Places
// are whole millimeters.
func TestRow(t *testing.T) {
	b := DefaultBrief()
	b.Passengers = riders(t, "25 kg, 120 cm", "60 kg, 165 cm", "18 kg, 108 cm, at -700 mm")
	b.Dogs = []Rider{{Dog: true, Weight: 30, Posture: family.Either}}
	d := &design.Design{}
	const at = 412.0
	b.embark(d, at)
	if len(d.Crew) != 4 {
		t.Fatalf("%+v", d.Crew)
	}
	sum, mass, end := 0.0, 0.0, math.NaN()
	long := 0.0
	for _, p := range d.Crew {
		if p.Mass == 18 {
			if p.At != -700 {
				t.Errorf("%s sits at %.0f mm, not where it was told", p.Name, float64(p.At))
			}
			continue
		}
		aft, fore := weight.Room(p)
		if from := float64(p.At) - aft; !math.IsNaN(end) && math.Abs(from-end) > 1 {
			t.Errorf("%s begins at %.1f mm, the one behind ends at %.1f", p.Name, from, end)
		}
		end = float64(p.At) + fore
		sum, mass, long = sum+p.Mass*float64(p.At), mass+p.Mass, long+aft+fore
	}
	if math.Abs(sum/mass-at) > 0.6 {
		t.Errorf("the row's weight comes down at %.1f mm, want %.0f", sum/mass, at)
	}
	if got, _ := b.row(); math.Abs(got-long) > 1e-9 {
		t.Errorf("the row takes %.1f mm of floor, want %.1f", got, long)
	}
	if placed, where := b.placed(); placed != 18 || where != -700 || b.live() != 25+60+18+30 {
		t.Errorf("placed %.0f kg at %.0f mm of %.0f kg", placed, where, b.live())
	}
}

// TestClearOfThwarts: a passenger's trunk, from the back to 60 mm ahead of the weight, stays
// 20 mm clear of a thwart, and moves the shorter way; one who is clear stays.
func TestClearOfThwarts(t *testing.T) {
	passenger := riders(t, "60 kg, 165 cm")[0].person("A", 0)
	aft, _ := weight.Room(passenger)
	thwart := design.Thwart{Name: "Thwart", At: 100, Width: 70}
	back, front := math.Ceil(100+35+20+aft), math.Floor(100-35-20-60)
	for from, want := range map[float64]float64{front - 1: front - 1, front + 5: front, back - 5: back, back + 1: back + 1} {
		p := passenger
		p.At = measure.Length(from)
		clearOfThwarts(&design.Design{Thwarts: []design.Thwart{thwart}}, &p)
		if float64(p.At) != want {
			t.Errorf("from %.0f mm the passenger moves to %.0f mm, want %.0f", from, float64(p.At), want)
		}
	}
	// A dog lies under a thwart, a passenger does not sit in one.
	d := &design.Design{Thwarts: []design.Thwart{thwart}}
	b := DefaultBrief()
	b.Dogs = []Rider{{Dog: true, Weight: 30, Posture: family.Either}}
	if b.embark(d, 100); math.Abs(float64(d.Crew[0].At)-100) > 1 {
		t.Errorf("the dog lies at %.0f mm", float64(d.Crew[0].At))
	}
	b.Dogs, b.Passengers, d.Crew = nil, riders(t, "60 kg, 165 cm"), nil
	if b.embark(d, 100); math.Abs(float64(d.Crew[0].At)-100) < 50 {
		t.Errorf("the passenger sits at %.0f mm, in the thwart", float64(d.Crew[0].At))
	}
}

// TestSeatOfPassenger: one who sits gets a seat of their own, and their weight comes down
// where the row has its place, or where they were told to sit.
func TestSeatOfPassenger(t *testing.T) {
	for text, at := range map[string]float64{"70 kg, 170 cm, sitting": 250, "70 kg, 170 cm, sitting, at -300 mm": -300} {
		b, d := DefaultBrief(), &design.Design{}
		b.Passengers = riders(t, text)
		b.embark(d, 250)
		if len(d.Seats) != 1 || d.Crew[0].Seat != d.Seats[0].Name || d.Crew[0].Posture != design.Bench || d.Crew[0].Role != design.Passenger {
			t.Fatalf("%q: %+v on %+v", text, d.Crew, d.Seats)
		}
		if got := d.WeightAt(d.Crew[0]); math.Abs(got-at) > 1 {
			t.Errorf("%q: weight at %.1f mm, want %.0f", text, got, at)
		}
	}
}
