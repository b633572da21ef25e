package tile

import (
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// cover writes the sheets that come before the patterns. It returns them with
// the boxes they leave free for patterns, sheet by sheet.
func (p plan) cover(set Set) ([]layout.Sheet, [][]geometry.Box) {
	f := newFlow(p.room, 15)
	top := geometry.Point{X: p.room.Min.X, Y: p.room.Max.Y - 6}
	f.sheet().Write(top, 6, layout.Left, lettering.Clip(set.Title, 6, p.room.W()))
	f.sheet().Write(top.Add(geometry.Point{Y: -6}), small, layout.Left, lettering.Clip(set.For, small, p.room.W()))
	if len(set.Told) > 0 {
		f.section("Before you cut", toldLines(set.Told, p.units))
	}
	f.section("What is here", contents(p.uses()))
	f.section("Printing", []string{
		"1. Print at 100 % (actual size), on one side, without fit to page. Print this sheet first.",
		"2. Lay a steel rule on both scale bars of this sheet. If 100 mm or 4 in is off by more than 0.3 mm, print the proof sheet: it says how to correct for your printer.",
		"3. Print, put together and trace on one day: paper grows and shrinks with the weather.",
	})
	f.section("Putting together", []string{
		"4. Every piece names its pattern and its number. A joint carries the same code on both its pieces, \"3-4\" or \"A1-A2\". Cut along the dashed line at the joint, lay that edge on the other piece so that the halves of the crosses meet its whole crosses, and tape.",
		"5. Every piece says from where to where it runs, and the small numbers along its edges or marks are distances from the pattern's own zero: midship, the baseline, or the middle of a rib or thwart. So a piece can be laid against a tape measure on its own, and no error runs on.",
		"6. Strips may be folded along the stock's edges, so that the lettering lies on its sides.",
	})
	f.legend()
	for i, n := range set.Notes {
		f.section(n.Heading, n.Lines)
		if i == 1 {
			f.section("Cross to cross, straight, when taped", p.distances())
		}
	}
	return f.sheets, f.free()
}

// toldLines are the lines about the boat as the first sheet has them.
func toldLines(told finding.List, units measure.System) []string {
	out := make([]string, len(told))
	for i, f := range told {
		out[i] = units.Words(wording.Capital(f.String())) + "."
	}
	return out
}

// use says on which sheets a pattern lies.
type use struct {
	title, makes string
	strips       int // patterns of the family
	tiles        int
	sheets       []int // ascending, no repeats, counted from 0
}

// contents lists the patterns with the sheets they are on.
func contents(uses []use) []string {
	var out []string
	for _, u := range uses {
		words := fmt.Sprintf("%s: sheet %s", u.title, ranges(u.sheets))
		if u.strips > 1 {
			words += fmt.Sprintf(", %d patterns", u.strips)
		}
		if u.tiles > 1 {
			words += fmt.Sprintf(", %d pieces", u.tiles)
		}
		if u.makes != "" {
			words += "; " + u.makes
		}
		out = append(out, words)
	}
	return out
}

// ranges letters sheets, counted from 0, by their numbers.
func ranges(sheets []int) string {
	numbers := make([]int, len(sheets))
	for i, n := range sheets {
		numbers[i] = n + 1
	}
	return Ranges(numbers)
}

// Ranges letters numbers of sheets that rise, repeats passed over: "2-5, 9".
func Ranges(numbers []int) string {
	numbers = slices.Compact(slices.Clone(numbers))
	var parts []string
	for i := 0; i < len(numbers); {
		j := i
		for j+1 < len(numbers) && numbers[j+1] == numbers[j]+1 {
			j++
		}
		if i == j {
			parts = append(parts, fmt.Sprint(numbers[i]))
		} else {
			parts = append(parts, fmt.Sprintf("%d-%d", numbers[i], numbers[j]))
		}
		i = j + 1
	}
	return strings.Join(parts, ", ")
}

// uses lists where each pattern went, in the order of the drawings; those of
// one family go under one entry.
func (p plan) uses() []use {
	var out []use
	for i := range p.drawings {
		d := &p.drawings[i]
		u := use{title: d.Title, makes: d.Make, strips: 1}
		if d.Family != "" {
			u.title, u.makes = d.Family, ""
		}
		for j, k := range p.pieces {
			if k.drawing == d {
				u.tiles++
				u.sheets = append(u.sheets, p.spots[j].sheet)
			}
		}
		if n := len(out); n > 0 && d.Family != "" && out[n-1].title == d.Family {
			last := &out[n-1]
			last.strips, last.tiles, last.sheets = last.strips+1, last.tiles+u.tiles, append(last.sheets, u.sheets...)
			continue
		}
		out = append(out, u)
	}
	for i := range out {
		slices.Sort(out[i].sheets)
		out[i].sheets = slices.Compact(out[i].sheets)
	}
	return out
}

// distances lists, for every pattern that is taped together from more than two
// pieces, how far apart the crosses of its outermost joints are: a tape laid
// over the whole finds a joint that has slipped. Strips of a family, which are
// short, are left out.
func (p plan) distances() []string {
	var out []string
	for i := range p.drawings {
		d := &p.drawings[i]
		if d.Family != "" {
			continue
		}
		along, up := p.farthest(d)
		for _, a := range []apart{along, up} {
			if a.between > 0 {
				far := p.units.Tape(a.between)
				if p.units == measure.Imperial {
					far += " = " + measure.Metric.Tape(a.between)
				}
				out = append(out, fmt.Sprintf("%s, %s cross of joint %s to that of %s: %s.", d.Title, a.which, a.first, a.last, far))
			}
		}
	}
	return out
}

type apart struct {
	between            float64
	which, first, last string
}

// farthest finds the two upright joints of one row, and the two level joints of
// one column, that lie farthest apart.
func (p plan) farthest(d *layout.Drawing) (along, up apart) {
	type mark struct {
		at   geometry.Point
		code string
	}
	firstIn, firstOn := map[int]mark{}, map[int]mark{}
	wider := func(best *apart, first map[int]mark, line int, m mark, which string) {
		if f, ok := first[line]; !ok {
			first[line] = m
		} else if far := m.at.Sub(f.at).Norm(); far > best.between {
			*best = apart{far, which, f.code, m.code}
		}
	}
	for _, k := range p.pieces {
		if k.drawing != d {
			continue
		}
		for _, s := range k.sides() {
			if !s.trim {
				continue
			}
			m := mark{s.crossPlaces()[1], s.other + "-" + k.name()}
			if s.from.X == s.to.X {
				wider(&along, firstIn, k.row, m, "upper")
			} else {
				wider(&up, firstOn, k.col, m, "right")
			}
		}
	}
	return along, up
}
