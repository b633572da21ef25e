package tile

import (
	"fmt"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// Set is everything that goes on one set of sheets.
type Set struct {
	Title       string // of the boat
	For         string // one line about it
	Fingerprint string // tells sheets of two versions of a design apart
	Drawings    []layout.Drawing
	Notes       []layout.Note // about the boat, for the first sheets
}

// Options say what is printed on.
type Options struct {
	Paper layout.Paper
	Units measure.System
}

// Lay cuts the drawings to sheet size, stacks the pieces on sheets and dresses
// them. Small pieces share sheets; tiles without ink are left out; the first
// sheets say what is here and how to use it.
//
// Returns: a document in which every view shows its frame at full size.
// Errors: a drawing with nothing in it.
func Lay(set Set, o Options) (layout.Document, error) {
	room := area(o.Paper)
	var pieces []piece
	for i := range set.Drawings {
		d := &set.Drawings[i]
		high := room.H() - captionHigh
		cutUp := cut(d, room.W(), high)
		if len(cutUp) == 0 {
			return layout.Document{}, fmt.Errorf("pattern %q has nothing in it", d.Title)
		}
		pieces = append(pieces, cutUp...)
	}
	spots, count := stack(pieces, room)
	sheets := make([]layout.Sheet, count)
	for i, p := range pieces {
		place(&sheets[spots[i].sheet], p, spots[i].at, o)
	}
	uses := usesOf(set.Drawings, pieces, spots)
	fronts := cover(set, o.Paper, uses, 2)
	if len(fronts) > 1 {
		fronts = cover(set, o.Paper, uses, len(fronts)+1)
	}
	doc := layout.Document{Title: set.Title, Paper: o.Paper, Sheets: append(fronts, sheets...)}
	for i := range doc.Sheets {
		furnish(&doc.Sheets[i], set, o.Paper, i+1, len(doc.Sheets))
	}
	return doc, nil
}

// place shows a piece on its sheet.
func place(s *layout.Sheet, p piece, at geometry.Point, o Options) {
	m := geometry.Shift(at.X-p.frame.Min.X, at.Y-p.frame.Min.Y)
	if p.grid.rows() > 1 && !hasGrid(s) {
		keyMap(s, o.Paper, p)
	}
	s.Views = append(s.Views, layout.View{Drawing: p.drawing, Tile: p.name(), Frame: p.frame, ToSheet: m})
	p.dress(s, m, o.Units, area(o.Paper).Max.X)
}

// hasGrid reports whether a tile of a grid already lies on the sheet.
func hasGrid(s *layout.Sheet) bool {
	for _, v := range s.Views {
		if v.Tile != "" && v.Tile[0] >= 'A' {
			return true
		}
	}
	return false
}

// usesOf lists where each pattern went, in the order of the drawings; those of
// one family go under one entry.
func usesOf(drawings []layout.Drawing, pieces []piece, spots []spot) []use {
	var out []use
	for i := range drawings {
		d := &drawings[i]
		u := use{title: d.Title, makes: d.Make, strips: 1}
		if d.Family != "" {
			u.title, u.makes = d.Family, ""
		}
		for j, p := range pieces {
			if p.drawing == d {
				u.tiles++
				u.sheets = append(u.sheets, spots[j].sheet)
			}
		}
		if n := len(out); n > 0 && d.Family != "" && out[n-1].title == d.Family {
			out[n-1].add(u)
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
