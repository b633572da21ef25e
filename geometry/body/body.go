// Package body knows how people measure: open percentiles of a large survey,
// estimates of what was not measured from what was, with their spread, and
// random bodies to try a family of boats on. Lengths are mm, weights kg.
//
// The people of the survey are soldiers: fewer of them are heavy than among
// civilians, so a boat for a stranger should be tried well past the 95th
// percentile of weight.
package body

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"
)

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
	heavy := func(kg float64) bool { return kg >= LeastWeight && kg <= MostWeight }
	high := func(mm float64) bool { return mm >= LeastStature && mm <= MostStature }
	slip := ""
	if heavy(p.Stature/10) && high(10*p.Weight) {
		slip = "; kg and cm look changed over"
	}
	switch {
	case !heavy(p.Weight):
		return fmt.Errorf("a paddler of %.4g kg; accepted: %.0f to %.0f kg%s", p.Weight, LeastWeight, MostWeight, slip)
	case !high(p.Stature):
		return fmt.Errorf("a stature of %.4g mm; accepted: %.0f to %.0f mm%s", p.Stature, LeastStature, MostStature, slip)
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
	if p.Sex == Untold {
		return min(m.Woman.P5, m.Man.P5), max(m.Woman.P95, m.Man.P95)
	}
	of := m.Of(p.Sex)
	return of.P5, of.P95
}

// Source names where the percentiles come from.
const Source = "ANSUR II, US Army anthropometric survey 2012, public release: 1986 women, 4082 men"

//go:embed percentiles.csv
var percentileFile string

// Percentiles are the values that 5, 50 and 95 of 100 people stay under.
type Percentiles struct{ P5, P50, P95 float64 }

// Measure is one line of the survey, mm, or kg for the weight.
type Measure struct {
	Name       string
	Woman, Man Percentiles
}

// Of returns the percentiles of a sex; for Untold the mean of both.
func (m Measure) Of(s Sex) Percentiles {
	switch s {
	case Woman:
		return m.Woman
	case Man:
		return m.Man
	}
	mean := func(a, b float64) float64 { return (a + b) / 2 }
	return Percentiles{mean(m.Woman.P5, m.Man.P5), mean(m.Woman.P50, m.Man.P50), mean(m.Woman.P95, m.Man.P95)}
}

// survey is the file, read at the first need and never changed after.
var survey = sync.OnceValue(readSurvey)

func readSurvey() []Measure {
	r := csv.NewReader(strings.NewReader(percentileFile))
	r.FieldsPerRecord = -1
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 3 {
		panic(fmt.Sprintf("the file of percentiles that the program was built with is broken: %v", err))
	}
	var out []Measure
	for _, row := range rows[2:] { // under the source and the header
		v := [6]float64{}
		for i := range v {
			if v[i], err = strconv.ParseFloat(row[i+1], 64); err != nil {
				panic("a percentile that the program was built with is no number: " + row[i+1])
			}
		}
		out = append(out, Measure{row[0], Percentiles{v[0], v[1], v[2]}, Percentiles{v[3], v[4], v[5]}})
	}
	return out
}

// FindMeasure returns one measure of the survey by its name there.
func FindMeasure(name string) (Measure, error) {
	for _, m := range survey() {
		if m.Name == name {
			return m, nil
		}
	}
	return Measure{}, fmt.Errorf("the survey has no measure %q", name)
}

// mustMeasure is for names that stand in this package.
func mustMeasure(name string) Measure {
	m, err := FindMeasure(name)
	if err != nil {
		panic(err)
	}
	return m
}
