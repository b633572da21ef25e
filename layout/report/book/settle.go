package book

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/layout"
)

// settled is the drawing with its words moved off lines and off other words, each no
// farther than it must be; words that find no place within reach stay.
func (s *sketch) settled() layout.Drawing {
	const reach = 32 // half millimeters of paper
	var ways []geometry.Point
	for x := -reach; x <= reach; x++ {
		for y := -reach; y <= reach; y++ {
			ways = append(ways, geometry.Point{X: float64(x), Y: float64(y)}.Scale(0.5))
		}
	}
	slices.SortStableFunc(ways, func(a, b geometry.Point) int { return cmp.Compare(a.Norm(), b.Norm()) })
	inked := ink(s.Drawing)
	for i, t := range s.Texts {
		for _, by := range ways {
			moved := t
			moved.At = t.At.Add(by)
			if clear(moved, inked, s.Texts, i) {
				s.Texts[i] = moved
				break
			}
		}
	}
	return s.Drawing
}

// ink is all lines of a drawing as points, close enough that no letter slips through.
func ink(d layout.Drawing) []geometry.Point {
	const apart = 0.3 // mm
	var out []geometry.Point
	for _, s := range d.Strokes {
		pts := s.Path.Flatten(0.05)
		for k := 1; k < len(pts); k++ {
			n := max(1, int(math.Ceil(pts[k].Sub(pts[k-1]).Norm()/apart)))
			for j := range n + 1 {
				out = append(out, pts[k-1].Lerp(pts[k], float64(j)/float64(n)))
			}
		}
	}
	return out
}

// clear reports whether words lie on no ink and on no other words, the i-th of which they
// are themselves.
func clear(t layout.Text, inked []geometry.Point, all []layout.Text, i int) bool {
	box := t.Bounds()
	for _, p := range inked {
		if box.Holds(p) {
			return false
		}
	}
	for k, o := range all {
		if k != i && box.Overlaps(o.Bounds()) {
			return false
		}
	}
	return true
}
