// Package afloat draws what a trial found as one figure: the sheer plan with its
// waterline, and the curves of righting lever, displacement and effort.
package afloat

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/water/float"
	"ribwright/layout"
	"ribwright/layout/figure/plot"
)

// The size of one plot's axes and the way from one to the next, mm.
const (
	plotW, plotH = 105.0, 62.0
	stepX, stepY = 150.0, 92.0
)

// Sheet draws the figure of a report.
func Sheet(r *afloat.Report) layout.Drawing {
	d := layout.Drawing{Name: "curves", Title: r.Boat.Title + " afloat"}
	righting(r).Draw(&d, geometry.Point{X: 0, Y: stepY})
	displacement(r).Draw(&d, geometry.Point{X: stepX, Y: stepY})
	resistance(r).Draw(&d, geometry.Point{})
	power(r).Draw(&d, geometry.Point{X: stepX})
	sheerPlan(&d, r, geometry.Point{X: -13, Y: 2 * stepY}, stepX+plotW+13)
	return d
}

// About says in words what the figure shows.
func About(r *afloat.Report) string {
	return fmt.Sprintf("Sheer plan of %s with its waterline, and curves of righting lever against heel, displacement and freeboard against draft, and effort and power against speed. %.0f kg in all float at a draft of %.0f mm with %.0f mm of freeboard.",
		r.Boat.Title, r.Load.Mass, r.Rest.Draft, r.Rest.Freeboard.Least)
}

func righting(r *afloat.Report) plot.Plot {
	p := plot.Plot{Title: "Righting lever", XLabel: "heel, degrees", YLabel: "GZ, mm", W: plotW, H: plotH}
	c := plot.Curve{Name: "GZ", Pen: layout.Cut}
	for _, v := range r.Curve.Levers {
		c.Points = append(c.Points, geometry.Point{X: v.Heel * 180 / math.Pi, Y: v.GZ})
	}
	p.Curves = append(p.Curves, c)
	if r.Fault != nil {
		p.Title = "Righting lever: none, it does not stay upright"
		return p
	}
	if f := r.Curve.Flooding * 180 / math.Pi; !math.IsNaN(f) {
		p.Marks = append(p.Marks, plot.Mark{X: f, Name: "water comes in"})
		// The first slope of the curve is GM: a radian's worth of it, cut to the plot.
		p.Curves = append(p.Curves, plot.Curve{Name: "GM", Pen: layout.Guide,
			Points: []geometry.Point{{}, {X: f, Y: r.Rest.GM * r.Curve.Flooding}}})
	}
	return p
}

func displacement(r *afloat.Report) plot.Plot {
	p := plot.Plot{Title: "Displacement and least freeboard, level", XLabel: "draft, mm", YLabel: "kg or mm", W: plotW, H: plotH}
	all, free := plot.Curve{Name: "kg in all", Pen: layout.Cut}, plot.Curve{Name: "freeboard", Pen: layout.Mark}
	h := r.Boat.Hull
	top := h.Freeboard(float.Level(h.Deepest())).Least
	const steps = 40
	for i := range steps + 1 {
		draft := top * 0.75 * float64(i) / steps
		v := h.Immerse(float.Level(h.Deepest() + draft)).Volume
		all.Points = append(all.Points, geometry.Point{X: draft, Y: v * r.Options.Water.Density * 1e-9})
		free.Points = append(free.Points, geometry.Point{X: draft, Y: top - draft})
	}
	p.Curves = []plot.Curve{all, free}
	p.Marks = []plot.Mark{{X: r.Rest.Draft, Name: fmt.Sprintf("%.0f kg", r.Load.Mass)}}
	return p
}

func resistance(r *afloat.Report) plot.Plot {
	p := plot.Plot{Title: "Effort, for comparing designs", XLabel: "speed, km/h", YLabel: "N", W: plotW, H: plotH}
	total, skin, wave := plot.Curve{Name: "all", Pen: layout.Cut}, plot.Curve{Name: "friction, form", Pen: layout.Mark}, plot.Curve{Name: "waves", Pen: layout.Center}
	for _, v := range r.Effort {
		x := v.Speed * 3.6
		total.Points = append(total.Points, geometry.Point{X: x, Y: v.Total})
		skin.Points = append(skin.Points, geometry.Point{X: x, Y: v.Friction + v.Form})
		wave.Points = append(wave.Points, geometry.Point{X: x, Y: v.Wave})
	}
	p.Curves = []plot.Curve{total, skin, wave}
	return p
}

func power(r *afloat.Report) plot.Plot {
	p := plot.Plot{Title: "Power at the paddle", XLabel: "speed, km/h", YLabel: "W", W: plotW, H: plotH}
	c := plot.Curve{Name: "W", Pen: layout.Cut}
	for _, v := range r.Effort {
		c.Points = append(c.Points, geometry.Point{X: v.Speed * 3.6, Y: v.Power})
	}
	p.Curves = []plot.Curve{c}
	return p
}

// sheerPlan draws the boat from the side, bow to the right, with the water as it
// lies at rest.
func sheerPlan(d *layout.Drawing, r *afloat.Report, at geometry.Point, wide float64) {
	aft, fore := r.Boat.Hull.Ends()
	k := wide / (fore - aft)
	place := func(x, z float64) geometry.Point {
		return geometry.Point{X: at.X + (x-aft)*k, Y: at.Y + z*k}
	}
	var keel, sheer []geometry.Point
	top := 0.0
	for _, s := range r.Boat.Hull.Profile() {
		keel, sheer = append(keel, place(s[0], s[1])), append(sheer, place(s[0], s[2]))
		top = math.Max(top, s[2])
	}
	d.Line(layout.Cut, curve.Polyline(keel...))
	d.Line(layout.Cut, curve.Polyline(sheer...))
	last := len(keel) - 1
	d.Line(layout.Cut, curve.Polyline(keel[0], sheer[0]))
	d.Line(layout.Cut, curve.Polyline(keel[last], sheer[last]))
	p, over := r.Rest.Plane, 0.02*(fore-aft)
	d.Line(layout.Mark, curve.Polyline(place(aft-over, p.Water(aft-over)), place(fore+over, p.Water(fore+over))))
	drawWeights(d, r, place)
	b := place(r.Rest.LCB, r.Rest.KB)
	d.Line(layout.Mark, curve.Circle(b, 1.2))
	d.Write(b.X+2.2, b.Y-1.2, 2.5, layout.Left, "buoyancy")
	d.Write(at.X, at.Y+top*k+6, 3.6, layout.Left, fmt.Sprintf("%s afloat: %.0f kg in all, draft %.0f mm, least freeboard %.0f mm", r.Boat.Title, r.Load.Mass, r.Rest.Draft, r.Rest.Freeboard.Least))
}

// drawWeights marks where the weights lie; the whole has a ring and its name on
// the other side.
func drawWeights(d *layout.Drawing, r *afloat.Report, place func(x, z float64) geometry.Point) {
	const cross, high = 1.6, 2.5
	entries := r.Entries()
	var taken []geometry.Point
	for k, i := range entries {
		l := i.Load()
		q := place(l.At.X, l.At.Z)
		d.Straight(layout.Mark, q.X-cross, q.Y, q.X+cross, q.Y)
		d.Straight(layout.Mark, q.X, q.Y-cross, q.X, q.Y+cross)
		words := fmt.Sprintf("%s, %.0f kg", i.Name, l.Mass)
		if k == len(entries)-1 {
			d.Line(layout.Mark, curve.Circle(q, 1.2))
			d.Write(q.X-2.2, q.Y-high/2, high, layout.Right, words)
			continue
		}
		low := geometry.Point{X: q.X + 2.2, Y: q.Y - high/2}
		for _, t := range taken {
			if math.Abs(low.Y-t.Y) < high+0.8 && math.Abs(low.X-t.X) < 40 {
				low.Y = t.Y - high - 0.8
			}
		}
		taken = append(taken, low)
		d.Write(low.X, low.Y, high, layout.Left, words)
	}
}
