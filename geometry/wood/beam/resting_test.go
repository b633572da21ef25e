package beam

import (
	"math"
	"testing"
)

// TestOnSprings: many even springs come to an elastic bed. Under one load P the moment is
// P/(4 b), b the fourth root of k/(4 E I), and x farther along that times
// exp(-b x) (cos b x - sin b x). Source: M. Hetenyi, Beams on Elastic Foundation, the beam of
// no end under a single load; as in Roark's Formulas for Stress and Strain.
func TestOnSprings(t *testing.T) {
	const stiff, k, pitch, load = 1.2e9, 0.3, 20.0, 700.0
	r := Resting{Tall: stiff, Flat: stiff / 4}
	for i := -300; i <= 300; i++ {
		r.On = append(r.On, Support{At: pitch * float64(i), Up: k * pitch, Across: k * pitch})
	}
	for _, way := range []struct {
		what  string
		stiff float64
		load  Point
		read  func(tall, flat float64) float64
	}{
		{"tall", stiff, Point{Up: -load}, func(tall, _ float64) float64 { return tall }},
		{"flat", stiff / 4, Point{Across: -load}, func(_, flat float64) float64 { return flat }},
	} {
		c, ok := r.Under(way.load)
		if !ok {
			t.Fatal("does not stand")
		}
		b := math.Pow(k/(4*way.stiff), 0.25)
		for _, x := range []float64{0, 100, 400, 1000} {
			want := load / (4 * b) * math.Exp(-b*x) * (math.Cos(b*x) - math.Sin(b*x))
			if got := way.stiff * way.read(c.At(x)); math.Abs(got-want) > 0.002*load/(4*b) {
				t.Errorf("%s, %g mm off: %.0f N mm, want %.0f", way.what, x, got, want)
			}
		}
	}
}

// TestSpans: on two supports P L/4 under the middle; over three, with a load in the middle of
// one span, 13/64 P L there and -6/64 P L on the middle support. Source: the tables of
// continuous beams of two equal spans, as in the Manual of Steel Construction.
func TestSpans(t *testing.T) {
	const stiff, long, load = 1e9, 600.0, 500.0
	fast := func(x float64) Support { return Support{At: x, Up: math.Inf(1), Across: math.Inf(1)} }
	one := Resting{Tall: stiff, Flat: stiff, On: []Support{fast(0), fast(long)}}
	two := Resting{Tall: stiff, Flat: stiff, On: []Support{fast(0), fast(long), fast(2 * long)}}
	for _, c := range []struct {
		what string
		r    Resting
		at   float64
		want float64
	}{{"one span", one, long / 2, load * long / 4}, {"a quarter along", one, long / 4, load * long / 8}, {"one of two", two, long / 2, 13 * load * long / 64}, {"between them", two, long, -6 * load * long / 64}, {"the end", two, 2 * long, 0}} {
		bent, _ := c.r.Under(Point{At: long / 2, Up: -load})
		tall, flat := bent.At(c.at)
		if math.Abs(tall*stiff-c.want) > 1e-6*load*long || math.Abs(flat) > 1e-15 {
			t.Errorf("%s: %.1f N mm, want %.1f", c.what, tall*stiff, c.want)
		}
	}
	if _, ok := (Resting{Tall: stiff, Flat: stiff, On: []Support{fast(0), {At: long, Across: 1}}}).Under(Point{At: long, Up: -1}); ok {
		t.Error("a stick that one support holds stands")
	}
}

// TestLeaning: a load down bends a stick that leans in both its ways, each by the load's part
// along it over its own stiffness (S. Timoshenko, Strength of Materials, unsymmetrical
// bending); supports that hold it across keep it from going sideways, so that it bends down only.
func TestLeaning(t *testing.T) {
	const tall, flat, long, load, lean = 1.4e9, 0.4e9, 800.0, 300.0, 0.2
	fast := []Support{{At: 0, Up: math.Inf(1), Across: math.Inf(1)}, {At: long, Up: math.Inf(1), Across: math.Inf(1)}}
	free := Resting{Tall: tall, Flat: flat, Lean: lean, On: fast}
	c, _ := free.Under(Point{At: long / 2, Up: -load})
	a, b := c.At(long / 2)
	near(t, "in the tall way", a*tall, load*math.Cos(lean)*long/4, 1e-9)
	near(t, "in the flat way", b*flat, -load*math.Sin(lean)*long/4, 1e-9)
	for x := 10.0; x < long; x += 10 {
		free.On = append(free.On, Support{At: x, Across: math.Inf(1)})
	}
	c, _ = free.Under(Point{At: long / 2, Up: -load})
	a, b = c.At(long / 2)
	near(t, "held, no bend across", a*math.Sin(lean)+b*math.Cos(lean)+1, 1, 1e-12)
	near(t, "held, down", a*tall*math.Cos(lean)-b*flat*math.Sin(lean), load*long/4, 1e-6)
}
