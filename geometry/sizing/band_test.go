package sizing

import (
	"fmt"
	"testing"
)

// TestMeasuredBand: a boat's proportions hold exactly when they lie between the least
// and the greatest of the 40 historic open canoes dimensioned in Smithsonian Bulletin
// 230 (1964): depth over beam 0.30 to 0.56, and for boats up to 14 ft length over
// beam 4.38 to 5.70. Ribs of round-bilged ones are 0.83 to 0.86 of beam and two
// depths long; and a rib steamed without a strap bends to 13 times its thickness.
func TestMeasuredBand(t *testing.T) {
	failed := map[string]int{}
	for _, lines := range []string{"depth = 170 mm", "depth = 190 mm", "length = 3100 mm", "length = 3900 mm", "length = 4200 mm\nbeam = 660 mm", "depth = 215 mm", "depth = 250 mm", "depth = 290 mm", "depth = 430 mm", "depth = 400 mm",
		"beam = 600 mm", "beam = 680 mm", "beam = 760 mm", "beam = 850 mm", "bilge = 0.08", "bilge = 0.24", "ribs.thickness = 9 mm", "ribs.thickness = 14 mm"} {
		c := ownCase(t, lines)
		if err := c.Settle(); err != nil {
			t.Fatalf("%s: %v", lines, err)
		}
		n := c.run.Number
		slender, deep, girth := n("hull.length")/n("extreme_beam"), n("depth_inside")/n("extreme_beam"), n("girth")/(n("hull.beam")+2*n("hull.depth"))
		if n("hull.length") > 4267 {
			t.Fatalf("%s: %.0f mm is more than 14 ft", lines, n("hull.length"))
		}
		want := map[string]bool{
			"band_slender_least": slender >= 4.38, "band_slender_most": slender <= 5.70, // figure 110, 3835 by 673 mm
			"band_depth_least": deep >= 0.30, "band_depth_most": deep <= 0.56,
			"girth_least": girth >= 0.83, "girth_most": girth <= 0.86,
			"ribs_bend": n("tightest_rib") >= 13,
		}
		checks, err := c.run.Checks()
		if err != nil {
			t.Fatal(err)
		}
		for _, v := range checks {
			holds, ours := want[v.Name]
			if !ours {
				continue
			}
			if !holds {
				failed[v.Name]++
			}
			if v.Passed != holds {
				t.Errorf("%s: %s is said to hold: %v; length over beam %.3f, depth over beam %.3f, girth %.3f, ribs %.1f", lines, v.Name, v.Passed, slender, deep, girth, n("tightest_rib"))
			}
			delete(want, v.Name)
		}
		if len(want) > 0 {
			t.Errorf("%s: not checked: %v", lines, fmt.Sprint(want))
		}
	}
	for _, name := range []string{"band_slender_least", "band_slender_most", "band_depth_least", "girth_least", "ribs_bend"} {
		if failed[name] == 0 {
			t.Errorf("no boat fails %s: this shows nothing of it", name)
		}
	}
}
