package pool

import (
	"math"
	"slices"
)

// Prior is how far sides and units are thought to lie apart before any reading, one
// standard deviation each; 0 is a flat prior of the spread.
//
// That of units is half a normal distribution of their spread. That of sides goes to
// nothing where the spread does, for three boilers that look alike are no sign that all
// are: with half a normal one 85 of 100 intervals held the truth, and not 90. Source: Y.
// Chung and others, A nondegenerate penalized likelihood estimator, Psychometrika 78 (2013).
//
// Chance is what readings of one unit and side are thought to be off by themselves, which
// counts as two readings more: without it a few that agree by luck would leave no doubt. 0
// leaves it out.
type Prior struct{ Side, Unit, Chance float64 }

// told is how many degrees of freedom the prior of chance counts as.
const told = 2.0

// with is the equations with the prior of chance.
func (o *solved) with(p Prior) *solved {
	if p.Chance <= 0 || math.IsInf(o.free, 1) {
		return o
	}
	out := *o
	out.free = o.free + told
	out.chance = (o.free*o.chance + told*p.Chance*p.Chance) / out.free
	out.criterion = o.criterion - o.free*math.Log(o.chance) + out.free*math.Log(out.chance)
	return &out
}

// Sides are all sides with every spread that the readings leave room for, not the
// likeliest alone: with few groups that is most of what is not known.
type Sides struct {
	f    *Fit
	part []part
}

// part is the equations at one spread, with what it counts for.
type part struct {
	*solved
	weight float64
}

// Steps of a grid of spreads, and how far it goes over the larger of what is thought and
// what is likeliest.
const (
	sideSteps, unitSteps, flatSteps = 24, 10, 60

	reach  = 4.0
	settle = 20   // units whose spread is so well known that the likeliest will do
	slight = 1e-3 // of the whole, which a spread must count for
)

// Spread integrates over the spreads of sides and units on a grid, each weighed by its
// restricted likelihood and by the prior.
func (f *Fit) Spread(p Prior) *Sides {
	likely := math.Sqrt(f.loose.with(p).chance)
	sides, units := []float64{0}, []float64{f.loose.unit}
	if f.d.sides > 1 {
		sides = row(f.Side, p.Side, likely, sideSteps)
	}
	if !f.d.single && f.d.units > 1 && f.d.units < settle {
		units = row(f.Unit, p.Unit, likely, unitSteps)
	}
	out := &Sides{f: f}
	first, sum := f.loose.with(p).criterion, 0.0
	for _, a := range sides {
		for _, b := range units {
			o := f.loose.s.solve(a, b)
			if o == nil {
				continue
			}
			o = o.with(p)
			chance := math.Sqrt(o.chance)
			w := math.Exp((first-o.criterion)/2) * half(b*chance, p.Unit)
			if p.Side > 0 && f.d.sides > 1 {
				w *= a * chance * half(a*chance, math.Sqrt2*p.Side)
			}
			out.part = append(out.part, part{o, w})
			sum += w
		}
	}
	out.part = slices.DeleteFunc(out.part, func(o part) bool { return o.weight < slight*sum/float64(len(sides)) })
	sum = 0
	for _, o := range out.part {
		sum += o.weight
	}
	for k := range out.part {
		out.part[k].weight /= sum
	}
	return out
}

func half(sd, prior float64) float64 {
	if prior <= 0 {
		return 1
	}
	return math.Exp(-sd * sd / (2 * prior * prior))
}

// row is a row of spreads over that of chance, at the middles of even steps.
func row(likely, prior, chance float64, steps int) []float64 {
	most := reach * math.Max(likely, prior) / chance
	if prior <= 0 {
		most, steps = flat*math.Max(likely/chance, 1), flatSteps
	}
	var out []float64
	for k := range steps {
		out = append(out, most*(float64(k)+0.5)/float64(steps))
	}
	return out
}

// flat is how far a flat prior of a spread reaches, over the larger of that of chance and
// what is likeliest.
const flat = 60.0

// Of is a side's own difference from the mean of all sides.
func (s *Sides) Of(side int) Interval {
	d := s.f.d
	row := make([]float64, s.f.loose.s.wide)
	for k := range d.sides {
		row[d.kinds+k] = -1 / float64(d.sides)
	}
	row[d.kinds+side]++
	return s.mixed(row)
}

// Total is the mean of all kinds at a side; -1 is the mean over all sides that there may be.
func (s *Sides) Total(side int) Interval {
	row := make([]float64, s.f.loose.s.wide)
	s.f.loose.s.columns(row, -1, side)
	return s.mixed(row)
}

// mixed takes what the equations of all spreads say of a sum of columns together.
func (s *Sides) mixed(row []float64) Interval {
	type one struct{ is, off, free, weight float64 }
	all := make([]one, len(s.part))
	mean, square := 0.0, 0.0
	for k, p := range s.part {
		is, v := p.of(row)
		all[k] = one{is, math.Sqrt(v * p.chance), p.free, p.weight}
		mean += p.weight * is
		square += p.weight * (is*is + v*p.chance)
	}
	if len(all) == 0 {
		return none(math.NaN())
	}
	under := func(v float64) float64 {
		sum := 0.0
		for _, o := range all {
			if o.off > 0 {
				sum += o.weight * tail((v-o.is)/o.off, o.free)
			} else if v > o.is {
				sum += o.weight
			}
		}
		return sum
	}
	wide := math.Sqrt(math.Max(square-mean*mean, 0))
	at := func(p float64) float64 {
		low, high := mean-2*wide, mean+2*wide
		for range 12 { // tails may be long
			if under(low) <= p && under(high) >= p {
				break
			}
			low, high = 2*low-mean, 2*high-mean
		}
		return narrowed(low, high, func(v float64) bool { return under(v) < p })
	}
	return Interval{mean, at(1 - within), at(within)}
}

// narrowed halves an interval to a sixteen-thousandth of itself.
func narrowed(low, high float64, under func(float64) bool) float64 {
	for range 14 {
		if middle := (low + high) / 2; under(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}
