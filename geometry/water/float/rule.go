package float

import (
	"math"
	"slices"
)

// Weights returns the length that each station stands for, so that the integral
// along the boat of anything known at the stations is the sum of weight times
// value. x is in mm and strictly increasing; breaks marks the places where the
// rule starts afresh, ends apart.
//
// How: between breaks, runs of equal spacing take Simpson's rules (the first,
// and the three-eighths rule for the last three of an odd count); a lone
// interval takes the cubic through the four nearest stations. All are exact for
// cubics. A piece with two stations is a trapezoid, one with three of unequal
// spacing a parabola; and where unequal spacing would give a station a weight
// that is not positive the piece is a row of trapezoids, so that volume never
// falls with draft.
// Source: Simpson's rules as in any text on ship stability; the cubic by
// integrating Lagrange's polynomials.
func Weights(x []float64, breaks []bool) []float64 {
	w := make([]float64, len(x))
	from := 0
	for i := 1; i < len(x); i++ {
		if i == len(x)-1 || breaks[i] {
			for k, v := range piece(x[from : i+1]) {
				w[from+k] += v
			}
			from = i
		}
	}
	return w
}

// piece gives the weights between two breaks.
func piece(x []float64) []float64 {
	w := make([]float64, len(x))
	for i := 0; i < len(x)-1; {
		n := run(x[i:])
		if n == 1 {
			cubicInterval(w, x, i)
		} else {
			simpson(w[i:i+n+1], x[i+1]-x[i])
		}
		i += n
	}
	if slices.ContainsFunc(w, func(v float64) bool { return !(v > 0) }) {
		return trapezoids(x)
	}
	return w
}

// run returns how many intervals from the first on are equally long.
func run(x []float64) int {
	const same = 1e-6 // share of the spacing: rounding of places read from a file
	h := x[1] - x[0]
	n := 1
	for n+1 < len(x) && math.Abs(x[n+1]-x[n]-h) <= same*h {
		n++
	}
	return n
}

// simpson adds the weights for two or more equal intervals.
func simpson(w []float64, h float64) {
	n := len(w) - 1
	if n%2 == 1 {
		for k, c := range [4]float64{1, 3, 3, 1} {
			w[n-3+k] += c * h * 3 / 8
		}
		n -= 3
	}
	for i := 0; i < n; i += 2 {
		w[i] += h / 3
		w[i+1] += 4 * h / 3
		w[i+2] += h / 3
	}
}

// cubicInterval adds the integral from x[i] to x[i+1] of the polynomial through
// the four stations about it, or as many as there are.
func cubicInterval(w, x []float64, i int) {
	from := max(0, min(i-1, len(x)-4))
	to := min(len(x), from+4)
	// Three Gauss points are exact for the cubic.
	mid, half := (x[i]+x[i+1])/2, (x[i+1]-x[i])/2
	for k, node := range [3]float64{-math.Sqrt(0.6), 0, math.Sqrt(0.6)} {
		at, share := mid+half*node, half*[3]float64{5. / 9, 8. / 9, 5. / 9}[k]
		for j := from; j < to; j++ {
			l := 1.0
			for m := from; m < to; m++ {
				if m != j {
					l *= (at - x[m]) / (x[j] - x[m])
				}
			}
			w[j] += share * l
		}
	}
}

func trapezoids(x []float64) []float64 {
	w := make([]float64, len(x))
	for i := 1; i < len(x); i++ {
		h := (x[i] - x[i-1]) / 2
		w[i-1] += h
		w[i] += h
	}
	return w
}
