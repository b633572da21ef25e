package outfits

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// A sketch is no wider than goes twice beside itself on the usual sheets, mm; its table
// has a column of words and two of distances.
const (
	sketchWide = 122.0
	sketchHigh = 52.0
	whatFrom   = 6.0
	whatWide   = 47.0
	alongEnds  = 89.0
)

// Sketch draws a board that is set out by distances: small, with a letter at each hole
// and line and a table of where they go. It has no line to cut.
func (b Board) Sketch(units measure.System) layout.Drawing {
	box := b.Outline.Bounds()
	n := scaleFor(box.W(), box.H())
	d := layout.Drawing{Name: b.Name, Title: b.Title, Make: fmt.Sprintf("make %d, %s thick, SKETCH %s", b.Count, units.Fine(b.Thick), ratio(n))}
	f := &sketcher{d: &d, units: units, k: 1 / n, mid: box.Center()}
	f.write(small, fmt.Sprintf("SKETCH %s, not full size: set it out from the distances below.", ratio(n)))
	places := b.groups()
	f.outline(b, box, places)
	f.write(small, wording.Capital(b.size(units))+".")
	if len(places) > 0 {
		f.table(b, places)
	}
	for _, w := range slices.Concat(b.Rows, b.Words) {
		f.write(small, w)
	}
	keepWords(&d)
	return d
}

// scales are what sketches are drawn at, one to so many.
var scales = []float64{2, 2.5, 4, 5, 8, 10, 15, 20, 25, 30, 40, 50, 100, 200}

// scaleFor is the largest usual scale at which a size fits a sketch.
func scaleFor(w, h float64) float64 {
	for _, n := range scales {
		if w/n <= sketchWide && h/n <= sketchHigh {
			return n
		}
	}
	return math.Ceil(math.Max(w/sketchWide, h/sketchHigh))
}

func ratio(n float64) string { return fmt.Sprintf("1 : %g", n) }

// size gives a piece its whole measures in words.
func (b Board) size(units measure.System) string {
	box := b.Outline.Bounds()
	out := fmt.Sprintf("make %d: %s long, %s wide, %s thick", b.Count, units.Fine(math.Max(box.W(), box.H())), units.Fine(math.Min(box.W(), box.H())), units.Fine(b.Thick))
	if b.Corner > 0 {
		out += fmt.Sprintf(", corners rounded to %s", units.Fine(b.Corner))
	}
	return out
}

// group is a place with those that lie like it on the other sides of the middle lines.
type group struct {
	Place
	count int
	sides [4]bool // to the left, to the right, down, up
}

// groups joins places that mirror one another; what lies in the middle comes first.
func (b Board) groups() []group {
	all := slices.Clone(b.Places)
	if b.Zero != "" {
		for _, q := range corners(b.Outline) {
			all = append(all, Place{What: "corner", At: q, Corner: true})
		}
	}
	var out []group
	for _, p := range all {
		i := slices.IndexFunc(out, func(g group) bool {
			return g.What == p.What && g.Dia == p.Dia && math.Abs(math.Abs(g.At.X)-math.Abs(p.At.X)) < same && (math.Abs(g.At.Y-p.At.Y) < same || b.Zero == "" && math.Abs(g.At.Y+p.At.Y) < same)
		})
		if i < 0 {
			i, out = len(out), append(out, group{Place: p})
		}
		if out[i].count++; p.At.X > out[i].At.X || p.At.X == out[i].At.X && p.At.Y > out[i].At.Y {
			out[i].At = p.At // the letter stands at the right
		}
		for k, v := range []float64{-p.At.X, p.At.X, -p.At.Y, p.At.Y} {
			out[i].sides[k] = out[i].sides[k] || v > same
		}
	}
	slices.SortStableFunc(out, func(g, h group) int { return cmp.Compare(g.At.X, h.At.X) })
	return out
}

// corners are where the sides of a straight-sided outline meet.
func corners(p curve.Path) []geometry.Point {
	var out []geometry.Point
	for _, s := range p {
		out = append(out, s.At(0))
	}
	return out
}

// same is how near two places lie that are told as one, mm: half of what is lettered.
const same = 0.05

// letter names a place of a sketch.
func letter(i int) string { return string(rune('a' + i)) }

// says is what a place is, how often, and how large.
func (g group) says(units measure.System) string {
	switch {
	case g.Corner:
		return fmt.Sprintf("%d x corner of the outline", g.count)
	case g.Slot != (geometry.Point{}):
		return fmt.Sprintf("%d x middle of a hole of %s by %s: %s", g.count, units.Fine(g.Slot.X), units.Fine(g.Slot.Y), g.What)
	case g.Dia > 0:
		return fmt.Sprintf("%d x hole of %s: %s", g.count, units.Fine(g.Dia), g.What)
	}
	return fmt.Sprintf("%d x line: %s", g.count, g.What)
}

// along is how far a place lies from the middle of the length.
func (g group) along(units measure.System) string {
	return off(g.At.X, g.sides[0], g.sides[1], "left", "right", units)
}

// off says how far something lies from a middle line, and to which sides.
func off(far float64, low, high bool, lower, upper string, units measure.System) string {
	words := units.Fine(math.Abs(far))
	switch {
	case low && high:
		return words + " both ways"
	case low:
		return words + " " + lower
	case high:
		return words + " " + upper
	}
	return "middle"
}

// aside is how far a place lies from the middle of the width, or from the board's zero.
func (g group) aside(b Board, units measure.System) string {
	switch {
	case g.Ends != [2]float64{}:
		return fmt.Sprintf("%s at lower edge, %s at upper", units.Fine(math.Abs(g.Ends[0])), units.Fine(math.Abs(g.Ends[1])))
	case g.Dia == 0 && !g.Corner && g.Slot == (geometry.Point{}):
		return "across"
	case b.Zero != "" && !g.sides[2] && !g.sides[3]:
		return "at it"
	case b.Zero != "":
		return off(g.At.Y, g.sides[2], g.sides[3], "below", "above", units)
	}
	return off(g.At.Y, g.sides[2], g.sides[3], "down", "up", units)
}

// sketcher writes a sketch from its top down.
type sketcher struct {
	d     *layout.Drawing
	units measure.System
	k     float64 // of the sketch
	mid   geometry.Point
	y     float64 // of the last line
}

func (f *sketcher) write(high float64, words string) {
	for _, l := range lettering.Wrap(words, high, sketchWide) {
		f.y -= row
		f.d.Write(0, f.y, high, layout.Left, l)
	}
}

// outline draws the board small, with the letters of its places over it.
func (f *sketcher) outline(b Board, box geometry.Box, places []group) {
	const over = 6.0 // of the letters over the board
	f.y -= over + 3
	top := f.y
	center := geometry.Pt(sketchWide/2, top-box.H()*f.k/2)
	m := geometry.Shift(-f.mid.X, -f.mid.Y).Then(geometry.Stretch(f.k, f.k)).Then(geometry.Shift(center.X, center.Y))
	f.d.Line(layout.Mark, b.Outline.Map(m))
	for _, h := range b.Holes {
		f.d.Line(layout.Mark, h.Map(m))
	}
	for _, s := range b.Marks {
		f.d.Line(layout.Guide, s.Path.Map(m))
	}
	var at []geometry.Point
	for _, g := range places {
		at = append(at, m.Apply(g.At))
	}
	for i, x := range apart(at) {
		f.d.Straight(layout.Tick, at[i].X, at[i].Y, at[i].X, top+0.5)
		f.d.Straight(layout.Tick, at[i].X, top+0.5, x, top+over-0.6)
		f.d.Write(x, top+over, small, layout.Middle, letter(i))
	}
	f.y = top - box.H()*f.k - 1
}

// apart moves the letters of places that rise in x off one another, sideways and no
// further than must be.
func apart(at []geometry.Point) []float64 {
	const gap = 3.6
	out := make([]float64, len(at))
	for i, p := range at {
		out[i] = p.X
	}
	for range 20 * len(at) {
		for i := 1; i < len(out); i++ {
			if short := gap - (out[i] - out[i-1]); short > 0 {
				out[i-1], out[i] = out[i-1]-short/2, out[i]+short/2
			}
		}
	}
	return out
}

func (f *sketcher) table(b Board, places []group) {
	along, aside := "from the middle", "from the long middle line"
	if box := b.Outline.Bounds(); box.H() > box.W() { // it stands
		along, aside = aside, along
	}
	if b.Zero != "" {
		along, aside = "from the middle", "from "+b.Zero
	}
	if b.Zero == "" && !slices.ContainsFunc(places, func(g group) bool { return g.Dia > 0 || g.Slot.X > 0 }) {
		columns := []float64{whatFrom, alongEnds - 10, sketchWide} // lines only
		f.cells(columns, "", "", along)
		for i, g := range places {
			f.cells(columns, letter(i), g.says(f.units), g.along(f.units))
		}
		return
	}
	columns := []float64{whatFrom, whatFrom + whatWide, alongEnds, sketchWide}
	f.cells(columns, "", "", along, aside)
	for i, g := range places {
		f.cells(columns, letter(i), g.says(f.units), g.along(f.units), g.aside(b, f.units))
	}
}

// cells write a row of a table whose columns end at given places: the key and words run
// from the left, distances stand at the right. What is too long runs over several lines.
func (f *sketcher) cells(ends []float64, all ...string) {
	from, lines := 0.0, 1
	wrapped := make([][]string, len(all))
	for k, words := range all {
		wrapped[k] = lettering.Wrap(words, small, ends[k]-from-1)
		from, lines = ends[k], max(lines, len(wrapped[k]))
	}
	for i := range lines {
		f.y -= row
		from = 0
		for k, c := range wrapped {
			if i < len(c) {
				x, align := ends[k], layout.Right
				if k == 0 || k == 1 && len(all) < 5 {
					x, align = from, layout.Left
				}
				f.d.Write(x, f.y, small, align, c[i])
			}
			from = ends[k]
		}
	}
}
