package label

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

const (
	ledStep  = 2.0 // between places that are tried for words with a leader, mm
	crossing = 8.0 // mm of way that a line which a leader crosses is worth
	ledGap   = 0.7 // between a leader and its words, mm
	ledFrom  = 8   // places that are tried where a leader may begin
	astray   = 4.0 // mm of way that a mm is worth by which a leader begins off the place wished
)

// led finds the place for words anywhere in the room, with a thin line to their mark,
// straight or with one corner, that strikes no words and crosses as few lines as can be.
// Words are broken where that helps.
func (r *Room) led(t layout.Text) ([]layout.Text, curve.Path, bool) {
	from := r.starts(t)
	for lines := 1; lines <= 4; lines++ {
		split := broken(t, lines)
		if len(split) != lines {
			continue
		}
		b, way := r.ledPlace(blockFor(t, split), from, r.Within)
		for _, beside := range r.Beside {
			if way == nil {
				b, way = r.ledPlace(blockFor(t, split), from, beside)
			}
		}
		if way != nil {
			out, leader := b.set(t, split), curve.Polyline(way...)
			for _, l := range out {
				r.Text(l)
			}
			r.Line(leader)
			return out, leader, true
		}
	}
	return nil, nil, false
}

// start is where a leader may begin.
type start struct {
	at     geometry.Point
	astray float64 // what it costs that it is not the place wished
	asked  int     // how many ways from there were looked at
	lines  *fan    // the lines round it, once many ways are
}

// few is how many ways are looked at before it pays to see all lines from where they begin.
const few = 200

// crossings counts the lines of the ground that a way from the start to q meets, up to most.
func (s *start) crossings(g *Ground, q geometry.Point, most int) int {
	if s.asked++; s.asked <= few {
		return g.crossings(s.at, q, most)
	}
	if s.lines == nil {
		s.lines = g.fan(s.at)
	}
	return s.lines.crossings(q, most)
}

// starts lists where a leader to words may begin: where they are wished, and beside that
// where other words lie there.
func (r *Room) starts(t layout.Text) []start {
	along, up := geometry.Polar(1, t.Angle), geometry.Polar(1, t.Angle+math.Pi/2)
	way := [...]float64{1, 1, -1}[t.Align] // from the mark to the words
	at := t.At.Add(up.Scale(t.Height / 2))
	var out []start
	add := func(p geometry.Point) {
		if len(out) < ledFrom && r.inside(p) && !r.Strikes(p, p) {
			s := start{at: p}
			if len(out) > 0 {
				s.astray = astray * p.Sub(out[0].at).Norm()
			}
			out = append(out, s)
		}
	}
	add(at)
	for k := -1; k < 40 && len(out) < ledFrom; k++ {
		for _, rise := range []float64{0, -t.Height, t.Height} {
			add(at.Add(along.Scale(way * float64(k))).Add(up.Scale(rise)))
		}
	}
	return out
}

// inside reports whether a place lies in the room.
func (r *Room) inside(p geometry.Point) bool {
	return r.Within.Holds(p) && (r.wood == nil || curve.Holds(r.wood, p))
}

// blockFor is the block that lines of lettering take which are read as t is.
func blockFor(t layout.Text, lines []string) Block {
	b := Block{Angle: t.Angle, Low: -tail*t.Height - row*t.Height/2.5*float64(len(lines)-1), High: t.Height}
	for _, w := range lines {
		b.Wide = math.Max(b.Wide, lettering.Width(w, t.Height))
	}
	return b
}

// set letters lines in a block, the first one on its line.
func (b Block) set(t layout.Text, lines []string) []layout.Text {
	var out []layout.Text
	for i, w := range lines {
		l := t
		l.Words, l.Align = w, layout.Left
		l.At = b.At.Add(geometry.Polar(float64(i)*row*t.Height/2.5, t.Angle-math.Pi/2))
		out = append(out, l)
	}
	return out
}

// ledPlace finds the cheapest place for a block in a box, and the way to it from one of
// some places, the first of which is the best; nil where there is none.
func (r *Room) ledPlace(b Block, from []start, room geometry.Box) (Block, []geometry.Point) {
	if len(from) == 0 {
		return b, nil
	}
	type place struct {
		at   geometry.Point
		near float64
	}
	var all []place
	box := b.Bounds()
	stepUp := math.Min(ledStep, math.Max(room.H()-box.H(), 1)/4)
	for x := room.Min.X - box.Min.X; x+box.Max.X <= room.Max.X; x += ledStep {
		for y := room.Min.Y - box.Min.Y; y+box.Max.Y <= room.Max.Y; y += stepUp {
			b.At = geometry.Pt(x, y)
			all = append(all, place{b.At, b.nearest(from[0].at).Sub(from[0].at).Norm()})
		}
	}
	slices.SortStableFunc(all, func(a, b place) int {
		return cmp.Or(cmp.Compare(a.near, b.near), cmp.Compare(a.at.X, b.at.X), cmp.Compare(a.at.Y, b.at.Y))
	})
	best, least := b, math.Inf(1)
	var bestWay []geometry.Point
	for _, p := range all {
		if p.near >= least {
			break
		}
		if b.At = p.at; !r.Clear(b, Off) || r.wood != nil && !r.Holds(b) {
			continue
		}
		l := b.landing()
		for i := range from {
			f := &from[i]
			for _, w := range l.ways(f.at) {
				if cost, ok := r.price(f, w.corners[:w.n], least-f.astray); ok {
					best, bestWay, least = b, slices.Clone(w.corners[:w.n]), cost+f.astray
				}
			}
		}
	}
	return best, bestWay
}

// landing is where leaders to a block end.
type landing struct {
	edge  Block // a little off the block
	along geometry.Point
	sides [4]geometry.Point // the middles of its sides
}

func (b Block) landing() landing {
	l := landing{edge: b.grown(ledGap), along: geometry.Polar(1, b.Angle)}
	c := l.edge.Corners()
	for i := range c {
		l.sides[i] = c[i].Lerp(c[(i+1)%len(c)], 0.5)
	}
	return l
}

// way is a leader's: where it begins, its corner if it has one, and where it ends.
type way struct {
	corners [3]geometry.Point
	n       int
}

// ways lists ways for a leader from a mark: straight, and with a corner to the middle of each
// side.
func (l landing) ways(from geometry.Point) (out [5]way) {
	out[0] = way{[3]geometry.Point{from, l.edge.nearest(from)}, 2}
	for i, end := range l.sides {
		step := l.along.Scale(end.Sub(from).Dot(l.along))
		corner := from.Add(step)
		if i%2 == 1 { // a side across the lettering: the way ends along it
			corner = end.Sub(step)
		}
		out[i+1] = way{[3]geometry.Point{from, corner, end}, 3}
	}
	return out
}

// price is what a leader costs: its length, and what it crosses. ok is false where that is
// too much, or where it would strike words.
func (r *Room) price(f *start, way []geometry.Point, most float64) (cost float64, ok bool) {
	for i := 1; i < len(way); i++ {
		cost += way[i].Sub(way[i-1]).Norm()
	}
	for i := 1; i < len(way); i++ {
		p, q := way[i-1], way[i]
		if cost >= most || r.Strikes(p, q) {
			return 0, false
		}
		enough := math.MaxInt
		if left := (most - cost) / crossing; left < 1e6 {
			enough = int(left) + 1 // so many cost too much
		}
		met := 0
		if i == 1 {
			met = f.crossings(&r.Ground, q, enough)
		} else {
			met = r.crossings(p, q, enough)
		}
		cost += crossing * float64(met)
	}
	return cost, cost < most
}

// nearest is the point of a block that lies nearest to a place.
func (b Block) nearest(p geometry.Point) geometry.Point {
	q := b.own(p)
	x, y := math.Min(math.Max(q.X, 0), b.Wide), math.Min(math.Max(q.Y, b.Low), b.High)
	return b.At.Add(geometry.Polar(x, b.Angle)).Add(geometry.Polar(y, b.Angle+math.Pi/2))
}
