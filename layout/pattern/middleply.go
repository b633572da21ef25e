package pattern

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// MiddlePly draws the middle ply of a gunwale whose mortises are gaps, seen from the
// side, to lay it up on: x is the distance from midship along the straight stock, y = 0
// its underside. Where fore and aft are equal it is the forward half.
func MiddlePly(f *frame.Frame, units measure.System) layout.Drawing {
	g := &f.Gunwale
	deep, aft, half := g.Mortises[0].Depth, g.Aft, halved(f)
	d := layout.Drawing{Name: "middle-ply", Title: "Middle ply of a gunwale",
		Make: "2 alike"}
	if half {
		aft = -overMidship
		d.Make += "; one half, turn the ply over at midship, face for face"
	}
	d.Make += fmt.Sprintf("; gauges on their places, blocks between them within %s; forward is to the right", units.Fine(blockOff))
	d.Line(layout.Mark, curve.Rectangle(geometry.Rect(aft, deep, g.Fore, g.Height)))
	for i, z := range g.Blocks {
		if z.To > aft {
			drawBlock(&d, blockName(f, i), z, math.Max(z.From, aft), deep, units)
		}
	}
	for i, m := range g.Mortises {
		if half && !onHalf(m.FromMidship) {
			continue
		}
		lo, hi := m.Ends()
		d.Straight(layout.Mark, m.FromMidship, -3, m.FromMidship, 0)
		d.Write(m.FromMidship, -9, name, layout.Middle, twins(f, i))
		d.Whole = append(d.Whole, layout.Span{From: lo - 5, To: hi + 1})
	}
	d.Straight(layout.Center, 0, -3, 0, g.Height+4)
	d.Write(1.2, g.Height+1.4, small, layout.Left, "midship is 0; strip above, blocks below")
	d.Write(g.Fore-2, g.Height+1.4, small, layout.Right, "ends: leave them long, cut them with the gunwale")
	drawGauge(&d, f, aft, units)
	tape(&d, units, aft, g.Fore, -12)
	return d
}

// blockOff is how far a block may be off its length, mm. Common practice, no source.
const blockOff = 0.5

// blockName is what a block is called, and on a half the one that lies opposite.
func blockName(f *frame.Frame, i int) string {
	if j := len(f.Gunwale.Blocks) - 1 - i; halved(f) && j != i {
		return fmt.Sprintf("%d and %d", i+1, j+1)
	}
	return fmt.Sprint(i + 1)
}

// drawBlock draws a block from the place from on, with its number and its length.
func drawBlock(d *layout.Drawing, words string, z frame.Zone, from, deep float64, units measure.System) {
	d.Line(layout.Cut, curve.Rectangle(geometry.Rect(from, 0, z.To, deep)))
	if z.To-math.Max(z.From, 0) < 8 {
		return // its other half is lettered
	}
	at := math.Max(from, 0) + 2
	for _, line := range []string{"block " + words + ": " + both(units, z.To-z.From), words + ": " + units.Fine(z.To-z.From), words} {
		wide := lettering.Width(lettering.Safe(line), small)
		if at+wide < z.To-1 {
			d.Write(at, deep/2-small/2, small, layout.Left, line)
			d.Keep = append(d.Keep, layout.Span{From: at - 4, To: at + wide + 2})
			return
		}
	}
}

// drawGauge draws the gauge that keeps a gap open, beside midship over the ply.
func drawGauge(d *layout.Drawing, f *frame.Frame, aft float64, units measure.System) {
	m, x, y := f.Gunwale.Mortises[0], math.Max(aft, 0)+30, f.Gunwale.Height+8
	high := m.Depth + gaugeGrip
	d.Line(layout.Cut, curve.Rectangle(geometry.Rect(x, y, x+m.Length, y+high)))
	for i, line := range []string{
		fmt.Sprintf("gauge for a gap: %d of hardwood, waxed", len(f.Gunwale.Mortises)),
		fmt.Sprintf("%s long along the gunwale,", units.Fine(m.Length)),
		fmt.Sprintf("%s thick or a shaving less", units.Fine(m.Width)),
	} {
		d.Write(x+m.Length+3, y+high-4-row*float64(i), small, layout.Left, line)
	}
	d.Whole = append(d.Whole, layout.Span{From: x - 4, To: x + m.Length + 75})
}

// gaugeGrip is how far a gauge stands out of its slot, mm, to draw it by. Common
// practice, no source.
const gaugeGrip = 20.0
