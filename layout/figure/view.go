// Package figure draws what is to be looked at and not cut: curves, boats afloat, a
// frame's balance, a nest of boats, outfits. It draws facts that others worked out.
package figure

import (
	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/water/float"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// The heights of lettering, mm, and the way from line to line.
const (
	small = lettering.MinHeight
	head  = 3.2
	row   = 4.2
)

// wideFigure is how wide a boat is drawn in a figure, mm.
const wideFigure = 240.0

type view struct {
	k      float64 // mm of figure to a mm of boat
	x0, y0 float64 // of the figure where the boat's zero lies
}

func (v view) at(x, y float64) geometry.Point { return geometry.Pt(v.x0+x*v.k, v.y0+y*v.k) }

// sideView draws a hull from the side, bow to the right, so many mm long from its
// stern at a place.
func sideView(d *layout.Drawing, h *float.Hull, at geometry.Point, wide float64) view {
	aft, fore := h.Ends()
	v := view{k: wide / (fore - aft), y0: at.Y}
	v.x0 = at.X - aft*v.k
	var keel, sheer []geometry.Point
	for _, s := range h.Profile() {
		keel, sheer = append(keel, v.at(s[0], s[1])), append(sheer, v.at(s[0], s[2]))
	}
	last := len(keel) - 1
	for _, line := range [][]geometry.Point{keel, sheer, {keel[0], sheer[0]}, {keel[last], sheer[last]}} {
		d.Line(layout.Cut, curve.Polyline(line...))
	}
	return v
}

// onWater draws the water that a hull lies on, from the side, reaching over both ends
// by a share of the length.
func onWater(d *layout.Drawing, h *float.Hull, p float.Plane, v view, share float64) {
	aft, fore := h.Ends()
	over := share * (fore - aft)
	d.Line(layout.Mark, curve.Polyline(v.at(aft-over, p.Water(aft-over)), v.at(fore+over, p.Water(fore+over))))
}

// endView draws the section of a hull at a station, its middle line at y, with the
// water at a height.
func endView(d *layout.Drawing, h *float.Hull, x, y float64, v view) {
	var port, board []geometry.Point
	for _, q := range h.Outline(x) {
		port, board = append(port, v.at(y-q.X, q.Y)), append(board, v.at(y+q.X, q.Y))
	}
	d.Line(layout.Cut, curve.Polyline(port...))
	d.Line(layout.Cut, curve.Polyline(board...))
}

// through is a line through what lies at n+1 even places from a to b.
func through(a, b float64, n int, at func(x float64) geometry.Point) curve.Path {
	pts := make([]geometry.Point, n+1)
	for i := range pts {
		pts[i] = at(a + (b-a)*float64(i)/float64(n))
	}
	return curve.Polyline(pts...)
}

func cross(d *layout.Drawing, at geometry.Point) {
	const arm = 1.6
	d.Straight(layout.Mark, at.X-arm, at.Y, at.X+arm, at.Y)
	d.Straight(layout.Mark, at.X, at.Y-arm, at.X, at.Y+arm)
}

// under writes of a place beneath the boat, in the first row or a lower one.
func under(d *layout.Drawing, place geometry.Point, a layout.Align, words string, line int) {
	y := -4.5 - row*float64(line)
	d.Straight(layout.Tick, place.X, place.Y, place.X, y)
	off := map[layout.Align]float64{layout.Left: 1.2, layout.Right: -1.2}[a]
	d.Write(place.X+off, y, small, a, words)
}
