package book

import (
	"fmt"
	"slices"

	"ribwright/geometry/boat/joint"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/design"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

type step struct {
	stage hours.Stage
	do    []string
	tools string
	dry   string
	check string
	who   string // who says the caution
	care  string
}

func (w *writer) order() {
	w.chapter("Order of work")
	w.say("Times are for this boat and a builder who is %s; drying times are common practice for a heated workshop and what the maker says comes first.", w.Skill)
	first := 1
	for _, s := range w.steps() {
		w.section(fmt.Sprintf("%s, %.1f h", wording.Capital(string(s.stage)), hours.Hours(w.Work, s.stage, w.Skill)))
		if s.care != "" {
			w.warn(s.care, s.who)
		}
		w.add(report.List{First: first, Items: s.do})
		first += len(s.do)
		t := report.Titled("").Names("").Words("").Filled("Tools", s.tools)
		if s.dry != "" {
			t.Row("Drying", s.dry)
		}
		w.add(t.Filled("Check", s.check))
	}
}

func (w *writer) steps() []step {
	all := append(w.woodSteps(), append(w.frameSteps(), w.coverSteps()...)...)
	if kits := w.Outfits.Kits(); len(kits) > 0 {
		all = append(all, w.outfitStep(kits))
	}
	return all
}

// outfitStep is the work on all outfits, after the boat has been afloat.
func (w *writer) outfitStep(kits []kit.Kit) step {
	do := []string{"Print each outfit's own patterns; hold the gunwale marks to the boat as it stands before you cut a board that crosses it.",
		"Saw, shape and drill the boards; glue thick pieces from their layers and plane them when the glue is hard.",
		"Leather or cloth wherever a fitting bears on a gunwale; nothing is screwed into the frame."}
	for _, k := range kits {
		if k.Sewing > 0 {
			do = append(do, "Lay out, sew and hem the sail; patch every corner in three layers before the eyelets go in.")
		}
	}
	do = append(do, "Fit everything on land, then load it with more than it will feel at sea, a little at a time.",
		"Try each outfit in shallow water near help, swamped as well, before you rely on it.")
	return step{stage: hours.Outfit, do: do, tools: "saw, spokeshave, drill, clamps, palm and needles or a sewing machine", dry: "glue overnight, a day before it is loaded",
		check: "no clip can slide along its gunwale when it is lashed; every line runs free and lets go at once",
		care:  "Spars, beams and rowlocks are loaded far harder by a gust, a wave or a fall than by hand: look at every joint before each trip, and never stand under a mast that is being stepped. Wear a life jacket.", who: "common practice, no source"}
}

func (w *writer) woodSteps() []step {
	f := w.Frame
	g := &f.Gunwale
	marks := fmt.Sprintf("While the stock is straight, mark all %d mortises of a gunwale from midship, and its mirror on the other.", len(g.Mortises))
	cut := fmt.Sprintf("Cut the mortises %s deep with their lean; square or round the ends to suit the rib heads.", w.Fine(float64(f.Design.Ribs.MortiseDepth)))
	end := "Cut the gunwales to length with their end cuts after the mortises are done."
	glue := fmt.Sprintf("Glue the %d plies of each gunwale; scarf one ply at a time, never two at one place.", f.Design.Gunwale.Plies)
	gunwale := []string{marks, cut, end}
	switch {
	case f.Design.Gunwale.Plies > 1 && f.Design.Gunwale.Glued == design.GluedStraight:
		gunwale = []string{glue, marks, cut, end}
	case f.Design.Gunwale.Plies > 1:
		gunwale = []string{
			"Clamp the dry plies of a gunwale flush and straight. " + marks,
			w.heldToGlue() + " Keep their midship marks together: the marks on the middle ply hold, the others slide. " + glue,
			cut, end}
		if f.Design.Gunwale.Glued != design.GluedOnForm {
			gunwale = slices.Insert(gunwale, 1, w.sticks())
		}
	}
	tools, routing := "router or drill and chisels, bevel, clamps", "Clamp a wide backing beside narrow stock before routing; both hands on the machine, shallow passes. "
	if g.Blocks != nil {
		gunwale, tools = w.byGap(glue, end), "shooting board or disc sander, straight board, film, wedges, wax, chisel, clamps"
		routing = "Short blocks are hard to hold: trim them against a stop, fingers clear of the blade. "
	}
	return []step{
		{stage: hours.Loft, do: []string{
			"Print the patterns at 100 %, check both scale bars of sheet 1, tape the strips and pull a tape over each.",
			"Trace the story stick, which is the sheets of keel and stringers, the rib strips and the gauges on stock that does not shrink" + w.traced()},
			tools: "printer, steel rule, tape measure, knife", check: "no taped strip off by more than 1 mm in 3 m",
			care: "Work knives away from you.", who: "common practice, no source read"},
		{stage: hours.Saw, do: []string{
			"Sort the boards: straightest grain for ribs and gunwales; a slope of grain no steeper than 1 in 15.",
			"Rip by the ripping plan, plane to the section, ease the edges of battens and ribs.",
			"Mark every stick with its mark from the cut list; number port and starboard." + w.gluedUp()},
			tools: "saw with a rip fence, plane, square, pencil", check: "gauge the thickness of rib stock at three places: it decides how it bends",
			care: "Wood dust harms the lungs: limits are 3 mg/m3 for hardwood and 5 mg/m3 for softwood over 8 hours; western redcedar is a known sensitiser. Extract at the source and wear a mask besides. Use push sticks and the guard; never rip stock that is too short to hold.",
			who:  "HSE, wood dust; slope of grain from FAA AC 43.13-1B; the saw is common practice"},
		{stage: hours.Gunwale, do: gunwale,
			tools: tools, dry: "glue overnight before the clamps come off, a day before bending",
			check: "first to last mortise by tape; a rib offcut slides in by hand",
			care:  routing + "Epoxy sensitises the skin: nitrile gloves, changed often; never sand it half cured.", who: "common practice; HSE on epoxy"},
	}
}

// byGap is the work on gunwales whose mortises are gaps.
func (w *writer) byGap(glue, end string) []string {
	out := w.gapSteps()
	switch w.Frame.Design.Gunwale.Glued {
	case design.GluedStraight:
		out = append(out, glue+gapsGlued())
	default:
		out = append(out, "Clamp the dry plies of a gunwale flush and straight, and draw midship and the places of the spreaders across all of them.")
		if w.Frame.Design.Gunwale.Glued != design.GluedOnForm {
			out = append(out, w.sticks())
		}
		out = append(out, w.heldToGlue()+" Keep their midship marks together: the middle ply holds, the others slide. "+glue+gapsGlued())
	}
	return append(out, w.clearGaps(), end)
}

func (w *writer) frameSteps() []step {
	f := w.Frame
	ribs := w.bending()
	return []step{
		{stage: hours.Ends, do: []string{w.stemsMade(), "Shape the breasthooks to the lean of the gunwales."},
			tools: "band saw or bow saw, spokeshave, drill", check: "lay the stem on its pattern; the notch takes both gunwales",
			care: "Eye protection at the band saw; fingers never in line with the blade.", who: "common practice, no source"},
		{stage: hours.Setup, do: w.setUp(),
			tools: "trestles, spreaders, straps or cord for a windlass, clamps, level, bevel, straightedge, tape", check: "diagonals alike within 3 mm (1/8 in); heights of the undersides at both ends alike",
			care: "Bent gunwales are springs: tie every spreader before you let go.", who: "common practice, no source"},
		{stage: hours.Bend, do: ribs.do, tools: ribs.tools, dry: ribs.dry, check: ribs.check,
			care: "Steam scalds worse than boiling water and pure steam is invisible. Vent the box, drain it downhill, never plug it; stand aside when you open it; gauntlets, long sleeves, goggles. Burners make carbon monoxide: steam outdoors, and never let the kettle boil dry.",
			who:  "common practice; bend limits from memory"},
		{stage: hours.Lash, do: slices.Concat([]string{
			"Mark the stringers from the story stick while they are straight.",
			"Lash the keel first, from midship to both ends."}, w.letGo(), w.lashStringers(), []string{
			fmt.Sprintf("%d lashings of %d turns; see Joints.", w.Needs.Joints.Keel.Count+w.Needs.Joints.Stringers.Count, joint.Turns)}, w.cutToGaps(), w.takeOut()),
			tools: "cord, fid, spring clamps, saw, tape" + w.toSteamEnds(), check: fmt.Sprintf("sight every batten for a fair curve; %d pairs level port and starboard", len(f.Stringers)),
			care: "Awls and fids slip: push away from the other hand.", who: "common practice, no source"},
	}
}

func (w *writer) coverSteps() []step {
	return []step{
		{stage: hours.Oil, do: append(w.boreForSeats(), "Round over all that the skin or a hand will touch.", "Oil or varnish every stick, end grain twice."),
			tools: "spokeshave, abrasive, brush", dry: "a day for each coat", check: "run a stocking over the outside: nothing may catch",
			care: "Oily rags heat by themselves and burn: into water or spread flat outdoors at once.", who: "common practice, no source read"},
		w.skinStep(),
		w.coatStep(),
		{stage: hours.Fit, do: append(w.outsideBrief(), w.fitSeats()+"Fit footrest and flotation at both ends.", "Weigh the boat; float it empty, then loaded, and compare draught and freeboard with On the water.", "Try it swamped in shallow water near help."),
			tools: "plane, saw, drill, screwdriver, clamps; bathroom scale, tape", dry: "bedding compound a day before the water", check: "freeboard within 20 mm (3/4 in) of the page; no leak after an hour",
			care: "Wear a life jacket. Cold water kills fast. Check local rules for registration, lights and life jackets; licensed advice comes first where a boat is used for hire.",
			who:  "33 CFR 175.15 in the United States; local law comes first"},
	}
}
