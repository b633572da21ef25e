package label

import (
	"cmp"
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
	row      = 4.2  // between lines of lettering, as a share of 2.5 mm letters, mm
	step     = 1.5  // between places that are tried along a line of lettering, mm
	farAlong = 30.0 // mm, as far as words may be shifted along
	own      = 2.1  // mm within which a line that words reach over is their own mark
	loose    = 2.5  // mm that words may be off their mark without a line to them: a capital's height
	movedOff = 1.2  // the same of words that stand whole and are moved off an edge all the same
	little   = 6.0  // mm that words may be moved to stand off an edge
	longest  = 30.0 // mm that a line of lettering may be long and is not broken
	turned   = 2.0  // mm of way that words on the other side of their mark count as
	lower    = 1.5  // how much dearer a way across the line of lettering is than along it
)

// Room is a ground with an edge that words must not pass: a box, or a piece of wood in it.
type Room struct {
	Ground
	Within geometry.Box
	Beside []geometry.Box   // where words may stand that are led to their mark by a line
	wood   []geometry.Point // the outline of a piece of wood, whose line is on the ground; nil for the box
}

// Holds reports whether the room holds all of a block, one that no outline crosses.
func (r *Room) Holds(b Block) bool {
	box := b.Bounds()
	return r.Within.Holds(box.Min) && r.Within.Holds(box.Max) && (r.wood == nil || curve.Holds(r.wood, b.Middle()))
}

// Fits reports whether a line of lettering stands whole where it is, and so far off all else.
func (r *Room) Fits(t layout.Text, off float64) bool {
	b := BlockOf(t)
	return r.Holds(b) && r.Clear(b, off)
}

// Near finds the place for a line of lettering that lies nearest to where it is wished:
// there, on the other side of its mark, a little along or in another row; in smaller
// letters, or in several lines, where that has no room; and where nothing near is clear,
// anywhere in the room with a thin line that leads to its mark. A thin line leads, too, to what
// stands near but not beside its mark. What it finds it takes.
// Where all of that fails, ok is false and the words lie inside the room, on whatever is there.
func (r *Room) Near(t layout.Text) (out []layout.Text, leader curve.Path, ok bool) {
	less := t
	less.Height = math.Min(t.Height, lettering.MinHeight)
	var alone []layout.Text // near, but not so that one sees whose they are
	for _, t := range []layout.Text{t, less} {
		out, ok := r.near(t)
		if !ok {
			continue
		}
		leader, tied := r.tied(t, out, loose)
		if tied {
			r.take(out, leader)
			return out, leader, true
		}
		if alone == nil {
			alone = out
		}
	}
	if out, leader, ok = r.led(less); ok {
		return out, leader, true
	}
	if alone != nil {
		r.take(alone, nil)
		return alone, nil, true
	}
	out = r.drawnIn(t)
	r.take(out, nil)
	return out, nil, false
}

// take takes the place of lines of lettering and of the line that leads to them.
func (r *Room) take(lines []layout.Text, leader curve.Path) {
	for _, l := range lines {
		r.Text(l)
	}
	r.Line(leader)
}

// tied finds the line to words that are moved off from the mark beside which they were wished;
// nil where they stand as near as is given, in their row or have no mark, and false where none
// leads there.
func (r *Room) tied(t layout.Text, out []layout.Text, near float64) (curve.Path, bool) {
	mark, ok := r.mark(t)
	b := BlockOf(out[0])
	inRow := math.Abs(out[0].At.Sub(t.At).Dot(geometry.Polar(1, t.Angle+math.Pi/2))) < t.Height/2
	if !ok || inRow || b.nearest(mark).Sub(mark).Norm() <= near {
		return nil, true
	}
	end := b.grown(ledGap).nearest(mark)
	if r.Strikes(mark, end) || !r.Reaches(mark, end, own) {
		return nil, false
	}
	return curve.Polyline(mark, end), true
}

// mark is where the line stands beside which words are wished.
func (r *Room) mark(t layout.Text) (geometry.Point, bool) {
	const fine = 0.2 // mm
	if t.Align == layout.Middle {
		return geometry.Point{}, false
	}
	back := geometry.Polar(fine, t.Angle+math.Pi*float64(1-t.Align/2))
	from := t.At.Add(geometry.Polar(t.Height/2, t.Angle+math.Pi/2))
	for p := from; p.Sub(from).Norm() <= own; p = p.Add(back) {
		if r.crossings(from, p.Add(back), 1) > 0 {
			return p.Add(back.Scale(0.5)), true
		}
	}
	return geometry.Point{}, false
}

// Inside moves words that stand whole by as little as brings them into a box, with a line to
// what they are moved off from; they stay where they are when nothing is clear there. What it
// finds it takes.
func (r *Room) Inside(t layout.Text, box geometry.Box) (layout.Text, curve.Path) {
	b, moved := BlockOf(t).Bounds(), t
	moved.At = t.At.Add(geometry.Point{
		X: math.Max(0, box.Min.X-b.Min.X) - math.Max(0, b.Max.X-box.Max.X),
		Y: math.Max(0, box.Min.Y-b.Min.Y) - math.Max(0, b.Max.Y-box.Max.Y)})
	if moved.At != t.At && moved.At.Sub(t.At).Norm() <= little && r.stands(t, []layout.Text{moved}) {
		if leader, tied := r.tied(t, []layout.Text{moved}, movedOff); tied {
			r.take([]layout.Text{moved}, leader)
			return moved, leader
		}
	}
	r.Text(t)
	return t, nil
}

// near tries places for letters of one height.
func (r *Room) near(t layout.Text) ([]layout.Text, bool) {
	for lines := 1; lines <= 4; lines++ {
		split := broken(t, lines)
		if len(split) != lines {
			continue
		}
		for c := range tries(t, split) {
			if r.stands(t, c) {
				return c, true
			}
		}
	}
	return nil, false
}

// stands reports whether lines of lettering are whole, clear, and still beside their mark.
func (r *Room) stands(t layout.Text, lines []layout.Text) bool {
	for _, l := range lines {
		if !r.Fits(l, Off) {
			return false
		}
	}
	b := BlockOf(lines[0])
	x := math.Min(math.Max(b.own(t.At).X, 0), b.Wide)
	nearest := b.At.Add(geometry.Polar(x, b.Angle)).Add(geometry.Polar(lines[0].Height/2, b.Angle+math.Pi/2))
	from := t.At.Add(geometry.Polar(t.Height/2, t.Angle+math.Pi/2))
	return r.Reaches(from, nearest, own)
}

// tries yields places for lines of lettering, nearest first.
func tries(t layout.Text, lines []string) iter.Seq[[]layout.Text] {
	type place struct {
		align     layout.Align
		dx, dy, w float64
	}
	all := make([]place, 0, 600)
	high := row * t.Height / 2.5
	for k := -3; k <= 3; k++ {
		dy := float64(k) * high
		for dx := -farAlong; dx <= farAlong+1e-9; dx += step {
			all = append(all, place{t.Align, dx, dy, math.Abs(dx) + lower*math.Abs(dy)})
		}
		if t.Align == layout.Middle {
			continue
		}
		way := 1.0 // from the mark to the words
		if t.Align == layout.Right {
			way = -1
		}
		for gap := 2.4; gap <= farAlong; gap += step / 2 {
			all = append(all, place{layout.Right - t.Align, -way * gap, dy, turned + gap - 2.4 + lower*math.Abs(dy)})
		}
	}
	slices.SortStableFunc(all, func(a, b place) int { return cmp.Compare(math.Round(a.w*100), math.Round(b.w*100)) })
	along, up := geometry.Polar(1, t.Angle), geometry.Polar(1, t.Angle+math.Pi/2)
	return func(yield func([]layout.Text) bool) {
		c := make([]layout.Text, len(lines)) // each place lies where the one before did
		for _, p := range all {
			for i, w := range lines {
				c[i] = t
				c[i].Words, c[i].Align = w, p.align
				c[i].At = t.At.Add(along.Scale(p.dx)).Add(up.Scale(p.dy - float64(i)*high))
			}
			if !yield(c) {
				return
			}
		}
	}
}

// broken divides words into so many lines or fewer, as even as can be, and none inside a word.
func broken(t layout.Text, lines int) []string {
	if lines == 1 {
		return []string{t.Words}
	}
	wide := lettering.Width(t.Words, t.Height)
	if wide < longest {
		return nil
	}
	least := wide / float64(lines)
	for _, word := range strings.Fields(t.Words) {
		least = math.Max(least, lettering.Width(word, t.Height))
	}
	for w := least; w < wide; w += 2 {
		if out := lettering.Wrap(t.Words, t.Height, w); len(out) <= lines {
			return out
		}
	}
	return nil
}

// drawnIn shifts words into the room, broken where they are too long for it.
func (r *Room) drawnIn(t layout.Text) []layout.Text {
	lines := []string{t.Words}
	if math.Abs(math.Cos(t.Angle)) > 0.9 {
		lines = lettering.Wrap(t.Words, t.Height, math.Max(r.Within.W()-1, 10))
	}
	var out []layout.Text
	for i, w := range lines {
		l := t
		l.Words, l.At = w, t.At.Sub(geometry.Polar(float64(i)*row*t.Height/2.5, t.Angle+math.Pi/2))
		b := BlockOf(l).Bounds()
		l.At = l.At.Add(geometry.Point{
			X: math.Max(0, r.Within.Min.X-b.Min.X) - math.Max(0, b.Max.X-r.Within.Max.X),
			Y: math.Max(0, r.Within.Min.Y-b.Min.Y) - math.Max(0, b.Max.Y-r.Within.Max.Y)})
		out = append(out, l)
	}
	return out
}
