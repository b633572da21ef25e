package rendertest

import (
	"math"
	"strings"
	"testing"
)

func TestReadNumbers(t *testing.T) {
	const good = `{"gunwale":{"ends_mm":[-5,6],"line_mm":[[0,1,2]],"mortises":[{"rib":"A1","from_midship_mm":-3}]},
		"ribs":[{"rib":"A1","half_arcs":[{"radius_mm":null},{"radius_mm":9}]}],"stems":[{"outline_mm":[[0,0],[4,0],[0,3]]}],
		"breasthooks":[{}],"pages":[{"page":2,"pattern":"m","frame_mm":[10,20,30,40],"to_sheet":[0,1,-1,0,100,5]}]}`
	n, err := ReadNumbers([]byte(good))
	if err != nil {
		t.Fatal(err)
	}
	if a := n.Stems[0].Outline().Area(1); a != 6 {
		t.Errorf("stem of %g mm2, want 6: half of 4 by 3", a)
	}
	if arcs := n.Ribs[0].HalfArcs; arcs[0].Radius != nil || *arcs[1].Radius != 9 {
		t.Errorf("arcs %v", arcs)
	}
	for _, row := range []struct{ name, file, want string }{
		{"nothing", "", "unexpected end"},
		{"no pages", strings.Replace(good, `"pages":[{"page":2`, `"sheets":[{"page":2`, 1), "no pages"},
		{"no ribs", strings.Replace(good, `"ribs"`, `"rib"`, 1), "no ribs"},
	} {
		if _, err := ReadNumbers([]byte(row.file)); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: error %v, want one with %q", row.name, err, row.want)
		}
	}
}

func TestView(t *testing.T) {
	// A quarter turn and a shift: (10, 20) goes to (100 - 20, 5 + 10).
	v := View{Page: 1, Edges: [4]float64{10, 20, 30, 40}, ToSheet: [6]float64{0, 1, -1, 0, 100, 5}}
	if b := v.OnSheet(); b.Off(Box{60, 15, 80, 35}) > readTol {
		t.Errorf("frame on the sheet %v, want (60, 15) to (80, 35)", b)
	}
	if q := v.Back(Point{80, 15}); q.To(Point{10, 20}) > readTol {
		t.Errorf("back at %v, want (10, 20)", q)
	}
	line := Outline{Pieces: []Piece{{From: Point{80, 15}, To: Point{60, 35}}}}
	page := Page{W: 200, H: 100, Strokes: []Stroke{
		{Outlines: []Outline{line}, Clip: Box{60, 15, 80, 35}},
		{Outlines: []Outline{line}, Clip: Box{60, 15, 80, 36}},
		{Outlines: []Outline{line}, Clip: Box{0, 0, 200, 100}},
	}}
	got := v.Strokes(page)
	if len(got) != 1 || got[0].Outlines[0].Pieces[0].To.To(Point{30, 40}) > readTol {
		t.Errorf("strokes %v, want the one within the frame, ending at (30, 40)", got)
	}
	if lines := page.Lines(); len(lines) != 1 {
		t.Errorf("%d lines outside frames, want 1", len(lines))
	}
}

func TestBars(t *testing.T) {
	p := pageOf(t, "36 36 m 324 36 l S 40 40 m 40 328 l S 36 50 m 323 50 l S 36 60 m 323 70 l S")
	level, upright := p.Bars(101.6, 0.01) // 288 points
	if len(level) != 1 || len(upright) != 1 {
		t.Fatalf("%d level and %d upright, want one each", len(level), len(upright))
	}
	if q := level[0].At(0.5); math.Abs(q.X-50.8) > readTol || math.Abs(q.Y-6.35) > readTol {
		t.Errorf("middle of the level bar at %v", q)
	}
}

func TestWalk(t *testing.T) {
	ten := 10.0
	// By hand: 5 level, a quarter turn of radius 10 up, 7 upright, and back over
	// a quarter turn the other way.
	r := Rib{HalfArcs: []Bend{{Length: 5}, {Radius: &ten, Sweep: 90}, {Length: 7}, {Radius: &ten, Sweep: -90}}}
	end, length := r.Walk()
	if end.To(Point{25, 27}) > readTol || math.Abs(length-12-10*math.Pi) > readTol {
		t.Errorf("walked %g to %v, want %g to (25, 27)", length, end, 12+10*math.Pi)
	}
	if b := (Mortise{FromMidship: -100, Length: 20, Width: 6}).Slot(); b != (Box{-110, -3, -90, 3}) {
		t.Errorf("slot %v", b)
	}
}
