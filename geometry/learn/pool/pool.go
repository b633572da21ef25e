// Package pool estimates from readings that come in groups: how far groups lie apart, how
// far readings within one do, and what follows for each, by partial pooling. A group of
// few readings is drawn to the others as far as they are alike.
//
// The model: reading = its kind + its side + its unit + chance. Kinds are told apart as
// they are, as woods; sides are of one family, as boilers or operations, and are drawn
// together; units are what is drawn at random, as boards or builders. Readings of one unit
// are not independent, so units are counted.
//
// Source of the method: restricted likelihood (H. D. Patterson, R. Thompson, Biometrika 58,
// 1971) by the equations of C. R. Henderson (1950).
package pool

import (
	"math"
	"slices"
)

// Reading is one value with the groups that it belongs to, numbered from 0.
type Reading struct {
	Value float64
	Kind  int
	Side  int     // -1 for none
	Unit  int     // -1 where every reading is a unit of its own
	Known float64 // the variance of its chance where that is known beforehand; of all readings or of none
	trust float64 // what it counts for beside others; 0 is 1
}

// Data is what is estimated from.
type Data struct {
	Readings []Reading
	known    bool
	kinds    int
	sides    int
	units    int
	single   bool // no unit has two readings, so that chance and unit are one
}

// New counts the groups.
func New(all []Reading) *Data {
	d := &Data{Readings: slices.Clone(all), single: true}
	seen := map[int]bool{}
	for i := range d.Readings {
		r := &d.Readings[i]
		if r.Unit < 0 {
			r.Unit = len(d.Readings) + i
		}
		d.known = d.known || r.Known > 0
		d.kinds, d.sides = max(d.kinds, r.Kind+1), max(d.sides, r.Side+1)
		d.single = d.single && !seen[r.Unit]
		seen[r.Unit] = true
	}
	d.renumber()
	return d
}

// renumber gives units the numbers from 0 in the order in which they come.
func (d *Data) renumber() {
	number := map[int]int{}
	for i := range d.Readings {
		r := &d.Readings[i]
		n, ok := number[r.Unit]
		if !ok {
			n = len(number)
			number[r.Unit] = n
		}
		r.Unit = n
	}
	d.units = len(number)
}

// without leaves the readings of one unit out.
func (d *Data) without(unit int) *Data {
	kept := slices.DeleteFunc(slices.Clone(d.Readings), func(r Reading) bool { return r.Unit == unit })
	out := &Data{Readings: kept, known: d.known, kinds: d.kinds, sides: d.sides, single: d.single}
	out.renumber()
	return out
}

func (r Reading) weight() float64 {
	w := 1.0
	if r.trust > 0 {
		w = r.trust
	}
	if r.Known > 0 {
		w /= r.Known
	}
	return w
}

// Interval holds a value in nine cases of ten.
type Interval struct{ Is, Low, High float64 }

// Holds reports whether a value lies within.
func (i Interval) Holds(v float64) bool { return v >= i.Low && v <= i.High }

// none is an interval of a value whose spread nothing is known of.
func none(is float64) Interval { return Interval{is, math.Inf(-1), math.Inf(1)} }

// within is what an interval holds to either side of its middle.
const within = 0.95

func about(is, off, free float64) Interval {
	if !(free >= 1) {
		return none(is)
	}
	t := Quantile(within, free) * off
	return Interval{is, is - t, is + t}
}
