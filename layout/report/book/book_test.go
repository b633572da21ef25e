package book

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/cost"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/water"
	"ribwright/layout"
	"ribwright/layout/paper"
	"ribwright/layout/report"
	"ribwright/layout/typeset"
)

func shipped(t testing.TB, name string) *design.Design {
	t.Helper()
	d, err := design.Shipped(name)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// sized is the boat that a family gives for a body and its gear, one for each seat.
func sized(t testing.TB, name, paddler string, gear float64) *design.Design {
	t.Helper()
	f, err := family.Shipped(name)
	if err != nil {
		t.Fatal(err)
	}
	p, err := sizing.ParsePaddler(paddler)
	if err != nil {
		t.Fatal(err)
	}
	b := sizing.DefaultBrief()
	b.Title, b.Gear, b.Crew = name+" for "+paddler, gear, []sizing.Paddler{p}
	if name == "tandem" {
		b.Crew = append(b.Crew, p)
	}
	boat, err := sizing.Size(f, b)
	if err != nil {
		t.Fatal(err)
	}
	return boat.Design
}

// gathered holds the facts of each design that a test has asked for.
var gathered sync.Map

// facts are those of a design, gathered once for all tests: nobody may change what they
// point to.
func facts(t testing.TB, d *design.Design, units measure.System) Facts {
	t.Helper()
	var file bytes.Buffer
	if err := design.Encode(&file, d); err != nil {
		t.Fatal(err)
	}
	d = d.Copy()
	once, _ := gathered.LoadOrStore(file.String(), sync.OnceValues(func() (Facts, error) { return gather(d) }))
	f, err := once.(func() (Facts, error))()
	if err != nil {
		t.Fatalf("%s: %v", d.Title, err)
	}
	f.Units = units // all else knows no units
	return f
}

// own are the facts of a design for a test that changes them.
func own(t testing.TB, d *design.Design) Facts {
	t.Helper()
	f, err := gather(d)
	if err != nil {
		t.Fatalf("%s: %v", d.Title, err)
	}
	return f
}

func gather(d *design.Design) (Facts, error) {
	table, err := cost.Level("mixed")
	if err != nil {
		return Facts{}, err
	}
	w, err := water.At(water.Fresh, 15)
	if err != nil {
		return Facts{}, err
	}
	return Gather(d, Options{Units: measure.Metric, Prices: table, Skill: hours.Average, Water: w, Speeds: []float64{1, 1.5, 2, 2.5, 3}})
}

func bookOf(t testing.TB, f Facts) report.Report {
	t.Helper()
	return Of(f)
}

// books holds the book of each design in each system of units that a test has asked for.
var books sync.Map

// sharedBook is the book of what facts gave, written once for all tests: nobody may change its blocks.
func sharedBook(t testing.TB, f Facts) report.Report {
	t.Helper()
	type edition struct {
		of    *frame.Frame
		units measure.System
	}
	once, _ := books.LoadOrStore(edition{f.Frame, f.Units}, sync.OnceValue(func() report.Report { return Of(f) }))
	return once.(func() report.Report)()
}

func sheet(t testing.TB, name string) paper.Sheet {
	t.Helper()
	size, err := paper.ParseSize(name)
	if err != nil {
		t.Fatal(err)
	}
	s, err := paper.Setup{Size: size, Margins: paper.HomeMargins()}.Sheet(false)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// boats are the three shipped ones, and the smallest and the largest that the
// families give: for the 5th percentile of women without gear and the 95th of men
// with much of it (ANSUR II, US Army 2012).
func boats(t testing.TB) []*design.Design {
	return []*design.Design{shipped(t, "brook"), shipped(t, "lake"), shipped(t, "river"),
		sized(t, "pack", "51.3 kg, 1525 mm", 0), sized(t, "tandem", "110.7 kg, 1870 mm", 60)}
}

// TestTextBoxes sets every boat in both systems of units on both papers: no text
// overlaps another, none leaves the margins, and no line leaves the sheet.
func TestTextBoxes(t *testing.T) {
	for _, d := range boats(t) {
		for _, units := range []measure.System{measure.Metric, measure.Imperial} {
			b := sharedBook(t, facts(t, d, units))
			for _, name := range []string{"letter", "a4", "both"} {
				p := sheet(t, name)
				doc, err := typeset.Lay(b, p)
				if err != nil {
					t.Errorf("%s, %v, %s: %v", d.Title, units, name, err)
					continue
				}
				for i, s := range doc.Sheets {
					apart(t, fmt.Sprintf("%s, %v, %s, sheet %d", d.Title, units, name, i+1), s, p.Area)
				}
			}
		}
	}
}

// TestHostileWords sets a boat whose every word of the builder's own is as long as a
// design allows, or markup: each stays text within the margins.
func TestHostileWords(t *testing.T) {
	for _, words := range []string{strings.Repeat("W", 200), "<b>&\"'</b>\u202ex", strings.Repeat("a b ", 50)} {
		d := shipped(t, "river")
		d.Title, d.For = strings.Repeat(words, 2000/len(words)), strings.Repeat(words, 2000/len(words))
		for i := range d.Thwarts {
			d.Thwarts[i].Name = words
		}
		for i := range d.Crew {
			d.Crew[i].Name = words
		}
		for i := range d.Gear {
			d.Gear[i].Name = words
		}
		if p := d.Check(); p != nil {
			t.Fatal(p)
		}
		p := sheet(t, "a4")
		doc, err := typeset.Lay(sharedBook(t, facts(t, d, measure.Imperial)), p)
		if err != nil {
			t.Errorf("%.20q: %v", words, err)
			continue
		}
		for i, s := range doc.Sheets {
			apart(t, fmt.Sprintf("%.10q, sheet %d", words, i+1), s, p.Area)
		}
	}
}

// TestTold: what the book must hold is in it.
func TestTold(t *testing.T) {
	b := sharedBook(t, facts(t, shipped(t, "river"), measure.Metric))
	all := tables(b)
	rows := func(title string, want int) {
		t.Helper()
		if tab, ok := all[title]; !ok || len(tab.Rows) != want {
			t.Errorf("the table %q has %d rows, want %d", title, len(tab.Rows), want)
		}
	}
	rows("Mortises, mm", 29)
	rows("Lengths and widths, mm", 29)
	rows("Bends, from the middle of the blank, mm", 29)
	rows("Middles of the stringers, from the middle of the blank, mm", 29)
	rows("Cross pieces, under the gunwales, mm", 3)
	rows("Seats, mm", 2)
	rows("Rails and hangers of Bow seat, mm", 2)
	rows("Spreaders while building, mm", 3)
	rows("Depths from a straightedge across the gunwales, and corrections of length, mm", 29)
	rows("Sticks, mm", 6+29+6+1+8+2+3+2*12+3+8) // stems are of plywood; of a seat two rails, four hangers, four blocks, two spreaders; the last are outwales and keel strip, and floor slats
	cautions := ""
	figures := 0
	for _, k := range b.Blocks {
		switch k := k.(type) {
		case report.Caution:
			if k.Says == "" {
				t.Errorf("nobody says %q", k.Words)
			}
			cautions += k.Words + k.Says
		case report.Figure:
			figures++
			if k.About == "" || k.Caption == "" {
				t.Errorf("the figure %q is not described", k.Drawing.Title)
			}
		}
	}
	for _, w := range []string{"team scalds", "dust", "isocyanate", "nives", "life jacket", "NIOSH", "HSE", "33 CFR", "local law"} {
		if !strings.Contains(cautions, w) {
			t.Errorf("no caution says %q", w)
		}
	}
	if figures < 20 {
		t.Errorf("%d figures", figures)
	}
}

// TestEighths letters the trade's way: feet, inches, eighths, + for a sixteenth.
// Arithmetic: 1 ft 2 3/8 in is 365.125 mm.
func TestEighths(t *testing.T) {
	for _, c := range []struct {
		mm   float64
		want string
	}{{0, "0-0-0"}, {365.125, "1-2-3"}, {365.125 + 1.5875, "1-2-3+"}, {-25.4, "-0-1-0"}, {304.8, "1-0-0"}, {304.7, "1-0-0"}, {-0.1, "0-0-0"}} {
		if got := eighths(c.mm); got != c.want {
			t.Errorf("%g mm is lettered %s, want %s", c.mm, got, c.want)
		}
	}
}

func apart(t *testing.T, where string, s layout.Sheet, area geometry.Box) {
	t.Helper()
	inside := area.Grow(0.01)
	boxes := make([]geometry.Box, len(s.Texts))
	for i, x := range s.Texts {
		b := x.Bounds()
		boxes[i] = b.Grow(-0.05)
		if !inside.Holds(b.Min) || !inside.Holds(b.Max) {
			t.Errorf("%s: %q leaves the margins: %.1f", where, x.Words, b)
		}
		for k, o := range boxes[:i] {
			if boxes[i].Overlaps(o) {
				t.Errorf("%s: %q lies on %q", where, x.Words, s.Texts[k].Words)
			}
		}
	}
	for _, k := range s.Strokes {
		if b := k.Path.Bounds(); !inside.Holds(b.Min) || !inside.Holds(b.Max) {
			t.Errorf("%s: a line leaves the margins: %.1f", where, b)
		}
	}
}

// rowOf returns the row of a table by ribs that tells of a rib, alone or with its mirror.
func rowOf(t *testing.T, table report.Table, rib string) []string {
	t.Helper()
	for _, row := range table.Rows {
		if slices.Contains(strings.Split(row[0], ", "), rib) {
			return row
		}
	}
	t.Fatalf("the table %q has no row of rib %s", table.Title, rib)
	return nil
}

// tables returns the tables of a book by their titles.
func tables(b report.Report) map[string]report.Table {
	out := map[string]report.Table{}
	for _, k := range b.Blocks {
		if t, ok := k.(report.Table); ok {
			out[t.Title] = t
		}
	}
	return out
}
