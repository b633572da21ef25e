package body

import (
	"math"
	"math/rand/v2"
)

// alike is the correlation of weight with stature among adults of one sex, from
// memory: between 0.4 and 0.5 in most surveys.
const alike = 0.45

// Random returns a body of either sex, as common as the survey has it, with
// weight, stature and arm span inside the 5th to 95th percentile of its sex. The
// span scatters about its estimate. The same source of chance gives the same bodies.
func Random(r *rand.Rand) Person {
	p := Person{Sex: Woman}
	if r.IntN(2) == 1 {
		p.Sex = Man
	}
	tall, heavy := within90(r), 0.0
	for {
		heavy = alike*tall + math.Sqrt(1-alike*alike)*r.NormFloat64()
		if math.Abs(heavy) <= limit90 {
			break
		}
	}
	p.Stature = mustMeasure("stature").Of(p.Sex).at(tall)
	p.Weight = mustMeasure("weightkg").Of(p.Sex).at(heavy)
	for _, s := range regressions() {
		if s.name == "span" {
			e := s.of(p)
			common := mustMeasure("span").Of(p.Sex)
			p.Span = math.Max(common.P5, math.Min(common.P95, e.Value+e.Spread*within90(r)))
		}
	}
	return p
}

// limit90 is how many standard deviations hold the middle 90 of 100.
const limit90 = 1.6448536

func within90(r *rand.Rand) float64 {
	for {
		if z := r.NormFloat64(); math.Abs(z) <= limit90 {
			return z
		}
	}
}

// at returns the value z standard deviations from the median of a spread that
// has its own scale on each side.
func (p Percentiles) at(z float64) float64 {
	if z < 0 {
		return p.P50 + z/limit90*(p.P50-p.P5)
	}
	return p.P50 + z/limit90*(p.P95-p.P50)
}

// Corners returns the bodies at the survey's 5th, 50th and 95th percentiles of
// weight and of stature, in every pairing, for both sexes.
func Corners() []Person {
	var out []Person
	for _, s := range []Sex{Woman, Man} {
		w, h := mustMeasure("weightkg").Of(s), mustMeasure("stature").Of(s)
		for _, weight := range []float64{w.P5, w.P50, w.P95} {
			for _, stature := range []float64{h.P5, h.P50, h.P95} {
				out = append(out, Person{Sex: s, Weight: weight, Stature: stature})
			}
		}
	}
	return out
}
