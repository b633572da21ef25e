package pattern

import (
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// obstacles are the places on a stem or a breasthook that words may not cover: the holes'
// rims and middles, and the arms of the crosses.
func obstacles(r *bend.Report, end int, hook bool) map[string][]geometry.Point {
	out := map[string][]geometry.Point{}
	hole := func(name string, at geometry.Point, drill float64) {
		out[name] = append(curve.Circle(at, drill/2).Flatten(0.05), at)
	}
	if hook {
		if b := [2]frame.Breasthook{r.Frame.SternHook, r.Frame.BowHook}[end]; b.Painter > 0 {
			hole("painter's hole", geometry.Point{X: -b.Painter}, frame.PainterHole)
		}
		h := r.Joints.Hooks[end]
		for i, p := range h.At {
			for deep := 0.0; deep <= pegMark; deep += 0.5 {
				q := p.Sub(h.Out[i].Scale(deep))
				out["pegs"] = append(out["pegs"], q, geometry.Point{X: q.X, Y: -q.Y})
			}
		}
		return out
	}
	l := r.Joints.Landings[end]
	for _, h := range l.Holes {
		hole("hole of a stringer", h.At, l.Drill)
	}
	hole("hole of the gunwales", r.Joints.Ends[end].At, r.Joints.Ends[end].Drill)
	for _, c := range [2]frame.Stem{r.Frame.Stern, r.Frame.Bow}[end].Landings {
		for d := -3.0; d <= 3; d += 0.2 {
			out["cross"] = append(out["cross"], c.Add(geometry.Point{X: d}), c.Add(geometry.Point{Y: d}))
		}
	}
	return out
}

// covered reports a text whose letters lie on an obstacle.
func covered(t *testing.T, about string, texts []layout.Text, width func(string, float64) float64, all map[string][]geometry.Point) {
	t.Helper()
	for _, w := range texts {
		back := geometry.Turn(-w.Angle)
		wide := width(w.Words, w.Height)
		start := w.At.Sub(geometry.Polar(wide*[...]float64{0, 0.5, 1}[w.Align], w.Angle))
		box := geometry.Rect(0, -0.25*w.Height, wide, w.Height)
		for what, pts := range all {
			for _, p := range pts {
				if box.Holds(back.Apply(p.Sub(start))) {
					t.Errorf("%s: %q lies on a %s", about, w.Words, what)
					break
				}
			}
		}
	}
}

// TestWordsOffHoles: on no stem and no breasthook, of paper or for the cutter, do words lie
// on a hole, a cross or a peg, nor on other words.
func TestWordsOffHoles(t *testing.T) {
	for what, change := range map[string]func(*design.Design){
		"as shipped":   nil,
		"one stringer": func(d *design.Design) { d.Stringers.At = []float64{0.5} },
		"long name":    func(d *design.Design) { d.Title = "The boat with a name that is far too long for a stem" },
		"bare hook":    func(d *design.Design) { d.Outside.Painters = 0 },
	} {
		for _, name := range design.ShippedNames() {
			r := bent(t, frametest.Shipped(t, name, change))
			for _, units := range []measure.System{measure.Metric, measure.Imperial} {
				for end := range 2 {
					stem := Stem(r, end, "stem", "Stern stem", "make 1", units)
					covered(t, name+", "+what+", stem", stem.Texts, lettering.Width, obstacles(r, end, false))
					hook := Breasthook(r, end, "hook", "Stern breasthook", "make 1", units)
					covered(t, name+", "+what+", breasthook", hook.Texts, lettering.Width, obstacles(r, end, true))
					for _, d := range []layout.Drawing{stem, hook} {
						for i, a := range d.Texts {
							for _, b := range d.Texts[:i] {
								if overlap(a, b) {
									t.Errorf("%s, %s, %s: %q lies on %q", name, what, d.Name, a.Words, b.Words)
								}
							}
						}
					}
				}
			}
			parts := Parts(r)
			for i, end := range []int{1, 0, 1, 0} {
				covered(t, name+", "+what+", "+parts[i].Name, parts[i].Letters, lettering.StrokeWidth, obstacles(r, end, i > 1))
				if len(parts[i].Letters) == 0 {
					t.Errorf("%s, %s: %s has no name on it", name, what, parts[i].Name)
				}
			}
		}
	}
}

// TestBodyNotesOffLevels: no level line strikes or touches the notes beside the middle line.
func TestBodyNotesOffLevels(t *testing.T) {
	const air = 0.5 // mm
	for _, name := range design.ShippedNames() {
		for _, units := range []measure.System{measure.Metric, measure.Imperial} {
			d := BodyPlan(bent(t, frametest.Shipped(t, name, nil)), units)
			seen := 0
			for _, x := range d.Texts {
				if !strings.HasPrefix(x.Words, "dashed: ") && !strings.HasPrefix(x.Words, "heads apart") {
					continue
				}
				seen++
				for _, s := range d.Strokes {
					line, box := s.Path.Bounds(), x.Bounds()
					if line.H() == 0 && line.W() > 100 && line.Min.Y > box.Min.Y-air && line.Min.Y < box.Max.Y+air {
						t.Errorf("%s, %v: a level line strikes %q at %.0f mm", name, units, x.Words, line.Min.Y)
					}
				}
			}
			if seen != 2 {
				t.Errorf("%s: %d notes", name, seen)
			}
		}
	}
}

// TestShapeOfMadeSheer: each end says what is made and what is sprung; nothing is left to
// spring at an end that rises less than is made.
func TestShapeOfMadeSheer(t *testing.T) {
	f := frametest.Shipped(t, "river", func(d *design.Design) { d.Gunwale.EdgeSetMade = 45 })
	b, err := bend.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	words := strings.Join(shape(b, measure.Metric), "\n")
	for _, w := range []string{"The bow's rise holds 45.0 mm that is sawn or laminated", "The stern's rise holds 40.0 mm that is sawn or laminated", "The bow's rise holds 9.0 mm of edge-set"} {
		if !strings.Contains(words, w) {
			t.Errorf("no %q in %q", w, words)
		}
	}
	if w := "The stern's rise holds 40.0 mm of edge-set"; strings.Contains(words, w) {
		t.Errorf("%q, though all is made", w)
	}
}
