package job

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"ribwright/render/rendertest"
)

// inked is a pattern as its sheets show it, all tiles together, in its own millimeters.
type inked struct {
	lines []*inkLine
	words []inkWords
}

// inkLine is one line that shows on a tile at the least. Whoever reads a mark off it says so.
type inkLine struct {
	rendertest.Outline
	rendertest.Box
	pen  string
	read bool
}

// inkWords is one piece of lettering, from the start of its baseline to its end.
type inkWords struct {
	text     string
	from, to rendertest.Point
	capital  float64
}

// penOf tells a line's meaning by its weight and its dash, as the first sheet explains them.
func penOf(s rendertest.Stroke) string {
	switch w := s.Width; {
	case w > 0.4:
		return "cut"
	case w > 0.2 && len(s.Dash) == 0:
		return "mark"
	case w > 0.2:
		return "long"
	case len(s.Dash) == 4:
		return "center"
	case len(s.Dash) == 2:
		return "guide"
	}
	return "tick"
}

// ink gathers a pattern from all its tiles.
func (d drawn) ink(pattern string) *inked {
	out := &inked{}
	for v, page := range d.views(pattern) {
		for _, s := range v.Strokes(page) {
			for _, o := range s.Outlines {
				l := &inkLine{Outline: o, Box: o.Bounds(), pen: penOf(s)}
				if !l.Meet(v.Frame()).Empty() && !slices.ContainsFunc(out.lines, l.same) {
					out.lines = append(out.lines, l)
				}
			}
		}
		for _, x := range page.Texts {
			if x.Clip.Off(v.OnSheet()) > 0.01 || x.Bounds().Meet(x.Clip).Empty() {
				continue
			}
			sin, cos := math.Sincos(x.Angle)
			w := inkWords{x.Words, v.Back(x.At), v.Back(rendertest.Point{X: x.At.X + x.Advance()*cos, Y: x.At.Y + x.Advance()*sin}), x.CapHeight()}
			if !slices.ContainsFunc(out.words, func(o inkWords) bool { return o.text == w.text && o.from.To(w.from) < 0.05 }) {
				out.words = append(out.words, w)
			}
		}
	}
	return out
}

// same reports whether another tile shows the same line.
func (l *inkLine) same(o *inkLine) bool {
	return l.pen == o.pen && l.Closed == o.Closed && len(l.Pieces) == len(o.Pieces) && l.Off(o.Box) < 0.02 && l.Pieces[0].From.To(o.Pieces[0].From) < 0.02
}

func (l *inkLine) middle() rendertest.Point {
	return rendertest.Point{X: (l.X0 + l.X1) / 2, Y: (l.Y0 + l.Y1) / 2}
}

// upright and level are straight lines of one piece along an axis.
func (l *inkLine) upright() bool {
	return len(l.Pieces) == 1 && !l.Closed && l.W() < 0.01 && l.H() > 0.01
}
func (l *inkLine) level() bool {
	return len(l.Pieces) == 1 && !l.Closed && l.H() < 0.01 && l.W() > 0.01
}

// round reports whether the line is a circle.
func (l *inkLine) round() bool {
	return l.Closed && !l.Straight() && math.Abs(l.W()-l.H()) < 0.02 && math.Abs(l.Area(32)) > 0.75*l.W()*l.H() && math.Abs(l.Area(32)) < 0.8*l.W()*l.H()
}

// take returns the lines of a pen that are so, and says that they are read.
func (k *inked) take(pen string, so func(l *inkLine) bool) []*inkLine {
	var out []*inkLine
	for _, l := range k.lines {
		if l.pen == pen && so(l) {
			l.read = true
			out = append(out, l)
		}
	}
	return out
}

// unread lists the lines that are put on wood and that nobody read: what helps to place a
// pattern or to read it is not meant.
func (k *inked) unread() []*inkLine {
	return slices.DeleteFunc(slices.Clone(k.lines), func(l *inkLine) bool { return l.read || l.pen == "center" || l.pen == "guide" || l.pen == "tick" })
}

// lettered returns what of the lettering matches, with its groups, on one line, on two or on three.
func (k *inked) lettered(as *regexp.Regexp) (out []letteredWords) {
	for _, w := range k.words {
		if m := k.matched(as, w.text, w, 3); m != nil {
			out = append(out, letteredWords{w, m})
		}
	}
	return out
}

// matched are the groups of words that end with a line, or go on in those under it, so many in all.
func (k *inked) matched(as *regexp.Regexp, said string, last inkWords, lines int) []string {
	m := as.FindStringSubmatch(said)
	for i := 0; m == nil && lines > 1 && i < len(k.words); i++ {
		if u := k.words[i]; last.over(u) {
			m = k.matched(as, said+" "+u.text, u, lines-1)
		}
	}
	return m
}

// over reports whether words stand level on the line over others, of which they may be the
// first.
func (w inkWords) over(u inkWords) bool {
	down := w.from.Y - u.from.Y
	return w.from.Y == w.to.Y && u.from.Y == u.to.Y && down > w.capital && down < 2*w.capital && u.from.X < w.to.X && w.from.X < u.to.X
}

type letteredWords struct {
	inkWords
	groups []string
}

// title is what is lettered in capitals of a height.
func (k *inked) title(high float64) string {
	var out []string
	for _, w := range k.words {
		if math.Abs(w.capital-high) < 0.05 {
			out = append(out, w.text)
		}
	}
	return strings.Join(out, " ")
}

// number reads a figure: "-1716.1", "+17", "65 mm aft", "12.1 degrees outward"; NaN for
// none.
func number(s string) float64 {
	first, rest, _ := strings.Cut(strings.TrimSpace(s), " ")
	v, err := strconv.ParseFloat(strings.TrimPrefix(strings.Trim(first, ",;\u00b0"), "+"), 64)
	if err != nil {
		return math.NaN()
	}
	if strings.HasSuffix(rest, "aft") || strings.HasPrefix(rest, "in") && !strings.HasPrefix(rest, "in ") || strings.HasSuffix(rest, "inward") {
		v = -v
	}
	return v
}

// ribsNamed are the ribs that share a mark, and on which half of the boat each stands: "F3
// A3" and "A1, F1"; what is drawn of F3 is the after one's too, turned over at midship.
func ribsNamed(words string) []string {
	return strings.FieldsFunc(words, func(r rune) bool { return r == ' ' || r == ',' })
}

var ribName = regexp.MustCompile(`^(M|[AF]\d+)(,? [AF]\d+)*$`)

// placed is where a rib's mark lies that is drawn at x, for one or for two halves.
func placed(name string, x float64, several bool) float64 {
	if several && strings.HasPrefix(name, "A") {
		return -math.Abs(x)
	}
	return x
}
