package figure

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/measure"
)

// TestPlotIn: axes, curves and marks of a plot in feet and pounds: 25.4 mm are an inch, 10 kg
// 22 lb, 1.609344 km/h a mile an hour; what has no unit stays, and the plot itself too.
func TestPlotIn(t *testing.T) {
	p := Plot{XLabel: "speed, km/h", YLabel: "GZ, mm", Curves: []Curve{{Points: []geometry.Point{{X: 1.609344, Y: 25.4}}}}, Marks: []Mark{{3.218688, "10 kg"}}}
	q := p.In(measure.Imperial)
	if at := q.Curves[0].Points[0]; math.Abs(at.X-1) > 1e-9 || math.Abs(at.Y-1) > 1e-9 || math.Abs(q.Marks[0].X-2) > 1e-9 {
		t.Errorf("%+v", q)
	}
	if q.XLabel != "speed, mph" || q.YLabel != "GZ, in" || q.Marks[0].Name != "22 lb" {
		t.Errorf("%+v", q)
	}
	if p.Curves[0].Points[0].Y != 25.4 || p.Marks[0].Name != "10 kg" {
		t.Error("the plot itself was changed")
	}
	plain := Plot{XLabel: "heel, degrees", YLabel: "W", Curves: []Curve{{Points: []geometry.Point{{X: 3, Y: 4}}}}}
	if same := plain.In(measure.Imperial); same.Curves[0].Points[0] != (geometry.Point{X: 3, Y: 4}) || same.XLabel != plain.XLabel {
		t.Errorf("%+v", same)
	}
}
