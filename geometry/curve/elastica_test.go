package curve

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

// mustElastica returns the elastica through the pins.
func mustElastica(t testing.TB, x, y []float64) *Elastica {
	t.Helper()
	e, err := NewElastica(x, y)
	if err != nil {
		t.Fatalf("pins %v, %v: %v", x, y, err)
	}
	return e
}

// length returns the arc length from a to b, mm.
func (e *Elastica) length(a, b float64) float64 {
	return Integrate(func(x float64) float64 {
		_, slope, _ := e.At(x)
		return math.Hypot(1, slope)
	}, a, b, 64)
}

// A stick held in the middle and at both ends is two cantilevers back to back. Tip
// places and P L²/(E I) by elliptic integrals: K. Mattiasson, "Numerical results from
// large deflection beam and frame problems analysed by means of elliptic integrals",
// Int. J. Numer. Methods Eng. 17, 1981; also S. P. Timoshenko and J. M. Gere,
// Mechanics of Materials, large deflections of a cantilever.
func TestElasticaCantilever(t *testing.T) {
	for _, want := range []struct{ load, x, y float64 }{
		{0.2, 1 - 0.00265, 0.06636}, {1, 1 - 0.05643, 0.30172}, {2, 1 - 0.16064, 0.49346}, {5, 1 - 0.38763, 0.71379},
	} {
		t.Run(fmt.Sprint(want.load), func(t *testing.T) {
			const half = 1000.0
			at := func(ratio float64) (load, l float64) {
				e := mustElastica(t, []float64{-half, 0, half}, []float64{0, ratio * half, 0})
				l = e.length(-half, 0)
				return e.Pushes()[1] / 2 * l * l, l
			}
			ratio := Bisect(0, 2, func(r float64) bool { load, _ := at(r); return load < want.load })
			_, l := at(ratio)
			near(t, "x of the tip over the length", half/l, want.x, 1e-4, "")
			near(t, "y of the tip over the length", ratio*half/l, want.y, 1e-4, "")
		})
	}
}

// The lesser the bend, the nearer to the batten: the difference over the offset falls
// with the square of the offset, and the pushes tend to 6 E I D/(a² (3 L - 4 a)) of
// two equal spreaders. Source: S. Timoshenko, Strength of Materials.
func TestElasticaTendsToBatten(t *testing.T) {
	const l, a = 3500.0, 850.0
	x := []float64{0, a, l - a, l}
	last := math.Inf(1)
	for _, d := range []float64{100, 10, 1} {
		y := []float64{0, d, d, 0}
		e, b := mustElastica(t, x, y), mustBatten(t, x, y)
		off := 0.0
		for s := 0.0; s <= l; s += 50 {
			got, _ := e.Rise(s)
			want, _ := b.Rise(s)
			off = math.Max(off, math.Abs(got-want)/d)
		}
		if !(off < last/90) {
			t.Errorf("offset %g: off by %g of it, %g with ten times the offset", d, off, last)
		}
		last = off
		near(t, fmt.Sprintf("push over the beam's at offset %g", d), e.Pushes()[1]*a*a*(3*l-4*a)/(6*d), 1, 1.2*math.Pow(d/a, 2), "")
	}
}

// Twice as large is the same shape, turned over it is its mirror, and end for end too.
func TestElasticaLikeness(t *testing.T) {
	x, y := []float64{-1700, -900, 0, 700, 1650}, []float64{10, 270, 360, 300, 12}
	e := mustElastica(t, x, y)
	of := func(stretch, up float64, back bool) *Elastica {
		n := len(x)
		xs, ys := make([]float64, n), make([]float64, n)
		for i := range x {
			if back {
				xs[n-1-i], ys[n-1-i] = -x[i], y[i]
				continue
			}
			xs[i], ys[i] = stretch*x[i], stretch*up*y[i]
		}
		return mustElastica(t, xs, ys)
	}
	large, turned, back := of(2, 1, false), of(1, -1, false), of(1, 1, true)
	for s := -1700.0; s <= 1650; s += 67 {
		what := fmt.Sprintf("at %g", s)
		y, slope, second := e.At(s)
		for _, o := range []struct {
			of      string
			e       *Elastica
			at      float64
			a, b, c float64
		}{{"twice as large", large, 2 * s, 0.5, 1, 2}, {"upside down", turned, s, -1, -1, -1}, {"end for end", back, -s, 1, -1, 1}} {
			gotY, gotSlope, gotSecond := o.e.At(o.at)
			near(t, what+", "+o.of, gotY*o.a, y, 1e-8, "mm")
			near(t, what+", "+o.of, gotSlope*o.b, slope, 1e-10, "")
			near(t, what+", "+o.of, gotSecond*o.c, second, 1e-12, "1/mm")
		}
	}
}

// Through its pins; curvature the derivative of the heading and running straight
// between pins; the pushes in balance and, with the curvature, those of a beam: the
// moment at a place is that of all pushes aft of it.
func TestElasticaLaw(t *testing.T) {
	random := rand.New(rand.NewPCG(31, 32))
	for trial := range 60 {
		x, y := randomPins(random, 2+trial%9)
		for i := range y {
			y[i] /= 40 // headings up to some 30 degrees
		}
		e, err := NewElastica(x, y)
		if err != nil {
			if !strings.Contains(err.Error(), "square across") {
				t.Errorf("pins %v, %v: %v", x, y, err)
			}
			continue
		}
		push := e.Pushes()
		for i := range x {
			got, _ := e.Rise(x[i])
			near(t, fmt.Sprintf("pins %v, %v: pin %d", x, y, i), got, y[i], 1e-7, "mm")
		}
		for k := 1; k < 60; k++ {
			at := x[0] + (x[len(x)-1]-x[0])*float64(k)/60
			moment := 0.0
			for i := range x {
				moment += push[i] * math.Max(0, at-x[i])
			}
			what := fmt.Sprintf("pins %v, %v at %g", x, y, at)
			near(t, what+": moment", e.Curvature(at), moment, 1e-10, "1/mm")
			const h = 1e-3
			below, down, _ := e.At(at - h)
			above, up, _ := e.At(at + h)
			_, slope, second := e.At(at)
			near(t, what+": slope", (above-below)/(2*h), slope, 2e-6*(1+slope*slope*slope*slope), "")
			near(t, what+": turn", (math.Atan(up)-math.Atan(down))/(2*h)/math.Hypot(1, slope), e.Curvature(at), 1e-6, "1/mm")
			near(t, what+": second derivative", second, e.Curvature(at)*math.Pow(1+slope*slope, 1.5), 1e-9*(1+math.Abs(second)), "1/mm")
		}
		force, turn := 0.0, 0.0
		for i, p := range push {
			force, turn = force+p, turn+p*(x[i]-x[0])
		}
		near(t, "all pushes", force, 0, 1e-12, "1/mm2")
		near(t, "their turn", turn, 0, 1e-10, "1/mm")
	}
}

// Beyond the ends it runs on straight; two pins make a straight line.
func TestElasticaEnds(t *testing.T) {
	e := mustElastica(t, []float64{0, 100}, []float64{10, 60})
	for _, x := range []float64{-50, 0, 30, 100, 180} {
		y, slope, second := e.At(x)
		near(t, fmt.Sprint("at ", x), y, 10+x/2, 1e-9, "mm")
		near(t, "slope", slope, 0.5, 1e-12, "")
		near(t, "second", second, 0, 0, "1/mm")
	}
	e = mustElastica(t, []float64{0, 100, 200}, []float64{0, 30, 0})
	y0, s0, _ := e.At(200)
	y, s, second := e.At(250)
	near(t, "beyond", y, y0+50*s0, 1e-9, "mm")
	near(t, "slope beyond", s, s0, 0, "")
	near(t, "bend beyond", second+e.Curvature(250)+e.Curvature(-1), 0, 0, "1/mm")
	e.At(math.NaN())
}

// Pins that no stick goes through get an error with the place; pins that are none, the
// batten's.
func TestElasticaRefuses(t *testing.T) {
	for _, c := range []struct {
		name string
		x, y []float64
		says string
	}{
		{"zigzag", []float64{0, 10, 20, 30, 40}, []float64{0, 300, 0, 300, 0}, "square across"},
		{"one pin", []float64{0}, []float64{0}, "two pins"},
		{"out of order", []float64{0, 0}, []float64{0, 1}, "does not follow"},
		{"no number", []float64{0, math.NaN()}, []float64{0, 1}, "no place"},
	} {
		if _, err := NewElastica(c.x, c.y); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want %q", c.name, err, c.says)
		}
	}
}

// Twice as many panels would not move it: cubic pieces laid through slopes alone, one
// Simpson's step a millimeter, end at the same heights.
func TestElasticaPanels(t *testing.T) {
	for _, c := range []struct{ rise, within float64 }{{300, 1e-9}, {600, 1e-7}, {1000, 1e-4}} {
		e := mustElastica(t, []float64{-1000, 0, 1000}, []float64{0, c.rise, 0})
		y := 0.0
		for x := -1000.0; x < 0; x++ {
			_, a := e.Rise(x)
			_, m := e.Rise(x + 0.5)
			_, b := e.Rise(x + 1)
			y += (a + 4*m + b) / 6
			got, _ := e.Rise(x + 1)
			near(t, fmt.Sprintf("rise %g at %g", c.rise, x+1), got, y, c.within, "mm")
		}
	}
}

func BenchmarkElastica(b *testing.B) {
	x, y := []float64{-1700, -900, 0, 900, 1700}, []float64{10, 276, 360, 276, 10}
	b.Run("new", func(b *testing.B) {
		for range b.N {
			mustElastica(b, x, y)
		}
	})
	e := mustElastica(b, x, y)
	spline, err := NewBatten(x, y)
	if err != nil {
		b.Fatal(err)
	}
	b.Run("at", func(b *testing.B) {
		for i := range b.N {
			e.At(float64(i%3000) - 1500)
		}
	})
	b.Run("batten at", func(b *testing.B) {
		for i := range b.N {
			spline.At(float64(i%3000) - 1500)
		}
	})
}
