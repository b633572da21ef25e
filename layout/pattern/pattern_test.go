package pattern

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/pushed"
	"ribwright/layout"
)

// bent is how a frame is bent.
func bent(t *testing.T, f *frame.Frame) *bend.Report {
	t.Helper()
	b, err := bend.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func each(t *testing.T, check func(t *testing.T, f *frame.Frame, units measure.System)) {
	t.Helper()
	for _, name := range design.ShippedNames() {
		for _, u := range []measure.System{measure.Metric, measure.Imperial} {
			t.Run(fmt.Sprintf("%s %v", name, u), func(t *testing.T) { check(t, frametest.Shipped(t, name, nil), u) })
		}
	}
}

func words(d layout.Drawing) string {
	var all []string
	for _, x := range d.Texts {
		all = append(all, x.Words)
	}
	return strings.Join(all, " | ")
}

// TestMortiseStrip checks every rectangle and every figure of the strip against
// the frame: rib number, distance in mm and in inches, lean. A half strip must
// show the mortises of both halves, which lie equally far from midship.
func TestMortiseStrip(t *testing.T) {
	each(t, func(t *testing.T, f *frame.Frame, units measure.System) {
		d := Mortises(bent(t, f), units)
		said := words(d)
		boxes := map[geometry.Point]geometry.Box{}
		for _, s := range d.Strokes {
			if s.Pen == layout.Cut && len(s.Path) == 4 && s.Path.Closed() {
				b := s.Path.Bounds()
				boxes[round(b.Center())] = b
			}
		}
		want := len(f.Ribs)
		if d.Turns {
			want = (want + 1) / 2
		}
		if len(boxes) != want || d.Turns != f.Design.EndsAlike() {
			t.Fatalf("%d mortises drawn, want %d; half: %v", len(boxes), want, d.Turns)
		}
		for _, m := range f.Gunwale.Mortises {
			x := m.FromMidship
			if d.Turns {
				x = math.Abs(x)
			}
			b := boxes[round(geometry.Point{X: x})]
			if math.Abs(b.W()-m.Length) > 1e-6 || math.Abs(b.H()-m.Width) > 1e-6 || math.Abs(b.Center().X-x) > 1e-6 {
				t.Errorf("mortise %s drawn at %v, want %.2f x %.2f mm at %.2f", m.Rib, b, m.Length, m.Width, x)
			}
			for _, w := range []string{m.Rib, fmt.Sprintf("%.1f mm", x+0.0), measure.Sixteenths(x)} {
				if !strings.Contains(said, w) {
					t.Errorf("the strip does not say %q", w)
				}
			}
		}
		if strings.Contains(said, "-0.0") {
			t.Error("a minus zero is printed")
		}
	})
}

func round(p geometry.Point) geometry.Point {
	return geometry.Point{X: math.Round(p.X*1e3)/1e3 + 0, Y: math.Round(p.Y*1e3)/1e3 + 0}
}

// TestHalvesSayWhose checks that what lies on one half of the boat only says so
// on a pattern that serves both, and that such patterns say how they are turned.
func TestHalvesSayWhose(t *testing.T) {
	f := frametest.Shipped(t, "lake", nil)
	for _, d := range []layout.Drawing{Mortises(bent(t, f), measure.Metric), BodyPlan(bent(t, f), measure.Metric), Battens(f, measure.Metric)} {
		turned := "turn over at midship"
		if d.Name == "battens" {
			turned = "turn end for end at midship, face up" // its upper edge is the one that marks are squared from
		}
		if !strings.Contains(d.Make, turned) {
			t.Errorf("%s does not say how it is turned: %q", d.Name, d.Make)
		}
		if b := d.Bounds(); b.Min.X < -overMidship-1 {
			t.Errorf("%s reaches %.1f mm over midship", d.Name, b.Min.X)
		}
	}
	said := words(Mortises(bent(t, f), measure.Metric))
	for _, w := range f.Thwarts {
		whose := "forward half only"
		if w.At < 0 {
			whose = "after half only"
		}
		if !strings.Contains(said, w.Name) || !strings.Contains(said, whose) {
			t.Errorf("the half strip does not say that %s lies on the %s", w.Name, whose)
		}
	}
}

// TestHalfEndCuts checks which end cut serves where: of all four gunwale ends the
// inboard edge must reach farther, for the ends of both gunwales meet on the boat's
// middle plane (plane geometry). The half strip lies as drawn forward and is turned
// by half a turn aft; seen from below, inboard is up on port and down on starboard.
func TestHalfEndCuts(t *testing.T) {
	f := frametest.Shipped(t, "lake", nil)
	d := Mortises(bent(t, f), measure.Metric)
	half, x := f.Gunwale.Width/2, f.Gunwale.Fore
	reach := func(pen layout.Pen, y float64) float64 { // of the cut at the strip's edge y
		for _, s := range d.Strokes {
			a, b := s.Path[0].Start(), s.Path[len(s.Path)-1].End()
			if s.Pen == pen && a.Y == half && b.Y == -half && math.Abs(a.X+b.X-2*x) < 1e-9 {
				if y > 0 {
					return a.X
				}
				return b.X
			}
		}
		t.Fatalf("no end cut drawn with pen %d", pen)
		return 0
	}
	for _, port := range []bool{true, false} {
		for _, aft := range []bool{false, true} {
			inboardUp := port != aft // the turn swaps the edges
			pen, inboard := layout.Guide, -half
			if inboardUp {
				pen, inboard = layout.Cut, half
			}
			if in, out := reach(pen, inboard), reach(pen, -inboard); in <= out {
				t.Errorf("port %v, aft %v: inboard reaches to %.2f mm, outboard to %.2f", port, aft, in, out)
			}
		}
	}
	said := words(d)
	if !strings.Contains(said, "full line with the upper edge inboard,") || !strings.Contains(said, "dashed with it outboard") || strings.Contains(said, "on port") {
		t.Errorf("the half strip says of its ends: %s", said)
	}
	if whole := words(Mortises(bent(t, frametest.Shipped(t, "river", nil)), measure.Metric)); !strings.Contains(whole, "full line on port,") || !strings.Contains(whole, "dashed on starboard;") {
		t.Errorf("the whole strip says of its ends: %s", whole)
	}
}

// TestRibStrips checks that each strip carries its marks in order and that every
// rib is named on exactly one strip.
func TestRibStrips(t *testing.T) {
	each(t, func(t *testing.T, f *frame.Frame, units measure.System) {
		seen := map[string]int{}
		for _, g := range f.RibGroups {
			d := RibStrip(bent(t, f), g, units)
			for _, n := range g.Names {
				seen[n]++
			}
			said := words(d)
			for i := range g.Rib.StringerMarks {
				if !strings.Contains(said, fmt.Sprintf("S%d ", i+1)) {
					t.Errorf("strip %s does not name S%d", d.Name, i+1)
				}
			}
			for _, w := range []string{"middle of rib", "bend ends", "shoulder", "tenon end", "blank end"} {
				if !strings.Contains(said, w) {
					t.Errorf("strip %s does not say %q", d.Name, w)
				}
			}
			if b := d.Bounds(); b.Max.X < g.Rib.Blank/2-1e-9 {
				t.Errorf("strip %s ends at %.2f mm, half the blank is %.2f", d.Name, b.Max.X, g.Rib.Blank/2)
			}
		}
		for _, r := range f.Ribs {
			if seen[r.Name] != 1 {
				t.Errorf("rib %s is on %d strips", r.Name, seen[r.Name])
			}
		}
	})
}

// TestNothingCovered checks that no lettering of a pattern lies on other
// lettering of it.
func TestNothingCovered(t *testing.T) {
	each(t, func(t *testing.T, f *frame.Frame, units measure.System) {
		for _, d := range append(All(bent(t, f), units, Strips), RibStick(bent(t, f), units)) {
			for i, a := range d.Texts {
				for _, b := range d.Texts[:i] {
					if overlap(a, b) {
						t.Errorf("%s: %q at %.0f,%.0f lies on %q", d.Name, a.Words, a.At.X, a.At.Y, b.Words)
					}
				}
			}
		}
	})
}

// overlap compares the lettering's own boxes, by their corners along the line of
// writing of the first; a tail of a letter may touch.
func overlap(a, b layout.Text) bool { return along(a.Angle, a, b) && along(b.Angle, a, b) }

// along reports whether two lines of lettering overlap as far as boxes at an angle tell;
// boxes at the angles of both tell it for sure.
func along(angle float64, a, b layout.Text) bool {
	turn := geometry.Turn(-angle)
	box := func(t layout.Text) geometry.Box {
		along := geometry.Polar(1, t.Angle)
		w := t.Bounds()
		long := math.Abs(w.W()*along.X) + math.Abs(w.H()*along.Y)
		s := t.Start()
		up := geometry.Polar(t.Height, t.Angle+math.Pi/2)
		return geometry.Around(turn.Apply(s), turn.Apply(s.Add(along.Scale(long*0.98))), turn.Apply(s.Add(up)), turn.Apply(s.Add(up).Add(along.Scale(long*0.98))))
	}
	return box(a).Grow(-0.1).Overlaps(box(b).Grow(-0.1))
}

// TestBodyPlan checks that the outer face of every rib is drawn, or one within 0.8 mm of
// it, the fore body on the right and the after body on the left, true to the section.
func TestBodyPlan(t *testing.T) {
	f := frametest.Shipped(t, "river", nil)
	d := BodyPlan(bent(t, f), measure.Metric)
	joined := 0
	for _, r := range f.Ribs {
		side := 1.0
		if r.Station < 0 {
			side = -1
		}
		girth := r.Section.Half.Length()
		for _, share := range []float64{0, 0.3, 0.6, 1} {
			p := r.Face(share*girth, r.Thickness/2)
			p.X *= side
			if off := offLines(d, p); off > linesApart {
				t.Errorf("rib %s: no line passes (%.2f, %.2f), the next one is %.2f mm off", r.Name, p.X, p.Y, off)
			} else if off > 0.01 {
				joined++
			}
		}
	}
	t.Logf("%d of %d places lie on the line of another rib", joined, 4*len(f.Ribs))
}

// offLines is how far the nearest line of a rib lies from a point, mm.
func offLines(d layout.Drawing, p geometry.Point) float64 {
	least := math.Inf(1)
	for _, s := range d.Strokes {
		if s.Pen != layout.Mark && s.Pen != layout.Long || s.Path.Length() < linesLeast {
			continue
		}
		pts := s.Path.Flatten(0.001)
		for i := 1; i < len(pts); i++ {
			a, step := pts[i-1], pts[i].Sub(pts[i-1])
			u := math.Max(0, math.Min(1, p.Sub(a).Dot(step)/step.Dot(step)))
			least = math.Min(least, a.Add(step.Scale(u)).Sub(p).Norm())
		}
	}
	return least
}

// TestLooseRibs checks that the body plan shows what the rib amidships does when it is
// only pushed in, on a pen of its own beside the ribs'.
func TestLooseRibs(t *testing.T) {
	f := frametest.Shipped(t, "river", nil)
	b := bent(t, f)
	d := BodyPlan(b, measure.Metric)
	d.Strokes = slices.DeleteFunc(d.Strokes, func(s layout.Stroke) bool { return s.Pen != layout.Guide })
	for _, i := range []int{midmost(f)} {
		r, p := f.Ribs[i], b.Ribs[i].Pushed
		for _, h := range []pushed.Head{p.Hinged, p.Clamped} {
			for _, share := range []float64{0.2, 0.5, 0.8, 1} {
				q, _ := h.Half.At(share * h.Half.Length())
				q.Y += r.Section.KeelZ
				if r.Station < 0 {
					q.X = -q.X
				}
				if !drawn(d, q) {
					t.Errorf("rib %s: no dashed line passes (%.2f, %.2f)", r.Name, q.X, q.Y)
				}
			}
		}
	}
	if !strings.Contains(words(d), "dashed: only pushed in") {
		t.Error("the legend is missing")
	}
}

// midmost is the rib nearest midship.
func midmost(f *frame.Frame) int {
	best := 0
	for i, r := range f.Ribs {
		if math.Abs(r.Station) < math.Abs(f.Ribs[best].Station) {
			best = i
		}
	}
	return best
}

func drawn(d layout.Drawing, p geometry.Point) bool {
	for _, s := range d.Strokes {
		if !s.Path.Bounds().Grow(0.01).Holds(p) {
			continue
		}
		pts := s.Path.Flatten(0.001)
		for i := 1; i < len(pts); i++ {
			a, step := pts[i-1], pts[i].Sub(pts[i-1])
			u := math.Max(0, math.Min(1, p.Sub(a).Dot(step)/step.Dot(step)))
			if a.Add(step.Scale(u)).Sub(p).Norm() < 0.005 {
				return true
			}
		}
	}
	return false
}

// TestHalfThwart checks that half a thwart and its mirror make the whole outline.
func TestHalfThwart(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		for i, w := range f.Thwarts {
			long := 0.0
			for _, s := range Thwart(f, i, measure.Metric).Strokes {
				if s.Pen == layout.Cut && !s.Path.Closed() {
					long += s.Path.Length()
					if b := s.Path.Bounds(); b.Min.X < -1e-9 {
						t.Errorf("%s: the half reaches over the middle line to %.4f mm", w.Name, b.Min.X)
					}
				}
			}
			if math.Abs(2*long-w.Outline.Length()) > 0.01 {
				t.Errorf("%s: two halves make %.3f mm of outline, the whole is %.3f", w.Name, 2*long, w.Outline.Length())
			}
		}
	}
}

// TestParts checks that every part to cut is closed, and counted as often as the
// boat needs it.
func TestParts(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		parts := Parts(bent(t, f))
		hangers := map[string]int{"brook": 0, "lake": 4, "river": 8}[name]
		if want := 4 + len(f.Thwarts) + hangers + len(f.RibGroups); len(parts) != want {
			t.Errorf("%s: %d parts, want %d: two stems, two breasthooks, thwarts, hangers, gauges", name, len(parts), want)
		}
		for _, p := range parts {
			for _, c := range p.Cut {
				if !c.Closed() || !c.Joined() {
					t.Errorf("%s: %s has an open outline", name, p.Name)
				}
			}
			for _, l := range p.Letters {
				if at := l.At; !inside(at, p.Cut[len(p.Cut)-1]) {
					t.Errorf("%s: %q on %s stands off the wood", name, l.Words, p.Name)
				}
			}
		}
	}
}

// inside counts crossings of a level ray.
func inside(p geometry.Point, outline curve.Path) bool {
	pts := outline.Flatten(0.05)
	in := false
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1], pts[i]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

// TestStemPattern checks what places a stem in the boat and in the board: its
// waterline at the designed height, the station of its toe, grain, shelf, keel
// joint and a cross for every stringer.
func TestStemPattern(t *testing.T) {
	f := frametest.Shipped(t, "river", nil)
	r := bent(t, f)
	d := Stem(r, 1, "stem-bow", "Bow stem", "make 1", measure.Metric)
	said := words(d)
	for _, w := range []string{"waterline, 115.0 mm up", fmt.Sprintf("station %.1f mm", f.Bow.ToeX), "grain", "gunwales rest", "keel butts", "24.0 mm thick", "make 1", "S1", "S4"} {
		if !strings.Contains(said, w) {
			t.Errorf("the stem does not say %q: %s", w, said)
		}
	}
	b := f.Bow.Outline.Bounds()
	if !drawn(d, geometry.Point{X: b.Center().X, Y: 115}) || !drawn(d, geometry.Point{X: f.Bow.ToeX, Y: 100}) {
		t.Error("the waterline or the station line is not drawn in its place")
	}
	for _, l := range f.Bow.Landings {
		if !inside(l, f.Bow.Outline) || !drawn(d, l) {
			t.Errorf("a stringer's cross at %v is off the wood or not drawn", l)
		}
	}
}

// TestStoryStick checks that every lane has a tick for every rib and for both
// ends, and names its rib with the distance.
func TestStoryStick(t *testing.T) {
	f := frametest.Shipped(t, "river", nil)
	d := Battens(f, measure.Metric)
	said := words(d)
	lanes := [][]float64{}
	for i := len(f.Stringers) - 1; i >= 0; i-- {
		lanes = append(lanes, append([]float64{f.Stringers[i].Aft, f.Stringers[i].Fore}, f.Stringers[i].RibMarks...))
	}
	lanes = append(lanes, append([]float64{f.Keel.Aft, f.Keel.Fore}, f.Keel.RibMarks...))
	for i, marks := range lanes {
		for _, x := range marks {
			if !drawn(d, geometry.Point{X: x, Y: -float64(i)*(laneRow+laneEnd) - 2}) {
				t.Errorf("lane %d has no tick at %.2f mm", i, x)
			}
		}
	}
	for _, w := range []string{"S4 F5 ", "keel M 0.0 mm", "S1 after end ", "keel forward end "} {
		if !strings.Contains(said, w) {
			t.Errorf("the stick does not say %q", w)
		}
	}
}

// TestMarksMayBeOff: a rib's marks say by how much they may be off, in whole millimeters
// or sixteenths that are no more than what the rib stands.
func TestMarksMayBeOff(t *testing.T) {
	for _, c := range []struct {
		slack float64
		units measure.System
		want  string
	}{
		{3.9, measure.Metric, " \u00b13 mm"}, {0.4, measure.Metric, " \u00b11 mm"}, {3.3, measure.Imperial, " \u00b11/8 in"}, {2, measure.Imperial, " \u00b11/16 in"},
		{math.Inf(1), measure.Metric, ""},
	} {
		if got := within(c.slack, c.units); got != c.want {
			t.Errorf("%.1f mm: %q, want %q", c.slack, got, c.want)
		}
	}
}
