package trace

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
)

// onLine is how near two lines lie that are one, mm: a thousandth, as fine as
// any cutter's step.
const onLine = 0.001

// patch is the side of the squares that drawn pieces are looked up by, mm: about as large
// as a letter, so that few strokes share one.
const patch = 10.0

// square is one of them, by its column and row.
type square struct{ x, y int32 }

// once remembers what is drawn, to draw no line twice.
type once struct {
	pieces []piece
	places map[square]int32 // of the squares that a piece's box touches, in last
	last   []int32          // the last entry for each of them, and 1
	near   []entry
	asked  int    // how often it was asked what is drawn already
	at     square // that was looked up the last time, as pieces lie side by side
	place  int32  // of it
}

// entry is a piece in a square, and the entry before it in the same square, and 1; 0 for none.
type entry struct{ piece, before int32 }

// piece is a piece that is drawn.
type piece struct {
	curve.Segment
	box geometry.Box // around it, with air
	met int          // the last question that has met it
}

// around is the box of a piece with so much air that pieces on one line share a point.
func around(s curve.Segment) geometry.Box { return s.Bounds().Grow(2 * onLine) }

// squares returns the first and the last square that a box touches.
func squares(b geometry.Box) (first, last square) {
	at := func(p geometry.Point) square {
		return square{int32(math.Floor(p.X / patch)), int32(math.Floor(p.Y / patch))}
	}
	return at(b.Min), at(b.Max)
}

// lastAt is the last entry of a square, and 1.
func (o *once) lastAt(at square) *int32 {
	if at != o.at || len(o.last) == 0 {
		place, known := o.places[at]
		if !known {
			place = int32(len(o.last))
			o.places[at], o.last = place, append(o.last, 0)
		}
		o.at, o.place = at, place
	}
	return &o.last[o.place]
}

// newOnce has room for so many pieces, which touch less than two squares each, and half as many
// squares, on the whole.
func newOnce(pieces int) *once {
	return &once{
		pieces: make([]piece, 0, pieces), near: make([]entry, 0, 2*pieces),
		places: make(map[square]int32, pieces/2), last: make([]int32, 0, pieces/2),
	}
}

// add remembers a piece with its box.
func (o *once) add(s curve.Segment, box geometry.Box) {
	first, last := squares(box)
	for x := first.x; x <= last.x; x++ {
		for y := first.y; y <= last.y; y++ {
			last := o.lastAt(square{x, y})
			o.near = append(o.near, entry{int32(len(o.pieces)), *last})
			*last = int32(len(o.near))
		}
	}
	o.pieces = append(o.pieces, piece{Segment: s, box: box})
}

// covered returns the stretches of a piece with its box, as shares of it, that are drawn
// already, in order and apart from each other.
func (o *once) covered(s curve.Segment, box geometry.Box) [][2]float64 {
	var out [][2]float64
	first, last := squares(box)
	o.asked++
	for x := first.x; x <= last.x; x++ {
		for y := first.y; y <= last.y; y++ {
			for i := *o.lastAt(square{x, y}); i > 0; i = o.near[i-1].before {
				if p := &o.pieces[o.near[i-1].piece]; p.met != o.asked && p.box.Overlaps(box) {
					p.met = o.asked
					out = append(out, common(s, p.Segment)...)
				}
			}
		}
	}
	if len(out) == 0 {
		return nil
	}
	slices.SortStableFunc(out, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	var joined [][2]float64
	for _, c := range out {
		if n := len(joined); n > 0 && c[0] <= joined[n-1][1]+onLine/s.Length() {
			joined[n-1][1] = math.Max(joined[n-1][1], c[1])
			continue
		}
		joined = append(joined, c)
	}
	return joined
}

// meets reports whether any of a path is drawn already.
func (o *once) meets(p curve.Path) bool {
	for _, s := range p {
		if s.Length() > onLine && len(o.covered(s, around(s))) > 0 {
			return true
		}
	}
	return false
}

// rest adds to a layer what of a path is not drawn yet, in as few paths as that gives,
// and remembers it.
func (o *once) rest(layer []curve.Path, p curve.Path) []curve.Path {
	first, from := len(layer), 0
	var run curve.Path // a part of p, from there on, as long as its pieces stand so in p; else from is -1
	flush := func() {
		if !Pointlike(run) {
			layer = append(layer, run)
		}
		run = nil
	}
	whole := true
	for i, s := range p {
		long := s.Length()
		if long == 0 {
			continue
		}
		box := around(s)
		gone := o.covered(s, box)
		whole = whole && len(gone) == 0
		at := 0.0
		for n := 0; n <= len(gone); n++ {
			g := [2]float64{1, 1}
			if n < len(gone) {
				g = gone[n]
			}
			if left := (g[0] - at) * long; left > onLine {
				switch all := len(gone) == 0; {
				case all && run == nil:
					from, run = i, p[i:i+1:i+1]
				case all && from >= 0 && from+len(run) == i:
					run = p[from : i+1 : i+1]
				default:
					from, run = -1, append(run, curve.Stretch(s, at, g[0]))
				}
			}
			if g[0] < 1 || g[1] > g[0] {
				flush()
			}
			at = g[1]
		}
		o.add(s, box)
	}
	flush()
	if whole && len(layer) == first+1 && p.Closed() {
		layer[first] = p
	}
	return layer
}

// common returns the stretches of s, as shares of it, that lie on t.
func common(s, t curve.Segment) [][2]float64 {
	switch s := s.(type) {
	case curve.Line:
		if t, is := t.(curve.Line); is {
			return commonLine(s, t)
		}
	case curve.Arc:
		if t, is := t.(curve.Arc); is && t.Center.Sub(s.Center).Norm() <= onLine && math.Abs(t.Radius-s.Radius) <= onLine {
			return commonArc(s, t)
		}
	case curve.Cubic:
		if t, is := t.(curve.Cubic); is && (sameCubic(s, t) || sameCubic(s, t.Reverse().(curve.Cubic))) {
			return [][2]float64{{0, 1}}
		}
	}
	return nil
}

func sameCubic(a, b curve.Cubic) bool {
	for _, d := range []geometry.Point{a.P0.Sub(b.P0), a.P1.Sub(b.P1), a.P2.Sub(b.P2), a.P3.Sub(b.P3)} {
		if d.Norm() > onLine {
			return false
		}
	}
	return true
}

func commonLine(s, t curve.Line) [][2]float64 {
	if astray(s, t) && astray(t, s) {
		return nil
	}
	long, short := s, t
	if t.Length() > s.Length() {
		long, short = t, s
	}
	way := long.B.Sub(long.A).Unit()
	if math.Abs(way.Cross(short.A.Sub(long.A))) > onLine || math.Abs(way.Cross(short.B.Sub(long.A))) > onLine {
		return nil
	}
	along := s.B.Sub(s.A).Unit()
	return stretch(along.Dot(t.A.Sub(s.A)), along.Dot(t.B.Sub(s.A)), s.Length())
}

// astray reports whether a line surely has an end off the other, which takes no root.
func astray(s, t curve.Line) bool {
	way := t.B.Sub(t.A)
	a, b := way.Cross(s.A.Sub(t.A)), way.Cross(s.B.Sub(t.A))
	return max(a*a, b*b) > 4*onLine*onLine*way.Dot(way)
}

// commonArc compares angles on one circle; t counts with whole turns added, too.
func commonArc(s, t curve.Arc) [][2]float64 {
	var out [][2]float64
	lo := math.Min(t.From, t.From+t.Sweep) - s.From
	for k := -2.0; k <= 2; k++ {
		from := (math.Remainder(lo, 2*math.Pi) + k*2*math.Pi) / s.Sweep
		out = append(out, stretch(from*s.Length(), (from+math.Abs(t.Sweep)/s.Sweep)*s.Length(), s.Length())...)
	}
	return out
}

// stretch returns what of a to b lies within 0 to length, as shares of length.
func stretch(a, b, length float64) [][2]float64 {
	if a > b {
		a, b = b, a
	}
	a, b = math.Max(a, 0), math.Min(b, length)
	if b-a <= onLine {
		return nil
	}
	return [][2]float64{{a / length, b / length}}
}
