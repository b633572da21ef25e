package report

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/measure"
)

// Letters writes quantities for people, in one system of units. Nothing is written
// finer than wood is worked: mm to the tenth at most, inches to the sixteenth.
type Letters struct{ Units measure.System }

func (l Letters) imperial() bool { return l.Units == measure.Imperial }

// Length letters mm in running words: "375 mm", or feet and inches.
func (l Letters) Length(mm float64) string {
	if l.imperial() {
		return measure.FeetInches(mm)
	}
	return measure.MM(mm, 0) + " mm"
}

// Fine letters mm to the tenth: "18.5 mm", or the sixteenth of an inch with the mm
// behind.
func (l Letters) Fine(mm float64) string { return l.Units.Fine(mm) }

// Cell letters mm to the tenth or the sixteenth, for a column headed with Unit.
func (l Letters) Cell(mm float64) string {
	if l.imperial() {
		return strings.TrimSuffix(measure.Sixteenths(mm), " in")
	}
	return measure.MM(mm, 1)
}

// Whole letters mm to the millimeter or the sixteenth, for a column headed with
// Unit.
func (l Letters) Whole(mm float64) string {
	if l.imperial() {
		return l.Cell(mm)
	}
	return measure.MM(mm, 0)
}

// Mark letters mm for a column of what is marked on wood, headed with Marks: inches
// carry the mm.
func (l Letters) Mark(mm float64) string {
	if l.imperial() {
		return l.Cell(mm) + " (" + measure.MM(mm, 1) + ")"
	}
	return measure.MM(mm, 1)
}

// Unit is what Cell and Whole are in.
func (l Letters) Unit() string {
	if l.imperial() {
		return "in"
	}
	return "mm"
}

// Marks is what Mark is in.
func (l Letters) Marks() string {
	if l.imperial() {
		return "in (mm)"
	}
	return "mm"
}

// Mass letters kg to the tenth of a kilogram or pound.
func (l Letters) Mass(kg float64) string {
	if l.imperial() {
		return fmt.Sprintf("%.1f lb", kg/measure.Pound)
	}
	return fmt.Sprintf("%.1f kg", kg)
}

// Station letters mm from midship with the way: "900 mm aft"; within 0.05 mm it is
// "midship".
func (l Letters) Station(x float64) string {
	way := " forward"
	switch {
	case math.Abs(x) < 0.05:
		return "midship"
	case x < 0:
		way = " aft"
	}
	return l.Length(math.Abs(x)) + way
}

// Speed letters m/s as km/h or knots, to the tenth.
func (l Letters) Speed(ms float64) string {
	const knot = 1852.0 / 3600 // m/s, exactly
	if l.imperial() {
		return measure.MM(ms/knot, 1) + " knots"
	}
	return measure.MM(ms*3.6, 1) + " km/h"
}

// Angle letters radians in degrees to the tenth, without the unit.
func Angle(rad float64) string { return measure.MM(rad*180/math.Pi, 1) }

// Signed letters a number to the tenth with its sign; what would be lettered as
// zero is a plain 0.
func Signed(v float64) string {
	if math.Abs(v) < 0.05 {
		return "0"
	}
	return fmt.Sprintf("%+.1f", v)
}
