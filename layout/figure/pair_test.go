package figure

import (
	"math"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/outfit/pair"
	"ribwright/geometry/water"
)

func ladenBoat(t *testing.T, name string) aboard.Boat {
	t.Helper()
	f := frametest.Shipped(t, name, nil)
	b, err := aboard.New(f, weight.People(f.Design), f.Design.Gear)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// unlike is a pair of two boats that are not alike, which lists.
func unlike(t *testing.T) *pair.Craft {
	t.Helper()
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		t.Fatal(err)
	}
	lake := ladenBoat(t, "lake")
	c, err := pair.New(lake, ladenBoat(t, "river"), lake.Frame.Design.Pair(), w)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestPairLevers: at each heel the plot has no more than either side's curve, and it
// ends and is marked where the first of both is.
func TestPairLevers(t *testing.T) {
	c := unlike(t)
	p := PairLevers(c)
	line := p.Curves[0].Points
	for i, q := range line {
		if want := math.Min(c.Curves[0].Levers[i].GZ, c.Curves[1].Levers[i].GZ); q.Y != want {
			t.Errorf("at %.0f deg %.1f mm, want %.1f", q.X, q.Y, want)
		}
	}
	if want := min(len(c.Curves[0].Levers), len(c.Curves[1].Levers)); len(line) != want {
		t.Errorf("%d points, want %d", len(line), want)
	}
	marks := map[string]float64{}
	for _, m := range p.Marks {
		marks[m.Name] = m.X * math.Pi / 180
	}
	for i, v := range c.Curves {
		if lift := marks["windward hull lifts"]; lift == 0 || lift > math.Abs(v.Lift)+1e-9 {
			t.Errorf("lift is marked at %g, of side %d it is %g", lift, i, v.Lift)
		}
		if in := marks["water comes in"]; in == 0 || in > math.Abs(v.Flooded)+1e-9 {
			t.Errorf("water is marked at %g, of side %d it comes at %g", in, i, v.Flooded)
		}
	}
}
