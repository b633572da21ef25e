// Package body knows how people measure: open percentiles of a large survey,
// estimates of what was not measured from what was, with their spread, and
// random bodies to try a family of boats on. Lengths are mm, weights kg.
//
// The people of the survey are soldiers: fewer of them are heavy than among
// civilians, so a boat for a stranger should be tried well past the 95th
// percentile of weight.
package body

import "fmt"

// Sex chooses the survey's table. The zero Sex is not told: then the mean of
// both estimates is taken, with a wider spread.
type Sex int8

// The tables of the survey.
const (
	Untold Sex = iota
	Woman
	Man
)

func (s Sex) String() string { return [...]string{"", "woman", "man"}[s] }

// Person is what is known of one body.
type Person struct {
	Sex     Sex
	Weight  float64 // kg
	Stature float64 // mm, standing without shoes
	Span    float64 // mm, fingertip to fingertip of outstretched arms; 0 when not measured
}

// The bodies that are sized for: wider than any adult of the survey, and narrow
// enough to find a slip of the unit.
const (
	LeastWeight, MostWeight   = 25.0, 250.0
	LeastStature, MostStature = 1100.0, 2300.0
)

// Check refuses a body that is likelier a slip of the unit.
func (p Person) Check() error {
	switch {
	case !(p.Weight >= LeastWeight && p.Weight <= MostWeight):
		return fmt.Errorf("a paddler of %.4g kg; accepted: %.0f to %.0f kg", p.Weight, LeastWeight, MostWeight)
	case !(p.Stature >= LeastStature && p.Stature <= MostStature):
		return fmt.Errorf("a stature of %.4g mm; accepted: %.0f to %.0f mm", p.Stature, LeastStature, MostStature)
	case p.Span != 0 && !(p.Span >= 0.85*p.Stature && p.Span <= 1.2*p.Stature):
		return fmt.Errorf("an arm span of %.4g mm for a stature of %.4g mm; accepted: %.0f to %.0f mm (measure fingertip to fingertip)",
			p.Span, p.Stature, 0.85*p.Stature, 1.2*p.Stature)
	}
	return nil
}

// Outside says which values lie beyond the survey's 5th to 95th percentile; for
// an untold sex, beyond the women's 5th to the men's 95th.
func (p Person) Outside() []string {
	var out []string
	for _, v := range []struct {
		what, measure, unit string
		value               float64
	}{{"weight", "weightkg", "kg", p.Weight}, {"stature", "stature", "mm", p.Stature}, {"arm span", "span", "mm", p.Span}} {
		if v.value == 0 {
			continue
		}
		lo, hi := p.range90(v.measure)
		if v.value < lo || v.value > hi {
			out = append(out, fmt.Sprintf("%s %.4g %s lies outside the survey's 5th to 95th percentile, %.4g to %.4g %s", v.what, v.value, v.unit, lo, hi, v.unit))
		}
	}
	return out
}

func (p Person) range90(measure string) (lo, hi float64) {
	m := mustMeasure(measure)
	switch p.Sex {
	case Woman:
		return m.Woman.P5, m.Woman.P95
	case Man:
		return m.Man.P5, m.Man.P95
	}
	return min(m.Woman.P5, m.Man.P5), max(m.Woman.P95, m.Man.P95)
}
