package book

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// woodSteps are from the printer to sticks, gunwales and stems.
func (w *writer) woodSteps() []step { return []step{w.patterns(), w.sawing(), w.gunwales(), w.stems()} }

func (w *writer) patterns() step {
	trace := "Trace on thin plywood, or on other stock that does not shrink, the story stick, which is the sheets of keel and stringers; the rib stick, or the rib strips where each rib has its own; and the gauges, " + fmt.Sprint(len(w.Frame.RibGroups)) + " in all, ribs that are alike share one: a line inside the rib's own on the body plan by the thickness of a rib, with a tick at each bend mark, where a thin line crosses the rib's"
	return step{name: string(hours.Loft), work: stage(hours.Loft), buys: []string{"workshop"}, do: []string{
		"Print the patterns at 100 %, sheet 1 first.",
		"Measure both scale bars of sheet 1 with a steel rule, then print the others.",
		"Lay the sheets of a strip on each other's crosses and tape them.",
		"Pull a tape measure over each strip that the patterns' first sheet has a length for, and along the row of distances on every other.",
		trace + w.traced(),
		"Keep the story stick flat and dry. Every batten is marked from it. Leave its lanes together: each alone is a sliver. Lay a square along its upper edge, the blade on a mark of the lane that you read, and carry the mark to the batten beside it. The rib stick's lanes are wider and shorter: they are sawn off from the top, one after the other, as they are done. Saw in the lane that is done, clear of the line below, which is the next one's edge. Keep each, with its name on it, for a rib that is made anew.",
		"Where a strip or a rib's lane shows one half, carry its marks round its edge to its back with a square: turned over at its 0, its back up and its marked edge on the same edge of the wood, it marks the other half. Where the story stick shows one half, turn it end for end instead, its face up and its 0 on the batten's middle: its upper edge then lies along the batten's other edge.",
		w.byMachine(),
	}, tools: "printer, steel rule, tape measure, square, knife, adhesive tape, pencil, saw; thin plywood or hardboard to trace on", check: "no taped strip off by more than " + report.Either(w.Letters.Units, "1 mm in 3 m (1/32 in in 8 ft)", "1/32 in in 8 ft"),
		wrong: "a scale bar is off: set the printer to actual size and print again. It is still off: take the file to a print shop or to another printer, on the same paper, and measure again. Who made the files can also have the program make a proof of your printer, and patterns that allow for it. A strip is off: cut its tape and lay the sheets anew",
		care:  "Work knives away from you.", who: "common practice, no source read"}
}

// alongSticks counts the scarfs of all sticks.
func (w *writer) alongSticks() (n int) {
	for _, c := range w.Plan.Cuttings {
		n += len(c.Joints)
	}
	return n
}

func (w *writer) sawing() step {
	var buys []string
	scarf, dry, tools := w.scarfing(), "", "saw with a rip fence, push sticks, plane, square, pencil, tape, calipers"
	if scarf != nil || w.gluedUp() != "" {
		buys, dry, tools = []string{"glue"}, "glue overnight, before the sticks are planed", tools+", brush for glue, clamps, straight board, film, brads and hammer"
	}
	for _, v := range w.Plan.Woods {
		buys = append(buys, "wood: "+v.Species)
	}
	return step{name: string(hours.Saw), work: stage(hours.Saw), buys: buys, dry: dry, do: acts(slices.Concat([]string{
		"Sort the boards. The straightest grain is for ribs and gunwales, its slope no steeper than 1 in 15.",
		"Rip each board by the ripping plan, each rip " + w.Fine(cutlist.Dressing) + " wider than it says there, but the first and the last of a board, which have one sawn face, " + w.Fine(cutlist.Dressing/2) + " wider: so much is planed off.",
		w.endsOfRips(),
		"Cut the checked end off each rip that still has it, square, " + w.Length(cutlist.Checked) + " or more; then crosscut it by the plan from there.",
		"Write on every piece its mark from the cut list." + w.sides(),
	}, scarf, []string{
		"Plane every stick to the section that the ripping plan and the cut list give it.",
		w.roundEdges(),
		w.gluedUp(),
	})...), tools: tools, check: "gauge the thickness of rib stock at three places, within " + w.Fine(marks.Ribbed) + ": it decides how it bends",
		wrong: "a thick blank is planed again. A blank that is thin somewhere, or has a knot, becomes a short part; saw another for it",
		care:  "Wood dust harms the lungs: limits are 3 mg/m3 for hardwood and 5 mg/m3 for softwood over 8 hours; western redcedar is a known sensitizer. Extract at the source and wear a mask besides. Use push sticks and the guard; never rip stock that is too short to hold.",
		who:   "HSE, wood dust; slope of grain from FAA AC 43.13-1B; the saw is common practice"}
}

// roundEdges says which edges are rounded while sticks are loose, and by how much: no plane
// comes to them once they are lashed.
func (w *writer) roundEdges() string {
	const more = 20.0 // mm beyond head and spare end, by which a rib may be corrected; our own choice
	j, d := w.Bend.Joints, w.Frame.Design.Ribs
	of := []string{"of the ribs to a radius of " + w.Fine(j.Keel.RoundRib)}
	if len(w.Frame.Stringers) > 0 {
		of = append(of, "of the stringers to "+w.Fine(j.Stringers.Round))
	}
	of = append(of, "of the keel to "+w.Fine(j.Keel.Round))
	words := "Round the long edges now, for cord goes over them and most are out of a plane's reach later: " + wording.And(of) + ". "
	sharp := "the last " + w.Letters.Units.Whole(10*math.Ceil((w.Frame.Ribs[0].Tenon+float64(d.Trim)+more)/10)) + " of each rib, whose heads fill their mortises"
	if d.Spare > 0 {
		sharp += "; the spare blanks, until they are marked"
	}
	if w.Frame.Design.Gunwale.Plies > 1 {
		sharp += "; the edges of plies, which are glued"
	}
	return words + "Leave sharp: " + sharp + "."
}

// middlePly says by which ply's mark an end is cut where plies have slid.
func (w *writer) middlePly() string {
	g := w.Frame.Design.Gunwale
	if g.Plies < 3 || g.Glued == design.GluedStraight {
		return ""
	}
	return ": that of the middle ply, carried across the others, which have slid"
}

func (w *writer) gunwales() step {
	g, d := &w.Frame.Gunwale, w.Frame.Design.Gunwale
	marks := fmt.Sprintf("%s, mark from the gunwale strip midship, all %d mortises, the places of the spreaders%s and the sloping cut at each end of a gunwale, and the mirror of it on the other. Letter the ply that lies inboard.", w.unbent(), len(g.Mortises), w.boltMarks())
	if d.Plies > 1 && d.Glued != design.GluedStraight {
		marks += " Prick the middle and the ends of each mark with an awl: pencil goes with the glue when it is scraped."
	}
	m := g.Mortises[0]
	cut := fmt.Sprintf("Cut the mortises %s long, %s wide and %s deep with their lean, by the table Mortises in the chapter Gunwales: a row of holes, or passes of a router, with a bit of %s, no wider, then pare to the lines. Square or round their ends to suit the rib heads.", w.Fine(m.Length), w.Fine(m.Width), w.Fine(m.Depth), w.mortiseBit(m.Width))
	end := []string{"Cut the gunwales to length now, by the sloping marks at their ends" + w.middlePly() + ".", w.boredEnds()}
	end = append(end, w.boltsOnBench()...)
	glue := fmt.Sprintf("Glue the %d plies of each gunwale on a straight bench. Wipe off what comes out.", d.Plies)
	s := step{name: string(hours.Gunwale), work: stage(hours.Gunwale), wood: []cutlist.Family{cutlist.Gunwale, cutlist.Block}, do: append([]string{marks, cut}, end...),
		tools: "pencil, awl, square, saw, blocks of one height, sticks for the spreaders, film or paper, brush for glue, clamps, strap or cord for a windlass, scraper, drill, chisels, router if there is one, bevel, tape" + w.forBolts(), check: "first to last mortise by tape within 2 mm (1/16 in), as the strip says; a rib offcut slides in by hand",
		wrong: "a mortise is too tight: pare its ends. It is in a wrong place: glue in a plug of the same wood, and cut anew when it is hard",
		care:  "Clamp a wide backing beside narrow stock before routing; both hands on the machine, shallow passes.", who: "common practice, no source"}
	switch {
	case d.Plies > 1 && d.Glued == design.GluedStraight:
		s.do = slices.Concat([]string{glue, offBench, marks, cut}, end)
	case d.Plies > 1:
		s.do = slices.Concat([]string{w.dryPlies(), marks}, w.ifBent(w.sticks()), w.glueInBend(""), []string{cut}, end)
	}
	if g.Blocks != nil {
		s.do, s.tools = w.byGap(glue, end...), "pencil, square, saw, brush for glue, shooting board or disc sander, straight board, film, wedges, wax, drill, chisel, scraper, plane, clamps, strap or cord for a windlass, tape"
		s.care = "Short blocks are hard to hold: trim them against a stop, fingers clear of the blade."
		s.wrong = "a gap is too tight: pare the ends of its blocks. It is in a wrong place: glue in a plug of the same wood, and cut it anew when it is hard"
	}
	s.do = append(w.sawSheer(), s.do...)
	if d.Plies > 1 {
		s.buys, s.dry = []string{"glue"}, "glue overnight before the clamps come off, a day more before anything is bent or sprung"
		s.care += " Epoxy sensitizes the skin: nitrile gloves, changed often; never sand it half cured."
		s.who = "common practice; HSE on epoxy"
	}
	return s
}

// mortiseBit letters the bit for a mortise: the widest of those that shops sell by half a
// millimeter, or by a sixteenth of an inch, that is no wider than it.
func (w *writer) mortiseBit(wide float64) string {
	if step := 25.4 / 16; w.Letters.Units == measure.Imperial {
		return w.whole(step * math.Floor(wide/step))
	}
	return w.Fine(math.Floor(2*wide) / 2)
}

// boltsOnBench bores the gunwales for the cross pieces' bolts while they lie loose: in the standing
// frame a drill would come from below.
func (w *writer) boltsOnBench() []string {
	j := w.Bend.Joints
	if len(j.Cross) == 0 {
		return nil
	}
	c := j.Cross[0]
	return []string{fmt.Sprintf("Bore the holes of the cross pieces' bolts at their marks, %s, square to the underside and right through. Let a head with its washer into the upper face over each: %s across and %s deep, as the chapter Joints says.", w.Drill(c.Of.Hole), w.whole(c.Washer), w.whole(c.Sunk))}
}

// forBolts ends the list of tools where bolts' heads are sunk.
func (w *writer) forBolts() string {
	if len(w.Bend.Joints.Cross) == 0 {
		return ""
	}
	return ", Forstner drill"
}

// boltMarks names the bolts that are marked along the straight gunwale, "" without any.
func (w *writer) boltMarks() string {
	words := ""
	if len(w.Frame.Thwarts) > 0 {
		words += ", the bolts of the cross pieces"
	}
	if w.hungSeats() {
		words += ", the bolts of the seats' hangers by the chapter Seats"
	}
	return words
}

// ifBent leaves out what is for gunwales that spreaders hold while they are glued.
func (w *writer) ifBent(do []string) []string {
	if w.Frame.Design.Gunwale.Glued == design.GluedOnForm {
		return nil
	}
	return do
}

// glueInBend is the gluing of plies in the curve that they keep; more is said of how the
// clamps go on.
func (w *writer) glueInBend(more string) []string {
	plies := w.Frame.Design.Gunwale.Plies
	flush := "Keep their midship marks together: the marks on the middle ply hold, the others slide."
	if plies == 2 {
		flush = "Keep their midship marks together: the marks on the inner ply hold, the other slides."
	}
	spread := fmt.Sprintf("Glue the %d plies of each gunwale: spread glue on both faces of every joint and lay the plies flush. %s%s", plies, flush, more)
	if w.Frame.Design.Gunwale.Glued == design.GluedOnForm {
		return []string{"Do the next steps once without glue.", spread, "Clamp the plies to the form, from midship outward.", offBench}
	}
	return slices.Concat([]string{
		w.roughEnds(),
		"Do the next steps once without glue, for both gunwales in one set-up. Take a glue that stays open as long as they took you: epoxy with a slow hardener does, and it fills small gaps too (common practice).",
		spread,
		"Clamp each gunwale lightly, every " + w.Handy(300) + ".",
		w.tieEnds(),
	}, w.heldApart(), []string{
		"The gunwales stand upright in the notches, on blocks of one height under their ends and beside each stick; the lean comes later, in setting up. Line the notches and the blocks with film or paper, so that nothing is glued to them.",
		"Draw the clamps tight from midship outward.",
		"Measure every beam again when the clamps are on.",
		offBench,
	})
}

// roughEnds says where plies are sawn off before they are glued in a bend: the outboard
// ply slides back there and the inboard one out, by a ply's thickness times the turn of the
// end, and the finished cut slopes outward. Longer ends would meet.
func (w *writer) roughEnds() string {
	g, plies := &w.Frame.Gunwale, w.Frame.Design.Gunwale.Plies
	spare := 1 + math.Max(g.AftRise, g.ForeRise)
	slide := g.Width / float64(plies) * math.Max(math.Abs(g.AftCut), math.Abs(g.ForeCut))
	holds := float64(plies-1) / 2 // the ply whose marks hold, counted from inboard
	if plies == 2 {
		holds = 0
	}
	off := func(ply float64) string {
		return w.Letters.Units.Whole(math.Ceil(math.Max(1, spare+(ply-holds)*slide)))
	}
	words := "the inboard ply by " + off(0)
	if plies > 2 {
		words += ", the middle by " + off(holds)
	}
	return "Saw the plies of both gunwales off outside the sloping marks of their ends, along their slope: " + words + " and the outboard one by " + off(float64(plies-1)) + ". Bent, the outboard ply slides back and the inboard one out. Longer, the two gunwales would meet there."
}

// byGap is the work on gunwales whose mortises are gaps.
func (w *writer) byGap(glue string, end ...string) []string {
	out := w.gapSteps()
	draw := fmt.Sprintf("Draw from the gunwale strip midship, the places of the spreaders%s and the sloping cut at each end", w.boltMarks())
	if w.Frame.Design.Gunwale.Glued == design.GluedStraight {
		out = append(out, glue+gapsGlued(), offBench, draw+".")
	} else {
		out = append(out, w.dryPlies(), draw+" across all of them.")
		out = slices.Concat(out, w.ifBent(w.sticks()), w.glueInBend(gapsGlued()))
	}
	return append(append(out, w.clearGaps()), end...)
}

func (w *writer) stems() step {
	made, tools, dry := w.stemsMade(), "pencil, band saw or bow saw, plane, spokeshave, bevel, drill, awl, chisel", ""
	var buys []string
	switch w.Frame.Design.MadeStems() {
	case design.StemsPlywood:
		buys, dry, tools = []string{"glue", "stem-ply"}, "glue overnight, before the stems are sawn", "brush for glue, clamps or weights, "+tools
	case design.StemsLaminated:
		buys, dry, tools = []string{"glue"}, "glue overnight on the form, before the stems are sawn", "form, film, brush for glue, clamps, "+tools
	}
	return step{name: string(hours.Ends), work: stage(hours.Ends), wood: []cutlist.Family{cutlist.Stem, cutlist.Breasthook}, buys: buys, do: append(made,
		"Cut the foot and the shelf for the gunwales to their lines."+w.crosses(),
		"Bore all holes of the pattern now, while the piece lies flat, square to the stem.",
		"Lay each breasthook's pattern on its blank, the middle line along the grain, with "+w.Letters.Units.Whole(frame.Around)+" to spare on every side. Saw close outside the line and plane to it.",
		"Plane their edges to the lean that the chapter Stems and breasthooks gives."),
		tools: tools, dry: dry, check: "lay the stem on its pattern; the shelf is level across and square to the stem's sides",
		wrong: "a shelf is high or aslant: pare it. It is low: glue on a shaving. A stem or a plate that has split is made anew",
		care:  "Eye protection at the band saw; fingers never in line with the blade.", who: "common practice, no source"}
}

// gluedUp says which parts are glued from staves before they are shaped, "" for none.
func (w *writer) gluedUp() string {
	var parts []string
	for _, s := range w.Plan.Sticks {
		if s.Edge && !s.Outfit() && !slices.Contains(parts, s.Member) {
			parts = append(parts, s.Member)
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return fmt.Sprintf("No board is wide enough for %s: plane the edges of the staves straight and square, glue them edge to edge, and lay the pattern on them the next day.", wording.List(parts, strings.Clone))
}
