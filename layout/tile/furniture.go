package tile

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/layout/paper"
)

const (
	small      = lettering.MinHeight          // the height of everything read at the bench, mm
	barBy      = layout.BarRight + 0.1        // how far the line of a scale bar lies in from the margin
	footHigh   = barBy + layout.BarLeft + 0.3 // the title block and the level scale bar
	columnWide = footHigh                     // the upright scale bar and the key map
	gap        = 0.8                          // between title block, column and the patterns
)

// roomFor returns the part of the sheet that the patterns of a set may fill, in true mm.
func roomFor(set Set, p paper.Sheet) geometry.Box {
	room := roomOf(p)
	room.Min.Y += footOf(set, p, most, most).high() - footHigh
	return room
}

// roomOf returns the same for a set whose name is short.
func roomOf(p paper.Sheet) geometry.Box {
	return geometry.Box{
		Min: geometry.Point{X: p.Area.Min.X, Y: p.Area.Min.Y + footHigh + gap},
		Max: geometry.Point{X: p.Area.Max.X - columnWide - gap, Y: p.Area.Max.Y},
	}
}

// barLong is the length of both scale bars: 4 inches, with 100 mm marked on it.
const (
	barInches = 4
	barLong   = 25.4 * barInches
)

const (
	barFrom   = 2.0                                    // where the level one begins, mm from the margin
	barBeside = barFrom + barLong + layout.BarOver + 2 // where words beside it do
	barUp     = gap + 2                                // where the upright one begins, mm over the title block
	wordsBy   = 0.3*small + 0.5                        // how far words beside a bar stand in from the margin, mm
	keyHigh   = 32.0                                   // the most that a key map and its names take of the column, mm
)

// nameLines is how many lines of a foot a name may take, about 300 letters. What is longer
// ends with a whole word there, and says where all of it is. Our own choice.
const nameLines = 3

// foot is what every sheet says of itself: beside the level scale bar what fits there,
// over the upright one what fits there, and the rest over both, along the sheet.
type foot struct {
	beside, up string
	over       []string
}

func footOf(set Set, p paper.Sheet, number, of int) foot {
	var f foot
	says := []string{set.Title, set.version(), p.Size.Name + " " + p.Way(), "one side", bidding(p)}
	next := func(room float64) (line string) {
		var left []string
		for _, words := range says {
			if longer := strings.TrimPrefix(line+", "+lettering.Safe(words), ", "); lettering.Width(longer, small) <= room {
				line = longer
			} else {
				left = append(left, words)
			}
		}
		says = left
		return line
	}
	const between = 4.0 // words and the sheet's number, mm
	beside, up := p.Area.W()-barBeside-lettering.Width(sheetOf(number, of), small)-between, p.Area.H()-footHigh-barUp-barLong-layout.BarOver-keyHigh
	if lettering.Width(lettering.Safe(set.Title), small) > beside {
		f.over, says = namedOver(set.Title, p.Area.W()-columnWide-gap), says[1:]
	}
	f.beside = next(beside)
	if f.up = next(up); len(says) > 0 {
		f.over = append(f.over, lettering.Wrap(lettering.Safe(strings.Join(says, ", ")), small, p.Area.W()-columnWide-gap)...)
	}
	return f
}

// namedOver letters a long name in lines along the sheet.
func namedOver(name string, along float64) []string {
	const rest = "(whole on the first sheet)"
	name = lettering.Safe(name)
	lines := lettering.Wrap(name, small, along)
	if len(lines) > nameLines {
		lines = lettering.Wrap(name, small, along-lettering.Width(" "+rest, small))[:nameLines]
		lines[nameLines-1] += " " + rest
	}
	return lines
}

func sheetOf(number, of int) string { return fmt.Sprintf("sheet %d of %d", number, of) }

// high is how high the title block is, mm.
func (f foot) high() float64 { return footHigh + leading*float64(len(f.over)) }

// most is the number of a sheet that no set reaches: its foot is as high as any.
const most = 9999

// furnish draws what every sheet carries: a title block, scale bars both ways
// with millimeters on one side and inches on the other, and the sheet's number.
func furnish(s *layout.Sheet, set Set, p paper.Sheet, number, of int) {
	f, low := footOf(set, p, most, most), p.Area.Min
	right := geometry.Point{X: p.Area.Max.X, Y: low.Y}
	s.Line(layout.Tick, low.Add(geometry.Point{Y: f.high()}), right.Add(geometry.Point{Y: f.high()}))
	up := right.Add(geometry.Point{Y: f.high() + barUp})
	s.Bar(low.Add(geometry.Point{X: barFrom, Y: barBy}), geometry.Point{X: 1}, barInches)
	s.Bar(up.Add(geometry.Point{X: -barBy}), geometry.Point{Y: 1}, barInches)
	s.Write(right.Add(geometry.Point{Y: wordsBy}), small, layout.Right, sheetOf(number, of))
	s.Write(low.Add(geometry.Point{X: barBeside, Y: wordsBy}), small, layout.Left, f.beside)
	if f.up != "" {
		at := up.Add(geometry.Point{X: -wordsBy, Y: barLong + layout.BarOver})
		s.Texts = append(s.Texts, layout.Text{At: at, Height: small, Angle: math.Pi / 2, Words: f.up})
	}
	for i, words := range f.over {
		s.Write(low.Add(geometry.Point{Y: f.high() - 3.1 - leading*float64(i)}), small, layout.Left, words)
	}
}

// version tells the sheets of two versions of a design apart.
func (s Set) version() string {
	if s.Edition == "" {
		return "design " + s.Fingerprint
	}
	return "edition " + s.Edition + ", design " + s.Fingerprint
}

// bidding says how to print a sheet and what was done about the printer.
func bidding(p paper.Sheet) string {
	if c := p.Correction(); c != "" {
		return "100 %; " + c
	}
	return "100 %; both bars true"
}
