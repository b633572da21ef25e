package curve

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"ribwright/geometry"
)

func TestCubicAt(t *testing.T) {
	c := Cubic{pt(0, 0), pt(8, 16), pt(24, 32), pt(64, -8)}
	for _, row := range []struct {
		name           string
		t              float64
		want, slope    geometry.Point
		tol, tolPerOne float64
	}{ // arithmetic, by hand from the Bernstein weights
		{"start", 0, pt(0, 0), pt(24, 48), 0, 0},
		{"middle", 0.5, pt(20, 17), pt(60, 6), 0, 0},
		{"quarter", 0.25, pt(7.75, 11.125), pt(39, 37.5), 0, 0},
		{"end", 1, pt(64, -8), pt(120, -120), 0, 0},
	} {
		t.Run(row.name, func(t *testing.T) {
			nearPoint(t, "place", c.At(row.t), row.want, row.tol)
			nearPoint(t, "slope", c.Slope(row.t), row.slope, row.tolPerOne)
		})
	}
}

func TestCubicLength(t *testing.T) {
	kappa := 4.0 / 3 * (math.Sqrt2 - 1)
	for _, row := range []struct {
		name      string
		c         Cubic
		want, tol float64
	}{
		{"straight, even handles", Cubic{pt(0, 0), pt(30, 40), pt(60, 80), pt(90, 120)}, 150, 1e-11},                                    // arithmetic
		{"straight, uneven handles", Cubic{pt(0, 0), pt(3, 4), pt(78, 104), pt(90, 120)}, 150, 1e-11},                                   // arithmetic
		{"straight, no handles", Cubic{pt(0, 0), pt(0, 0), pt(90, 120), pt(90, 120)}, 150, 1e-11},                                       // arithmetic
		{"a point", Cubic{pt(7, 8), pt(7, 8), pt(7, 8), pt(7, 8)}, 0, 0},                                                                // arithmetic
		{"quarter circle", Cubic{pt(100, 0), pt(100, 100*kappa), pt(100*kappa, 100), pt(0, 100)}, 50 * math.Pi, 2.73e-4 * 50 * math.Pi}, // pi/2 R, off by less than its radius is, 2.73e-4 (from memory)
		// y = x^2 from 0 to 1, raised in degree: sqrt(5)/2 + asinh(2)/4. Calculus.
		{"parabola", Cubic{pt(0, 0), pt(1.0/3, 0), pt(2.0/3, 1.0/3), pt(1, 1)}, math.Sqrt(5)/2 + math.Asinh(2)/4, 1e-12},
		// (t^2, t - t^3/3) from 0 to 1 has the speed 1 + t^2, so the length 4/3. Calculus.
		{"speed a polynomial", Cubic{pt(0, 0), pt(0, 1.0/3), pt(1.0/3, 2.0/3), pt(1, 2.0/3)}, 4.0 / 3, 1e-14},
	} {
		t.Run(row.name, func(t *testing.T) {
			near(t, fmt.Sprint(row.c), row.c.Length(), row.want, row.tol, "mm")
			r := row.c.Reverse().(Cubic)
			near(t, fmt.Sprintf("%v", r), r.Length(), row.want, row.tol, "mm reversed")
		})
	}
}

// Segment promises 1e-6 of the length for less than a half turn.
func TestCubicLengthRandom(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 10))
	for range 40 {
		// Handles of any length whose polygon turns left twice, by less than a half
		// turn together.
		first := random.Float64() * 0.9 * math.Pi
		second := random.Float64() * (0.9*math.Pi - first)
		p1 := geometry.Polar(100*random.Float64(), 0)
		p2 := p1.Add(geometry.Polar(100*random.Float64(), first))
		p3 := p2.Add(geometry.Polar(100*random.Float64(), first+second))
		c := Cubic{pt(0, 0), p1, p2, p3}
		near(t, fmt.Sprint(c), c.Length(), chords(c), 1e-6*c.Length(), "mm")
	}
}

func TestCubicBounds(t *testing.T) {
	root := math.Sqrt(3)
	for _, row := range []struct {
		name      string
		c         Cubic
		low, high geometry.Point
		tol       float64
	}{ // calculus, by hand: where the derivative is zero
		// y = 30 t (1 - t) has its top 7.5 in the middle, x = 30 t.
		{"an arch", Cubic{pt(0, 0), pt(10, 10), pt(20, 10), pt(30, 0)}, pt(0, 0), pt(30, 7.5), 1e-14},
		{"a sagging arch", Cubic{pt(0, 0), pt(10, -10), pt(20, -10), pt(30, 0)}, pt(0, -7.5), pt(30, 0), 1e-14},
		// y = 3 t (1-t) (1-2t) turns at (3 -+ sqrt 3)/6 with height sqrt(3)/6.
		{"a wave", Cubic{pt(0, 0), pt(10, 1), pt(20, -1), pt(30, 0)}, pt(0, -root/6), pt(30, root/6), 1e-14},
		{"a wave of a tenth of a millimetre", Cubic{pt(0, 0), pt(1, 0.1), pt(2, -0.1), pt(3, 0)}, pt(0, -root/60), pt(3, root/60), 1e-15},
		{"a wave on its side", Cubic{pt(0, 0), pt(1, 10), pt(-1, 20), pt(0, 30)}, pt(-root/6, 0), pt(root/6, 30), 1e-14},
		// Both coordinates rise all the way.
		{"nothing beyond the ends", Cubic{pt(0, 0), pt(1, 2), pt(3, 3), pt(9, 9)}, pt(0, 0), pt(9, 9), 0},
		// y = t^2 in full degree: the third-power term is nothing.
		{"a parabola from its foot", Cubic{pt(-1, 1), pt(-1.0/3, -1.0/3), pt(1.0/3, -1.0/3), pt(1, 1)}, pt(-1, 0), pt(1, 1), 1e-15},
		{"straight", Cubic{pt(5, 0), pt(5, 1), pt(5, 2), pt(5, 3)}, pt(5, 0), pt(5, 3), 1e-15},
	} {
		t.Run(row.name, func(t *testing.T) {
			b := row.c.Bounds()
			nearPoint(t, "lower left", b.Min, row.low, row.tol)
			nearPoint(t, "upper right", b.Max, row.high, row.tol)
		})
	}
}

// Property: bounds hold every sample and touch one at each edge.
func TestCubicBoundsRandom(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 12))
	draw := func() geometry.Point { return pt(random.NormFloat64()*100, random.NormFloat64()*100) }
	for range 100 {
		c := Cubic{draw(), draw(), draw(), draw()}
		samples := geometry.EmptyBox()
		const n = 2000
		for k := 0; k <= n; k++ {
			samples = samples.Union(geometry.Around(c.At(float64(k) / n)))
		}
		b := c.Bounds()
		if grown := b.Grow(1e-9); !grown.Holds(samples.Min) || !grown.Holds(samples.Max) {
			t.Errorf("%v: the box %v does not hold the samples %v", c, b, samples)
		}
		nearPoint(t, fmt.Sprintf("lower left of %v", c), b.Min, samples.Min, 0.001)
		nearPoint(t, fmt.Sprintf("upper right of %v", c), b.Max, samples.Max, 0.001)
	}
}
