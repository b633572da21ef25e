package pair

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/water/float"
)

// TestLesserOfBoxes: equal boxes with the weight 30 mm to port, by the closed form of
// TestBoxesHeel: to starboard 30 cos p more than with the weight in the middle, to
// port as much less.
func TestLesserOfBoxes(t *testing.T) {
	const b, s, draft, off, kg = 500.0, 2000.0, 200.0, 30.0, 300.0
	hull := box(t, 4000, b, 700)
	h := NewHulls(hull, hull, s, 0)
	l := float.Load{Mass: 2 * 4000 * b * draft * 1e-6, At: geometry.Point3{Y: off, Z: kg}}
	var c Craft
	for i, way := range []float64{1, -1} {
		var err error
		if c.Curves[i], err = h.Curve(l, 1000, way*math.Pi/180); err != nil {
			t.Fatal(err)
		}
	}
	lesser := c.Lesser()
	for _, deg := range []int{0, 1, 3, 5} {
		sin, cos := math.Sincos(float64(deg) * math.Pi / 180)
		tan := sin / cos
		y, z := (b*b/12+s*s/4)*tan/draft, draft/2+(b*b/12+s*s/4)*tan*tan/2/draft
		even := y*cos + (z-kg)*sin
		near(t, "GZ to starboard", c.Curves[0].Levers[deg].GZ, even+off*cos, 1e-3)
		near(t, "GZ to port", c.Curves[1].Levers[deg].GZ, even-off*cos, 1e-3)
		near(t, "lesser GZ", lesser.Levers[deg].GZ, even-off*cos, 1e-3)
		near(t, "its heel", lesser.Levers[deg].Heel, float64(deg)*math.Pi/180, 1e-12)
	}
}

// TestLesserCrosses has curves that cross, by hand: at each heel the lesser, as far as
// the shorter one, with the first of both ends.
func TestLesserCrosses(t *testing.T) {
	of := func(way float64, gz ...float64) (out []Lever) {
		for i, v := range gz {
			out = append(out, Lever{Heel: way * float64(i) / 10, GZ: v})
		}
		return out
	}
	c := Craft{Curves: [2]Curve{
		{Levers: of(1, 50, 300, 500, 450, 400), Lift: 0.23, Flooded: 0.45},
		{Levers: of(-1, -50, 200, 520, 480), Lift: -0.27, Flooded: -0.35},
	}}
	got := c.Lesser()
	for i, want := range []float64{-50, 200, 500, 450} {
		near(t, "lesser", got.Levers[i].GZ, want, 0)
		near(t, "heel", got.Levers[i].Heel, float64(i)/10, 1e-12)
	}
	if len(got.Levers) != 4 || got.Most.GZ != 500 || got.Lift != 0.23 || got.Flooded != 0.35 {
		t.Errorf("%d levers, most %g, lift %g, flooded %g", len(got.Levers), got.Most.GZ, got.Lift, got.Flooded)
	}
	// Water that comes in on one side before the other lifts is the end of both; a
	// heel that is none never comes.
	c.Curves[0].Lift, c.Curves[1].Lift, c.Curves[0].Flooded = 0.4, math.NaN(), math.NaN()
	if got := c.Lesser(); !math.IsNaN(got.Lift) || got.Flooded != 0.35 {
		t.Errorf("lift %g, flooded %g", got.Lift, got.Flooded)
	}
}
