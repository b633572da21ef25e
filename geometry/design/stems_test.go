package design

import (
	"strings"
	"testing"
)

// TestMadeStems: what old files say keeps its meaning, and bow.made says the rest.
func TestMadeStems(t *testing.T) {
	old := strings.Replace(text(t, "brook"), "made = \"plywood\"\n", "", 1)
	for _, c := range []struct{ file, made, wood string }{
		{old, StemsSolid, "white ash"},
		{old + "\n[bending]\nstem_species = \"white oak\"\n", StemsSolid, "white ash"},
		{old + "\n[bending]\nstem_plies = 8\nstem_species = \"white oak\"\n", StemsLaminated, "white oak"},
		{text(t, "brook"), StemsPlywood, "Douglas-fir"},
		{text(t, "brook") + "\n[bending]\nstem_species = \"yellow-poplar\"\n", StemsPlywood, "yellow-poplar"},
	} {
		if d := mustDecode(t, c.file); d.MadeStems() != c.made || d.StemWood() != c.wood {
			t.Errorf("%s of %s, want %s of %s", d.MadeStems(), d.StemWood(), c.made, c.wood)
		}
	}
	for made, want := range map[string]string{"cheese": "bow.made: \"cheese\" is no way to make stems; accepted: solid, plywood, laminated", "laminated": "bending.stem_plies: is missing for laminated stems"} {
		if got := faultOf(t, strings.Replace(text(t, "brook"), "made = \"plywood\"", "made = \""+made+"\"", 1)).Error(); !strings.Contains(got, want) {
			t.Errorf("got %s", got)
		}
	}
	river := strings.Replace(text(t, "river"), "[stern]\n", "[stern]\nmade = \"solid\"\n", 1)
	if got := faultOf(t, river).Error(); !strings.Contains(got, "stern.made") {
		t.Errorf("got %s", got)
	}
}

// TestSheets: usual sheets add up to the siding, the fewest and most alike first.
func TestSheets(t *testing.T) {
	for siding, want := range map[float64][]float64{20: {10, 10}, 24: {12, 12}, 22: {12, 10}, 19: {10, 9}, 30: {15, 15}} {
		got := Sheets(siding)
		if len(got) != len(want) || got[0] != want[0] || got[1] != want[1] {
			t.Errorf("%g mm of %v, want %v", siding, got, want)
		}
	}
	for siding := 8.0; siding <= 100; siding++ {
		sum := 0.0
		for _, s := range Sheets(siding) {
			sum += s
		}
		if sum < siding-4 || sum > siding+4 {
			t.Errorf("%g mm of sheets that make %g", siding, sum)
		}
	}
}
