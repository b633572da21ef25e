package sight

import (
	"cmp"
	"slices"

	"ribwright/geometry"
)

// span is a stretch of a line, shares of it.
type span struct{ from, to float64 }

// joint is how near two spans are one: faces that share an edge leave no gap. Shares.
const joint = 1e-9

// whole reports whether a span is all of a line.
func (s span) whole() bool { return s.from <= joint && s.to >= 1-joint }

// skin is how deep behind a face a line must lie to be hidden by it, mm of the boat: far
// above rounding, so that the edges of a face are not hidden by it.
const skin = 0.01

// showing returns what of a straight line shows, until it is asked of the next one: nothing,
// as soon as one face hides all of it.
func (s *Screen) showing(a, b spot) []span {
	s.asked++
	s.hidden, s.joined = s.hidden[:0], span{}
	reach, far := geometry.Around(a.Point, b.Point), max(a.deep, b.deep)
	q := &s.squares
	if !reach.Overlaps(q.window) {
		return s.rest()
	}
	if len(s.patches) > 0 && s.behind(s.whole, a, b, reach, far) {
		return nil
	}
	left, right, low, top := q.reach(reach)
	for row := low; row <= top; row++ {
		for at := row*q.cols + left; at <= row*q.cols+right; at++ {
			for _, n := range q.list[q.starts[at]:q.starts[at+1]] {
				if s.behind(n, a, b, reach, far) {
					s.whole = n
					return nil
				}
			}
		}
	}
	return s.rest()
}

// behind adds what a patch hides of a line that has not been asked yet and reports whether
// all of the line is hidden, by it alone or with others that hang together. The line lies in
// the box reach and is nowhere deeper than far.
func (s *Screen) behind(n int32, a, b spot, reach geometry.Box, far float64) bool {
	p := &s.patches[n]
	if p.asked == s.asked || p.near >= far || !p.box.Overlaps(reach) {
		return false
	}
	p.asked = s.asked
	before := len(s.hidden)
	for i := p.first; i < p.past; i++ {
		s.hides(&s.faces[i], a, b)
	}
	for _, h := range s.hidden[before:] {
		s.joined = s.joined.with(h)
	}
	return s.joined.whole()
}

// with is a span and another that it meets; one that is nothing yet meets all.
func (s span) with(o span) span {
	switch {
	case s == span{}:
		return o
	case o.from > s.to+joint || o.to < s.from-joint:
		return s
	}
	return span{min(s.from, o.from), max(s.to, o.to)}
}

// rest is what the spans that are hidden leave of a whole line.
func (s *Screen) rest() []span {
	slices.SortFunc(s.hidden, func(a, b span) int { return cmp.Compare(a.from, b.from) })
	s.shown = s.shown[:0]
	at := 0.0
	for _, t := range s.hidden {
		if t.from > at+joint {
			s.shown = append(s.shown, span{at, t.from})
		}
		at = max(at, t.to)
	}
	if at < 1-joint {
		s.shown = append(s.shown, span{at, 1})
	}
	return s.shown
}

// hides adds the stretches of a line that lie behind a face.
func (s *Screen) hides(f *face, a, b spot) {
	way := b.Point.Sub(a.Point)
	behind := func(p spot) float64 { return p.deep - f.base - f.slope.Dot(p.Point) - skin }
	ga, gb := behind(a), behind(b)
	if ga <= 0 && gb <= 0 {
		return
	}
	lo, hi := 0.0, 1.0
	if ga <= 0 {
		lo = ga / (ga - gb)
	} else if gb <= 0 {
		hi = ga / (ga - gb)
	}
	var room [8]float64 // a face has seldom more corners
	at := crossed(room[:0], s.spots[f.first:f.past], a.Point, way)
	for i := 1; i < len(at); i += 2 {
		if from, till := max(lo, at[i-1]), min(hi, at[i]); from < till {
			s.hidden = append(s.hidden, span{from, till})
		}
	}
}

// crossed adds where the line through a crosses an outline, in order: it lies inside from
// the first to the second, from the third to the fourth and so on.
func crossed(at []float64, outline []spot, a, way geometry.Point) []float64 {
	before := outline[len(outline)-1].Point
	was := way.Cross(before.Sub(a))
	for _, p := range outline {
		is := way.Cross(p.Sub(a))
		if (was > 0) != (is > 0) {
			q := before.Lerp(p.Point, was/(was-is))
			at = append(at, q.Sub(a).Dot(way)/way.Dot(way))
		}
		before, was = p.Point, is
	}
	if len(at) > 2 {
		slices.Sort(at)
	} else if len(at) == 2 && at[0] > at[1] {
		at[0], at[1] = at[1], at[0]
	}
	return at
}
