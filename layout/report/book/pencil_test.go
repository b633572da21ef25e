package book

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/layout/report"
)

// TestPencil draws every rib by the printed table of bends, as the words under it say: level
// from the middle line, bend after bend by radius and degrees, straight runs by their ends.
// The head comes to half the printed width and to the printed depth within 2 mm. On the
// blank a bend is as long as its radius times its degrees over 57.3, and longer by no more
// than the words say.
func TestPencil(t *testing.T) {
	run := regexp.MustCompile(`([0-9.]+) to ([0-9.]+)(?: \w+, radius (\d+) and ([0-9.]+) deg)?`)
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	for _, name := range design.ShippedNames() {
		all := tables(sharedBook(t, facts(t, shipped(t, name), measure.Metric)))
		lengths, bends := all["Lengths and widths, mm"], all["Bends, from the middle of the blank, mm"]
		column := func(head string) int {
			for i, c := range lengths.Columns {
				if c.Head == head {
					return i
				}
			}
			t.Fatalf("%s: no column %q", name, head)
			return 0
		}
		wide, deep := column("Width in place"), column("Depth under the gunwales")
		most := number(regexp.MustCompile(`take up to ([0-9.]+) mm more`).FindStringSubmatch(bends.Note)[1])
		if len(bends.Rows) == 0 || len(bends.Rows) != len(lengths.Rows) {
			t.Fatalf("%s: %d rows of bends, %d of lengths", name, len(bends.Rows), len(lengths.Rows))
		}
		for i, row := range bends.Rows {
			var x, y, heading float64
			for _, m := range run.FindAllStringSubmatch(row[1], -1) {
				long := number(m[2]) - number(m[1])
				if m[3] == "" {
					x, y = x+long*math.Cos(heading), y+long*math.Sin(heading)
					continue
				}
				radius, turn := number(m[3]), number(m[4])*math.Pi/180
				// The radius is rounded to a millimeter, the angle to a tenth, both ends to a tenth.
				if more, off := long-radius*number(m[4])/57.3, 0.5*turn+0.05*radius/57.3+0.1; more < -off || more > most+off {
					t.Errorf("%s %s: %q is %.1f mm long", name, row[0], m[0], long)
				}
				x += radius * (math.Sin(heading+turn) - math.Sin(heading))
				y += radius * (math.Cos(heading) - math.Cos(heading+turn))
				heading += turn
			}
			if w, d := number(lengths.Rows[i][wide]), number(lengths.Rows[i][deep]); math.Abs(2*x-w) > 4 || math.Abs(y-d) > 2 {
				t.Errorf("%s %s: drawn %.1f mm wide and %.1f deep, the table has %.0f and %.0f", name, row[0], 2*x, y, w, d)
			}
		}
	}
}

// TestOneTruth: what a builder adds up comes to what the book says to buy: the cords of the
// table of joints, the coats one by one in either system, the sheet's width from the way
// round and what is left on both sides.
func TestOneTruth(t *testing.T) {
	first := regexp.MustCompile(`[0-9.]+`)
	number := func(s string) float64 { v, _ := strconv.ParseFloat(first.FindString(s), 64); return v }
	for _, name := range design.ShippedNames() {
		b := sharedBook(t, facts(t, shipped(t, name), measure.Metric))
		all := tables(b)
		sum := 0.0
		for _, r := range all["Joints of the frame"].Rows {
			if m := regexp.MustCompile(`turns, (\d+) mm of cord`).FindStringSubmatch(r[4]); m != nil {
				each, _ := strconv.ParseFloat(m[1], 64)
				n := number(r[1])
				sum += n * each / 1000
			}
		}
		said := 0.0
		for _, k := range b.Blocks {
			if p, ok := k.(report.Paragraph); ok && strings.HasPrefix(p.Words, "Cord: ") {
				_, after, _ := strings.Cut(p.Words, "lashings of the table take ")
				said = number(after)
			}
		}
		// Where the ends differ, the table has the bow's lashings for both.
		if math.Abs(sum-said) > 0.06 && (shipped(t, name).EndsAlike() || math.Abs(sum-said) > 1) {
			t.Errorf("%s: the lashings of the table make %.2f m, the words say %.1f", name, sum, said)
		}
		figures := map[string]float64{}
		for _, r := range all["The skin in figures"].Rows {
			figures[r[0]] = number(r[1])
		}
		if w := figures["width of the sheet: the girth, and what is left on both sides"]; w == 0 || math.Abs(w-figures["girth: the greatest way round, gunwale top to gunwale top"]-2*figures["cloth left beyond each gunwale, to grip and pull"]) > 1.5 {
			t.Errorf("%s: %v", name, figures)
		}
		for _, units := range []measure.System{measure.Metric, measure.Imperial} {
			all := tables(sharedBook(t, facts(t, shipped(t, name), units)))
			coats, bought := 0.0, 0.0
			for _, r := range all["Coat by coat"].Rows {
				coats += number(r[1])
			}
			for _, r := range all["What to buy for the skin"].Rows {
				if r[0] == "Coating" {
					bought = number(r[2])
				}
			}
			if coats == 0 || math.Abs(coats-bought) > 1e-6 {
				t.Errorf("%s, %v: coats of %.2f, %.2f bought", name, units, coats, bought)
			}
		}
	}
}
