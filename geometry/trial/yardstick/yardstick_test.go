package yardstick

import (
	"math"
	"os"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/survey/offsets"
	"ribwright/geometry/water/float"
)

// TestFor floats every known boat anew by its offsets. Each figure of the list is that of the boat, rounded; and none
// goes over before water comes in.
func TestFor(t *testing.T) {
	files := map[string]string{"figure 31": "fig31", "figure 69": "fig69", "figure 108": "fig108", "1883": "cruising"}
	for people, kg := range map[int]float64{1: 75, 2: 150} {
		for _, b := range For(people) {
			var h *float.Hull
			l := float.Load{Mass: b.Mass, At: geometry.Point3{Z: 330}}
			for word, file := range files {
				if strings.Contains(b.Name, word) {
					h = measured(t, file)
				}
			}
			if h == nil {
				t.Fatalf("%s has no offsets", b.Name)
			}
			l.At.X = h.Immerse(h.Sunk(float.Volume(l.Mass, 1000))).Center().X
			p, _, err := h.Balance(l, 1000, 0, nil)
			if err != nil {
				t.Fatal(err)
			}
			c, err := h.Curve(l, 1000, float.Fine)
			if err != nil {
				t.Fatal(err)
			}
			s := c.Standing(l.Mass, kg, h.Upright(p, l, 1000))
			for what, v := range map[string][2]float64{
				"kg": {b.Mass, l.Mass}, "people": {b.People, kg}, "lever": {b.Lever, s.Most}, "moment": {b.Moment, s.Moment / 1000},
				"flooding": {b.Flooding, s.Flooding * 180 / math.Pi}, "held": {b.Held, s.Held},
			} {
				if !(math.Abs(v[0]-v[1]) <= 0.51) {
					t.Errorf("%s: %s %.2f, listed %.0f", b.Name, what, v[1], v[0])
				}
			}
			for i, want := range b.Levers {
				at := math.Min(float64(i)*Step*math.Pi/180, s.Flooding)
				if got := lever(c, at); !(math.Abs(got-want) <= 0.75) {
					t.Errorf("%s: %.2f mm at %.1f deg, listed %.0f", b.Name, got, at*180/math.Pi, want)
				}
			}
			if n := int(math.Ceil(b.Flooding/Step)) + 1; len(b.Levers) != n {
				t.Errorf("%s: %d levers up to %.0f deg, want %d", b.Name, len(b.Levers), b.Flooding, n)
			}
			if !math.IsNaN(s.GoesOver) {
				t.Errorf("%s goes over at %.1f deg", b.Name, s.GoesOver*180/math.Pi)
			}
		}
	}
}

// lever is a curve's at a heel, between its levers in a straight line.
func lever(c float.Curve, heel float64) float64 {
	last := c.Levers[0]
	for _, v := range c.Levers[1:] {
		if v.Heel >= heel-1e-9 {
			return last.GZ + (v.GZ-last.GZ)*(heel-last.Heel)/(v.Heel-last.Heel)
		}
		last = v
	}
	return math.NaN()
}

func measured(t *testing.T, name string) *float.Hull {
	t.Helper()
	f, err := os.Open("../../../testdata/offsets/" + name + ".csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	table, err := offsets.Read(f, name)
	if err != nil {
		t.Fatal(err)
	}
	h, err := table.Hull()
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// TestSteadier lays boats between the known ones.
func TestSteadier(t *testing.T) {
	for _, c := range []struct {
		lever      float64
		people     int
		than, from int
	}{{0, 1, 0, 4}, {32, 1, 0, 4}, {36, 0, 1, 4}, {100, 1, 4, 4}, {20, 2, 2, 3}, {13, 3, 0, 3}} {
		if than, of := Steadier(c.lever, c.people); than != c.than || of != c.from {
			t.Errorf("%g mm, %d people: %d of %d, want %d of %d", c.lever, c.people, than, of, c.than, c.from)
		}
	}
}
