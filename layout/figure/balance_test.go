package figure

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/trial/balance"
	"ribwright/layout"
)

func figureOf(t *testing.T, name string, out ...string) (layout.Drawing, *balance.Boat, []balance.Trial) {
	t.Helper()
	f := frametest.Shipped(t, name, nil)
	b, err := balance.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	w, err := b.Choose(out)
	if err != nil {
		t.Fatal(err)
	}
	trials, err := b.Trials(w, 10)
	if err != nil {
		t.Fatal(err)
	}
	return Balance(f.Design.Title, b, w, trials, 10), b, trials
}

// TestFigure measures the picture: the gunwales stand apart by the beam at the
// scale stated, and by the change of beam exaggerated by the factor stated.
func TestFigure(t *testing.T) {
	for _, name := range design.ShippedNames() {
		d, b, trials := figureOf(t, name, "all")
		var scale, factor float64
		for _, w := range d.Texts {
			if strings.HasPrefix(w.Words, "Drawn at") {
				if _, err := fmt.Sscanf(w.Words, "Drawn at 1 to %f; changes of shape are exaggerated %f times", &scale, &factor); err != nil {
					t.Fatal(err)
				}
			}
		}
		aft, fore := b.Frame.Gunwale.Line.Ends()
		exact := (fore - aft) / wideFigure
		if math.Abs(exact-scale) > 0.5 {
			t.Errorf("%s: drawn at 1 to %.1f, said 1 to %.0f", name, exact, scale)
		}
		var solid []float64 // widest of each pair of solid gunwales, top down
		for _, s := range d.Strokes {
			if s.Pen == layout.Cut && len(s.Path) > 100 {
				solid = append(solid, s.Path.Bounds().Max.Y, s.Path.Bounds().Min.Y)
			}
		}
		if len(solid) != 4*len(trials) {
			t.Fatalf("%s: %d solid gunwales for %d trials", name, len(solid)/2, len(trials))
		}
		for i, trial := range trials {
			most := 0.0
			for x := aft; x <= fore; x++ {
				most = math.Max(most, b.Frame.Gunwale.Line.Point(x).Y+factor*trial.Out.At(x))
			}
			if drawn := (solid[4*i] - solid[4*i+3]) * exact; math.Abs(drawn-2*most) > 0.002*most {
				t.Errorf("%s, %s: drawn %.1f mm wide, want %.1f", name, trial.Set, drawn, 2*most)
			}
		}
	}
}

// TestFigureWords: the forces are lettered, and no words lie on others.
func TestFigureWords(t *testing.T) {
	for _, name := range design.ShippedNames() {
		d, _, trials := figureOf(t, name, "thwart-1")
		for _, trial := range trials {
			band := fmt.Sprintf("%.0f mm narrower or %.0f mm wider.", -trial.Band.Least.Moved, trial.Band.Most.Moved)
			if !slices.ContainsFunc(d.Texts, func(w layout.Text) bool { return strings.HasSuffix(w.Words, band) }) {
				t.Errorf("%s, %s: the band is not lettered: %s", name, trial.Set, band)
			}
			for _, p := range trial.In.Struts {
				found := false
				for _, w := range d.Texts {
					found = found || w.Words == newtons(p)
				}
				if !found {
					t.Errorf("%s: a force of %s N is not lettered", name, newtons(p))
				}
			}
		}
		for i, a := range d.Texts {
			for _, b := range d.Texts[:i] {
				ba, bb := a.Bounds(), b.Bounds()
				if ba.Min.X < bb.Max.X && bb.Min.X < ba.Max.X && ba.Min.Y < bb.Max.Y && bb.Min.Y < ba.Max.Y {
					t.Errorf("%s: %q lies on %q", name, a.Words, b.Words)
				}
			}
		}
	}
}

// TestExaggeration takes the roundest factor that draws no change over 6 mm.
func TestExaggeration(t *testing.T) {
	for _, c := range []struct{ move, scale, want float64 }{
		{1, 0.05, 20}, {10, 0.05, 10}, {100, 0.05, 1}, {1000, 0.05, 1}, {0, 0.05, 20}, {5.9, 0.05, 20}, {6.1, 0.05, 10},
	} {
		s := &balance.State{Offset: []float64{0, -c.move}}
		if got := exaggeration([]balance.Trial{{In: s, Out: s}}, c.scale); got != c.want {
			t.Errorf("%g mm at %g: %g times, want %g", c.move, c.scale, got, c.want)
		}
	}
}
