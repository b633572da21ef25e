package pool

import "math"

// Left is a unit left out, guessed from all others.
type Left struct {
	Unit  int
	Count int     // of its readings
	Is    float64 // their mean
	Error float64 // that less its guess
	Z     float64 // over what the guess may be off; NaN where too few are left to say
	Held  bool    // within nine in ten
	Odd   bool    // so far out as one unit in two thousand
}

// HeldOut leaves out every unit in turn, fits anew and guesses its mean from its kinds and
// sides: the error that a newcomer will meet. A unit without which a kind has no reading is
// passed over.
func (d *Data) HeldOut(f *Fit) []Left {
	var out []Left
	for j := range d.units {
		rest := d.without(j)
		e, near := beside, f
		if d.units < dozen {
			e, near = soon, nil
		}
		g, ok := rest.from(e, near)
		if !ok {
			continue
		}
		out = append(out, g.guess(d, j))
	}
	return out
}

// dozen units and more hardly change with one of them.
const dozen = 12

// guess guesses the mean of a unit that is not among the readings.
func (f *Fit) guess(d *Data, unit int) Left {
	s := f.loose.s
	row, one := make([]float64, s.wide), make([]float64, s.wide)
	out := Left{Unit: unit, Z: math.NaN()}
	for _, r := range d.Readings {
		if r.Unit != unit {
			continue
		}
		out.Count++
		out.Is += r.Value
		s.columns(one, r.Kind, r.Side)
		for c, v := range one {
			row[c] += v
		}
	}
	n := float64(out.Count)
	out.Is /= n
	for c := range row {
		row[c] /= n
	}
	is, v := f.loose.of(row)
	out.Error = out.Is - is
	free := f.Free()
	if !(free >= 1) {
		return out
	}
	off := math.Sqrt(f.loose.chance * (v + f.loose.unit*f.loose.unit + 1/n))
	out.Z = out.Error / off
	out.Held = math.Abs(out.Z) <= Quantile(within, free)
	out.Odd = tail(-math.Abs(out.Z), free) < tail(-named, math.Inf(1))
	return out
}

// named is past how many standard deviations a reading or a unit is named.
const named = 3.5

// Sum is the held-out error of all, root mean square, and how many lie within nine in ten,
// of those that have an interval.
func Sum(all []Left) (rms float64, held, of int) {
	for _, l := range all {
		rms += l.Error * l.Error / float64(len(all))
		if !math.IsNaN(l.Z) {
			of++
			if l.Held {
				held++
			}
		}
	}
	return math.Sqrt(rms), held, of
}
