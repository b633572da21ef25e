package design

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"ribwright/geometry/wording"
)

// with adds outfit tables to the river design.
func with(t *testing.T, tables string) string {
	t.Helper()
	return text(t, "river") + "\n" + tables
}

// TestOutfitDefaults: a table that is begun has its defaults, one that is not is
// not aboard, whichever way TOML lets it be written.
func TestOutfitDefaults(t *testing.T) {
	for _, c := range []struct {
		name, tables string
		want         Outfit
	}{
		{"none", "", Outfit{}},
		{"empty", "[outfit]\n", Outfit{}},
		{"begun", "[outfit.sail]\n", Outfit{Sail: defaultSail()}},
		{"both", "[outfit.pair]\npurpose = \"sail\"\n[outfit.row]\n", Outfit{Pair: func() *Pair { p := defaultPair(); p.Purpose = Sailing; return p }(), Row: defaultRow()}},
		{"dotted", "[outfit]\nrow.pull = 300\n", Outfit{Row: func() *Row { r := defaultRow(); r.Pull = 300; return r }()}},
		{"braces", "[outfit]\nsail = { reefs = 0 }\n", Outfit{Sail: func() *Sail { s := defaultSail(); s.Reefs = 0; return s }()}},
	} {
		d := mustDecode(t, with(t, c.tables))
		if got := d.Fitted(); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
		if again := mustDecode(t, encode(t, d)); !reflect.DeepEqual(again, d) {
			t.Errorf("%s: written and read back %+v, want %+v", c.name, again.Outfit, d.Outfit)
		}
	}
	d := mustDecode(t, text(t, "river"))
	if d.Sail() != *defaultSail() || d.Pair() != *defaultPair() || d.Row() != *defaultRow() {
		t.Error("a boat without outfits would not have the usual ones")
	}
}

// TestOutfitValues has values at and beyond the edge of each key.
func TestOutfitValues(t *testing.T) {
	for _, c := range []struct {
		tables string
		key    string // "" when it is accepted
	}{
		{"[outfit.sail]\narea = 40", "outfit.sail.area"},
		{"[outfit.sail]\narea = 0.4", "outfit.sail.area"},
		{"[outfit.sail]\narea = 8", ""},
		{"[outfit.sail]\narea = nan", "outfit.sail.area"},
		{"[outfit.sail]\nwind = 1.9", "outfit.sail.wind"},
		{"[outfit.sail]\nreefs = 4", "outfit.sail.reefs"},
		{"[outfit.sail]\nmast_at = \"2 m\"", "outfit.sail.mast_at"},
		{"[outfit.sail]\nspars = \"iron\"", "outfit.sail.spars"},
		{"[outfit.sail]\nboards = \"\"", "outfit.sail.boards"},
		{"[outfit.sail]\ncloth = 20", "outfit.sail.cloth"},
		{"[outfit.sail]\nbolt = \"0 mm\"", "outfit.sail.bolt"},
		{"[outfit.sail]\nseam = \"41 mm\"", "outfit.sail.seam"},
		{"[outfit.sail]\nhem = \"9 mm\"", "outfit.sail.hem"},
		{"[outfit.sail]\nroach = 0.07", "outfit.sail.roach"},
		{"[outfit.sail]\nrig = \"vee\"", ""},
		{"[outfit.pair]\nspacing = \"849 mm\"", "outfit.pair.spacing"}, // under the beam of 850
		{"[outfit.pair]\nspacing = \"8 m\"", "outfit.pair.spacing"},
		{"[outfit.pair]\nspacing = \"2400 mm\"", ""},
		{"[outfit.pair]", "outfit.pair.purpose"},
		{"[outfit.pair]\npurpose = \"moving\"", ""},
		{"[outfit.pair]\nbeams = 1", "outfit.pair.beams"},
		{"[outfit.pair]\nbeams = 5", "outfit.pair.beams"},
		{"[outfit.pair]\napart = \"10 mm\"", "outfit.pair.apart"},
		{"[outfit.pair]\nspecies = \"tin\"", "outfit.pair.species"},
		{"[outfit.pair]\nwidth = \"20 mm\"", "outfit.pair.width"},
		{"[outfit.pair]\ndepth = \"301 mm\"", "outfit.pair.depth"},
		{"[outfit.pair]\nperson = 20", "outfit.pair.person"},
		{"[outfit.row]\nspan = \"699 mm\"", "outfit.row.span"},
		{"[outfit.row]\nspan = \"1300 mm\"\noar = \"1200 mm\"", "outfit.row.oar"},
		{"[outfit.row]\nspan = \"1300 mm\"\noar = \"2600 mm\"", ""},
		{"[outfit.row]\nstature = \"1 m\"", "outfit.row.stature"},
		{"[outfit.row]\nmass = 10", "outfit.row.mass"},
		{"[outfit.row]\nseat_at = \"-2 m\"", "outfit.row.seat_at"},
		{"[outfit.row]\nseat = \"30 mm\"", "outfit.row.seat"},
		{"[outfit.row]\npull = inf", "outfit.row.pull"},
		{"[outfit.row]\nspecies = \"tin\"", "outfit.row.species"},
		{"[outfit.row]\nbody = \"child\"", "outfit.row.body"},
	} {
		_, err := decode(with(t, c.tables))
		var f *wording.Fault
		switch {
		case c.key == "" && err != nil:
			t.Errorf("%q is refused: %v", c.tables, err)
		case c.key != "" && (!errors.As(err, &f) || f.Key != c.key || f.Line < 170 || !strings.Contains(f.Text, "accepted") && !strings.Contains(f.Text, "nearest")):
			t.Errorf("%q: %v, want a fault of %s that says what is accepted", c.tables, err, c.key)
		}
	}
}
