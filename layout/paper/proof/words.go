package proof

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// words says what to measure and what to do with it.
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
	what := fmt.Sprintf("%s, %s. Print it at 100 %% (actual size), on one side, as you will print the patterns.", p.Size.Name, p.Way())
	if c := p.Correction(); c != "" {
		what += " It is " + c + ": both bars must now measure true."
	}
	return []string{
		what,
		fmt.Sprintf("1. Lay a steel rule on the level bar. It is %s long. If it measures otherwise, say so to every set: --printed-%s \"... of %s\".", d.level, level, d.level),
		fmt.Sprintf("2. The same for the upright bar, %s: --printed-%s \"... of %s\". Across is the paper's short edge and down its long one, whichever way sheets lie.", d.upright, upright, d.upright),
		"3. The rulers run in from the paper's edges. The first tick you see at each edge is what your printer leaves blank, in mm. When it is more than the sheet's margin there, say so: --margins \"left ... mm, bottom ... mm\". Now: " + p.Margins.String() + ".",
		"4. Measure from the paper's edge to the tick 20 of the left and of the lower ruler. Where it is not 20 mm the ink is shifted; for 21.5 mm at the left say --offset \"left 1.5 mm\", for 19 mm at the lower edge --offset \"up 1 mm\". Margins and offset hold for sheets that lie this way; ribwright proof --way lying or standing makes the other.",
		fmt.Sprintf("5. The crosses in the corners are %s apart both ways over the sheet. Diagonals that differ by more than 0.5 mm show that the printer pulls paper askew: set its paper guides, or feed from its other tray. No flag can cure that.", d.far()),
		"6. Print the proof again with the flags. Do it anew for other paper, and on damp days: paper itself grows by some tenths of a per cent.",
	}
}

func (d *drawing) far() string {
	if d.units == measure.Imperial {
		return measure.Sixteenths(d.diagonal)
	}
	return measure.MM(d.diagonal, 1) + " mm"
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
