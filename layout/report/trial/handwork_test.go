package trial

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/balance"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/handwork"
	"ribwright/layout/report"
)

func hands(t *testing.T, name string, change func(*design.Design)) *handwork.Report {
	t.Helper()
	f := frametest.Shipped(t, name, change)
	b, err := balance.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	carried, err := aboard.New(f, f.Design.Crew, f.Design.Gear)
	if err != nil {
		t.Fatal(err)
	}
	r, err := handwork.Of(b, &carried)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestHowTrue: every measure and every error is told of, the ten worst in rows by their
// rank, lengths in whole millimeters or sixteenths, and springback comes with what to do
// about it.
func TestHowTrue(t *testing.T) {
	r := hands(t, "lake", nil)
	b, err := bend.Of(r.Frame)
	if err != nil {
		t.Fatal(err)
	}
	for _, units := range []measure.System{measure.Metric, measure.Imperial} {
		l := report.Letters{Units: units}
		blocks := HowTrue(r, b, l)
		said := words(blocks)
		if want := "opens the free rib M by " + l.Point(b.Ribs[b.TestRib()].Point); !strings.Contains(said, want) {
			t.Errorf("%q is not told of", want)
		}
		for _, o := range r.Outcomes {
			if !strings.Contains(said, o.Name) {
				t.Errorf("%s is not told of", o.Name)
			}
		}
		for _, e := range r.Errors {
			if !strings.Contains(said, named(e, l)) {
				t.Errorf("%s is not told of", named(e, l))
			}
		}
		for _, b := range blocks {
			table, is := b.(report.Table)
			if !is {
				continue
			}
			if table.Columns[0].Head == "Rank" {
				tenRows(t, table, r, l)
				continue
			}
			for _, row := range table.Rows {
				if strings.Contains(row[1], ".") && units == measure.Metric && !strings.HasSuffix(row[1], "mm") {
					t.Errorf("%s: %s is finer than is known", row[0], row[1])
				}
			}
		}
		if units == measure.Imperial && strings.Contains(said, " mm") {
			t.Errorf("millimeters in inches: %s", said)
		}
	}
}

// tenRows holds a table to the ten worst errors and to what each moves.
func tenRows(t *testing.T, table report.Table, r *handwork.Report, l report.Letters) {
	t.Helper()
	if len(table.Rows) != 10 || len(table.Columns) != 9 {
		t.Fatalf("%d rows of %d columns, want 10 of 9", len(table.Rows), len(table.Columns))
	}
	for i, row := range table.Rows {
		e := r.Errors[i]
		want := []string{strconv.Itoa(i + 1), named(e, l), usual(e, l)}
		// One standard deviation of what nine in ten lie within 1.645 of.
		for _, at := range [][]int{{0, 1}, {2}, {3, 4}, {5}, {6}, {7}} {
			far := 0.0
			for _, k := range at {
				far = math.Max(far, e.Moves[k].First/1.645)
			}
			want = append(want, moved(far, l))
		}
		if !slices.Equal(row, want) {
			t.Errorf("row %d says %q, want %q", i+1, row, want)
		}
	}
}

// TestWhatMatters: the words draw the line where errors cease to matter.
func TestWhatMatters(t *testing.T) {
	r, l := hands(t, "river", nil), report.Letters{}
	n := 0
	for _, e := range r.Errors {
		worst := 0.0
		for k, o := range r.Outcomes {
			worst = math.Max(worst, e.Moves[k].First/o.Matters)
		}
		if worst >= 0.2 { // a fifth
			n++
		}
	}
	if n == 0 || n >= 10 {
		t.Fatalf("%d errors matter; the test wants a boat where some of ten do not", n)
	}
	matter, all := slices.Clone(r.Errors[:n]), slices.Clone(r.Errors)
	for _, c := range []struct {
		errors     []handwork.Error
		want, last string
	}{
		{all, "down to rank " + strconv.Itoa(n) + " matter", "These do less still: " + named(all[10], l)},
		{matter, "All of these matter", "our own choice)."},
		{all[n:10], "No error matters much", "our own choice)."},
	} {
		r.Errors = c.errors
		if said := whatMatters(r, l); !strings.Contains(said, c.want) || !strings.Contains(said, c.last) || strings.Contains(said, "still") != (len(c.errors) > 10) {
			t.Errorf("%d errors: %s", len(c.errors), said)
		}
	}
}

// TestWithin letters spreads no finer than a millimeter or a sixteenth.
func TestWithin(t *testing.T) {
	off := func(unit string, first float64) handwork.Error {
		return handwork.Error{Unit: unit, Usual: handwork.Spread{First: first}}
	}
	mm, in := report.Letters{}, report.Letters{Units: measure.Imperial}
	for _, c := range []struct{ got, want string }{
		{within(0.3, mm), "under 1"}, {within(53.6, mm), "54"}, {within(1.2, in), "under 1/16"}, {within(12.7, in), "1/2"},
		{moved(0.99, mm), "-"}, {moved(1, mm), "1"}, {moved(1.5, in), "-"}, {moved(1.6, in), "1/16"},
		{usual(off("mm", 0.2), mm), "0.2 mm"}, {usual(off("mm", 5), in), "0.20 in"},
		{usual(off("points", 1), mm), "1 point"}, {usual(off("points", 1.8), in), "1.8 points"},
		{usual(off("%", 10), mm), "10 %"},
		{named(handwork.Error{Name: "spreaders", Placed: true}, mm), "spreaders at midship"},
		{named(handwork.Error{Name: "spreaders", Placed: true, From: 900}, mm), "spreaders 900 mm from midship"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
