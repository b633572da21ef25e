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

// Bars are how long the level and the upright scale bar of a sheet are, as they are
// lettered.
func Bars(p paper.Sheet, u measure.System) (level, upright string) {
	d := drawing{paper: p, units: u}
	d.bars()
	return d.level, d.upright
}

type drawing struct {
	paper          paper.Sheet
	units          measure.System
	sheet          layout.Sheet
	level, upright string // the bars' nominal lengths
	diagonal       float64
}

// bars draws the two scale bars, each as long as fits in whole centimeters or
// inches.
func (d *drawing) bars() {
	a := d.paper.Area
	from := geometry.Point{X: a.Min.X + 2, Y: inset}
	long, level := d.whole(a.Max.X - 2 - from.X)
	d.sheet.Rule(from, geometry.Point{X: 1}, long)
	from = geometry.Point{X: a.Max.X - inset + 10, Y: inset + 10}
	long, upright := d.whole(a.Max.Y - 14 - from.Y)
	d.sheet.Rule(from, geometry.Point{Y: 1}, long)
	d.level, d.upright = level, upright
}

// whole rounds down to centimeters or inches.
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
	align := layout.Middle
	if in.Y != 0 {
		at.Y, align = at.Y-small/2, layout.Left
	}
	d.sheet.Write(at, small, align, fmt.Sprint(i))
}

func (d *drawing) words() {
	a := d.paper.Area
	at := geometry.Point{X: a.Min.X + 18, Y: a.Max.Y - 20}
	wide := a.Max.X - inset - 2 - at.X
	d.sheet.Write(at, 6, layout.Left, "Proof of a printer")
	at.Y -= 2
	level, upright := "across", "down"
	if d.paper.Lying {
		level, upright = upright, level
	}
	for _, p := range d.paragraphs(level, upright) {
		at.Y -= 1.2
		for _, l := range lettering.Wrap(lettering.Safe(p), small, wide) {
			at.Y -= leading
			d.sheet.Write(at, small, layout.Left, l)
		}
	}
	d.samplesAt(at.Add(geometry.Point{Y: -2.5 * leading}))
}

func (d *drawing) paragraphs(level, upright string) []string {
	p := d.paper
	other := map[bool]string{true: "standing", false: "lying"}[p.Lying]
	what := fmt.Sprintf("%s, %s. Print it at 100 %% (actual size), on one side, as you will print the patterns.", p.Size.Name, p.Way())
	if c := p.Correction(); c != "" {
		what += " It is " + c + ": both bars must now measure true."
	}
	return []string{
		what,
		fmt.Sprintf("1. Lay a steel rule on the level bar. It is %s long. If it measures otherwise, say so to every set: --printed-%s \"... of %s\".", d.level, level, d.level),
		fmt.Sprintf("2. The same for the upright bar, %s: --printed-%s \"... of %s\". Across is the paper's short edge and down its long one, whichever way sheets lie.", d.upright, upright, d.upright),
		"3. The rulers run in from the paper's edges. The first tick you see at each edge is what your printer leaves blank, in mm. When it is more than the sheet's margin there, say so: --margins \"left ... mm, bottom ... mm\". Now: " + p.Margins.String() + ".",
		"4. Measure from the paper's edge to the tick 20 of the left and of the lower ruler. Where it is not 20 mm the ink is shifted; for 21.5 mm at the left say --way " + p.Way() + " --offset \"left 1.5 mm\", for 19 mm at the lower edge \"up 1 mm\". Margins and offset hold for sheets that lie this way; ribwright proof --way " + other + " makes the other.",
		fmt.Sprintf("5. The crosses in the corners are %s apart both ways over the sheet. Diagonals that differ by more than 0.5 mm show that the printer pulls paper askew: set its paper guides, or feed from its other tray. No flag can cure that.", d.units.Tape(d.diagonal)),
		"6. Print the proof again with the flags. Do it anew for other paper, and on damp days: paper itself grows by some tenths of a per cent.",
	}
}

// samplesAt shows every line and some sizes of lettering: what the printer
// drops here it would drop on the patterns.
func (d *drawing) samplesAt(at geometry.Point) {
	for i, p := range layout.Pens() {
		y := at.Y - float64(i)*leading
		d.sheet.Line(p, geometry.Point{X: at.X, Y: y + 1.2}, geometry.Point{X: at.X + 25, Y: y + 1.2})
		d.sheet.Write(geometry.Point{X: at.X + 28, Y: y}, small, layout.Left, measure.MM(p.Width(), 2)+" mm")
	}
	x, y := at.X+55, at.Y-4*leading
	for _, high := range []float64{2, small, 3.2, 4.5} {
		words := "rib F3 " + measure.MM(high, 1) + " mm"
		d.sheet.Write(geometry.Point{X: x, Y: y}, high, layout.Left, words)
		y += high + 2.2
	}
}
