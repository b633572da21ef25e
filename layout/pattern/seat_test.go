package pattern

import (
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// TestSlotOfHanger: a hanger's pattern has the mouth of its face to cut and the other's
// broken, both inside the board; the cutter's opening lies in both, and the bolts' holes, which
// are bored in the boat, are not cut. Gunwales close in toward the ends: going outboard a level
// rail comes nearer the stern on the board in the bow, nearer the bow in the stern.
func TestSlotOfHanger(t *testing.T) {
	f := frametest.Shipped(t, "river", nil)
	for i, end := range []string{"nearer the stern", "nearer the bow"} {
		s := f.Seats[i]
		d := Hanger(s, "after", s.Hung.After, measure.Metric)
		said := ""
		for _, w := range d.Texts {
			said += w.Words + " "
		}
		if !strings.Contains(said, end) || !strings.Contains(said, "higher") {
			t.Errorf("%s: %q, want %q", s.Name, said, end)
		}
		var cut, broken []geometry.Box
		for _, l := range d.Strokes {
			switch l.Pen {
			case layout.Cut:
				cut = append(cut, l.Path.Bounds())
			case layout.Long:
				broken = append(broken, l.Path.Bounds())
			}
		}
		if len(cut) != 2 || len(broken) != 1 {
			t.Fatalf("%s: %d outlines to cut and %d broken, want slot and board, and the other mouth", s.Name, len(cut), len(broken))
		}
		full, other, board := cut[0], broken[0], cut[1]
		// 20 mm of board leaning 10.5 degrees: 20 tan 10.5 = 3.7, and up to 3.9 where it stands 13.8 off in plan.
		if up := other.Min.Y - full.Min.Y; up < 3.65 || up > 4 {
			t.Errorf("%s: the outboard mouth lies %.2f mm higher", s.Name, up)
		}
		for _, m := range []geometry.Box{full, other} {
			if m.W() < 40 || m.H() < 25.4 || m.Min.X < board.Min.X+7 || m.Max.X > board.Max.X-7 || m.Min.Y < board.Min.Y+15 {
				t.Errorf("%s: a mouth of %.1f x %.1f mm at %v in %v", s.Name, m.W(), m.H(), m, board)
			}
		}
		through := hangerCut(s, s.Hung.After)
		if len(through) != 2 {
			t.Fatalf("%s: %d outlines for the cutter", s.Name, len(through))
		}
		if o := through[0].Bounds(); o.Max.Y > full.Max.Y+1e-9 || o.Min.Y < other.Min.Y-1e-9 || o.W() > full.W() || o.H() > full.H()-3 {
			t.Errorf("%s: the cutter opens %v of %v and %v", s.Name, o, full, other)
		}
	}
}

// TestBoredInTheBoat: the cross pieces' bolt holes go through the gunwales, so neither paper nor
// cutter has them to cut; both show where they come.
func TestBoredInTheBoat(t *testing.T) {
	f := frametest.Shipped(t, "lake", nil)
	for i, c := range f.Thwarts {
		marked := 0
		for _, l := range Thwart(f, i, measure.Metric).Strokes {
			for _, h := range c.Holes {
				if l.Path.Bounds() == h.Bounds() {
					if marked++; l.Pen != layout.Mark {
						t.Errorf("%s: a hole is drawn to %v", c.Name, l.Pen)
					}
				}
			}
		}
		p := thwartPart(c)
		if marked != len(c.Holes)/2 || len(p.Cut) != 1 || len(p.Marks) != len(c.Holes)+1 {
			t.Errorf("%s: %d of %d holes on paper's half, %d outlines cut and %d lines marked by the cutter", c.Name, marked, len(c.Holes), len(p.Cut), len(p.Marks))
		}
	}
}
