package eyes

import (
	"fmt"
	"strings"
	"testing"

	"ribwright/render/rendertest"
)

// TestRule holds the instrument itself against a file written by hand, whose
// lines are where its numbers say (ISO 32000-1, 8.3.2.3: a unit is 1/72 inch).
// Pages of whole points and of fractions, small and as long as can be.
func TestRule(t *testing.T) {
	const may = 0.01 // mm: a tenth of a dot, a tenth of what is tested with it
	for _, w := range []float64{595, 595.28, 612, 841.89, 2592.5, 14000.7} {
		h := w * 1.3
		content := fmt.Sprintf("%.4f w ", 0.35/mmPerPoint)
		var lines []Line
		for i := 1; i <= 9; i++ {
			x, y := w*float64(i)/10, h*float64(i)/10
			content += fmt.Sprintf("%.4f 0 m %.4f %.4f l S 0 %.4f m %.4f %.4f l S ", x, x, h, y, w, y)
			lines = append(lines, straight("upright", x, 0, x, h), straight("level", 0, y, w, y))
		}
		for _, at := range []float64{0.1, 0.5, 0.9} {
			x, y := w*at, h*at
			content += fmt.Sprintf("%.4f %.4f m %.4f %.4f l S ", x, y, x+50, y+30)
			lines = append(lines, straight("slanting", x, y, x+50, y+30))
		}
		var all Reading
		for _, at := range []float64{0.1, 0.5, 0.9} {
			// A window beside where the lines cross, on each of them.
			x, y := w*at*mmPerPoint, h*at*mmPerPoint
			for _, part := range []rendertest.Box{{X0: x - 4, Y0: y + 8, X1: x + 4, Y1: y + 16}, {X0: x + 8, Y0: y - 4, X1: x + 16, Y1: y + 4}, {X0: x + 3, Y0: y + 1, X1: x + 16, Y1: y + 11}} {
				r := NewRaster(part)
				drawHand(t, w, h, content, Motion{1, 0, 0, 1, 0, 0}, r)
				for _, l := range lines {
					all.Join(r.Measure(l, 0.35))
				}
			}
		}
		t.Logf("a page %.2f points wide: %v", w, all)
		if all.Count < 30 || all.Unclear > 0 || all.Worst > may {
			t.Errorf("a page %.2f points wide: %v; %d unclear: %s", w, all, all.Unclear, all.Unclearly)
		}
	}
}

// straight returns a line between points given in PDF units.
func straight(name string, ax, ay, bx, by float64) Line {
	return Line{Name: name, Points: []rendertest.Point{{X: ax * mmPerPoint, Y: ay * mmPerPoint}, {X: bx * mmPerPoint, Y: by * mmPerPoint}}}
}

// TestRuleSeesFaults: a line 0.12 mm off is measured so, and one of another
// weight, or with a neighbour, is not taken for it.
func TestRuleSeesFaults(t *testing.T) {
	line := Line{Name: "asked", Points: []rendertest.Point{{X: 0, Y: 10}, {X: 20, Y: 10}}}
	draw := func(weight float64, at ...float64) *Raster {
		r := NewRaster(rendertest.Box{X0: -2, Y0: 0, X1: 22, Y1: 20})
		for _, y := range at {
			r.Rule([]Line{{Points: []rendertest.Point{{X: 0, Y: y}, {X: 20, Y: y}}}}, weight)
		}
		return r
	}
	if got := draw(0.35, 10.12).Measure(line, 0.35); got.Worst < 0.11 || got.Worst > 0.13 {
		t.Errorf("a line 0.12 mm off is measured as %v", got)
	}
	for what, r := range map[string]*Raster{"no line": draw(0.35), "a thin line": draw(0.22, 10), "two lines": draw(0.35, 10, 10.5)} {
		if got := r.Measure(line, 0.35); got.Unclear != got.Count || got.Count == 0 {
			t.Errorf("%s is taken for the line: %v", what, got)
		}
	}
}

// drawHand draws a page written by hand.
func drawHand(t *testing.T, w, h float64, content string, to Motion, r *Raster) {
	t.Helper()
	f, err := eyesOf(t).Open(hand(w, h, content))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	p, err := f.Page(1)
	if err != nil {
		t.Fatal(err)
	}
	defer p.Close()
	if err := p.Draw(to, r); err != nil {
		t.Fatal(err)
	}
}

// hand writes a file of one page (ISO 32000-1, annex H.2).
func hand(w, h float64, content string) []byte {
	var b strings.Builder
	var at []int
	b.WriteString("%PDF-1.4\n")
	for i, object := range []string{
		"<</Type/Catalog/Pages 2 0 R>>",
		"<</Type/Pages/Kids[3 0 R]/Count 1>>",
		fmt.Sprintf("<</Type/Page/Parent 2 0 R/MediaBox[0 0 %g %g]/Contents 4 0 R/Resources<<>>>>", w, h),
		fmt.Sprintf("<</Length %d>>\nstream\n%s\nendstream", len(content), content),
	} {
		at = append(at, b.Len())
		fmt.Fprintf(&b, "%d 0 obj\n%s\nendobj\n", i+1, object)
	}
	xref := b.Len()
	fmt.Fprintf(&b, "xref\n0 %d\n0000000000 65535 f \n", len(at)+1)
	for _, o := range at {
		fmt.Fprintf(&b, "%010d 00000 n \n", o)
	}
	fmt.Fprintf(&b, "trailer\n<</Size %d/Root 1 0 R>>\nstartxref\n%d\n%%%%EOF\n", len(at)+1, xref)
	return []byte(b.String())
}
