package curve

import (
	"errors"
	"math"
	"sort"

	"ribwright/geometry"
)

// Ease is a smooth curve through control values that never overshoots them:
// between two controls it stays between their values. It is what a parameter
// of the hull follows from the middle to the ends. Beyond the end controls it
// keeps the end value.
//
// How: a cubic Hermite curve whose slopes are limited so that each piece is
// monotone. Source: F. N. Fritsch, J. Butland, "A method for constructing
// local monotone piecewise cubic interpolants", SIAM J. Sci. Stat. Comput.
// 5(2), 1984; the end slopes are the three-point formula of its code PCHIP,
// limited the same way. Its weakness: only the first derivative is continuous.
type Ease struct{ x, y, d []float64 }

// NewEase returns the curve through (x[i], y[i]); one control gives a constant.
// Requires x strictly increasing (mm); y may have any unit.
func NewEase(x, y []float64) (*Ease, error) {
	n := len(x)
	if n == 0 || len(y) != n {
		return nil, errors.New("no control given")
	}
	for i := range x {
		if !geometry.Finite(x[i]) || !geometry.Finite(y[i]) {
			return nil, errors.New("a control holds a number that is no place or value")
		}
	}
	for i := 1; i < n; i++ {
		if !(x[i] > x[i-1]) {
			return nil, errors.New("controls must stand in order, each at a place of its own")
		}
	}
	e := &Ease{append([]float64(nil), x...), append([]float64(nil), y...), make([]float64, n)}
	e.setSlopes()
	return e, nil
}

func (e *Ease) setSlopes() {
	n := len(e.x)
	if n < 2 {
		return
	}
	h, s := make([]float64, n-1), make([]float64, n-1)
	for i := range h {
		h[i] = e.x[i+1] - e.x[i]
		s[i] = (e.y[i+1] - e.y[i]) / h[i]
	}
	if n == 2 {
		e.d[0], e.d[1] = s[0], s[0]
		return
	}
	for i := 1; i < n-1; i++ {
		if s[i-1]*s[i] <= 0 {
			continue // a crest, a hollow or a flat: the curve stands level here
		}
		w0, w1 := 2*h[i]+h[i-1], h[i]+2*h[i-1]
		e.d[i] = (w0 + w1) / (w0/s[i-1] + w1/s[i])
	}
	e.d[0] = endSlope(h[0], h[1], s[0], s[1])
	e.d[n-1] = endSlope(h[n-2], h[n-3], s[n-2], s[n-3])
}

// endSlope is the three-point slope at an end, limited to keep the end piece
// monotone; h0 and s0 belong to the end piece, h1 and s1 to its neighbour.
func endSlope(h0, h1, s0, s1 float64) float64 {
	d := ((2*h0+h1)*s0 - h0*s1) / (h0 + h1)
	if d*s0 <= 0 {
		return 0
	}
	if s0*s1 <= 0 && math.Abs(d) > 3*math.Abs(s0) {
		return 3 * s0
	}
	return d
}

// At returns the value at x mm; NaN gives the first control's.
func (e *Ease) At(x float64) float64 {
	last := len(e.x) - 1
	if !(x > e.x[0]) { // NaN too
		return e.y[0]
	}
	if x >= e.x[last] {
		return e.y[last]
	}
	i := sort.SearchFloat64s(e.x[1:last], x)
	h := e.x[i+1] - e.x[i]
	t := (x - e.x[i]) / h
	u := 1 - t
	return e.y[i]*(1+2*t)*u*u + e.d[i]*h*t*u*u + e.y[i+1]*(1+2*u)*t*t - e.d[i+1]*h*u*t*t
}
