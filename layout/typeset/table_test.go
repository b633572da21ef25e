package typeset

import (
	"math"
	"testing"

	"ribwright/layout/report"
)

// TestRowsOffTheRule: no letter of a table stands nearer than half its height under a
// rule, nor on one; our own choice, measured on what is set.
func TestRowsOffTheRule(t *testing.T) {
	table := report.Titled("Mortises, mm").Names("Rib").Numbers("From midship").Filled("M", "0.0", "F1", "140.0")
	doc, err := Lay(report.Report{Blocks: []report.Block{table}}, letter(t))
	if err != nil {
		t.Fatal(err)
	}
	s, heads := doc.Sheets[0], 0
	for _, x := range s.Texts {
		if x.Words != "M" && x.Words != "0.0" {
			continue
		}
		heads++
		for _, l := range s.Strokes {
			y := l.Path.Bounds().Center().Y
			if over := y - x.At.Y - x.Height; over > -x.Height && over < x.Height/2 {
				t.Errorf("a rule lies %.2f mm over %q, whose letters are %.1f mm high", over, x.Words, x.Height)
			}
		}
	}
	if heads != 2 {
		t.Fatalf("%d cells of the first row found", heads)
	}
}

// TestColumnsShare: of two columns of words that are too wide together neither becomes a
// sliver: each keeps near the share that the root of its words asks for.
func TestColumnsShare(t *testing.T) {
	table := report.Titled("").Words("What", "How").Filled(
		"bolts with hexagon heads, plain nuts and washers of 24 mm across, that do not rust", "two for each hanger",
		"lashing cord", "261 crossings, 12 lashings at the ends, a tenth to spare; 12 lashings of floor slats; 20 lashings of floor slats; to lace 2 float bags; to tuck the coiled painters under")
	room := tableRoom(120)
	wide, ok := table.Widths(room)
	if !ok {
		t.Fatal("the table does not fit")
	}
	root := func(words ...string) float64 {
		sum := 0.0
		for _, w := range words {
			sum += room.Of(w)
		}
		return math.Sqrt(sum)
	}
	what, how := root("What", table.Rows[0][0], table.Rows[1][0]), root("How", table.Rows[0][1], table.Rows[1][1])
	if want := (120 - gutter) * what / (what + how); math.Abs(wide[0]-want) > 2 {
		t.Errorf("the names have %.1f mm of 120, their share is %.1f", wide[0], want)
	}
}
