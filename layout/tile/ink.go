package tile

import (
	"math"

	"ribwright/geometry"
	"ribwright/layout"
)

// ink knows where a drawing has lines or letters.
type ink struct {
	lines [][]geometry.Point
	boxes []geometry.Box // around each of lines
	texts []geometry.Box
}

// inkTol is the chord error of the lines used to find empty tiles, mm; far less
// than what a tile's edge may cut off unseen.
const inkTol = 0.05

func inkOf(d *layout.Drawing) ink {
	var k ink
	for _, s := range d.Strokes {
		pts := s.Path.Flatten(inkTol)
		k.lines = append(k.lines, pts)
		k.boxes = append(k.boxes, geometry.Around(pts...))
	}
	for _, t := range d.Texts {
		k.texts = append(k.texts, t.Bounds())
	}
	return k
}

// touches reports whether a line or a letter lies in the box or on its edge.
func (k ink) touches(b geometry.Box) bool {
	for _, t := range k.texts {
		if t.Overlaps(b) {
			return true
		}
	}
	for i, pts := range k.lines {
		if !k.boxes[i].Overlaps(b) {
			continue
		}
		for j := 1; j < len(pts); j++ {
			if _, _, ok := inside(pts[j-1], pts[j], b); ok {
				return true
			}
		}
	}
	return false
}

// within returns the box around the lines and letters that lie in b.
func (k ink) within(b geometry.Box) geometry.Box {
	out := geometry.EmptyBox()
	for _, t := range k.texts {
		out = out.Union(meet(t, b))
	}
	for i, pts := range k.lines {
		if !k.boxes[i].Overlaps(b) {
			continue
		}
		for j := 1; j < len(pts); j++ {
			if from, to, ok := inside(pts[j-1], pts[j], b); ok {
				out = out.Union(geometry.Around(pts[j-1].Lerp(pts[j], from), pts[j-1].Lerp(pts[j], to)))
			}
		}
	}
	return out
}

// meet returns what two boxes share; EmptyBox when nothing.
func meet(a, b geometry.Box) geometry.Box {
	if !a.Overlaps(b) {
		return geometry.EmptyBox()
	}
	return geometry.Box{
		Min: geometry.Point{X: math.Max(a.Min.X, b.Min.X), Y: math.Max(a.Min.Y, b.Min.Y)},
		Max: geometry.Point{X: math.Min(a.Max.X, b.Max.X), Y: math.Min(a.Max.Y, b.Max.Y)},
	}
}

// inside returns the stretch of the straight line from p to q that lies in the
// box, as shares of its length: it is narrowed by each pair of edges (Liang and
// Barsky, ACM Trans. Graphics 3(1), 1984).
func inside(p, q geometry.Point, b geometry.Box) (from, to float64, ok bool) {
	to = 1
	narrow := func(start, step, lo, hi float64) bool {
		if step == 0 {
			return lo <= start && start <= hi
		}
		t0, t1 := (lo-start)/step, (hi-start)/step
		if t0 > t1 {
			t0, t1 = t1, t0
		}
		from, to = math.Max(from, t0), math.Min(to, t1)
		return from <= to
	}
	d := q.Sub(p)
	ok = narrow(p.X, d.X, b.Min.X, b.Max.X) && narrow(p.Y, d.Y, b.Min.Y, b.Max.Y)
	return from, to, ok
}
