// Package preview shows a cutter's plates small on one sheet of paper, each with what it is
// of and what lies on it, so that stock can be found and a wrong file is seen at once.
package preview

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/layout/plate/nest"
)

// Listed is what the sheet is called among others.
const Listed = "cutter's plates"

const called = "Plates for the cutter"

const (
	head    = 4.5 // capitals of the sheet's heading, mm
	small   = lettering.MinHeight
	leading = 3.8 // between lines, mm
	apart   = 6.0 // between plates, mm
	under   = 1.2 // between a plate and its words, mm
)

// leasts are the widths that words are given under a narrow plate, mm: the widest with
// which all go on the sheet.
var leasts = [...]float64{80, 60, 52, 44}

// scales are what a plate is drawn at, one to so many; the first with which all go on the
// sheet is taken.
var scales = [...]float64{5, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100}

// Sheet draws the plates in the order of the cutter's file in a room, mm; say letters what is
// said under them for who reads it. ok is false where
// there is none, or where they do not go on one sheet at any scale.
func Sheet(p layout.Plate, room geometry.Box, say func(string) string) (s layout.Sheet, ok bool) {
	if len(p.Boards) == 0 {
		return s, false
	}
	room = room.Grow(-layout.Mark.Width() / 2) // so that no line stands half on the margin
	for _, per := range scales {
		s = layout.Sheet{Label: "the cutter's plates", Outline: []layout.Bookmark{{Title: called}}}
		top := title(&s, per, room)
		for _, least := range leasts {
			if place(&s, plates(p, per, least, say), geometry.Box{Min: room.Min, Max: geometry.Pt(room.Max.X, top)}) {
				return s, true
			}
		}
	}
	return layout.Sheet{}, false
}

// title letters what the sheet is, and returns how far down it reaches.
func title(s *layout.Sheet, per float64, area geometry.Box) float64 {
	y := area.Max.Y - head - 0.5
	s.Write(geometry.Pt(area.Min.X, y), head, layout.Left, called)
	words := fmt.Sprintf("Drawn 1 to %.0f, to be looked at: the cutter's file has them full size. Nothing is lost if this sheet is not printed.", per)
	y -= 0.4 * head
	for _, l := range lettering.Wrap(lettering.Safe(words), small, area.W()) {
		y -= leading
		s.Write(geometry.Pt(area.Min.X, y), small, layout.Left, l)
	}
	return y - apart
}

// plate is a board as it is drawn, its lower left corner at the origin, with what is said
// under it.
type plate struct {
	wide, high float64 // of the board on paper, mm
	words      []string
	room       float64 // that words take under it, mm
	lines      []layout.Stroke
}

func plates(p layout.Plate, per, least float64, say func(string) string) []plate {
	var out []plate
	first := 0
	for _, b := range p.Boards {
		k := plate{wide: b.Box.W() / per, high: b.Box.H() / per}
		k.room = max(k.wide, least)
		parts := p.Parts[first : first+b.Parts]
		first += b.Parts
		for _, words := range said(b, parts) {
			k.words = append(k.words, lettering.Wrap(lettering.Safe(say(words)), small, k.room)...)
		}
		k.lines = append(k.lines, layout.Stroke{Pen: layout.Mark, Path: curve.Rectangle(geometry.Rect(0, 0, k.wide, k.high))})
		to := geometry.Shift(-b.Box.Min.X, -b.Box.Min.Y).Then(geometry.Stretch(1/per, 1/per))
		for _, q := range parts {
			for _, c := range q.Part.Cut {
				k.lines = append(k.lines, layout.Stroke{Pen: layout.Tick, Path: c.Map(q.Move).Map(to)})
			}
		}
		out = append(out, k)
	}
	return out
}

// said is what stands under a plate: which it is and of what, how much stock it takes, and
// its parts.
func said(b layout.Board, parts []layout.Placed) []string {
	return []string{wording.Capital(b.Title), nest.From(b), wording.Counted(b.Parts, "part") + ": " + named(parts)}
}

// named lists parts by name, with their number where there are several of one name; gauges
// by the ribs that they serve.
func named(parts []layout.Placed) string {
	const gauge = "gauge "
	count := map[string]int{}
	var names, gauges []string
	for _, q := range parts {
		if count[q.Part.Name]++; count[q.Part.Name] > 1 {
			continue
		}
		if ribs, is := strings.CutPrefix(q.Part.Name, gauge); is {
			gauges = append(gauges, strings.ReplaceAll(ribs, ",", ""))
		} else {
			names = append(names, q.Part.Name)
		}
	}
	slices.Sort(names)
	slices.SortStableFunc(gauges, func(a, b string) int { return cmp.Or(cmp.Compare(len(a), len(b)), cmp.Compare(a, b)) })
	for i, n := range names {
		if count[n] > 1 {
			names[i] = fmt.Sprintf("%d x %s", count[n], n)
		}
	}
	if len(gauges) > 0 {
		names = append(names, "gauges "+strings.Join(gauges, ", "))
	}
	return strings.Join(names, "; ")
}

// place sets plates in rows; it reports whether all have room.
func place(s *layout.Sheet, all []plate, room geometry.Box) bool {
	x, y, deep := room.Min.X, room.Max.Y, 0.0
	var out layout.Sheet
	for _, k := range all {
		if x > room.Min.X && x+k.room > room.Max.X {
			x, y, deep = room.Min.X, y-deep-apart, 0
		}
		high := k.high + under + leading*float64(len(k.words))
		if x+k.room > room.Max.X || y-high < room.Min.Y {
			return false
		}
		at := geometry.Shift(x, y-k.high)
		for _, l := range k.lines {
			out.Strokes = append(out.Strokes, layout.Stroke{Pen: l.Pen, Path: l.Path.Map(at)})
		}
		for i, words := range k.words {
			out.Write(geometry.Pt(x, y-k.high-under-leading*float64(i+1)+leading-small), small, layout.Left, words)
		}
		x, deep = x+k.room+apart, max(deep, high)
	}
	s.Strokes, s.Texts = append(s.Strokes, out.Strokes...), append(s.Texts, out.Texts...)
	return true
}
