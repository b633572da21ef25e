package book

import (
	"fmt"
	"math"

	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// blocksInList adds one row for all blocks of the middle plies, where there are some.
func (w *writer) blocksInList(t *report.Table) {
	var first, last cutlist.Stick
	n, short, long := 0, math.Inf(1), 0.0
	for _, s := range w.Plan.Sticks {
		if s.Family != cutlist.Block {
			continue
		}
		if n++; n == 1 {
			first = s
		}
		last, short, long = s, math.Min(short, s.Length), math.Max(long, s.Length)
	}
	if n > 0 {
		t.Row(first.Mark+" to "+last.Mark, fmt.Sprintf("%d blocks of the middle plies; finished lengths stand under Gunwales", n), first.Species,
			w.Cell(short)+" to "+w.Cell(long), w.Gauge(first.Width), w.Gauge(first.Thickness), "1", first.Grain)
	}
}

// toBuy lists the boards that would give the sticks for which there is no wood.
func (w *writer) toBuy() {
	var items []string
	for _, v := range w.Plan.Woods {
		for _, l := range v.Buy {
			b := l.Board
			items = append(items, fmt.Sprintf("%s of %s, %s x %s x %s %s", wording.Counted(l.Count, "board"), v.Species, w.Whole(b.Length), w.Whole(b.Width), w.Cell(b.Thickness), w.Unit())+sawnWay(b))
		}
	}
	if len(items) > 0 {
		w.say("Buy for them, besides the boards of the plan:")
		w.add(report.List{Items: items})
	}
}

// rings says how rings lie in sticks that are bent, by this plan.
func (w *writer) rings() {
	minded := false
	for _, s := range w.Plan.Sticks {
		minded = minded || s.Wants != ""
	}
	if !minded {
		return
	}
	w.say("Look at the end of a board for its rings. Flat-sawn, they run along its face; quarter-sawn, they stand upright to it. Wood that is steamed and bent wants them flat, along the wide face of the stick (common practice, and a bulletin of the State Forests of New South Wales). A stick that is sliced off the edge of a board has its rings the other way round than the board: flat from a quarter-sawn board, upright from a flat-sawn one. Plies of gunwales, keel, stringers and sawn parts may lie either way; lay the plies of one gunwale alike. %s", w.ribsLie())
	w.add(report.Findings{List: w.Rings})
}

// ribsLie says how this plan lays the ribs.
func (w *writer) ribsLie() string {
	edge, flat := 0, 0
	for i, s := range w.Plan.Sticks {
		switch l := w.Plan.Lies[i]; {
		case s.Family != cutlist.Rib || !l.Found:
		case l.OnEdge:
			edge++
		default:
			flat++
		}
	}
	switch {
	case edge == 0 && flat == 0:
		return ""
	case flat == 0:
		return "This plan slices the ribs off the edge."
	case edge == 0:
		return "This plan rips the ribs flat and resaws them."
	}
	return fmt.Sprintf("This plan slices %d of the ribs off the edge and rips %d flat.", edge, flat)
}
