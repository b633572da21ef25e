package preview

import (
	"fmt"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/label"
	"ribwright/layout/plate/nest"
)

// parts are boards of two thicknesses, some of one name.
func parts(n int) []layout.Part {
	var out []layout.Part
	for i := range n {
		w, h := 80+40*float64(i%5), 300+100*float64(i%7)
		out = append(out, layout.Part{Name: fmt.Sprintf("part %d", i/2), Material: "plywood", Thickness: 4 + 2*float64(i%3), Cut: []curve.Path{curve.Rectangle(geometry.Rect(0, 0, w, h))}})
	}
	return append(out, layout.Part{Name: "gauge F1, A1", Material: "plywood", Thickness: 4, Cut: []curve.Path{curve.Rectangle(geometry.Rect(0, 0, 50, 90))}})
}

func laidOn(t *testing.T, n int) layout.Plate {
	t.Helper()
	p, err := nest.Lay("Boat", parts(n), nest.Options{Stock: nest.Stock{W: 1220, H: 2440}, Gap: 6, Quick: true, ByThickness: true})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestSheet: all plates stand on one sheet within its margins, at one scale, each as wide
// and as high as it is; the words name every part and lie on nothing and on no other words.
func TestSheet(t *testing.T) {
	for _, area := range []geometry.Box{geometry.Rect(10, 12.7, 269.4, 205.9), geometry.Rect(10, 12.7, 200, 287)} {
		for _, n := range []int{1, 12, 60} {
			p := laidOn(t, n)
			s, ok := Sheet(p, area, strings.Clone)
			if !ok {
				t.Fatalf("%d parts have no room", n)
			}
			var per float64
			var ground label.Ground
			plates := 0
			for _, k := range s.Strokes {
				if b := k.Path.Bounds(); !area.Grow(0.01).Holds(b.Min) || !area.Grow(0.01).Holds(b.Max) {
					t.Errorf("%d parts: a line at %v", n, b)
				} else if k.Pen == layout.Mark && b.W() > 1 && b.H() > 1 {
					scale := p.Boards[plates].Box.W() / b.W()
					if per == 0 {
						per = scale
					}
					if up := p.Boards[plates].Box.H() / b.H(); scale-per > 1e-6 || per-scale > 1e-6 || up-per > 1e-6 || per-up > 1e-6 {
						t.Errorf("%d parts: plate %d is drawn 1 to %.3f and 1 to %.3f", n, plates+1, scale, up)
					}
					plates++
				}
				ground.Line(k.Path)
			}
			if plates != len(p.Boards) {
				t.Errorf("%d parts: %d of %d plates", n, plates, len(p.Boards))
			}
			said := ""
			for _, x := range s.Texts {
				if b := x.Bounds(); !area.Holds(b.Min) || !area.Holds(b.Max) {
					t.Errorf("%d parts: %q leaves the sheet", n, x.Words)
				}
				if !ground.Clear(label.BlockOf(x), 0) {
					t.Errorf("%d parts: %q lies on something", n, x.Words)
				}
				ground.Text(x)
				said += " " + x.Words
			}
			for _, want := range append([]string{fmt.Sprintf("1 to %.0f,", per), "plywood, 4 mm", "stock of 1220 x 2440 mm", "gauges F1 A1"}, names(p)...) {
				if !strings.Contains(said, want) {
					t.Errorf("%d parts: nothing says %q: %s", n, want, said)
				}
			}
		}
	}
	if _, ok := Sheet(layout.Plate{}, geometry.Rect(0, 0, 200, 200), strings.Clone); ok {
		t.Error("no plates take a sheet")
	}
}

func names(p layout.Plate) []string {
	var out []string
	for _, q := range p.Parts {
		if strings.HasPrefix(q.Part.Name, "part") {
			out = append(out, q.Part.Name)
		}
	}
	return out
}
