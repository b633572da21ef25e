package figure

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/water/effort"
	"ribwright/geometry/water/float"
	"ribwright/layout"
)

// The size of one plot's axes in the figure of a trial and the way from one to the next, mm.
const (
	plotW, plotH = 105.0, 62.0
	stepX, stepY = 150.0, 92.0
)

// Afloat draws what a trial afloat found: the sheer plan with its waterline, and the
// curves of righting lever, displacement and effort.
func Afloat(r *afloat.Report, units measure.System) layout.Drawing {
	d := layout.Drawing{Name: "curves", Title: r.Boat.Title + " afloat"}
	for i, p := range AfloatPlots(r, units) {
		p.Draw(&d, geometry.Pt(stepX*float64(i%2), stepY*float64(1-i/2)))
	}
	sheerPlan(&d, r, geometry.Pt(-13, 2*stepY), stepX+plotW+13)
	return d.Said(units.Words)
}

// AfloatAbout says in words what the figure shows.
func AfloatAbout(r *afloat.Report) string {
	return fmt.Sprintf("Sheer plan of %s with its waterline, and curves of righting lever against heel, displacement and freeboard against draft, and effort and power against speed. %.0f kg in all float at a draft of %.0f mm with %.0f mm of freeboard.",
		r.Boat.Title, r.Load.Mass, r.Rest.Draft, r.Rest.Freeboard.Least)
}

// AfloatPlots returns the curves of a trial one by one, for pages that show each in its place.
func AfloatPlots(r *afloat.Report, units measure.System) []Plot {
	return []Plot{righting(r).In(units), displacement(r, units), resistance(r).In(units), power(r).In(units)}
}

func righting(r *afloat.Report) Plot {
	p := Plot{Title: "Righting lever", XLabel: "heel, degrees", YLabel: "GZ, mm", W: plotW, H: plotH}
	p.Curves = []Curve{curveOf("GZ", layout.Cut, r.Curve.Levers, func(v float.Lever) (x, y float64) { return v.Heel * 180 / math.Pi, v.GZ })}
	if r.Fault != nil {
		p.Title = "Righting lever: none, it does not stay upright"
		return p
	}
	if f := r.Curve.Flooding * 180 / math.Pi; !math.IsNaN(f) {
		p.Marks = append(p.Marks, Mark{X: f, Name: "water comes in"})
		// The first slope of the curve is GM: a radian's worth of it, cut to the plot.
		p.Curves = append(p.Curves, Curve{Name: "GM", Pen: layout.Guide,
			Points: []geometry.Point{{}, {X: f, Y: r.Rest.GM * r.Curve.Flooding}}})
	}
	return p
}

// displacement has two units on one axis; in inches freeboard is drawn by sixteenths, or it
// would lie flat under the pounds.
func displacement(r *afloat.Report, units measure.System) Plot {
	if units == measure.Imperial {
		p := displacement(r, measure.Metric)
		p.YLabel, p.Curves[0].Name = "lb, or sixteenths of an inch", "lb in all"
		for i := range p.Curves[0].Points {
			p.Curves[0].Points[i].Y /= measure.Pound
		}
		for i := range p.Curves[1].Points {
			p.Curves[1].Points[i].Y *= 16 / 25.4
		}
		return p.In(units)
	}
	return Plot{Title: "Displacement and least freeboard, level", XLabel: "draft, mm", YLabel: "kg or mm", W: plotW, H: plotH,
		Curves: []Curve{curveOf("kg in all", layout.Cut, r.Displacement, func(v afloat.Displacement) (x, y float64) { return v.Draft, v.Mass }),
			curveOf("freeboard", layout.Mark, r.Displacement, func(v afloat.Displacement) (x, y float64) { return v.Draft, v.Freeboard })},
		Marks: []Mark{{X: r.Rest.Draft, Name: fmt.Sprintf("%.0f kg", r.Load.Mass)}}}
}

func resistance(r *afloat.Report) Plot {
	return Plot{Title: "Effort, for comparing designs", XLabel: "speed, km/h", YLabel: "N", W: plotW, H: plotH, Curves: []Curve{
		curveOf("all", layout.Cut, r.Effort, func(v effort.Point) (x, y float64) { return v.Speed * 3.6, v.Total }),
		curveOf("friction, form", layout.Mark, r.Effort, func(v effort.Point) (x, y float64) { return v.Speed * 3.6, v.Friction + v.Form }),
		curveOf("waves", layout.Center, r.Effort, func(v effort.Point) (x, y float64) { return v.Speed * 3.6, v.Wave })}}
}

func power(r *afloat.Report) Plot {
	return Plot{Title: "Power at the paddle", XLabel: "speed, km/h", YLabel: "W", W: plotW, H: plotH, Curves: []Curve{
		curveOf("W", layout.Cut, r.Effort, func(v effort.Point) (x, y float64) { return v.Speed * 3.6, v.Power })}}
}

// sheerPlan draws the boat from the side, bow to the right, with the water as it lies at rest.
func sheerPlan(d *layout.Drawing, r *afloat.Report, at geometry.Point, wide float64) {
	h := r.Boat.Hull
	v := sideView(d, h, at, wide)
	onWater(d, h, r.Rest.Plane, v, 0.02)
	drawWeights(d, r, v)
	b := v.at(r.Rest.LCB, r.Rest.KB)
	d.Line(layout.Mark, curve.Circle(b, 1.2))
	d.Write(b.X+2.2, b.Y-1.2, small, layout.Left, "buoyancy")
	top := 0.0
	for _, s := range h.Profile() {
		top = math.Max(top, s[2])
	}
	d.Write(at.X, v.at(0, top).Y+6, plotTitle, layout.Left, fmt.Sprintf("%s afloat: %.0f kg in all, draft %.0f mm, least freeboard %.0f mm", r.Boat.Title, r.Load.Mass, r.Rest.Draft, r.Rest.Freeboard.Least))
}

// drawWeights marks where the weights lie; the whole has a ring and its name on the other side.
func drawWeights(d *layout.Drawing, r *afloat.Report, v view) {
	entries := r.Entries()
	var taken []geometry.Point
	for k, i := range entries {
		l := i.Load()
		q := v.at(l.At.X, l.At.Z)
		cross(d, q)
		words := fmt.Sprintf("%s, %.0f kg", i.Name, l.Mass)
		if k == len(entries)-1 {
			d.Line(layout.Mark, curve.Circle(q, 1.2))
			d.Write(q.X-2.2, q.Y-small/2, small, layout.Right, words)
			continue
		}
		low := geometry.Pt(q.X+2.2, q.Y-small/2)
		for _, t := range taken {
			if math.Abs(low.Y-t.Y) < small+0.8 && math.Abs(low.X-t.X) < 40 {
				low.Y = t.Y - small - 0.8
			}
		}
		taken = append(taken, low)
		d.Write(low.X, low.Y, small, layout.Left, words)
	}
}
