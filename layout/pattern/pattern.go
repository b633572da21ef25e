// Package pattern draws the parts of a frame as full-size patterns, each
// labeled so that it can be used at the bench without a screen.
package pattern

import (
	"fmt"
	"math"

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

// All returns every pattern of a boat that is bent as b says, in the order they are
// used. units are what lengths are lettered in, ribs on what ribs are drawn.
func All(b *bend.Report, units measure.System, ribs Ribs) []layout.Drawing {
	f := b.Frame
	out := []layout.Drawing{Mortises(b, units)}
	if f.Gunwale.Blocks != nil {
		out = append(out, MiddlePly(f, units))
	}
	out = append(append(out, ends(b, units)...), Battens(f, units), BodyPlan(b, units))
	if ribs == Stick {
		out = append(out, RibStick(b, units))
	} else {
		for _, g := range f.RibGroups {
			out = append(out, RibStrip(b, g, units))
		}
	}
	for i := range b.Forms {
		out = append(out, Form(b, i, units))
	}
	for i := range f.Thwarts {
		out = append(out, Thwart(f, i, units))
	}
	return append(out, SeatsOf(f, units)...)
}

// both letters a length in mm and in inches to the sixteenth, the builder's own system first.
func both(units measure.System, mm float64) string {
	metric, inches := measure.MM(mm, 1)+" mm", measure.Sixteenths(mm)
	if units == measure.Imperial {
		return inches + " = " + metric
	}
	return metric + " = " + inches
}

// leaning letters a small angle with the way it leans, which stands first: "1.5° in" would
// be read as inches.
func leaning(a float64) string {
	deg := math.Round(a*1800/math.Pi) / 10
	switch {
	case deg > 0:
		return fmt.Sprintf("out %.1f\u00B0", deg)
	case deg < 0:
		return fmt.Sprintf("in %.1f\u00B0", -deg)
	}
	return "square"
}

func degrees(a float64) float64 { return a * 180 / math.Pi }

// Where fore and aft are equal, one half of a pattern serves both: it is turned
// over at midship. What differs between the halves all the same, such as a seat,
// is drawn on the half with a word about which one it belongs to.

func halved(f *frame.Frame) bool { return f.Design.EndsAlike() }

// overMidship is how far a half reaches over midship, mm, so that a mortise there is whole.
const overMidship = 20.0

// onHalf reports whether what lies at x is drawn on the half.
func onHalf(x float64) bool { return x > -1e-6 }

// twins names the rib and, on a half, the one that lies opposite.
func twins(f *frame.Frame, i int) string {
	j := len(f.Ribs) - 1 - i
	if !halved(f) || i == j {
		return f.Ribs[i].Name
	}
	return f.Ribs[i].Name + " " + f.Ribs[j].Name
}

// folded brings a place on the whole to the half, with a word on whose it is.
func folded(x float64) (float64, string) {
	switch {
	case x > 1e-6:
		return x, ", forward half only"
	case x < -1e-6:
		return -x, ", after half only"
	}
	return 0, ""
}

// foldedZones brings the stretches of both halves onto one.
func foldedZones(zones []frame.Zone) []frame.Zone {
	var out []frame.Zone
	for _, z := range zones {
		if z.To > 0 {
			out = append(out, frame.Zone{From: math.Max(z.From, -overMidship), To: z.To})
		}
		if z.From < 0 {
			out = append(out, frame.Zone{From: math.Max(-z.To, -overMidship), To: -z.From})
		}
	}
	return frame.Merged(out)
}
