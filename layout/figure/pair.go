package figure

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/curve"
	"ribwright/geometry/outfit/pair"
	"ribwright/geometry/wood/beam"
	"ribwright/layout"
)

// PairSketch draws the pair from astern, cut through at the beam nearest to midship
// with its saddles, the beam so many mm long.
func PairSketch(c *pair.Craft, wide float64) layout.Drawing {
	d := layout.Drawing{Name: "pair", Title: c.Boats[0].Frame.Design.Title + " and " + c.Boats[1].Frame.Design.Title + ", side by side"}
	v := view{k: wide / c.Beams.Long, x0: wide / 2}
	k := 0
	for i, x := range c.Beams.At {
		if math.Abs(x) < math.Abs(c.Beams.At[k]) {
			k = i
		}
	}
	station, saddles := c.Beams.At[k], c.Saddles()
	for i, b := range c.Boats {
		w := v
		w.y0 += float64(i) * c.Rise * v.k
		w.x0 -= c.Spacing / 2 * (1 - 2*float64(i)) * v.k // seen from astern port lies to the left
		endView(&d, b.Hull, station, 0, w)
		bearers(&d, b, saddles[(i*len(c.Beams.At)+k)%len(saddles)], w) // boats of one design share theirs
	}
	low, high := c.BeamsLie(), c.BeamsLie()+c.Beams.Depth
	a, b := v.at(-c.Beams.Long/2, low), v.at(c.Beams.Long/2, high)
	d.Line(layout.Cut, curve.Rectangle(geometry.Around(a, b)))
	heel := math.Tan(c.Rest.Plane.Heel)
	water := func(y float64) geometry.Point { return v.at(y, c.Rest.Plane.Water(station)+y*heel) }
	d.Line(layout.Mark, curve.Polyline(water(-c.Beams.Long/2), water(c.Beams.Long/2)))
	upright(&d, water(0), v.at(0, low))
	under := math.Min(water(0).Y-6, v.y0-3) // the hulls, which may leave no room for words between them
	d.Write(wide/2, under, small, layout.Middle, fmt.Sprintf("through the beam at station %.0f mm", station))
	d.Write(wide/2, under-row, small, layout.Middle, fmt.Sprintf("%.0f mm from the beam to the water", c.Beneath))
	return d
}

// bearers draws both gunwales of a boat where a beam crosses, with the saddles on them.
func bearers(d *layout.Drawing, b aboard.Boat, s pair.Saddle, v view) {
	in, out := b.GunwaleTop(s.Station)
	inner, outer := geometry.Pt(in.Y, in.Z), geometry.Pt(out.Y, out.Z)
	mid, across := inner.Lerp(outer, 0.5), outer.Sub(inner).Unit()
	down := geometry.Pt(across.Y, -across.X).Scale(b.Frame.Gunwale.Height)
	for _, side := range []float64{1, -1} {
		place := func(q geometry.Point) geometry.Point { return v.at(side*q.X, q.Y) }
		var outline []geometry.Point
		for _, q := range s.Outline {
			outline = append(outline, place(mid.Add(q)))
		}
		d.Line(layout.Cut, curve.Polygon(outline...))
		d.Line(layout.Mark, curve.Polygon(place(inner), place(outer), place(outer.Add(down)), place(inner.Add(down))))
	}
}

// upright draws a height, from one place up to another.
func upright(d *layout.Drawing, from, to geometry.Point) {
	const arm = 1.5
	for _, q := range []geometry.Point{from, to} {
		d.Straight(layout.Tick, q.X-arm, q.Y, q.X+arm, q.Y)
	}
	d.Straight(layout.Tick, from.X, from.Y, to.X, to.Y)
}

// Pair is the sketch with its headline, the lever of righting up to where it
// ends, and the stress in a beam.
func Pair(c *pair.Craft) layout.Drawing {
	d := PairSketch(c, wideFigure)
	d.Write(0, d.Bounds().Max.Y+9, head+0.4, layout.Left, fmt.Sprintf("%s, %.0f mm apart, from astern; beams %.0f x %.0f mm", d.Title, c.Spacing, c.Beams.Width, c.Beams.Depth))
	p := PairLevers(c)
	low := math.Min(-98, d.Bounds().Min.Y-p.H-14)
	p.Draw(&d, geometry.Pt(16, low))
	bendPlot(c, &d, geometry.Pt(160, low))
	return d
}

// PairLevers draws the lever of righting, at each heel the lesser of both sides, with
// the straight line of GM beside it.
func PairLevers(c *pair.Craft) Plot {
	p := Plot{Title: "Righting lever, the lesser of both sides, to its end", XLabel: "heel, degrees; dashed what GM alone would say", YLabel: "GZ, mm", W: 105, H: 62}
	lesser := c.Lesser()
	p.Marks = slices.DeleteFunc([]Mark{{lesser.Lift * 180 / math.Pi, "windward hull lifts"}, {lesser.Flooded * 180 / math.Pi, "water comes in"}},
		func(m Mark) bool { return math.IsNaN(m.X) })
	// GM's straight line from where the pair rests, dashed, as far as the curve's most.
	list := math.Abs(c.Rest.Heel)
	reach := math.Min(lesser.Levers[len(lesser.Levers)-1].Heel-list, lesser.Most.GZ/c.GM)
	p.Curves = []Curve{curveOf("GZ", layout.Cut, lesser.Levers, func(v pair.Lever) (x, y float64) { return v.Heel * 180 / math.Pi, v.GZ }),
		{Pen: layout.Guide, Points: []geometry.Point{geometry.Pt(list*180/math.Pi, 0), geometry.Pt((list+reach)*180/math.Pi, c.GM*reach)}}}
	return p
}

// bendPlot writes the cases as bars beside the working stress.
func bendPlot(c *pair.Craft, d *layout.Drawing, at geometry.Point) {
	const wide = 95.0
	working := beam.Working(c.Beams.Wood)
	d.Write(at.X, at.Y+65, head+0.4, layout.Left, "Stress in a beam beside what is asked of the wood")
	for i, k := range c.Cases {
		y := at.Y + 50 - 14*float64(i)
		d.Line(layout.Mark, curve.Rectangle(geometry.Rect(at.X, y, at.X+wide*k.Stress/working+0.5, y+4)))
		d.Write(at.X, y+5.2, small, layout.Left, fmt.Sprintf("%s: %.0f N m, %.1f N/mm2", k.Name, k.Moment, k.Stress))
		d.Straight(layout.Mark, at.X+wide, y-1.5, at.X+wide, y+4.6)
	}
	d.Write(at.X+wide, at.Y, small, layout.Middle, fmt.Sprintf("asked: %.1f N/mm2", working))
}
