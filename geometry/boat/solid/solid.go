// Package solid is a boat as a body in space, to be looked at: its sticks and cloth as
// flat faces that hide what lies behind them, with the lines that are drawn.
package solid

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
)

// Part is a kind of stick, or the cloth.
type Part int

// The parts.
const (
	Gunwales Part = iota
	Ribs
	Keel
	Stringers
	Stems
	Thwarts
	Hooks
	Cloth
	Tool // no part of the boat: what the builder looks along, who sits in it, the water
)

// Line is a line to draw: an edge of a stick.
type Line struct {
	Part   Part
	Number int     // of the rib from aft, the stringer from the keel; 0 for others
	Side   float64 // 1 port, -1 starboard, 0 both
	Points []geometry.Point3
}

// Face is a flat piece of surface, its corners in order around it; it may be hollow.
type Face []geometry.Point3

// Band is the surface between two lines of as many places: from each place to the next two
// triangles, A A' B' and A B' B, since four corners need not be flat. Where Out is 1 the band
// is a side of a closed body and the triangles run counter-clockwise as one sees them from
// outside, where it is -1 clockwise. Where it is 0 one may stand on either side.
type Band struct {
	A, B []geometry.Point3
	Out  float64
}

// Fold is the edge from A to B between two faces that go on to P and to Q. Where both
// lie to one side of it, it is an outline.
type Fold struct{ A, B, P, Q geometry.Point3 }

// Eye is where one looks from, and at what.
type Eye struct {
	At, To   geometry.Point3
	Parallel bool // seen from so far off that nothing grows smaller with its distance
}

// Boat is what is seen.
type Boat struct {
	Lines []Line
	Bands []Band
	Faces []Face
	Folds []Fold
}

// Moves tells how far the parts of a boat stand off where they are drawn, mm. Side is 1
// to port and -1 to starboard, x a station, share the way along a half rib from keel to
// head, 0 to 1.
type Moves interface {
	Rib(i int, side, share float64) geometry.Point3
	Stringer(k int, side, x float64) geometry.Point3
	Gunwale(side, x float64) geometry.Point3
	Keel(x float64) geometry.Point3
	Stem(p geometry.Point3) geometry.Point3
}

// AsDrawn moves nothing.
type AsDrawn struct{}

// Rib and the others are no way at all.
func (AsDrawn) Rib(int, float64, float64) (none geometry.Point3)      { return none }
func (AsDrawn) Stringer(int, float64, float64) (none geometry.Point3) { return none }
func (AsDrawn) Gunwale(float64, float64) (none geometry.Point3)       { return none }
func (AsDrawn) Keel(float64) (none geometry.Point3)                   { return none }
func (AsDrawn) Stem(geometry.Point3) (none geometry.Point3)           { return none }

// Of returns the bare frame with its parts moved, all of them or those that has names;
// stringers are counted from 1 at the keel, thwarts from 0, and ribs from aft.
//
// Accuracy: sticks run straight from place to place; those are the ribs' stations and
// two more in each bay, and on ribs so close that an arc leaves its chord by under 0.3
// mm. A stick that is moved keeps the lean of its section.
func Of(f *frame.Frame, m Moves, has func(p Part, number int) bool) *Boat {
	if has == nil {
		has = func(Part, int) bool { return true }
	}
	b := &Boat{}
	for _, side := range []float64{1, -1} {
		b.gunwale(f, m, side)
		for k, s := range f.Stringers {
			if has(Stringers, s.Number) {
				b.stringer(f, m, k, side)
			}
		}
	}
	for i := range f.Ribs {
		if has(Ribs, i) {
			b.rib(f, m, i)
		}
	}
	b.keel(f, m)
	b.stem(f.Bow, m, 1)
	b.stem(f.Stern, m, -1)
	b.hook(f, m, f.BowHook, 1)
	b.hook(f, m, f.SternHook, -1)
	for i, t := range f.Thwarts {
		if has(Thwarts, i) {
			b.thwart(f, m, t)
		}
	}
	return b
}

// bar adds a stick of four edges, each given from end to end, in order around it.
func (b *Boat) bar(like Line, edges [4][]geometry.Point3) {
	last := len(edges[0]) - 1
	var ends [2]Face
	for _, line := range edges {
		like.Points = line
		b.Lines = append(b.Lines, like)
		ends[0], ends[1] = append(ends[0], line[0]), append(ends[1], line[last])
	}
	out := -turn(ends[0], edges[0][1])
	for e, line := range edges {
		b.Bands = append(b.Bands, Band{line, edges[(e+1)%4], out})
	}
	for _, end := range ends {
		b.Faces = append(b.Faces, end)
		like.Points = closed(end)
		b.Lines = append(b.Lines, like)
	}
}

// turn is 1 where an outline runs counter-clockwise as one sees it from a place that lies
// off its first corner, -1 where it runs clockwise.
func turn(outline []geometry.Point3, from geometry.Point3) float64 {
	var area geometry.Point3
	for i := 2; i < len(outline); i++ {
		area = area.Add(outline[i-1].Sub(outline[0]).Cross(outline[i].Sub(outline[0])))
	}
	return math.Copysign(1, area.Dot(from.Sub(outline[0])))
}

// plate adds a flat piece by the outlines of its two faces, which lie opposite.
func (b *Boat) plate(like Line, outline, other []geometry.Point3) {
	b.Faces = append(b.Faces, outline, other)
	for i, p := range outline {
		next := (i + 1) % len(outline)
		if corner(outline[(i+len(outline)-1)%len(outline)], p, outline[next]) {
			like.Points = []geometry.Point3{p, other[i]}
			b.Lines = append(b.Lines, like)
		}
	}
	band := Band{closed(outline), closed(other), turn(outline, other[0])}
	b.Bands = append(b.Bands, band)
	for _, o := range [][]geometry.Point3{band.A, band.B} {
		like.Points = o
		b.Lines = append(b.Lines, like)
	}
}

// stepped is an outline moved by a step.
func stepped(outline []geometry.Point3, step geometry.Point3) []geometry.Point3 {
	out := make([]geometry.Point3, len(outline))
	for i, p := range outline {
		out[i] = p.Add(step)
	}
	return out
}

// corner tells whether a line turns by more than some 25 degrees from p by q to r.
func corner(p, q, r geometry.Point3) bool {
	a, b := q.Sub(p), r.Sub(q)
	return a.Dot(b) < 0.9*a.Norm()*b.Norm()
}

func closed(pts []geometry.Point3) []geometry.Point3 {
	return append(append([]geometry.Point3(nil), pts...), pts[0])
}

// places are the stations at which a stick is drawn: its ends, the ribs between them
// and two more in each bay.
func places(aft, fore float64, ribs []frame.Rib) []float64 {
	knots := []float64{aft}
	for _, r := range ribs {
		if r.Station > aft && r.Station < fore {
			knots = append(knots, r.Station)
		}
	}
	out := []float64{aft}
	for i, to := range append(knots[1:], fore) {
		from := knots[i]
		out = append(out, from+(to-from)/3, from+(to-from)*2/3, to)
	}
	return out
}

// mirrored puts a place on the port side or, for -1, on the other.
func mirrored(p geometry.Point3, side float64) geometry.Point3 {
	p.Y *= side
	return p
}
