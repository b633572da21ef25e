package pool

import (
	"math"
	"slices"
)

// Odd is a reading that does not go with the others.
type Odd struct {
	Reading int
	Z       float64 // standard deviations from what the others say
	Guess   float64 // what they say
}

// Robust fits, names the readings that lie far from what all others say, lets each count
// for less the farther it lies, and fits again. None is left out. noise is the least that
// readings of one unit are off by themselves: a few may agree by luck.
//
// How: residuals over what each may be off, the scale by 1.4826 times their median; named
// past 3.5, and weighed by 1.5 over it, as P. J. Huber (1964) has it. Readings that nobody
// names count in full.
// Errors: as for Of.
func (d *Data) Robust(noise float64) (*Fit, []Odd, bool) {
	f, ok := d.Of()
	if !ok {
		return nil, nil, false
	}
	var odd []Odd
	const passes = 3 // a second unlike reading may hide behind a first
	for range passes {
		was := len(odd)
		if odd = f.odd(noise); len(odd) == was {
			break
		}
		for i := range d.Readings {
			d.Readings[i].trust = 0
		}
		for _, o := range odd {
			d.Readings[o.Reading].trust = huber / math.Abs(o.Z)
		}
		if f, ok = d.Of(); !ok {
			return nil, nil, false
		}
	}
	return f, odd, true
}

const huber = 1.5

// odd scores every reading against the fit without it.
func (f *Fit) odd(noise float64) []Odd {
	if f.d.known {
		return nil
	}
	o, s := f.loose, f.loose.s
	type score struct{ apart, guess float64 }
	var all []score
	var size []float64
	row := make([]float64, s.wide)
	for _, r := range f.d.Readings {
		s.columns(row, r.Kind, r.Side)
		is, v := o.reading(row, r.Unit)
		// v is what is known of its place with it; taking it out leaves 1/(1/v - w).
		w := r.weight()
		keep := 1 - w*v
		if keep < 1e-6 {
			all = append(all, score{})
			continue
		}
		left := (r.Value - is) / keep // from the guess without it
		all = append(all, score{left * math.Sqrt(keep), r.Value - left})
		size = append(size, math.Abs(left*math.Sqrt(keep)))
	}
	if len(size) < 5 {
		return nil
	}
	slices.Sort(size)
	scale := math.Max(1.4826*size[len(size)/2], noise)
	var out []Odd
	for i, a := range all {
		if z := a.apart / scale; math.Abs(z) > named {
			out = append(out, Odd{i, z, a.guess})
		}
	}
	return out
}

// reading is what the fit has for a row of a unit, and its variance over that of chance.
func (o *solved) reading(row []float64, unit int) (is, variance float64) {
	s := o.s
	u2 := o.unit * o.unit
	by := 1 + u2*s.weight[unit]
	// The unit's own part, given the columns: u2/by of what its readings have left.
	whole := make([]float64, len(row))
	for c := range row {
		whole[c] = row[c] - u2/by*s.share[unit][c]
	}
	is, variance = o.of(whole)
	is += s.middle * (o.kinds(row) - o.kinds(whole)) // the sums are about the middle already
	is += u2 / by * s.sum[unit]
	return is, variance + u2/by
}
