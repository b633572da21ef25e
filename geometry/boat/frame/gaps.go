package frame

import (
	"fmt"
	"math"

	"ribwright/geometry/design"
)

// leaveGaps turns the mortises into gaps of the middle ply: as wide as the ply is thick,
// square to the gunwale, at the same places. The ply is two rows: blocks as tall as a
// mortise is deep, and over them a strip that runs the whole length and closes the
// gaps, so the gunwale is as stiff and as strong as with mortises that are cut.
//
// Errors: an end mortise too near the end; a rib that leans so far that less than half
// of its head would be left.
func (g *Gunwale) leaveGaps(d *design.Design) error {
	thick, tenon := float64(d.Ribs.Thickness), float64(d.Ribs.MortiseDepth-d.Ribs.TenonGap)
	from := g.Aft
	for i := range g.Mortises {
		m := &g.Mortises[i]
		m.Width = g.Width / float64(d.Gunwale.Plies)
		m.Wall = (g.Width - m.Width) / 2
		m.Deep, m.Taper = m.Wall, taper(thick, tenon, m.Width, m.Bevel)
		if left := thick - m.Taper; left < thick/2 {
			return fmt.Errorf(`by gap, the head of rib %s, which leans %.0f deg off its slot, would be planed to %.1f mm at its tip; accepted: half its thickness, %.1f mm, or more (gunwale.mortises = "cut", a shallower ribs.mortise_depth, or hull.section.flare and gunwale.tilt nearer each other)`,
				m.Rib, math.Abs(m.Bevel)*180/math.Pi, math.Floor(10*left)/10, thick/2)
		}
		lo, hi := m.Ends()
		g.Blocks, from = append(g.Blocks, Zone{from, lo}), hi
	}
	g.Blocks = append(g.Blocks, Zone{from, g.Fore})
	return g.checkEnds()
}

// taper is what is planed off one face at the tip of a rib's head, mm, so that the head
// goes into a slot off which it leans by lean, radians. A leaning slat of thickness t
// takes up t / cos(lean) across the slot, and as it goes in by the length of its tenon
// it moves sideways by tan(lean) of that; what the slot does not hold is planed off.
func taper(thick, tenon, slot, lean float64) float64 {
	lean = math.Abs(lean)
	off := (thick/math.Cos(lean) + tenon*math.Tan(lean) - slot) * math.Cos(lean)
	if off < shaving {
		return 0
	}
	return off
}

// shaving is the least taper that is planed, mm: ribs are planed no truer than that.
const shaving = 0.2
