package sail

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/boat/kit"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// vee fits a shipped boat with a vee that packs to a length, mm.
func vee(t *testing.T, name string, pack float64) (*Fit, error) {
	t.Helper()
	b := boat(t, name)
	s := b.Frame.Design.Sail()
	s.Rig, s.Pack = design.Vee, measure.Length(pack)
	return New(b, s, fresh(t))
}

// TestVeePacks: a spar comes apart into two pieces at most, no piece is longer than it may be, the pieces make the spars, and with
// nothing said the sail is as small as a canoe's downwind sail is in use, 1 to 1.5 m2
// (common practice).
func TestVeePacks(t *testing.T) {
	for _, name := range design.ShippedNames() {
		last := 0.0
		for _, pack := range []float64{1000, 0, 1500} {
			f, err := vee(t, name, pack)
			if err != nil {
				t.Fatal(err)
			}
			if f.Plan.Area() <= last {
				t.Errorf("%s: %.2f m2 that pack to %.0f mm, after %.2f", name, f.Plan.Area(), f.Packed(), last)
			}
			last = f.Plan.Area()
			if pack == 0 && (last < 1 || last > 1.5+1e-9) {
				t.Errorf("%s: %.2f m2", name, last)
			}
			for _, p := range f.Kit().Pieces {
				if p.Form != kit.Spar {
					continue
				}
				if p.Count > 2 {
					t.Errorf("%s: %s comes apart into %d", name, p.Name, p.Count)
				}
				if p.Long > f.Packed()+1e-6 {
					t.Errorf("%s: a piece of %s has %.0f mm, it packs to %.0f", name, p.Name, p.Long, f.Packed())
				}
				for _, s := range f.Plan.Spars {
					if s.Name == p.Name {
						near(t, p.Name, float64(p.Count)*p.Long, s.Length(), 1e-6)
					}
				}
			}
		}
	}
}

// TestVeeReaches: a spar reaches from the step past the sail's head, by Pythagoras, and the
// cloth fills what is between the spars: they stand so far apart at the step as they are
// bored there and part by 2 in 5 of the height, so that by hand, for a foot so high over the
// step, the cloth's corners lie on them, its area is a trapezium's, and its panels sew up
// to that.
func TestVeeReaches(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f, err := vee(t, name, 0)
		if err != nil {
			t.Fatal(err)
		}
		bored := f.Spread(f.Mast.StepZ)
		foot := bored + 0.4*(f.Tack-f.Mast.StepZ)
		head := foot + 0.4*f.Plan.Corners[1].Y
		for i, want := range []float64{foot, head, -head, -foot} {
			near(t, name+", "+f.Plan.Names[i], f.Plan.Corners[i].X, want, 1e-9)
		}
		up := f.Tack + f.Plan.Corners[1].Y - f.Mast.StepZ
		near(t, name+", spar", f.Plan.Spars[0].Length(), math.Hypot(up, head-bored)+60, 1e-6)
		area := (foot + head) * f.Plan.Corners[1].Y / 1e6
		near(t, name+", area", f.Plan.Area(), area, 1e-9)
		sewn := 0.0
		for i, p := range f.Cloth.Panels { // each to its seam line, which lies on the next
			to := p.Seam
			if i == len(f.Cloth.Panels)-1 {
				to = math.Inf(1)
			}
			sewn += math.Abs(curve.Area(band(p.Edge, math.Inf(-1), to))) / 1e6
		}
		near(t, name+", panels", sewn, area, 1e-6)
	}
}

// TestVeeTooShort: a vee that packs too short is refused, and what the message says is
// accepted.
func TestVeeTooShort(t *testing.T) {
	_, err := vee(t, "lake", 500)
	if err == nil || !strings.Contains(err.Error(), "outfit.sail.pack") {
		t.Fatalf("a vee that packs to 500 mm: %v", err)
	}
	m := regexp.MustCompile(`accepted: (\d+) mm`).FindStringSubmatch(err.Error())
	least, _ := strconv.ParseFloat(m[1], 64)
	if _, err := vee(t, "lake", least); err != nil {
		t.Errorf("%.0f mm: %v", least, err)
	}
	if _, err := vee(t, "lake", least-30); err == nil {
		t.Errorf("%.0f mm is accepted too", least-30)
	}
}

// TestBroach: in the wind that is told, the force on the sail, aside by its height times
// the sine of the roll, turns the boat as much as the lead of the mast and the paddle
// hold it; all of it worked here from the hull's profile in thin slices.
func TestBroach(t *testing.T) {
	found := false
	for _, name := range design.ShippedNames() {
		f, err := vee(t, name, 0)
		if err != nil {
			t.Fatal(err)
		}
		v := f.Run.Broach
		if v > fiercest-0.1 {
			continue
		}
		found = true
		force := 1.225 / 2 * v * v * 1.2 * f.Plan.Area()
		p, err := f.pressed(v)
		if err != nil {
			t.Fatal(err)
		}
		area, along, up := 0.0, 0.0, 0.0
		rows := f.Boat.Hull.Profile()
		const slices = 200
		for i := 1; i < len(rows); i++ {
			for k := range slices {
				s := (float64(k) + 0.5) / slices
				x, keel := rows[i-1][0]+s*(rows[i][0]-rows[i-1][0]), rows[i-1][1]+s*(rows[i][1]-rows[i-1][1])
				deep := math.Max(0, p.Water(x)-keel) * (rows[i][0] - rows[i-1][0]) / slices
				area, along, up = area+deep, along+deep*x, up+deep*(p.Water(x)+keel)/2
			}
		}
		x, z := along/area, up/area
		after := math.Inf(1)
		for _, c := range f.Boat.Crew {
			after = math.Min(after, c.Load().At.X)
		}
		turns := force * (f.Tack + f.Plan.Center().Y - z) * math.Sin(10*math.Pi/180)
		holds := force*(f.Mast.At-x)*math.Sin(15*math.Pi/180) + 50*math.Max(0, x-after)
		near(t, name+": turning", turns, holds, 0.01*turns)
	}
	if !found {
		t.Error("no boat broaches: this shows nothing")
	}
}

// TestPressedBow: where the bow limits the sail, its freeboard is down to the least.
func TestPressedBow(t *testing.T) {
	b := boat(t, "brook")
	s := b.Frame.Design.Sail()
	s.Rig, s.Area = design.Vee, 3
	f, err := New(b, s, fresh(t))
	if err != nil {
		t.Fatal(err)
	}
	p, err := f.pressed(f.Run.Bow)
	if err != nil || f.Run.Bow > fiercest-0.1 {
		t.Fatalf("the bow is down in %.1f m/s: %v", f.Run.Bow, err)
	}
	near(t, "freeboard", f.Boat.Hull.Freeboard(p).Least, f.Run.Least, 0.5)
	if f.carried() > f.Run.Most()/Gust+1e-9 {
		t.Errorf("carried to %.1f m/s, the limits before the wind are %+v", f.carried(), f.Run)
	}
}
