package pattern

import (
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/label"
)

// TestRibStick: every mark of every rib hangs from the edge of the rib's lane at its own
// place, with its number beside it, the lanes stand in the order of the groups, and no
// words lie on a line or on each other.
func TestRibStick(t *testing.T) {
	for _, name := range design.ShippedNames() {
		for _, units := range []measure.System{measure.Metric, measure.Imperial} {
			b := bent(t, frametest.Shipped(t, name, nil))
			d := RibStick(b, units)
			top := 0.0
			for _, g := range b.Frame.RibGroups {
				i := slices.IndexFunc(d.Texts, func(x layout.Text) bool { return x.Height == 4.5 && x.Words == strings.Join(g.Names, " ") })
				if i < 0 {
					t.Fatalf("%s: no lane of rib %v", name, g.Names)
				}
				edge := d.Texts[i].At.Y + 4.5 + 1.2
				if edge > top+1e-9 {
					t.Errorf("%s: the lane of %v lies at %.1f, over the one before", name, g.Names, edge)
				}
				top = edge
				r := g.Rib
				if n := namedBeyond(d, laneTold, edge, strings.Join(g.Names, " ")); n == 0 {
					t.Errorf("%s: the lane of %v is not named again past its own words", name, g.Names)
				}
				for _, x := range append([]float64{r.Length / 2, r.Length/2 + r.Tenon, r.Blank / 2}, append(r.BendMarks, r.StringerMarks...)...) {
					if !hangsAt(d, x, edge) {
						t.Errorf("%s, %v: no mark hangs at %.2f from %.1f", name, g.Names, x, edge)
					}
					if !slices.ContainsFunc(d.Texts, func(w layout.Text) bool {
						return strings.HasSuffix(w.Words, " "+figure(units, x)) && math.Abs(w.At.X-x) < 2 && w.At.Y < edge && w.At.Y > edge-30
					}) {
						t.Errorf("%s, %v: no number beside the mark at %.2f", name, g.Names, x)
					}
				}
			}
			var room label.Ground
			for _, s := range d.Strokes {
				room.Line(s.Path)
			}
			for _, w := range d.Texts {
				if !room.Clear(label.BlockOf(w), 0.05) {
					t.Errorf("%s, %v: %q lies on something at %.1f", name, units, w.Words, w.At)
				}
				room.Text(w)
			}
		}
	}
}

// namedBeyond counts the words in a lane that name its ribs farther out than the lane's own
// words reach: they are what a piece of the stick that was cut off there is known by.
func namedBeyond(d layout.Drawing, from, edge float64, names string) (n int) {
	for _, w := range d.Texts {
		if strings.HasPrefix(w.Words, names+" ") && w.At.X > from && w.At.Y < edge && w.At.Y > edge-30 {
			n++
		}
	}
	return n
}

// hangsAt reports whether an upright line begins at a place and runs down.
func hangsAt(d layout.Drawing, x, top float64) bool {
	return slices.ContainsFunc(d.Strokes, func(s layout.Stroke) bool {
		b := s.Path.Bounds()
		return b.W() < 0.01 && math.Abs(b.Min.X-x) < 0.01 && math.Abs(b.Max.Y-top) < 0.01 && b.H() > 2
	})
}

// TestBodyLinesApart: on the body plan no two lines of ribs on one side come nearer to each
// other than 0.8 mm but at the ends of one that joins the other; and every rib is named at
// keel, bilge and head.
func TestBodyLinesApart(t *testing.T) {
	for _, name := range design.ShippedNames() {
		b := bent(t, frametest.Shipped(t, name, nil))
		d := BodyPlan(b, measure.Metric)
		var lines [][]geometry.Point
		for _, s := range d.Strokes {
			if long := s.Path.Length(); (s.Pen == layout.Mark || s.Pen == layout.Long) && long >= linesLeast-2 && s.Path.Bounds().H() > 0 {
				lines = append(lines, s.Path.Flatten(0.01))
			}
		}
		for i, l := range lines {
			for k, o := range lines {
				if i == k || len(l) < 10 || len(o) < 10 {
					continue // a head's short line across
				}
				for n := 2; n < len(l)-2; n += 7 {
					p := l[n]
					if off := offLine(o, p); off < 0.65 { // points lie a millimeter apart
						t.Fatalf("%s: two lines lie %.2f mm from each other at %.1f", name, off, p)
					}
				}
			}
		}
		apart(t, name, b.Frame, d.Texts)
		for _, r := range b.Frame.Ribs {
			if halved(b.Frame) && r.Station < 0 {
				continue
			}
			named := 0
			for _, x := range d.Texts {
				if slices.Contains(strings.Fields(x.Words), r.Name) {
					named++
				}
			}
			want := 3
			if !halved(b.Frame) && math.Abs(r.Station) < 1e-9 {
				want = 6 // it stands on both sides
			}
			if named != want {
				t.Errorf("%s: rib %s is named %d times", name, r.Name, named)
			}
		}
	}
}

// apart checks that the names of two lines keep 1.5 mm from each other: nearer an eye reads
// "M F2 A2" as one name (our own choice; a capital is 2.5 mm high).
func apart(t *testing.T, name string, f *frame.Frame, all []layout.Text) {
	t.Helper()
	isRib := func(x layout.Text) bool {
		first, _, _ := strings.Cut(x.Words, " ")
		return slices.ContainsFunc(f.Ribs, func(r frame.Rib) bool { return r.Name == first })
	}
	all = slices.DeleteFunc(slices.Clone(all), func(x layout.Text) bool { return !isRib(x) })
	for i, x := range all {
		for _, o := range all[:i] {
			if x.Bounds().Grow(1.5).Overlaps(o.Bounds()) {
				t.Errorf("%s: %q stands at %.1f, %q at %.1f", name, x.Words, x.Bounds(), o.Words, o.Bounds())
			}
		}
	}
}

// offLine is how far a point lies from a line in straight pieces, mm.
func offLine(line []geometry.Point, p geometry.Point) float64 {
	least := math.Inf(1)
	for i := 1; i < len(line); i++ {
		a, step := line[i-1], line[i].Sub(line[i-1])
		if math.Abs(a.X-p.X) > 20 {
			continue
		}
		u := math.Max(0, math.Min(1, p.Sub(a).Dot(step)/step.Dot(step)))
		least = math.Min(least, a.Add(step.Scale(u)).Sub(p).Norm())
	}
	return least
}
