package layout

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
)

// TestRuleMeasures lays a real rule on a scale bar of 8 in, lying and standing: the
// ticks on its left stand at every centimetre and those on its right at every inch
// of 25.4 mm, and each figure names the mark that it stands at.
func TestRuleMeasures(t *testing.T) {
	const long = 203.2
	for _, along := range []geometry.Point{{X: 1}, {Y: 1}} {
		var s Sheet
		from := geometry.Point{X: 30, Y: 40}
		s.Rule(from, along, long)
		if got := s.Strokes[0].Path.Length(); math.Abs(got-long) > 1e-9 {
			t.Errorf("the bar is %.3f mm long, want %g", got, long)
		}
		centimeters, inches := map[string]bool{}, map[string]bool{}
		for _, k := range s.Strokes[1:] {
			ends := k.Path.Flatten(0.1)
			a, b := ends[0], ends[len(ends)-1]
			at, side := a.Sub(from).Dot(along), b.Sub(a).Dot(along.Left())
			if side > 0 {
				centimeters[fmt.Sprintf("%.3f", at)] = true
			} else {
				inches[fmt.Sprintf("%.3f", at)] = true
			}
		}
		for i := 0; i <= 20; i++ {
			if !centimeters[fmt.Sprintf("%.3f", float64(i)*10)] {
				t.Errorf("no tick at %d cm", i)
			}
		}
		for i := 0; i <= 8; i++ {
			if !inches[fmt.Sprintf("%.3f", float64(i)*25.4)] {
				t.Errorf("no tick at %d in", i)
			}
		}
		if len(centimeters) != 21 || len(inches) != 9 {
			t.Errorf("%d ticks of centimeters and %d of inches, want 21 and 9", len(centimeters), len(inches))
		}
		units := 0
		for _, x := range s.Texts {
			words, unit := x.Words, 25.4
			if x.At.Sub(from).Dot(along.Left()) > 0 {
				unit = 1
			}
			if strings.HasSuffix(words, " mm") || strings.HasSuffix(words, " in") {
				units++
				if strings.HasSuffix(words, " mm") != (unit == 1) {
					t.Errorf("%q stands on the wrong side", words)
				}
			}
			var figure float64
			if _, err := fmt.Sscanf(words, "%f", &figure); err != nil {
				t.Errorf("%q is no figure", words)
			}
			if off := math.Abs(x.At.Sub(from).Dot(along) - figure*unit); off > 2.01 {
				t.Errorf("%q stands %.2f mm from its mark", words, off)
			}
		}
		if units != 2 {
			t.Errorf("%d figures have their unit, want the last of each side", units)
		}
	}
}

// TestBarMeasures lays a real rule on a slim bar of 4 in = 101.6 mm, lying and standing: it ends
// at the last inch, has ticks at centimeters on its left and at inches of 25.4 mm on its right,
// and "100 mm" ends just before its tick; nothing reaches farther than is said.
func TestBarMeasures(t *testing.T) {
	for _, along := range []geometry.Point{{X: 1}, {Y: 1}} {
		var s Sheet
		from := geometry.Point{X: 30, Y: 40}
		s.Bar(from, along, 4)
		left, right := map[string]bool{}, map[string]bool{}
		for _, k := range s.Strokes[1:] {
			ends := k.Path.Flatten(0.1)
			a, b := ends[0], ends[len(ends)-1]
			at, side := a.Sub(from).Dot(along), b.Sub(a).Dot(along.Left())
			if side > 0 {
				left[fmt.Sprintf("%.1f", at)] = true
			} else {
				right[fmt.Sprintf("%.1f", at)] = true
			}
			if side > BarLeft || side < -BarRight {
				t.Errorf("a tick of %.2f mm", side)
			}
		}
		for i := range 11 {
			if !left[fmt.Sprintf("%d.0", 10*i)] {
				t.Errorf("no tick at %d cm", i)
			}
		}
		for _, at := range []string{"0.0", "25.4", "50.8", "76.2", "101.6"} {
			if !right[at] {
				t.Errorf("no tick at %s mm on the side of inches", at)
			}
		}
		if long := s.Strokes[0].Path.Length(); math.Abs(long-101.6) > 1e-9 || len(left) != 11 || len(right) != 5 {
			t.Errorf("a bar of %.2f mm with %d and %d ticks", long, len(left), len(right))
		}
		said := map[string]float64{}
		for _, x := range s.Texts {
			said[x.Words] = x.At.Sub(from).Dot(along)
			b := x.Bounds()
			for _, p := range []geometry.Point{b.Min, b.Max} {
				if p = p.Sub(from); p.Dot(along) > 101.6+BarOver || p.Dot(along.Left()) > BarLeft+1e-9 || p.Dot(along.Left()) < -BarRight-1e-9 {
					t.Errorf("%q reaches %.2f", x.Words, p)
				}
			}
		}
		if at := said["100 mm"]; at > 99 || at < 97 {
			t.Errorf("100 mm stands at %.1f mm", at)
		}
		if at := said["4 in"]; at < 101.6 || at > 103.6 {
			t.Errorf("4 in stands at %.1f mm", at)
		}
	}
}

// TestCutIsBoldest: what is cut is drawn heaviest and what only helps finest, so that
// nobody saws along a guide.
func TestCutIsBoldest(t *testing.T) {
	pens := Pens()
	for i := 1; i < len(pens); i++ {
		if pens[i].Width() > pens[i-1].Width() {
			t.Errorf("pen %d is heavier than pen %d", pens[i], pens[i-1])
		}
	}
	if Cut.Width() < 1.5*Mark.Width() || Cut.Dash() != nil || Mark.Dash() != nil {
		t.Errorf("a cut is %.2f mm and a mark %.2f mm wide", Cut.Width(), Mark.Width())
	}
}
