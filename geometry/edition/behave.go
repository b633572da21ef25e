package edition

import (
	"math"

	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/trial/balance"
	"ribwright/geometry/trial/bend"
)

// Facts are what is compared of how a boat behaves.
type Facts struct {
	Mass  float64        // of the boat, kg
	Trial *afloat.Report // nil where it does not float upright
	Bend  *bend.Report
	Out   *balance.Trial // with all cross pieces and seats out; nil where it has none
	Cost  float64        // of the materials, in the currency of the prices
	Hours float64
}

// Trend says whether a figure became better.
type Trend int

// The trends. Neither is of a figure of which more is no better and no worse by itself.
const (
	Alike Trend = iota // what changed is less than anybody notices
	Better
	Worse
	Neither
)

// String is the trend as it is told.
func (t Trend) String() string { return [...]string{"the same", "better", "worse", "other"}[t] }

// Quantity is what a figure is of, for whoever letters it.
type Quantity int

// The quantities.
const (
	Length Quantity = iota // mm
	Mass                   // kg
	Angle                  // radians
	Force                  // N
	Ratio
	Money
	Time // hours
)

// Figure is one figure of both boats; NaN where one has none.
type Figure struct {
	About    string
	Old, New float64
	Quantity
	Trend
}

// paddled is the speed of the effort that is compared, m/s: 5 km/h.
const paddled = 5 / 3.6

// Behave lists how the boats behave, with what became better or worse. What is alike
// within what a builder would notice or mind is said to be the same: our own choice.
func Behave(old, new Facts) []Figure {
	var out []Figure
	add := func(about string, q Quantity, matters, good float64, of func(Facts) float64) {
		f := Figure{About: about, Old: of(old), New: of(new), Quantity: q, Trend: Neither}
		switch by := f.New - f.Old; {
		case math.Abs(by) < matters, math.IsNaN(f.Old) && math.IsNaN(f.New):
			f.Trend = Alike
		case good != 0 && by*good > 0:
			f.Trend = Better
		case good != 0 && by*good < 0:
			f.Trend = Worse
		}
		out = append(out, f)
	}
	const more, less = 1, -1
	add("weight of the boat", Mass, 0.2, less, func(f Facts) float64 { return f.Mass })
	add("draft", Length, 2, 0, afloatOnly(func(r *afloat.Report) float64 { return r.Rest.Draft }))
	add("trim over the waterline, bow up positive", Length, 4, 0, afloatOnly(func(r *afloat.Report) float64 { return r.Rest.TrimRise() }))
	add("least freeboard", Length, 3, more, afloatOnly(func(r *afloat.Report) float64 { return r.Rest.Freeboard.Least }))
	add("steadiness upright (GM)", Length, 4, more, afloatOnly(func(r *afloat.Report) float64 { return r.Rest.GM }))
	add("greatest righting lever", Length, 2, more, afloatOnly(lever))
	add("heel at which water comes in", Angle, math.Pi/180, more, afloatOnly(func(r *afloat.Report) float64 { return r.Curve.Flooding }))
	add("effort at 5 km/h", Force, 0.2, less, afloatOnly(func(r *afloat.Report) float64 { return r.Hull.At(r.Options.Water, paddled).Total }))
	add("tightest rib bend, radius over thickness", Ratio, 0.2, more, tightest)
	add("beam at the worst without cross pieces, moved", Length, 2, less, func(f Facts) float64 {
		if f.Out == nil {
			return math.NaN()
		}
		return math.Max(math.Abs(f.Out.Band.Least.Moved), math.Abs(f.Out.Band.Most.Moved))
	})
	add("materials", Money, math.Max(1, 0.01*old.Cost), less, func(f Facts) float64 { return f.Cost })
	add("hours", Time, 0.5, less, func(f Facts) float64 { return f.Hours })
	return out
}

// afloatOnly is a figure of a boat that floats upright.
func afloatOnly(of func(*afloat.Report) float64) func(Facts) float64 {
	return func(f Facts) float64 {
		if f.Trial == nil || f.Trial.Fault != nil {
			return math.NaN()
		}
		return of(f.Trial)
	}
}

func lever(r *afloat.Report) float64 {
	most := 0.0
	for _, l := range r.Curve.Levers {
		most = math.Max(most, l.GZ)
	}
	return most
}

// tightest is the least inner radius over the thickness of all ribs, as they are bent hot.
func tightest(f Facts) float64 {
	least := math.Inf(1)
	for _, r := range f.Bend.Ribs {
		for _, a := range r.Arcs {
			least = math.Min(least, a.OnForm)
		}
	}
	if math.IsInf(least, 1) {
		return math.NaN()
	}
	return least
}
