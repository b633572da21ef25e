package lettering

import (
	"math"
	"testing"
)

// Advance widths in thousandths of an em, rounded from 2048 to the em. Source: the table
// hmtx of Go Regular, as fontTools reads it. What the font lacks is as wide as the box.
func TestWidthKnown(t *testing.T) {
	for _, row := range []struct {
		name, text string
		want, tol  float64
	}{
		{"A", "A", 667, 1e-6}, {"i", "i", 247, 1e-6}, {"W", "W", 944, 1e-6}, {"zero", "0", 556, 1e-6},
		{"space", " ", 278, 1e-6}, {"at", "@", 1015, 1e-6}, {"quote", "'", 191, 1e-6}, {"M", "M", 833, 1e-6},
		{"hyphen", "-", 584, 1e-6}, {"degree", "\u00b0", 400, 1e-6}, {"times", "\u00d7", 584, 1e-6},
		{"euro", "\u20ac", 556, 1e-6}, {"em dash", "\u2014", 1000, 1e-6}, {"e acute", "\u00e9", 556, 1e-6},
		{"S caron", "\u0160", 667, 1e-6}, {"two letters", "Wi", 1191, 1e-6}, {"Cyrillic", "\u0416", 923, 1e-6},
		{"foreign", "\u65e5", 604, 1e-6}, {"invalid byte", "\xff", 604, 1e-6}, {"control", "\n", 604, 1e-6},
	} {
		t.Run(row.name, func(t *testing.T) {
			// Such capitals make an em of 1000 mm.
			if got := Width(row.text, 1000*CapHeight); !(math.Abs(got-row.want) <= row.tol) {
				t.Errorf("Width(%+q) = %g, want %g mm", row.text, got, row.want)
			}
		})
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
