package outfits

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/curve"
	"ribwright/geometry/finding"
	"ribwright/geometry/outfit/pair"
	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/figure/plot"
)

// gripAt is a gunwale under a beam, in the boat's own axes.
type gripAt struct {
	side  float64        // 1 for the boat's port gunwale, -1 for starboard
	inner geometry.Point // of its upper edges: X out from the boat's middle line, Y up
	outer geometry.Point
}

func gripsOf(b aboard.Boat, station float64) []gripAt {
	inner, outer := b.GunwaleTop(station)
	var out []gripAt
	for _, side := range []float64{1, -1} {
		out = append(out, gripAt{side, pt(inner.Y, inner.Z), pt(outer.Y, outer.Z)})
	}
	return out
}

// PairBoards returns the saddles: one pattern for each boat and each beam, four beams'
// worth at most.
func PairBoards(c *pair.Craft, o Options) []Board {
	var out []Board
	for _, s := range c.Saddles() {
		out = append(out, saddle(c, s, o))
	}
	return out
}

// saddle is seen along the boat.
func saddle(c *pair.Craft, s pair.Saddle, o Options) Board {
	name := fmt.Sprintf("saddle-%d", s.Beam+1)
	if s.Boat == 1 {
		name += "b"
	}
	b := Board{Name: name, Title: s.Name, Count: s.Count, Thick: c.Beams.Width, Outline: curve.Polygon(s.Outline...).Reverse(),
		At: pt(s.Right+6, s.Top-4), NameAt: pt((s.Left+s.Right)/2, s.Top-engraved-4), Name3: fmt.Sprintf("S%d", s.Beam+1)}
	b.Words = []string{fmt.Sprintf("%s, beam at station %s", c.Boats[s.Boat].Frame.Design.Title, o.plain(s.Station)), "outboard is to the right; top level under the beam",
		"grain up and down; thickness is the beam's width: glue up boards", "leather or cloth between it and the gunwale"}
	return b
}

// BeamDrawings returns the strips for the beams, seen from above: x across the pair,
// to port positive, from the middle between the hulls.
func BeamDrawings(c *pair.Craft, o Options) []layout.Drawing {
	var out []layout.Drawing
	for k, x := range c.Beams.At {
		half, high := c.Beams.Long/2, c.Beams.Width/2
		d := layout.Drawing{Name: fmt.Sprintf("beam-%d", k+1), Title: fmt.Sprintf("Beam %d", k+1),
			Make: fmt.Sprintf("make 1 of %s, %s wide, %s deep", c.Beams.Wood.Name, o.plain(c.Beams.Width), o.plain(c.Beams.Depth))}
		d.Line(layout.Cut, curve.Rectangle(box(-half, -high, half, high)))
		d.Straight(layout.Center, 0, -high-3, 0, high+3)
		d.Write(4, 4, head, layout.Left, d.Title)
		d.Write(4, -3, small, layout.Left, "station "+o.plain(x)+", lower face, port to the right")
		d.Write(4, -3-row, small, layout.Left, "no holes in the middle half; round the edges under cord")
		for i, b := range c.Boats {
			centre := c.Spacing / 2 * (1 - 2*float64(i))
			d.Straight(layout.Center, centre, -high, centre, high)
			d.Write(centre+2, high-4.5, small, layout.Left, "middle of "+b.Frame.Design.Title)
			for _, g := range gripsOf(b, x) {
				at := centre + g.side*g.inner.X
				to := centre + g.side*g.outer.X
				d.Straight(layout.Mark, at, -high, at, high)
				d.Straight(layout.Mark, to, -high, to, high)
				words := math.Max(at, to)
				d.Write(words+2, -high+2, small, layout.Left, fmt.Sprintf("saddle S%d, gunwale", k+1))
			}
		}
		for _, t := range d.Texts {
			b := t.Bounds()
			d.Keep = append(d.Keep, kept(b.Min.X, b.Max.X))
		}
		out = append(out, d)
	}
	return out
}

// PairNotes are the words for the first sheet.
func PairNotes(c *pair.Craft, o Options) []layout.Note {
	_, lash := c.Worst()
	return []layout.Note{
		{Heading: "Setting up", Lines: []string{
			fmt.Sprintf("Middle lines %s apart, %d beams of %s by %s, %s long, at stations %s.", o.plain(c.Spacing), len(c.Beams.At), o.plain(c.Beams.Width), o.plain(c.Beams.Depth), o.plain(c.Beams.Long), stations(c, o)),
			fmt.Sprintf("Lash each beam to both gunwales of each hull with %d turns of 4 mm cord, frapped tight.", pair.Turns(lash)),
		}},
		{Heading: "Cautions", Lines: append(dangers(c.Findings), outfitCautions()...)},
	}
}

func stations(c *pair.Craft, o Options) string {
	out := ""
	for i, x := range c.Beams.At {
		if i > 0 {
			out += ", "
		}
		out += o.plain(x)
	}
	return out
}

// dangers are the findings of danger as sentences.
func dangers(all finding.List) []string {
	var out []string
	for _, f := range all.Dangers() {
		out = append(out, wording.Capital(f.About)+": "+f.Text+".")
	}
	return out
}

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
	station := c.Beams.At[k]
	for i, b := range c.Boats {
		w := v
		w.y0 += float64(i) * c.Rise * v.k
		w.x0 -= c.Spacing / 2 * (1 - 2*float64(i)) * v.k // seen from astern port lies to the left
		endView(&d, b.Hull, station, 0, w)
		bearers(&d, b, saddleOf(c, i, k), w)
	}
	low, high := c.BeamsLie(), c.BeamsLie()+c.Beams.Depth
	a, b := v.at(-c.Beams.Long/2, low), v.at(c.Beams.Long/2, high)
	d.Line(layout.Cut, curve.Rectangle(geometry.Around(a, b)))
	heel := math.Tan(c.Rest.Plane.Heel)
	water := func(y float64) geometry.Point { return v.at(y, c.Rest.Plane.Water(station)+y*heel) }
	d.Line(layout.Mark, curve.Polyline(water(-c.Beams.Long/2), water(c.Beams.Long/2)))
	upright(&d, water(0), v.at(0, low), fmt.Sprintf("%.0f mm to the water", c.Beneath))
	d.Write(wide/2, math.Min(water(0).Y-6, v.y0-3), small, layout.Middle, fmt.Sprintf("through the beam at station %.0f mm", station))
	return d
}

// saddleOf is the saddle of a boat under a beam; boats of one design share theirs.
func saddleOf(c *pair.Craft, boat, beam int) pair.Saddle {
	var out pair.Saddle
	for _, s := range c.Saddles() {
		if s.Beam == beam && s.Boat <= boat {
			out = s
		}
	}
	return out
}

// bearers draws both gunwales of a boat where a beam crosses, with the saddles on
// them.
func bearers(d *layout.Drawing, b aboard.Boat, s pair.Saddle, v view) {
	for _, g := range gripsOf(b, s.Station) {
		mid, across := g.inner.Lerp(g.outer, 0.5), g.outer.Sub(g.inner).Unit()
		down := pt(across.Y, -across.X).Scale(b.Frame.Gunwale.Height)
		place := func(q geometry.Point) geometry.Point { return v.at(g.side*q.X, q.Y) }
		var outline []geometry.Point
		for _, q := range s.Outline {
			outline = append(outline, place(mid.Add(q)))
		}
		d.Line(layout.Cut, curve.Polygon(outline...))
		d.Line(layout.Mark, curve.Polygon(place(g.inner), place(g.outer), place(g.outer.Add(down)), place(g.inner.Add(down))))
	}
}

// upright draws the height from one place up to another with its words beside it.
func upright(d *layout.Drawing, from, to geometry.Point, words string) {
	const arm = 1.5
	for _, q := range []geometry.Point{from, to} {
		d.Straight(layout.Tick, q.X-arm, q.Y, q.X+arm, q.Y)
	}
	d.Straight(layout.Tick, from.X, from.Y, to.X, to.Y)
	d.Write(from.X+2.4, (from.Y+to.Y-small)/2, small, layout.Left, words)
}

// PairFigure is the sketch with its headline, the lever of righting up to where it
// ends, and the stress in a beam.
func PairFigure(c *pair.Craft) layout.Drawing {
	d := PairSketch(c, wideFigure)
	d.Write(0, d.Bounds().Max.Y+9, head+0.4, layout.Left, fmt.Sprintf("%s, %.0f mm apart, from astern; beams %.0f x %.0f mm", d.Title, c.Spacing, c.Beams.Width, c.Beams.Depth))
	p := LeverPlot(c)
	low := math.Min(-98, d.Bounds().Min.Y-p.H-14)
	p.Draw(&d, pt(16, low))
	bendPlot(c, &d, pt(160, low))
	return d
}

// LeverPlot draws the lever of righting, at each heel the lesser of both sides, with
// the straight line of GM beside it.
func LeverPlot(c *pair.Craft) plot.Plot {
	p := plot.Plot{Title: "Righting lever, the lesser of both sides, to its end", XLabel: "heel, degrees; dashed what GM alone would say", YLabel: "GZ, mm", W: 105, H: 62}
	lesser := c.Lesser()
	line := plot.Curve{Name: "GZ", Pen: layout.Cut}
	end := 0.0
	for _, v := range lesser.Levers {
		line.Points = append(line.Points, pt(v.Heel*180/math.Pi, v.GZ))
		end = v.Heel
	}
	p.Curves = []plot.Curve{line}
	if l := lesser.Lift; !math.IsNaN(l) {
		p.Marks = append(p.Marks, plot.Mark{X: l * 180 / math.Pi, Name: "windward hull lifts"})
	}
	if f := lesser.Flooded; !math.IsNaN(f) {
		p.Marks = append(p.Marks, plot.Mark{X: f * 180 / math.Pi, Name: "water comes in"})
	}
	// GM's straight line from where the pair rests, dashed, as far as the curve's most.
	list := math.Abs(c.Rest.Heel)
	reach := math.Min(end-list, lesser.Most.GZ/c.GM)
	p.Curves = append(p.Curves, plot.Curve{Pen: layout.Guide, Points: []geometry.Point{pt(list*180/math.Pi, 0), pt((list+reach)*180/math.Pi, c.GM*reach)}})
	return p
}

// bendPlot writes the cases as bars beside the working stress.
func bendPlot(c *pair.Craft, d *layout.Drawing, at geometry.Point) {
	const wide = 95.0
	working := beam.Working(c.Beams.Wood)
	d.Write(at.X, at.Y+65, head+0.4, layout.Left, "Stress in a beam beside what is asked of the wood")
	for i, k := range c.Cases {
		y := at.Y + 50 - 14*float64(i)
		d.Line(layout.Mark, curve.Rectangle(box(at.X, y, at.X+wide*k.Stress/working+0.5, y+4)))
		d.Write(at.X, y+5.2, small, layout.Left, fmt.Sprintf("%s: %.0f N m, %.1f N/mm2", k.Name, k.Moment, k.Stress))
		d.Straight(layout.Mark, at.X+wide, y-1.5, at.X+wide, y+4.6)
	}
	d.Write(at.X+wide, at.Y, small, layout.Middle, fmt.Sprintf("asked: %.1f N/mm2", working))
}
