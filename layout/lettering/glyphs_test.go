package lettering

import (
	"reflect"
	"regexp"
	"strings"
	"testing"
)

func TestGlyphsHaveAsciiAndMore(t *testing.T) {
	for r := ' '; r <= '~'; r++ {
		if _, ok := glyphs[r]; !ok {
			t.Errorf("no glyph for %q", r)
		}
	}
	for _, r := range "\u00d7\u00b0\u00b1\u00d8\u2013\u2014" {
		if _, ok := glyphs[r]; !ok {
			t.Errorf("no glyph for %+q", r)
		}
	}
}

// A glyph outside Safe's reach could never be drawn.
func TestGlyphsAreSafe(t *testing.T) {
	for r := range glyphs {
		if s := string(r); r != ' ' && Safe(s) != s {
			t.Errorf("Safe never returns %+q", r)
		}
	}
}

func TestGlyphsAreWellFormed(t *testing.T) {
	point := `-?\d+(\.\d+)?,-?\d+(\.\d+)?`
	stroke := regexp.MustCompile(`^` + point + `( ~?` + point + `)* ` + point + `$`)
	for r, g := range glyphs {
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
	for r, g := range glyphs {
		if r == ' ' {
			continue
		}
		low, high := g.width, 0.0
		for _, line := range g.lines() {
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
		for _, line := range glyphs[r].lines() {
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
	for r, g := range glyphs {
		for s, h := range glyphs {
			if r < s && reflect.DeepEqual(g.lines(), h.lines()) {
				t.Errorf("%q and %q are drawn alike", r, s)
			}
		}
	}
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
