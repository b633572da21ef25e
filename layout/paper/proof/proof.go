// Package proof draws one sheet that shows what a printer does to its paper: how
// far it stretches each way, what it leaves blank, whether it shifts or skews,
// and how fine it prints. The sheet says what to measure and which flags to give
// afterwards.
package proof

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/layout/paper"
)

const (
	small   = lettering.MinHeight
	leading = 4.1  // between lines of small lettering, mm
	inset   = 30.0 // of the scale bars from the paper's edges: behind the margin rulers
	armLong = 5.0  // half the width of a corner cross
)

// Lay draws the proof for a sheet of paper.
func Lay(p paper.Sheet, u measure.System) layout.Document {
	d := drawing{paper: p, units: u}
	d.bars()
	d.corners()
	d.words()
	for i := range d.sheet.Strokes {
		d.sheet.Strokes[i].Path = d.sheet.Strokes[i].Path.Map(p.ToFile)
	}
	for i := range d.sheet.Texts {
		d.sheet.Texts[i].At = p.ToFile.Apply(d.sheet.Texts[i].At)
	}
	// These start at the paper's own edges, so they are drawn in the file's mm.
	d.rulers()
	d.sheet.Number, d.sheet.Label = 1, "proof"
	out := layout.Document{Title: "Proof of a printer", Paper: layout.Paper{Name: p.Size.Name, W: p.W, H: p.H}, Sheets: []layout.Sheet{d.sheet}}
	if p.Corrected() {
		out.Stretch = geometry.Point{X: p.ToFile.A, Y: p.ToFile.D}
	}
	return out
}

// drawing is a proof in the making, in true mm until the rulers.
type drawing struct {
	paper          paper.Sheet
	units          measure.System
	sheet          layout.Sheet
	level, upright string // the bars' nominal lengths
	diagonal       float64
}

// bars draws the two scale bars, each as long as fits in whole centimetres or
// inches.
func (d *drawing) bars() {
	a := d.paper.Area
	from := geometry.Point{X: a.Min.X + 2, Y: inset}
	long, words := d.whole(a.Max.X - 2 - from.X)
	d.sheet.Rule(from, geometry.Point{X: 1}, long)
	d.level = words
	from = geometry.Point{X: a.Max.X - inset + 10, Y: inset + 10}
	long, words = d.whole(a.Max.Y - 14 - from.Y)
	d.sheet.Rule(from, geometry.Point{Y: 1}, long)
	d.upright = words
}

// whole rounds down to centimetres or inches.
func (d *drawing) whole(room float64) (float64, string) {
	if d.units == measure.Imperial {
		in := math.Floor(room / 25.4)
		return in * 25.4, fmt.Sprintf("%.0f in", in)
	}
	mm := math.Floor(room/10) * 10
	return mm, fmt.Sprintf("%.0f mm", mm)
}

// corners draws four crosses whose diagonals show skew.
func (d *drawing) corners() {
	b := d.paper.Area.Grow(-armLong - 1)
	for _, at := range []geometry.Point{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}} {
		d.sheet.Line(layout.Tick, at.Add(geometry.Point{X: -armLong}), at.Add(geometry.Point{X: armLong}))
		d.sheet.Line(layout.Tick, at.Add(geometry.Point{Y: -armLong}), at.Add(geometry.Point{Y: armLong}))
	}
	d.diagonal = math.Hypot(b.W(), b.H())
}

// rulerLong is how far a margin ruler reaches into the sheet, mm.
const rulerLong = 20

// rulers draws a ruler inward from the middle of each edge: the first figure or
// tick to be seen is what the printer leaves blank. They reach over the margins
// on purpose.
func (d *drawing) rulers() {
	w, h := d.paper.W, d.paper.H
	for _, r := range []struct{ from, in geometry.Point }{
		{geometry.Point{Y: h / 2}, geometry.Point{X: 1}}, {geometry.Point{X: w, Y: h / 2}, geometry.Point{X: -1}},
		{geometry.Point{X: w / 2, Y: h}, geometry.Point{Y: -1}}, {geometry.Point{X: w / 2}, geometry.Point{Y: 1}},
	} {
		side := geometry.Point{X: math.Abs(r.in.Y), Y: math.Abs(r.in.X)}
		for i := 1; i <= rulerLong; i++ {
			at, long := r.from.Add(r.in.Scale(float64(i))), 2.0
			if i%5 == 0 {
				long = 4
				d.number(at.Add(side.Scale(5)), r.in, i)
			}
			d.sheet.Line(layout.Tick, at, at.Add(side.Scale(long)))
		}
	}
}

// number letters a tick of a margin ruler so that its middle is at the tick.
func (d *drawing) number(at, in geometry.Point, i int) {
	words := fmt.Sprint(i)
	if in.Y != 0 {
		at.Y -= small / 2
		d.sheet.Write(at, small, layout.Left, words)
		return
	}
	d.sheet.Write(at, small, layout.Middle, words)
}
