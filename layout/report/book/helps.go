package book

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/spreader"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// helps lists what the work needs and the boat does not keep, made or borrowed before it is
// wanted. Sizes follow from the frame; sections are common practice.
func (w *writer) helps() report.Table {
	f, g := w.Frame, &w.Frame.Gunwale
	t := report.Titled("Helps that the work needs and the boat does not keep").Words("What").Numbers("How many").Words("Size", "For")
	row := func(what string, n int, size, use string) { t.Row(what, fmt.Sprint(n), size, use) }
	row("story stick and rib stick", 1, "of thin plywood or hardboard, for which see Patterns: as long and wide as their sheets taped together", "to mark keel, stringers and ribs from")
	w.sticksToCut(row)
	if w.held(spreader.Together) != "" {
		row("strap, or cord for a windlass", 1, "twice round both gunwales", "to draw them together")
	}
	row("trestles", 2, w.aTrestle(), "to set up on")
	row("loose bars and shims", 2, w.Length(w.barWide())+" wide, "+w.Length(loose)+" tall, "+w.Length(w.looseLong())+" long or more", "between trestles and gunwales, to draw out from under them")
	if blocks := w.blockSizes(); blocks != "" {
		row("blocks", 2, blocks+" thick", "between the gunwales' ends while they are tied together")
	}
	if w.Bend.EdgeSet != nil {
		row("props", 2, w.Letters.Units.Whole(w.propTall(1))+" tall (bow) and "+w.Letters.Units.Whole(w.propTall(-1))+" (stern); the board on top and wedges make up the rest", "under both ends of the gunwales, while the edge-set is held")
	}
	row("keel blocks", 3, w.Length(keelUp)+" high, and shims", "to stand the keel on")
	row("upright planks", 2, "fast to the floor, or on a concrete one to a weighted board, longer than "+w.Handy(50*math.Ceil((keelUp+math.Max(f.Bow.Outline.Bounds().Max.Y, f.Stern.Outline.Bounds().Max.Y))/50)), "to clamp the stems to")
	if f.Design.Gunwale.Plies > 1 && f.Design.Gunwale.Glued != design.GluedOnForm {
		row("clamps", 2*(1+int(math.Ceil((g.Fore-g.Aft)/300))), "that open "+w.Handy(g.Width+30), "to glue both gunwales in one set-up")
	}
	row("clamps", 4, "that open "+w.Handy(w.largeClamps()), "to hold each stem to its plank, and a breasthook between the gunwales")
	row("string", 1, w.meters(f.Hull.Length+1000), "over the middle line, from stem to stem")
	row("straightedge", 1, "longer than "+w.Handy(2*g.EdgeAt(0, g.Width/2, g.Height).Y), "across the gunwales, to measure depths from")
	if n := w.Eye.Sighted; n > 0 && !w.Bend.OnForms() {
		s, use := f.Stringers[n-1], "along the bilges while the ribs are bent"
		if dry := w.stringersThat(func(s bend.Stringer) bool { return len(s.Hot) == 0 }); len(dry) > 0 {
			use += "; the sticks of " + stringers(dry[len(dry)-1:]) + " serve, before they are sawn to length"
		}
		row("bilge battens", 2, fmt.Sprintf("%s by %s, up to %s long", w.Fine(float64(f.Design.Stringers.Width)), w.Fine(float64(f.Design.Stringers.Depth)), w.Handy(math.Ceil((s.Fore-s.Aft)/50)*50)), use)
	}
	w.toTrue(row)
	row("straight sticks", 2, w.Handy(math.Ceil(w.Eye.Sticks/50)*50), "to sight for twist")
	longest := 0.0
	for _, r := range f.Ribs {
		longest = math.Max(longest, r.Blank)
	}
	row("steam box", 1, "inside some "+w.Handy(100)+" square and longer than "+w.Handy(math.Ceil(longest/50)*50)+", dowels across it "+w.Handy(30)+" over its floor for the ribs to lie on", "for the ribs")
	const watts = 2000.0
	row("boiler", 1, fmt.Sprintf("of %.0f kW or a camping stove's largest flame: it boils off %s an hour at the most; the ribs take %s in %s. A hose to lead the steam, and a kettle to fill it up from", watts/1000, w.water(boiledOff(watts, 1)), w.water(boiledOff(watts, w.steaming())), atLength(w.steaming())), "to feed the box"+w.andSleeve())
	w.sleeveAndGauges(row)
	row("soaking trough or tube", 1, "as long", "for their blanks")
	if r := w.tightest(); !w.Bend.OnForms() && !math.IsInf(r, 1) {
		row("post or round former", 1, "of a radius of "+w.Length(5*math.Floor(r/5))+" or less", "to bend ribs over")
	}
	row("steel plate", 1, "holes of "+w.pegHoles(), "to draw pegs through, where you split them yourself")
	return t.Noted("None of it is in the cost, the cut list and the ripping plan. Offcuts do for most, but not for bilge battens, laths and straight sticks: these want wood of their length.")
}

// water letters liters of it, up to the next whole liter or quart.
func (w *writer) water(l float64) string {
	return report.Either(w.Letters.Units, fmt.Sprintf("%.0f liters", math.Ceil(l)), fmt.Sprintf("%.0f quarts", math.Ceil(l/quart)))
}

// gaugeBy are the minutes in which a gauge is drawn and sawn by hand; common practice.
const gaugeBy = 8.0

// largeClamps is how far clamps open that hold a stem to a plank, or two gunwales with a
// breasthook between them and a scrap under either jaw, mm.
func (w *writer) largeClamps() float64 {
	const plank, scraps = 40.0, 20.0
	f, most := w.Frame, 0.0
	for _, s := range []frame.Stem{f.Stern, f.Bow} {
		most = math.Max(most, s.Moulded+plank)
	}
	for _, b := range []frame.Breasthook{f.SternHook, f.BowHook} {
		most = math.Max(most, b.Outline.Bounds().H()+2*f.Gunwale.Width+scraps)
	}
	return 50 * math.Ceil(most/50)
}

// sleeveAndGauges has rows for what is drawn or tied by hand.
func (w *writer) sleeveAndGauges(row func(what string, n int, size, use string)) {
	if hot := w.hotStringers(); len(hot) > 0 {
		row("steam sleeve", 1, w.Letters.Units.Rough(longestHot(hot)+2*sleevePast)+" of plastic sheet or tube that stands boiling water", "to steam stringers in place")
	}
	if !w.Bend.OnForms() {
		n := len(w.Frame.RibGroups)
		row("gauges", n, fmt.Sprintf("of 4 mm plywood or hardboard, by hand some %.0f hours, which the chapter Hours leaves out", math.Ceil(gaugeBy*float64(n)/60)), "to true the ribs to")
	}
}

// toTrue has rows for what shows how wide a hot rib stands, and how its bilge runs past the battens.
func (w *writer) toTrue(row func(what string, n int, size, use string)) {
	if w.Bend.OnForms() {
		return
	}
	widest := 0.0
	for _, r := range w.Bend.Ribs {
		widest = math.Max(widest, r.Hot)
	}
	row("width stick", 1, "two thin laths clamped on each other, up to "+w.Handy(math.Ceil(widest/50)*50), "to show the width that a hot rib is held at")
	if n := w.Eye.Sighted; n > 0 {
		if aft, fore := w.dryRun(n); aft != "" {
			s, ends := w.Frame.Design.Stringers, 2
			if aft == w.Frame.Ribs[0].Name {
				ends--
			}
			if fore == w.Frame.Ribs[len(w.Frame.Ribs)-1].Name {
				ends--
			}
			row("bilge laths", 2*ends, fmt.Sprintf("%s wide and some %s thick, %s long", w.Fine(float64(s.Width)), w.Length(float64(s.Depth)/2), w.Handy(w.lathLong(aft, fore))), "along the bilges past the ends of the battens' ties")
		}
	}
}

// lathLong is how long laths are from the last ribs of a dry run to those at the ends, and a
// bay past both, mm.
func (w *writer) lathLong(aft, fore string) float64 {
	ribs := w.Frame.Ribs
	at := func(name string) int { return slices.IndexFunc(ribs, func(r frame.Rib) bool { return r.Name == name }) }
	long := math.Max(ribs[at(aft)].Station-ribs[0].Station, ribs[len(ribs)-1].Station-ribs[at(fore)].Station)
	return 50 * math.Ceil((long+2*(ribs[1].Station-ribs[0].Station))/50)
}

// andSleeve says that the boiler serves a sleeve too, where one is used.
func (w *writer) andSleeve() string {
	if len(w.hotStringers()) == 0 {
		return ""
	}
	return " and the sleeve"
}

// sticksToCut has a row for the notched sticks, from aft forward.
func (w *writer) sticksToCut(row func(what string, n int, size, use string)) {
	const past = 100.0 // beyond each gunwale, to take hold of
	var long []float64
	for _, s := range w.Bend.Spread.Spreaders {
		long = append(long, 50*math.Ceil((s.Beam+2*w.Frame.Gunwale.Width+2*past)/50))
	}
	if len(long) == 0 {
		return
	}
	row("spreader sticks", len(long), fmt.Sprintf("%s long; %s high, %s thick", wording.List(long, w.Handy), w.Handy(math.Ceil((w.Frame.Gunwale.Height+40)/5)*5), w.Length(spreader.Stick)), "to hold the gunwales to the table Spreaders while building")
}

// tightest is the least radius of an inner face as a rib is bent hot, mm; +Inf without bends.
func (w *writer) tightest() float64 {
	least := math.Inf(1)
	for i, b := range w.Bend.Ribs {
		for _, a := range b.Arcs {
			least = math.Min(least, a.Form-w.Frame.Ribs[i].Thickness/2)
		}
	}
	return math.Max(least, 5)
}

// pegHoles letters the diameters of all pegs.
func (w *writer) pegHoles() string {
	j := w.Bend.Joints
	all := []float64{j.Head.Fastener.Diameter, j.Hooks[0].Fastener.Diameter, j.Hooks[1].Fastener.Diameter}
	slices.Sort(all)
	return wording.Joined(slices.Compact(all), " and ", w.Drill)
}
