package job

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/render/rendertest"
)

// TestPrintedTruth prints corrected sheets on a printer that is off by what the
// flags say, and measures what comes out: it must be as true as an uncorrected set
// on a true printer. No ink may lie in the margins, wherever the ink is moved.
func TestPrintedTruth(t *testing.T) {
	const across, down = 1.004, 0.9985
	for _, row := range []struct {
		design, paper, way string
		flags              []string
		room               [4]float64 // left, bottom, right, top margins, mm
	}{
		{"river", "letter", "lying", nil, [4]float64{10, 12.7, 10, 10}},
		{"brook", "a4", "standing", []string{"--margins", "left 8 mm, bottom 15 mm", "--offset", "right 1.5 mm, down 0.5 mm"}, [4]float64{8, 15, 10, 10}},
		{"lake", "both", "lying", []string{"--margins", "7 mm", "--offset", "left 2 mm"}, [4]float64{7, 7, 7, 7}},
	} {
		t.Run(row.design+" on "+row.paper, func(t *testing.T) {
			t.Parallel()
			flags := append(row.flags, "--way", row.way, "--printed-across", "200.8 mm of 200 mm", "--printed-down", "199.7 mm of 200 mm")
			s := loftAndRead(t, row.design, row.paper, flags...)
			for i, p := range s.pages {
				room := rendertest.Box{X0: row.room[0], Y0: row.room[1], X1: p.W - row.room[2], Y1: p.H - row.room[3]}.Grow(2 * rounding)
				s.checkInk(t, i, p, room)
				if !slices.ContainsFunc(p.Texts, func(x rendertest.Text) bool {
					return strings.Contains(x.Words, "corrected across 1.0040, down 0.9985")
				}) {
					t.Errorf("page %d does not say how it is corrected", i+1)
				}
			}
			kx, ky := across, down
			if row.way == "lying" {
				kx, ky = ky, kx
			}
			for i, p := range s.pages {
				s.pages[i] = p.Printed(kx, ky)
			}
			for i, v := range s.numbers.Pages {
				s.numbers.Pages[i] = v.Printed(kx, ky)
				m := s.numbers.Pages[i].ToSheet // as it lies or turned by a quarter
				closeTo(t, v.String()+": stretch along x once printed", math.Hypot(m[0], m[1]), 1, 1e-6)
				closeTo(t, v.String()+": stretch along y once printed", math.Hypot(m[2], m[3]), 1, 1e-6)
			}
			t.Run("scale bars", s.checkBars)
			t.Run("mortises", s.checkMortises)
			t.Run("ribs to mark", s.checkRibStick)
			t.Run("crosses", s.checkCrosses)
			t.Run("cover", s.checkCover)
			t.Run("gunwale strip", s.checkGunwaleStrip)
		})
	}
}

// TestOtherPapers reads back sets on every size of paper there is.
func TestOtherPapers(t *testing.T) {
	// Sources as in layout/paper; the frame of "both" lies on letter and a4.
	for paper, size := range map[string][2]float64{
		"legal": {215.9, 355.6}, "tabloid": {279.4, 431.8}, "a3": {297, 420}, "both": {210, 279.4}, "12x18in": {304.8, 457.2},
	} {
		if !long && paper != "both" && paper != "12x18in" {
			continue
		}
		t.Run(paper, func(t *testing.T) {
			t.Parallel()
			s := loftAndRead(t, "brook", paper)
			if strings.Contains(s.said, ", lying") {
				size[0], size[1] = size[1], size[0]
			}
			t.Run("sheets", func(t *testing.T) { s.checkSheets(t, size) })
			t.Run("scale bars", s.checkBars)
			t.Run("margins", s.checkMargins)
			t.Run("mortises", s.checkMortises)
			t.Run("crosses", s.checkCrosses)
			t.Run("cover", s.checkCover)
		})
	}
}

// TestRoll checks pages of a roll: as wide as the roll, no longer than viewers
// show (5080 mm; PDF Reference 1.7, appendix C), and no longer than the patterns
// need.
func TestRoll(t *testing.T) {
	for paper, wide := range map[string]float64{"roll24": 24 * 25.4, "roll36": 36 * 25.4} {
		if paper == "roll36" && !long {
			continue // where there is time, as in CI
		}
		t.Run(paper, func(t *testing.T) {
			t.Parallel()
			s := loftAndRead(t, "river", paper)
			for i, p := range s.pages {
				closeTo(t, fmt.Sprintf("page %d: across the roll", i+1), min(p.W, p.H), wide, rounding)
				if max(p.W, p.H) > 5080+rounding {
					t.Errorf("page %d is %.1f mm long", i+1, max(p.W, p.H))
				}
			}
			if n := len(s.numbers.Views()["mortises"]); n > 1 {
				t.Errorf("the gunwale strip of 4.95 m is in %d pieces on a roll", n)
			}
			t.Run("scale bars", s.checkBars)
			t.Run("margins", s.checkMargins)
			t.Run("mortises", s.checkMortises)
			t.Run("crosses", s.checkCrosses)
			t.Run("cover", s.checkCover)
		})
	}
}
