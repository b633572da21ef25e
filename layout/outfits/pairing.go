package outfits

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/pair"
	"ribwright/geometry/wording"
	"ribwright/layout"
)

// PairBoards returns the saddles: one pattern for each boat and each beam, four beams'
// worth at most.
func PairBoards(c *pair.Craft, units measure.System) []Board {
	var out []Board
	for _, s := range c.Saddles() {
		out = append(out, saddle(c, s, units))
	}
	return out
}

// saddle is seen along the boat.
func saddle(c *pair.Craft, s pair.Saddle, units measure.System) Board {
	name := fmt.Sprintf("saddle-%d", s.Beam+1)
	if s.Boat == 1 {
		name += "b"
	}
	b := Board{Name: name, Title: s.Name, Count: s.Count, Thick: c.Beams.Width, Outline: curve.Polygon(s.Outline...).Reverse(),
		At: geometry.Pt(s.Right+6, s.Top-4), NameAt: geometry.Pt((s.Left+s.Right)/2, s.Top-engraved-4), Engrave: fmt.Sprintf("S%d", s.Beam+1)}
	b.Words = []string{fmt.Sprintf("%s, beam at station %s", c.Boats[s.Boat].Frame.Design.Title, units.Fine(s.Station)), "outboard to the right, as for port; turn it about for starboard",
		"top level under the beam, glued to it, no screws; grain up and down", "thickness is the beam's width: glue up boards",
		fmt.Sprintf("slot takes gunwale, cloth, outwale and leather of %s", units.Fine(pair.Leather))}
	if rise := math.Abs(s.Rises); rise >= 0.5 {
		end := "forward"
		if s.Rises < 0 {
			end = "after"
		}
		b.Words = append(b.Words, fmt.Sprintf("plane its floor in place, %s deeper at the %s face", units.Whole(rise), end))
	}
	return b
}

// underBars are the bars in the hulls that the beams are lashed to, from above: x across,
// forward up.
func underBars(c *pair.Craft, units measure.System) []Board {
	var out []Board
	for _, s := range c.Bars() {
		high := c.Beams.Bar / 2
		g := c.Boats[s.Boat].Frame.Gunwale
		b := Board{Name: fmt.Sprintf("under-bar-%d-%d", s.Beam+1, s.Boat+1), Title: s.Name, Count: s.Count, Thick: c.BarDeep(), Flat: true,
			Outline: curve.Polygon(geometry.Pt(-s.Aft, -high), geometry.Pt(s.Aft, -high), geometry.Pt(s.Fore, high), geometry.Pt(-s.Fore, high)), At: geometry.Pt(4, 12),
			Words: []string{"station " + units.Fine(s.Station) + "; forward is up", fmt.Sprintf("middle to end: forward edge %s, after edge %s", units.Fine(s.Fore), units.Fine(s.Aft)),
				fmt.Sprintf("ends lie %s under the gunwales, clear of ribs and cloth:", units.Fine(s.Lip)), fmt.Sprintf("bevel their tops %.0f deg, round all edges", g.Tilt*180/math.Pi), "put one end far under, lift the other"}}
		b.marks(high, s.Lash, "middle of a lashing")
		out = append(out, b)
	}
	return out
}

// BeamDrawings returns the strips for the beams, seen from above: x across the pair,
// to port positive, from the middle between the hulls.
func BeamDrawings(c *pair.Craft, units measure.System) []layout.Drawing {
	var out []layout.Drawing
	for k, x := range c.Beams.At {
		half, high := c.Beams.Long/2, c.Beams.Width/2
		d := layout.Drawing{Name: fmt.Sprintf("beam-%d", k+1), Title: fmt.Sprintf("Beam %d", k+1),
			Make: fmt.Sprintf("make 1 of %s, %s wide, %s deep", c.Beams.Wood.Name, units.Fine(c.Beams.Width), units.Fine(c.Beams.Depth))}
		d.Line(layout.Cut, curve.Rectangle(geometry.Rect(-half, -high, half, high)))
		d.Straight(layout.Center, 0, -high-3, 0, high+3)
		d.Write(4, 4, head, layout.Left, d.Title)
		d.Write(4, -3, small, layout.Left, "station "+units.Fine(x)+", lower face, port to the right")
		d.Write(4, -3-row, small, layout.Left, "no holes in the middle half; round the edges under cord")
		for i, b := range c.Boats {
			center := c.Spacing / 2 * (1 - 2*float64(i))
			d.Straight(layout.Center, center, -high, center, high)
			d.Write(center+2, high-4.5, small, layout.Left, "middle of "+b.Frame.Design.Title)
			inner, _ := b.GunwaleTop(x)
			outer := b.Rail(x)
			for _, side := range []float64{1, -1} {
				at, to := center+side*inner.Y, center+side*outer.Y
				d.Straight(layout.Mark, at, -high, at, high)
				d.Straight(layout.Mark, to, -high, to, high)
				d.Write(math.Max(at, to)+2, -high+2, small, layout.Left, fmt.Sprintf("saddle S%d, gunwale", k+1))
			}
		}
		keepWords(&d)
		out = append(out, d)
	}
	return out
}

// beamBoards are the beams as boards that distances give, seen from above as in
// BeamDrawings.
func beamBoards(c *pair.Craft, units measure.System) []Board {
	var out []Board
	for k, x := range c.Beams.At {
		half, high := c.Beams.Long/2, c.Beams.Width/2
		b := Board{Name: fmt.Sprintf("beam-%d", k+1), Title: fmt.Sprintf("Beam %d", k+1), Count: 1, Thick: c.Beams.Depth, Flat: true,
			Outline: curve.Rectangle(geometry.Rect(-half, -high, half, high)),
			Rows:    []string{fmt.Sprintf("of %s, %s wide along the boats, %s deep", c.Beams.Wood.Name, units.Fine(c.Beams.Width), units.Fine(c.Beams.Depth))},
			Words:   []string{"station " + units.Fine(x) + "; lower face, port to the right", "no holes in the middle half; round the edges under cord"}}
		b.mark(0, high, "middle between the hulls")
		for i, boat := range c.Boats {
			center := c.Spacing / 2 * (1 - 2*float64(i))
			inner, _ := boat.GunwaleTop(x)
			outer := boat.Rail(x)
			b.mark(center, high, "middle of a hull")
			for _, side := range []float64{1, -1} {
				b.mark(center+side*inner.Y, high, fmt.Sprintf("gunwale's inner edge, saddle S%d", k+1))
				b.mark(center+side*outer.Y, high, fmt.Sprintf("finished gunwale's outer edge, saddle S%d", k+1))
			}
		}
		out = append(out, b)
	}
	return out
}

// PairFirst is what the first sheet says.
func PairFirst(c *pair.Craft, units measure.System) *layout.First {
	_, lash := c.Worst()
	return &layout.First{
		Notes: []layout.Note{{Heading: "Setting up", Lines: []string{
			fmt.Sprintf("Two whole boats: %s and %s, each built by its own book.", c.Boats[0].Frame.Design.Title, c.Boats[1].Frame.Design.Title),
			fmt.Sprintf("Middle lines %s apart, %d beams of %s by %s, %s long, at stations %s.", units.Fine(c.Spacing), len(c.Beams.At), units.Fine(c.Beams.Width), units.Fine(c.Beams.Depth), units.Fine(c.Beams.Long), wording.List(c.Beams.At, units.Fine)),
			fmt.Sprintf("Line the saddles with leather. Lash each beam to the under bar in each hull, close inside both gunwales: %d turns of 4 mm cord, frapped tight.", pair.Turns(lash)),
			fmt.Sprintf("Two lines of that cord, doubled, each %s, cross between the hulls: from the after beam beside one inner gunwale to the forward beam beside the other. Draw them tight.", units.Whole(c.Diagonal())),
		}}},
		Cautions: cautions(c.Findings),
	}
}
