package balance

import (
	"testing"

	"ribwright/geometry/boat/frame/frametest"
)

// BenchmarkRiver is a complete balance of the largest shipped boat: model, neutral
// set, and three settings of the ribs with all cross pieces in and out, each in the
// likely case and all corners. It should take less than 2 ms on one core.
func BenchmarkRiver(b *testing.B) {
	f := frametest.Shipped(b, "river", nil)
	for b.Loop() {
		boat, err := Of(f)
		if err != nil {
			b.Fatal(err)
		}
		w, err := boat.Choose([]string{"all"})
		if err != nil {
			b.Fatal(err)
		}
		if _, err := boat.Trials(w, 10); err != nil {
			b.Fatal(err)
		}
	}
}
