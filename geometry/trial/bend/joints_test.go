package bend

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/wood/timber"
)

// about returns the findings whose name has the words.
func about(r *Report, words string) finding.List {
	var out finding.List
	for _, f := range r.Findings {
		if strings.Contains(f.About, words) {
			out = append(out, f)
		}
	}
	return out
}

// TestJointsOfShipped: every joint of the shipped boats bears its load, and each kind is
// told once.
func TestJointsOfShipped(t *testing.T) {
	for _, name := range design.ShippedNames() {
		r := report(t, name, nil)
		for _, kind := range []string{"keel to stem", "stringers to stem", "gunwales to stem", "breasthook to", "rib heads", "heads of the end ribs", "end rib to keel", "cross pieces to"} {
			fs := about(r, kind)
			if len(fs) != 1 || fs[0].Verdict != finding.Holds || !(fs[0].Value > 0 && fs[0].Value <= fs[0].Limit) || fs[0].Unit != "N" {
				t.Errorf("%s, %s: %+v", name, kind, fs)
			}
		}
	}
}

// TestLoadsOfJoints: a foot takes the thrust that the edge-set puts along the keel, an
// end rib's head half of its pull; without an edge-set neither does.
func TestLoadsOfJoints(t *testing.T) {
	r := report(t, "river", nil)
	e := r.EdgeSet
	near(t, "along the keel", about(r, "keel to stem")[0].Value, math.Max(e.Free.Thrust, e.Usual.Thrust), 1e-9)
	near(t, "an end rib's head", about(r, "heads of the end ribs")[0].Value, math.Max(e.Free.Pull, e.Usual.Pull)/2, 1e-9)
	near(t, "an end rib on the keel", about(r, "end rib to keel")[0].Value, math.Max(e.Free.Pull, e.Usual.Pull), 1e-9)
	flat := report(t, "river", func(d *design.Design) { d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = 0, 0 })
	if fs := append(about(flat, "end rib"), about(flat, "heads of the end ribs")...); len(fs) != 0 {
		t.Errorf("without an edge-set: %+v", fs)
	}
	near(t, "a usual load along the keel", about(flat, "keel to stem")[0].Value, 100, 0)
}

// TestBears: a joint that bears less than its load is too weak and has its cure; without
// a joint nothing is said.
func TestBears(t *testing.T) {
	r := &Report{}
	r.bears("x", joint.One(2, 1), "cure")
	r.bears("x", joint.Scarcest{}, "cure")
	if len(r.Findings) != 1 || r.Findings[0].Verdict != finding.Weak || r.Findings[0].Cure != "cure" {
		t.Errorf("%+v", r.Findings)
	}
}

// TestKnocked: a stem of a known beam. The toe lies at 0, the gunwales at 400 mm, the
// waterline at 100: the moment there is 1000 x 100 x 300/400 = 75 000 N mm, on 20 x 60 mm
// a stress of 6.25 N/mm2. The edge rises upright. Grain along it bears all of ash, at 45
// degrees 10.1 by Hankinson on the cautious side (103 and 6.48 N/mm2); plywood's plies
// along the edge three fifths.
func TestKnocked(t *testing.T) {
	ash, err := timber.Lookup("white ash")
	if err != nil {
		t.Fatal(err)
	}
	d := *report(t, "brook", nil).Frame.Design
	for _, c := range []struct {
		stems string
		grain float64
		limit float64
		want  finding.Verdict
	}{
		{design.StemsSolid, math.Pi / 2, 103, finding.Holds},
		{design.StemsSolid, math.Pi/2 - math.Atan(1.0/8), 61.2, finding.Caution},
		{design.StemsSolid, math.Pi / 4, 10.25, finding.Caution},
		{design.StemsSolid, 0, 6.48, finding.Caution},
		{design.StemsPlywood, math.Pi / 2, 0.6 * 103, finding.Holds},
		{design.StemsPlywood, math.Pi / 4, 0.2 * 103, finding.Holds},
		{design.StemsLaminated, 0, 103, finding.Holds},
	} {
		d.Bow.Made = c.stems
		r := &Report{Frame: &frame.Frame{Design: &d}}
		e := stemEnd{name: "stem", stem: frame.Stem{Thickness: 20, Moulded: 60, Grain: c.grain, Waterline: 100}, hull: hull.End{GunwaleZ: 400, Heading: math.Pi / 2, Outer: curve.Chain{curve.Straight(500)}}}
		r.knocked(e, ash)
		f := r.Findings[0]
		near(t, "stress", f.Value, 6.25, 1e-9)
		near(t, "limit", f.Limit, c.limit, 0.05)
		if f.Verdict != c.want {
			t.Errorf("%s, grain at %.2f: %s, want %s", c.stems, c.grain, f.Verdict, c.want)
		}
	}
	// A straight piece is not pulled open; on a radius of 100 mm at mid-depth 75 000 N mm
	// pull 1.5 x 75 000/(100 x 20 x 60) = 0.94 N/mm2 apart, of 6.48/3.
	d.Bow.Made = design.StemsLaminated
	r := &Report{Frame: &frame.Frame{Design: &d}}
	r.knocked(stemEnd{stem: frame.Stem{Thickness: 20, Moulded: 60, Waterline: 65}, hull: hull.End{GunwaleZ: 130, Outer: curve.Chain{curve.Turned(130, math.Pi/2)}}}, ash)
	f := r.Findings[0]
	near(t, "radial tension", f.Value, 1.5*1000*65.0/2/(100*20*60), 0.005)
	near(t, "of a third", f.Limit, 2.16, 1e-9)
}

// TestSolidStems: a plank has short grain on the curve and is warned of; what cures it
// takes the warning away; a plank of wood that splits easily breaks, and its cure is the same.
func TestSolidStems(t *testing.T) {
	solid := func(d *design.Design) { d.Bow.Made = design.StemsSolid }
	f := about(report(t, "brook", solid), "knocked")
	if len(f) != 1 || f[0].Verdict != finding.Caution || !strings.Contains(f[0].Cure, "plywood") || !strings.Contains(f[0].About, "degrees across") {
		t.Fatalf("%+v", f)
	}
	if f := about(report(t, "brook", nil), "knocked"); len(f) != 1 || f[0].Verdict != finding.Holds {
		t.Errorf("plywood: %+v", f)
	}
	glued := func(d *design.Design) {
		d.Bow.Made, d.Bending.StemPlies, d.Bending.StemSpecies = design.StemsLaminated, 11, "white ash"
	}
	if f := about(report(t, "brook", glued), "knocked"); len(f) != 1 || f[0].Verdict != finding.Holds {
		t.Errorf("laminated: %+v", f)
	}
	weak := about(report(t, "brook", func(d *design.Design) {
		solid(d)
		d.Woods = append(d.Woods, design.Wood{Name: "white ash", Split: 0.5})
	}), "knocked")
	if len(weak) != 1 || weak[0].Verdict != finding.Weak || !strings.Contains(weak[0].Cure, "plywood") {
		t.Errorf("ash that splits: %+v", weak)
	}
	if f := about(report(t, "river", solid), "knocked"); len(f) != 2 {
		t.Errorf("river's ends differ and have %d findings", len(f))
	}
}
