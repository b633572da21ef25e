package book

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/cost"
	"ribwright/geometry/design"
	"ribwright/geometry/labour"
	"ribwright/geometry/measure"
	"ribwright/geometry/water"
	"ribwright/layout"
	"ribwright/layout/page"
	"ribwright/layout/paper"
)

func shipped(t testing.TB, name string) *design.Design {
	t.Helper()
	d, err := design.Shipped(name)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// scaled is a shipped boat made smaller or larger all over, its scantlings left as
// they are, so that it can still be built.
func scaled(t testing.TB, name string, k float64) *design.Design {
	t.Helper()
	d := shipped(t, name)
	times := func(l *measure.Length, by float64) {
		*l = measure.Length(math.Round(float64(*l)*by*10) / 10)
	}
	h := &d.Hull
	for _, l := range []*measure.Length{&h.Length, &h.KeelStraight, &h.Waterline} {
		times(l, k)
	}
	soft := 1 + (k-1)*0.3 // canoes grow less in beam and depth than in length
	for _, l := range []*measure.Length{&h.Beam, &h.Depth} {
		times(l, soft)
	}
	for i := range h.Spreaders {
		times(&h.Spreaders[i].At, k)
		times(&h.Spreaders[i].Beam, soft)
	}
	for i := range h.Sections {
		times(&h.Sections[i].At, k)
	}
	for i := range d.Crew {
		times(&d.Crew[i].At, k)
	}
	for i := range d.Gear {
		times(&d.Gear[i].At, k)
	}
	d.Thwarts = d.Thwarts[:0]
	d.Gunwale.Scarfs = nil
	if k > 1 {
		d.Ribs.FromBow += 30
		d.Ribs.FromStern += 30
	}
	d.Title = fmt.Sprintf("%s x %.2f", name, k)
	if p := d.Check(); p != nil {
		t.Fatalf("%s: %s %s", d.Title, p.Key, p.Text)
	}
	return d
}

func facts(t testing.TB, d *design.Design, units measure.System) Facts {
	t.Helper()
	table, err := cost.Level("mixed")
	if err != nil {
		t.Fatal(err)
	}
	w, err := water.At(water.Fresh, 15)
	if err != nil {
		t.Fatal(err)
	}
	f, err := Gather(d, Options{Units: units, Prices: table, Skill: labour.Average, Water: w, Speeds: []float64{1, 1.5, 2, 2.5, 3}})
	if err != nil {
		t.Fatalf("%s: %v", d.Title, err)
	}
	return f
}

func bookOf(t testing.TB, f Facts) page.Book {
	t.Helper()
	b, err := Of(f)
	if err != nil {
		t.Fatal(err)
	}
	return b
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

// boats are the three shipped ones and a small and a large one of their families.
func boats(t testing.TB) []*design.Design {
	return []*design.Design{shipped(t, "brook"), shipped(t, "lake"), shipped(t, "river"), scaled(t, "brook", 0.75), scaled(t, "river", 1.25)}
}

// TestTextBoxes sets every boat in both systems of units on both papers: no text
// overlaps another, none leaves the margins, and no line leaves the sheet.
func TestTextBoxes(t *testing.T) {
	for _, d := range boats(t) {
		for _, units := range []measure.System{measure.Metric, measure.Imperial} {
			b := bookOf(t, facts(t, d, units))
			for _, name := range []string{"letter", "a4", "both"} {
				p := sheet(t, name)
				doc, err := page.Lay(b, p)
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
		doc, err := page.Lay(bookOf(t, facts(t, d, measure.Imperial)), p)
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
	b := bookOf(t, facts(t, shipped(t, "river"), measure.Metric))
	all := tables(b)
	rows := func(title string, want int) {
		t.Helper()
		if tab, ok := all[title]; !ok || len(tab.Rows) != want {
			t.Errorf("the table %q has %d rows, want %d", title, len(tab.Rows), want)
		}
	}
	rows("Mortises, mm", 29)
	rows("Lengths, mm", 29)
	rows("Bends, from the middle of the blank, mm", 29)
	rows("Middles of the stringers, from the middle of the blank, mm", 29)
	rows("Cross pieces, under the gunwales, mm", 6)
	rows("Spreaders while building, mm", 3)
	rows("Sticks, mm", 6+29+2+1+8+2+6)
	cautions := ""
	figures := 0
	for _, k := range b.Blocks {
		switch k := k.(type) {
		case page.Caution:
			if k.Says == "" {
				t.Errorf("nobody says %q", k.Words)
			}
			cautions += k.Words + k.Says
		case page.Figure:
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

// tables returns the tables of a book by their titles.
func tables(b page.Book) map[string]page.Table {
	out := map[string]page.Table{}
	for _, k := range b.Blocks {
		if t, ok := k.(page.Table); ok {
			out[t.Title] = t
		}
	}
	return out
}

// read turns a cell of the table of offsets into mm: whole mm, or feet-inches-eighths
// with + for a sixteenth.
func read(t *testing.T, cell string, units measure.System) float64 {
	t.Helper()
	if units == measure.Metric {
		v, err := strconv.ParseFloat(cell, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	minus := 1.0
	if rest, ok := strings.CutPrefix(cell, "-"); ok {
		minus, cell = -1, rest
	}
	rest, plus := strings.CutSuffix(cell, "+")
	parts := strings.Split(rest, "-")
	if len(parts) != 3 {
		t.Fatalf("the cell %q is not feet-inches-eighths", cell)
	}
	sum := 0.0
	for i, in := range []float64{12, 1, 0.125} {
		v, err := strconv.Atoi(parts[i])
		if err != nil {
			t.Fatal(err)
		}
		sum += float64(v) * in
	}
	if plus {
		sum += 0.0625
	}
	return minus * sum * 25.4
}

// TestOffsetsFloat integrates the printed table alone, by trapezoids over the
// outline that its cells give and by Simpson's rule along the boat, up to the water
// of the trial, and compares with the displacement that the trial reports: 1 %.
func TestOffsetsFloat(t *testing.T) {
	for _, d := range boats(t) {
		for _, units := range []measure.System{measure.Metric, measure.Imperial} {
			f := facts(t, d, units)
			if f.Trial == nil {
				t.Fatalf("%s does not float: %s", d.Title, f.NoTrial)
			}
			all := tables(bookOf(t, f))
			x, area := areas(t, all, units, f.Trial.Rest.Plane.Water)
			got := alongSimpson(x, area) * f.Trial.Options.Water.Density * 1e-9
			want := f.Trial.Rest.Displacement
			t.Logf("%s, %v: %.2f kg, the trial %.2f, %+.2f %%", d.Title, units, got, want, 100*(got/want-1))
			if math.Abs(got/want-1) > 0.01 {
				t.Errorf("%s, %v: the table displaces %.2f kg, the trial %.2f kg", d.Title, units, got, want)
			}
		}
	}
}

// areas reads every station of the table and returns where it stands and what of it
// lies under the water, from the bow to the stern.
func areas(t *testing.T, all map[string]page.Table, units measure.System, water func(x float64) float64) (x, area []float64) {
	t.Helper()
	fore, ok := all["Fore body"]
	if !ok {
		t.Fatal("the book has no table of offsets")
	}
	column := func(tab page.Table, c int) (float64, [][2]float64) {
		at := read(t, tab.Rows[0][c], units)
		var pts [][2]float64 // half-breadth, height
		heights := map[string]float64{}
		for _, row := range tab.Rows[1:] {
			if row[c] == "-" {
				continue
			}
			v := read(t, row[c], units)
			words := strings.Fields(row[0])
			name := strings.Join(words[2:], " ")
			line := 0.0
			if last := words[len(words)-1]; last == "in" {
				n, _ := strconv.ParseFloat(words[len(words)-2], 64)
				line = n * 25.4
			} else {
				line, _ = strconv.ParseFloat(last, 64)
			}
			switch {
			case strings.HasPrefix(row[0], "height of buttock"):
				pts = append(pts, [2]float64{line, v})
			case strings.HasPrefix(row[0], "height of"):
				heights[name] = v
				if name == "keel" {
					pts = append(pts, [2]float64{0, v})
				}
			case strings.HasPrefix(row[0], "half-breadth at waterline"):
				pts = append(pts, [2]float64{v, line})
			case name == "sheer":
			default:
				pts = append(pts, [2]float64{v, heights[name]})
			}
		}
		return at, pts
	}
	for c := 1; c < len(fore.Columns); c++ {
		at, pts := column(fore, c)
		x, area = append(x, at), append(area, under(pts, water(at)))
	}
	if aft, ok := all["After body"]; ok {
		for c := 2; c < len(aft.Columns); c++ {
			at, pts := column(aft, c)
			x, area = append(x, at), append(area, under(pts, water(at)))
		}
		return x, area
	}
	for c := len(fore.Columns) - 2; c >= 1; c-- {
		at, pts := column(fore, c)
		x, area = append(x, -at), append(area, under(pts, water(-at)))
	}
	return x, area
}

// under is the area of a whole section below a height: trapezoids between the
// points of its outline, sorted from the keel up.
func under(pts [][2]float64, water float64) float64 {
	for i := range pts {
		for k := i; k > 0 && (pts[k][1] < pts[k-1][1] || pts[k][1] == pts[k-1][1] && pts[k][0] < pts[k-1][0]); k-- {
			pts[k], pts[k-1] = pts[k-1], pts[k]
		}
	}
	sum := 0.0
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1], pts[i]
		if a[1] >= water {
			break
		}
		if b[1] > water {
			t := (water - a[1]) / (b[1] - a[1])
			b = [2]float64{a[0] + t*(b[0]-a[0]), water}
		}
		sum += (a[0] + b[0]) * (b[1] - a[1])
	}
	return sum
}

// alongSimpson integrates over ten equal steps of which the first and the last are
// halved: Simpson's first rule throughout, the half intervals as one pair each.
func alongSimpson(x, y []float64) float64 {
	n := len(x) - 1
	half := (x[0] - x[1] + x[1] - x[2]) / 2
	simpson := func(h float64, v ...float64) float64 {
		sum := v[0] + v[len(v)-1]
		for i := 1; i < len(v)-1; i++ {
			sum += v[i] * float64(2+2*(i%2))
		}
		return sum * h / 3
	}
	inner := y[2 : n-1]
	return simpson(half, y[0], y[1], y[2]) + simpson((x[2]-x[n-2])/float64(len(inner)-1), inner...) + simpson(half, y[n-2], y[n-1], y[n])
}
