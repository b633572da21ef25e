package lettering

import (
	"strings"
	"unicode/utf8"
)

const (
	// CapHeight is the height of the capitals of Helvetica per em, no unit.
	CapHeight = 0.718
	// MinHeight is the smallest height of capitals that is still read
	// standing at a bench, mm.
	MinHeight = 2.5
)

// widths are the advance widths of Helvetica regular by cp1252 code from 0x20
// on, in thousandths of an em, as its public metrics give them. A code cp1252
// leaves empty has the width of the bullet printed in its place.
var widths = [224]uint16{
	278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
	556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
	1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
	667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
	333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
	556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584, 350,
	556, 350, 222, 556, 333, 1000, 556, 556, 333, 1000, 667, 333, 1000, 350, 611, 350,
	350, 222, 222, 333, 333, 350, 556, 1000, 333, 1000, 500, 333, 944, 350, 500, 667,
	278, 333, 556, 556, 556, 556, 260, 556, 333, 737, 370, 556, 584, 333, 737, 333,
	400, 584, 333, 333, 333, 556, 537, 278, 333, 333, 365, 556, 834, 834, 834, 611,
	667, 667, 667, 667, 667, 667, 1000, 722, 667, 667, 667, 667, 278, 278, 278, 278,
	722, 722, 778, 778, 778, 778, 778, 584, 778, 722, 722, 722, 722, 667, 667, 611,
	556, 556, 556, 556, 556, 556, 889, 500, 556, 556, 556, 556, 278, 278, 278, 278,
	556, 556, 556, 556, 556, 556, 556, 584, 611, 556, 556, 556, 556, 500, 556, 500,
}

// Width returns how far s advances in Helvetica regular with capitals
// capHeight mm high, in mm, without kerning. It takes s as it is: pass text
// that went through Safe. A rune cp1252 does not have, and an invalid byte,
// counts as "?". 0 when s is empty or capHeight is not above 0.
func Width(s string, capHeight float64) float64 {
	total := 0
	for _, r := range s {
		total += units(r)
	}
	return millimeters(total, capHeight)
}

// units returns the advance of r in thousandths of an em. Whole numbers are
// summed, so that a width does not depend on where a text was cut.
func units(r rune) int {
	b, ok := code(r)
	if !ok {
		b = '?'
	}
	return int(widths[b-' '])
}

func millimeters(units int, capHeight float64) float64 {
	if units == 0 || !(capHeight > 0) { // also turns NaN away
		return 0
	}
	return float64(units) / (1000 * CapHeight) * capHeight
}

// highCodes are the characters cp1252 puts at 0x80 to 0x9f, where Latin-1 has
// control characters; 0 where cp1252 has nothing.
var highCodes = [32]rune{
	'\u20ac', 0, '\u201a', '\u0192', '\u201e', '\u2026', '\u2020', '\u2021',
	'\u02c6', '\u2030', '\u0160', '\u2039', '\u0152', 0, '\u017d', 0,
	0, '\u2018', '\u2019', '\u201c', '\u201d', '\u2022', '\u2013', '\u2014',
	'\u02dc', '\u2122', '\u0161', '\u203a', '\u0153', 0, '\u017e', '\u0178',
}

// code returns the cp1252 code of r and whether r is printable there. Control
// characters have none.
func code(r rune) (byte, bool) {
	switch {
	case r >= ' ' && r <= '~', r >= 0xa0 && r <= 0xff:
		return byte(r), true
	case r < 0x0152 || r > 0x2122: // outside everything in highCodes
		return 0, false
	}
	for i, h := range highCodes {
		if h == r {
			return byte(0x80 + i), true
		}
	}
	return 0, false
}

const ellipsis = "..."

// Clip returns Safe(s) if it is at most width mm long in Helvetica with
// capitals capHeight mm high, else its longest beginning that fits together
// with "..." (no space stands before the dots). It returns "" when not even
// the dots fit, and everything when capHeight is not above 0 and width is not
// negative.
func Clip(s string, capHeight, width float64) string {
	text := Safe(s)
	if fitting(text, 0, capHeight, width) == len(text) {
		return text
	}
	dots := len(ellipsis) * units('.')
	if !(millimeters(dots, capHeight) <= width) {
		return ""
	}
	head := text[:fitting(text, dots, capHeight, width)]
	return strings.TrimRight(head, " ") + ellipsis
}

// Wrap returns Safe(s) broken at its spaces into lines at most width mm long
// in Helvetica with capitals capHeight mm high, each line as full as it can
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
	for i, r := range s {
		extra += units(r)
		if !(millimeters(extra, capHeight) <= width) { // NaN fits nothing
			return i
		}
	}
	return len(s)
}
