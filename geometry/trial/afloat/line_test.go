package afloat

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/water/float"
)

// steady is a boat with so many aboard that has a little of everything to spare, with
// gear to shift.
func steady(people int) *Report {
	item := func(kg float64) weight.Item { return weight.Item{Name: "It", Loads: []float.Load{{Mass: kg}}} }
	r := &Report{Options: Options{Freeboard: 150}, Boat: aboard.Boat{Gear: []weight.Item{item(10)}}, Load: float.Load{Mass: 110}}
	for range people {
		r.Boat.Crew = append(r.Boat.Crew, item(75))
	}
	r.Rest.Freeboard.Least = 151
	r.Standing = float.Standing{Most: 29, MostAt: 0.4, Held: 37, GoesOver: math.NaN(), Flooding: 35 * math.Pi / 180}
	return r
}

// TestInALine: each thing that is asked for is told of where it is missed by a
// millimeter, and by nothing else. The limits are typed a second time on purpose.
func TestInALine(t *testing.T) {
	trim := func(mm float64) func(*Report) {
		return func(r *Report) { r.Rest.LWL, r.Rest.Trim = 3000, math.Atan(mm/3000) }
	}
	for _, c := range []struct {
		people  int
		change  func(*Report)
		verdict finding.Verdict
		says    string
	}{
		{1, func(*Report) {}, finding.Holds, "it stands, with a greatest righting lever of 29 mm"},
		{1, func(r *Report) { r.Standing.Most = 27.4 }, finding.Missed, "greatest righting lever is 27 mm, and 28 mm is the least"},
		{2, func(r *Report) { r.Standing.Most, r.Standing.Held = 20, 18 }, finding.Holds, "20 mm"},
		{2, func(r *Report) { r.Standing.Most = 19 }, finding.Missed, "is 19 mm, and 20 mm is the least"},
		{1, func(r *Report) { r.Standing.Held = 35 }, finding.Missed, "held 35 mm off the middle line, and 36 mm is the least"},
		{2, func(r *Report) { r.Standing.Held = 17 }, finding.Missed, "and 18 mm is the least"},
		{1, func(r *Report) { r.Standing.GoesOver = 39 * math.Pi / 180 }, finding.Missed, "past 39 deg of heel it goes over by itself"},
		{1, func(r *Report) { r.Standing.GoesOver = 41 * math.Pi / 180 }, finding.Holds, ""},
		{1, func(r *Report) { r.Standing.Flooding = 20 * math.Pi / 180 }, finding.Holds, "water comes in at 20 deg"},
		{1, func(r *Report) { r.Rest.Freeboard.Least = 149 }, finding.Missed, "it stands, but its freeboard is 149 mm, and 150 mm is asked for"},
		{1, trim(26), finding.Missed, "26 mm down by the stern over its waterline, and 25 mm"},
		{1, trim(-26), finding.Missed, "26 mm down by the bow"},
		{1, func(r *Report) { r.Boat.Gear = nil; trim(26)(r) }, finding.Holds, ", 26 mm down by the stern"},
		{1, func(r *Report) { r.Boat.Gear = nil; trim(-26)(r) }, finding.Holds, ", 26 mm down by the bow"},
		{1, trim(0.4), finding.Holds, ", level"},
		{1, func(r *Report) { r.Boat.Gear = nil; trim(46)(r) }, finding.Missed, "and 45 mm is the most"},
		{0, func(*Report) {}, finding.Noted, "nobody is aboard"},
		{1, func(r *Report) { r.Fault = &float.Fault{Outcome: float.Capsizes, Text: "it rolls"} }, finding.Unsafe, "it does not stand: it rolls"},
	} {
		r := steady(c.people)
		c.change(r)
		f := r.InALine()
		if f.Verdict != c.verdict || !strings.Contains(f.Text, c.says) {
			t.Errorf("%v: %q; want %v: %q", f.Verdict, f.Text, c.verdict, c.says)
		}
		if strings.Contains(f.Text, "does not stand as it should") != (f.Cure != "") || strings.Count(f.Text, ";") > 4 {
			t.Errorf("%q with the cure %q", f.Text, f.Cure)
		}
	}
	if f := NoRest(errors.New("it sinks")); f.Verdict != finding.Unsafe || !strings.Contains(f.String(), "no rest on the water: it sinks") {
		t.Errorf("%v", f)
	}
}

// TestLineCures raises the seat until the boat is tender: seats that come down by what the
// line says make it stand, and by a third of it they do not. On the floor nobody comes
// lower.
func TestLineCures(t *testing.T) {
	for _, name := range design.ShippedNames() {
		if f := run(t, shipped(t, name)).InALine(); f.Verdict != finding.Holds {
			t.Errorf("%s: %v", name, f)
		}
	}
	d := shipped(t, "lake")
	d.Seats[0].Height = 255
	f := run(t, d).InALine()
	lower := 0.0
	if n, _ := fmt.Sscanf(f.Cure, "seats some %f mm lower", &lower); n != 1 || f.Verdict.Passes() {
		t.Fatalf("%+v", f)
	}
	for share, stands := range map[float64]bool{1: true, 0.3: false} {
		d.Seats[0].Height = measure.Length(255 - share*lower)
		if f := run(t, d).InALine(); f.Verdict.Passes() != stands {
			t.Errorf("%.1f of %.0f mm lower: %v", share, lower, f)
		}
	}
	d = shipped(t, "brook")
	d.Crew[0].Mass = 110
	if f := run(t, d).InALine(); strings.Contains(f.Cure, "lower") {
		t.Errorf("on the floor: %v", f)
	}
}
