package figure

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/formula"
	"ribwright/layout"
)

// Sweep draws draft, freeboard and GM of the boats of a sweep; false when no step makes
// a boat.
func Sweep(s sizing.Sweep, rows []sizing.Row) (layout.Drawing, bool) {
	d := layout.Drawing{Name: "sweep", Title: "Boats for steps of " + s.Name}
	p := Plot{Title: d.Title, YLabel: "mm", Curves: sweepCurves(s, rows), W: 150, H: 90}
	if len(p.Curves) == 0 {
		return d, false
	}
	unit, _ := s.Dim.Unit()
	p.XLabel = fmt.Sprintf("%s beyond %s (%s)", s.Name, formula.ShowNumber(rows[0].At, s.Dim), unit)
	p.Draw(&d, geometry.Point{})
	return d, true
}

// sweepCurves are what changes against how far the value swept is beyond its first
// step: an axis from zero would leave them a corner.
func sweepCurves(s sizing.Sweep, rows []sizing.Row) []Curve {
	_, worth := s.Dim.Unit()
	var out []Curve
	for i, n := range []string{"draft", "freeboard", "gm"} {
		c := Curve{Name: n, Pen: []layout.Pen{layout.Cut, layout.Mark, layout.Center}[i]}
		for _, r := range rows {
			if r.Fault == "" {
				c.Points = append(c.Points, geometry.Point{X: (r.At - rows[0].At) / worth, Y: r.Values[n]})
			}
		}
		if len(c.Points) > 0 {
			out = append(out, c)
		}
	}
	return out
}
