package cutlist

import (
	"math"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/curve"
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
	got := frame.Merged(hardCurves(line(func(x float64) (float64, float64) { return c * x * x * x, 3 * c * x * x })))
	if len(got) != 1 || math.Abs(got[0].From-long/2) > 2*step || got[0].To < long-1 {
		t.Errorf("the cubic is hard in %+v, want from %.0f to the end", got, long/2)
	}
	arc := func(x float64) (float64, float64) {
		const r = 20000.0
		y := math.Sqrt(r*r - x*x)
		return y, -x / y
	}
	if got := frame.Merged(hardCurves(line(arc))); len(got) != 1 || got[0].From > step || got[0].To < long-1 {
		t.Errorf("an even bend is hard in %+v, want all along", got)
	}
	if got := hardCurves(line(flat)); len(got) > 0 {
		t.Errorf("a straight line is hard in %+v", got)
	}
}

// TestScarfsOutOfHardCurves saws the shipped boats from short boards: no batten has a
// scarf where its line bends by more than half of its most, the bend taken anew from
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
						if k := through(line, line.Station(at)); k > 0.55*most {
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

// through is the curvature of the circle through three points of a line, 1/mm: four
// times the triangle's area over the product of its sides.
func through(line *curve.Track, x float64) float64 {
	p, q, r := line.Point(x-30), line.Point(x), line.Point(x+30)
	a, b, c := q.Sub(p).Norm(), r.Sub(q).Norm(), r.Sub(p).Norm()
	s := (a + b + c) / 2
	return 4 * math.Sqrt(math.Max(0, s*(s-a)*(s-b)*(s-c))) / (a * b * c)
}
