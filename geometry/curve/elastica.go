package curve

import (
	"fmt"
	"math"
)

// Elastica is the line y(x) of a straight stick, alike all along and free at both
// ends, that is pushed sideways (along y) through its pins and touched by nothing
// else. It holds for bends of any size, where a Batten holds for slight ones. Beyond
// the end pins it runs on straight.
//
// How: sideways pushes bend it by a moment that runs straight in x from pin to pin,
// so its curvature κ = dθ/ds, θ the heading, does too. As cos θ dθ/dx = κ,
//
//	sin θ = sin θ0 + ∫ κ dx    dy/dx = tan θ
//
// the sine of the heading is a parabola in every bay and y one integral over it.
//
// Source: the law of Bernoulli and Euler, as in S. P. Timoshenko and J. M. Gere,
// Theory of Elastic Stability, 2nd ed., 2.7.
type Elastica struct {
	x, y []float64 // the pins, mm
	k    []float64 // curvature at each pin, 1/mm, positive where it turns towards y
	sine []float64 // of the heading where each bay begins
	rise []float64 // y where each panel begins, mm
}

// bayPanels is the number of panels a bay is integrated in. Five Gauss points in each
// leave less than 1e-9 mm in a metre where the stick turns 25 degrees off, and 1e-5 mm at
// 60 degrees (TestElasticaPanels).
const bayPanels = 4

// NewElastica returns the line through the pins (x[i], y[i]) in mm.
//
// Requires: at least two pins, x strictly increasing, all finite.
// Errors: pins as for a batten; pins that no stick can be bent through by sideways
// pushes without standing square across x, with the bay in question.
// Accuracy: 1e-8 of a bay's length at the pins.
func NewElastica(x, y []float64) (*Elastica, error) {
	b, err := NewBatten(x, y)
	if err != nil {
		return nil, err
	}
	e := &Elastica{x: b.x, y: b.y}
	e.start(b)
	if err := e.settle(); err != nil {
		return nil, err
	}
	e.tabulate()
	return e, nil
}

// start takes headings and curvatures from the batten; where it is too steep for
// that, every bay begins as a straight piece of its own.
func (e *Elastica) start(b *Batten) {
	n := len(e.x)
	e.k, e.sine = make([]float64, n), make([]float64, n-1)
	for i := range e.sine {
		_, slope, second := b.At(e.x[i])
		c := 1 / math.Hypot(1, slope)
		e.sine[i], e.k[i] = slope*c, second*c*c*c
	}
	e.k[0] = 0
	if e.steepest() < 1 {
		return
	}
	for i := range e.sine {
		h, d := e.x[i+1]-e.x[i], e.y[i+1]-e.y[i]
		e.sine[i], e.k[i] = d/math.Hypot(h, d), 0
	}
}

// bay is what Newton's step needs of one: how far its end misses the next pin, in y
// (mm) and in the sine of the heading there, and what the rise gains with the sine at
// its beginning and with the curvature at either end.
type bay struct{ miss, step, bySine, byFirst, byLast float64 }

// at returns the sine of the heading t mm into bay i, h mm long.
func (e *Elastica) at(i int, t, h float64) float64 { return e.parabola(i, h).at(t) }

// parabola is the sine of the heading in a bay, by the way into it.
type parabola struct{ sine, k, more, twice float64 }

func (e *Elastica) parabola(i int, h float64) parabola {
	return parabola{e.sine[i], e.k[i], e.k[i+1] - e.k[i], 2 * h}
}

func (p parabola) at(t float64) float64 { return p.sine + t*(p.k+p.more*t/p.twice) }

func (e *Elastica) bay(i int) bay {
	h := e.x[i+1] - e.x[i]
	sine := e.parabola(i, h)
	out := bay{miss: e.y[i+1] - e.y[i]}
	half := h / (2 * bayPanels)
	for p := range bayPanels {
		for j, w := range gaussWeight {
			t := half * (float64(2*p+1) + gaussNode[j])
			s := sine.at(t)
			c := math.Sqrt(1 - s*s)
			last := t * t / (2 * h)
			w *= half / c
			out.miss -= w * s
			w /= c * c
			out.bySine += w
			out.byFirst += w * (t - last)
			out.byLast += w * last
		}
	}
	if i+1 < len(e.sine) {
		out.step = e.at(i, h, h) - e.sine[i+1]
	}
	return out
}

// settled is what may be left of the misses, as a slope: far above what rounding
// leaves, and 1e-8 mm in a metre.
const settled = 1e-11

// settle moves headings and curvatures by Newton's steps, each halved until it brings
// the stick nearer to its pins.
func (e *Elastica) settle() error {
	bays, off := e.bays()
	for range 60 {
		if off < settled {
			return nil
		}
		dSine, dK := e.step(bays)
		sine, k := append([]float64(nil), e.sine...), append([]float64(nil), e.k...)
		better := false
		for share := 1.0; share > 1e-6 && !better; share /= 2 {
			for i := range e.sine {
				e.sine[i] = sine[i] + share*dSine[i]
				e.k[i] = k[i] + share*dK[i]
			}
			if e.steepest() < 1 {
				next, left := e.bays()
				if better = left < off; better {
					bays, off = next, left
				}
			}
		}
		if !better {
			e.sine, e.k = sine, k
			break
		}
	}
	if off < 100*settled { // rounding of places far from zero
		return nil
	}
	return e.tooFar()
}

// bays returns all bays and by how much the stick misses its pins, as a slope.
func (e *Elastica) bays() ([]bay, float64) {
	out, off := make([]bay, len(e.sine)), 0.0
	for i := range out {
		out[i] = e.bay(i)
		off += math.Abs(out[i].miss)/(e.x[i+1]-e.x[i]) + math.Abs(out[i].step)
	}
	return out, off
}

// step solves Newton's equations. The rise of a bay gives the change of its first
// sine by the changes of its two curvatures; that every bay takes over the heading of
// the one before then leaves three curvatures an equation, as a spline has them.
func (e *Elastica) step(bays []bay) (dSine, dK []float64) {
	n := len(e.x)
	dSine, dK = make([]float64, n-1), make([]float64, n)
	upper := make([]float64, n)
	for j := 1; j < n-1; j++ {
		b, a, h := bays[j-1], bays[j], e.x[j]-e.x[j-1]
		lower := h/2 - b.byFirst/b.bySine
		pivot := h/2 - b.byLast/b.bySine + a.byFirst/a.bySine - lower*upper[j-1]
		upper[j] = a.byLast / a.bySine / pivot
		dK[j] = (a.miss/a.bySine - b.miss/b.bySine - b.step - lower*dK[j-1]) / pivot
	}
	for j := n - 2; j > 0; j-- {
		dK[j] -= upper[j] * dK[j+1]
	}
	for i, b := range bays {
		dSine[i] = (b.miss - b.byFirst*dK[i] - b.byLast*dK[i+1]) / b.bySine
	}
	return dSine, dK
}

// steepest returns the greatest sine of any heading, without its sign; +Inf for none
// that is a number.
func (e *Elastica) steepest() float64 {
	most := 0.0
	for i := range e.sine {
		if s := e.steepestIn(i); !(s <= most) {
			most = s
		}
	}
	if math.IsNaN(most) {
		return math.Inf(1)
	}
	return most
}

func (e *Elastica) steepestIn(i int) float64 {
	h := e.x[i+1] - e.x[i]
	most := math.Max(math.Abs(e.sine[i]), math.Abs(e.at(i, h, h)))
	if e.k[i]*e.k[i+1] < 0 { // the heading turns back within
		most = math.Max(most, math.Abs(e.at(i, h*e.k[i]/(e.k[i]-e.k[i+1]), h)))
	}
	return most
}

func (e *Elastica) tooFar() error {
	worst := 0
	for i := range e.sine {
		if e.steepestIn(i) > e.steepestIn(worst) {
			worst = i
		}
	}
	return fmt.Errorf("no stick that is only pushed sideways bends so far: between %.0f and %.0f mm it would stand square across", e.x[worst], e.x[worst+1])
}

// tabulate notes y at every panel, so that no place is more than a panel from one.
func (e *Elastica) tabulate() {
	e.rise = make([]float64, bayPanels*len(e.sine))
	for i := range e.sine {
		h := e.x[i+1] - e.x[i]
		y := e.y[i]
		for p := range bayPanels {
			e.rise[bayPanels*i+p] = y
			y += e.climb(i, h*float64(p)/bayPanels, h*float64(p+1)/bayPanels, h)
		}
	}
}

// climb is the rise from t0 to t1 mm in bay i.
func (e *Elastica) climb(i int, t0, t1, h float64) float64 {
	mid, half, sum := (t0+t1)/2, (t1-t0)/2, 0.0
	sine := e.parabola(i, h)
	for j, w := range gaussWeight {
		s := sine.at(mid + half*gaussNode[j])
		sum += w * s / math.Sqrt(1-s*s)
	}
	return sum * half
}

// bayOf is the bay that holds x; those are few.
func (e *Elastica) bayOf(x float64) int {
	i := 0
	for i < len(e.sine)-1 && e.x[i+1] < x {
		i++
	}
	return i
}

// Ends returns the x of the first and the last pin, mm.
func (e *Elastica) Ends() (float64, float64) { return e.x[0], e.x[len(e.x)-1] }

// Rise returns y (mm) and the slope dy/dx at x, as a track takes them.
func (e *Elastica) Rise(x float64) (y, slope float64) {
	y, slope, _ = e.At(x)
	return y, slope
}

// Slope returns dy/dx at x.
func (e *Elastica) Slope(x float64) float64 {
	last := len(e.x) - 1
	x = min(max(x, e.x[0]), e.x[last])
	i := e.bayOf(x)
	s := e.at(i, x-e.x[i], e.x[i+1]-e.x[i])
	return s / math.Sqrt(1-s*s)
}

// At returns y (mm), the slope dy/dx and the second derivative (1/mm) at x.
func (e *Elastica) At(x float64) (y, slope, second float64) {
	last := len(e.x) - 1
	if x < e.x[0] || x > e.x[last] {
		end := e.x[0]
		if x > end {
			end = e.x[last]
		}
		y, slope, _ = e.At(end)
		return y + slope*(x-end), slope, 0
	}
	i := e.bayOf(x)
	h, t := e.x[i+1]-e.x[i], x-e.x[i]
	s := e.at(i, t, h)
	c := math.Sqrt(1 - s*s)
	p := max(0, min(int(bayPanels*t/h), bayPanels-1)) // NaN is no panel
	y = e.rise[bayPanels*i+p] + e.climb(i, h*float64(p)/bayPanels, t, h)
	return y, s / c, (e.k[i] + (e.k[i+1]-e.k[i])*t/h) / (c * c * c)
}

// Curvature returns dθ/ds at x, 1/mm, positive where the stick turns towards y; 0 at
// its ends and beyond.
func (e *Elastica) Curvature(x float64) float64 {
	last := len(e.x) - 1
	if x <= e.x[0] || x >= e.x[last] {
		return 0
	}
	i := e.bayOf(x)
	return e.k[i] + (e.k[i+1]-e.k[i])*(x-e.x[i])/(e.x[i+1]-e.x[i])
}

// Pushes returns the push of each pin on the stick over its bending stiffness E I,
// towards y positive, 1/mm2: the jump of dκ/dx there. They add up to nothing, nor do
// they turn the stick.
func (e *Elastica) Pushes() []float64 {
	out := make([]float64, len(e.x))
	for i := range e.sine {
		shear := (e.k[i+1] - e.k[i]) / (e.x[i+1] - e.x[i])
		out[i] += shear
		out[i+1] -= shear
	}
	return out
}
