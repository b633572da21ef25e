package altered

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
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

// TestNothingChanged: no change, and each measure as it is, give the same design.
func TestNothingChanged(t *testing.T) {
	for _, name := range design.ShippedNames() {
		d := shipped(t, name)
		for _, m := range All() {
			b, ok := m.Band(d)
			if !ok {
				t.Fatalf("%s has no %s", name, m)
			}
			got, err := Of(d, Change{m, b.Now})
			if err != nil || !reflect.DeepEqual(got, d) {
				t.Errorf("%s, %s as it is: %v, or another design", name, m, err)
			}
		}
	}
}

// TestProportions: what belongs to a measure keeps its share of it, to the rounding,
// and the design that is altered stays as it was.
func TestProportions(t *testing.T) {
	d := shipped(t, "river")
	before := shipped(t, "river")
	to := float64(d.Hull.Length) * 1.1
	got, err := Of(d, Change{Length, to}, Change{Beam, float64(d.Hull.Beam) * 0.95})
	if err != nil {
		t.Fatal(err)
	}
	near := func(what string, got, was measure.Length, k float64) {
		t.Helper()
		if math.Abs(float64(got)-float64(was)*k) > 0.25+1e-9 {
			t.Errorf("%s %v of %v, want %.3f of it", what, got, was, k)
		}
	}
	near("pitch", got.Ribs.Pitch, d.Ribs.Pitch, 1.1)
	near("from the stern", got.Ribs.FromStern, d.Ribs.FromStern, 1.1)
	for i, s := range d.Hull.Spreaders {
		near("spreader", got.Hull.Spreaders[i].At, s.At, 1.1)
		near("spreader's beam", got.Hull.Spreaders[i].Beam, s.Beam, 0.95)
	}
	for i, s := range d.Hull.Sections {
		near("section", got.Hull.Sections[i].At, s.At, 1.1)
		near("bilge", got.Hull.Sections[i].BilgeRadius, s.BilgeRadius, math.Sqrt(0.95))
	}
	for i, s := range d.Seats {
		near("seat", got.Seats[i].At, s.At, 1.1)
		if got.Seats[i].Height != s.Height {
			t.Errorf("a longer boat has raised seat %d", i)
		}
	}
	if !reflect.DeepEqual(d, before) {
		t.Error("the design itself has changed")
	}
}

// TestSeats: both seats move and rise together, the first to where it is asked for, in a
// longer boat too.
func TestSeats(t *testing.T) {
	d := shipped(t, "river")
	at, high := float64(d.Seats[0].At)-100, float64(d.Seats[0].Height)-30
	got, err := Of(d, Change{Length, float64(d.Hull.Length) + 200}, Change{SeatPlace, at}, Change{SeatHeight, high})
	if err != nil {
		t.Fatal(err)
	}
	if float64(got.Seats[0].At) != at || float64(got.Seats[0].Height) != high || got.Seats[1].Height != d.Seats[1].Height-30 {
		t.Errorf("seats at %v and %v, %v and %v high", got.Seats[0].At, got.Seats[1].At, got.Seats[0].Height, got.Seats[1].Height)
	}
}

// TestBands: both ends of every band of every shipped boat can be drawn, or are refused
// in one plain line; a step beyond is refused with what is accepted.
func TestBands(t *testing.T) {
	for _, name := range design.ShippedNames() {
		d := shipped(t, name)
		for _, m := range All() {
			b, _ := m.Band(d)
			for _, v := range []float64{b.Least, b.Most} {
				got, err := Of(d, Change{m, v})
				if err != nil {
					t.Errorf("%s, %s of %.0f mm: %v", name, m, v, err)
					continue
				}
				if now, _ := m.Band(got); now.Now != v {
					t.Errorf("%s: %s came out at %g, want %g", name, m, now.Now, v)
				}
				if _, err := frame.Build(got); err != nil && (strings.Contains(err.Error(), "\n") || strings.Contains(err.Error(), "NaN")) {
					t.Errorf("%s, %s of %.0f mm: %q", name, m, v, err)
				}
			}
			for _, v := range []float64{b.Least - 1, b.Most + 1, math.NaN(), math.Inf(1)} {
				if _, err := Of(d, Change{m, v}); err == nil || !strings.Contains(err.Error(), "accepted: ") {
					t.Errorf("%s, %s of %g mm: %v", name, m, v, err)
				}
			}
		}
	}
	bare := shipped(t, "brook")
	bare.Seats, bare.Crew = nil, nil
	if _, err := Of(bare, Change{SeatHeight, 40}); err == nil || !strings.Contains(err.Error(), "has none") {
		t.Errorf("a boat without seats: %v", err)
	}
}
