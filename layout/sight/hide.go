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

// asked is a straight line that a screen is asked of, and what of it is hidden so far.
type asked struct {
	a, b   spot
	way    geometry.Point // from a to b
	box    geometry.Box   // in which it lies
	far    float64        // its greatest depth
	hidden []span
	joined span      // as much of that as hangs together
	at     []float64 // room for where it crosses an outline
}

// showing returns what of a straight line shows, until it is asked of the next one: nothing,
// as soon as one face hides all of it.
func (s *Screen) showing(a, b spot) []span {
	s.number++
	l := &s.line
	l.a, l.b, l.way, l.box, l.far = a, b, b.Point.Sub(a.Point), geometry.Around(a.Point, b.Point), a.deep
	if b.deep > a.deep {
		l.far = b.deep
	}
	l.hidden, l.joined = l.hidden[:0], span{}
	q := &s.squares
	if !l.box.Overlaps(q.window) {
		return s.rest()
	}
	if len(s.patches) > 0 && s.patches[s.whole].reaches(l) && s.behind(&s.patches[s.whole]) {
		return nil
	}
	left, right, low, top := q.reach(l.box)
	for row := low; row <= top; row++ {
		for at := row*q.cols + left; at <= row*q.cols+right; at++ {
			for _, n := range q.list[q.starts[at]:q.starts[at+1]] {
				if p := &s.patches[n]; p.asked != s.number && p.reaches(l) && s.behind(p) {
					s.whole = n
					return nil
				}
			}
		}
	}
	return s.rest()
}

// reaches tells whether a patch can hide anything of a line.
func (p *patch) reaches(l *asked) bool { return p.near < l.far && p.box.Overlaps(l.box) }

// behind adds what a patch hides of the line and reports whether all of the line is hidden, by
// it alone or with others that hang together.
func (s *Screen) behind(p *patch) bool {
	l := &s.line
	p.asked = s.number
	before := len(l.hidden)
	for i := p.first; i < p.past; i++ {
		l.behind(&s.faces[i], s.spots)
	}
	for _, h := range l.hidden[before:] {
		l.joined = l.joined.with(h)
	}
	return l.joined.whole()
}

// with is a span and another that it meets; one that is nothing yet meets all.
func (s span) with(o span) span {
	switch {
	case s == span{}:
		return o
	case o.from > s.to+joint || o.to < s.from-joint:
		return s
	}
	if o.from > s.from {
		o.from = s.from
	}
	if o.to < s.to {
		o.to = s.to
	}
	return o
}

// rest is what the spans that are hidden leave of the whole line.
func (s *Screen) rest() []span {
	hidden := s.line.hidden
	if len(hidden) > 1 {
		slices.SortStableFunc(hidden, func(a, b span) int { return cmp.Compare(a.from, b.from) })
	}
	s.shown = s.shown[:0]
	at := 0.0
	for _, t := range hidden {
		if t.from > at+joint {
			s.shown = append(s.shown, span{at, t.from})
		}
		if t.to > at {
			at = t.to
		}
	}
	if at < 1-joint {
		s.shown = append(s.shown, span{at, 1})
	}
	return s.shown
}

// behind adds the stretches of the line that lie behind a face, whose corners are among spots.
func (l *asked) behind(f *face, spots []spot) {
	deeper := func(p *spot) float64 { return p.deep - f.base - f.slope.Dot(p.Point) - skin }
	ga, gb := deeper(&l.a), deeper(&l.b)
	if ga <= 0 && gb <= 0 {
		return
	}
	from, to := 0.0, 1.0
	if ga <= 0 {
		from = ga / (ga - gb)
	} else if gb <= 0 {
		to = ga / (ga - gb)
	}
	l.cross(spots[f.first:f.past])
	for i := 1; i < len(l.at); i += 2 {
		in := span{l.at[i-1], l.at[i]}
		if in.from < from {
			in.from = from
		}
		if in.to > to {
			in.to = to
		}
		if in.from < in.to {
			l.hidden = append(l.hidden, in)
		}
	}
}

// cross finds where the line, drawn on, crosses an outline, in order: it lies inside from the
// first to the second, from the third to the fourth and so on.
func (l *asked) cross(outline []spot) {
	l.at = l.at[:0]
	before := &outline[len(outline)-1]
	was := l.way.Cross(before.Sub(l.a.Point))
	for i := range outline {
		p := &outline[i]
		is := l.way.Cross(p.Sub(l.a.Point))
		if (was > 0) != (is > 0) {
			q := before.Lerp(p.Point, was/(was-is))
			l.at = append(l.at, q.Sub(l.a.Point).Dot(l.way)/l.way.Dot(l.way))
		}
		before, was = p, is
	}
	if len(l.at) > 2 {
		slices.Sort(l.at)
	} else if len(l.at) == 2 && l.at[0] > l.at[1] {
		l.at[0], l.at[1] = l.at[1], l.at[0]
	}
}
