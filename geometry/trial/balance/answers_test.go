package balance

import (
	"fmt"
	"math"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
)

// TestAnswers: what the gunwales answer is what they rest at with one rib wider, or one
// cross piece longer, less what they rest at without. Superposition.
func TestAnswers(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		b, err := Of(f)
		if err != nil {
			t.Fatal(err)
		}
		x := append(f.Stations(), 0, 333)
		for _, out := range []map[int]bool{nil, {0: true}} {
			set := Setting{Open: b.Open, Slack: b.Fit, StrutsOut: out}
			got, err := b.Model.Answers(set, x)
			if err != nil {
				t.Fatal(err)
			}
			rest := settle(t, b.Model, nil, set)
			check := func(what string, row []float64, open, slack []float64) {
				t.Helper()
				now := settle(t, b.Model, nil, Setting{Open: open, Slack: slack, StrutsOut: out})
				for k, at := range x {
					if want := now.At(at) - rest.At(at); math.Abs(row[k]-want) > 1e-9 {
						t.Errorf("%s, %s, at %.0f mm: %.12f mm, settled %.12f", name, what, at, row[k], want)
					}
				}
			}
			for i, row := range got.Ribs {
				check(fmt.Sprint("rib ", i), row, plusOne(b.Open, i), b.Fit)
			}
			for j, row := range got.Pieces {
				if out[j] != (row == nil) {
					t.Fatalf("%s: cross piece %d answers %v", name, j, row)
				}
				if row != nil {
					check(fmt.Sprint("cross piece ", j), row, b.Open, plusOne(b.Fit, j))
				}
			}
		}
	}
}

func plusOne(v []float64, i int) []float64 {
	out := append([]float64(nil), v...)
	out[i]++
	return out
}
