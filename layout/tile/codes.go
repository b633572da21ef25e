package tile

import (
	"iter"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/label"
	"ribwright/layout/lettering"
)

const (
	// codeWish is where along a joint its code is wished, as a share of its length: off the
	// middle, where a long joint has a cross.
	codeWish = 0.62
	// beside is how far a name stands off the joint, mm.
	beside = 1.2
	// aloof is how far a joint's code keeps off the pattern's lettering where that can be, mm:
	// in line with it the two are read as one, and words on a joint are moved off it by some
	// of that.
	aloof = 3.0
	// lined is how far under a name the line lies that says which way up it is, mm.
	lined = 0.6
)

// drawJoint letters the joint with a code that stands at the same place on both pieces: the
// name of each on its own side, read as the heading is. It draws the line to cut where this
// piece is cut.
func (p piece) drawJoint(s *layout.Sheet, j side) {
	if j.trim {
		s.Line(layout.Guide, j.from, j.to)
	}
	first, second := p.name(), j.other
	if j.trim {
		first, second = second, first
	}
	if code, clear := p.codeAt(j, first, second); clear {
		for _, name := range code {
			setName(s, name)
		}
		return
	}
	r, at := p.room(*s), j.from.Lerp(j.to, codeWish)
	code, leader, found := r.Near(layout.Text{At: at, Height: small, Align: layout.Middle, Words: first + "-" + second})
	if !found {
		code, leader, _ = r.Near(layout.Text{At: at, Height: small, Angle: math.Pi / 2, Align: layout.Middle, Words: first + "-" + second})
	}
	s.Texts = append(s.Texts, code...)
	if leader != nil {
		s.Strokes = append(s.Strokes, layout.Stroke{Pen: layout.Tick, Path: leader})
	}
}

// setName letters a name of a joint, with a line under it where it would be another one
// upside down.
func setName(s *layout.Sheet, name layout.Text) {
	s.Texts = append(s.Texts, name)
	if misread(name.Words) {
		down := geometry.Polar(-lined, name.Angle+math.Pi/2)
		from := name.Start().Add(down)
		to := from.Add(geometry.Polar(lettering.Width(name.Words, name.Height), name.Angle))
		s.Strokes = append(s.Strokes, layout.Stroke{Pen: layout.Tick, Path: curve.Polyline(from, to)})
	}
}

// misread reports whether a name is that of another piece upside down, as 6 and 9 are, or
// 16 and 91.
func misread(name string) bool {
	const upright, turned = "01689", "01986"
	out := make([]byte, len(name))
	for i := range len(name) {
		k := strings.IndexByte(upright, name[i])
		if k < 0 {
			return false
		}
		out[len(name)-1-i] = turned[k]
	}
	return string(out) != name && out[0] != '0'
}

// blockOfName is the room of a name, the line under it included.
func blockOfName(t layout.Text) label.Block {
	b := label.BlockOf(t)
	if misread(t.Words) {
		b.Low = -lined - layout.Tick.Width()
	}
	return b
}

// coded is all that the place of a joint's code depends on.
type coded struct {
	joint         side
	first, second string
}

// codeAt finds a place for a joint's code that is free of the pattern's own lines, of the
// joint's crosses and, where that can be, of the pattern's lettering. It looks at nothing but
// the joint's surroundings, so that both pieces find the same, and the second one need not
// look. Where nothing is free clear is false, and each piece has to find its own.
func (p piece) codeAt(j side, first, second string) (code []layout.Text, clear bool) {
	j.other, j.trim = "", false
	code = p.grid.ink.codes.of(coded{j, first, second}, func() []layout.Text { return p.freeCode(j, first, second) })
	return code, code != nil
}

// freeCode is codeAt without looking whether it is known; nil where nothing is free.
func (p piece) freeCode(j side, first, second string) []layout.Text {
	near := geometry.Around(j.from, j.to).Grow(2 * lap)
	bare := p.grid.ink.ground(near)
	for _, at := range j.crossPlaces() {
		for _, k := range crossAt(at) {
			bare.Line(k.Path)
		}
	}
	full, wide := bare, bare
	for i, t := range p.grid.ink.texts {
		if box := t.box.Grow(aloof); box.Overlaps(near) {
			full.Text(p.drawing.Texts[i])
			wide.Block(label.Block{At: box.Min, Wide: box.W(), High: box.H()})
		}
	}
	slots := p.slots(near)
	for _, ground := range []*label.Ground{&wide, &full, &bare} {
		for _, b := range slots {
			ground.Block(b)
		}
		struck := func(t layout.Text) bool { return !ground.Clear(blockOfName(t), label.Off) }
		for code := range codePlaces(j.from, j.to, first, second) {
			if !slices.ContainsFunc(code, struck) {
				return code
			}
		}
	}
	return nil
}

// slots are the narrow outlines near a box, whose insides are bare and yet no place for a name.
func (p piece) slots(near geometry.Box) (out []label.Block) {
	for _, box := range p.grid.ink.narrow {
		if box.Overlaps(near) {
			out = append(out, label.Block{At: box.Min, Wide: box.W(), High: box.H()})
		}
	}
	return out
}

// codePlaces yields places for the two names of a joint, best first: level, on both sides of
// an upright joint or over and under a level one. Both must lie on what both pieces show, so
// that a long name stands along its upright joint.
func codePlaces(a, b geometry.Point, first, second string) iter.Seq[[]layout.Text] {
	one, two := layout.Text{Height: small, Align: layout.Middle, Words: first}, layout.Text{Height: small, Align: layout.Middle, Words: second}
	off := min(beside, lap-max(lettering.Width(first, small), lettering.Width(second, small)))
	switch {
	case a.X != b.X:
		one.At.Y, two.At.Y = beside, -beside-small
	case off >= label.Off:
		one.At, one.Align = geometry.Pt(-off, -small/2), layout.Right
		two.At, two.Align = geometry.Pt(off, -small/2), layout.Left
	default:
		one.Angle, two.Angle = math.Pi/2, math.Pi/2
		one.At.X, two.At.X = -beside, beside+small
	}
	return func(yield func([]layout.Text) bool) {
		for share := range codeShares {
			code := []layout.Text{one, two}
			for i := range code {
				code[i].At = code[i].At.Add(a.Lerp(b, share))
			}
			if !yield(code) {
				return
			}
		}
	}
}

// codeShares yields places along a joint where its code is tried, as shares of its length,
// from the one wished on to both sides.
func codeShares(yield func(share float64) bool) {
	const step, least, count = 0.01, 0.06, 89
	wished := int(math.Round((codeWish - least) / step))
	for i := range 2 * count {
		k := wished + (i+1)/2*(1-i%2*2) // 0, -1, +1, -2, ... from there
		if k >= 0 && k < count && !yield(least+step*float64(k)) {
			return
		}
	}
}
