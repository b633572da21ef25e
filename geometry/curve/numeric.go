package curve

import "math"

// The five-point Gauss-Legendre rule on [-1, 1]: exact for polynomials up to
// degree nine. Nodes and weights: Abramowitz and Stegun, table 25.4.
var (
	gaussNode   = [5]float64{-0.9061798459386640, -0.5384693101056831, 0, 0.5384693101056831, 0.9061798459386640}
	gaussWeight = [5]float64{0.2369268850561891, 0.4786286704993665, 0.5688888888888889, 0.4786286704993665, 0.2369268850561891}
)

// Integrate returns the integral of f from a to b by five-point
// Gauss-Legendre in the given number of equal panels (at least one). The error
// falls with the tenth power of the panel width for smooth f; b < a gives the
// negative of the integral from b to a.
func Integrate(f func(float64) float64, a, b float64, panels int) float64 {
	panels = max(1, panels)
	h := (b - a) / float64(panels)
	sum := 0.0
	for i := range panels {
		mid := a + h*(float64(i)+0.5)
		for k, w := range gaussWeight {
			sum += w * f(mid+gaussNode[k]*h/2)
		}
	}
	return sum * h / 2
}

// Sinc returns sin(a)/a, 1 at zero, to rounding; near zero by its series, which is
// quicker and loses no digits.
func Sinc(a float64) float64 {
	if math.Abs(a) < 0.1 {
		a *= a
		return 1 - a*(1.0/6)*(1-a*(1.0/20)*(1-a*(1.0/42)*(1-a*(1.0/72))))
	}
	return math.Sin(a) / a
}

// Bisect returns the place in [lo, hi] where below turns from true to false, to
// the last bit: eighty halvings leave nothing of any span. It returns hi when
// below holds everywhere, and lo, to a 2^-80th of the span, when it holds nowhere.
func Bisect(lo, hi float64, below func(float64) bool) float64 {
	for range 80 {
		mid := lo + (hi-lo)/2
		closed := mid == lo || mid == hi // nothing lies between
		if below(mid) {
			lo = mid
		} else {
			hi = mid
		}
		if closed {
			break
		}
	}
	return hi
}
