// Package sharing tells a course which builders mark their boats from one fan board, where
// on it each of them reads, and what it would take to bring the others onto it.
package sharing

import (
	"fmt"
	"slices"
	"sort"

	"ribwright/geometry/measure"
	"ribwright/geometry/shop/fan"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// Board is a board of a course.
type Board struct {
	*fan.Board
	Of   string // which boats it serves
	File string // that it is drawn in
}

// Off is a builder whose boat is on no board.
type Off struct {
	Builder string
	Why     string
	Cost    string // what would bring the boat onto a board; "" where nothing was found
}

// Blocks tell of all boards of a course.
func Blocks(boards []Board, off []Off, units measure.System) []report.Block {
	l := report.Letters{Units: units}
	out := []report.Block{report.Chapter("Fan boards")}
	if len(boards) == 0 {
		out = append(out, report.Say("No two builders share a board: mark every boat from its own patterns."))
	} else {
		out = append(out, howTo()...)
	}
	for _, b := range boards {
		out = append(out, report.Section(wording.Capital(b.Of)), readings(b, l))
		out = append(out, compared(b, l)...)
	}
	return append(out, others(off)...)
}

func howTo() []report.Block {
	return []report.Block{
		report.Say("One board serves all builders of its table: print it once, tape it, or let a cutter draw it. Each builder still works by the own card for mortise sizes, stems, thwarts, seats and what ribs relax to, and the own book says how ribs are bent."),
		report.List{Items: []string{
			"Measure the board first: zero to a far mark on it, and each scale from end to end, with a tape.",
			"Ribs: find your midship rib's length on both scales of a lane. Hold a straightedge level through the two.",
			"Lay the rib along it, its middle on the line at 0. Mark where each ray crosses: S stringers, B where a bend begins or ends, L the shoulder. Turn the rib over at 0 and mark the other half. The lane names the ribs fore and aft that are alike.",
			"A mark with two rays is a net: measure level from the solid ray to the broken one, and go your share of that from the solid one.",
			"Mortises: the same on the long lane, at half the length of your boat, with your share for mortises. Rays are the middles of mortises, from midship. Your own card gives their sizes.",
			"Check before you cut: your outermost mortise and your midship rib against your own numbers. Off by more than 2 mm: a joint of the board slipped, or the wrong line was read.",
		}},
		report.Caution{Words: "A reading is worth what board, eye and pencil are worth. Bend one rib and hold it against your own body plan before you mark the others.", Says: "common practice, no source"},
	}
}

// readings says where each builder reads.
func readings(b Board, l report.Letters) report.Table {
	t := report.Titled("Where to read").Words("Builder").Numbers("Midship rib, "+l.Unit(), "Share, ribs", "Half length", "Share, mortises")
	for _, boat := range b.On {
		t.Row(boat.Builder, l.Cell(boat.Rib), share(b, fan.Length, boat), l.Cell(boat.Half), share(b, fan.Mortise, boat))
	}
	t.Note = fmt.Sprintf("Drawn in %s. Shares are of 100, from the solid ray to the broken one; - where no mark has two rays.", b.File)
	return t
}

// share letters where a builder reads nets; "-" where the board has none.
func share(b Board, k fan.Kind, boat fan.Boat) string {
	if !slices.ContainsFunc(b.Rays, func(r fan.Ray) bool { return r.Net && (r.Kind == fan.Mortise) == (k == fan.Mortise) }) {
		return "-"
	}
	return fmt.Sprintf("%.0f", 100*b.Across(k, boat.Reading))
}

// three are the builders with the least, the middle and the greatest midship rib.
func three(on []fan.Boat) []fan.Boat {
	all := slices.Clone(on)
	sort.SliceStable(all, func(i, j int) bool { return all[i].Rib < all[j].Rib })
	if len(all) <= 3 {
		return all
	}
	return []fan.Boat{all[0], all[len(all)/2], all[len(all)-1]}
}

// compared sets what is read beside the own loft of three builders.
func compared(b Board, l report.Letters) []report.Block {
	some := three(b.On)
	t := report.Titled("Read on the board, and the own loft, " + l.Unit()).Words("Mark")
	for _, boat := range some {
		t = t.Numbers(boat.Builder+", read", "loft")
	}
	worst := [4]float64{}
	for _, r := range b.Rays {
		cells := []string{wording.Capital(r.Mark.String())}
		for _, boat := range some {
			cells = append(cells, l.Cell(r.Whole(b.Read(r, boat.Reading))), l.Cell(r.Whole(boat.Marks[r.Mark])))
		}
		t.Row(cells...)
		for _, boat := range b.On {
			worst[r.Kind] = max(worst[r.Kind], r.Whole(b.Off(r, boat)))
		}
	}
	t.Note = fmt.Sprintf("All builders of this board together are off by at most: rib lengths %s, bends %s, stringers %s, mortises %s. Accepted: %s, %s, %s and %s. Lengths are whole, shoulder to shoulder; all else is from the middle.",
		l.Fine(worst[fan.Length]), l.Fine(worst[fan.Bend]), l.Fine(worst[fan.Stringer]), l.Fine(worst[fan.Mortise]),
		accepted(l, fan.Length), accepted(l, fan.Bend), accepted(l, fan.Stringer), accepted(l, fan.Mortise))
	return []report.Block{t}
}

// accepted letters the tolerance of a kind of mark as the table tells it.
func accepted(l report.Letters, k fan.Kind) string {
	return l.Fine(fan.Mark{Kind: k}.Whole(k.Tolerance()))
}

// others tells who is on no board.
func others(off []Off) []report.Block {
	t := report.Titled("On no board").Words("Builder", "Why", "What would bring the boat onto one")
	for _, o := range off {
		cost := o.Cost
		if cost == "" {
			cost = "nothing small was found; mark this boat from its own patterns"
		}
		t.Row(o.Builder, o.Why, cost)
	}
	t.Note = "They mark from their own patterns, which are made as always."
	return t.IfAny()
}
