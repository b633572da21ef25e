package trial

import (
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

// TestHowTrue: every measure and every error is told of once, lengths in whole
// millimeters or sixteenths, and springback comes with what to do about it.
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

// TestWithin letters spreads no finer than a millimeter or a sixteenth.
func TestWithin(t *testing.T) {
	mm, in := report.Letters{}, report.Letters{Units: measure.Imperial}
	for _, c := range []struct{ got, want string }{
		{within(0.3, mm), "under 1"}, {within(53.6, mm), "54"}, {within(1.2, in), "under 1/16"}, {within(12.7, in), "1/2"},
		{usual(handwork.Error{Unit: "mm"}, 0.2, mm), "0.2 mm"}, {usual(handwork.Error{Unit: "mm"}, 5, in), "0.20 in"},
		{usual(handwork.Error{Unit: "points"}, 1, mm), "1 point"}, {usual(handwork.Error{Unit: "points"}, 1.8, in), "1.8 points"},
		{usual(handwork.Error{Unit: "%"}, 10, mm), "10 %"},
		{named(handwork.Error{Name: "spreaders", Placed: true}, mm), "spreaders at midship"},
		{named(handwork.Error{Name: "spreaders", Placed: true, From: 900}, mm), "spreaders 900 mm from midship"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
