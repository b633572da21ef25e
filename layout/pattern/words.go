package pattern

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/finding"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/spreader"
	"ribwright/geometry/wording"
	"ribwright/layout"
)

// First returns what the first sheet says about the boat: what to measure and what can
// hurt. told is whether it stands and its wood bends, in a line each.
func First(b *bend.Report, told finding.List, units measure.System) *layout.First {
	return &layout.First{Codes: "M, F1, A1: ribs at midship, forward, aft. S1: stringers next to the keel. Hollow bar: no scarf.", Found: toldLines(told, units), Checks: checks(b, units), Cautions: cautions()}
}

// Reading returns what must be known to read the patterns: what the codes mean, the shape
// to hold and the stock to mill.
func Reading(b *bend.Report, units measure.System) []layout.Note {
	f := b.Frame
	lines := append(codes(f, units), gauges(b), setting(b))
	if units == measure.Imperial {
		lines = append(lines, "Inches with a point, such as 0.228 in (5.8 mm), are what calipers show: keep to them as finely as to the millimeters beside them. Inches with a fraction are what a tape shows, to its nearest sixteenth; of a bore or a peg they are the drill that comes nearest to its millimeters.")
	}
	return []layout.Note{
		{Heading: "Codes", Lines: lines},
		{Heading: "Shape to hold", Lines: shape(b, units)},
		{Heading: "Stock", Lines: stock(b, units)},
	}
}

// checks lists what to measure on the assembled patterns before wood is cut.
func checks(b *bend.Report, units measure.System) []layout.Check {
	f := b.Frame
	g := &f.Gunwale
	first, last := g.Mortises[0], g.Mortises[len(g.Mortises)-1]
	mid := f.RibGroups[0].Rib
	gunwale := layout.Check{What: "Gunwale strip, end to end along its middle line", Is: both(units, g.Fore-g.Aft)}
	battens := layout.Check{What: "Keel on its stick, end to end", Is: both(units, f.Keel.Fore-f.Keel.Aft)}
	mortises := layout.Check{What: fmt.Sprintf("Middle of mortise %s to middle of mortise %s", first.Rib, last.Rib), Is: both(units, last.FromMidship-first.FromMidship)}
	if halved(f) {
		gunwale = layout.Check{What: "Gunwale strip, from 0 to its end along the middle line", Is: both(units, g.Fore)}
		battens = layout.Check{What: "Keel on its stick, from 0 to its end", Is: both(units, f.Keel.Fore)}
		mortises = layout.Check{What: fmt.Sprintf("0 to middle of mortise %s", last.Rib), Is: both(units, last.FromMidship)}
	}
	return []layout.Check{
		gunwale, mortises, battens,
		{What: fmt.Sprintf("Body plan, middle line to the outer face of rib %s at its head", mid.Name), Is: both(units, mid.Face(mid.Section.Half.Length(), mid.Thickness/2).X)},
	}
}

func codes(f *frame.Frame, units measure.System) []string {
	last := f.Gunwale.Mortises[len(f.Gunwale.Mortises)-1]
	return []string{
		"M, F, A: ribs. M stands at midship where there is one, F1 is the first forward of it, A1 the first aft. Midship is 0; forward is positive, aft negative.",
		fmt.Sprintf("S1 to S%d: stringers on each side, counted from the keel up; make each twice. On the stems a cross marks the middle of a stringer's end, on both sides.", len(f.Stringers)),
		"The body plan shows the outer face of every rib, solid and broken in turn; lines nearer than 0.8 mm are one, with both names. Where the thin lines across them cross a rib, one of its bends ends and the next begins. Dashed, with the words pushed in: the rib amidships where it stands when it is only pushed into its mortises, once with heads free to turn in them and once with heads held. Work its bilges by hand while it is hot until it lies on its own line.",
		"The gunwale strip lies on the underside of " + stockState(f) + " Mortises are " + units.Fine(float64(f.Design.Ribs.MortiseDepth)) + " deep, tenons " + units.Fine(f.Ribs[0].Tenon) + " long: the whole end of the rib is the tenon, and the shoulder line is where the gunwale's underside stops. Peg the head through the gunwale's inner wall and the tenon only; the chapter Joints has the peg and its place.",
		"lean out: the bottom of the slot goes toward the gunwale's outboard face by this angle off its own square; in: toward the inboard face.",
		fmt.Sprintf("Slots run along the gunwale. Toward the ends a rib's last hand's breadth twists with it (%.0f\u00B0 at %s), and its tenon leans along the stock (%.1f\u00B0): the chapter Gunwales has both for each rib, and what to ease.", degrees(math.Abs(last.Twist)), last.Rib, degrees(math.Abs(last.Along))),
		"Hollow bar along the gunwale strip: no part of a scarf may lie here. Scarf one ply at a time, never two at one place.",
		"The rib stick has a lane for half of each rib, strips half a rib each: on the flat blank, whichever face you mark, with what the bends add to its length. S: the middle of a stringer; on a strip of one rib, dashed, its edges. Radii are to the middle of the thickness.",
	}
}

// gauges says which shape the gauges show, and when they are held to a rib.
func gauges(b *bend.Report) string {
	const lie = "Gauges in the cutter's file lie inside the rib of that number, their straight end on the middle line, their ticks at the bend marks. They show it "
	if b.OnForms() {
		return lie + "free: off its form and relaxed, before it is fitted."
	}
	return lie + "as it stands in the boat: true the hot bilges to them."
}

// toldLines are the lines as the sheets have them.
func toldLines(told finding.List, units measure.System) []string {
	out := make([]string, len(told))
	for i, f := range told {
		out[i] = units.Words(wording.Capital(f.String())) + "."
	}
	return out
}

// cautions lists what can hurt, with who says so where someone does.
func cautions() []string {
	return []string{
		"Steam scalds worse than boiling water and pure steam is invisible: vent the box, never plug it, stand aside when you open it, wear gauntlets, long sleeves and goggles.",
		"Wood dust harms the lungs (western redcedar is a known sensitizer): extract it and wear a mask. Work knives and chisels away from you, and clamp stock for routing.",
		"Two-part coatings can cause asthma for life (NIOSH publication 96-111): brush, never spray, ventilate, wear gloves and goggles.",
		"Wood varies: bends, strengths and sizes here are estimates, some from rules of thumb. Nothing here certifies a boat. Local law, the waterway's authority and licensed advice come first.",
		"On the water: wear a life jacket, fit flotation, and first try the boat swamped in shallow water near help.",
	}
}

// stationOf letters a station with the way from midship.
func stationOf(units measure.System, station float64) string {
	way := " forward"
	if station < 0 {
		way = " aft"
	}
	if units == measure.Imperial {
		return measure.Sixteenths(math.Abs(station)) + way
	}
	return fmt.Sprintf("%.0f mm", math.Abs(station)) + way
}

// shape lists what gives the boat its form where no mold does.
func shape(b *bend.Report, units measure.System) []string {
	f := b.Frame
	g, s := &f.Gunwale, f.Hull.Sheer
	spread := wording.Joined(b.Spread.Spreaders, "; ", func(p spreader.Spreader) string {
		place := "midship"
		if p.At != 0 {
			place = fmt.Sprintf("%s (%s along the gunwale)", stationOf(units, p.At), units.Fine(math.Abs(p.Along)))
		}
		return fmt.Sprintf("%s %s, %s", place, units.Fine(p.Beam), holding(p, units))
	})
	out := []string{
		"Hold the gunwales within " + units.Within(marks.Held) + ", middle to middle of their undersides, with up to the force given on each: " + spread + ". A stick cannot pull: where they want to be held together take a strap or a windlass of cord. Triangles on the gunwale strip mark the places.",
		fmt.Sprintf("Their lean: %s. Their undersides stand %s above the baseline at midship, %s at the bow, %s at the stern.",
			leaning(g.Tilt), units.Fine(s.MidZ), units.Fine(s.BowZ), units.Fine(s.SternZ)),
	}
	for i, e := range []hull.EdgeSet{s.BowSet, s.SternSet} {
		if e.Made > 0 {
			out = append(out, fmt.Sprintf("The %s's rise holds %s that is sawn or laminated into the gunwales, from %s off midship on, before they are marked: the build book has the curve.", [2]string{"bow", "stern"}[i], units.Fine(e.Made), units.Fine(e.From)))
		}
	}
	var ends []string
	for _, e := range b.Gunwale.EdgeSets {
		if words := edgeSet(b, e, units); !slices.Contains(ends, words) {
			ends = append(ends, words)
		}
	}
	if len(ends) == 1 && len(b.Gunwale.EdgeSets) == 2 {
		return append(out, "The rise of either end "+ends[0])
	}
	for i, e := range b.Gunwale.EdgeSets {
		out = append(out, "The "+e.End+"'s rise "+ends[i])
	}
	return out
}

// holding says which way and how hard a spreader holds.
func holding(s spreader.Spreader, units measure.System) string {
	switch s.Holds {
	case spreader.Apart:
		return "apart " + units.Force(s.Force)
	case spreader.Together:
		return "TOGETHER " + units.Force(s.Force)
	}
	return "idle"
}

// edgeSet says how much of an end's rise the wood is sprung for, and whether it bears it.
func edgeSet(b *bend.Report, e bend.EdgeSet, units measure.System) string {
	words := fmt.Sprintf("holds %s of edge-set, from %s off midship on: the gunwales bent in their tall way to a radius of %.1f m, %.0f %% of what %s carries",
		units.Fine(e.Sprung()), units.Fine(e.From), e.Radius()/1000, 100*e.Stress/b.Boat.Wood.MOR, b.Boat.Wood.Name)
	if e.TooTight {
		return words + ". TOO MUCH to spring: laminate or cut them to the sheer."
	}
	return words + fmt.Sprintf(". The marks allow for it: springing it in after marking stretches the underside by %.1f mm at its end. On stock cut or laminated to the sheer, mark that much farther out there.", e.EndShift(b.Frame.Gunwale.Height))
}

// stock lists the sticks to mill, with the tightest bend beside the wood's limit.
func stock(b *bend.Report, units measure.System) []string {
	f := b.Frame
	d := f.Design
	least, most := math.Inf(1), 0.0
	for _, r := range f.Ribs {
		least, most = math.Min(least, r.Blank), math.Max(most, r.Blank)
	}
	stringers := wording.List(f.Stringers, func(s frame.Stringer) string { return units.Fine(s.Fore - s.Aft) })
	size := func(a, b float64) string { return units.Fine(a) + " x " + units.Fine(b) }
	return []string{
		fmt.Sprintf("Gunwales, 2: %s, %s tall, %d plies, %s long.", d.Gunwale.Species, size(f.Gunwale.Width, f.Gunwale.Height), d.Gunwale.Plies, units.Fine(f.Gunwale.Fore-f.Gunwale.Aft)),
		fmt.Sprintf("Ribs, %d: %s, %s thick, blanks from %s to %s.", len(f.Ribs), d.Ribs.Species, size(float64(d.Ribs.Width), float64(d.Ribs.Thickness)), units.Fine(least), units.Fine(most)),
		tightest(b),
		fmt.Sprintf("Keel: %s, %s deep, %s long. Stringers, 2 each: %s, %s deep, %s long from the keel up.", d.Keel.Species, size(float64(d.Keel.Width), float64(d.Keel.Depth)), units.Fine(f.Keel.Fore-f.Keel.Aft),
			d.Stringers.Species, size(float64(d.Stringers.Width), float64(d.Stringers.Depth)), stringers),
		fmt.Sprintf("Stems: %s thick at the bow, %s at the stern. Breasthooks: %s, %s thick. Skin: %s around at midship, %s along the keel and both stems, whose way is sewn: the sheet need not be so long.", units.Fine(f.Bow.Thickness), units.Fine(f.Stern.Thickness),
			d.Breasthook.Species, units.Fine(f.BowHook.Thickness), units.Fine(f.Skin.Girth), units.Fine(f.Skin.Length)),
	}
}

// tightest compares the tightest bend, as it is made hot, with what the wood takes. The
// limits are from memory and said to be so.
func tightest(b *bend.Report) string {
	wood, name, tight := b.Boat.Ribs, b.Ribs[0].Name, math.Inf(1)
	for _, r := range b.Ribs {
		for _, a := range r.Arcs {
			if a.OnForm < tight {
				name, tight = r.Name, a.OnForm
			}
		}
	}
	words := fmt.Sprintf("Tightest bend, hot: rib %s, inside radius %.1f thicknesses. %s, steamed, takes about %.3g without a strap and %.3g with one (from memory: test-bend first).",
		name, tight, wording.Capital(wood.Name), wood.FreeRatio, wood.StrapRatio)
	switch {
	case tight < wood.StrapRatio:
		return words + " TOO TIGHT for this wood: make the ribs thinner, the bilge radius larger, or choose another wood."
	case tight < wood.FreeRatio && !b.OnForms():
		return words + " IT WANTS A STRAP, and a strap wants forms (bending.method)."
	case tight < wood.FreeRatio:
		return words + " USE A STRAP for it."
	}
	return words
}
