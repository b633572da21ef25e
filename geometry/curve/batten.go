package curve

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"sort"

	"ribwright/geometry"
)

// Batten is the elastic batten: the curve y(x) of least bending energy through
// its pins, free at both ends, to first order in the slope. That is the
// natural cubic spline. Beyond the end pins it runs on straight.
//
// Source: any text on beams; least-energy property after J. C. Holladay,
// "A smoothest curve approximation", Math. Tables Aids Comput. 11, 1957.
type Batten struct {
	x, y []float64
	m    []float64 // second derivative at each pin, 1/mm
}

// NewBatten returns the batten through the pins (x[i], y[i]) in mm.
//
// Requires: at least two pins, x strictly increasing, all finite.
func NewBatten(x, y []float64) (*Batten, error) {
	if len(x) < 2 {
		return nil, errors.New("a batten needs at least two pins")
	}
	if err := inOrder("batten pin", x, y); err != nil {
		return nil, err
	}
	n := len(x)
	all := make([]float64, 3*n)
	b := &Batten{all[:n:n], all[n : 2*n : 2*n], all[2*n:]}
	copy(b.x, x)
	copy(b.y, y)
	b.settle()
	return b, nil
}

// UnitBattens returns the battens through pins at x, mm, for each pin the one that is
// 1 mm high there and 0 at all others: what they are made of adds up to any batten.
//
// Requires: what NewBatten does.
func UnitBattens(x []float64) ([]Batten, error) {
	n := len(x)
	all := make([]float64, n+2*n*n)
	same, room := all[:n:n], all[n:]
	if n < 2 {
		return nil, errors.New("a batten needs at least two pins")
	}
	if err := inOrder("batten pin", x, same); err != nil {
		return nil, err
	}
	copy(same, x)
	out := make([]Batten, n)
	for j := range out {
		out[j] = Batten{same, room[:n:n], room[n : 2*n : 2*n]}
		out[j].y[j] = 1
		out[j].settle()
		room = room[2*n:]
	}
	return out, nil
}

// inOrder refuses places that are no numbers or do not rise.
func inOrder(what string, x, y []float64) error {
	if len(x) != len(y) {
		return fmt.Errorf("there are %d places for %d %ss", len(x), len(y), what)
	}
	for i := range x {
		if !geometry.Finite(x[i]) || !geometry.Finite(y[i]) {
			return fmt.Errorf("%s %d holds a number that is no place or value", what, i+1)
		}
		if i > 0 && !(x[i] > x[i-1]) {
			return fmt.Errorf("%s %d at %.1f mm does not follow the one at %.1f mm", what, i+1, x[i], x[i-1])
		}
	}
	return nil
}

// settle finds the second derivatives: it solves the tridiagonal system of the natural
// spline, which has none at both ends, by forward elimination.
func (b *Batten) settle() {
	x, y, m, n := b.x, b.y, b.m, len(b.x)
	var few [48]float64 // as many pins as most battens have
	upper := few[:]
	if n > len(few) {
		upper = make([]float64, n)
	}
	for i := 1; i < n-1; i++ {
		h0, h1 := x[i]-x[i-1], x[i+1]-x[i]
		r := 6 * ((y[i+1]-y[i])/h1 - (y[i]-y[i-1])/h0)
		pivot := 2*(h0+h1) - h0*upper[i-1]
		upper[i] = h1 / pivot
		m[i] = (r - h0*m[i-1]) / pivot
	}
	for i := n - 2; i > 0; i-- {
		m[i] -= upper[i] * m[i+1]
	}
}

// Ends returns the x of the first and the last pin, mm.
func (b *Batten) Ends() (float64, float64) { return b.x[0], b.x[len(b.x)-1] }

// Rise returns y (mm) and the slope dy/dx at x, as a track takes them.
func (b *Batten) Rise(x float64) (y, slope float64) {
	y, slope, _ = b.At(x)
	return y, slope
}

// At returns y (mm), the slope dy/dx and the second derivative (1/mm) at x.
func (b *Batten) At(x float64) (y, slope, second float64) {
	last := len(b.x) - 1
	if x < b.x[0] {
		_, s, _ := b.At(b.x[0])
		return b.y[0] + s*(x-b.x[0]), s, 0
	}
	if x > b.x[last] {
		_, s, _ := b.At(b.x[last])
		return b.y[last] + s*(x-b.x[last]), s, 0
	}
	i := sort.SearchFloat64s(b.x[1:last], x)
	h := b.x[i+1] - b.x[i]
	u, v := (b.x[i+1]-x)/h, (x-b.x[i])/h
	y = u*b.y[i] + v*b.y[i+1] + ((u*u*u-u)*b.m[i]+(v*v*v-v)*b.m[i+1])*h*h/6
	slope = (b.y[i+1]-b.y[i])/h + ((1-3*u*u)*b.m[i]+(3*v*v-1)*b.m[i+1])*h/6
	return y, slope, u*b.m[i] + v*b.m[i+1]
}

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
	if len(x) == 0 {
		return nil, errors.New("no control is given")
	}
	if err := inOrder("control", x, y); err != nil {
		return nil, err
	}
	e := &Ease{slices.Clone(x), slices.Clone(y), make([]float64, len(x))}
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
// monotone; h0 and s0 belong to the end piece, h1 and s1 to its neighbor.
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
