package pattern

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

func onForms(d *design.Design) { d.Bending.Method = design.OnForms }

// TestFormPatterns: on forms every group of ribs has its form among the patterns, in
// place none has. A form's edge is drawn where the rib's inner face comes, its words say
// two widths in steps of 5 mm, and lie on the wood, clear of holes.
func TestFormPatterns(t *testing.T) {
	for _, name := range design.ShippedNames() {
		for _, d := range All(bent(t, frametest.Shipped(t, name, nil)), measure.Metric, Strips) {
			if strings.HasPrefix(d.Name, "form") {
				t.Errorf("%s in place has the pattern %s", name, d.Name)
			}
		}
		b := bent(t, frametest.Shipped(t, name, onForms))
		forms := map[string]layout.Drawing{}
		for _, d := range All(b, measure.Metric, Strips) {
			if strings.HasPrefix(d.Name, "form-") {
				forms[d.Name] = d
			}
		}
		if len(forms) != len(b.Frame.RibGroups) {
			t.Errorf("%s: %d forms for %d groups", name, len(forms), len(b.Frame.RibGroups))
		}
		for _, g := range b.Frame.RibGroups {
			d := forms["form-"+g.Rib.Name]
			rib := ribNamed(b, g.Rib.Name)
			said := strings.Join(strings.Split(words(d), " | "), " ")
			var hot, free int
			i := strings.Index(said, "stand ")
			if i < 0 {
				t.Fatalf("%s, %s: %q", name, d.Name, said)
			}
			if _, err := fmt.Sscanf(said[i:], "stand %d mm apart; free, the rib shall stand %d mm.", &hot, &free); err != nil || hot%5 != 0 || free%5 != 0 ||
				math.Abs(float64(hot)-rib.Hot) > 2.5 || math.Abs(float64(free)-rib.Relax) > 2.5 {
				t.Errorf("%s, %s: held %d, free %d (%v), bent to %.1f and %.1f", name, d.Name, hot, free, err, rib.Hot, rib.Relax)
			}
			for _, n := range g.Names {
				if !strings.Contains(d.Title, n) {
					t.Errorf("%s: %q does not name rib %s", name, d.Title, n)
				}
			}
			for i, f := range b.Forms {
				if f.Names[0] != g.Rib.Name {
					continue
				}
				for _, p := range f.Edge.Flatten(5) {
					if !drawn(d, p) {
						t.Errorf("%s, %s: the edge is not drawn at %v", name, d.Name, p)
						break
					}
				}
				onFace(t, name+" "+d.Name, d, b.Forms[i].Outline.Bounds().Max.X)
			}
		}
	}
}

// onFace holds a form's words to its face: no circle is crossed, nothing reaches out.
func onFace(t *testing.T, what string, d layout.Drawing, wide float64) {
	t.Helper()
	for _, x := range d.Texts {
		box := x.Bounds()
		if box.Min.X < 0 || box.Max.X > wide {
			t.Errorf("%s: %q leaves the form: %v", what, x.Words, box)
		}
		for _, s := range d.Strokes {
			if len(s.Path) == 1 && s.Path.Closed() && s.Path.Bounds().Overlaps(box) {
				t.Errorf("%s: %q lies on a hole", what, x.Words)
			}
		}
	}
}

// TestFormParts: the cutter has every layer of every form, holes and outline closed,
// the name clear of the holes; gauges say which shape they show.
func TestFormParts(t *testing.T) {
	for _, c := range []struct {
		method design.Method
		layers int
		shows  string
	}{{design.InPlace, 0, "in the boat"}, {design.OnForms, 1, "free rib"}, {design.OnForms, 2, "free rib"}} {
		b := bent(t, frametest.Shipped(t, "brook", func(d *design.Design) {
			if d.Bending.Method = c.method; c.layers == 2 {
				d.Ribs.Width, d.Thwarts[0].At = 30, 62.5 // clear of the wider mortises
			}
		}))
		forms := 0
		for _, p := range Parts(b) {
			said := ""
			for _, l := range p.Letters {
				said += l.Words + " "
			}
			switch {
			case strings.HasPrefix(p.Name, "gauge"):
				if !strings.Contains(said, c.shows) {
					t.Errorf("%v: %s says %q, not %q", c.method, p.Name, said, c.shows)
				}
			case strings.HasPrefix(p.Name, "form"):
				forms++
				if p.Thickness != 18 || !p.Loose || len(p.Letters) != 1 || !strings.HasPrefix(said, "form ") {
					t.Errorf("%s: %.0f mm, loose %v, %q", p.Name, p.Thickness, p.Loose, said)
				}
				for _, o := range p.Cut {
					if !o.Closed() || !o.Joined() {
						t.Errorf("%s has an open outline", p.Name)
					}
				}
				at := p.Letters[0].At
				for _, h := range p.Cut[:len(p.Cut)-1] {
					if h.Bounds().Holds(geometry.Point{X: at.X, Y: at.Y + 2}) {
						t.Errorf("%s is lettered on a hole", p.Name)
					}
				}
			}
		}
		if want := c.layers * len(b.Frame.RibGroups); forms != want {
			t.Errorf("%v: %d layers of forms to cut, want %d", c.method, forms, want)
		}
	}
}

// TestMethodWords: the words to the patterns say how tight the ribs are bent and when a gauge is
// held to one, by the method; a strap is not asked for without forms.
func TestMethodWords(t *testing.T) {
	for _, c := range []struct {
		method design.Method
		want   []string
	}{
		{design.InPlace, []string{"Ribs are bent hot 8 % tighter", "as it stands in the boat", "IT WANTS A STRAP, and a strap wants forms"}},
		{design.OnForms, []string{"Rib forms are 8 % tighter", "show it free", "USE A STRAP"}},
	} {
		b := bent(t, frametest.Shipped(t, "brook", func(d *design.Design) { d.Bending.Method, d.Ribs.Thickness = c.method, 7.5 }))
		said := ""
		for _, n := range Reading(b, measure.Metric) {
			said += strings.Join(n.Lines, "\n") + "\n"
		}
		for _, w := range c.want {
			if !strings.Contains(said, w) {
				t.Errorf("%v: the words to the patterns do not say %q", c.method, w)
			}
		}
		strip := words(RibStrip(b, b.Frame.RibGroups[0], measure.Imperial))
		if hand := strings.Contains(strip, ", hot "); hand != (c.method == design.InPlace) || !strings.Contains(strip, "relax to ") || hand == strings.Contains(strip, ", form ") {
			t.Errorf("%v: the strip says %q", c.method, strip)
		}
	}
}

// TestFormWordsInOnePiece: joints keep off the words of a form, which stand on one piece.
func TestFormWordsInOnePiece(t *testing.T) {
	b := bent(t, frametest.Shipped(t, "lake", onForms))
	for i := range b.Forms {
		d := Form(b, i, measure.Metric)
		within := func(spans []layout.Span, from, to float64) bool {
			return slices.ContainsFunc(spans, func(s layout.Span) bool { return s.From <= from && to <= s.To })
		}
		for _, w := range d.Texts {
			if r := w.Bounds(); !within(d.Keep, r.Min.X, r.Max.X) || !within(d.KeepUp, r.Min.Y, r.Max.Y) {
				t.Errorf("%s: a joint may cut %q at %v", d.Name, w.Words, r)
			}
		}
	}
}
