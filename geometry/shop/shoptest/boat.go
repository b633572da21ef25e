// Package shoptest takes a frame through the shop for tests. The package itself is for
// tests alone.
package shoptest

import (
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/materials"
)

// Fittings lists what the boat is not ready without. The test ends if it cannot be
// worked out.
func Fittings(t testing.TB, f *frame.Frame) []kit.Kit {
	t.Helper()
	b, err := aboard.New(f, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	return b.Fittings
}

// Needs counts what a frame, its skin and the kits take, with the plan of its boards. The
// test ends if it cannot be worked out.
func Needs(t testing.TB, f *frame.Frame, kits ...kit.Kit) (*cutlist.Plan, *materials.Needs) {
	t.Helper()
	c, err := skin.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	j, err := joint.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	p := cutlist.Heat(nil).Make(f, kits...)
	return p, materials.Count(j, c, p, kits...)
}
