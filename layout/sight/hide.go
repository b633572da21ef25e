package sight

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/solid"
)

// Screen is what an eye sees of a boat's faces: it tells which parts of a line show.
//
// How: in the picture, with its depth, lines are straight and faces flat, so what one
// face hides of a straight line is the stretch inside its outline, cut where the line
// comes out in front of it. Nothing is sampled.
type Screen struct {
	view    View
	window  geometry.Box // of the picture, mm
	bounded bool         // lines end at the window
	faces   []face
	cols    int
	cells   [][]int32 // faces by the square of the window that they reach, row by row from below
	asked   int       // how many lines have been asked for
	whole   int32     // a face that hid the whole of a line before: likely of the next one too
	hidden  []span    // room for what is hidden of a line
	joined  span      // as much of that as hangs together
}

// face is a face in the picture; its depth is base + slope . place.
type face struct {
	pts   []spot
	box   geometry.Box
	near  float64 // the least depth of its corners
	slope geometry.Point
	base  float64
	asked int // the last line that has been asked for here
}

// skin is how deep behind a face a line must lie to be hidden by it, mm of the boat: far
// above rounding, so that the edges of a face are not hidden by it.
const skin = 0.01

// thin is the least height of a face in the picture that can hide anything, mm of paper.
const thin = 1e-4

// square is the least side of the picture's squares, mm, and squares is how many there
// are at the most to either side.
const (
	square  = 2.0
	squares = 100
)

// NewScreen readies the faces of a boat for a window of the picture, an empty one for
// all. Faces behind the eye hide nothing.
func NewScreen(v View, faces []solid.Face, window geometry.Box) *Screen {
	s := &Screen{view: v, window: window, bounded: !window.Empty()}
	all := geometry.EmptyBox()
	s.faces = make([]face, 0, len(faces))
	corners := 0
	for _, f := range faces {
		corners += len(f)
	}
	spots := make([]spot, 0, corners)
	for _, f := range faces {
		first := len(spots)
		for _, p := range v.cut(f) {
			spots = append(spots, v.place(p))
		}
		pts := spots[first:len(spots):len(spots)]
		if f, ok := newFace(pts); ok && (!s.bounded || f.box.Overlaps(window)) {
			all = all.Union(f.box)
			s.faces = append(s.faces, f)
		}
	}
	if window.Empty() {
		s.window = all
	}
	if s.window.Empty() {
		return s
	}
	size := s.size()
	s.cols = int(s.window.W()/size) + 1
	s.cells = make([][]int32, s.cols*(int(s.window.H()/size)+1))
	s.sort()
	return s
}

// sort puts the faces into the squares, the last ones first: those of the cloth, which hide the
// most. They are counted before, so that all squares share one list.
func (s *Screen) sort() {
	counts, all := make([]int, len(s.cells)), 0
	for i := range s.faces {
		s.each(s.faces[i].box, func(cell int) bool { counts[cell]++; all++; return true })
	}
	list := make([]int32, all)
	for cell, n := range counts {
		s.cells[cell], list = list[:0:n], list[n:]
	}
	for i := len(s.faces) - 1; i >= 0; i-- {
		s.each(s.faces[i].box, func(cell int) bool { s.cells[cell] = append(s.cells[cell], int32(i)); return true })
	}
}

// size is the side of a square, mm.
func (s *Screen) size() float64 {
	return math.Max(square, math.Max(s.window.W(), s.window.H())/squares)
}

// each calls f for every square of the window that a box reaches, until it returns false.
func (s *Screen) each(b geometry.Box, f func(cell int) bool) {
	if len(s.cells) == 0 || !b.Overlaps(s.window) {
		return
	}
	size := s.size()
	at := func(v, from float64, n int) int { return min(max(int((v-from)/size), 0), n-1) }
	rows := len(s.cells) / s.cols
	left, right := at(b.Min.X, s.window.Min.X, s.cols), at(b.Max.X, s.window.Min.X, s.cols)
	top := at(b.Max.Y, s.window.Min.Y, rows)
	for j := at(b.Min.Y, s.window.Min.Y, rows); j <= top; j++ {
		for i := left; i <= right; i++ {
			if !f(j*s.cols + i) {
				return
			}
		}
	}
}

// newFace finds the plane of a face; none for one that is seen on its edge.
func newFace(pts []spot) (face, bool) {
	if len(pts) < 3 {
		return face{}, false
	}
	// Newell: the sum over the edges is square to the face, however its corners lie.
	var n geometry.Point3
	var mid geometry.Point
	deep := 0.0
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		n.X += (p.Y - q.Y) * (p.deep + q.deep)
		n.Y += (p.deep - q.deep) * (p.X + q.X)
		n.Z += (p.X - q.X) * (p.Y + q.Y)
		mid, deep = mid.Add(p.Point), deep+p.deep
	}
	f := face{pts: pts, box: geometry.EmptyBox(), near: math.Inf(1)}
	for _, p := range pts {
		f.box.Min = geometry.Pt(math.Min(f.box.Min.X, p.X), math.Min(f.box.Min.Y, p.Y))
		f.box.Max = geometry.Pt(math.Max(f.box.Max.X, p.X), math.Max(f.box.Max.Y, p.Y))
		f.near = math.Min(f.near, p.deep)
	}
	if math.Abs(n.Z) <= thin*math.Max(f.box.W(), f.box.H()) {
		return face{}, false
	}
	k := 1 / float64(len(pts))
	f.slope = geometry.Pt(-n.X/n.Z, -n.Y/n.Z)
	f.base = deep*k - f.slope.Dot(mid.Scale(k))
	return f, true
}

// span is a stretch of a line, shares of it.
type span struct{ from, to float64 }

// joint is how near two spans are one: faces that share an edge leave no gap. Shares.
const joint = 1e-9

// whole reports whether a span is all of a line.
func (s span) whole() bool { return s.from <= joint && s.to >= 1-joint }

// showing returns what of a straight line shows: nothing, as soon as one face hides all
// of it.
func (s *Screen) showing(a, b spot) []span {
	s.asked++
	s.hidden, s.joined = s.hidden[:0], span{}
	reach, far := geometry.Around(a.Point, b.Point), max(a.deep, b.deep)
	if len(s.faces) > 0 && s.behind(s.whole, a, b, reach, far) {
		return nil
	}
	shows := true
	s.each(reach, func(cell int) bool {
		for _, n := range s.cells[cell] {
			if s.faces[n].asked != s.asked && s.behind(n, a, b, reach, far) {
				s.whole, shows = n, false
				return false
			}
		}
		return true
	})
	if !shows {
		return nil
	}
	return rest(s.hidden)
}

// behind adds what a face hides of a line and reports whether all of the line is hidden, by
// it alone or with others that hang together. The line lies in the box reach and is nowhere
// deeper than far.
func (s *Screen) behind(n int32, a, b spot, reach geometry.Box, far float64) bool {
	f := &s.faces[n]
	f.asked = s.asked
	if f.near >= far || !f.box.Overlaps(reach) {
		return false
	}
	before := len(s.hidden)
	s.hidden = f.hides(s.hidden, a, b)
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

// rest is what spans leave of a whole line.
func rest(taken []span) []span {
	slices.SortFunc(taken, func(a, b span) int { return cmp.Compare(a.from, b.from) })
	var out []span
	at := 0.0
	for _, t := range taken {
		if t.from > at+joint {
			out = append(out, span{at, t.from})
		}
		at = max(at, t.to)
	}
	if at < 1-joint {
		out = append(out, span{at, 1})
	}
	return out
}

// hides adds the stretches of a line that lie behind a face.
func (f *face) hides(to []span, a, b spot) []span {
	way := b.Point.Sub(a.Point)
	behind := func(p spot) float64 { return p.deep - f.base - f.slope.Dot(p.Point) - skin }
	ga, gb := behind(a), behind(b)
	if ga <= 0 && gb <= 0 {
		return to
	}
	lo, hi := 0.0, 1.0
	if ga <= 0 {
		lo = ga / (ga - gb)
	} else if gb <= 0 {
		hi = ga / (ga - gb)
	}
	var room [8]float64 // a face has seldom more corners
	at := f.crossed(room[:0], a.Point, way)
	for i := 1; i < len(at); i += 2 {
		if from, till := max(lo, at[i-1]), min(hi, at[i]); from < till {
			to = append(to, span{from, till})
		}
	}
	return to
}

// crossed adds where the line through a crosses the face's outline, in order: it lies
// inside from the first to the second, from the third to the fourth and so on.
func (f *face) crossed(at []float64, a, way geometry.Point) []float64 {
	before := f.pts[len(f.pts)-1].Point
	was := way.Cross(before.Sub(a))
	for _, p := range f.pts {
		is := way.Cross(p.Sub(a))
		if (was > 0) != (is > 0) {
			q := before.Lerp(p.Point, was/(was-is))
			at = append(at, q.Sub(a).Dot(way)/way.Dot(way))
		}
		before, was = p.Point, is
	}
	slices.Sort(at)
	return at
}
