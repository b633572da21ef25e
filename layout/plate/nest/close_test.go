package nest

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/trial/bend"
	"ribwright/layout/pattern"
)

// TestBestSearch: of the nests that are searched for at the same time the smallest is taken.
func TestBestSearch(t *testing.T) {
	b, err := bend.Of(frametest.Shipped(t, "brook", nil))
	if err != nil {
		t.Fatal(err)
	}
	o := DefaultOptions()
	parts := o.freed(pattern.Parts(b))
	j := newJob(parts, o.Stock.Grain(), o.Gap, o.room())
	least, largest := math.Inf(1), 0.0
	for _, n := range searched(j.task(parts)) {
		least, largest = min(least, n.W*n.H), max(largest, n.W*n.H)
	}
	if largest-least < 0.005*least {
		t.Fatalf("the searches found %.0f to %.0f mm2: too near to tell", least, largest)
	}
	moves, ok := j.closest(parts)
	if !ok {
		t.Fatal("no nest")
	}
	box := geometry.EmptyBox()
	for i, m := range moves {
		box = box.Union(j.exact[i].mapped(*m).box)
	}
	// The outlines that are searched with reach a hair farther out than the parts.
	if got := box.W() * box.H(); got > least+1 {
		t.Errorf("a rectangle of %.0f mm2, one search found %.0f", got, least)
	}
}
