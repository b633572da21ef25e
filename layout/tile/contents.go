package tile

import (
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// use says on which sheets a pattern lies.
type use struct {
	title  string
	sheets []int // ascending, no repeats, counted from 0
}

// where names the sheets of a pattern.
func (u use) where() string {
	if len(u.sheets) > 1 {
		return "sheets " + ranges(u.sheets)
	}
	return "sheet " + ranges(u.sheets)
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
		u := use{title: d.Title}
		if d.Family != "" {
			u.title = d.Family
		}
		for j, k := range p.pieces {
			if k.drawing == d {
				u.sheets = append(u.sheets, p.spots[j].sheet)
			}
		}
		if n := len(out); n > 0 && d.Family != "" && out[n-1].title == d.Family {
			last := &out[n-1]
			last.sheets = append(last.sheets, u.sheets...)
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

// distances says, for the pattern that is taped together from the most pieces, how far
// apart the crosses of its outermost joints are: a tape laid over the whole finds a joint
// that has slipped.
func (p plan) distances() []layout.Check {
	var longest *layout.Drawing
	most := 2
	for i := range p.drawings {
		d, n := &p.drawings[i], 0
		for _, k := range p.pieces {
			if k.drawing == d {
				n++
			}
		}
		if n > most {
			longest, most = d, n
		}
	}
	if longest == nil {
		return nil
	}
	a, up := p.farthest(longest)
	if a.between == 0 {
		a = up
	}
	if a.between == 0 {
		return nil
	}
	far := p.units.Tape(a.between)
	if p.units == measure.Imperial {
		far += " = " + measure.Metric.Tape(a.between)
	}
	return []layout.Check{{What: fmt.Sprintf("%s, %s cross of joint %s to that of %s", longest.Title, a.which, a.first, a.last), Is: far}}
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
