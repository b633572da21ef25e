package design

import (
	"strings"
	"testing"
)

// TestByGap: gaps want a middle ply as thick as a mortise is wide, and the cures that
// the refusal names are accepted.
func TestByGap(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(d *Design)
		want   string
	}{
		{"as shipped", func(d *Design) {}, ""},
		{"one ply", func(d *Design) { d.Gunwale.Plies, d.Gunwale.Glued = 1, GluedStraight }, "wants a middle ply, and gunwale.plies is 1"},
		{"two plies", func(d *Design) { d.Gunwale.Plies = 2 }, "wants a middle ply, and gunwale.plies is 2"},
		{"five plies", func(d *Design) { d.Gunwale.Plies = 5 }, "as wide as the middle ply, 3.8 mm, and ribs of 6 mm with 0.3 mm of fit want 6.3 mm"},
		{"wide", func(d *Design) { d.Gunwale.Width = 20 }, "make gunwale.width 18.9 mm, or ribs.thickness 6.3 mm"},
		{"the width it names", func(d *Design) { d.Gunwale.Width = 18.9 }, ""},
		{"the rib it names", func(d *Design) { d.Gunwale.Width, d.Ribs.Thickness, d.Bow.Siding = 20, 6.3, 21 }, ""},
		{"a little thick", func(d *Design) { d.Gunwale.Width = 3 * 6.5 }, ""},
		{"too thick", func(d *Design) { d.Gunwale.Width = 3 * 6.51 }, "accepted: within 0.2 mm"},
		{"thinner than the rib", func(d *Design) { d.Ribs.FitThickness, d.Gunwale.Width = 0, 3*5.9 }, "no narrower than the rib"},
	} {
		d := mustDecode(t, text(t, "brook"))
		d.Gunwale.Mortises = ByGap
		c.change(d)
		p := d.Check()
		switch {
		case c.want == "" && p != nil:
			t.Errorf("%s: refused: %s %s", c.name, p.Key, p.Text)
		case c.want != "" && (p == nil || p.Key != "gunwale.mortises" || !strings.Contains(p.Text, c.want)):
			t.Errorf("%s: %+v, want %q", c.name, p, c.want)
		}
		d.Gunwale.Mortises = CutMortises
		if p := d.Check(); p != nil && p.Key == "gunwale.mortises" {
			t.Errorf("%s: cut mortises are refused: %s", c.name, p.Text)
		}
	}
}

// TestSeasoning: of stock and moisture the one that is left out follows from the other,
// and two that contradict each other are refused.
func TestSeasoning(t *testing.T) {
	brook := text(t, "brook")
	for _, c := range []struct {
		keys     string
		stock    Seasoning
		moisture float64
	}{
		{"", AirDried, 23},
		{`stock = "air-dried"`, AirDried, 23}, {`stock = "green"`, Green, 30}, {`stock = "kiln-dried"`, KilnDried, 27},
		{"moisture = 16", AirDried, 16}, {"moisture = 28", AirDried, 28}, {"moisture = 29", Green, 29}, {"moisture = 40", Green, 40}, {"moisture = 9", KilnDried, 9}, {"moisture = 10", AirDried, 10},
		{"stock = \"kiln-dried\"\nmoisture = 12", KilnDried, 12}, {"stock = \"green\"\nmoisture = 25", Green, 25},
	} {
		d := mustDecode(t, brook+"\n[bending]\n"+c.keys+"\n")
		if d.Bending.Stock != c.stock || d.Bending.Moisture != c.moisture {
			t.Errorf("%q: %v at %g %%, want %v at %g %%", c.keys, d.Bending.Stock, d.Bending.Moisture, c.stock, c.moisture)
		}
		again := mustDecode(t, encode(t, d))
		if again.Bending != d.Bending {
			t.Errorf("%q: written and read again it is %+v", c.keys, again.Bending)
		}
	}
	for keys, want := range map[string]string{
		"stock = \"green\"\nmoisture = 24":      "24 % does not go with green stock, which has 25 to 40 %",
		"stock = \"kiln-dried\"\nmoisture = 29": "29 % does not go with kiln-dried stock, which has 8 to 28 %",
		"stock = \"air-dried\"\nmoisture = 30":  "30 % does not go with air-dried stock, which has 8 to 28 %",
	} {
		f := faultOf(t, brook+"\n[bending]\n"+keys+"\n")
		if f.Key != "bending.moisture" || !strings.Contains(f.Text, want) {
			t.Errorf("%q: %+v, want %q", keys, f, want)
		}
	}
}

// TestSawn refuses a word that is no way of sawing.
func TestSawn(t *testing.T) {
	board := "\n[[stock.board]]\nspecies = \"white ash\"\nlength = \"3 m\"\nwidth = \"200 mm\"\nthickness = \"25 mm\"\nsawn = "
	for _, word := range []string{"flat", "quarter"} {
		if d := mustDecode(t, text(t, "brook")+board+`"`+word+`"`); d.Stock.Boards[0].Sawn != word {
			t.Errorf("%s: %+v", word, d.Stock.Boards)
		}
	}
	if f := faultOf(t, text(t, "brook")+board+`"rift"`); f.Key != "stock.board.sawn" || !strings.Contains(f.Text, "accepted: flat, quarter") {
		t.Errorf("%+v", f)
	}
}

// TestYardAndHands refuses a word that is no skill and a longest stick that no boat is made of.
func TestYardAndHands(t *testing.T) {
	d := mustDecode(t, "skill = \"beginner\"\n"+text(t, "brook")+"\n[stock]\nlongest = \"3 m\"\n")
	if d.Skill != "beginner" || d.Stock.Longest != 3000 {
		t.Errorf("%q, %v", d.Skill, d.Stock.Longest)
	}
	for key, file := range map[string]string{
		"skill":         "skill = \"master\"\n" + text(t, "brook"),
		"stock.longest": text(t, "brook") + "\n[stock]\nlongest = \"999 mm\"\n",
	} {
		if f := faultOf(t, file); f.Key != key || !strings.Contains(f.Text, "accepted: ") {
			t.Errorf("%s: %+v", key, f)
		}
	}
}
