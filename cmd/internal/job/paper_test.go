package job

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/layout/pattern"
)

// TestEconomy holds the number of sheets against a bound that no packing can
// beat: the boxes around all patterns over what lies within the margins of a
// standing sheet, 195.9 x 256.7 mm of letter. Laps, captions, title blocks, scale bars and
// the first sheets are the price.
func TestEconomy(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		bent, err := bend.Of(f)
		if err != nil {
			t.Fatal(err)
		}
		bound := 0.0
		for _, p := range pattern.All(bent, measure.Metric, pattern.Stick) {
			b := p.Bounds()
			bound += b.W() * b.H() / (195.9 * 256.7)
		}
		l, err := lay(t, name, "--paper", "letter", "--way", "standing", "--nest", "quick")
		if err != nil {
			t.Fatal(err)
		}
		n := float64(len(l.printed.Sheets))
		t.Logf("%s: %.0f sheets, bound %.1f, ratio %.2f", name, n, bound, n/bound)
		if n > 1.6*bound {
			t.Errorf("%s takes %.0f sheets, %.2f times the bound of %.1f", name, n, n/bound, bound)
		}
		if math.Abs(l.Least-bound) > 1e-6 {
			t.Errorf("%s: the program says the patterns would fill %.3f sheets, want %.3f", name, l.Least, bound)
		}
	}
}

// TestOffset checks that an offset moves all ink of every sheet alike: a set with
// an offset is the set with as much wider margins, moved.
func TestOffset(t *testing.T) {
	moved, err := lay(t, "brook", "--nest", "quick", "--margins", "10 mm", "--offset", "right 1.5 mm, down 0.5 mm")
	if err != nil {
		t.Fatal(err)
	}
	still, err := lay(t, "brook", "--nest", "quick", "--margins", "left 10 mm, top 10 mm, right 11.5 mm, bottom 10.5 mm")
	if err != nil {
		t.Fatal(err)
	}
	if len(moved.printed.Sheets) != len(still.printed.Sheets) {
		t.Fatalf("%d sheets moved, %d not", len(moved.printed.Sheets), len(still.printed.Sheets))
	}
	by := geometry.Point{X: 1.5, Y: -0.5}
	for i, s := range moved.printed.Sheets {
		o := still.printed.Sheets[i]
		for j, v := range s.Views {
			if got := v.ToSheet.Apply(v.Frame.Min).Sub(o.Views[j].ToSheet.Apply(o.Views[j].Frame.Min)); got.Sub(by).Norm() > 1e-9 {
				t.Errorf("sheet %d: piece %d is moved by %v, want %v", i+1, j, got, by)
			}
		}
		for j, k := range s.Strokes {
			if got := k.Path.Bounds().Min.Sub(o.Strokes[j].Path.Bounds().Min); got.Sub(by).Norm() > 1e-9 {
				t.Errorf("sheet %d: line %d is moved by %v, want %v", i+1, j, got, by)
			}
		}
		for j, x := range s.Texts {
			if got := x.At.Sub(o.Texts[j].At); got.Sub(by).Norm() > 1e-9 {
				t.Errorf("sheet %d: %q is moved by %v, want %v", i+1, x.Words, got, by)
			}
		}
	}
}

// TestFirstSheetExplains checks that sheet 1 explains what stands on the others,
// for nobody has a screen at the bench.
func TestFirstSheetExplains(t *testing.T) {
	for _, name := range design.ShippedNames() {
		for _, flags := range [][]string{{"--paper", "letter"}, {"--paper", "a4", "--way", "lying"}, {"--paper", "roll24"}} {
			l, err := lay(t, name, append(flags, "--nest", "quick")...)
			if err != nil {
				t.Fatal(err)
			}
			said := wordsOf(l.printed.Sheets[0].Texts)
			for _, w := range []string{"M, F, A: ribs", "S1 to S", "lean out", "Hollow bar", `"3-4"`, `"A1-A2"`, "cut to the middle of this line", "100 %"} {
				if !strings.Contains(said, w) {
					t.Errorf("%s %v: sheet 1 does not explain %q", name, flags, w)
				}
			}
		}
	}
}
