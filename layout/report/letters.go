package report

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/measure"
)

// Letters writes quantities for people, in one system of units. Nothing is written
// finer than wood is worked: mm to the tenth at most, inches as finely as the mm, or to the
// sixteenth what a tape shows.
type Letters struct{ Units measure.System }

// Either is one of two, by the units.
func Either[T any](units measure.System, metric, imperial T) T {
	if units == measure.Imperial {
		return imperial
	}
	return metric
}

// Length letters mm in running words: "375 mm", or feet and inches.
func (l Letters) Length(mm float64) string {
	return Either(l.Units, measure.MM(mm, 0)+" mm", measure.FeetInches(mm))
}

// Handy letters a size of our own choice that may be a little more: mm as Length, or inches up to
// the next quarter, from six on up to the next whole one.
func (l Letters) Handy(mm float64) string {
	const inch, speck = 25.4, 1e-6
	step := inch / 4
	if mm > 6*inch-step {
		step = inch
	}
	return l.Length(Either(l.Units, mm, step*math.Ceil(mm/step-speck)))
}

// Fine letters mm to the tenth: "18.5 mm", or in inches with the mm behind.
func (l Letters) Fine(mm float64) string { return l.Units.Fine(mm) }

// Drill letters the width of a bore, a peg or a screw: "3.5 mm", or the drill in inches with
// the mm behind.
func (l Letters) Drill(mm float64) string { return l.Units.Drill(mm) }

// Gauge letters mm to the tenth, or in inches as finely, for a column headed with Unit: what
// is planed to thickness.
func (l Letters) Gauge(mm float64) string {
	return Either(l.Units, measure.MM(mm, 1), strings.TrimSuffix(measure.Gauged(mm), " in"))
}

// Cell letters mm to the tenth or the sixteenth, for a column headed with Unit.
func (l Letters) Cell(mm float64) string {
	return Either(l.Units, measure.MM(mm, 1), strings.TrimSuffix(measure.Sixteenths(mm), " in"))
}

// Whole letters mm to the millimeter or the sixteenth, for a column headed with Unit.
func (l Letters) Whole(mm float64) string {
	return Either(l.Units, measure.MM(mm, 0), l.Cell(mm))
}

// Rough letters mm to the nearest 5 mm or quarter of an inch, for a column headed with
// Unit: what is bent or relaxed by hand keeps to no finer.
func (l Letters) Rough(mm float64) string {
	words, _, _ := strings.Cut(l.Units.Rough(mm), " (")
	return strings.TrimSuffix(strings.TrimSuffix(words, " mm"), " in")
}

// Point letters mm of free width for a point of springback in running words: whole mm or
// sixteenths of an inch, for no rib is measured finer.
func (l Letters) Point(mm float64) string { return l.Whole(mm) + " " + l.Unit() }

// Mark letters mm for a column of what is marked on wood, headed with Marks: inches carry the mm.
func (l Letters) Mark(mm float64) string {
	return Either(l.Units, measure.MM(mm, 1), l.Gauge(mm)+" ("+measure.MM(mm, 1)+")")
}

// Unit is what Cell and Whole are in.
func (l Letters) Unit() string { return Either(l.Units, "mm", "in") }

// Marks is what Mark is in.
func (l Letters) Marks() string { return Either(l.Units, "mm", "in (mm)") }

// Mass letters kg to the tenth of a kilogram or pound.
func (l Letters) Mass(kg float64) string {
	return Either(l.Units, fmt.Sprintf("%.1f kg", kg), fmt.Sprintf("%.1f lb", kg/measure.Pound))
}

// Push letters a force with its sign, in whole newtons or, of these, pounds, without the unit.
func (l Letters) Push(newtons float64) string {
	return Signed(l.Units.Value(math.Round(newtons), "N"))
}

// Station letters mm from midship with the way: "900 mm aft"; within 0.05 mm it is "midship".
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
	return Either(l.Units, measure.MM(ms*3.6, 1)+" km/h", measure.MM(ms/measure.Knot, 1)+" knots")
}

// Angle letters radians in degrees to the tenth, without the unit.
func Angle(rad float64) string { return measure.MM(rad*180/math.Pi, 1) }

// Signed letters a whole number with its sign; what would be lettered as zero is a plain 0.
func Signed(v float64) string {
	if math.Abs(v) < 0.5 {
		return "0"
	}
	return fmt.Sprintf("%+.0f", v)
}

// Percent letters a share in whole per cent.
func Percent(share float64) string { return fmt.Sprintf("%.0f %%", 100*share) }
