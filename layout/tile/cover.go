package tile

import (
	"fmt"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

const (
	leading   = 4.1 // between lines of small lettering, mm
	columnGap = 8.0 // between the columns of the first sheet, mm
	headHigh  = 3.0
)

// block is a run of text on the first sheet: a heading, or a paragraph.
type block struct {
	heading bool
	words   string
}

// cover writes the sheets that come before the patterns.
func cover(set Set, p layout.Paper, uses []use, first int) []layout.Sheet {
	room := area(p)
	room.Max.X = p.W - sideMargin - columnWide
	wide := (room.W() - columnGap) / 2
	sheets := []layout.Sheet{{}}
	title(&sheets[0], room, set)
	left, top := room.Min.X, room.Max.Y-15
	y := top
	next := func() {
		if left == room.Min.X {
			left, y = room.Min.X+wide+columnGap, top
			return
		}
		sheets = append(sheets, layout.Sheet{})
		left, top = room.Min.X, room.Max.Y-4
		y = top
	}
	for _, b := range blocks(set, uses, first) {
		high, height := leading, small
		if b.heading {
			high, height = leading+3.4, headHigh
		}
		lines := lettering.Wrap(lettering.Safe(b.words), height, wide)
		if need := float64(min(len(lines), 3)) * leading; y-need-high < room.Min.Y {
			next()
		}
		if b.heading && y < top {
			y -= 2.2
		}
		for _, l := range lines {
			if y-leading < room.Min.Y {
				next()
			}
			y -= leading
			write(&sheets[len(sheets)-1], geometry.Point{X: left, Y: y}, height, layout.Left, l)
		}
		if b.heading {
			y -= 0.8
		}
	}
	if y-legendHigh < room.Min.Y {
		next()
	}
	legend(&sheets[len(sheets)-1], geometry.Point{X: left, Y: y})
	return sheets
}

func title(s *layout.Sheet, room geometry.Box, set Set) {
	top := geometry.Point{X: room.Min.X, Y: room.Max.Y - 6}
	write(s, top, 6, layout.Left, lettering.Clip(set.Title, 6, room.W()))
	write(s, top.Add(geometry.Point{Y: -6}), small, layout.Left, lettering.Clip(set.For, small, room.W()))
}

// use says on which sheets a pattern lies.
type use struct {
	title, makes string
	strips       int // patterns of the family
	tiles        int
	sheets       []int // ascending, no repeats, counted from 0
}

// add takes another pattern of the same family in.
func (u *use) add(v use) {
	u.strips += v.strips
	u.tiles += v.tiles
	u.sheets = append(u.sheets, v.sheets...)
}

func blocks(set Set, uses []use, first int) []block {
	out := []block{{true, "What is here"}}
	for _, u := range uses {
		words := fmt.Sprintf("%s: sheet %s", u.title, ranges(u.sheets, first))
		if u.strips > 1 {
			words += fmt.Sprintf(", %d patterns", u.strips)
		}
		if u.tiles > 1 {
			words += fmt.Sprintf(", %d pieces", u.tiles)
		}
		if u.makes != "" {
			words += "; " + u.makes
		}
		out = append(out, block{words: words})
	}
	section := func(heading string, lines []string) {
		out = append(out, block{true, heading})
		for _, l := range lines {
			out = append(out, block{words: l})
		}
	}
	section("Printing", []string{
		"1. Print at 100 % (actual size), on one side, without fit to page. Print this sheet first.",
		"2. Lay a steel rule on both scale bars of this sheet. If 100 mm or 4 in is off by more than 0.3 mm, find the printer's scale setting before you print the rest.",
		"3. Print, put together and trace on one day: paper grows and shrinks with the weather.",
	})
	section("Putting together", []string{
		"4. Every piece names its pattern and its number. A joint carries the same code on both its pieces, \"3-4\" or \"A1-A2\". Cut along the dashed line at the joint, lay that edge on the other piece so that the halves of the crosses meet its whole crosses, and tape.",
		"5. The small numbers along strips and tiles are distances from midship or from the baseline. A piece can be laid against a tape measure by them, so no error runs on from piece to piece.",
		"6. Strips may be folded along the stock's edges, so that the lettering lies on its sides.",
	})
	section("Check with a tape before you cut", set.Checks)
	section("Codes", set.Codes)
	section("Cautions", set.Cautions)
	out = append(out, block{true, "Lines"})
	return out
}

// ranges letters sheet numbers as "2-5, 9".
func ranges(sheets []int, first int) string {
	var parts []string
	for i := 0; i < len(sheets); {
		j := i
		for j+1 < len(sheets) && sheets[j+1] == sheets[j]+1 {
			j++
		}
		from, to := sheets[i]+first, sheets[j]+first
		if from == to {
			parts = append(parts, fmt.Sprint(from))
		} else {
			parts = append(parts, fmt.Sprintf("%d-%d", from, to))
		}
		i = j + 1
	}
	return strings.Join(parts, ", ")
}

const legendHigh = 6 * leading

// legend shows each pen with its meaning.
func legend(s *layout.Sheet, at geometry.Point) {
	meaning := map[layout.Pen]string{
		layout.Cut:    "cut to the middle of this line; under a strip: keep scarfs out",
		layout.Mark:   "mark this on the wood",
		layout.Center: "a middle line",
		layout.Guide:  "helps to place or read; at a joint: cut the paper",
		layout.Tick:   "tape ticks, crosses and scale bars",
	}
	for i, p := range layout.Pens() {
		y := at.Y - leading*float64(i+1)
		s.Strokes = append(s.Strokes, layout.Stroke{Pen: p, Path: curve.Polyline(
			geometry.Point{X: at.X, Y: y + 1.2}, geometry.Point{X: at.X + 22, Y: y + 1.2})})
		write(s, geometry.Point{X: at.X + 25, Y: y}, small, layout.Left, meaning[p])
	}
}
