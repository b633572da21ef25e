package lettering

import (
	"math"
	"slices"
	"strings"
	"testing"
)

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		in    string
		width float64
		want  []string
	}{
		{"", 50, nil}, {" \n", 50, nil},
		{"aa bb  cc", 100, []string{"aa bb cc"}},
		{"aa bb\ncc", Width("aa bb", 3), []string{"aa bb", "cc"}},
		{"aa bbbbb c", Width("bbb", 3), []string{"aa", "bbb", "bb", "c"}},
		{"aaaa b", Width("aa b", 3), []string{"aaa", "a b"}},
		{"ab c", 0, []string{"a", "b", "c"}},
		{"ab", math.NaN(), []string{"a", "b"}},
		{"\u00e9\u00e9\u00e9", Width("\u00e9\u00e9", 3), []string{"\u00e9\u00e9", "\u00e9"}},
	} {
		if got := Wrap(c.in, 3, c.width); !slices.Equal(got, c.want) {
			t.Errorf("Wrap(%q, %g) = %q, want %q", c.in, c.width, got, c.want)
		}
	}
}

func TestWrapNeverTooWide(t *testing.T) {
	text := "Cut each form on the line, not beside it; bevel 12\u00d718 mm stock 5\u215b\u2033 supercalifragilistic caf\u00e9"
	for w := Width("W", 3); w < 80; w += 0.31 {
		lines := Wrap(text, 3, w)
		for _, line := range lines {
			if Width(line, 3) > w || line != strings.TrimSpace(line) || line == "" {
				t.Errorf("Wrap to %g: %q is %g wide", w, line, Width(line, 3))
			}
		}
		joined := strings.ReplaceAll(strings.Join(lines, ""), " ", "")
		if joined != strings.ReplaceAll(Safe(text), " ", "") {
			t.Errorf("Wrap to %g lost text: %q", w, lines)
		}
	}
}
