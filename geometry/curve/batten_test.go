package curve

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

// mustBatten returns the batten through the pins.
func mustBatten(t *testing.T, x, y []float64) *Batten {
	t.Helper()
	b, err := NewBatten(x, y)
	if err != nil {
		t.Fatalf("pins %v, %v: %v", x, y, err)
	}
	return b
}

// randomPins returns n pins in order along x, 20 to 520 mm apart.
func randomPins(random *rand.Rand, n int) (x, y []float64) {
	at := random.NormFloat64() * 1000
	for range n {
		x, y = append(x, at), append(y, random.NormFloat64()*300)
		at += 20 + 500*random.Float64()
	}
	return x, y
}

// A batten held at both ends and pushed out by D in the middle is the simply
// supported beam under a central load: y = D (3 x/L - 4 (x/L)^3) up to the
// middle. Source: S. Timoshenko, Strength of Materials, beam deflection.
func TestBattenOneSpreader(t *testing.T) {
	for _, row := range []struct{ l, d float64 }{{4880, 430}, {1, 1}, {3000, -12}} {
		t.Run(fmt.Sprintf("L %g, D %g", row.l, row.d), func(t *testing.T) {
			l, d := row.l, row.d
			b := mustBatten(t, []float64{-l / 2, 0, l / 2}, []float64{0, d, 0})
			for _, share := range []float64{0, 0.1, 0.25, 0.4, 0.5} {
				y, slope, second := b.At(-l/2 + share*l)
				what := fmt.Sprintf("at %g L", share)
				near(t, what, y, d*(3*share-4*share*share*share), 1e-12*math.Abs(d), "mm")
				near(t, what, slope, d/l*(3-12*share*share), 1e-12*math.Abs(d/l), "mm per mm")
				near(t, what, second, -24*d/(l*l)*share, 1e-12*math.Abs(d)/(l*l), "1/mm")
				mirrored, down, _ := b.At(l/2 - share*l)
				near(t, what+" from the other end", mirrored, y, 1e-12*math.Abs(d), "mm")
				near(t, what+" from the other end", down, -slope, 1e-12*math.Abs(d/l), "mm per mm")
			}
			quarter, _, _ := b.At(-l / 4)
			near(t, "at a quarter of the length", quarter, 0.6875*d, 1e-12*math.Abs(d), "mm")
			_, end, _ := b.At(-l / 2)
			near(t, "slope at the end", end, 3*d/l, 1e-12*math.Abs(d/l), "mm per mm")
		})
	}
}

// Two equal spreaders at a from each end are two equal loads: in the middle the
// beam stands at D (3 L^2 - 4 a^2) / (4 a (3 L - 4 a)). Source: as above.
func TestBattenTwoSpreaders(t *testing.T) {
	for _, row := range []struct {
		name            string
		l, a, d, want   float64
		tol, wantSecond float64
	}{
		// L = 3a: (27 - 4)/(4 (9 - 4)) = 1.15. Arithmetic.
		{"at the thirds", 3000, 1000, 100, 115, 1e-11, -6 * 100 / (1000.0 * (3*3000 - 4*1000))},
		// L = 4a: (48 - 4)/(4 (12 - 4)) = 1.375. Arithmetic.
		{"at the quarters", 4000, 1000, 100, 137.5, 1e-11, -6 * 100 / (1000.0 * (3*4000 - 4*1000))},
		{"close to the ends", 5000, 200, 10, 10 * (3*25e6 - 4*4e4) / (800 * (15000 - 800)), 1e-11, -6 * 10 / (200.0 * (3*5000 - 4*200))},
	} {
		t.Run(row.name, func(t *testing.T) {
			b := mustBatten(t, []float64{0, row.a, row.l - row.a, row.l}, []float64{0, row.d, row.d, 0})
			y, slope, second := b.At(row.l / 2)
			near(t, "middle", y, row.want, row.tol, "mm")
			near(t, "slope in the middle", slope, 0, 1e-15, "mm per mm")
			// Between the loads the moment is P a, so y'' is the same everywhere there.
			near(t, "second in the middle", second, row.wantSecond, 1e-15, "1/mm")
			_, _, at := b.At(row.a)
			near(t, "second at the spreader", at, row.wantSecond, 1e-15, "1/mm")
		})
	}
}

// Properties of the elastic batten: it passes its pins without a kink in place,
// slope or bend, is free (unbent) at both ends, and its bend is linear between
// pins. Only one curve has all of these. Elementary beam theory.
func TestBattenIsTheSpline(t *testing.T) {
	random := rand.New(rand.NewPCG(15, 16))
	for trial := range 30 {
		x, y := randomPins(random, 2+trial%12)
		b := mustBatten(t, x, y)
		last := len(x) - 1
		if start, end := b.Ends(); start != x[0] || end != x[last] {
			t.Errorf("ends %g and %g, want %g and %g mm", start, end, x[0], x[last])
		}
		for i := range x {
			what := fmt.Sprintf("pins %v, %v: pin %d", x, y, i)
			value, slope, second := b.At(x[i])
			near(t, what, value, y[i], 1e-10, "mm")
			if i == 0 || i == last {
				near(t, what+", free end", second, 0, 1e-15, "1/mm")
				continue
			}
			afterValue, afterSlope, afterSecond := b.At(math.Nextafter(x[i], math.Inf(1)))
			near(t, what+", just behind", afterValue, value, 1e-9, "mm")
			near(t, what+", slope just behind", afterSlope, slope, 1e-10, "mm per mm")
			near(t, what+", second just behind", afterSecond, second, 1e-12, "1/mm")
		}
		for i := range last {
			what := fmt.Sprintf("pins %v, %v: piece %d", x, y, i)
			at := x[i] + (x[i+1]-x[i])*random.Float64()
			value, slope, second := b.At(at)
			_, firstSlope, firstSecond := b.At(math.Nextafter(x[i], math.Inf(1)))
			_, _, nextSecond := b.At(x[i+1])
			share := (at - x[i]) / (x[i+1] - x[i])
			near(t, what+", second is linear", second, firstSecond+share*(nextSecond-firstSecond), 1e-12, "1/mm")
			gained := Integrate(func(x float64) float64 { _, _, s := b.At(x); return s }, x[i], at, 1)
			near(t, what+", slope is the sum of the seconds", slope-firstSlope, gained, 1e-10, "mm per mm")
			climbed := Integrate(func(x float64) float64 { _, s, _ := b.At(x); return s }, x[i], at, 1)
			near(t, what+", value is the sum of the slopes", value-y[i], climbed, 1e-9, "mm")
		}
	}
}

// Property: outside its end pins a batten carries no load, so it is straight.
func TestBattenOutside(t *testing.T) {
	random := rand.New(rand.NewPCG(31, 32))
	x, y := randomPins(random, 9)
	b := mustBatten(t, x, y)
	for _, row := range []struct {
		name      string
		pin, step float64
	}{{"before", x[0], -1}, {"behind", x[8], 1}} {
		y0, s0, _ := b.At(row.pin)
		if math.Abs(s0) < 0.01 {
			t.Fatalf("%s: slope %g at the pin is too small to tell", row.name, s0)
		}
		for _, far := range []float64{0.001, 1, 5000} {
			got, slope, second := b.At(row.pin + far*row.step)
			what := fmt.Sprintf("%s by %g mm", row.name, far)
			near(t, what, got, y0+s0*far*row.step, 1e-9, "mm")
			near(t, what, slope, s0, 0, "mm per mm")
			near(t, what, second, 0, 0, "1/mm")
		}
	}
}

// Property of least energy: the bend of the batten times the bend of any change
// that leaves the pins alone sums to nothing, so every change costs energy.
// Source: J. C. Holladay, Math. Tables Aids Comput. 11, 1957.
func TestBattenLeastEnergy(t *testing.T) {
	x := []float64{-3, -1, 0.5, 2, 3.5}
	b := mustBatten(t, x, []float64{1, -2, 3, 0.5, 2})
	// change is the product of all x - x[i]: zero at every pin. Its second
	// derivative is the sum over the pairs left out, twice.
	changeSecond := func(at float64) float64 {
		sum := 0.0
		for i := range x {
			for j := range x {
				term := 1.0
				for k := range x {
					if k != i && k != j {
						term *= at - x[k]
					}
				}
				if i != j {
					sum += term
				}
			}
		}
		return sum
	}
	cross, energy := 0.0, 0.0
	for i := 1; i < len(x); i++ { // pieces are polynomials, so the sums are exact
		cross += Integrate(func(at float64) float64 {
			_, _, second := b.At(at)
			return second * changeSecond(at)
		}, x[i-1], x[i], 2)
		energy += Integrate(func(at float64) float64 {
			_, _, second := b.At(at)
			return second * second
		}, x[i-1], x[i], 2)
	}
	near(t, "bend of the batten times bend of the change", cross, 0, 1e-11, "")
	if energy < 1 {
		t.Errorf("energy %g: the batten is straight, so the test says nothing", energy)
	}
}

// Property: linear theory has no scale of its own.
func TestBattenScaleAndMirror(t *testing.T) {
	random := rand.New(rand.NewPCG(17, 18))
	x, y := randomPins(random, 7)
	b := mustBatten(t, x, y)
	for _, row := range []struct {
		name           string
		kx, ky, dx, dy float64
	}{
		{"deeper", 1, 3, 0, 0},
		{"to the other side", 1, -1, 0, 0},
		{"longer", 2.5, 1, 0, 0},
		{"fore and aft", -1, 1, 0, 0},
		{"moved", 1, 1, 1000, -50},
		{"all of it", -0.3, -2, 70, 30},
	} {
		t.Run(row.name, func(t *testing.T) {
			n := len(x)
			u, v := make([]float64, n), make([]float64, n)
			for i := range x {
				j := i
				if row.kx < 0 {
					j = n - 1 - i
				}
				u[j], v[j] = row.kx*x[i]+row.dx, row.ky*y[i]+row.dy
			}
			c := mustBatten(t, u, v)
			for at := x[0] - 200; at < x[n-1]+200; at += 37 {
				value, slope, second := b.At(at)
				gotValue, gotSlope, gotSecond := c.At(row.kx*at + row.dx)
				what := fmt.Sprintf("at %g", at)
				near(t, what, gotValue, row.ky*value+row.dy, 1e-9, "mm")
				near(t, what, gotSlope, row.ky/row.kx*slope, 1e-10, "mm per mm")
				near(t, what, gotSecond, row.ky/(row.kx*row.kx)*second, 1e-12, "1/mm")
			}
		})
	}
}

func TestBattenStraight(t *testing.T) {
	for _, row := range []struct {
		name string
		x    []float64
	}{ // arithmetic: pins on y = 7 + 0.3 x
		{"two pins", []float64{-100, 900}},
		{"three pins", []float64{-100, 20, 900}},
		{"uneven pins", []float64{-100, -99, 20, 21.5, 800, 900}},
	} {
		t.Run(row.name, func(t *testing.T) {
			var y []float64
			for _, at := range row.x {
				y = append(y, 7+0.3*at)
			}
			b := mustBatten(t, row.x, y)
			for at := -500.0; at <= 1500; at += 12.5 {
				value, slope, second := b.At(at)
				near(t, fmt.Sprintf("at %g", at), value, 7+0.3*at, 1e-10, "mm")
				near(t, fmt.Sprintf("slope at %g", at), slope, 0.3, 1e-12, "mm per mm")
				near(t, fmt.Sprintf("second at %g", at), second, 0, 1e-12, "1/mm")
			}
		})
	}
}

// The batten keeps its own copy of the pins.
func TestBattenKeepsItsPins(t *testing.T) {
	x, y := []float64{0, 1, 2}, []float64{0, 5, 0}
	b := mustBatten(t, x, y)
	x[1], y[1] = 77, 77
	got, _, _ := b.At(1)
	near(t, "at the middle pin after the caller's slices changed", got, 5, 0, "mm")
}

func TestBattenRefuses(t *testing.T) {
	for _, row := range []struct {
		name string
		x, y []float64
		want string
	}{
		{"no pin", nil, nil, "at least two pins"},
		{"one pin", []float64{1}, []float64{2}, "at least two pins"},
		{"more x than y", []float64{1, 2, 3}, []float64{1, 2}, "pins"},
		{"more y than x", []float64{1, 2}, []float64{1, 2, 3}, "pins"},
		{"two pins at one place", []float64{1, 2, 2, 3}, []float64{0, 0, 0, 0}, "pin 3 at 2.0 mm does not follow the one at 2.0 mm"},
		{"backwards", []float64{1, 0}, []float64{0, 0}, "pin 2 at 0.0 mm does not follow the one at 1.0 mm"},
		{"not a number", []float64{1, math.NaN()}, []float64{0, 0}, "pin 2"},
	} {
		t.Run(row.name, func(t *testing.T) {
			b, err := NewBatten(row.x, row.y)
			if err == nil || b != nil || !strings.Contains(err.Error(), row.want) {
				t.Errorf("pins %v, %v: got %v, %v, want an error with %q", row.x, row.y, b, err, row.want)
			}
		})
	}
}
