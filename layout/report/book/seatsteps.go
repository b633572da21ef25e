package book

import (
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/design"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// hungSeats reports whether a seat hangs from the gunwales.
func (w *writer) hungSeats() bool {
	return slices.ContainsFunc(w.Frame.Seats, func(s seat.Seat) bool { return s.Hung != nil })
}

// boredBare reports whether a stick is bored with a gunwale for a seat's bolts, while the frame
// is bare: a block or a hanger.
func boredBare(s cutlist.Stick) bool {
	if !s.Own {
		return false
	}
	for _, is := range []string{" block, ", " hanger, "} {
		part, _, found := strings.Cut(s.Part, is)
		if found && (strings.HasSuffix(part, ", front") || strings.HasSuffix(part, ", after")) {
			return true
		}
	}
	return false
}

// boltsFirst is what hung seats want while the frame is bare: the skin covers the nuts of their
// bolts, and gunwale, block and hanger are bored in one.
func (w *writer) boltsFirst() (out []string) {
	for _, s := range w.Frame.Seats {
		if s.Hung == nil {
			continue
		}
		out = append(out, s.Name+": saw its four hangers to breadth, their upper ends square and their lower ends left as long as the sticks are, and its four blocks to length and breadth. Write on each hanger front or after, port or starboard, and draw its middle line. Cut no slots yet.")
		for _, act := range w.boring(s) {
			out = append(out, s.Name+": "+strings.ToLower(act[:1])+act[1:])
		}
	}
	return out
}

// boring is how bolts and nuts of a seat come into the bare gunwales.
func (w *writer) boring(s seat.Seat) []string {
	h := s.Hung
	return []string{
		fmt.Sprintf("Carry the marks of the bolts to the gunwales' outer faces, %s under the upper edge, none within %s of a mortise. Sink a seat for a nut and its washer at each, square to the face, %s deep, with a Forstner drill of %s: now, and never before the gunwales are bent, for a stick kinks where wood is gone.", w.Fine(h.Front.Hanger.Down), w.whole(25), w.Fine(seat.LetIn), w.whole(seat.NutSeat)),
		fmt.Sprintf("Clamp a block and its hanger behind each pair of marks: the hanger square to the gunwale, its upper end in line with the gunwale's top, which slopes, its middle line midway between the marks; the block 2 mm under that edge. Bore from the middle of each seat, %s, square, through gunwale, block and hanger in one, into a scrap held behind: so their holes agree.", w.Drill(seat.Hole)),
		fmt.Sprintf("Put in the bolts, %s: wax them well. Glue the block to the gunwale, kitchen film between block and hanger. Each bolt goes in from inboard, with %s under its head, through hanger, block and gunwale; in the seat it has a washer and its nut. Bed these two in epoxy thickened with its filler or fine sawdust, none of it on the thread, draw up, and wipe off flush: it keeps the nut from turning when skin and outwale hide it. The bolt ends past its nut and short of the outer face; a washer more or fewer under its head sets that right. Leave it overnight; then take out the bolts and take off the hangers.", boltsOf(h, w), washersOf(h)),
	}
}

// inEach says a count for front and after hangers, once where they agree.
func inEach(front, after string) string {
	if front == after {
		return front
	}
	return front + " in front and " + after + " behind"
}

// boltsOf letters the bolts of a seat by their length.
func boltsOf(h *seat.Hung, w *writer) string {
	front, after := h.Front.Hanger.BoltLong(), h.After.Hanger.BoltLong()
	if front == after {
		return fmt.Sprintf("8 of M6 by %.0f mm", front)
	}
	return fmt.Sprintf("4 of M6 by %.0f mm in front and 4 %sby %.0f mm behind", front, report.Either(w.Letters.Units, "", "of M6 "), after)
}

func washersOf(h *seat.Hung) string {
	return inEach(wording.Counted(h.Front.Hanger.Washers(), "washer"), wording.Counted(h.After.Hanger.Washers(), "washer"))
}

// seatActs is the work on seats of which one hangs: joined first, oiled last.
func (w *writer) seatActs(k kit.Kit) []string {
	var out []string
	for _, s := range w.Frame.Seats {
		name := s.Name + ": "
		switch h := s.Hung; {
		case h != nil:
			bottom := "screw the slats on."
			if h.Bottom == design.Webbing {
				bottom = "cut, wrap and sew the webbing."
			}
			out = append(out,
				name+w.slotRule(s, h),
				name+"take the hangers off, saw their lower ends, cut their slots and saw the rails to length, as the chapter Seats says.",
				name+"slide the hangers on the rails and bolt them to their blocks, dry. "+w.railTops(h)+" Fit the spreaders. Then bore hangers and rails for the pegs, as the chapter has it: the front ones while the after hangers are off once more.",
				name+"take it down; glue spreaders and rails together, the hangers slid on the rails without glue and not pinned. Leave it overnight; then bore and peg the spreaders' ends.",
				name+"plane it flush, round all edges and oil it. Leave it for a day.",
				name+bottom+" Hang it as the chapter Seats says, bolts drawn up by hand, the pegs last.")
		default:
			for _, v := range k.Works {
				if strings.HasPrefix(v.Name, wording.Clip(s.Name, 40)+": ") && !v.Bare {
					out = append(out, wording.Capital(v.Name)+".")
				}
			}
		}
	}
	return out
}

// railTops says how high the rails lie when they hang dry.
func (w *writer) railTops(h *seat.Hung) string {
	over := func(r seat.Rail) string { return w.whole(r.TopZ - w.Frame.Hull.FloorZ(r.Station)) }
	return fmt.Sprintf("Measure the tops of the rails over the floor under them, in the middle of the boat: %s in front and %s behind. Ease the slots until they are right.", over(h.Front), over(h.After))
}

// slotRule says how hangers and rails are suited to the gunwales as they stand.
func (w *writer) slotRule(s seat.Seat, h *seat.Hung) string {
	down := func(r seat.Rail) string {
		return w.Whole(r.Hanger.At(0, 0, r.Hanger.Block+seat.Thick).Z - w.Frame.Hull.FloorZ(r.Station))
	}
	return fmt.Sprintf("bolt its hangers dry to their blocks. Lay a straightedge across the upper ends of the front two, where it rests on their inboard edges, and measure down in the middle of the boat to the floor there; then across the after two. Drawn, it is %s %s in front and %s %s behind. What yours is more, the slots and the lower ends of those hangers lie lower than on their pattern, and what it is less, higher: so the seat keeps its height over the floor. Measure between the hangers too, from one inboard face to the other where the middle of their slots will be: drawn, %s %s in front and %s %s behind. What yours is more or less, the rail is too.",
		down(h.Front), w.Unit(), down(h.After), w.Unit(), w.Whole(h.Front.Between), w.Unit(), w.Whole(h.After.Between), w.Unit())
}

// oiled is what is done to the wood of a kit last.
func (w *writer) oiled(k kit.Kit) []string {
	if len(k.Pieces) == 0 {
		return nil
	}
	return []string{"Oil all of its wood but the faces that are glued later, and leave it for a day."}
}
