package seat_test

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/fittings"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %g, want %g", what, got, want)
	}
}

// TestWebbing: H = P l/(8 s) of webbing 300 mm long; 2758, 1379 and 919 N at 20, 40 and
// 60 mm, worked by hand; the tension of all straps at 40 mm is 1563 N.
func TestWebbing(t *testing.T) {
	p := 1.5 * 100 * measure.Gravity
	for sag, want := range map[float64]float64{20: 2758, 40: 1379, 60: 919} {
		near(t, "pull, N", seat.WebPull(p, 300, sag), want, 0.6)
	}
	near(t, "tension, N", math.Hypot(seat.WebPull(p, 300, 40), p/2), 1563, 0.6)
}

// lake with a seat for 100 kg, so that its loads are those of the worked cases.
func lake(t *testing.T, change func(*design.Design)) *frame.Frame {
	t.Helper()
	return frametest.Shipped(t, "lake", func(d *design.Design) {
		d.Crew[0].Mass = 100
		if change != nil {
			change(d)
		}
	})
}

// TestBolts: a hanger of ash, its block of 12 mm, and gunwales 20.8 mm wide, of which the
// nut's seat takes 8.8 mm: 24 mm of wood. Worked by the equations of AWC TR12 with the
// bearings of the NDS, one M6 by 20 mm of ash bears 806.7 N in 24 mm of ash, and in 24 mm of
// spruce 566.0 N; in 12 mm of ash, the block alone, 649.8 N by mode IIIm, which is more.
// Worst of four hangers at 60 to 40: 883 N.
func TestBolts(t *testing.T) {
	for _, c := range []struct {
		gunwale, seat string
		want          float64 // N, of two
	}{{"white ash", "white ash", 1613.5}, {"sitka spruce", "white ash", 1299.5}} {
		f := lake(t, func(d *design.Design) {
			d.Gunwale.Width, d.Bow.Siding, d.Gunwale.Species, d.Seats[0].Species = 20.8, 24, c.gunwale, c.seat
		})
		l, err := f.Seats[0].Loads(f.Design)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "hanger, N", l.Hanger, 882.6, 0.1)
		near(t, c.gunwale+", two bolts, N", l.Bolts, c.want, 1)
		// 14 b sqrt(he/(1 - he/h)) with he 17 of 40: 1584 N.
		near(t, "splitting, N", l.Splits, 14*20.8*math.Sqrt(17/(1-17.0/40)), 1e-6)
	}
}

// TestNutSeats: a drill of 25 mm leaves 4.5 mm of wood under every nut's seat, and the hanger
// two and a half bolts of its end over the bolt, in the lowest gunwale too; a lower one is refused.
func TestNutSeats(t *testing.T) {
	for high := 30.0; high <= 44; high++ {
		d, err := design.Shipped("lake")
		if err != nil {
			t.Fatal(err)
		}
		d.Gunwale.Height, d.Ribs.MortiseDepth = measure.Length(high), 18
		f, err := frame.Build(d)
		if high < 32 {
			if err == nil || !strings.Contains(err.Error(), "accepted: 32 mm or more") {
				t.Errorf("%g mm: %v", high, err)
			}
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		h := f.Seats[0].Hung.Front.Hanger
		if under := high - h.Down - 25.0/2; under < 4.5 || h.Down < 15 {
			t.Errorf("gunwale of %g mm: %g mm under a nut's seat, bolts %g mm down", high, under, h.Down)
		}
	}
}

// TestBoltLong: River's bolts go through 22 mm of gunwale, a block of 12 mm, a hanger of
// 20 mm and a washer of 1.6 mm under the head, 55.6 mm: one of 55 mm ends 0.6 mm short of the
// outer face. Lake's gunwale is 20 mm wide, 53.6 mm: 50 mm would not come through the nut, and
// with a second washer 55 mm ends 0.2 mm short. Everywhere the end stands between the nut, 5.2 mm
// high (ISO 4032) on its washer in a seat 8.8 mm deep, and the outer face.
func TestBoltLong(t *testing.T) {
	for name, want := range map[string]int{"lake": 2, "river": 1} {
		f := frametest.Shipped(t, name, nil)
		for _, s := range f.Seats {
			g := s.Hung.Front.Hanger
			if g.BoltLong() != 55 || g.Washers() != want || g.Block != 12 {
				t.Errorf("%s: a bolt of %g mm with %d washers by a block of %g mm, want 55 mm and %d", name, g.BoltLong(), g.Washers(), g.Block, want)
			}
		}
	}
	for wide := 18.0; wide <= 30; wide++ {
		f := lake(t, func(d *design.Design) { d.Gunwale.Width = measure.Length(wide); d.Bow.Siding = d.Gunwale.Width + 2 })
		g := f.Seats[0].Hung.Front.Hanger
		short := 20 + g.Block + wide + 1.6*float64(g.Washers()) - g.BoltLong()
		if nut := 8.8 - 1.6 - 5.2; short < 0.1 || short > nut+1e-9 || math.Mod(g.BoltLong(), 5) != 0 {
			t.Errorf("gunwale of %g mm: a bolt of %g mm ends %.1f mm under the outer face, the nut %.1f mm", wide, g.BoltLong(), short, nut)
		}
	}
}

// TestHangs: the height alone decides. From the gunwale's top down the hanger to its slot
// is where the rail lies, and the rail's top is as far over the floor as the design says,
// both rails off the middle's height by their share of the drop, some 220 of 260 mm of it; nothing nearer
// than 25 mm to a mortise. Worked from the gunwale's own edges, not from the hanger.
func TestHangs(t *testing.T) {
	for _, name := range []string{"lake", "river"} {
		f := frametest.Shipped(t, name, nil)
		for _, s := range f.Seats {
			d := f.Design.Seats[s.Number]
			near(t, s.Name+": top over floor", s.TopZ()-f.Hull.FloorZ(float64(d.At)), float64(d.Height), 1e-9)
			mid := (s.Hung.Front.Station + s.Hung.After.Station) / 2
			near(t, s.Name+": middle of the rails", mid, float64(d.At), 1e-9)
			near(t, s.Name+": rails' heights", (s.Hung.Front.TopZ+s.Hung.After.TopZ)/2, s.TopZ(), 1e-9)
			if fall := s.Hung.After.TopZ - s.Hung.Front.TopZ; fall < 0.75*s.Drop || fall > s.Drop {
				t.Errorf("%s: the front rail lies %.1f mm lower", s.Name, fall)
			}
			for _, r := range []seat.Rail{s.Hung.Front, s.Hung.After} {
				h := r.Hanger
				g := &f.Gunwale
				top := g.EdgeAt(h.Station, -g.Width/2-h.Block-seat.Thick/2, g.Height)
				z := top.Z - h.Slot*math.Cos(g.Tilt) // down the middle of the leaning board
				near(t, s.Name+": rail's top by its hanger", z, r.TopZ, 0.05)
				near(t, s.Name+": hanger under the slot", h.Length-h.Slot, s.Hung.Depth/math.Cos(g.Tilt)+20, 0.05)
				for _, m := range g.Mortises {
					lo, hi := m.Ends()
					for _, b := range h.Bolts {
						if away := math.Max(lo-b, b-hi) - seat.Hole/2; away < 25-1e-6 {
							t.Errorf("%s: a bolt's hole is %.2f mm from the mortise of %s", s.Name, away, m.Rib)
						}
					}
				}
			}
		}
	}
}

// TestRefuses: what cannot be is refused in one line with a cure, and the cure holds.
func TestRefuses(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*design.Design)
		want   string
		cure   func(*design.Design)
	}{
		{"no room for feet", func(d *design.Design) { d.Seats[0].Height = 155 }, `kind = "saddle"`, func(d *design.Design) { d.Seats[0].Kind = design.Saddle }},
		{"no room for feet, higher", func(d *design.Design) { d.Seats[0].Height = 155 }, "or 7 mm higher", func(d *design.Design) { d.Seats[0].Height = 162 }},
		{"at a mortise", func(d *design.Design) { d.Seats[0].At = -480 }, "put it at -454.0 mm", func(d *design.Design) { d.Seats[0].At = -454 }},
		{"beside the gunwale", func(d *design.Design) { d.Seats[0].Height = 320 }, "mm over the floor or less", func(d *design.Design) { d.Seats[0].Height = 280 }},
		{"close ribs", func(d *design.Design) { d.Ribs.Pitch, d.Thwarts, d.Bow.Landing = 82, nil, 90 }, "wider ribs.pitch", func(d *design.Design) { d.Seats[0].Kind = design.Saddle }},
		{"in the bow", func(d *design.Design) { d.Seats[0].At = 1690 }, "put it at 1296.0 mm", func(d *design.Design) { d.Seats[0].At = 1296 }},
		{"leaning inward", func(d *design.Design) {
			d.Gunwale.Tilt, d.Bow.Siding = measure.Angle(-3.5*math.Pi/180), 36
			for i := range d.Hull.Sections {
				d.Hull.Sections[i].Flare = 0
			}
		}, "past gunwales that lean inward by 3.5 deg; accepted: a gunwale.tilt of -", func(d *design.Design) { d.Gunwale.Tilt = measure.Angle(-2 * math.Pi / 180) }},
		{"two in one place", func(d *design.Design) {
			d.Seats = append(d.Seats, design.Seat{Name: "Second", At: -500, Height: 10})
		}, "move one of them", func(d *design.Design) { d.Seats[1].At = 500 }},
		{"wide saddle", func(d *design.Design) { d.Seats[0].Kind, d.Seats[0].Wide, d.Seats[0].At = design.Saddle, 700, 1200 }, "narrower", func(d *design.Design) { d.Seats[0].Wide = 200 }},
	} {
		d, err := design.Shipped("lake")
		if err != nil {
			t.Fatal(err)
		}
		c.change(d)
		_, err = frame.Build(d)
		if err == nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "seat \"") || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
		c.cure(d)
		if _, err := frame.Build(d); err != nil {
			t.Errorf("%s: the cure: %v", c.name, err)
		}
	}
}

// TestFeet: under 150 mm of clear height the caution says what is safer.
func TestFeet(t *testing.T) {
	for height, warned := range map[measure.Length]bool{200: false, 175: true} {
		f := lake(t, func(d *design.Design) { d.Seats[0].Height = height })
		found := f.Seats[0].Feet()
		if len(found) != 1 || !found[0].Verdict.Danger() || (found[0].Cure != "") != warned {
			t.Errorf("%v: %+v", height, found)
		}
	}
}

// TestStands: a pad is as thick as it is high over the floor slats; a saddle's cheeks and
// top make its height, front edge and back, over slats on the ribs' inner face.
func TestStands(t *testing.T) {
	f := lake(t, func(d *design.Design) { d.Seats[0].Kind, d.Seats[0].Height = design.Saddle, 160 })
	s := f.Seats[0]
	n := len(s.Saddle.Cheek)
	front, back := s.Saddle.Cheek[n-2].Y+seat.BoardThick, s.Saddle.Cheek[n-1].Y+seat.BoardThick
	near(t, "middle", (front+back)/2, 160, 1e-9)
	near(t, "front edge lower", back-front, float64(f.Design.Seats[0].Drop), 1e-9)
	if s.Saddle.Cheek[0].Y < 0 || s.Saddle.Cheek[0].Y > 30 {
		t.Errorf("cheeks stand %.1f mm over the floor at the keel", s.Saddle.Cheek[0].Y)
	}
	near(t, "floor over the ribs", s.Floor-f.Hull.RibsZ(s.At), float64(f.Design.Inside.SlatThickness), 1e-9)
	bare := lake(t, func(d *design.Design) { d.Seats[0].Kind, d.Seats[0].Height, d.Inside.Slats = design.Saddle, 160, 0 }).Seats[0]
	near(t, "without slats the ribs are the floor", bare.Floor-f.Hull.RibsZ(s.At), 0, 1e-9)
	near(t, "and its cheeks are as high", bare.Saddle.Cheek[0].Y, s.Saddle.Cheek[0].Y, 1e-9)
	brook := frametest.Shipped(t, "brook", nil).Seats[0]
	foam := fittings.Seat(brook).Things[0]
	near(t, "foam, liters, with a tenth to trim off", foam.Amount, 1.1*3.5*3.8*0.2, 1e-9)
	near(t, "its mass at 33 kg/m3", foam.Mass, 0.0878, 1e-3)
}
