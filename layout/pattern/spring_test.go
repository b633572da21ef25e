package pattern

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/balance"
)

// TestRelaxOnStrips: every rib strip says to what width its ribs are relaxed, in steps
// of 5 mm, and how tight each bend is made hot. The widths are set against the springs
// of the balance, not against the words; ribs of a group may differ by 5 mm.
func TestRelaxOnStrips(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		b, err := balance.Of(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, g := range f.RibGroups {
			said := words(RibStrip(bent(t, f), g, measure.Metric))
			i := strings.Index(said, "relax to ")
			if i < 0 || !strings.Contains(said, "between heads") {
				t.Errorf("%s: strip %s does not say what to relax to", name, g.Rib.Name)
				continue
			}
			var low, high float64
			n, _ := fmt.Sscanf(said[i:], "relax to %f mm to %f mm", &low, &high)
			if n == 1 {
				high = low
			}
			for j, r := range f.Ribs {
				for _, n := range g.Names {
					if w := b.Width(j); r.Name == n && (w < low-5 || w > high+5) {
						t.Errorf("%s: rib %s relaxes to %.1f mm, its strip says %.0f to %.0f", name, n, w, low, high)
					}
				}
			}
			for _, bend := range g.Rib.Section.Half {
				if bend.Radius > 0 && (!strings.Contains(said, ", hot ") || strings.Contains(said, "form ")) {
					t.Errorf("%s: strip %s does not say how tight it is bent by hand, or names a form", name, g.Rib.Name)
				}
			}
		}
	}
}

// TestPliesOnStrip: the mortise strip carries the thickness of the plies, and the
// form's radius where they are glued on one: the gunwale's own less 1/n^2.
func TestPliesOnStrip(t *testing.T) {
	f := frametest.Shipped(t, "lake", nil)
	if said := words(Mortises(bent(t, f), measure.Metric)); !strings.Contains(said, "3 plies of 6.7 mm, glued bent round the spreaders") {
		t.Errorf("the strip says %q", said)
	}
	f = frametest.Shipped(t, "lake", func(d *design.Design) { d.Gunwale.Glued = design.GluedOnForm })
	b, err := balance.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	said := words(Mortises(bent(t, f), measure.Metric))
	var radius, at float64
	i := strings.Index(said, "on a form of radius ")
	if i < 0 {
		t.Fatalf("the strip says %q", said)
	}
	if _, err := fmt.Sscanf(said[i:], "on a form of radius %f mm at station %f mm", &radius, &at); err != nil {
		t.Fatal(err)
	}
	if want := 8.0 / 9 / math.Abs(b.Curvature(at)); math.Abs(radius-want) > 1 {
		t.Errorf("the form has a radius of %.0f mm, want %.0f", radius, want)
	}
}

// TestSpringWords letters ribs without a neutral set, and gunwales of every make,
// without covering anything.
func TestSpringWords(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*design.Design)
		want   string
	}{
		{"one stick", func(d *design.Design) {
			d.Gunwale.Plies, d.Gunwale.Glued, d.Gunwale.Scarfs = 1, design.GluedStraight, nil
		}, "No set of these ribs"},
		{"on a form", func(d *design.Design) { d.Gunwale.Glued = design.GluedOnForm }, "A gunwale form has 0.889"},
		{"close ribs", func(d *design.Design) {
			d.Ribs.Pitch = 80
			d.Thwarts, d.Seats, d.Crew = nil, nil, nil
			d.Gunwale.Scarfs = nil
			d.Bow.Landing, d.Stern.Landing = 100, 100
		}, "\"Relax to\":"},
	} {
		f := frametest.Shipped(t, "river", c.change)
		for _, u := range []measure.System{measure.Metric, measure.Imperial} {
			b := bent(t, f)
			if said := setting(b); !strings.Contains(said, c.want) {
				t.Errorf("%s: %q", c.name, said)
			}
			for _, d := range All(b, u, Strips) {
				for i, a := range d.Texts {
					for _, b := range d.Texts[:i] {
						if overlap(a, b) {
							t.Errorf("%s, %s: %q lies on %q", c.name, d.Name, a.Words, b.Words)
						}
					}
				}
			}
		}
	}
}
