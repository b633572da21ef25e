package tile

import (
	"testing"

	"ribwright/layout"
)

// TestKeepUp: a tall drawing is not cut through a stretch that should stay whole, where the
// sheets leave room for that.
func TestKeepUp(t *testing.T) {
	for from := 60.0; from < 200; from += 7 {
		d := layout.Drawing{Name: "tall", Title: "Tall", KeepUp: []layout.Span{{From: from, To: from + 40}}}
		d.Straight(layout.Cut, 0, 0, 0, 300)
		d.Straight(layout.Cut, 40, 0, 40, 300)
		for _, p := range cut(&d, 180, 230, cutting{}) {
			for _, y := range []float64{p.cell.Min.Y, p.cell.Max.Y} {
				if y > from && y < from+40 {
					t.Errorf("a joint at %.0f mm cuts what stands from %.0f to %.0f mm", y, from, from+40)
				}
			}
		}
	}
}
