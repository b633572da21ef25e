// Package pattern draws the parts of a frame as full-size patterns, each
// labeled so that it can be used at the bench without a screen.
package pattern

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/layout"
)

// The heights of lettering, mm of capitals.
const (
	small = 2.5 // lettering.MinHeight: everything that is read at the bench
	name  = 4.5 // rib numbers
	head  = 3.2 // titles on parts
)

// row is the distance between lines of small lettering, mm.
const row = 4.2

// All returns every pattern of a boat that is bent as b says, in the order they are
// used. units are what lengths are lettered in.
func All(b *bend.Report, units measure.System) []layout.Drawing {
	f := b.Frame
	out := []layout.Drawing{Mortises(b, units), BodyPlan(f, units)}
	for _, g := range f.RibGroups {
		out = append(out, RibStrip(b, g, units))
	}
	out = append(out, Battens(f, units))
	out = append(out, stems(f, units)...)
	out = append(out, breasthooks(f, units)...)
	for i := range f.Thwarts {
		out = append(out, Thwart(f, i, units))
	}
	return out
}

// both letters a length in mm and in inches to the sixteenth, the builder's own
// system first.
func both(units measure.System, mm float64) string {
	metric, inches := measure.MM(mm, 1)+" mm", measure.Sixteenths(mm)
	if units == measure.Imperial {
		return inches + " = " + metric
	}
	return metric + " = " + inches
}

// leaning letters a small angle with the way it leans.
func leaning(a float64) string {
	deg := math.Round(a*1800/math.Pi) / 10
	switch {
	case deg > 0:
		return fmt.Sprintf("%.1f\u00B0 out", deg)
	case deg < 0:
		return fmt.Sprintf("%.1f\u00B0 in", -deg)
	}
	return "square"
}

func degrees(a float64) float64 { return a * 180 / math.Pi }

// list joins names as a builder would write them.
func list(names []string) string { return strings.Join(names, ", ") }
