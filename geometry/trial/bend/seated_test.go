package bend

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
)

// TestHeadGives: beyond its bottom a rib that is a quarter of a ring. Pushed up its head goes
// by (3π/4 - 2) P r³/(E I), pushed outward by π/4 and each way pushed by the other half as much as
// 1. Source: S. Timoshenko, Strength of Materials, the quarter ring built in at one end.
func TestHeadGives(t *testing.T) {
	const r, stiff = 300.0, 6e6
	s := headGives(frame.Rib{Thickness: 0.1, Section: hull.Section{Half: curve.Chain{curve.Straight(250), curve.Turned(r, math.Pi/2)}}}, stiff)
	unit := r * r * r / stiff
	for _, c := range []struct{ up, out float64 }{{1, 0}, {0, 1}, {20, -3}} { // pushes
		up, out := unit*(c.up*(3*math.Pi/4-2)-c.out/2), unit*(c.out*math.Pi/4-c.up/2)
		if got := s.Up*up + s.Both*out; math.Abs(got-c.up) > 1e-4 {
			t.Errorf("pushed up by %g N: %g", c.up, got)
		}
		if got := s.Both*up + s.Across*out; math.Abs(got-c.out) > 1e-4 {
			t.Errorf("pushed outward by %g N: %g", c.out, got)
		}
	}
	straight := headGives(frame.Rib{Thickness: 7, Section: hull.Section{Merged: true, Half: curve.Chain{curve.Straight(250)}}}, stiff)
	if !(straight.Across > 0) || math.IsInf(straight.Across, 0) {
		t.Errorf("a straight rib: %+v", straight)
	}
}

// seatedIn returns the findings on the gunwale under the hung seats of river.
func seatedIn(t *testing.T, change func(*design.Design)) finding.List {
	t.Helper()
	return about(report(t, "river", change), "gunwale under its load")
}

// TestSeated: each hung seat is judged once, at more than its bolts bear at rest. Its cures
// cure what is too weak.
func TestSeated(t *testing.T) {
	fs := seatedIn(t, nil)
	if len(fs) != 2 {
		t.Fatalf("%+v", fs)
	}
	for _, f := range fs {
		near(t, "half of Douglas-fir's 85 N/mm2 (FPL-GTR-282)", f.Limit, 42.5, 1e-9)
		if f.Verdict != finding.Holds {
			t.Errorf("%+v", f)
		}
	}
	heavy := func(d *design.Design) { d.Crew[0].Mass = 170 }
	if f := seatedIn(t, heavy)[0]; f.Verdict != finding.Weak || !strings.Contains(f.Cure, "gunwale.edge_set_from") {
		t.Errorf("%+v", f)
	}
	for what, cure := range map[string]func(*design.Design){
		"a longer sweep": func(d *design.Design) { d.Gunwale.EdgeSetFrom -= 200 },
		"wider":          func(d *design.Design) { d.Gunwale.Width += 2 },
	} {
		light := seatedIn(t, heavy)[0].Value
		if f := seatedIn(t, func(d *design.Design) { heavy(d); cure(d) })[0]; !(f.Value < light-1) {
			t.Errorf("%s: %.1f after %.1f N/mm2", what, f.Value, light)
		}
	}
	if fs := seatedIn(t, func(d *design.Design) { d.Seats[0].Kind = design.Saddle }); len(fs) != 1 {
		t.Errorf("under a saddle: %+v", fs)
	}
}

// TestUnderLoad: midway between its two bolts the gunwale bears upright within a tenth what a
// beam on an even bed bears x mm from a load, P/(4 b) exp(-b x) (cos b x - sin b x), b the
// fourth root of k/(4 E I) (M. Hetenyi); the bed is that of ribs that do not go sideways.
func TestUnderLoad(t *testing.T) {
	r := report(t, "lake", nil)
	m, s := r.rails(), r.Frame.Seats[0]
	x := s.Hung.Front.Station
	c, ok := m.Under(pulls(r.Frame, s)...)
	if !ok {
		t.Fatal("does not stand")
	}
	tall, _ := c.At(x)
	k := 0.0
	for _, on := range m.On {
		if math.Abs(on.At-x) < float64(r.Frame.Design.Ribs.Pitch) && on.Up > 0 {
			k = on.Up / float64(r.Frame.Design.Ribs.Pitch)
		}
	}
	b := math.Pow(k/(4*m.Tall), 0.25)
	g := s.Hung.Front.Hanger.Bolts
	bx := b * (g[1] - g[0]) / 2
	near(t, "of the moment", tall*m.Tall/(s.Share()/(4*b)*math.Exp(-bx)*(math.Cos(bx)-math.Sin(bx))), 1, 0.1)
}
