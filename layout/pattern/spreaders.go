package pattern

import (
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/curve"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/spreader"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// The rows of a spreader's words over the stock's lower edge, mm: so near to each other that
// they go under the bolts of a cross piece, the upper one without tails.
const (
	spreaderRow = 3.1
	spreaderTop = lowerRow + spreaderRow + small
	underHole   = 0.4 // air between words and the hole of a bolt
)

// drawSpreaders marks where the gunwales are held while they are bent: a notch in the
// lower edge, with a line along to the words, which keep clear of slots, of the edges of
// cross pieces and, where they reach so high, of bolts.
func drawSpreaders(d *layout.Drawing, b *bend.Report, half float64, units measure.System) {
	taken := onStock(d, b, -half+spreaderTop)
	for _, s := range b.Spread.Spreaders {
		if d.Turns && s.At < 0 {
			continue // the half is turned, and the other end is its mirror
		}
		words, wide := spreaderWords(s, units), 0.0
		for _, w := range words {
			wide = math.Max(wide, lettering.Width(w, small))
		}
		from, y := freePlace(taken, s.Along+3, wide), -half+lowerRow
		d.Line(layout.Mark, curve.Polyline(geometry.Pt(s.Along-2, -half), geometry.Pt(s.Along, -half+3), geometry.Pt(s.Along+2, -half)))
		if from > s.Along+4 {
			d.Straight(layout.Tick, s.Along+2, y+small/2, from-1, y+small/2)
		}
		for i, w := range words {
			d.Write(from, y+spreaderRow*float64(len(words)-1-i), small, layout.Left, w)
		}
		lies := layout.Span{From: s.Along - 3, To: from + wide}
		d.Keep, taken = append(d.Keep, lies), append(taken, lies)
	}
}

// spreaderWords says between what a spreader holds how far, and then where it stands along the
// strip, which way it holds and how hard.
func spreaderWords(s spreader.Spreader, units measure.System) []string {
	at := "at midship "
	if s.Along != 0 {
		at = "at " + units.Tape(s.Along) + " "
	}
	return []string{
		lettering.Safe("middle to middle " + units.Tape(s.Beam) + within(marks.Held, units)),
		lettering.Safe(at + "hold " + holding(s, units)),
	}
}

// onStock lists what stands on the strip between its edges already, up to a height over its
// middle line.
func onStock(d *layout.Drawing, b *bend.Report, high float64) []layout.Span {
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
		for _, h := range t.Holes {
			if box := h.Bounds(); box.Min.X > 0 && high > box.W()/-2-underHole {
				out = append(out, layout.Span{From: g.OnStock(at) + box.Min.Y, To: g.OnStock(at) + box.Max.Y})
			}
		}
	}
	for _, s := range b.Frame.Seats {
		if s.Hung == nil {
			continue
		}
		for _, r := range []seat.Rail{s.Hung.Front, s.Hung.After} {
			from, to, _ := boltsOn(d, r)
			out = append(out, layout.Span{From: from, To: to})
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
