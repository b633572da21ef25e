package tile

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// coarse is how far a line of a miniature may lie off, mm on the sheet: a fifth of that on
// a screen that shows the sheet as large as a hand.
const coarse = 0.4

// Miniature is a sheet as one drawing to be looked at, in mm of its file: what its views
// show of the patterns, and its own lines. Lettering is a line in the place of each line
// of words.
func Miniature(s layout.Sheet) layout.Drawing {
	out := layout.Drawing{Name: s.Label, Title: s.Label}
	for _, v := range s.Views {
		for _, k := range v.Drawing.Strokes {
			pts := k.Path.Flatten(coarse)
			for _, run := range runsOf(clipped(k.Pen, pts, v.Frame)) {
				out.Line(k.Pen, curve.Polyline(run...).Map(v.ToSheet))
			}
		}
		for _, t := range v.Drawing.Texts {
			if b := t.Bounds(); v.Frame.Holds(b.Min) && v.Frame.Holds(b.Max) {
				words(&out, v.Lettering(t))
			}
		}
	}
	for _, k := range s.Strokes {
		out.Line(k.Pen, curve.Polyline(k.Path.Flatten(coarse)...))
	}
	for _, t := range s.Texts {
		words(&out, t)
	}
	return out
}

// words draws a line through the middle of small letters.
func words(d *layout.Drawing, t layout.Text) {
	from := t.Start().Add(geometry.Polar(t.Height/3, t.Angle+math.Pi/2))
	to := from.Add(geometry.Polar(lettering.Width(t.Words, t.Height), t.Angle))
	d.Line(layout.Tick, curve.Polyline(from, to))
}

// runsOf makes runs of stretches that follow one another.
func runsOf(all []line) (out [][]geometry.Point) {
	for _, k := range all {
		if n := len(out); n > 0 && out[n-1][len(out[n-1])-1] == k.from {
			out[n-1] = append(out[n-1], k.to)
			continue
		}
		out = append(out, []geometry.Point{k.from, k.to})
	}
	return out
}
