package float

import (
	"math"
	"testing"

	"ribwright/geometry"
)

// round is a trough whose half section is a quarter of a circle about a point on the
// sheer's level, mm.
func round(t testing.TB, radius float64) *Hull {
	t.Helper()
	var half []geometry.Point
	const n = 400
	for i := range n + 1 {
		s, c := math.Sincos(math.Pi / 2 * float64(i) / n)
		half = append(half, geometry.Point{X: radius * s, Y: radius - radius*c})
	}
	return trough(t, half...)
}

func standing(t testing.TB, h *Hull, l Load, people, step float64) Standing {
	t.Helper()
	p, _, err := h.Balance(l, 1000, 0, nil)
	if err != nil {
		t.Fatal(err)
	}
	c, err := h.Curve(l, 1000, step)
	if err != nil {
		t.Fatal(err)
	}
	return c.Standing(l.Mass, people, h.Upright(p, l, 1000))
}

// TestStandingOfCircle: buoyancy of a circular section always passes through its center,
// so GZ is GM sin(heel) and the greatest stands where the sheer dips, at the heel whose
// sine is the water's depth under the center over the radius. A weight that moves by a
// heels it with its share of a cos(heel).
func TestStandingOfCircle(t *testing.T) {
	const radius, draft, kg = 400.0, 150.0, 250.0
	h := round(t, radius)
	l := Load{h.Immerse(Level(draft)).Volume * 1e-6, geometry.Point3{Z: kg}}
	dips := math.Asin((radius - draft) / radius)
	for _, step := range []float64{Fine, 5 * degree} {
		s := standing(t, h, l, l.Mass/2, step)
		near64(t, "lever", s.Most, (radius-kg)*math.Sin(dips), 1e-3)
		near64(t, "at", s.MostAt, dips, 1e-4)
		near64(t, "flooding", s.Flooding, dips, 1e-4)
		near64(t, "moment", s.Moment, l.Mass*9.80665*(radius-kg)*math.Sin(dips), 1e-3)
		near64(t, "held", s.Held, 2*(radius-kg)*math.Tan(dips), 1e-3)
		near64(t, "trim", s.Trim, 0, 1e-6)
		if !math.IsNaN(s.GoesOver) || s.Over() != s.Flooding {
			t.Errorf("goes over at %g, stands to %g", s.GoesOver, s.Over())
		}
	}
}

// TestStandingOfBox: a box that falls over by itself before water comes in. At the heel
// given its lever is nothing, its greatest is no less than any of levers taken one by one,
// and a weight held a little nearer than Held comes to rest, a little farther does not.
func TestStandingOfBox(t *testing.T) {
	h := trough(t, geometry.Point{X: 300}, geometry.Point{X: 300, Y: 700})
	l := Load{h.Immerse(Level(80)).Volume * 1e-6, geometry.Point3{Z: 330}}
	for _, step := range []float64{Fine, 5 * degree} {
		s := standing(t, h, l, l.Mass*0.7, step)
		most := 0.0
		for heel := 0.5 * degree; heel < s.GoesOver; heel += 0.5 * degree {
			v, err := h.Righting(l, 1000, heel, nil)
			if err != nil {
				t.Fatal(err)
			}
			most = math.Max(most, v.GZ)
		}
		near64(t, "greatest lever", s.Most, most, 0.02*most)
		v, err := h.Righting(l, 1000, s.GoesOver, nil)
		if err != nil || math.Abs(v.GZ) > 0.2 || !(s.GoesOver < s.Flooding) || s.Over() != s.GoesOver {
			t.Errorf("goes over at %.2f deg with a lever of %.2f mm: %v", s.GoesOver/degree, v.GZ, err)
		}
		for share, rests := range map[float64]bool{0.96: true, 1.04: false} {
			if _, _, err := h.Settle(l.Shifted(l.Mass*0.7, geometry.Point3{Y: share * s.Held}), 1000); (err == nil) != rests {
				t.Errorf("held %.0f %% of %.1f mm aside: %v", 100*share, s.Held, err)
			}
		}
	}
}

// TestMost: between levers that lie on a parabola, evenly spread or not, the greatest is
// the parabola's own, not that of a step.
func TestMost(t *testing.T) {
	for _, heels := range [][]float64{{0, 0.1, 0.2, 0.3, 0.4, 0.5}, {0, 0.15, 0.33, 0.44, 0.6}} {
		var c Curve
		for _, h := range heels {
			c.Levers = append(c.Levers, Lever{Heel: h, GZ: 40 - 300*(h-0.37)*(h-0.37)})
		}
		heel, value := c.most(func(l Lever) float64 { return l.GZ })
		near64(t, "at", heel, 0.37, 1e-12)
		near64(t, "greatest", value, 40, 1e-12)
	}
}

// TestStandingOfNothing: a boat that nothing rights has no lever and goes over at once;
// nobody aboard can hold nothing.
func TestStandingOfNothing(t *testing.T) {
	s := (Curve{Flooding: math.NaN()}).Standing(100, 0, Hydrostatics{})
	if s.Most != 0 || s.Moment != 0 || s.GoesOver != 0 || s.Held != 0 || s.Over() != 0 {
		t.Errorf("%+v", s)
	}
	if got := (Standing{GoesOver: math.NaN(), Flooding: math.NaN()}).Over(); got != math.Pi/2 {
		t.Errorf("a boat that neither goes over nor fills stands to %g", got)
	}
}
