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
			if crosses(pts[j-1], pts[j], b) {
				return true
			}
		}
	}
	return false
}

// crosses reports whether the straight line from p to q meets the box: it
// narrows the stretch of the line inside each pair of edges (Liang and Barsky,
// ACM Trans. Graphics 3(1), 1984).
func crosses(p, q geometry.Point, b geometry.Box) bool {
	from, to := 0.0, 1.0
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
	return narrow(p.X, d.X, b.Min.X, b.Max.X) && narrow(p.Y, d.Y, b.Min.Y, b.Max.Y)
}
