package book

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/measure"
	"ribwright/geometry/shop/hours"
	"ribwright/layout/report"
)

// TestCautionsByStage: each stage of the work begins with its own caution, and that
// names what hurts there and what helps.
func TestCautionsByStage(t *testing.T) {
	b := sharedBook(t, facts(t, shipped(t, "brook"), measure.Metric))
	cautions := map[string]string{}
	stage := ""
	for _, k := range b.Blocks {
		switch k := k.(type) {
		case report.Heading:
			stage, _, _ = strings.Cut(strings.ToLower(k.Words), ", ")
		case report.Caution:
			cautions[stage] += k.Words + "\n"
		}
	}
	for stage, words := range map[string][]string{
		string(hours.Loft):    {"away from you"},
		string(hours.Saw):     {"dust", "mask", "push sticks", "guard", "too short to hold"},
		string(hours.Gunwale): {"both hands", "Epoxy", "gloves", "half cured"},
		string(hours.Ends):    {"Eye protection", "fingers"},
		string(hours.Setup):   {"springs", "tie every spreader"},
		string(hours.Bend):    {"scalds", "invisible", "never plug", "gauntlets", "carbon monoxide", "outdoors", "boil dry"},
		string(hours.Lash):    {"slip", "away from the other hand"},
		string(hours.Oil):     {"Oily rags", "burn"},
		string(hours.Skin):    {"ventilation"},
		string(hours.Coat):    {"diisocyanates", "never spray", "ventilate", "gloves", "supplied air"},
		"first water":         {"life jacket", "Cold water"},
	} {
		for _, w := range words {
			if !strings.Contains(cautions[stage], w) {
				t.Errorf("no caution of the stage %s says %q: %q", stage, w, cautions[stage])
			}
		}
	}
	for _, w := range []string{"life jacket", "swamped in shallow water", "near help"} {
		found := false
		for s, c := range cautions {
			found = found || s != "first water" && strings.Contains(c, w)
		}
		if !found {
			t.Errorf("on the water no caution says %q", w)
		}
	}
}

// TestReadFirst: the first sheet says what a book of figures cannot promise.
func TestReadFirst(t *testing.T) {
	b := sharedBook(t, facts(t, shipped(t, "lake"), measure.Metric))
	first := ""
	for _, k := range b.Blocks {
		if l, ok := k.(report.List); ok && first == "" {
			first = strings.Join(l.Items, "\n")
		}
	}
	for _, w := range []string{"no line that may be cut by", "is an estimate", "Nothing here certifies a boat.", "Local law", "licensed advice come first"} {
		if !strings.Contains(first, w) {
			t.Errorf("the first list does not say %q: %q", w, first)
		}
	}
}

// TestBothSystemsAgree: what the book in inches and pounds says is what the one in
// millimeters and kilograms says, to the last figure that either prints. An inch is
// 25.4 mm and a pound 0.45359237 kg, both by law.
func TestBothSystemsAgree(t *testing.T) {
	metric, imperial := tables(sharedBook(t, facts(t, shipped(t, "river"), measure.Metric))), tables(sharedBook(t, facts(t, shipped(t, "river"), measure.Imperial)))
	figures := 0
	for title, m := range metric {
		i, ok := imperial[strings.TrimSuffix(title, "mm")+"in"]
		if !ok {
			if i, ok = imperial[strings.TrimSuffix(title, "mm")+"in (mm)"]; !ok {
				if i, ok = imperial[title]; !ok {
					continue
				}
			}
		}
		if title == "" || len(m.Rows) != len(i.Rows) || strings.HasPrefix(title, "Offsets") {
			continue
		}
		for r := range m.Rows {
			for c := range m.Rows[r] {
				mm, inch := m.Rows[r][c], i.Rows[r][c]
				if kg, lb, ok := masses(mm, inch); ok {
					figures++
					if math.Abs(lb*0.45359237-kg) > 0.05+0.05*0.4536 {
						t.Errorf("%s: %s and %s are not one mass", title, mm, inch)
					}
					continue
				}
				if !strings.HasSuffix(title, "mm") || mm == inch {
					continue
				}
				a, errA := strconv.ParseFloat(mm, 64)
				b, errB := measure.ParseLength(inches(inch))
				if errA != nil || errB != nil {
					continue
				}
				figures++
				if most := agree(title, m.Columns[c].Head, mm); math.Abs(a-float64(b)) > most && !strings.HasPrefix(m.Columns[c].Head, "For ") && m.Columns[c].Head != "Liters" {
					t.Errorf("%s, %s: %s mm and %s in are not one length", title, m.Columns[c].Head, mm, inch)
				}
			}
		}
	}
	if figures < 500 {
		t.Errorf("only %d figures were compared", figures)
	}
}

// agree is how far two figures of a column may be off for the last step of both: tenths
// of a mm, or whole mm where the cell has no tenths, and sixteenths of an inch; what is
// bent by hand stands in 5 mm and quarters.
func agree(title, head, mm string) float64 {
	if strings.HasSuffix(head, "%") { // held hot, by springback
		head = "Held hot"
	}
	if title == "Sticks, mm" && head == "Length" { // rounded up in mm alone
		return 1 + 25.4/32
	}
	switch head {
	case "Held hot", "Relax to, before pegging", "Free width", "Begins", "Ends":
		return 2.5 + 25.4/8
	}
	if !strings.Contains(mm, ".") {
		return 0.5 + 25.4/32
	}
	return 25.4/32 + 0.051
}

// masses reads a mass that stands in kilograms in one book and pounds in the other.
func masses(kg, lb string) (a, b float64, ok bool) {
	k, metric := strings.CutSuffix(kg, " kg")
	l, imperial := strings.CutSuffix(lb, " lb")
	a, errA := strconv.ParseFloat(k, 64)
	b, errB := strconv.ParseFloat(l, 64)
	return a, b, metric && imperial && errA == nil && errB == nil
}

// inches makes a cell's inches, with the mm that may stand behind them, a length to
// read.
func inches(cell string) string {
	cell, _, _ = strings.Cut(cell, " (")
	return strings.TrimSuffix(cell, " in") + " in"
}

// corrected returns the column of the table of corrections that stands under a head.
func corrected(t *testing.T, b report.Report, head string) []string {
	t.Helper()
	for _, k := range b.Blocks {
		table, ok := k.(report.Table)
		if !ok {
			continue
		}
		for c, col := range table.Columns {
			if col.Head == head {
				var out []string
				for _, r := range table.Rows {
					out = append(out, r[c])
				}
				return out
			}
		}
	}
	t.Fatalf("no column is headed %q", head)
	return nil
}

// TestCorrectionsAgree: a rib is longer for half an inch of beam by 1.27 times as
// much as for 10 mm, and so for depth.
func TestCorrectionsAgree(t *testing.T) {
	d := shipped(t, "river")
	metric, imperial := sharedBook(t, facts(t, d, measure.Metric)), sharedBook(t, facts(t, d, measure.Imperial))
	for _, what := range []string{"beam", "depth"} {
		mm, in := corrected(t, metric, "For 10 mm more "+what), corrected(t, imperial, "For 1/2 in more "+what)
		for i := range mm {
			a, err := strconv.ParseFloat(strings.TrimPrefix(mm[i], "+"), 64)
			if err != nil {
				t.Fatal(err)
			}
			b, err := measure.ParseLength(strings.TrimPrefix(in[i], "+") + " in")
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(1.27*a-float64(b)) > 25.4/32+0.07 {
				t.Errorf("rib %d, %s: %s mm for 10 mm, %s in for half an inch", i, what, mm[i], in[i])
			}
		}
	}
}

// TestBilgeMarksAsTold: bilge marks that lie out by what the table or its note tells move
// the heads by no more than the beam that the note allows (to a twentieth of a millimeter of
// the marks), and a millimeter more moves them by more. The ribs of lake share one figure, those of brook with plumber ends do not.
func TestBilgeMarksAsTold(t *testing.T) {
	for name, column := range map[string]bool{"lake": false, "brook": true} {
		d := shipped(t, name)
		if column {
			d.Hull.Sections[1].Flare = 2.5 * math.Pi / 180
		}
		f := facts(t, d, measure.Metric)
		table := tables(sharedBook(t, f))["Lengths and widths, mm"]
		last := len(table.Columns) - 1
		if (table.Columns[last].Head == "Bilge marks may be off") != column {
			t.Errorf("%s: the last column is headed %q", name, table.Columns[last].Head)
			continue
		}
		var allowed, slack float64
		_, note, found := strings.Cut(table.Note, "leaves the beam within ")
		if _, err := fmt.Sscanf(note, "%f mm (3/16 in)", &allowed); !found || err != nil {
			t.Fatalf("%q: %v", table.Note, err)
		}
		for _, r := range f.Frame.Ribs {
			words := rowOf(t, table, r.Name)[last]
			if !column {
				_, words, _ = strings.Cut(table.Note, "Bilge marks may lie ")
			}
			if _, err := fmt.Sscanf(words, "%f", &slack); err != nil {
				t.Fatalf("%q: %v", words, err)
			}
			tight, at, from := -1, 0.0, 0.0
			for k, b := range r.Section.Half {
				if b.Radius > 0 && (tight < 0 || b.Radius < r.Section.Half[tight].Radius) {
					tight, from = k, at
				}
				at += b.Length
			}
			// Walk the half rib with that bend moved out: the head moves by what the
			// straight before it gains and the one after it loses.
			_, a := r.Section.Half.At(from)
			_, b := r.Section.Half.At(from + r.Section.Half[tight].Length)
			each := 2 * (math.Cos(a) - math.Cos(b))
			if (slack-0.05)*each > allowed || (slack+1)*each < allowed {
				t.Errorf("rib %s: marks out by %.0f mm move the beam %.2f mm, told %.0f", r.Name, slack, slack*each, allowed)
			}
		}
	}
}

// TestSharesOfMoney: what each price may be off by is told in per cent of the table's
// share, and the sum may be off by what the lines make.
func TestSharesOfMoney(t *testing.T) {
	f := facts(t, shipped(t, "brook"), measure.Metric)
	all := 0.0
	for i, cell := range corrected(t, sharedBook(t, f), "Off by") {
		var percent float64
		if _, err := fmt.Sscanf(cell, "%f %%", &percent); err != nil {
			t.Fatal(err)
		}
		all += percent / 100 * f.Cost.Lines[i].Likely
		if l := f.Cost.Lines[i]; math.Abs(percent-100*l.Spread) > 0.5 {
			t.Errorf("%s: %s, the table has %.2f", l.Name, cell, l.Spread)
		}
	}
	if math.Abs(all-f.Cost.OffAll) > 0.005*f.Cost.Likely {
		t.Errorf("the lines may be off by %.1f together, the estimate has %.1f", all, f.Cost.OffAll)
	}
}

// TestWoodNote: the sticks' litres and kilograms make a density between those of the
// boat's woods.
func TestWoodNote(t *testing.T) {
	for _, name := range []string{"brook", "lake", "river"} {
		f := facts(t, shipped(t, name), measure.Metric)
		var litres, kg float64
		note := tables(sharedBook(t, f))["Sticks, mm"].Note
		if _, err := fmt.Sscanf(note, "In the finished boat these sticks are %f liters of wood, %f kg", &litres, &kg); err != nil {
			t.Fatalf("%q: %v", note, err)
		}
		low, high := math.Inf(1), 0.0
		for _, s := range f.Plan.Sticks {
			w, err := f.Frame.Design.Wood(s.Species)
			if err != nil {
				t.Fatal(err)
			}
			low, high = math.Min(low, w.Density/1000), math.Max(high, w.Density/1000)
		}
		if k := kg / litres; k <= low || k >= high {
			t.Errorf("%s: %.3f kg a litre, its woods have %.3f to %.3f", name, k, low, high)
		}
	}
}

// TestMetersAndFeet: wherever running words give metres with feet behind, square
// metres with square feet, or grams with ounces, both say the same. A foot is 0.3048
// m; an ounce to the square yard 33.906 g to the square metre.
func TestMetersAndFeet(t *testing.T) {
	b := sharedBook(t, facts(t, shipped(t, "river"), measure.Metric))
	words := ""
	for _, k := range b.Blocks {
		switch k := k.(type) {
		case report.Paragraph:
			words += k.Words + "\n"
		case report.Table:
			for _, r := range k.Rows {
				words += strings.Join(r, " ") + "\n"
			}
		}
	}
	for form, unit := range map[string]float64{`([0-9.]+) m \(([0-9.]+) ft\)`: 0.3048, `([0-9.]+) m2 \(([0-9.]+) sq ft\)`: 0.3048 * 0.3048, `([0-9.]+) g/m2 \(([0-9.]+) oz/yd2\)`: 33.906} {
		found := regexp.MustCompile(form).FindAllStringSubmatch(words, -1)
		if len(found) == 0 {
			t.Errorf("nothing reads %s", form)
		}
		for _, m := range found {
			a, errA := strconv.ParseFloat(m[1], 64)
			c, errB := strconv.ParseFloat(m[2], 64)
			if errA != nil || errB != nil || math.Abs(c*unit/a-1) > 0.012 {
				t.Errorf("%q", m[0])
			}
		}
	}
}
