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

// starts lists where a leader to words may begin: where they are wished, and beside that
// where other words lie there.
func (r *Room) starts(t layout.Text) []geometry.Point {
	along, up := geometry.Polar(1, t.Angle), geometry.Polar(1, t.Angle+math.Pi/2)
	way := [...]float64{1, 1, -1}[t.Align] // from the mark to the words
	at := t.At.Add(up.Scale(t.Height / 2))
	var out []geometry.Point
	if r.inside(at) && !r.Strikes(at, at) {
		out = append(out, at)
	}
	for k := -1; k < 40 && len(out) < ledFrom; k++ {
		for _, rise := range []float64{0, -t.Height, t.Height} {
			if p := at.Add(along.Scale(way * float64(k))).Add(up.Scale(rise)); len(out) < ledFrom && r.inside(p) && !r.Strikes(p, p) {
				out = append(out, p)
			}
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
func (r *Room) ledPlace(b Block, from []geometry.Point, room geometry.Box) (Block, []geometry.Point) {
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
			all = append(all, place{b.At, b.nearest(from[0]).Sub(from[0]).Norm()})
		}
	}
	slices.SortStableFunc(all, func(a, b place) int { return cmp.Compare(a.near, b.near) })
	best, least := b, math.Inf(1)
	var bestWay []geometry.Point
	for _, p := range all {
		if p.near >= least {
			break
		}
		if b.At = p.at; !r.Clear(b, Off) || r.wood != nil && !r.Holds(b) {
			continue
		}
		for _, f := range from {
			for _, way := range b.waysFrom(f) {
				if cost, ok := r.price(way, least-astray*f.Sub(from[0]).Norm()); ok {
					best, bestWay, least = b, way, cost+astray*f.Sub(from[0]).Norm()
				}
			}
		}
	}
	return best, bestWay
}

// waysFrom lists ways for a leader from a mark to a block: straight, and with a corner to
// the middle of each of its sides.
func (b Block) waysFrom(from geometry.Point) [][]geometry.Point {
	g := b.grown(ledGap)
	out := [][]geometry.Point{{from, g.nearest(from)}}
	along, c := geometry.Polar(1, b.Angle), g.Corners()
	for i := range c {
		end := c[i].Lerp(c[(i+1)%len(c)], 0.5)
		step := along.Scale(end.Sub(from).Dot(along))
		corner := from.Add(step)
		if i%2 == 1 { // a side across the lettering: the way ends along it
			corner = end.Sub(step)
		}
		out = append(out, []geometry.Point{from, corner, end})
	}
	return out
}

// price is what a leader costs: its length, and what it crosses. ok is false where that is
// too much, or where it would strike words.
func (r *Room) price(way []geometry.Point, most float64) (cost float64, ok bool) {
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
		cost += crossing * float64(r.crossings(p, q, enough))
	}
	return cost, cost < most
}

// nearest is the point of a block that lies nearest to a place.
func (b Block) nearest(p geometry.Point) geometry.Point {
	q := b.own(p)
	x, y := math.Min(math.Max(q.X, 0), b.Wide), math.Min(math.Max(q.Y, b.Low), b.High)
	return b.At.Add(geometry.Polar(x, b.Angle)).Add(geometry.Polar(y, b.Angle+math.Pi/2))
}
