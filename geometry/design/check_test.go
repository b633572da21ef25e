package design

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"ribwright/geometry/measure"
)

// TestCheck has designs that no file can hold, put together by a program.
func TestCheck(t *testing.T) {
	nan := measure.Length(math.NaN())
	for _, c := range []struct {
		name      string
		change    func(d *Design)
		key, text string
	}{
		{"length that is not a number", func(d *Design) { d.Hull.Length = nan }, "hull.length", "NaN mm is out of range"},
		{"endless beam", func(d *Design) { d.Hull.Beam = measure.Length(math.Inf(1)) }, "hull.beam", "+Inf mm is out of range"},
		{"keel that is not a number", func(d *Design) { d.Hull.KeelStraight = nan }, "hull.keel_straight", "NaN mm is out of range"},
		{"spreader nowhere", func(d *Design) { d.Hull.Spreaders[0].At = nan }, "hull.spreader.0.at", "NaN mm"},
		{"section nowhere", func(d *Design) { d.Hull.Sections[2].At = nan }, "hull.section.2.at", "NaN mm is out of range"},
		{"angle that is not a number", func(d *Design) { d.Hull.Sections[1].Flare = measure.Angle(math.NaN()) }, "hull.section.1.flare", "NaN deg is out of range"},
		{"endless rake", func(d *Design) { d.Stern.Rake = measure.Angle(math.Inf(-1)) }, "stern.rake", "-Inf deg is out of range"},
		{"scarf nowhere", func(d *Design) { d.Gunwale.Scarfs[1] = nan }, "gunwale.scarfs", "NaN mm is out of range"},
		{"no sections", func(d *Design) { d.Hull.Sections = nil }, "hull.section", "give at least one [[hull.section]]"},
		{"41 sections", func(d *Design) { d.Hull.Sections = make([]Section, 41) }, "hull.section", "41 are given; accepted: up to 40"},
		{"41 spreaders", func(d *Design) { d.Hull.Spreaders = make([]Spreader, 41) }, "hull.spreader", "41 are given; accepted: up to 40"},
		{"13 thwarts", func(d *Design) { d.Thwarts = make([]Thwart, 13) }, "thwart", "13 are given; accepted: up to 12"},
		{"21 scarfs", func(d *Design) { d.Gunwale.Scarfs = make([]measure.Length, 21) }, "gunwale.scarfs", "21 are given; accepted: up to 20"},
		{"21 stringers", func(d *Design) { d.Stringers.At = make([]float64, 21) }, "stringers.at", "has 21 stringers a side"},
		{"symmetric by halves", func(d *Design) { d.Hull.Symmetric, d.Hull.RockerStern = true, 0 }, "hull.rocker_stern", "0 mm is not the bow's 40 mm"},
		{"symmetric rail by halves", func(d *Design) { symmetric(d).Gunwale.EdgeSetAft = 49 }, "gunwale.edge_set_stern", "49 mm is not the bow's 54 mm"},
		{"more made than there is", func(d *Design) { d.Gunwale.EdgeSetMade = 60 }, "gunwale.edge_set_made", "60 mm is more than the edge-set, which rises 54 mm"},
		{"symmetric ribs by halves", func(d *Design) { symmetric(d).Ribs.FromStern = 300 }, "ribs.from_stern", "300 mm is not the bow's 380 mm"},
		{"image of a section", func(d *Design) { symmetric(d).Hull.Sections[1].At = 20 }, "hull.section.1.at", "20 mm is 20 mm from the one at 0 mm"},
		{"section on its own image", func(d *Design) { h := &symmetric(d).Hull; h.Sections = h.Sections[1:]; h.Sections[0].At = 20 }, "hull.section.0.at", "20 mm is 40 mm from the one at -20 mm"},
		{"long title", func(d *Design) { d.Title = strings.Repeat("x", 2001) }, "title", "has 2001 bytes; accepted: up to 2000"},
		{"long edition", func(d *Design) { d.Edition = strings.Repeat("2", 81) }, "edition", "has 81 bytes; accepted: up to 80"},
		{"edition on lines", func(d *Design) { d.Edition = "2\n3" }, "edition", "stands on more than one line"},
		{"what changed on lines", func(d *Design) { d.Changed = "wider\nlonger" }, "changed", "stands on more than one line"},
		{"long note", func(d *Design) { d.For = strings.Repeat("x", 2001) }, "for", "has 2001 bytes; accepted: up to 2000"},
		{"nameless thwart", func(d *Design) { d.Thwarts[1].Name = "\n" }, "thwart.1.name", "is missing"},
		{"long name", func(d *Design) { d.Thwarts[1].Name = strings.Repeat("x", 201) }, "thwart.1.name", "has 201 bytes; accepted: up to 200"},
		{"horn past the stem", func(d *Design) { d.Bow.Horn = 62 }, "bow.horn", "62 mm is not less than the moulded depth 62 mm"},
		{"stem without an inner edge", func(d *Design) { d.Bow.Moulded, d.Bow.ForefootRadius = 60, 60 }, "bow.moulded", "60 mm is not less than the forefoot radius 60 mm"},
		{"thin stem", func(d *Design) { d.Stern.Siding = 21.9 }, "stern.siding", "21.9 mm is less than the gunwale width 22 mm"},
		{"head over its wood", func(d *Design) { d.Bow.HeadRadius = 62 }, "bow.head_radius", "62 mm is not more than the moulded depth 62 mm"},
		{"head turned too far", func(d *Design) { d.Stern.Rake, d.Stern.HeadTurn = 0.1, 1.2 }, "stern.head_turn", "leans the head 63.025 deg inboard at its top; accepted: up to 65.73 deg"},
		{"tight head", func(d *Design) { d.Bow.HeadRadius = 49 }, "bow.head_radius", "49 mm is out of range; accepted: 50 to 5000 mm, or 0 mm for a straight rake"},
		{"crowded ribs", func(d *Design) { d.Ribs.Pitch = 48.5 }, "ribs.pitch", "48.5 mm leaves less than 25 mm of gunwale between mortises for ribs 24 mm wide; accepted: 49 mm or more"},
		{"waist wider than its ends", func(d *Design) { d.Thwarts[0].Waist = 76 }, "thwart.0.waist", "76 mm is wider than its ends, 75 mm"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := mustDecode(t, text(t, "river"))
			c.change(d)
			p := d.Check()
			if p == nil || p.Key != c.key || !strings.Contains(p.Text, c.text) {
				t.Errorf("Check() = %+v, want %s: ... %s ...", p, c.key, c.text)
			}
		})
	}
}

// symmetric makes the river design one that its own bow mirrors.
func symmetric(d *Design) *Design {
	d.Hull.Symmetric, d.Stern = true, nil
	d.Hull.RockerStern, d.Gunwale.EdgeSetAft, d.Ribs.FromStern = d.Hull.RockerBow, d.Gunwale.EdgeSetBow, d.Ribs.FromBow
	d.Hull.Spreaders, d.Hull.Sections = d.Hull.Spreaders[1:], d.Hull.Sections[1:]
	return d
}

// TestCheckBorders accepts a value on each border and refuses one past it.
func TestCheckBorders(t *testing.T) {
	for _, c := range []struct {
		name string
		in   func(d *Design, by float64) // 0 on the border, 1 outside
	}{
		{"rib of half a gunwale", func(d *Design, by float64) { d.Ribs.Thickness = measure.Length(11 + by) }},
		{"siding of a gunwale's width", func(d *Design, by float64) { d.Bow.Siding = measure.Length(22 - by) }},
		{"longest hull", func(d *Design, by float64) { d.Hull.Length = measure.Length(9000 + by) }},
		{"most flare", func(d *Design, by float64) { d.Hull.Sections[0].Flare = measure.Angle((45 + by) * math.Pi / 180) }},
		{"most tumblehome", func(d *Design, by float64) { d.Hull.Sections[0].Flare = measure.Angle((-30 - by) * math.Pi / 180) }},
		{"straight keel", func(d *Design, by float64) { d.Hull.KeelStraight = measure.Length(0.8*4900 + by) }},
		{"spreader near the bow", func(d *Design, by float64) { d.Hull.Spreaders[1].At = measure.Length(0.95*2450 + by) }},
		{"last rib amidships", func(d *Design, by float64) { d.Ribs.FromBow = measure.Length(0.4*4900 + by) }},
		{"deep mortise", func(d *Design, by float64) { d.Ribs.MortiseDepth = measure.Length(0.8*42 + by) }},
		{"thwart near the stern", func(d *Design, by float64) { d.Thwarts[2].At = measure.Length(-0.9*2450 - by) }},
		{"sections side by side", func(d *Design, by float64) { d.Hull.Sections[0].At = measure.Length(-50 + by) }},
		{"most plies", func(d *Design, by float64) { d.Gunwale.Plies = 12 + int(by) }},
		{"steepest scarf", func(d *Design, by float64) { d.Gunwale.ScarfSlope = 5 - by }},
		{"longest edition", func(d *Design, by float64) { d.Edition = strings.Repeat("x", 80+int(by)) }},
		{"longest title", func(d *Design, by float64) { d.Title = strings.Repeat("x", 2000+int(by)) }},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := mustDecode(t, text(t, "river"))
			if c.in(d, 0); d.Check() != nil {
				t.Errorf("on the border: %+v, want it accepted", d.Check())
			}
			if c.in(d, 1); d.Check() == nil {
				t.Error("one past the border is accepted")
			}
		})
	}
}

// TestCheckOneLine keeps a problem on one line whatever a name holds.
func TestCheckOneLine(t *testing.T) {
	d := mustDecode(t, text(t, "river"))
	d.Ribs.Species = "no\nwood\x1b"
	if p := d.Check(); p == nil || strings.ContainsAny(p.Text, "\n\x1b") {
		t.Errorf("Check() = %+v, want a problem on one line", p)
	}
}

// TestTags: every tag of every table, outfits included, has a range that is read.
func TestTags(t *testing.T) {
	full := func() *Design {
		d, err := Shipped("river")
		if err != nil {
			t.Fatal(err)
		}
		d.Outfit = &Outfit{Sail: defaultSail(), Pair: defaultPair(), Row: defaultRow()}
		d.Outfit.Pair.Purpose = OpenWater
		d.Stock.Boards = []Board{{Species: "white ash", Length: 3000, Width: 150, Thickness: 25}}
		if p := d.Check(); p != nil {
			t.Fatal(p)
		}
		return d
	}
	full()
	for _, c := range []struct {
		key, want string
		set       func(d *Design)
	}{
		{"outfit.sail.area", "0.4 m2 is out of range; accepted: 0.5 to 8 m2, or 0 to let the boat decide", func(d *Design) { d.Outfit.Sail.Area = 0.4 }},
		{"outfit.sail.cloth", "29 g/m2 is out of range; accepted: 30 to 400 g/m2", func(d *Design) { d.Outfit.Sail.Cloth = 29 }},
		{"outfit.sail.spars", "is missing; accepted: the name of a wood", func(d *Design) { d.Outfit.Sail.Spars = "" }},
		{"outfit.sail.reefs", "4 is out of range; accepted: 0 to 3", func(d *Design) { d.Outfit.Sail.Reefs = 4 }},
		{"outfit.pair.depth", "24 mm is out of range; accepted: 25 to 300 mm, or 0 mm", func(d *Design) { d.Outfit.Pair.Depth = 24 }},
		{"outfit.pair.with", "has 501 bytes; accepted: up to 500", func(d *Design) { d.Outfit.Pair.With = strings.Repeat("x", 501) }},
		{"outfit.row.mass", "201 kg is out of range; accepted: 25 to 200 kg, or 0", func(d *Design) { d.Outfit.Row.Mass = 201 }},
		{"outfit.row.pull", "49 N is out of range; accepted: 50 to 600 N", func(d *Design) { d.Outfit.Row.Pull = 49 }},
		{"stock.board.0.thickness", "4 mm is out of range; accepted: 5 to 200 mm", func(d *Design) { d.Stock.Boards[0].Thickness = 4 }},
		{"stock.board.0.count", "-1 is out of range; accepted: 0 to 1000, 0 for as many as needed", func(d *Design) { d.Stock.Boards[0].Count = -1 }},
		{"crew.0.stature", "699 mm is out of range; accepted: 700 to 2300 mm, or 0 mm when not known", func(d *Design) { d.Crew[0].Stature = 699 }},
		{"crew.0.mass", "is missing, or 0 kg; accepted: 3 to 250 kg", func(d *Design) { d.Crew[0].Mass = 0 }},
	} {
		d := full()
		c.set(d)
		if p := d.Check(); p == nil || p.Key != c.key || !strings.Contains(p.Text, c.want) {
			t.Errorf("%s: got %+v, want %q", c.key, p, c.want)
		}
	}
}

// TestTagged: every tag of a design file's keys reads as the reflect package reads it.
func TestTagged(t *testing.T) {
	read := 0
	var walk func(table reflect.Type)
	walk = func(table reflect.Type) {
		for i := range table.NumField() {
			f := table.Field(i)
			for _, key := range []string{"accepts", "most"} {
				want := f.Tag.Get(key)
				if got := tagged(f.Tag, " "+key+`:"`); got != want {
					t.Errorf("%s.%s: %s is read as %q, want %q", table.Name(), f.Name, key, got, want)
				}
				if want != "" {
					read++
				}
			}
			if in := tableOf(f.Type); in != nil {
				walk(in)
			}
		}
	}
	walk(reflect.TypeFor[Design]())
	if read < 50 {
		t.Errorf("%d tags are read", read)
	}
}
