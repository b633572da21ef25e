package pattern

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/layout"
)

// Notes returns what the first sheets say about the boat: the shape to hold, the
// stock to mill, what to measure, what the codes mean and what can hurt.
func Notes(b *bend.Report, units measure.System) []layout.Note {
	f := b.Frame
	return []layout.Note{
		{Heading: "Codes", Lines: append(codes(f, units), setting(b))},
		{Heading: "Check with a tape before you cut", Lines: checks(f, units)},
		{Heading: "Cautions", Lines: cautions()},
		{Heading: "Shape to hold", Lines: shape(b, units)},
		{Heading: "Stock", Lines: stock(b, units)},
	}
}

// checks lists what to measure on the assembled patterns and on the wood before
// cutting.
func checks(f *frame.Frame, units measure.System) []string {
	g := &f.Gunwale
	first, last := g.Mortises[0], g.Mortises[len(g.Mortises)-1]
	mid := f.RibGroups[0].Rib
	gunwale := "Gunwale strip, end to end along its middle line: " + both(units, g.Fore-g.Aft) + "."
	if halved(f) {
		gunwale = "Gunwale, end to end along its middle line: " + both(units, g.Fore-g.Aft) + "; the strip is half of it, from 0."
	}
	return []string{
		gunwale,
		fmt.Sprintf("Middle of mortise %s to middle of mortise %s: %s.", first.Rib, last.Rib, both(units, last.FromMidship-first.FromMidship)),
		"Keel, end to end: " + both(units, f.Keel.Fore-f.Keel.Aft) + ".",
		fmt.Sprintf("Body plan, from the middle line to the head of rib %s, at mid-thickness: %s.", mid.Name, both(units, mid.Section.HalfBreadth)),
		"Pull a tape over every strip when it is taped together; more than 1 mm off in 3 metres means a joint has slipped.",
		"Steam and bend one rib from midship first, and hold it against the body plan, before you cut the others.",
	}
}

// codes explains every code on the patterns.
func codes(f *frame.Frame, units measure.System) []string {
	last := f.Gunwale.Mortises[len(f.Gunwale.Mortises)-1]
	dy, dz := f.Gunwale.Line.Slopes(last.Station)
	sin, cos := math.Sincos(f.Ribs[len(f.Ribs)-1].Section.Shape.Flare)
	along := math.Asin(math.Abs(dy*sin+dz*cos) / math.Sqrt(1+dy*dy+dz*dz))
	return []string{
		"M, F, A: ribs. M stands at midship where there is one, F1 is the first forward of it, A1 the first aft. Midship is 0; forward is positive, aft negative.",
		fmt.Sprintf("S1 to S%d: stringers on each side, counted from the keel up; make each twice. On the stems a cross marks the middle of a stringer's end, on both sides. Short lines across the ribs of the body plan are the stringers' middles.", len(f.Stringers)),
		"The gunwale strip lies on the underside of " + stockState(f) + " Mortises are " + units.Fine(float64(f.Design.Ribs.MortiseDepth)) + " deep, tenons " + units.Fine(f.Ribs[0].Tenon) + " long: the whole end of the rib is the tenon, and the shoulder line is where the gunwale's underside stops; peg it there.",
		"lean out: the bottom of the slot goes towards the gunwale's outboard face by this angle off its own square; in: towards the inboard face.",
		fmt.Sprintf("Slots run along the gunwale. Towards the ends a rib's last hand's breadth twists with it (%.0f\u00B0 at %s), and its tenon leans along the stock (%.1f\u00B0).", degrees(math.Atan(math.Abs(dy))), last.Rib, degrees(along)),
		"Hollow bar along the gunwale strip: no part of a scarf may lie here. Scarf one ply at a time, never two at one place.",
		"Rib strips show half a rib on the flat blank, whichever face you mark, and hold what the bends add to its length. Dashed pairs of lines are the stringers' edges. Radii are to the middle of the thickness.",
		"Gauges in the cutter's file: the outer curve lies inside the bent rib of that number, its straight end on the boat's middle line.",
	}
}

// cautions lists what can hurt, with who says so where someone does.
func cautions() []string {
	return []string{
		"Steam scalds worse than boiling water and pure steam is invisible: vent the box, never plug it, stand aside when you open it, wear gauntlets, long sleeves and goggles.",
		"Wood dust harms the lungs (health and safety authorities set limits for it; western redcedar is a known sensitiser): extract it and wear a mask. Work knives and chisels away from you, and clamp stock for routing.",
		"Two-part coatings can cause asthma for life (NIOSH publication 96-111): brush, never spray, ventilate, wear gloves and goggles.",
		"Wood varies: every bend, strength and size here is an estimate, some of it from rules of thumb. Nothing here certifies a boat. Local law, the waterway's authority and licensed advice come first.",
		"On the water: wear a life jacket, fit flotation, and try the finished boat swamped in shallow water near help first.",
	}
}

// stationOf letters a station with the way from midship.
func stationOf(units measure.System, station float64) string {
	way := "forward"
	if station < 0 {
		way = "aft"
	}
	if units == measure.Imperial {
		return measure.Sixteenths(math.Abs(station)) + " " + way
	}
	return fmt.Sprintf("%.0f mm %s", math.Abs(station), way)
}
