package lettering

import (
	"math"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"ribwright/geometry"
)

func TestGlyphsHaveAsciiAndMore(t *testing.T) {
	for r := ' '; r <= '~'; r++ {
		if _, ok := glyphs()[r]; !ok {
			t.Errorf("no glyph for %q", r)
		}
	}
	for _, r := range "\u00d7\u00b0\u00b1\u00d8\u2013\u2014" {
		if _, ok := glyphs()[r]; !ok {
			t.Errorf("no glyph for %+q", r)
		}
	}
}

// A glyph outside Safe's reach could never be drawn.
func TestGlyphsAreSafe(t *testing.T) {
	for r := range glyphs() {
		if s := string(r); r != ' ' && Safe(s) != s {
			t.Errorf("Safe never returns %+q", r)
		}
	}
}

func TestGlyphsAreWellFormed(t *testing.T) {
	point := `-?\d+(\.\d+)?,-?\d+(\.\d+)?`
	stroke := regexp.MustCompile(`^` + point + `( ~?` + point + `)* ` + point + `$`)
	for r, g := range glyphs() {
		if r == ' ' {
			continue
		}
		for text := range strings.SplitSeq(g.strokes, " | ") {
			if !stroke.MatchString(text) {
				t.Errorf("%q: bad stroke %q", r, text)
			}
		}
	}
}

// Each glyph fills its own width and no more, so that gaps are even.
func TestGlyphsFillTheirBox(t *testing.T) {
	for r, g := range glyphs() {
		if r == ' ' {
			continue
		}
		low, high := g.width, 0.0
		for _, line := range g.lines {
			for i, p := range line {
				low, high = min(low, p.X), max(high, p.X)
				if p.X < 0 || p.X > g.width || p.Y < -4 || p.Y > 14 {
					t.Errorf("%q reaches %v", r, p)
				}
				if i > 0 && p == line[i-1] {
					t.Errorf("%q stands still at %v", r, p)
				}
			}
		}
		if low > 1 || high < g.width-1 {
			t.Errorf("%q fills %g to %g of %g", r, low, high, g.width)
		}
	}
}

func TestCapitalsAndDigitsAreCapHigh(t *testing.T) {
	for _, r := range "ABCDEFGHIJKLMNOPRSTUVWXYZ0123456789" {
		low, high := 99.0, -99.0
		for _, line := range glyphs()[r].lines {
			for _, p := range line {
				low, high = min(low, p.Y), max(high, p.Y)
			}
		}
		if low != 0 || high != gridCap {
			t.Errorf("%q runs from %g to %g", r, low, high)
		}
	}
}

func TestGlyphsDiffer(t *testing.T) {
	for r, g := range glyphs() {
		for s, h := range glyphs() {
			if r < s && reflect.DeepEqual(g.lines, h.lines) {
				t.Errorf("%q and %q are drawn alike", r, s)
			}
		}
	}
}

// Characters that are taken for each other in plain lettering must differ
// somewhere by a tenth of the height of a capital, however they are lined up:
// left, middle or right. Common practice, no source.
func TestGlyphsAreNotMistaken(t *testing.T) {
	for _, pair := range []string{
		"0O", "0D", "0Q", "0o", "OQ", "OD", "1I", "1l", "Il", "1|", "I|", "l|", "i!", "1i", "17",
		"68", "69", "89", "38", "3B", "8B", "FP", "FE", "PR", "5S", "56", "2Z", "CG", "UV", "MN", "CO",
	} {
		t.Run(pair, func(t *testing.T) {
			a, b := glyphs()[rune(pair[0])], glyphs()[rune(pair[1])]
			least := math.Inf(1)
			for _, shift := range []float64{0, (a.width - b.width) / 2, a.width - b.width} {
				p, q := samples(a, 0), samples(b, shift)
				least = min(least, max(farthest(p, q), farthest(q, p)))
			}
			if want := gridCap / 10.0; least < want {
				t.Errorf("%q differs by %.2f, want %.2f of %d units of height", pair, least, want, gridCap)
			}
		})
	}
}

// samples returns points along the strokes of g, moved right by shift.
func samples(g glyph, shift float64) []geometry.Point {
	var out []geometry.Point
	for _, line := range g.lines {
		for i := 1; i < len(line); i++ {
			n := int(line[i].Sub(line[i-1]).Norm()/0.2) + 1
			for k := 0; k <= n; k++ {
				out = append(out, line[i-1].Lerp(line[i], float64(k)/float64(n)).Add(geometry.Point{X: shift}))
			}
		}
	}
	return out
}

// farthest returns the distance of the point of a that is farthest from b.
func farthest(a, b []geometry.Point) float64 {
	worst := 0.0
	for _, p := range a {
		least := math.Inf(1)
		for _, q := range b {
			least = min(least, q.Sub(p).Norm())
		}
		worst = max(worst, least)
	}
	return worst
}

func TestBendIsOnTheCurve(t *testing.T) {
	line := flatten([]string{"0,0", "~2,0", "~2,4", "0,4"})
	if n := len(line); n != 1+2*curveSteps {
		t.Fatalf("%d points", n)
	}
	if mid := line[curveSteps]; mid.X != 2 || mid.Y != 2 {
		t.Errorf("half way at %v", mid)
	}
	if q := line[curveSteps/2]; q.X != 1.5 || q.Y != 0.5 {
		t.Errorf("quarter way at %v", q)
	}
}
