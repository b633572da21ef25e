package pattern

import (
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/spreader"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// drawSpreaders marks where the gunwales are held while they are bent: a notch in the
// lower edge, with a line along to the words, which keep clear of slots and of the edges
// of cross pieces.
func drawSpreaders(d *layout.Drawing, b *bend.Report, half float64, units measure.System) {
	taken := onStock(d, b)
	for _, s := range b.Spread.Spreaders {
		if d.Turns && s.At < 0 {
			continue // the half is turned, and the other end is its mirror
		}
		words, from := spreaderWords(taken, s, units)
		wide := lettering.Width(words, small)
		y := -half + 0.9
		d.Line(layout.Mark, curve.Polyline(geometry.Pt(s.Along-2, -half), geometry.Pt(s.Along, -half+3), geometry.Pt(s.Along+2, -half)))
		if from > s.Along+4 {
			d.Straight(layout.Tick, s.Along+2, y+small/2, from-1, y+small/2)
		}
		d.Write(from, y, small, layout.Left, words)
		lies := layout.Span{From: s.Along - 3, To: from + wide}
		d.Keep, taken = append(d.Keep, lies), append(taken, lies)
	}
}

// spreaderWords says how a spreader holds, with its beam where there is room beside it,
// and where the words can stand.
func spreaderWords(taken []layout.Span, s spreader.Spreader, units measure.System) (string, float64) {
	const beside = 40.0 // mm
	how := lettering.Safe("hold " + holding(s, units))
	full := lettering.Safe(units.Fine(s.Beam)+within(marks.Held, units)) + ", " + how
	if at := freePlace(taken, s.Along+3, lettering.Width(full, small)); at < s.Along+beside {
		return full, at
	}
	return how, freePlace(taken, s.Along+3, lettering.Width(how, small))
}

// onStock lists what stands on the strip between its edges already.
func onStock(d *layout.Drawing, b *bend.Report) []layout.Span {
	var out []layout.Span
	g := &b.Frame.Gunwale
	for _, m := range g.Mortises {
		lo, hi := m.Ends()
		out = append(out, layout.Span{From: lo, To: hi})
	}
	for i, t := range b.Frame.Thwarts {
		at, wide := t.At, float64(b.Frame.Design.Thwarts[i].Width)/2
		if d.Turns {
			at, _ = folded(at)
		}
		for _, x := range []float64{at - wide, at + wide} {
			out = append(out, layout.Span{From: g.OnStock(x), To: g.OnStock(x)})
		}
	}
	for _, s := range b.Spread.Spreaders {
		out = append(out, layout.Span{From: s.Along - 2, To: s.Along})
	}
	return append(out, layout.Span{From: g.Fore - g.Width, To: math.Inf(1)})
}

// freePlace returns where words of a width can stand, from a place on; that place itself
// when nothing is free within a hand's breadth.
func freePlace(taken []layout.Span, from, wide float64) float64 {
	const gap, reach, step = 1.5, 150.0, 0.5
	for at := from; at < from+reach; at += step {
		if !slices.ContainsFunc(taken, func(s layout.Span) bool { return at-gap < s.To && at+wide+gap > s.From }) {
			return at
		}
	}
	return from
}
