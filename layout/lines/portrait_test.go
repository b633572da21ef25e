package lines

import (
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
)

// BenchmarkPortrait is the picture that the sheets and the book show of lake.
func BenchmarkPortrait(b *testing.B) {
	boat, err := aboard.New(frametest.Shipped(b, "lake", func(*design.Design) {}), nil, nil)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		Portrait(boat.Frame, boat.Cloth)
	}
}
