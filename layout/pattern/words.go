package pattern

import (
	"fmt"

	"ribwright/geometry/frame"
)

// Checks lists what to measure on the assembled patterns and on the wood before
// cutting.
func Checks(f *frame.Frame, o Options) []string {
	g := &f.Gunwale
	first, last := g.Mortises[0], g.Mortises[len(g.Mortises)-1]
	return []string{
		"Gunwale strip, end to end along its middle line: " + o.both(g.Fore-g.Aft) + ".",
		fmt.Sprintf("Middle of mortise %s to middle of mortise %s: %s.", first.Rib, last.Rib, o.both(last.FromMidship-first.FromMidship)),
		"Keel, end to end: " + o.both(f.Keel.Fore-f.Keel.Aft) + ".",
		fmt.Sprintf("Body plan, across the gunwale lines at midship: %s.", o.both(f.Hull.Beam)),
		"Pull a tape over every strip when it is taped together; more than 1 mm off in 3 metres means a joint has slipped.",
		"Steam and bend one rib from midship first, and hold it against the body plan, before you cut the others.",
	}
}

// Codes explains every code on the patterns.
func Codes(f *frame.Frame) []string {
	return []string{
		"M, F, A: ribs. M stands at midship, F1 is the first forward of it, A1 the first aft. Midship is 0; forward is positive, aft negative.",
		fmt.Sprintf("S1 to S%d: stringers on each side, counted from the keel up.", len(f.Stringers)),
		"lean: how far the rib leans out or in from the gunwale's own square; tilt the mortise by it.",
		"Heavy bar along the gunwale strip: no part of a scarf may lie here.",
		"The gunwale strip lies on the underside of the straight stock. Port gunwale: its upper edge is inboard. Starboard: outboard.",
		fmt.Sprintf("Mortises are %.0f mm deep; tenons are %.0f mm long.", float64(f.Design.Ribs.MortiseDepth), f.Ribs[0].Tenon),
		"Rib strips show half a rib on the flat blank: turn over on the middle. Dashed pairs of lines are the stringers' edges.",
	}
}

// Cautions lists what can hurt, with who says so where someone does.
func Cautions() []string {
	return []string{
		"Steam scalds worse than boiling water and pure steam is invisible: vent the box, never plug it, stand aside when you open it, wear gauntlets, long sleeves and goggles.",
		"Wood dust harms the lungs (health and safety authorities set limits for it; western redcedar is a known sensitiser): extract it and wear a mask. Work knives and chisels away from you, and clamp stock for routing.",
		"Two-part coatings can cause asthma for life (NIOSH publication 96-111): brush, never spray, ventilate, wear gloves and goggles.",
		"Wood varies: every bend, strength and size here is an estimate, some of it from rules of thumb. Nothing here certifies a boat. Local law, the waterway's authority and licensed advice come first.",
		"On the water: wear a life jacket, fit flotation, and try the finished boat swamped in shallow water near help first.",
	}
}
