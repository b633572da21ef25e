package lettering

import (
	"math"
	"testing"
)

// Advance widths in thousandths of an em and the height of the capitals, 718 of
// them. Source: the published Adobe font metrics (AFM) of Helvetica. For what
// cp1252 lacks, the width of "?", 556.
func TestWidthKnown(t *testing.T) {
	for _, row := range []struct {
		name, text string
		want, tol  float64
	}{
		{"A", "A", 667, 1e-9}, {"i", "i", 222, 1e-9}, {"W", "W", 944, 1e-9}, {"zero", "0", 556, 1e-9},
		{"space", " ", 278, 1e-9}, {"at", "@", 1015, 1e-9}, {"quote", "'", 191, 1e-9}, {"M", "M", 833, 1e-9},
		{"hyphen", "-", 333, 1e-9}, {"degree", "\u00b0", 400, 1e-9}, {"times", "\u00d7", 584, 1e-9},
		{"euro", "\u20ac", 556, 1e-9}, {"em dash", "\u2014", 1000, 1e-9}, {"e acute", "\u00e9", 556, 1e-9},
		{"S caron", "\u0160", 667, 1e-9}, {"two letters", "Wi", 1166, 1e-9},
		{"foreign", "\u65e5", 556, 1e-9}, {"invalid byte", "\xff", 556, 1e-9}, {"control", "\n", 556, 1e-9},
	} {
		t.Run(row.name, func(t *testing.T) {
			// Capitals 718 mm high make an em of 1000 mm.
			if got := Width(row.text, 718); !(math.Abs(got-row.want) <= row.tol) {
				t.Errorf("Width(%+q, 718) = %g, want %g mm", row.text, got, row.want)
			}
		})
	}
	if CapHeight != 0.718 {
		t.Errorf("CapHeight is %g, want 0.718 of an em", CapHeight)
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
