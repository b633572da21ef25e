package book

import (
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/course"
	"ribwright/layout/report"
)

// TestWaitsAsTold: a course plan waits as long as the steps of each builder's own book say in
// words: overnight is 12 hours, a day 24, some days 72, a week 168.
func TestWaitsAsTold(t *testing.T) {
	f := facts(t, shipped(t, "brook"), measure.Metric)
	w := &writer{Facts: f, Letters: report.Letters{Units: f.Units}}
	dry, waits := map[string]string{}, map[[2]string]float64{}
	for _, s := range w.steps() {
		dry[s.name] = s.dry
	}
	for _, o := range course.Of(f.Bend, f.Needs, f.Work, f.Skill) {
		for _, a := range o.After {
			waits[[2]string{a.Name, o.Name}] = a.Hours
		}
	}
	for _, c := range []struct {
		step, words, before, then string
		hours                     float64
	}{
		{"gunwales", "glue overnight before the clamps come off", "glue the gunwales", "mortise the gunwales and cut their ends", 12},
		{"gunwales", "overnight before the clamps come off, a day more before anything is bent", "glue the gunwales", "set up the gunwales", 36},
		{"setting up", "glue of the breasthooks overnight", "set up the gunwales", "steam and bend the first rib", 12},
		{"ribs", "some days before the skin", "steam and bend the ribs", "stretch and sew the skin", 72},
		{"ribs", "glue of rib heads overnight", "fit, true and peg the ribs", "fit keel and stringers", 12},
		{"smoothing and oiling", "a day for each coat", "oil the frame, coat 1", "oil the frame, coat 2", 24},
		{"smoothing and oiling", "a day for each coat", "oil the frame, coat 2", "stretch and sew the skin", 24},
		{"coating", "hours between coats", "brush on coat 1", "brush on coat 2", 4},
		{"coating", "a week before the water", "brush on coat 3", "weigh, float, load and swamp the boat", 168},
		{"outside the skin", "a day before the water", "fit out the boat", "weigh, float, load and swamp the boat", 24},
	} {
		if got, there := waits[[2]string{c.before, c.then}]; !there || got != c.hours || !strings.Contains(dry[c.step], c.words) {
			t.Errorf("%s: %q, want %q; %s waits %g h after %s, want %g", c.step, dry[c.step], c.words, c.then, got, c.before, c.hours)
		}
	}
}

// TestMarkedWhereMeasured: the blanks are marked by what is measured while the frame is set up, by
// hand and on forms, so a course marks no rib before.
func TestMarkedWhereMeasured(t *testing.T) {
	for _, method := range []design.Method{design.InPlace, design.OnForms} {
		d := shipped(t, "brook")
		d.Bending.Method = method
		f := facts(t, d, measure.Metric)
		do := steps(sharedBook(t, f))
		inOrder(t, do["Setting up"], "each rib's corrected length: the blanks are marked by it")
		inOrder(t, do["Ribs"], "Mark the blanks from", "with the corrections")
		ends := map[string]float64{}
		p, err := course.Make([]course.Builder{{Name: "Ann", Work: course.Of(f.Bend, f.Needs, f.Work, f.Skill)}}, course.Terms{HoursADay: 7})
		if err != nil {
			t.Fatal(err)
		}
		for _, k := range p.Tasks {
			ends[k.Name] = float64(k.To.Day)*24 + k.To.Hour
			if began := float64(k.From.Day)*24 + k.From.Hour; k.Name == "mark and ready the ribs" && (ends["set up the gunwales"] == 0 || began < ends["set up the gunwales"]) {
				t.Errorf("%v: ribs are marked at %g h, and the gunwales set up at %g h", method, began, ends["set up the gunwales"])
			}
		}
		if ends["mark and ready the ribs"] == 0 {
			t.Error("no rib is marked")
		}
	}
}
