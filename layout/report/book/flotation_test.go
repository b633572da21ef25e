package book

import (
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/flotation"
	"ribwright/geometry/water/awash"
	"ribwright/render/rendertest"
)

// TestBagFromAbove: a bag of blocks that grow narrower towards an end has one outline round all of
// them, from whichever end they are listed: steps that meet, and no line over another.
func TestBagFromAbove(t *testing.T) {
	block := func(x, wide float64) awash.Block {
		return awash.Block{At: geometry.Point3{X: x}, Long: 50, Wide: wide}
	}
	for name, blocks := range map[string][]awash.Block{
		"from aft":  {block(1000, 200), block(1050, 150), block(1100, 100)},
		"from fore": {block(1100, 100), block(1050, 150), block(1000, 200)},
	} {
		var o []rendertest.Point
		for _, p := range around(flotation.Bag{Blocks: blocks}).Flatten(0.01) {
			o = append(o, rendertest.Point{X: p.X, Y: p.Y})
		}
		area := 0.0
		for i, p := range o {
			q := o[(i+1)%len(o)]
			area += (p.Y*q.X - p.X*q.Y) / 2
		}
		if rendertest.CrossesItself(o) || area != 50*(200+150+100) {
			t.Errorf("%s: the outline holds %.0f mm2, its blocks %d: %v", name, area, 50*(200+150+100), o)
		}
	}
}
