package sizing

import (
	"cmp"
	"math"
	"math/rand/v2"
	"testing"

	"ribwright/geometry/body"
	"ribwright/geometry/measure"
)

// TestLowerSeat: of a given boat a lower seat never gives less lever, nor less held
// shift, for forty bodies a family, or fifteen where time is short.
func TestLowerSeat(t *testing.T) {
	for _, name := range []string{"pack", "solo", "tandem"} {
		f := shipped(t, name)
		r := rand.New(rand.NewPCG(11, 12))
		for range some(15, 40) {
			b := briefFor(f, body.Random(r), 30*r.Float64())
			c := settledCase(t, f, b)
			d := designed(t, c)
			lever, held := -1.0, -1.0
			for _, up := range []float64{30, 15, 0} {
				for i := range d.Seats {
					d.Seats[i].Height += measure.Length(up)
				}
				found, l, err := b.floatSketch(d, c.seats(), nil, c.woods, asked{})
				if err != nil {
					t.Fatal(err)
				}
				if _, err := found.stand(l, b.Density, coarse); err != nil {
					t.Fatal(err)
				}
				if found["gz_max"] < lever || found["held_shift"] < held {
					t.Errorf("%s, %s, seat %.0f mm higher: lever %.2f mm after %.2f, held %.1f mm after %.1f", name, b.Who(), up, found["gz_max"], lever, found["held_shift"], held)
				}
				lever, held = found["gz_max"], found["held_shift"]
				for i := range d.Seats {
					d.Seats[i].Height -= measure.Length(up)
				}
			}
		}
	}
}

// TestSeatPrice: what a higher seat is said to cost is what the boat has less with it, to
// a tenth; and a seat that was set by hand is told of as a wish.
func TestSeatPrice(t *testing.T) {
	for _, name := range []string{"pack", "solo", "tandem"} {
		f := shipped(t, name)
		at := func(seat, firm float64) *Boat {
			c, err := NewCase(f, briefFor(f, body.Person{Sex: body.Woman, Weight: 67, Stature: 1700}, 15))
			if err != nil {
				t.Fatal(err)
			}
			if seat > 0 {
				if err := cmp.Or(c.Set("seat_height", seat), c.Set("firm", firm)); err != nil {
					t.Fatal(err)
				}
			}
			if err := c.Settle(); err != nil {
				t.Fatal(err)
			}
			b, err := c.Finish()
			if err != nil {
				t.Fatal(err)
			}
			return b
		}
		own := at(0, 0)
		seat, firm := own.Case.run.Number("seat_height"), own.Case.run.Number("firm")
		high := at(seat+10, firm)
		if cost, said := own.Standing.Most-high.Standing.Most, own.SeatPrice(10); math.Abs(cost-said) > 0.1*cost {
			t.Errorf("%s: 10 mm cost %.2f mm of lever, said %.2f", name, cost, said)
		}
		if w := high.SeatWish(); math.Abs(w-10) > 0.5 || own.SeatWish() != 0 {
			t.Errorf("%s: a wish of %.1f mm, without one %.1f", name, w, own.SeatWish())
		}
	}
}

// TestHeavierAstern: the heavier the paddler astern, the farther forward are the seats,
// and never farther aft.
func TestHeavierAstern(t *testing.T) {
	f := shipped(t, "tandem")
	for _, gear := range []float64{0, 20} {
		stern, bow, moved := -1e9, -1e9, false
		for kg := 50.0; kg <= 110; kg += 5 {
			b := briefFor(f, body.Person{Sex: body.Man, Weight: 75, Stature: 1750}, gear)
			b.Crew[0].Weight = kg
			c := settledCase(t, f, b)
			// Shares of the length, which grows with the load too.
			s, w := c.run.Number("seat_at")/c.run.Number("length"), c.run.Number("partner_seat_at")/c.run.Number("length")
			if s < stern-1e-9 || w < bow-1e-9 {
				t.Errorf("%.0f kg astern, %.0f kg of gear: seats at %.4f and %.4f of the length after %.4f and %.4f", kg, gear, s, w, stern, bow)
			}
			moved = moved || stern > -1 && (s > stern+1e-3 || w > bow+1e-3)
			stern, bow = s, w
		}
		if !moved {
			t.Errorf("with %.0f kg of gear no seat moves", gear)
		}
	}
}

// TestFirmness: a boat is no firmer than it must be, in the order of the family's own
// words: where the least lever is all that it has, no firmer one has less, and where it
// has more than it must, its section is as easy as can be; but for steps of two hundredths
// that parts in whole pieces leave, as slats of a floor.
func TestFirmness(t *testing.T) {
	for _, name := range []string{"pack", "solo", "tandem"} {
		f := shipped(t, name)
		r := rand.New(rand.NewPCG(13, 14))
		for range 30 {
			b := briefFor(f, body.Random(r), 30*r.Float64())
			c := settledCase(t, f, b)
			firm, has := c.run.Number("firmness"), c.run.Number("standing")
			most := c.run.Number("firmest")
			if has < 0.995 && firm < most || has > 1.02 && firm > 0 || firm < 0 || firm > most {
				t.Errorf("%s, %s: firmness %.3f, standing %.4f", name, b.Who(), firm, has)
			}
		}
	}
}
