package proof

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/paper"
)

func setup(t *testing.T, name string, change ...func(*paper.Setup)) paper.Setup {
	t.Helper()
	size, err := paper.ParseSize(name)
	if err != nil {
		t.Fatal(err)
	}
	s := paper.Setup{Size: size, Margins: paper.HomeMargins()}
	for _, c := range change {
		c(&s)
	}
	return s
}

// lines returns the straight lines of a sheet longer than 60 mm.
func bars(s layout.Sheet) (level, upright []float64) {
	for _, k := range s.Strokes {
		b := k.Path.Bounds()
		switch {
		case b.W() > 60 && b.H() == 0:
			level = append(level, b.W())
		case b.H() > 60 && b.W() == 0:
			upright = append(upright, b.H())
		}
	}
	return level, upright
}

// TestBars checks that each bar is as long as it says, is the longest whole
// centimeter or inch that fits (an inch is 25.4 mm), and asks for the flag of the
// paper's edge it runs along.
func TestBars(t *testing.T) {
	tests := []struct {
		paper       string
		lying       bool
		units       measure.System
		level, up   float64
		asksAcross  string
		asksForDown string
	}{
		{"letter", false, measure.Metric, 190, 210, `--printed-across "... of 190 mm"`, `--printed-down "... of 210 mm"`},
		{"letter", true, measure.Metric, 250, 150, `--printed-across "... of 150 mm"`, `--printed-down "... of 250 mm"`},
		{"a4", true, measure.Imperial, 10 * 25.4, 5 * 25.4, `--printed-across "... of 5 in"`, `--printed-down "... of 10 in"`},
		{"a3", false, measure.Metric, 270, 350, `--printed-across "... of 270 mm"`, `--printed-down "... of 350 mm"`},
	}
	for _, tt := range tests {
		t.Run(fmt.Sprint(tt.paper, tt.lying, tt.units), func(t *testing.T) {
			p, err := setup(t, tt.paper).Sheet(tt.lying)
			if err != nil {
				t.Fatal(err)
			}
			s := Lay(p, tt.units).Sheets[0]
			level, upright := bars(s)
			if len(level) != 1 || len(upright) != 1 || math.Abs(level[0]-tt.level) > 1e-9 || math.Abs(upright[0]-tt.up) > 1e-9 {
				t.Errorf("bars of %v and %v mm, want %v and %v", level, upright, tt.level, tt.up)
			}
			said := words(s)
			ways := map[bool]string{false: `--way standing --offset "left 1.5 mm"`, true: `--way lying --offset "left 1.5 mm"`}
			for _, w := range []string{tt.asksAcross, tt.asksForDown, ways[tt.lying]} {
				if !strings.Contains(said, w) {
					t.Errorf("the sheet does not say %s", w)
				}
			}
		})
	}
}

func words(s layout.Sheet) string {
	var all []string
	for _, x := range s.Texts {
		all = append(all, x.Words)
	}
	return strings.Join(all, " ")
}

// TestCorrectedProof checks that a printer that makes 1.004 and 0.9985 of the two
// edges prints the bars of a corrected proof true, on sheets that lie and stand.
func TestCorrectedProof(t *testing.T) {
	for _, lying := range []bool{false, true} {
		p, err := setup(t, "letter", func(s *paper.Setup) { s.Across, s.Down = 1.004, 0.9985 }).Sheet(lying)
		if err != nil {
			t.Fatal(err)
		}
		kx, ky := 1.004, 0.9985
		if lying {
			kx, ky = ky, kx
		}
		level, upright := bars(Lay(p, measure.Metric).Sheets[0])
		for _, v := range []float64{level[0] * kx, upright[0] * ky} {
			if math.Abs(v-math.Round(v/10)*10) > 1e-9 {
				t.Errorf("lying %v: a bar is printed %.4f mm long, want whole centimetres", lying, v)
			}
		}
	}
}

// TestRulers checks that a ruler runs in from each edge of the paper itself,
// millimeter by millimeter, and that nothing else lies in the margins.
func TestRulers(t *testing.T) {
	p, err := setup(t, "a4", func(s *paper.Setup) { s.Across, s.Offset = 1.01, geometry.Point{X: 2, Y: -1} }).Sheet(false)
	if err != nil {
		t.Fatal(err)
	}
	s := Lay(p, measure.Metric).Sheets[0]
	room := geometry.Box{Min: geometry.Point{X: 10, Y: 12.7}, Max: geometry.Point{X: 200, Y: 287}}.Grow(1e-9)
	found := map[string]int{}
	for _, k := range s.Strokes {
		b := k.Path.Bounds()
		c := b.Center()
		switch {
		case b.W() == 0 && b.H() <= 4 && math.Abs(b.Min.Y-148.5) < 1e-9 && c.X <= 20.5:
			found["left"]++
		case b.W() == 0 && b.H() <= 4 && math.Abs(b.Min.Y-148.5) < 1e-9 && c.X >= 189.5:
			found["right"]++
		case b.H() == 0 && b.W() <= 4 && math.Abs(b.Min.X-105) < 1e-9 && c.Y <= 20.5:
			found["bottom"]++
		case b.H() == 0 && b.W() <= 4 && math.Abs(b.Min.X-105) < 1e-9 && c.Y >= 276.5:
			found["top"]++
		case !room.Holds(b.Min) || !room.Holds(b.Max):
			t.Errorf("a line at %v lies in the margins", b)
		}
	}
	for _, edge := range []string{"left", "right", "top", "bottom"} {
		if found[edge] != 20 {
			t.Errorf("%d ticks at the %s edge, want 20", found[edge], edge)
		}
	}
}

// TestNothingCovered checks that no line of lettering lies on another, on any
// paper, in both units.
func TestNothingCovered(t *testing.T) {
	for _, name := range []string{"letter", "a4", "legal", "tabloid", "a3", "both", "200x260", "roll24"} {
		for _, lying := range []bool{false, true} {
			for _, u := range []measure.System{measure.Metric, measure.Imperial} {
				s := setup(t, name)
				if s.Size.Roll {
					s.Size.Down = 800
				}
				p, err := s.Sheet(lying)
				if err != nil {
					continue // too small to lie so
				}
				texts := Lay(p, u).Sheets[0].Texts
				for i, a := range texts {
					for _, b := range texts[:i] {
						if a.Bounds().Grow(-0.4).Overlaps(b.Bounds().Grow(-0.4)) {
							t.Errorf("%s lying %v %v: %q lies on %q", name, lying, u, a.Words, b.Words)
						}
					}
				}
			}
		}
	}
}
