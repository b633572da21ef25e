package afloat

import (
	"math"
	"testing"

	"ribwright/geometry/altered"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/water"
)

// floated floats a design with its people and gear; nil where it cannot be built.
func floated(t *testing.T, d *design.Design) *Report {
	t.Helper()
	f, err := frame.Build(d)
	if err != nil {
		return nil
	}
	b, err := aboard.New(f, d.Crew, d.Gear)
	if err != nil {
		t.Fatal(err)
	}
	in, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		t.Fatal(err)
	}
	r, err := Stands(b, Options{Water: in, Freeboard: 150})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// with gives a design the measure that a change names.
func with(t *testing.T, d *design.Design, c finding.Change) *design.Design {
	t.Helper()
	for _, m := range altered.All() {
		if m.String() == c.Measure {
			out, err := altered.Of(d, altered.Change{Measure: m, To: c.To})
			if err != nil {
				t.Fatalf("%s: %v", c.Says, err)
			}
			return out
		}
	}
	t.Fatalf("%q is no measure", c.Measure)
	return nil
}

// TestMended: boats that do not stand, lie deep or lie on an end are tried again with what
// is said to mend them. Three times at most, and it is as it should be, or there is
// nothing left to do within what may be changed.
func TestMended(t *testing.T) {
	mended := 0
	for _, c := range []struct {
		name    string
		measure altered.Measure
		to      float64
	}{
		{"brook", altered.Beam, 660}, {"brook", altered.SeatHeight, 70}, {"brook", altered.Depth, 250}, {"brook", altered.SeatPlace, 50},
		{"lake", altered.Beam, 690}, {"lake", altered.SeatHeight, 260}, {"lake", altered.Depth, 260},
		{"river", altered.Beam, 740}, {"river", altered.SeatHeight, 260}, {"river", altered.Depth, 270},
	} {
		d, err := design.Shipped(c.name)
		if err != nil {
			t.Fatal(err)
		}
		if d, err = altered.Of(d, altered.Change{Measure: c.measure, To: c.to}); err != nil {
			t.Fatal(err)
		}
		r := floated(t, d)
		line := r.InALine()
		steps := 0
		for ; !line.Verdict.Passes() && line.Mend.IsSet() && steps < 3; steps++ {
			t.Logf("%s, %v %.0f: %s -> %s", c.name, c.measure, c.to, line.Text, line.Mend.Says)
			d = with(t, d, line.Mend)
			next := floated(t, d)
			if next == nil {
				t.Logf("%s: cannot be built so", line.Mend.Says)
				break
			}
			r = next
			line = r.InALine()
		}
		if steps == 3 && !line.Verdict.Passes() {
			t.Errorf("%s, %v %.0f: not mended: %s", c.name, c.measure, c.to, line.Text)
		}
		if steps > 0 && line.Verdict.Passes() {
			mended++
		}
	}
	if mended < 6 {
		t.Errorf("%d boats were mended only", mended)
	}
}

// TestNoMend: a boat with nothing amiss wants no other measure, and a table of offsets has
// none to change.
func TestNoMend(t *testing.T) {
	d, err := design.Shipped("brook")
	if err != nil {
		t.Fatal(err)
	}
	r := floated(t, d)
	for _, f := range append(finding.List{r.InALine()}, r.Findings...) {
		if f.Mend.IsSet() && math.Abs(r.Rest.TrimRise()) < fussy {
			t.Errorf("%s: %s", f.About, f.Mend.Says)
		}
	}
	var none Report
	for _, c := range []finding.Change{none.deeper(), none.leveled(), none.steady()} {
		if c.IsSet() {
			t.Errorf("a table of offsets is to be changed: %s", c.Says)
		}
	}
}
