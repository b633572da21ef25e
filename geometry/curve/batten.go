package curve

import (
	"errors"
	"fmt"
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
	if len(x) != len(y) {
		return nil, fmt.Errorf("a batten has %d places for %d pins", len(x), len(y))
	}
	for i := range y {
		if !geometry.Finite(x[i]) || !geometry.Finite(y[i]) {
			return nil, fmt.Errorf("batten pin %d holds a number that is no place", i+1)
		}
	}
	for i := 1; i < len(x); i++ {
		if !(x[i] > x[i-1]) {
			return nil, fmt.Errorf("batten pin %d at %.1f mm does not follow the one at %.1f mm", i+1, x[i], x[i-1])
		}
	}
	b := &Batten{append([]float64(nil), x...), append([]float64(nil), y...), nil}
	b.m = naturalSeconds(b.x, b.y)
	return b, nil
}

// naturalSeconds solves the tridiagonal system of the natural spline (second
// derivative zero at both ends) by forward elimination.
func naturalSeconds(x, y []float64) []float64 {
	n := len(x)
	m := make([]float64, n)
	if n == 2 {
		return m
	}
	upper, rhs := make([]float64, n), make([]float64, n)
	for i := 1; i < n-1; i++ {
		h0, h1 := x[i]-x[i-1], x[i+1]-x[i]
		r := 6 * ((y[i+1]-y[i])/h1 - (y[i]-y[i-1])/h0)
		pivot := 2*(h0+h1) - h0*upper[i-1]
		upper[i] = h1 / pivot
		rhs[i] = (r - h0*rhs[i-1]) / pivot
	}
	for i := n - 2; i > 0; i-- {
		m[i] = rhs[i] - upper[i]*m[i+1]
	}
	return m
}

// Ends returns the x of the first and the last pin, mm.
func (b *Batten) Ends() (float64, float64) { return b.x[0], b.x[len(b.x)-1] }

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
