package book

import (
	"cmp"
	"math"
	"slices"
	"sync"

	"ribwright/geometry"
	"ribwright/layout"
)

// settled is the drawing with its words moved off lines and off other words, each no
// farther than it must be; words that find no place within reach stay.
func (s *sketch) settled() layout.Drawing {
	ways, inked := nearFirst(), ink(s.Drawing)
	for i, t := range s.Texts {
		if moved, ok := placed(t, i, ways, inked, s.Texts, offLines); ok {
			s.Texts[i] = moved
			continue
		}
		s.Texts[i], _ = placed(t, i, ways, inked, s.Texts, 0)
	}
	return s.Drawing
}

// nearFirst are the ways that words may be moved, mm, the shortest first; every figure
// wants the same ones.
var nearFirst = sync.OnceValue(func() []geometry.Point {
	const reach = 48 // half millimeters of paper
	var ways []geometry.Point
	for x := -reach; x <= reach; x++ {
		for y := -reach; y <= reach; y++ {
			ways = append(ways, geometry.Pt(float64(x), float64(y)))
		}
	}
	slices.SortStableFunc(ways, func(a, b geometry.Point) int { return cmp.Compare(a.Dot(a), b.Dot(b)) })
	for i := range ways {
		ways[i] = ways[i].Scale(0.5)
	}
	return ways
})

// offLines is how far words stand from lines where there is room, mm: nearer, a line reads as
// part of a letter.
const offLines = 0.6

// placed moves words by the first of some ways that brings them clear of all else by so much.
func placed(t layout.Text, i int, ways, inked []geometry.Point, all []layout.Text, by float64) (layout.Text, bool) {
	for _, way := range ways {
		moved := t
		moved.At = t.At.Add(way)
		if clear(moved, inked, all, i, by) {
			return moved, true
		}
	}
	return t, false
}

// ink is all lines of a drawing as points, close enough that no letter slips through.
func ink(d layout.Drawing) []geometry.Point {
	const step = 0.3 // mm
	var out []geometry.Point
	for _, s := range d.Strokes {
		pts := s.Path.Flatten(0.05)
		for k := 1; k < len(pts); k++ {
			n := max(1, int(math.Ceil(pts[k].Sub(pts[k-1]).Norm()/step)))
			for j := range n + 1 {
				out = append(out, pts[k-1].Lerp(pts[k], float64(j)/float64(n)))
			}
		}
	}
	return out
}

// clear reports whether words stand so far from all ink and lie on no other words, the i-th of
// which they are themselves.
func clear(t layout.Text, inked []geometry.Point, all []layout.Text, i int, by float64) bool {
	box := t.Bounds().Grow(by)
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
