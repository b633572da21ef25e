package bend

import (
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wood/timber"
)

// TestStock: how stock was dried decides how long it is soaked and steamed, and what is
// said of it. 9 of the 16 parts from 14 % to fiber saturation bring air-dried stock to
// 23 %, 20 of 23 bring kiln-dried stock to 27 %; green stock wants none.
func TestStock(t *testing.T) {
	thick := 6.5
	for _, c := range []struct {
		stock    design.Seasoning
		moisture float64
		share    float64
		minutes  float64
		about    string
	}{
		{design.AirDried, 23, 9.0 / 16, thick * 60 / 25, ""},
		{design.AirDried, 14, 0, 3 * thick, "moisture of the rib stock"},
		{design.KilnDried, 27, 20.0 / 23, 3 * thick, "kiln-dried rib stock"},
		{design.Green, 30, 0, thick * 60 / 25, ""},
		{design.Green, 38, 0, thick * 60 / 25, "green rib stock"},
	} {
		r := report(t, "lake", func(d *design.Design) { d.Bending.Stock, d.Bending.Moisture = c.stock, c.moisture })
		if r.LeastMoisture != 23 {
			t.Fatalf("the bends want %.0f %%: take another boat", r.LeastMoisture)
		}
		near(t, c.stock.String()+", hours of soaking", r.Soak.Hours, timber.MoistureHours(thick, c.share), 1e-9)
		near(t, c.stock.String()+", minutes", r.Ribs[0].Minutes, c.minutes, 1e-9)
		near(t, c.stock.String()+", hours to half", r.Soak.Half, 0.0492*thick*thick/1e-4/3600, 0.02)
		near(t, c.stock.String()+", hours to nine tenths", r.Soak.Most, 0.2130*thick*thick/1e-4/3600, 0.2)
		stock := slices.DeleteFunc(slices.Clone(r.Findings), func(f finding.Finding) bool { return !strings.Contains(f.About, "rib stock") })
		switch {
		case c.about == "" && len(stock) > 0, c.about != "" && (len(stock) != 1 || stock[0].About != c.about || stock[0].Cure == ""):
			t.Errorf("%s at %.0f %%: found %v, want about %q", c.stock, c.moisture, stock, c.about)
		}
	}
}

// TestGreenShrinksFromSaturation: free water swells nothing, so stock at 38 % shrinks as
// stock at 30 % does.
func TestGreenShrinksFromSaturation(t *testing.T) {
	r := report(t, "lake", func(d *design.Design) { d.Bending.Stock, d.Bending.Moisture = design.Green, 38 })
	near(t, "shrinks", r.Shrink, 6.5*0.00274*18, 1e-9)
}

// TestGapsKeepStrength: a gap under a full-length strip leaves of the gunwale what a cut
// mortise of its width does, the frame's balance does not change, and its ends are square.
func TestGapsKeepStrength(t *testing.T) {
	cut := report(t, "lake", nil)
	gap := report(t, "lake", func(d *design.Design) { d.Gunwale.Mortises = design.ByGap })
	if gap.Ribs[3].Push != cut.Ribs[3].Push || gap.Gunwale.Form != cut.Gunwale.Form {
		t.Errorf("the frame bends otherwise: %+v, cut %+v", gap.Ribs[3], cut.Ribs[3])
	}
	// A peg of 2.5 mm is bored 14 mm deep from inboard, 10 mm over the underside.
	flat, tall := beam.Opened(20, 40, nil, beam.Opening{From: -10.0 / 3, To: 10.0 / 3, Top: 22}, beam.Opening{From: -10, To: 4, Bottom: 8.75, Top: 11.25}).Left()
	near(t, "left in plan", gap.Slots[0].Flat, flat, 1e-12)
	near(t, "left in the tall way", gap.Slots[0].Tall, tall, 1e-12)
	near(t, "square tenon", gap.SquareTenon, float64(gap.Frame.Design.Ribs.Width+gap.Frame.Design.Ribs.FitWidth), 1e-12)
}
