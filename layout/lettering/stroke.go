package lettering

import (
	"math"

	"ribwright/geometry"
)

// The grid the glyphs are drawn on, in its own units: the capitals are
// gridCap high and neighbours stand gridGap apart.
const (
	gridCap = 12
	gridGap = 3
)

// Strokes returns Safe(s) drawn in single strokes with capitals capHeight mm
// high: open or closed polylines of at least two points each, in mm, in
// writing order. The first glyph starts at x = 0 on the baseline y = 0. All of
// it lies between y = -capHeight/3 and y = 7/6 capHeight. A character the
// alphabet lacks is drawn plainly (an accented letter without its accent) or
// as "?". nil when nothing is left to draw or capHeight is not above 0 and
// finite.
func Strokes(s string, capHeight float64) [][]geometry.Point {
	if !usable(capHeight) {
		return nil
	}
	var lines [][]geometry.Point
	k, pen := capHeight/gridCap, 0.0
	for _, r := range drawable(s) {
		g := glyphs[r]
		for _, line := range g.lines() {
			for i, p := range line {
				line[i] = geometry.Point{X: (pen + p.X) * k, Y: p.Y * k}
			}
			lines = append(lines, line)
		}
		pen += g.width + gridGap
	}
	return lines
}

// StrokeWidth returns how far the strokes of s reach from x = 0, in mm, with
// no gap after the last glyph. 0 when Strokes draws nothing.
func StrokeWidth(s string, capHeight float64) float64 {
	runes := drawable(s)
	if len(runes) == 0 || !usable(capHeight) {
		return 0
	}
	total := -float64(gridGap)
	for _, r := range runes {
		total += glyphs[r].width + gridGap
	}
	return total * (capHeight / gridCap)
}

func usable(capHeight float64) bool { return capHeight > 0 && !math.IsInf(capHeight, 1) }

// drawable returns Safe(s) in runes that all have a glyph.
func drawable(s string) []rune {
	var out []rune
	for _, r := range Safe(s) {
		if _, ok := glyphs[r]; ok {
			out = append(out, r)
		} else {
			out = append(out, standIn(r)...)
		}
	}
	return out
}

// standIns spells the cp1252 characters that have neither a glyph nor a base
// letter, as far as the alphabet can say the same.
var standIns = map[rune]string{
	'\u20ac': "EUR", '\u0152': "OE", '\u0153': "oe", '\u00c6': "AE", '\u00e6': "ae",
	'\u00df': "ss", '\u00de': "Th", '\u00fe': "th", '\u00b5': "u",
	'\u2039': "'", '\u203a': "'", '\u00ab': "\"", '\u00bb': "\"",
	'\u00b4': "'", '\u02c6': "^", '\u02dc': "~", '\u00a6': "|",
	'\u00b2': "^2", '\u00b3': "^3", '\u00b9': "^1",
	'\u00a9': "(c)", '\u00ae': "(R)", '\u2122': "(TM)",
	'\u00f7': "/", '\u2022': "*", '\u00aa': "a", '\u00ba': "\u00b0",
}

// standIn returns what to draw for a cp1252 character without a glyph.
func standIn(r rune) []rune {
	if s, ok := standIns[r]; ok {
		return []rune(s)
	}
	if b := baseLetter(r); b != 0 {
		return []rune{b}
	}
	return []rune{'?'}
}
