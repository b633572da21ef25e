package book

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/measure"
	"ribwright/layout/report"
)

// inInches is all that the book of a boat says in feet and pounds.
func inInches(t *testing.T, name string) string {
	return fmt.Sprint(sharedBook(t, facts(t, shipped(t, name), measure.Imperial)).In(measure.Imperial).Blocks)
}

// both finds inches with their millimeters behind them, in running words and in the cells of tables.
var both = regexp.MustCompile(`(?:^|[^-\w./'])(-?\d+(?: \d+/\d+|/\d+|\.\d+)?)(?: in)? \((-?\d+(?:\.\d)?)(?: mm)?\)`)

// fine is how far inches may be from the size that they stand for, mm: to half a thousandth what
// has one, to half a 64th (a drill) what else calipers measure to the tenth of a millimeter, to
// half a sixteenth the rest.
func fine(inches, mm string) float64 {
	v, _ := strconv.ParseFloat(mm, 64)
	switch {
	case strings.Contains(inches, "."):
		return 25.4 / 2000
	case strings.Contains(mm, ".") && math.Abs(v) < 50.8:
		return 25.4 / 128
	}
	return 25.4 / 32
}

// TestInchesAsFineAsMillimeters: wherever both stand side by side they are one size, as finely as
// the inches are given; sizes with tenths of a millimeter that differ never share a number of inches,
// as far as calipers are used; and nothing that is something reads 0.
func TestInchesAsFineAsMillimeters(t *testing.T) {
	for _, name := range []string{"brook", "lake", "river"} {
		seen, count := map[string]float64{}, 0
		for _, m := range both.FindAllStringSubmatch(inInches(t, name), -1) {
			l, errA := measure.ParseLength(m[1] + " in")
			mm, errB := strconv.ParseFloat(m[2], 64)
			if errA != nil || errB != nil {
				t.Fatalf("%q: %v, %v", m[0], errA, errB)
			}
			count++
			rounded := 0.5
			if strings.Contains(m[2], ".") {
				rounded = 0.051
			}
			if off := math.Abs(float64(l) - mm); off > fine(m[1], m[2])+rounded {
				t.Errorf("%s: %q are %.2f mm apart", name, m[0], off)
			}
			if m[1] == "0" && mm != 0 {
				t.Errorf("%s: %q says nothing of what is something", name, m[0])
			}
			if !strings.Contains(m[2], ".") || math.Abs(mm) >= 50.8 {
				continue
			}
			if had, ok := seen[m[1]]; ok && math.Abs(had-mm) > 2*fine(m[1], m[2]) {
				t.Errorf("%s: %s in stands for %.1f and %.1f mm", name, m[1], had, mm)
			}
			seen[m[1]] = mm
		}
		if count < 300 || len(seen) < 30 {
			t.Errorf("%s: only %d pairs, %d sizes were read", name, count, len(seen))
		}
	}
}

// named is the row whose first cell has these words.
func named(t *testing.T, table report.Table, words string) []string {
	for _, r := range table.Rows {
		if strings.Contains(r[0], words) {
			return r
		}
	}
	t.Fatalf("%q has no row of %s", table.Title, words)
	return nil
}

// TestBoughtAlike: cloth and coating are one amount where they are asked for and where they are
// priced; cloth comes in quarters of a yard that are no less than the meters of the other book.
func TestBoughtAlike(t *testing.T) {
	for _, name := range []string{"brook", "lake", "river"} {
		f := facts(t, shipped(t, name), measure.Imperial)
		all := tables(sharedBook(t, f))
		skin, shop := all["What to buy for the skin"], all["What to buy"]
		cloth := named(t, skin, " cloth")[2]
		priced := named(t, shop, "cloth for the skin")
		if got := priced[1] + " " + priced[2]; got != cloth || !strings.Contains(priced[3], cloth) {
			t.Errorf("%s: cloth %q, %q, %q", name, cloth, got, priced[3])
		}
		yards, _ := strconv.ParseFloat(priced[1], 64)
		if least := f.Needs.Cloth.OffRoll() / 914.4; yards < least-1e-9 || yards > least+0.25 || math.Mod(4*yards, 1) != 0 {
			t.Errorf("%s: %g yd for %g", name, yards, least)
		}
		coat, liquid := named(t, skin, "Coating")[2], named(t, shop, "coating of the skin")
		if strings.Fields(coat)[0] != liquid[1] || liquid[2] != "quarts" {
			t.Errorf("%s: coating %q, %q", name, coat, liquid)
		}
		// What one costs, times how many, is the cost, but for what is rounded up to buy.
		for _, r := range shop.Rows {
			n, _ := strconv.ParseFloat(r[1], 64)
			each, err := strconv.ParseFloat(r[4], 64)
			sum, _ := strconv.ParseFloat(r[5], 64)
			if err == nil && math.Abs(n*each-sum) > 0.5+0.005*n+each {
				t.Errorf("%s: %v: %g times %g is not %g", name, r[0], n, each, sum)
			}
		}
	}
}

// TestHoursAsPrinted: count times minutes, times the builder's factor, are the hours of each line.
func TestHoursAsPrinted(t *testing.T) {
	for _, units := range []measure.System{measure.Metric, measure.Imperial} {
		f := facts(t, shipped(t, "river"), units)
		rows := 0
		for _, b := range sharedBook(t, f).In(units).Blocks {
			words := fmt.Sprintf("%T", b)
			table, ok := tableOf(b)
			if !ok || len(table.Columns) != 6 || table.Columns[5].Head != "Hours" {
				continue
			}
			for _, r := range table.Rows {
				n, _ := strconv.ParseFloat(r[2], 64)
				each, _ := strconv.ParseFloat(r[4], 64)
				sum, _ := strconv.ParseFloat(r[5], 64)
				if off := math.Abs(n*each*f.Skill.Factor()/60 - sum); off > 0.051+0.03*sum {
					t.Errorf("%s %s: %v is off by %.2f h", units, words, r, off)
				}
				if units == measure.Imperial && (strings.HasPrefix(r[3], "m ") || r[3] == "m" || strings.HasPrefix(r[3], "m2") || r[3] == "in") {
					t.Errorf("counted in %s: %v", r[3], r)
				}
				rows++
			}
		}
		if rows < 20 {
			t.Errorf("%s: only %d lines", units, rows)
		}
	}
}

// TestScrewsGoThrough: a hole for a screw's shank is no narrower than the screw when the drill is
// chosen in inches: 3.51, 3.84 and 4.17 mm for No. 6, 7 and 8 (NDS 2018, appendix L).
func TestScrewsGoThrough(t *testing.T) {
	for shank, hole := range map[float64]float64{3.51: 4, 3.84: 4, 4.17: 4.5, 3.5: 3.5, 5: 6, 6: 6.4} {
		words, _, _ := strings.Cut(measure.Imperial.Drill(hole), " (")
		if l, err := measure.ParseLength(words); err != nil || float64(l) < shank {
			t.Errorf("%s for %g mm", words, shank)
		}
	}
}

func tableOf(b report.Block) (report.Table, bool) {
	t, ok := b.(report.Table)
	return t, ok
}
