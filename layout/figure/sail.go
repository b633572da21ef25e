package figure

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/outfit/sail"
	"ribwright/layout"
)

// SailSketch draws boat and sail from the side, the boat so many mm long, with reefs,
// centers and leeboard.
func SailSketch(f *sail.Fit, wide float64) layout.Drawing {
	d := layout.Drawing{Name: "sail", Title: f.Boat.Frame.Design.Title + " under sail"}
	v := sideView(&d, f.Boat.Hull, geometry.Pt(20, 0), wide)
	_, fore := f.Boat.Hull.Ends()
	onWater(&d, f.Boat.Hull, f.Rest.Plane, v, 0.03)
	vee := f.Sail.Rig == design.Vee
	place := func(q geometry.Point) geometry.Point { return v.at(f.Mast.At+q.X, f.Tack+q.Y) }
	if vee { // lies across the boat: drawn apart, from astern
		place = func(q geometry.Point) geometry.Point { return v.at(fore*1.1+f.Plan.Corners[1].X+q.X, f.Tack+q.Y) }
		foot := place(geometry.Point{})
		d.Write(foot.X, foot.Y-6, small, layout.Middle, "the sail from astern")
		head := v.at(f.Mast.At, f.Tack+f.Plan.Corners[1].Y)
		d.Line(layout.Cut, curve.Polyline(v.at(f.Mast.At, f.Mast.StepZ), head))
	}
	var sizes []layout.Text
	right := v.at(f.Mast.At, 0).X // of all that is drawn of the sail
	for i, s := range f.States[:f.Useful()] {
		pen := layout.Guide
		if i == 0 {
			pen = layout.Cut
		}
		var pts []geometry.Point
		for _, q := range s.Plan.Corners {
			pts = append(pts, place(q))
			right = math.Max(right, pts[len(pts)-1].X)
		}
		d.Line(pen, curve.Polygon(pts...))
		if luff, leech, ok := f.Plan.ReefLine(i); ok {
			d.Line(layout.Center, curve.Polyline(place(luff), place(leech)))
		}
		sizes = append(sizes, layout.Text{At: place(s.Center), Words: fmt.Sprintf("%s %.2f m2", s.Name, s.Area)})
	}
	listed(&d, sizes, right+5)
	if f.Mast.Long > 0 {
		d.Line(layout.Mark, curve.Polyline(v.at(f.Mast.At, f.Mast.StepZ), v.at(f.Mast.At, f.Mast.StepZ+f.Mast.Long)))
	}
	for _, s := range f.Plan.Spars {
		d.Line(layout.Center, curve.Polyline(place(s.From), place(s.To)))
	}
	if b := f.Board; b.Area > 0 && f.Balanced() {
		x, w := f.BracketAt(), f.Rest.Plane.Water(f.BracketAt())
		q, r := v.at(x-b.Chord/2, w-b.Deep), v.at(x+b.Chord/2, w-b.Deep+b.Long)
		d.Line(layout.Mark, curve.Rounded(geometry.Around(q, r), 4))
		resists(&d, v.at(f.Resists().X, f.Resists().Y), geometry.Around(q, r))
	}
	return d
}

// listed marks centers, full sail first, and writes of them in a column clear of the
// sail's lines, each at its own height or as near as the others leave it.
func listed(d *layout.Drawing, all []layout.Text, x float64) {
	y := math.Inf(-1)
	for i := len(all) - 1; i >= 0; i-- {
		c := all[i].At
		cross(d, c)
		y = math.Max(c.Y, y+row)
		d.Line(layout.Tick, curve.Polyline(c, geometry.Pt(x, y)))
		d.Write(x+1, y-small/2, small, layout.Left, all[i].Words)
	}
}

// resists marks the middle of hull and leeboard under water and writes so under the
// keel, or under the leeboard where that is in the way.
func resists(d *layout.Drawing, at geometry.Point, board geometry.Box) {
	cross(d, at)
	align, clear := layout.Right, at.Y
	if at.X > board.Min.X-2 {
		align = layout.Left
		if at.X < board.Max.X+2 {
			clear = board.Min.Y
		}
	}
	under(d, at, align, "lateral resistance", max(0, int(math.Ceil(-clear/row))))
}

// Sail is the sketch with its headline and the righting moments.
func Sail(f *sail.Fit) layout.Drawing {
	d := SailSketch(f, wideFigure*0.8)
	d.Write(0, d.Bounds().Max.Y+15, head+0.4, layout.Left,
		fmt.Sprintf("%s: %s of %.2f m2, no sail up at %.1f m/s (%d kn) with the crew %s", f.Boat.Frame.Design.Title, f.Sail.Rig, f.Plan.Area(), f.Wind.Stop, sail.Knots(f.Wind.Stop), f.Chosen()))
	p := SailMoments(f)
	p.Draw(&d, geometry.Pt(16, d.Bounds().Min.Y-p.H-14))
	return d
}

// SailMoments plots the righting moment with the crew in each place, to where the lee gunwale dips.
func SailMoments(f *sail.Fit) Plot {
	p := Plot{Title: "Righting moment by where the crew sits, to where the lee gunwale dips", XLabel: "heel, degrees", YLabel: "N m", W: 150, H: 70}
	for i, s := range f.Stands {
		pen := []layout.Pen{layout.Mark, layout.Center, layout.Cut}[i]
		p.Curves = append(p.Curves, curveOf(s.Place.String(), pen, s.Moments, func(m sail.Moment) (x, y float64) { return m.Heel * 180 / math.Pi, m.N }))
	}
	return p
}
