package book

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit"
	"ribwright/geometry/shop/cost"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/water"
	"ribwright/geometry/water/float"
	"ribwright/layout/report"
	"ribwright/layout/typeset"
)

// outfitted are the facts of a shipped boat with every outfit, its sail of a rig.
func outfitted(t testing.TB, boat string, r design.Rig, units measure.System) Facts {
	t.Helper()
	f := frametest.Shipped(t, boat, func(d *design.Design) {
		sail, pair, row := d.Sail(), d.Pair(), d.Row()
		sail.Rig, sail.Reefs, pair.Purpose = r, 3, design.OpenWater
		d.Outfit = &design.Outfit{Sail: &sail, Pair: &pair, Row: &row}
	})
	w, err := water.At(water.Fresh, 15)
	if err != nil {
		t.Fatal(err)
	}
	s, err := outfit.NewShip(f, f.Design.Gear, w)
	if err != nil {
		t.Fatal(err)
	}
	o := outfit.Of(s)
	table, err := cost.Level("mixed")
	if err != nil {
		t.Fatal(err)
	}
	out, err := Gather(f.Design, Options{Units: units, Prices: table, Skill: hours.Average, Water: w, Speeds: []float64{1, 2, 3}, Outfits: o})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestOutfitBoxes sets boats with every outfit in both systems of units: no text
// overlaps another, none leaves the margins.
func TestOutfitBoxes(t *testing.T) {
	for _, c := range []struct {
		boat  string
		rig   design.Rig
		units measure.System
		paper string
	}{{"brook", design.Vee, measure.Metric, "letter"}, {"lake", design.Spritsail, measure.Imperial, "both"},
		{"river", design.Lug, measure.Imperial, "a4"}, {"lake", design.LegOfMutton, measure.Metric, "a4"}} {
		p := sheet(t, c.paper)
		doc, err := typeset.Lay(bookOf(t, outfitted(t, c.boat, c.rig, c.units)), p)
		if err != nil {
			t.Errorf("%s, %v: %v", c.boat, c.rig, err)
			continue
		}
		for i, s := range doc.Sheets {
			apart(t, fmt.Sprintf("%s, %v, sheet %d", c.boat, c.rig, i+1), s, p.Area)
		}
	}
}

// TestOutfitTold: a book with outfits has their chapter, with how the boat lies by
// plain addition of weights, their cautions, cost and hours; one without has none.
func TestOutfitTold(t *testing.T) {
	with, without := outfitted(t, "lake", design.Spritsail, measure.Metric), facts(t, shipped(t, "lake"), measure.Metric)
	if slices.Contains(chapters(sharedBook(t, without)), "Outfits") {
		t.Error("a boat without outfits has a chapter on them")
	}
	b := bookOf(t, with)
	if !slices.Contains(chapters(b), "Outfits") {
		t.Fatalf("chapters %q", chapters(b))
	}
	var lies report.Table
	cautions := ""
	for _, k := range b.Blocks {
		switch k := k.(type) {
		case report.Table:
			if strings.HasPrefix(k.Title, "How the boat lies") {
				lies = k
			}
		case report.Caution:
			cautions += k.Words + "\n"
		case report.Findings:
			for _, d := range k.List.Dangers() {
				cautions += d.Text + "\n"
			}
		}
	}
	if len(lies.Rows) != 5 {
		t.Fatalf("%d rows: %q", len(lies.Rows), lies.Rows)
	}
	var outfit, all [5]float64
	for i, r := range lies.Rows {
		if _, err := fmt.Sscanf(r[1]+" "+r[2], "%f kg %f kg", &outfit[i], &all[i]); err != nil {
			t.Fatal(r, err)
		}
	}
	const printed = 0.11 // two figures rounded to a tenth
	for i := range all {
		if math.Abs(all[i]-all[0]-outfit[i]) > printed {
			t.Errorf("%q: %.1f kg, want %.1f and %.1f", lies.Rows[i][0], all[i], all[0], outfit[i])
		}
	}
	if math.Abs(outfit[4]-outfit[1]-outfit[2]-outfit[3]) > 2*printed {
		t.Errorf("all outfits weigh %.1f kg", outfit[4])
	}
	for _, want := range []string{"no sail up at", "windward hull leaves the water", "between the hulls goes under beams", "life jacket"} {
		if !strings.Contains(cautions, want) {
			t.Errorf("no caution says %q", want)
		}
	}
	if with.Cost.Likely <= without.Cost.Likely+130 { // the oars alone are 130
		t.Errorf("%.0f with outfits, %.0f without", with.Cost.Likely, without.Cost.Likely)
	}
	if h := hours.Hours(with.Work, "", hours.Average) - hours.Hours(without.Work, "", hours.Average); h < 15 {
		t.Errorf("outfits take %.1f h", h)
	}
}

// TestOutfitFault: with an outfit with which the boat does not float upright the book
// says so and why, and gives no figures.
func TestOutfitFault(t *testing.T) {
	f := outfitted(t, "brook", design.Spritsail, measure.Metric)
	f.Outfitted[2].Fault = &float.Fault{Outcome: float.Swamps, Text: "water comes in at station 0 mm"}
	said := fmt.Sprintf("%v", bookOf(t, f).Blocks)
	if want := "With the pair it does not float upright: " + f.Outfitted[2].Fault.Error() + "."; !strings.Contains(said, want) {
		t.Errorf("the book does not say %q", want)
	}
}

func chapters(b report.Report) []string {
	var out []string
	for _, k := range b.Blocks {
		if h, ok := k.(report.Heading); ok && h.Level == 1 {
			out = append(out, h.Words)
		}
	}
	return out
}
