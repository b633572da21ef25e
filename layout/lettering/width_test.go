package lettering

import (
	"math"
	"testing"
	"unicode"
)

func TestWidthKnown(t *testing.T) {
	for s, want := range map[string]float64{
		"A": 667, "i": 222, "W": 944, "0": 556, " ": 278, "@": 1015, "'": 191, "M": 833, "-": 333,
		"\u00b0": 400, "\u00d7": 584, "\u20ac": 556, "\u2014": 1000, "\u00e9": 556, "\u0160": 667,
		"\u65e5": 556, "\xff": 556, "\n": 556, "Wi": 1166,
	} {
		// Capitals of CapHeight mm make an em of 1 mm.
		if got := 1000 * Width(s, CapHeight); math.Abs(got-want) > 1e-9 {
			t.Errorf("Width(%+q) = %g, want %g", s, got, want)
		}
	}
}

func TestWidthEdges(t *testing.T) {
	for _, h := range []float64{0, -1, math.NaN(), math.Inf(-1)} {
		if w := Width("abc", h); w != 0 {
			t.Errorf("Width at height %g = %g", h, w)
		}
	}
	if w := Width("", math.Inf(1)); w != 0 {
		t.Errorf("Width of nothing = %g", w)
	}
}

func TestWidthAdds(t *testing.T) {
	text := []rune("Inside stem, 12\u00d718 mm (No. 7) \u2013 5' 6 1/2\"")
	whole := Width(string(text), 3.5)
	for i := range text {
		if sum := Width(string(text[:i]), 3.5) + Width(string(text[i:]), 3.5); math.Abs(sum-whole) > 1e-9 {
			t.Errorf("cut at %d: %g, whole %g", i, sum, whole)
		}
	}
	if twice := Width(string(text), 7); math.Abs(twice-2*whole) > 1e-9 {
		t.Errorf("twice as high is %g wide, not twice %g", twice, whole)
	}
}

// Each character has its own code, and every code but five has a character.
func TestCodes(t *testing.T) {
	seen := map[byte]rune{}
	for r := rune(0); r <= unicode.MaxRune; r++ {
		if b, ok := code(r); ok {
			if old, twice := seen[b]; twice {
				t.Errorf("%+q and %+q share code %#x", old, r, b)
			}
			seen[b] = r
		}
	}
	if len(seen) != 256-32-1-5 {
		t.Errorf("%d codes", len(seen))
	}
}
