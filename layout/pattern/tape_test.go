package pattern

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/measure"
	"ribwright/layout"
)

// TestTapeFigures: each figure of a tape stands over a tick at its own distance from
// zero, in mm or in inches of 25.4 mm, and the longest ticks carry them.
func TestTapeFigures(t *testing.T) {
	for u, unit := range map[measure.System]float64{measure.Metric: 1, measure.Imperial: 25.4} {
		var d layout.Drawing
		tape(&d, u, -731, 1240, 20)
		longest := map[string]bool{}
		far := 0.0
		for _, k := range d.Strokes {
			if h := k.Path.Bounds().H(); h > far+1e-9 {
				far, longest = h, map[string]bool{}
			}
			if b := k.Path.Bounds(); math.Abs(b.H()-far) < 1e-9 {
				longest[fmt.Sprintf("%.3f", b.Min.X)] = true
			}
			if x := k.Path.Bounds().Min.X; x < -731-1e-6 || x > 1240+1e-6 || math.Abs(math.Remainder(x, 10)) > 1e-6 && math.Abs(math.Remainder(x, 25.4)) > 1e-6 {
				t.Errorf("%v: a tick at %.3f mm", u, x)
			}
		}
		for _, x := range d.Texts {
			var figure float64
			var name string
			if _, err := fmt.Sscanf(x.Words, "%f %s", &figure, &name); err != nil {
				t.Fatalf("%q is no figure", x.Words)
			}
			if math.Abs(figure*unit-x.At.X) > 1e-9 || !longest[fmt.Sprintf("%.3f", x.At.X)] {
				t.Errorf("%v: %q stands at %.3f mm", u, x.Words, x.At.X)
			}
			if want := map[measure.System]string{measure.Metric: "mm", measure.Imperial: "in"}[u]; !strings.HasPrefix(name, want) {
				t.Errorf("%v: %q is in %s", u, x.Words, name)
			}
		}
		if want := int(math.Floor(1240/(unit*map[measure.System]float64{measure.Metric: 100, measure.Imperial: 6}[u]))) + int(math.Floor(731/(unit*map[measure.System]float64{measure.Metric: 100, measure.Imperial: 6}[u]))) + 1; len(d.Texts) != want {
			t.Errorf("%v: %d figures, want %d", u, len(d.Texts), want)
		}
	}
}
