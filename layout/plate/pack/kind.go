package pack

import (
	"math"
	"slices"

	"ribwright/geometry"
)

// kind is what parts of the same shape share.
type kind struct {
	area  float64        // with half the gap round it, mm2
	mid   geometry.Point // of its box, from the part's own origin
	axis  float64        // which way it is long, radians
	shape *solid         // not turned
	turns []float64      // that it may lie at; none for any
	at    []solid        // at each of these
}

// sorted makes the kinds that the parts are of, and returns the kind of each.
func (t Task) sorted(kinds *[]kind) []int {
	out := make([]int, len(t.Parts))
	for i, p := range t.Parts {
		out[i] = -1
		for k := range i {
			if same(p, t.Parts[k]) {
				out[i] = out[k]
				break
			}
		}
		if out[i] < 0 {
			out[i] = len(*kinds)
			*kinds = append(*kinds, t.newKind(p))
		}
	}
	return out
}

func same(p, q Part) bool {
	return slices.Equal(p.Outer, q.Outer) && slices.Equal(p.Turns, q.Turns) && slices.EqualFunc(p.Holes, q.Holes, slices.Equal)
}

// newKind parts an outline into pieces. Holes in which nothing can lie count as full.
func (t Task) newKind(p Part) kind {
	var k kind
	outer := simple(p.Outer, false, t.Tolerance, t.Gap)
	var holes [][]geometry.Point
	for _, h := range p.Holes {
		if f := framed(h); min(f.x1-f.x0, f.y1-f.y0) > 2*t.Gap {
			holes = append(holes, simple(h, true, t.Tolerance, t.Gap))
		}
	}
	pieces := convex(outer, holes)
	k.area = areaOf(pieces)
	for i, q := range outer {
		k.area += length(outer[(i+1)%len(outer)].Sub(q)) * t.Gap / 2
	}
	f := framed(outer)
	k.mid = geometry.Point{X: (f.x0 + f.x1) / 2, Y: (f.y0 + f.y1) / 2}
	k.axis = longway(outer)
	k.shape = newSolid(pieces, k.mid)
	k.turnedTo(p.Turns)
	return k
}

// turnedTo sets the turns at which the kind may lie.
func (k *kind) turnedTo(turns []float64) {
	k.turns, k.at = turns, make([]solid, len(turns))
	for i, a := range turns {
		k.at[i].turn(k.shape, a)
	}
}

// longway is which way a loop is long: the chief axis of its sides.
func longway(pts []geometry.Point) float64 {
	mid, long := geometry.Point{}, 0.0
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		l := length(b.Sub(a))
		mid, long = mid.Add(a.Add(b).Scale(l/2)), long+l
	}
	mid = mid.Scale(1 / long)
	var xx, xy, yy float64
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		d, m := b.Sub(a), a.Add(b).Scale(0.5).Sub(mid)
		l := length(d)
		xx += float64(l * (float64(m.X*m.X) + float64(d.X*d.X)/12))
		xy += float64(l * (float64(m.X*m.Y) + float64(d.X*d.Y)/12))
		yy += float64(l * (float64(m.Y*m.Y) + float64(d.Y*d.Y)/12))
	}
	return math.Atan2(2*xy, xx-yy) / 2
}
