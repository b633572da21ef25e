package pool

import "math"

// tail is the chance that Student's t of so many degrees of freedom lies under v; +Inf
// degrees are the normal distribution. Accuracy 1e-10, and 1e-4 past 4000 degrees.
//
// Source: the regularized incomplete beta function by Lentz's continued fraction, as in
// any text on numerical methods.
func tail(v, free float64) float64 {
	if free > many {
		return 0.5 * math.Erfc(-v/math.Sqrt2)
	}
	half := 0.5 * beta(free/2, 0.5, free/(free+v*v))
	if v > 0 {
		return 1 - half
	}
	return half
}

// many degrees of freedom are as good as the normal distribution: 1e-4 of a chance.
const many = 4000

// beta is the regularized incomplete beta function.
func beta(a, b, x float64) float64 {
	switch {
	case x <= 0:
		return 0
	case x >= 1:
		return 1
	case x > (a+1)/(a+b+2):
		return 1 - beta(b, a, 1-x)
	}
	la, _ := math.Lgamma(a)
	lb, _ := math.Lgamma(b)
	lab, _ := math.Lgamma(a + b)
	front := math.Exp(lab - la - lb + a*math.Log(x) + b*math.Log1p(-x))
	const tiny = 1e-300
	c, d := 1.0, 1/(1-(a+b)*x/(a+1))
	f := d
	for m := 1.0; m < 500; m++ {
		for _, n := range [2]float64{m * (b - m) * x / ((a + 2*m - 1) * (a + 2*m)), -(a + m) * (a + b + m) * x / ((a + 2*m) * (a + 2*m + 1))} {
			d = 1 / stay(1+n*d, tiny)
			c = stay(1+n/c, tiny)
			f *= c * d
		}
		if math.Abs(c*d-1) < 1e-14 {
			break
		}
	}
	return front * f / a
}

// stay keeps a figure off zero.
func stay(v, tiny float64) float64 {
	if math.Abs(v) < tiny {
		return tiny
	}
	return v
}

// Quantile is the value under which Student's t lies with a chance of p; +Inf degrees of
// freedom are the normal distribution. Accuracy 1e-9 of itself.
func Quantile(p, free float64) float64 {
	if p == 0.5 {
		return 0
	}
	if p < 0.5 {
		return -Quantile(1-p, free)
	}
	low, high := 0.0, 2.0
	for tail(high, free) < p && high < 1e12 {
		high *= 2
	}
	return root(low, high, func(v float64) bool { return tail(v, free) < p })
}

// root halves an interval until it is as narrow as numbers are; under says that a value
// lies below the root.
func root(low, high float64, under func(float64) bool) float64 {
	for range 100 {
		middle := (low + high) / 2
		if middle == low || middle == high {
			break
		}
		if under(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}
