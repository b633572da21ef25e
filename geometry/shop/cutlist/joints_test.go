package cutlist

import (
	"math"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// TestHardCurves: a line y = c x3 bends by 6 c x, so that from half its length on it
// bends by more than half of the most; an arc of a circle is hard all along, a
// straight line nowhere. Source: the second derivative.
func TestHardCurves(t *testing.T) {
	const long, c = 2000.0, 2e-9
	flat := func(float64) (float64, float64) { return 0, 0 }
	line := func(f curve.Func) *curve.Track {
		track, err := curve.NewTrack(0, long, 0, curve.Apart(f, flat))
		if err != nil {
			t.Fatal(err)
		}
		return track
	}
	const step = 20.0
	got := frame.Merged(hardCurves(line(func(x float64) (float64, float64) { return c * x * x * x, 3 * c * x * x }), 0))
	if len(got) != 1 || math.Abs(got[0].From-long/2) > 2*step || got[0].To < long-1 {
		t.Errorf("the cubic is hard in %+v, want from %.0f to the end", got, long/2)
	}
	arc := func(x float64) (float64, float64) {
		const r = 20000.0
		y := math.Sqrt(r*r - x*x)
		return y, -x / y
	}
	if got := frame.Merged(hardCurves(line(arc), 0)); len(got) != 1 || got[0].From > step || got[0].To < long-1 {
		t.Errorf("an even bend is hard in %+v, want all along", got)
	}
	if got := hardCurves(line(arc), 1/19000.0); len(got) > 0 {
		t.Errorf("a bend of 20 m is hard in %+v for wood that bears 19 m", got)
	}
	if got := hardCurves(line(flat), 0); len(got) > 0 {
		t.Errorf("a straight line is hard in %+v", got)
	}
}

// TestScarfsOutOfHardCurves saws the shipped boats from short boards: no batten has a
// scarf where its line bends by more than half of its most and by more than the wood bears
// for years, 0.3 of its strength: the bend taken anew from
// three points 30 mm apart (circle through three points).
func TestScarfsOutOfHardCurves(t *testing.T) {
	found := 0
	for _, boat := range []string{"brook", "lake", "river"} {
		f := frametest.Shipped(t, boat, nil)
		f.Design.Stock.Boards = nil
		lines := map[string]*curve.Track{"K1": f.Keel.Line}
		for _, s := range f.Stringers {
			lines["S"+string(rune('0'+s.Number))+"p"] = s.Line
		}
		for _, s := range Heat(nil).Sticks(f) {
			line := lines[s.Mark]
			if line == nil {
				continue
			}
			a, b := line.Ends()
			most := 0.0
			for x := a + 30; x < b-30; x += 5 {
				most = math.Max(most, through(line, x))
			}
			for share := 0.3; share < 1; share += 0.02 {
				joints, err := s.Run.joints(s.Length*share, nil)
				if err != nil {
					continue // no room is said, and no scarf is made
				}
				for _, j := range joints {
					found++
					for at := j.Middle - j.Length/2; at <= j.Middle+j.Length/2; at += j.Length / 8 {
						if k := through(line, line.Station(at)); k > 0.55*most && k > 1.1*lasting(s) {
							t.Errorf("%s, %s from boards of %.0f mm: a scarf at %.0f mm bends by 1/%.0f mm, the line at most by 1/%.0f", boat, s.Part, s.Length*share, at, 1/k, 1/most)
						}
					}
				}
			}
		}
	}
	if found < 100 {
		t.Errorf("only %d scarfs were made", found)
	}
}

// lasting is the bend, 1/mm, at which the outer faces of a stick carry 0.3 of what breaks
// them: stress is E k t / 2. For the battens' woods of the shipped boats, MOR and MOE in
// N/mm2 of the Wood Handbook, FPL-GTR-282, table 5-3.
func lasting(s Stick) float64 {
	strength := map[string][2]float64{"western redcedar": {51.7, 7700}, "sitka spruce": {70, 10800}, "douglas-fir": {85, 13400}}[s.Species]
	return 2 * 0.3 * strength[0] / (strength[1] * s.Thickness)
}

// through is the curvature of the circle through three points of a line, 1/mm: four
// times the triangle's area over the product of its sides.
func through(line *curve.Track, x float64) float64 {
	p, q, r := line.Point(x-30), line.Point(x), line.Point(x+30)
	a, b, c := q.Sub(p).Norm(), r.Sub(q).Norm(), r.Sub(p).Norm()
	s := (a + b + c) / 2
	return 4 * math.Sqrt(math.Max(0, s*(s-a)*(s-b)*(s-c))) / (a * b * c)
}

// TestScarfsWhereBorne: a batten that bends alike all along, and gently, has no hardest
// curve, and is scarfed in the middle; one that its wood does not bear is not.
func TestScarfsWhereBorne(t *testing.T) {
	all := []frame.Zone{{From: -1900, To: 1900}}
	run := &Run{Aft: -2000, Fore: 2000, Scarf: 80, Borne: all}
	if got, err := run.joints(2300, nil); err != nil || len(got) != 1 || math.Abs(got[0].Middle) > 300 {
		t.Errorf("%+v, %v; want one scarf that leaves no piece over 2300 mm", got, err)
	}
	run.Borne = nil
	if got, err := run.joints(2300, nil); err == nil {
		t.Errorf("%+v where nothing is borne", got)
	}
	run.Rooms, run.Borne = []frame.Zone{{From: 100, To: 300}}, all
	if got, err := run.joints(2300, nil); err != nil || got[0].Middle < 140 {
		t.Errorf("%+v, %v; want the gentler place, from 100 to 300 mm", got, err)
	}
}

// TestSawnSheer: stock for gunwales into which the sheer is sawn is wider by how far the
// curve leaves a straight line from end to end: all of the rise where the ends are alike,
// square to the leaning stock, and a little for the trim. The wood that stays is the same.
func TestSawnSheer(t *testing.T) {
	of := func(made measure.Length, gaps bool) []Stick {
		f := frametest.Shipped(t, "lake", func(d *design.Design) {
			d.Gunwale.EdgeSetMade = made
			if gaps {
				byGaps(d)
			}
		})
		return gunwales(f)
	}
	tilt := float64(frametest.Shipped(t, "lake", nil).Design.Gunwale.Tilt)
	for _, gaps := range []bool{false, true} {
		sprung, sawn := of(0, gaps), of(42, gaps)
		for i, s := range sawn {
			if s.Family != Gunwale {
				continue
			}
			if more := s.Width - sprung[i].Width; more < 42*math.Cos(tilt) || more > 42*math.Cos(tilt)+3 {
				t.Errorf("%s is %.1f mm wider, want %.1f and a little", s.Part, more, 42*math.Cos(tilt))
			}
			if math.Abs(s.Net/sprung[i].Net-1) > 1e-3 { // its marks lie a little farther out
				t.Errorf("%s: %.0f mm3 stay, %.0f of a sprung one", s.Part, s.Net, sprung[i].Net)
			}
		}
	}
}

// byGaps leaves the mortises open between blocks of the middle ply.
func byGaps(d *design.Design) {
	d.Gunwale.Mortises, d.Gunwale.Plies = design.ByGap, 3
	d.Gunwale.Width = 3 * (d.Ribs.Thickness + d.Ribs.FitThickness)
}
