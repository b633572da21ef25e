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
)

// hungSeats reports whether a seat hangs from the gunwales.
func (w *writer) hungSeats() bool {
	return slices.ContainsFunc(w.Frame.Seats, func(s seat.Seat) bool { return s.Hung != nil })
}

// seatBlock reports whether a stick is glued behind a gunwale for a seat's bolts, while the
// frame is bare.
func seatBlock(s cutlist.Stick) bool {
	part, _, _ := strings.Cut(s.Part, " block, ")
	return s.Own && (strings.HasSuffix(part, ", front") || strings.HasSuffix(part, ", after")) && part != s.Part
}

// boltsFirst is what hung seats want while the frame is bare: the skin covers the heads of their
// bolts.
func (w *writer) boltsFirst() (out []string) {
	for _, s := range w.Frame.Seats {
		if s.Hung == nil {
			continue
		}
		out = append(out, fmt.Sprintf("%s: bore the gunwales for its bolts and let their heads in, by its tables in the chapter Seats.", s.Name),
			fmt.Sprintf("%s: glue a block behind each pair of bolts, its holes bored with the gunwale's. Leave them overnight.", s.Name),
			fmt.Sprintf("%s: put the bolts in, %s: %s", s.Name, boltsOf(s.Hung, w), strings.ToLower(headsHeld[:1])+headsHeld[1:]))
	}
	return out
}

// boltsOf letters the bolts of a seat by their length.
func boltsOf(h *seat.Hung, w *writer) string {
	front, after := h.Front.Hanger.BoltLong(), h.After.Hanger.BoltLong()
	if front == after {
		return "8 of 6 mm by " + w.whole(front)
	}
	return fmt.Sprintf("4 of 6 mm by %s in front and 4 by %s behind", w.whole(front), w.whole(after))
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
				name+"slide the hangers on the rails, set the rails to their height, and tap the hangers against the ends of the bolts: these mark the holes. Bore them, put the hangers on the bolts dry, against their blocks, and measure the height of the rails. Bore hangers and rails for the pegs.",
				name+"take it down; glue spreaders and rails together, the hangers on the rails but not pinned. Leave it overnight.",
				name+"plane it flush, round all edges and oil it. Leave it for a day.",
				name+bottom+" Hang it on its bolts as the chapter Seats says, nuts finger-tight, the pegs last.")
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

// slotRule says how hangers are suited to the height of the gunwales as they stand.
func (w *writer) slotRule(s seat.Seat, h *seat.Hung) string {
	up := func(r seat.Rail) string { return w.Whole(r.Hanger.Point(0, 0).Y - s.Floor) }
	return fmt.Sprintf("lay a straightedge across the gunwales at each rail and measure down to the floor; drawn, it is %s %s in front and %s %s behind. What yours is more, the slots and the lower ends of those hangers lie lower than on their pattern, and what it is less, higher: so the seat keeps its height over the floor. Then saw the hangers and cut the slots.",
		up(h.Front), w.Unit(), up(h.After), w.Unit())
}

// oiled is what is done to the wood of a kit last.
func (w *writer) oiled(k kit.Kit) []string {
	if len(k.Pieces) == 0 {
		return nil
	}
	return []string{"Oil all of its wood but the faces that are glued later, and leave it for a day."}
}
