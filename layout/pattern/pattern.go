// Package pattern draws the parts of a frame as full-size patterns, each
// labelled so that it can be used at the bench without a screen.
package pattern

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/boat/frame"
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

// Options say how lengths are lettered.
type Options struct {
	Units  measure.System
	report *bend.Report // of the frame being drawn, so that it is worked out once
}

// All returns every pattern of the boat, in the order they are used.
func All(f *frame.Frame, o Options) []layout.Drawing {
	o.report = o.bending(f)
	out := []layout.Drawing{Mortises(f, o), BodyPlan(f, o)}
	for _, g := range f.RibGroups {
		out = append(out, RibStrip(f, g, o))
	}
	out = append(out, Battens(f, o))
	out = append(out, stems(f, o)...)
	out = append(out, breasthooks(f, o)...)
	for i := range f.Thwarts {
		out = append(out, Thwart(f, i, o))
	}
	return out
}

// both letters a length in mm and in inches to the sixteenth, the builder's own
// system first.
func (o Options) both(mm float64) string {
	metric, inches := measure.MM(mm, 1)+" mm", measure.Sixteenths(mm)
	if o.Units == measure.Imperial {
		return inches + " = " + metric
	}
	return metric + " = " + inches
}

// plain letters a short length in the builder's own system, with the
// millimetres behind inches.
func (o Options) plain(mm float64) string {
	if o.Units == measure.Imperial {
		return measure.Sixteenths(mm) + " (" + measure.MM(mm, 1) + " mm)"
	}
	return measure.MM(mm, 1) + " mm"
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
