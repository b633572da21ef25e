package lettering

import (
	"strings"
	"unicode/utf8"
)

// MinHeight is the smallest height of capitals that is still read standing at a bench, mm.
const MinHeight = 2.5

// Width returns how far s advances in the font of the sheets with capitals capHeight mm
// high, in mm, without kerning. It takes s as it is: pass text that went through Safe. A
// rune that the font does not have, and an invalid byte, counts as the box that Safe puts
// in its place. 0 when s is empty or capHeight is not above 0.
func Width(s string, capHeight float64) float64 {
	total, all := 0, advances()
	for _, r := range s {
		total += unitsIn(all, r)
	}
	return millimeters(total, capHeight)
}

func millimeters(units int, capHeight float64) float64 {
	if units == 0 || !(capHeight > 0) { // also turns NaN away
		return 0
	}
	return float64(units) / (1000 * CapHeight) * capHeight
}

// Wrap returns Safe(s) broken at its spaces into lines at most width mm long
// with capitals capHeight mm high, each line as full as it can
// be. A word longer than width is broken anywhere; it starts its own line.
// Only a single character can be longer than width: it then stands alone, so
// no text is lost. A text without words gives no lines.
func Wrap(s string, capHeight, width float64) []string {
	var lines []string
	for text := Safe(s); text != ""; {
		n := lineEnd(text, capHeight, width)
		lines = append(lines, text[:n])
		text = strings.TrimPrefix(text[n:], " ")
	}
	return lines
}

// lineEnd returns where in bytes the first line of text ends, past its first
// rune at least. text is safe and not empty.
func lineEnd(text string, capHeight, width float64) int {
	n := fitting(text, 0, capHeight, width)
	if n == len(text) || n > 0 && text[n] == ' ' {
		return n
	}
	if space := strings.LastIndexByte(text[:n], ' '); space > 0 {
		return space
	}
	_, first := utf8.DecodeRuneInString(text)
	return max(n, first)
}

// fitting returns the length in bytes of the longest beginning of s that is,
// with extra thousandths of an em added, at most width mm long; 0 when
// nothing fits.
func fitting(s string, extra int, capHeight, width float64) int {
	all := advances()
	for i, r := range s {
		extra += unitsIn(all, r)
		if !(millimeters(extra, capHeight) <= width) { // NaN fits nothing
			return i
		}
	}
	return len(s)
}
