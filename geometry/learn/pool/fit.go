package pool

import "math"

// Fit is what the readings come to.
type Fit struct {
	d         *Data
	Side      float64 // standard deviation of sides; 0 without any
	Unit      float64 // of units; with single readings of units it lies in Chance
	Chance    float64 // of readings within a unit; 1 where it is known beforehand for each
	Criterion float64 // -2 log of the restricted likelihood
	loose     *solved // sides drawn from a family
	apart     *solved // sides told apart; loose where that cannot be
}

// Of fits, with the spreads that make the restricted likelihood largest. A spread of
// nothing is an answer like any other: it says that the readings do not tell the groups
// apart, and not that they are alike.
//
// Errors: false with no more readings than kinds, or where all are the same.
func (d *Data) Of() (*Fit, bool) { return d.from(fully, nil) }

// effort is how hard the likeliest spreads are looked for.
type effort struct {
	rounds int
	within float64 // of the logarithm of a spread
	still  float64 // share of the criterion by which a round must better it
}

// fully is as true as published answers are; soon is for fits of which there are many, and
// beside for those that differ by one unit of a dozen or more: the likelihood is flat there.
var (
	fully  = effort{40, 1e-7, 1e-11}
	soon   = effort{3, 1e-4, 1e-7}
	beside = effort{1, 0.02, 0}
)

// from fits, near another fit where one is given.
func (d *Data) from(e effort, near *Fit) (*Fit, bool) {
	if len(d.Readings) <= d.kinds || !d.filled() {
		return nil, false
	}
	f := &Fit{d: d}
	loose := newSystem(d, true)
	if !d.known && !(loose.square > 1e-18*(1+loose.middle*loose.middle)) {
		return nil, false
	}
	if f.loose = d.best(loose, e, near); f.loose == nil {
		return nil, false
	}
	f.apart = f.loose
	if d.sides > 1 && e == fully {
		if told := d.best(newSystem(d, false), e, nil); told != nil && told.free >= 1 {
			f.apart = told
		}
	}
	f.Chance = math.Sqrt(f.loose.chance)
	f.Unit, f.Criterion = f.loose.unit*f.Chance, f.loose.criterion
	if d.sides > 0 {
		f.Side = f.loose.scale[d.kinds] * f.Chance
	}
	return f, true
}

// filled reports whether every kind has a reading.
func (d *Data) filled() bool {
	has := make([]bool, d.kinds)
	for _, r := range d.Readings {
		has[r.Kind] = true
	}
	for _, h := range has {
		if !h {
			return false
		}
	}
	return true
}

// best searches the spreads of sides and units in turns; nil where nothing can be solved.
func (d *Data) best(s *system, e effort, near *Fit) *solved {
	at := [2]float64{}
	searched := [2]bool{s.loose && d.sides > 1, !d.single && d.units > 1}
	if near != nil {
		at = [2]float64{near.loose.side(), near.loose.unit}
	}
	out := s.solve(at[0], at[1])
	for round := range e.rounds {
		before := math.Inf(1)
		if out != nil {
			before = out.criterion
		}
		for k := range at {
			if !searched[k] {
				continue
			}
			try := func(v float64) *solved {
				x := at
				x[k] = v
				return s.solve(x[0], x[1])
			}
			at[k] = least(try, at[k], round == 0 && near == nil, e.within)
			out = try(at[k])
		}
		if out == nil || before-out.criterion < e.still*math.Abs(before) {
			break
		}
	}
	return out
}

func (o *solved) side() float64 {
	if o.s.loose && o.s.wide > o.s.fixed {
		return o.scale[o.s.fixed]
	}
	return 0
}

// least is the spread with the least criterion: nothing, or one found on a coarse row of
// figures, or near the one that was best, and narrowed down by golden sections.
func least(try func(float64) *solved, was float64, far bool, within float64) float64 {
	at := func(log float64) float64 {
		if o := try(math.Exp(log)); o != nil {
			return o.criterion
		}
		return math.Inf(1)
	}
	const low, high, step = -7.0, 7.0, 1.0 // a thousandth to a thousand times chance
	low0, high0 := math.Log(was)-0.7, math.Log(was)+0.7
	if far || was == 0 {
		best, least := low, math.Inf(1)
		for v := low; v <= high; v += step {
			if is := at(v); is < least {
				best, least = v, is
			}
		}
		low0, high0 = best-step, best+step
	}
	golden := (math.Sqrt(5) - 1) / 2
	a, b := high0-golden*(high0-low0), low0+golden*(high0-low0)
	va, vb := at(a), at(b)
	for high0-low0 > within {
		if va < vb {
			high0, b, vb = b, a, va
			a = high0 - golden*(high0-low0)
			va = at(a)
		} else {
			low0, a, va = a, b, vb
			b = low0 + golden*(high0-low0)
			vb = at(b)
		}
	}
	if o := try(0); o != nil && o.criterion <= math.Min(va, vb) {
		return 0
	}
	return math.Exp((low0 + high0) / 2)
}

// Kind is the mean of a kind over all its sides: what the readings alone say.
//
// The interval is Student's, with as many degrees of freedom as there are units beyond
// what is told apart between them: three units hold a mean far more loosely than their
// readings look. Without one to spare it has no ends.
func (f *Fit) Kind(kind int) Interval {
	row := make([]float64, f.apart.s.wide)
	f.apart.s.columns(row, kind, -1)
	is, v := f.apart.of(row)
	return about(is, math.Sqrt(v*f.apart.chance), f.Free())
}

// Mean is the mean of all kinds, and its standard error.
func (f *Fit) Mean() (is, off float64) {
	row := make([]float64, f.loose.s.wide)
	f.loose.s.columns(row, -1, -1)
	is, v := f.loose.of(row)
	return is, math.Sqrt(v * f.loose.chance)
}

// Free is the degrees of freedom of a kind's mean.
func (f *Fit) Free() float64 {
	groups := f.d.units
	if f.d.known { // sides stand for the groups
		return math.Max(float64(f.d.sides-1), 0)
	}
	free := groups - f.d.kinds
	if f.apart.s.fixed > f.d.kinds && !f.d.within() {
		free -= f.d.sides - 1
	}
	return float64(free)
}

// within reports whether sides differ within units, so that units do not pay for them.
func (d *Data) within() bool {
	first := map[int]int{}
	for _, r := range d.Readings {
		if side, met := first[r.Unit]; met && side != r.Side {
			return true
		}
		first[r.Unit] = r.Side
	}
	return false
}
