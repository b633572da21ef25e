package book

import (
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry/boat/fittings"
	"ribwright/geometry/boat/inside"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/outside"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/outfit"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// coverSteps are from the bare frame to the last coat.
func (w *writer) coverSteps() []step {
	buys, dry := []string{"oil"}, "a day for each coat"
	tools := "drill, spokeshave, abrasive, brush, rags, an old stocking" + w.forLoops()
	if w.hungSeats() {
		buys, dry, tools = append(buys, "seat-bolt", "glue", "epoxy"), "glue of the blocks overnight, "+dry, "pencil, tape, clamps, saw, square, Forstner drill of "+w.whole(seat.NutSeat)+", wrench of 10 mm, wax, kitchen film, pot and stick to mix epoxy in, gloves, brush for glue, "+tools
	}
	edged := []string{"gunwales", "stems", "breasthooks"}
	if len(w.Frame.Thwarts) > 0 {
		edged = append(edged, "cross pieces")
	}
	if n := w.loops(); n > 0 {
		buys = append(buys, "strap")
	}
	oil := step{name: string(hours.Oil), work: stage(hours.Oil), bare: true, buys: buys, do: slices.Concat(w.onBareFrame(), []string{
		"Ribs and battens were rounded when they were sawn. Round the other edges that the skin or a hand will touch to about " + w.Letters.Units.Whole(2) + ": " + wording.And(edged) + ".",
		"Run a stocking over the outside. Where it catches, smooth again."}, w.unoiled(), []string{
		"Oil or varnish every stick, end grain twice, and wipe off what stands on it after a quarter of an hour. Leave it for a day.",
		"Do it once more the next day, and leave it for another."}, w.onDryFrame()),
		tools: tools, dry: dry, check: "a stocking runs over the outside and catches nowhere; no wood is dull",
		wrong: "wipe off what is still sticky after a day, and wait another day",
		care:  "Oily rags heat by themselves and burn: into water or spread flat outdoors at once.", who: "common practice, no source read"}
	out := []step{oil}
	if w.Frame.Design.Skin.Cloth > 0 {
		out = append(out, w.skinStep())
	}
	if w.Needs.Coating.Count > 0 {
		out = append(out, w.coatStep())
	}
	return out
}

// onBareFrame is what kits want bored and let in before the frame is oiled.
func (w *writer) onBareFrame() (out []string) {
	for _, k := range w.Afloat.Fittings {
		if outside.Named(k) {
			out = append(out, w.painterHoles()...)
			continue
		}
		if k.Name == fittings.Seats {
			out = append(out, w.boltsFirst()...)
			continue
		}
	}
	return out
}

// onDryFrame is what kits want done when the frame is oiled and dry, before it is covered:
// webbing that drinks oil goes stiff.
func (w *writer) onDryFrame() (out []string) {
	for _, k := range w.Afloat.Fittings {
		for _, v := range k.Works {
			if v.Bare && !outside.Named(k) && k.Name != fittings.Seats {
				out = append(out, "When the oil is dry, "+v.Name+", before the skin hides the frame"+w.counted(v)+".")
			}
		}
	}
	if n := w.loops(); n > 0 {
		out = append(out, fmt.Sprintf("Count the loops before you go on: %.0f in all, of %s of webbing each.", n, w.Length(1000*inside.LoopLong)))
	}
	return out
}

// looped is the unit that loops of webbing are counted in.
const looped = "loops"

// forLoops is what webbing for loops is cut with.
func (w *writer) forLoops() string {
	if w.loops() == 0 {
		return ""
	}
	return ", shears"
}

// loops counts those that are tied on the bare frame.
func (w *writer) loops() (n float64) {
	for _, k := range w.Afloat.Fittings {
		for _, v := range k.Works {
			if v.Bare && v.Unit == looped {
				n += v.Count
			}
		}
	}
	return n
}

// counted says how many loops a work ties, "" for other work.
func (w *writer) counted(v kit.Work) string {
	if v.Unit != looped {
		return ""
	}
	return fmt.Sprintf(": %.0f loops", v.Count)
}

// placeOf says where the book tells of a kit: in a chapter or a section that is named like it;
// "" for nowhere.
func (w *writer) placeOf(kit string) string {
	chapter := ""
	for _, b := range w.book.Blocks {
		switch h, _ := b.(report.Heading); {
		case h.Level == 1 && h.Words == wording.Capital(kit):
			return "the chapter " + h.Words
		case h.Level == 1:
			chapter = h.Words
		case h.Level == 2 && h.Words == wording.Capital(kit):
			return "the chapter " + chapter + ", under " + h.Words
		}
	}
	return ""
}

// fittingStep is the work on a kit that the boat is not ready without.
func (w *writer) fittingStep(k kit.Kit) step {
	s := step{name: k.Name, kit: &k, work: func(v hours.Work) bool { return v.Kit == k.Name && v.Stage == hours.Fit },
		tools: "pencil, tape" + toWork(k), check: "nothing rocks, chafes the skin or catches a foot",
		wrong: "take it off, ease it and fit it again: nothing is forced into the frame",
		care:  "A slip of a tool cuts the skin: bore and screw with a board between them.", who: "common practice, no source"}
	if outside.Named(k) {
		s.name, s.do, s.dry = "outside the skin", w.outsideSteps(), "bedding compound a day before the water"
		s.tools = "a board to put between, tape, pencil, plane, saw, abrasive, drill with a stop, screwdriver, clamps, pliers for tacks, straps, gun for tubes, shears, brush, rags"
		s.check, s.wrong = "compound comes out along both edges; no screw stands proud", "a gap along a strip: take out the screws there, add compound, and draw them up again"
		return s
	}
	if at := w.placeOf(k.Name); at != "" {
		s.do = []string{"Look at " + at + ": it has the sizes and how each is made."}
	}
	if w.gluesUp(k) {
		s.buys, s.tools = []string{"glue"}, s.tools+", brush for glue"
	}
	if w.gluesUp(k) || slices.ContainsFunc(k.Things, func(t kit.Thing) bool { return t.Key == "glue" }) {
		s.dry = "glue overnight"
	}
	if w.oiled(k) != nil {
		s.buys, s.tools = append(s.buys, "oil"), s.tools+", brush, rags"
	}
	if slices.ContainsFunc(k.Things, func(t kit.Thing) bool { return strings.Contains(t.Name, "foam") }) {
		s.tools += ", straightedge, long knife, shears, brush for glue"
	}
	if k.Name == fittings.Seats && w.hungSeats() {
		s.do, s.dry, s.tools = append(s.do, w.seatActs(k)...), s.dry+", oil a day", s.tools+", straightedge, square, bevel, bits of 6 and 12 mm, keyhole saw, chisel, wrench of 10 mm, brush for glue, shears, hammer, abrasive"
	} else {
		s.do = slices.Concat(s.do, w.shaping(k), w.oiled(k), w.worksOf(k))
	}
	if slices.ContainsFunc(k.Things, func(t kit.Thing) bool { return t.Key == "thread" }) {
		s.tools += ", needle and palm"
	}
	if len(w.Frame.Seats) > 0 && k.Name == fittings.Seats {
		s.do = append(s.do, "Measure the tops of the seats over the floor.")
		s.check = "no top stands higher than the table Seats says; " + s.check
	}
	return s
}

// toWork are the tools for wood that a kit wants by its pieces and by what holds them.
func toWork(k kit.Kit) (tools string) {
	if len(k.Pieces) > 0 {
		tools += ", plane, saw"
	}
	bored := func(t kit.Thing) bool { return strings.HasPrefix(t.Name, "bolts") || strings.Contains(t.Name, "pegs") }
	screwed := func(t kit.Thing) bool { return t.Key == kit.ScrewKey || t.Key == "drain" }
	board := func(p kit.Piece) bool { return p.Form == kit.Board }
	if slices.ContainsFunc(k.Pieces, board) || slices.ContainsFunc(k.Things, bored) || slices.ContainsFunc(k.Things, screwed) {
		tools += ", drill, clamps"
	}
	if slices.ContainsFunc(k.Things, screwed) {
		tools += ", screwdriver"
	}
	return tools
}

// gluesUp reports whether pieces of a kit are made of layers or staves.
func (w *writer) gluesUp(k kit.Kit) bool {
	for _, s := range w.Plan.Sticks {
		if s.Kit == k.Name && s.Member != "" {
			return true
		}
	}
	return false
}

// shaping is what is done to the wood of a kit.
func (w *writer) shaping(k kit.Kit) []string {
	there := map[kit.Form]bool{}
	for _, p := range k.Pieces {
		there[p.Form] = true
	}
	when := func(is bool, words string) string {
		if is {
			return words
		}
		return ""
	}
	return acts(
		when(w.gluesUp(k), "Glue thick and wide pieces from their layers and staves. Plane them when the glue is hard."),
		when(there[kit.Board], "Saw, shape and drill the boards."),
		when(there[kit.Beam], "Plane the square pieces and round their edges."),
		when(there[kit.Spar], "Plane the spars: square, then eight sides, then round."))
}

// firstWater is the last step of the boat.
func (w *writer) firstWater() step {
	return step{name: "first water", work: func(v hours.Work) bool { return v.Stage == hours.Fit && v.Kit == "" }, do: []string{
		"Weigh the boat.",
		"Float it empty. Leave it for an hour and feel along keel and seams for water.",
		"Load it as On the water says, and measure draft and freeboard.",
		"Go in with a life jacket on. Swamp it in shallow water near help, and see that it carries you.",
	}, tools: "bathroom scale, tape, life jackets", check: "freeboard within 20 mm (3/4 in) of the page; no leak after an hour",
		wrong: "it leaks: dry it, mark the place and coat it again. It lies lower than told: weigh what is aboard. It lies down by one end: shift people or gear",
		care:  "Wear a life jacket. Cold water kills fast. Check local rules for registration, lights and life jackets; licensed advice comes first where a boat is used for hire.",
		who:   "33 CFR 175.15 in the United States; local law comes first"}
}

// outfitStep is the work on an outfit, after the boat has been afloat.
func (w *writer) outfitStep(k kit.Kit) step {
	sew := ""
	if k.Sewing > 0 {
		sew = "Lay out, sew and hem the cloth. Patch every corner in three layers before the eyelets go in."
	}
	tools, care := "saw, spokeshave, plane, drill, clamps", "Beams and boards are loaded far harder by a wave or a fall than by hand: look at every joint before each trip. Wear a life jacket."
	switch outfit.Name(k.Name) {
	case outfit.Sail:
		tools += ", palm and needles or a sewing machine"
		care = "Spars and lines are loaded far harder by a gust than by hand: look at every joint before each trip, and never stand under a mast that is being stepped. Wear a life jacket."
	case outfit.Row:
		care = "Oars and rowlocks are loaded far harder by a wave than by hand: look at every joint before each trip. Wear a life jacket."
	}
	s := step{name: "outfit: " + k.Name, kit: &k, work: func(v hours.Work) bool { return v.Kit == k.Name }, do: slices.Concat(
		[]string{"Print the outfit's own patterns.", "Hold the gunwale marks to the boat as it stands before you cut a board that crosses it."},
		w.shaping(k), acts(sew), w.worksOf(k), w.oiled(k), []string{
			"Put leather or cloth wherever a fitting bears on a gunwale. Nothing is screwed into the frame.",
			"Fit everything on land.",
			"Load it there with more than it will feel afloat, a little at a time.",
			"Try it in shallow water near help, swamped as well, before you rely on it."}),
		tools: tools, check: "no clip can slide along its gunwale when it is bolted; every line runs free and lets go at once",
		wrong: "a clip slides: pad it until it holds. A joint moves under load: take it apart and make it anew",
		care:  care, who: "common practice, no source"}
	if w.oiled(k) != nil {
		s.buys, s.tools = []string{"oil"}, s.tools+", brush, rags"
	}
	if w.gluesUp(k) {
		s.buys, s.dry = append(s.buys, "glue"), "glue overnight, a day before it is loaded"
	}
	return s
}

// worksOf are the operations of a kit besides shaping and sewing, each once.
func (w *writer) worksOf(k kit.Kit) (out []string) {
	for _, v := range k.Works {
		if act := wording.Capital(v.Name) + "."; !v.Bare && !slices.Contains(out, act) {
			out = append(out, act)
		}
	}
	return out
}
