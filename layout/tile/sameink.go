package tile

import (
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// inkClose is how near two lines must lie to be one on paper, mm: a tenth of a dot at
// 600 to the inch.
const inkClose = 0.004

// sameInk reports whether a piece looks as another one does: all within its frame, and
// what it is dressed with, each in its smallest look.
func (p piece) sameInk(q piece, u measure.System) bool {
	if !sameBox(p.frame, q.frame) || !slices.EqualFunc(p.drawn(), q.drawn(), line.same) {
		return false // most that differ do so in their lines, and to dress a piece is slow
	}
	a, b := p.dressed(u), q.dressed(u)
	return slices.EqualFunc(a.lines, b.lines, line.same) && slices.EqualFunc(a.texts, b.texts, sameText)
}

func sameBox(a, b geometry.Box) bool {
	return a.Min.Sub(b.Min).Norm() < inkClose && a.Max.Sub(b.Max).Norm() < inkClose
}

// line is a straight stretch of ink; phase is where in its dashes it begins, mm.
type line struct {
	pen      layout.Pen
	from, to geometry.Point
	phase    float64
}

func (l line) same(m line) bool {
	if l.pen != m.pen || l.from.Sub(m.from).Norm() > inkClose || l.to.Sub(m.to).Norm() > inkClose {
		return false
	}
	period := period(l.pen)
	off := math.Mod(math.Abs(l.phase-m.phase), math.Max(period, 1))
	return period == 0 || off < inkClose || period-off < inkClose
}

// period is the length of a pen's dashes until they repeat, mm; 0 for a solid line.
func period(p layout.Pen) float64 {
	sum := 0.0
	for _, v := range p.Dash() {
		sum += v
	}
	return sum
}

func sameText(a, b layout.Text) bool {
	return a.Words == b.Words && a.At.Sub(b.At).Norm() < inkClose && math.Abs(a.Height-b.Height) < inkClose && math.Abs(a.Angle-b.Angle) < 1e-4 && a.Align == b.Align
}

// seen is what is seen of a piece.
type seen struct {
	lines []line
	texts []layout.Text
}

// drawn lists the pattern's own lines in a piece's frame.
func (p piece) drawn() []line {
	var out []line
	for i, s := range p.drawing.Strokes {
		if l := p.grid.ink.lines[i]; l.box.Overlaps(p.frame) {
			out = append(out, clipped(s.Pen, l.points, p.frame)...)
		}
	}
	return out
}

// dressed lists what a piece is dressed with, and all its words, in the pattern's coordinates.
func (p piece) dressed(u measure.System) seen {
	var out seen
	s := p.dress(u, p.looks[0], nil)
	out.texts = p.letter(&s, p.looks[0])
	for _, stroke := range s.Strokes {
		pts := stroke.Path.Flatten(inkTol)
		out.lines = append(out.lines, clipped(stroke.Pen, pts, geometry.Around(pts...).Grow(1))...)
	}
	out.texts = append(out.texts, s.Texts...)
	return out
}

// clipped are the stretches of a line that lie in a box. Those that follow one another
// straight are one, so that a long line is the same wherever it ends outside.
func clipped(pen layout.Pen, pts []geometry.Point, b geometry.Box) []line {
	var out []line
	passed := 0.0
	for j := 1; j < len(pts); j++ {
		p, q := pts[j-1], pts[j]
		long := q.Sub(p).Norm()
		if from, to, ok := inside(p, q, b); ok && (to-from)*long > inkClose {
			out = append(out, line{pen, p.Lerp(q, from), p.Lerp(q, to), passed + from*long})
		}
		passed += long
	}
	return out
}
