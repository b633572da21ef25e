package balance

import (
	"fmt"

	"ribwright/geometry/trial/balance"
	"ribwright/layout"
)

// Shape draws one trial alone, the gunwales wide mm long, for a page that says in
// its own words what is to be seen. factor is by how much changes of shape are
// exaggerated.
func Shape(b *balance.Boat, w *balance.Without, t balance.Trial, miss, wide float64) (d layout.Drawing, factor float64) {
	aft, fore := b.Frame.Gunwale.Line.Ends()
	f := figure{boat: b, without: w, scale: wide / (fore - aft)}
	f.factor = exaggeration([]balance.Trial{t}, f.scale)
	f.d = layout.Drawing{Name: "balance-" + t.Set, Title: fmt.Sprintf("Plan shape, ribs %s", t.Set)}
	f.plan(t, 0, miss)
	return f.d, f.factor
}
