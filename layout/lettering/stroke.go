package lettering

import (
	"cmp"
	_ "embed"
	"errors"
	"math"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"

	"ribwright/geometry"
)

// The grid the glyphs are drawn on, in its own units: the capitals are
// gridCap high and neighbors stand gridGap apart.
const (
	gridCap = 12
	gridGap = 3
)

// Strokes returns Safe(s) drawn in single strokes with capitals capHeight mm
// high: open or closed polylines of at least two points each, in mm, in
// writing order. The first glyph starts at x = 0 on the baseline y = 0. All of
// it lies between y = -capHeight/3 and y = 7/6 capHeight. A character the
// alphabet lacks is drawn plainly: a letter without its accent, Greek and Cyrillic in Latin
// letters, and what is left as an empty box. nil when nothing is left to draw or capHeight is not above 0 and
// finite.
func Strokes(s string, capHeight float64) [][]geometry.Point {
	if !usable(capHeight) {
		return nil
	}
	var lines [][]geometry.Point
	k, pen := capHeight/gridCap, 0.0
	for _, r := range drawable(s) {
		g := glyphs()[r]
		for _, line := range g.lines {
			out := make([]geometry.Point, len(line))
			for i, p := range line {
				out[i] = geometry.Point{X: (pen + p.X) * k, Y: p.Y * k}
			}
			lines = append(lines, out)
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
		total += glyphs()[r].width + gridGap
	}
	return total * (capHeight / gridCap)
}

// WrapStrokes is Wrap for single strokes, except that a word wider than the width stands
// alone.
func WrapStrokes(s string, capHeight, width float64) []string {
	var lines []string
	for _, word := range strings.Fields(Safe(s)) {
		if n := len(lines); n > 0 && StrokeWidth(lines[n-1]+" "+word, capHeight) <= width {
			lines[n-1] += " " + word
			continue
		}
		lines = append(lines, word)
	}
	return lines
}

func usable(capHeight float64) bool { return capHeight > 0 && !math.IsInf(capHeight, 1) }

// drawable returns Safe(s) in runes that all have a glyph.
func drawable(s string) []rune {
	out := make([]rune, 0, len(s))
	for _, r := range Safe(s) {
		if _, ok := glyphs()[r]; ok {
			out = append(out, r)
		} else {
			out = append(out, spelled(r)...)
		}
	}
	return out
}

// ASCII returns Safe(s) as Strokes spells it, in printable ASCII alone, for files that know
// no other letters: a number sign stands for a letter that cannot be said.
func ASCII(s string) string {
	return asASCII.Replace(string(drawable(s)))
}

var asASCII = strings.NewReplacer("\u00d7", "x", "\u00b0", " deg", "\u00b1", "+-", "\u00d8", "dia. ", "\u2013", "-", "\u2014", "-", "\u00b7", "*", "\u00f8", "o", string(box), "#")

// spelled returns the glyphs that r is drawn with, which has none of its own.
func spelled(r rune) []rune {
	if s, ok := standIns()[r]; ok {
		return []rune(s)
	}
	if bare, ok := bareLetters()[r]; ok {
		return drawable(string(bare))
	}
	return []rune{cmp.Or(baseLetter(r), box)}
}

// bareLetters are the letters of the font under their accents.
var bareLetters = sync.OnceValue(func() map[rune]rune {
	out := map[rune]rune{}
	for pair, r := range accents() {
		out[r] = pair[0]
	}
	return out
})

// standIns spells the characters of the font that have neither a glyph nor a base letter, as
// far as the alphabet can say the same. Greek is spelled by ISO 843 and Cyrillic as in
// passports, both letter by letter and from memory.
var standIns = sync.OnceValue(func() map[rune]string { return spellings(standInFile) })

//go:embed strokes.txt
var standInFile string

// curveSteps is the number of straight pieces one bend becomes. Four bends
// make a ring, so a ring has 24 pieces: 0.05 mm off at 12 mm lettering.
const curveSteps = 6

// glyph is one character on the grid: its width and its strokes, parted by
// "|". A stroke is a chain of "x,y" points; "~x,y" is no point but pulls the
// line into a bend (a quadratic Bezier curve) from the point before it to the
// point after it, or to half way to the next pull. Strokes end in points.
type glyph struct {
	width   float64
	strokes string
	lines   [][]geometry.Point // the strokes as straight pieces
}

// glyphs is the alphabet of glyphs.txt, drawn for this program on a grid with the baseline
// at 0, small letters 8 and capitals 12 high, tails down to -4. Lettering on
// wood is read from any side and half burnt away, so the drawing favors
// difference over beauty: zero is narrow and carries a stroke, O is wide; 1
// has a flag and a foot, I two bars, l a bent foot; 6 and 9 have long open
// arms, and P bulges where F has an arm.
var glyphs = sync.OnceValue(func() map[rune]glyph {
	out := map[rune]glyph{}
	for line := range strings.Lines(glyphFile) {
		quoted, err := strconv.QuotedPrefix(line)
		width, strokes, _ := strings.Cut(strings.TrimSpace(line[len(quoted):]), " ")
		wide, err2 := strconv.ParseFloat(width, 64)
		letter, err3 := strconv.Unquote(quoted)
		if err = errors.Join(err, err2, err3); err != nil {
			panic("a glyph that the program was built with is broken: " + line)
		}
		r, _ := utf8.DecodeRuneInString(letter)
		out[r] = glyph{wide, strokes, drawn(strokes)}
	}
	return out
})

//go:embed glyphs.txt
var glyphFile string

// drawn turns strokes into polylines.
func drawn(strokes string) [][]geometry.Point {
	var all [][]geometry.Point
	for stroke := range strings.SplitSeq(strokes, "|") {
		if words := strings.Fields(stroke); len(words) > 1 {
			all = append(all, flatten(words))
		}
	}
	return all
}

// flatten turns the words of one stroke into a polyline.
func flatten(words []string) []geometry.Point {
	from, _ := node(words[0])
	line := []geometry.Point{from}
	for i := 1; i < len(words); i++ {
		p, pull := node(words[i])
		if !pull || i+1 == len(words) {
			line = append(line, p)
			continue
		}
		end, pulls := node(words[i+1])
		if pulls {
			end = p.Lerp(end, 0.5)
		} else {
			i++
		}
		line = bend(line, p, end)
	}
	return line
}

// bend appends the curve from the last point of line to end, pulled by p.
func bend(line []geometry.Point, p, end geometry.Point) []geometry.Point {
	from := line[len(line)-1]
	for i := 1; i < curveSteps; i++ {
		t := float64(i) / curveSteps
		line = append(line, from.Lerp(p, t).Lerp(p.Lerp(end, t), t))
	}
	return append(line, end)
}

// node reads "x,y" or "~x,y"; the tests see to it that every word is one.
func node(word string) (p geometry.Point, pull bool) {
	word, pull = strings.CutPrefix(word, "~")
	x, y, _ := strings.Cut(word, ",")
	p.X, _ = strconv.ParseFloat(x, 64)
	p.Y, _ = strconv.ParseFloat(y, 64)
	return p, pull
}
