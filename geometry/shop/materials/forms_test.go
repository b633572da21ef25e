package materials

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/trial/bend"
)

// TestRows counts by hand: of plates of 600 x 300 mm with their 15 mm three stand in a
// row of 2440 mm and three rows on 1220 mm, so ten take two sheets.
func TestRows(t *testing.T) {
	form := bend.Form{Outline: curve.Rectangle(geometry.Rect(0, 0, 600, 300)), Layers: 1}
	thick := form
	thick.Layers = 2
	for _, c := range []struct {
		forms, layers int
		of            bend.Form
		plates, want  int
	}{{9, 1, form, 9, 1}, {10, 1, form, 10, 2}, {5, 2, thick, 10, 2}, {1, 1, form, 1, 1}} {
		n := &Needs{}
		var all []bend.Form
		for range c.forms {
			all = append(all, c.of)
		}
		n.AddForms(all)
		if n.Forms != (Forms{c.forms, c.plates, c.want}) || len(n.Items) != 1 || n.Items[0].Amount != float64(c.want) {
			t.Errorf("%d forms of %d layers: %+v, %+v, want %d sheets", c.forms, c.layers, n.Forms, n.Items, c.want)
		}
	}
	n := &Needs{}
	if n.AddForms(nil); len(n.Items) != 0 || n.Forms != (Forms{}) {
		t.Errorf("no forms: %+v", n)
	}
}

// TestFormsOfBoats: bent in place a boat needs no sheet for forms; on forms it needs at
// least their area.
func TestFormsOfBoats(t *testing.T) {
	for _, name := range design.ShippedNames() {
		for _, method := range []design.Method{design.InPlace, design.OnForms} {
			f := frametest.Shipped(t, name, func(d *design.Design) { d.Bending.Method = method })
			b, err := bend.Of(f)
			if err != nil {
				t.Fatal(err)
			}
			n, area, want := &Needs{}, 0.0, 0
			n.AddForms(b.Forms)
			if method == design.OnForms {
				want = len(f.RibGroups)
			}
			for _, form := range b.Forms {
				area += float64(form.Layers) * curve.Area(form.Outline.Flatten(0.1))
			}
			if sheets := float64(n.Forms.Sheets) * 1220 * 2440; n.Forms.Count != want || sheets < area || (want == 0) != (sheets == 0) || sheets > 3*area+1220*2440 || math.IsNaN(area) {
				t.Errorf("%s, %v: %+v for %.2f m2", name, method, n.Forms, area/1e6)
			}
		}
	}
}
