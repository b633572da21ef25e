package body

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"
)

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

// Survey returns every measure, in the order of the survey's file.
func Survey() []Measure { return slices.Clone(survey()) }

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
