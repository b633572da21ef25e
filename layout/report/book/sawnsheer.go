package book

import (
	"math"

	"ribwright/layout/report"
)

// What is told of gunwales into which some of the edge-set is made before they are marked.

// gunwaleStock names what the marks of a gunwale are measured along.
func (w *writer) gunwaleStock() string {
	if w.Frame.Gunwale.Made() {
		return "sawn stock"
	}
	return "straight stock"
}

// unbent says when the marks are drawn.
func (w *writer) unbent() string {
	if w.Frame.Gunwale.Made() {
		return "Lay the gunwale strip along the curved underside. Before the stock is bent or sprung"
	}
	return "While the stock is straight"
}

// dryPlies says how they are clamped to be marked.
func (w *writer) dryPlies() string {
	if w.Frame.Gunwale.Made() {
		return "Clamp the dry plies of a gunwale flush, their sawn curves on each other."
	}
	return "Clamp the dry plies of a gunwale flush and straight."
}

// sheerToSaw adds the table of the curve; nothing where none is made.
func (w *writer) sheerToSaw() {
	g := &w.Frame.Gunwale
	if !g.Made() {
		return
	}
	t := report.Titled("The sheer to saw, "+w.Marks()).Names("Toward").Numbers("From midship, along the stock", "Underside up from a straight line")
	t.Note = "The straight line is the underside amidships, carried on. It is " + w.Length(g.Height) + " from the underside to the upper edge, square to the curve, all along. Both gunwales and all plies have one curve. Strips that are laminated on a form of this curve serve as well: they spring back, so bend one for trial first."
	s := w.Frame.Hull.Sheer
	for _, e := range []struct {
		end        string
		from, till float64
	}{{"stern", -s.SternSet.From, g.Aft}, {"bow", s.BowSet.From, g.Fore}} {
		from := g.OnStock(e.from)
		if g.Raised(e.till) == 0 {
			continue
		}
		const step, near = 250.0, 60.0 // mm: a batten through places so far apart draws the curve
		places := []float64{from}
		for u := step * math.Ceil((math.Abs(from)+near)/step); u < math.Abs(e.till)-near; u += step {
			places = append(places, math.Copysign(u, e.till))
		}
		for _, at := range append(places, e.till) {
			t.Row(e.end, w.Mark(at), w.Mark(g.Raised(at)))
		}
	}
	w.add(t)
}

// sawSheer is the work on the curve, before anything is marked; none where none is made.
func (w *writer) sawSheer() []string {
	if !w.Frame.Gunwale.Made() {
		return nil
	}
	return []string{
		"Strike a straight line along every piece of gunwale stock, near its lower edge at the middle, and mark midship on it. Set off the heights of the table The sheer to saw, in the chapter Gunwales.",
		"Bend a thin batten through the points and draw along it. Draw the upper edge " + w.Length(w.Frame.Gunwale.Height) + " above, square to the curve.",
		"Saw outside both lines and plane to them, the first piece with most care: draw all others round it.",
	}
}

// underMiddle says where blocks of one height go under gunwales whose ends are curved.
func (w *writer) underMiddle() string {
	if w.Frame.Gunwale.Made() {
		return ", under their straight middles"
	}
	return ""
}
