// Package label finds places for lettering: obstacles (Ground, and the edge of a Room),
// candidates, and a price that says which of those that are clear is the best: the way from
// where the words are wished, and what turning, wrapping and leading them costs. It moves
// words only, never what they name.
package label

import (
	"iter"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

const (
	// Off is how far lettering keeps from what is drawn, mm.
	Off = 0.4
	// Least is how near it may stand where it was put on purpose, mm.
	Least = 0.1
	// tail is how far the letters with tails hang under their line, as a share of their
	// height: the lowest tail of the font of the sheets, measured, is 0.284 of a capital.
	tail = 0.29
	// chord is how far a curve may lie off the straight lines that stand for it here, mm.
	chord = 0.05
)

// Block is an upright rectangle in coordinates of its own, which begin at a place and are
// turned by an angle: a line of lettering, or several.
type Block struct {
	At        geometry.Point
	Angle     float64
	Wide      float64 // along the angle, from 0
	Low, High float64 // across it
}

// BlockOf is the room of a line of lettering, tails of letters included where it has any.
func BlockOf(t layout.Text) Block {
	b := Block{At: t.Start(), Angle: t.Angle, Wide: lettering.Width(t.Words, t.Height), High: t.Height}
	if strings.ContainsAny(t.Words, "gjpqyQ,;()[]") {
		b.Low = -tail * t.Height
	}
	return b
}

// own brings a point into the block's coordinates.
func (b Block) own(p geometry.Point) geometry.Point { return b.turned(p, geometry.Polar(1, b.Angle)) }

// turned is own with the step of 1 along the angle at hand.
func (b Block) turned(p, along geometry.Point) geometry.Point {
	d := p.Sub(b.At)
	return geometry.Point{X: d.X*along.X + d.Y*along.Y, Y: d.Y*along.X - d.X*along.Y}
}

// Corners are the block's corners, in turn.
func (b Block) Corners() [4]geometry.Point {
	along, up := geometry.Polar(1, b.Angle), geometry.Polar(1, b.Angle+math.Pi/2)
	at := func(x, y float64) geometry.Point { return b.At.Add(along.Scale(x)).Add(up.Scale(y)) }
	return [4]geometry.Point{at(0, b.Low), at(b.Wide, b.Low), at(b.Wide, b.High), at(0, b.High)}
}

// Bounds is the upright box round a block.
func (b Block) Bounds() geometry.Box { c := b.Corners(); return geometry.Around(c[:]...) }

// Middle is the block's middle.
func (b Block) Middle() geometry.Point { c := b.Corners(); return c[0].Lerp(c[2], 0.5) }

// grown is the block with air round it.
func (b Block) grown(air float64) Block {
	b.At = b.At.Sub(geometry.Polar(air, b.Angle))
	b.Wide, b.Low, b.High = b.Wide+2*air, b.Low-air, b.High+air
	return b
}

// crossed reports whether the straight line from p to q meets the block.
func (b Block) crossed(p, q geometry.Point) bool { return b.crossedIn(b.own(p), b.own(q)) }

// crossedIn is crossed for a line in the block's own coordinates.
func (b Block) crossedIn(p, q geometry.Point) bool {
	if p.X <= 0 && q.X <= 0 || p.X >= b.Wide && q.X >= b.Wide || p.Y <= b.Low && q.Y <= b.Low || p.Y >= b.High && q.Y >= b.High {
		return false // all of it to one side, as most are
	}
	if p == q {
		return true
	}
	d := q.Sub(p)
	from, to := 0.0, 1.0
	narrow := func(start, step, lo, hi float64) bool {
		if step == 0 {
			return lo < start && start < hi
		}
		a, c := (lo-start)/step, (hi-start)/step
		from, to = max(from, min(a, c)), min(to, max(a, c))
		return from < to
	}
	return narrow(p.X, d.X, 0, b.Wide) && narrow(p.Y, d.Y, b.Low, b.High)
}

// meets reports whether two blocks lie on each other: no straight line along an edge of
// one parts them.
func (b Block) meets(c Block) bool { return !b.parted(c) && !c.parted(b) }

func (b Block) parted(c Block) bool {
	box := geometry.EmptyBox()
	for _, p := range c.Corners() {
		box = box.Union(geometry.Around(b.own(p)))
	}
	return box.Max.X <= 0 || box.Min.X >= b.Wide || box.Max.Y <= b.Low || box.Min.Y >= b.High
}

// Ground is what lettering has to keep clear of. The zero Ground is bare.
type Ground struct {
	runs  []run // of lines, as they follow one another
	words []taken
}

// run is lines that are passed over at a time where none is near: those that follow one
// another are mostly of one path.
type run struct {
	box   geometry.Box
	lines []straight // runLong at the most
}

const runLong = 32

type straight struct{ from, to geometry.Point }

// overlaps reports whether the box round a line reaches another box.
func (l straight) overlaps(b geometry.Box) bool {
	return (l.from.X <= b.Max.X || l.to.X <= b.Max.X) && (l.from.X >= b.Min.X || l.to.X >= b.Min.X) && (l.from.Y <= b.Max.Y || l.to.Y <= b.Max.Y) && (l.from.Y >= b.Min.Y || l.to.Y >= b.Min.Y)
}

type taken struct {
	Block
	box geometry.Box
}

// Line takes what a line covers.
func (g *Ground) Line(p curve.Path) {
	pts := p.Flatten(chord)
	for i := 1; i < len(pts); i++ {
		g.Straight(pts[i-1], pts[i])
	}
}

// Straight takes what a straight line covers.
func (g *Ground) Straight(a, b geometry.Point) {
	n := len(g.runs)
	if n == 0 || len(g.runs[n-1].lines) == cap(g.runs[n-1].lines) {
		g.runs = append(g.runs, run{geometry.EmptyBox(), make([]straight, 0, runLong)})
		n++
	}
	last := &g.runs[n-1]
	last.box.Add(a)
	last.box.Add(b)
	last.lines = append(last.lines, straight{a, b})
}

// Shared is the ground for several who each add to it for themselves.
func (g *Ground) Shared() Ground {
	out := Ground{slices.Clip(g.runs), slices.Clip(g.words)}
	if n := len(out.runs); n > 0 {
		out.runs[n-1].lines = slices.Clip(out.runs[n-1].lines)
	}
	return out
}

// lines yields all lines, as they were taken.
func (g *Ground) lines() iter.Seq[straight] {
	return func(yield func(straight) bool) {
		for i := range g.runs {
			for _, l := range g.runs[i].lines {
				if !yield(l) {
					return
				}
			}
		}
	}
}

// Text takes what a line of lettering covers.
func (g *Ground) Text(t layout.Text) { g.Block(BlockOf(t)) }

// Block takes all that a block covers.
func (g *Ground) Block(b Block) { g.words = append(g.words, taken{b, b.Bounds()}) }

// Clear reports whether a block covers nothing and keeps so far from all that is drawn.
func (g *Ground) Clear(b Block, off float64) bool {
	b = b.grown(off)
	box := b.Bounds()
	if g.crossed(b, box) {
		return false
	}
	for _, w := range g.words {
		if w.box.Overlaps(box) && b.meets(w.Block) {
			return false
		}
	}
	return true
}

// Reaches reports whether a straight line from p to q meets no line further than the given
// way from p: whether words at q still belong to p.
func (g *Ground) Reaches(p, q geometry.Point, past float64) bool {
	long := q.Sub(p).Norm()
	if long <= past {
		return true
	}
	b := Block{At: p, Angle: math.Atan2(q.Y-p.Y, q.X-p.X), Low: -1e-6, High: 1e-6}
	b.At, b.Wide = p.Lerp(q, past/long), long-past
	return !g.crossed(b, b.Bounds())
}

// crossed reports whether any line meets a block, which lies in a box.
func (g *Ground) crossed(b Block, box geometry.Box) bool { return g.crossing(b, box, 1) > 0 }

// crossings counts the lines that a straight line from p to q meets, up to most.
func (g *Ground) crossings(p, q geometry.Point, most int) int {
	b := thin(p, q)
	return g.crossing(b, b.Bounds(), most)
}

// thin is the block that stands for a straight line.
func thin(p, q geometry.Point) Block {
	return Block{At: p, Angle: math.Atan2(q.Y-p.Y, q.X-p.X), Wide: q.Sub(p).Norm(), Low: -1e-6, High: 1e-6}
}

// crossing counts the lines that meet a block, which lies in a box, up to most.
func (g *Ground) crossing(b Block, box geometry.Box, most int) int {
	along, n := geometry.Polar(1, b.Angle), 0
	for i := range g.runs {
		if r := &g.runs[i]; r.box.Overlaps(box) {
			if n += b.met(r.lines, box, along, most-n); n == most {
				break
			}
		}
	}
	return n
}

// met counts those of some lines that meet the block, which lies in a box and along a step of
// 1, up to most.
func (b Block) met(lines []straight, box geometry.Box, along geometry.Point, most int) int {
	n := 0
	for _, l := range lines {
		if l.overlaps(box) && b.crossedIn(b.turned(l.from, along), b.turned(l.to, along)) {
			if n++; n == most {
				return n
			}
		}
	}
	return n
}

// Strikes reports whether a straight line would strike words.
func (g *Ground) Strikes(p, q geometry.Point) bool {
	box := geometry.Around(p, q).Grow(2 * Off) // what grows by Off at every side reaches no farther
	for i := range g.words {
		if w := &g.words[i]; w.box.Overlaps(box) && w.grown(Off).crossed(p, q) {
			return true
		}
	}
	return false
}
