package tile

import (
	"fmt"
	"iter"
	"math"

	"ribwright/geometry"
	"ribwright/layout"
	"ribwright/layout/label"
)

// grid is how a pattern was divided.
type grid struct {
	x, y  []float64        // joints; y from the bottom up
	cells [][]geometry.Box // [row from the top][column]; empty where nothing is printed
	ink   ink              // where the pattern has lines or letters
}

func (g *grid) cols() int { return len(g.x) - 1 }
func (g *grid) rows() int { return len(g.y) - 1 }

func (g *grid) whole() bool { return g.cols() == 1 && g.rows() == 1 }

func (g *grid) has(col, row int) bool {
	return row >= 0 && row < g.rows() && col >= 0 && col < g.cols() && !g.cells[row][col].Empty()
}

// tileName names a tile: "" for a whole pattern, "3" for the third piece of a
// strip, "B2" for the second tile of the second row from the top.
func (g *grid) tileName(col, row int) string {
	switch {
	case g.whole():
		return ""
	case g.rows() == 1:
		return fmt.Sprint(col + 1)
	}
	return rowName(row) + fmt.Sprint(col+1)
}

// rowName counts A to Z, then AA, AB and so on.
func rowName(row int) string {
	if row < 26 {
		return string(rune('A' + row))
	}
	return rowName(row/26-1) + string(rune('A'+row%26))
}

// full returns a tile's whole cell, from joint to joint.
func (g *grid) full(col, row int) geometry.Box {
	r := g.rows() - 1 - row
	return geometry.Box{
		Min: geometry.Point{X: g.x[col], Y: g.y[r]},
		Max: geometry.Point{X: g.x[col+1], Y: g.y[r+1]},
	}
}

// settle finds the tiles with ink and draws their outer edges in to it, unless
// that leaves too little of a joint to tape.
func (g *grid) settle() {
	for row := range g.rows() {
		g.cells = append(g.cells, make([]geometry.Box, g.cols()))
		for col := range g.cols() {
			g.cells[row][col] = geometry.EmptyBox()
			if c := g.full(col, row); g.ink.touches(c) {
				g.cells[row][col] = c
			}
		}
	}
	drawn := make([][]geometry.Box, g.rows())
	for row := range g.rows() {
		for col := range g.cols() {
			drawn[row] = append(drawn[row], g.drawnIn(col, row))
		}
	}
	for row := range g.rows() {
		for col := range g.cols() {
			g.keepJoints(drawn, col, row)
		}
	}
	g.cells = drawn
}

// drawnIn returns the cell of a tile, narrowed to its ink on the sides where no
// other tile follows.
func (g *grid) drawnIn(col, row int) geometry.Box {
	c := g.cells[row][col]
	if c.Empty() || g.has(col-1, row) && g.has(col+1, row) && g.has(col, row-1) && g.has(col, row+1) {
		return c
	}
	k := g.ink.within(c).Grow(air)
	if !g.has(col-1, row) {
		c.Min.X = math.Max(c.Min.X, k.Min.X)
	}
	if !g.has(col+1, row) {
		c.Max.X = math.Min(c.Max.X, k.Max.X)
	}
	if !g.has(col, row-1) {
		c.Max.Y = math.Min(c.Max.Y, k.Max.Y)
	}
	if !g.has(col, row+1) {
		c.Min.Y = math.Max(c.Min.Y, k.Min.Y)
	}
	return c
}

// shortJoint is the least length of joint that both its tiles must share, mm:
// two crosses and something between them. A strip is joined over its whole height, and
// needs no more than stripJoint.
const (
	shortJoint = 45.0
	stripJoint = 25.0
)

// keepJoints gives two tiles their full cells back along the joint between them
// when narrowing left too little of it.
func (g *grid) keepJoints(drawn [][]geometry.Box, col, row int) {
	a, c := &drawn[row][col], g.full(col, row)
	if g.has(col, row) && g.has(col+1, row) {
		b, least := &drawn[row][col+1], shortJoint
		if g.rows() == 1 {
			least = stripJoint
		}
		if math.Min(a.Max.Y, b.Max.Y)-math.Max(a.Min.Y, b.Min.Y) < least {
			a.Min.Y, a.Max.Y, b.Min.Y, b.Max.Y = c.Min.Y, c.Max.Y, c.Min.Y, c.Max.Y
		}
	}
	if g.has(col, row) && g.has(col, row+1) {
		b := &drawn[row+1][col]
		if math.Min(a.Max.X, b.Max.X)-math.Max(a.Min.X, b.Min.X) < shortJoint {
			a.Min.X, a.Max.X, b.Min.X, b.Max.X = c.Min.X, c.Max.X, c.Min.X, c.Max.X
		}
	}
}

// frame adds the laps, only where there is a joint.
func (g *grid) frame(col, row int) geometry.Box {
	f := g.cells[row][col]
	if g.has(col-1, row) {
		f.Min.X -= lap
	}
	if g.has(col+1, row) {
		f.Max.X += lap
	}
	if g.has(col, row-1) {
		f.Max.Y += lap
	}
	if g.has(col, row+1) {
		f.Min.Y -= lap
	}
	return f
}

type ink struct {
	box    geometry.Box // round all of it
	lines  []inkLine    // one a stroke
	texts  []inkText
	narrow []geometry.Box                          // round outlines whose insides are no place for a name
	known  *remembered[geometry.Box, label.Ground] // by box: the lines in it
	codes  *remembered[coded, []layout.Text]       // by joint: its code; nil where it is free nowhere
}

type inkLine struct {
	points []geometry.Point
	box    geometry.Box
	runs   []geometry.Box // round each run of straight parts, as they follow one another
}

// inkRun is how many straight parts are passed over at a time where none is near.
const inkRun = 32

type inkText struct {
	at  geometry.Point
	box geometry.Box
}

// inkTol is the chord error of the lines used to find empty tiles, mm; far less
// than what a tile's edge may cut off unseen.
const inkTol = 0.05

func inkOf(d *layout.Drawing) ink {
	k := ink{box: geometry.EmptyBox(), known: &remembered[geometry.Box, label.Ground]{}, codes: &remembered[coded, []layout.Text]{}}
	for _, s := range d.Strokes {
		pts := s.Path.Flatten(inkTol)
		l := inkLine{points: pts, box: geometry.Around(pts...)}
		for from := 0; from+1 < len(pts); from += inkRun {
			l.runs = append(l.runs, geometry.Around(pts[from:min(from+inkRun+1, len(pts))]...))
		}
		k.lines = append(k.lines, l)
		box := s.Path.Bounds()
		if min(box.W(), box.H()) < 2*lap && s.Path.Closed() {
			k.narrow = append(k.narrow, box)
		}
		k.box = k.box.Union(box)
	}
	for _, t := range d.Texts {
		box := t.Bounds()
		k.texts, k.box = append(k.texts, inkText{t.At, box}), k.box.Union(box)
	}
	return k
}

// ground is the lines that lie in a box, for lettering to keep off.
func (k ink) ground(b geometry.Box) label.Ground {
	return k.known.of(b, func() (out label.Ground) {
		for p, q := range k.stretches(b, nil) {
			out.Straight(p, q)
		}
		return out.Shared()
	})
}

// stretches yields the ends of the straight parts of lines that lie in a box, but for those of
// runs in a box that is passed over; nil passes over none.
func (k ink) stretches(b geometry.Box, pass func(run geometry.Box) bool) iter.Seq2[geometry.Point, geometry.Point] {
	return func(yield func(p, q geometry.Point) bool) {
		for _, l := range k.lines {
			if !l.box.Overlaps(b) {
				continue
			}
			for r, box := range l.runs {
				if !box.Overlaps(b) || pass != nil && pass(box) {
					continue
				}
				for j := r*inkRun + 1; j < min((r+1)*inkRun+1, len(l.points)); j++ {
					p, q := l.points[j-1], l.points[j]
					if from, to, ok := inside(p, q, b); ok && !yield(p.Lerp(q, from), p.Lerp(q, to)) {
						return
					}
				}
			}
		}
	}
}

// touches reports whether a line lies in the box or on its edge, or words that have their
// place there.
func (k ink) touches(b geometry.Box) bool {
	for range k.in(b, nil) {
		return true
	}
	return false
}

// within returns the box around the lines that lie in b, and the words that have their place there.
func (k ink) within(b geometry.Box) geometry.Box {
	out := geometry.EmptyBox()
	known := func(run geometry.Box) bool { // lies so far within that it adds nothing
		in := out.Grow(-closeEnough)
		return in.Min.X <= max(run.Min.X, b.Min.X) && min(run.Max.X, b.Max.X) <= in.Max.X && in.Min.Y <= max(run.Min.Y, b.Min.Y) && min(run.Max.Y, b.Max.Y) <= in.Max.Y
	}
	for part := range k.in(b, known) {
		out = out.Union(part)
	}
	return out
}

// in yields the boxes around the parts in b of such words and of lines, but for runs passed over.
func (k ink) in(b geometry.Box, pass func(run geometry.Box) bool) iter.Seq[geometry.Box] {
	return func(yield func(geometry.Box) bool) {
		for _, t := range k.texts {
			if b.Holds(t.at) && !yield(geometry.Rect(max(t.box.Min.X, b.Min.X), max(t.box.Min.Y, b.Min.Y), min(t.box.Max.X, b.Max.X), min(t.box.Max.Y, b.Max.Y))) {
				return
			}
		}
		for p, q := range k.stretches(b, pass) {
			if !yield(geometry.Around(p, q)) {
				return
			}
		}
	}
}

// inside returns the stretch of the straight line from p to q that lies in the
// box, as shares of its length: it is narrowed by each pair of edges (Liang and
// Barsky, ACM Trans. Graphics 3(1), 1984).
func inside(p, q geometry.Point, b geometry.Box) (from, to float64, ok bool) {
	if p.X < b.Min.X && q.X < b.Min.X || p.X > b.Max.X && q.X > b.Max.X || p.Y < b.Min.Y && q.Y < b.Min.Y || p.Y > b.Max.Y && q.Y > b.Max.Y {
		return 0, 0, false // as most are
	}
	if b.Holds(p) && b.Holds(q) {
		return 0, 1, true
	}
	d := q.Sub(p)
	if from, to, ok = narrowed(0, 1, p.X, d.X, b.Min.X, b.Max.X); ok {
		from, to, ok = narrowed(from, to, p.Y, d.Y, b.Min.Y, b.Max.Y)
	}
	return from, to, ok
}

// narrowed is what of a stretch lies between two edges; ok is false for nothing.
func narrowed(from, to, start, step, lo, hi float64) (f, t float64, ok bool) {
	if step == 0 {
		return from, to, lo <= start && start <= hi
	}
	t0, t1 := (lo-start)/step, (hi-start)/step
	if t0 > t1 {
		t0, t1 = t1, t0
	}
	from, to = max(from, t0), min(to, t1)
	return from, to, from <= to
}
