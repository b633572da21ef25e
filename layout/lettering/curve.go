package lettering

import (
	"strconv"
	"strings"

	"ribwright/geometry"
)

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
}

// lines returns the strokes as fresh polylines in grid units.
func (g glyph) lines() [][]geometry.Point {
	var all [][]geometry.Point
	for stroke := range strings.SplitSeq(g.strokes, "|") {
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
