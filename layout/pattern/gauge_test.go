package pattern

import (
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// TestGaugeLettering: every stroke that is engraved on a gauge lies on its band, which tight
// bends make narrow.
func TestGaugeLettering(t *testing.T) {
	for _, radius := range []float64{0, 20} {
		b := bent(t, frametest.Shipped(t, "brook", func(d *design.Design) {
			if radius > 0 {
				d.Keel.Width = 120
				for i := range d.Hull.Sections {
					d.Hull.Sections[i].BilgeRadius = measure.Length(radius)
				}
			}
		}))
		for _, g := range b.Gauges {
			p := gaugePart(g, "in the boat")
			if len(p.Letters) == 0 {
				t.Errorf("%s says nothing", p.Name)
			}
			for _, x := range p.Letters {
				for _, s := range x.Strokes() {
					for _, c := range s.Flatten(0.1) {
						if !inside(c, g.Outline) {
							t.Fatalf("%s: %q leaves the wood at %v", p.Name, x.Words, c)
						}
					}
				}
			}
		}
	}
}
