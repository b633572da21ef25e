package book

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/design"
	"ribwright/geometry/shop/materials"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// joints tells how every joint of the frame is made: a table to shop and to bore by,
// then each joint with its drawing and its steps.
func (w *writer) joints() {
	j := w.Bend.Joints
	w.chapter("Joints")
	w.say("Bore a scrap of the same wood first. Where a drawing and this table speak of an edge, measure from that edge on the wood, not from a line. Holes in the stems and in the breasthooks are on their full-size patterns too.")
	w.add(w.jointTable(), w.cords())
	w.say("Whether each joint bears its load stands under What the wood is asked for. Those strengths are for clear wood, by rules for buildings.")
	w.foot()
	w.stringerEnds()
	w.gunwaleEnds()
	w.breasthooks()
	w.ribHeads()
	w.crossings()
	if len(j.Cross) > 0 {
		w.bolted()
	}
}

// jointTable has a row for each kind of joint.
func (w *writer) jointTable() report.Table {
	j := w.Bend.Joints
	t := report.Titled("Joints of the frame").Words("Joint").Numbers("How many").Words("Fastening and size", "Holes", "Glue or cord")
	foot, land, end, hook, head := &j.Feet[1], &j.Landings[1], &j.Ends[1], &j.Hooks[1], &j.Head
	row := func(name string, count int, fastening, holes, glue string) {
		t.Row(name, fmt.Sprint(count), fastening, holes, glue)
	}
	row("Keel to stem", 2, fmt.Sprintf("%s, %s", wording.Counted(foot.Fastener.Each, "screw"), w.Letters.Units.Screw(foot.Fastener.Diameter, foot.Fastener.Length)),
		w.places(foot.FromEnd)+" from the keel's end, on its middle line", w.lashed(foot.Joint))
	row("Stringers to stem", j.Landings[0].Count+land.Count, "lashed in pairs", fmt.Sprintf("%s through the stem, above and below each stringer", w.drill(land.Drill)), w.lashed(land.Joint))
	row("Gunwales to stem", 2, "lashed together", fmt.Sprintf("%s: in each gunwale %s from its end and %s up; in the stem %s under the shelf", w.drill(end.Drill), w.whole(end.FromEnd), w.whole(end.Up), w.whole(end.Under)), w.lashed(end.Joint))
	row("Breasthooks to gunwales", 2, fmt.Sprintf("%d pegs each, %s", hook.Fastener.Each, w.Drill(hook.Fastener.Diameter)), fmt.Sprintf("%s from the gunwales' ends along their inner faces, less outside, %s under their upper edges, square to their faces, %s deep", w.places(hook.FromEnd), w.Fine(hook.Down), w.whole(hook.Fastener.Length)), "glue both edges")
	row("Rib to gunwale", head.Count, "a peg, "+w.Drill(head.Fastener.Diameter), fmt.Sprintf("in the middle of the rib, %s up from the underside, %s deep", w.Fine(head.Up), w.whole(head.Long)), w.gluedHeads())
	row("Rib to keel", j.Keel.Count, "lashed in an X", "none", w.lashed(j.Keel.Joint))
	row("Stringer to rib", j.Stringers.Count, "lashed in an X", "none", w.lashed(j.Stringers.Joint))
	for _, c := range j.Cross {
		row(c.Piece, 1, fmt.Sprintf("%d bolts, %s", c.Fastener.Each, report.Either(w.Letters.Units, w.whole(c.Fastener.Diameter)+" by "+w.whole(c.Fastener.Length), bolt(c.Fastener.Diameter, c.Fastener.Length))), fmt.Sprintf("%s, %s a side", w.drill(c.Of.Hole), wording.Counted(c.PerEnd, "hole")), "none: it comes out")
	}
	t.Note = w.unlike()
	return t
}

// unlike says that the stern's distances differ, where they do.
func (w *writer) unlike() string {
	if w.Frame.Design.EndsAlike() {
		return "Both ends are alike."
	}
	return "Figures are the bow's; those of the stern are on its pattern and in its drawings."
}

// whole letters mm to the millimeter or the sixteenth, with the unit.
func (w *writer) whole(mm float64) string { return w.Whole(mm) + " " + w.Unit() }

func (w *writer) drill(mm float64) string { return "drill " + w.Drill(mm) }

// places letters a few distances, as "36 and 71 mm".
func (w *writer) places(all []float64) string {
	words := make([]string, len(all))
	for i, mm := range all {
		words[i] = w.Whole(mm)
	}
	return wording.And(words) + " " + w.Unit()
}

func (w *writer) lashed(j joint.Joint) string {
	return fmt.Sprintf("%d turns, %s of cord", j.Turns, w.Length(j.Cut()))
}

func (w *writer) gluedHeads() string {
	if w.Bend.Joints.Head.All() {
		return "glue every head"
	}
	if n := w.Bend.Joints.Head.Glued; n > 0 {
		return fmt.Sprintf("glue the heads of the last %d ribs at either end", n)
	}
	return "no glue"
}

// cords says what cord, how much, and how it is handled.
func (w *writer) cords() report.Paragraph {
	j := w.Bend.Joints
	u, cord, besides := j.Usual, j.Cord(), ""
	if i := slices.IndexFunc(w.Needs.Items, func(i materials.Item) bool { return i.Key == "cord" && i.Own+i.Outfits > 0 }); i >= 0 {
		besides = fmt.Sprintf(" The shopping list has %s: what is fitted later takes the rest.", w.long(w.Needs.Items[i].Amount))
	}
	return report.Say("Cord: %s, waxed polyester, which does not slacken wet; it breaks at about %.0f N (from memory; take the maker's figure). A lashing is trusted with a fifth of what would pull it apart. The %d lashings of the table take %s; buy %s, a tenth more.%s Edges under cord are round since the step Sawing: on a sharp edge the wood cuts in before the cord breaks.",
		w.Drill(u.Cord.Diameter), 10*math.Round(u.Strength(u.Cord)/10), j.Keel.Count+j.Stringers.Count+j.Lashings(), report.Either(w.Letters.Units, fmt.Sprintf("%.1f m", cord/1000), w.long(cord/1000)), report.Either(w.Letters.Units, fmt.Sprintf("%.0f m (%.0f ft)", materials.CordToBuy(j), math.Ceil(materials.CordToBuy(j)/foot)), w.long(materials.CordToBuy(j))), besides)
}

// made adds a joint's section: drawings first, then the steps.
func (w *writer) made(name string, steps []string, figures ...report.Figure) {
	w.section(name)
	for _, f := range figures {
		w.add(f)
	}
	w.add(report.List{First: 1, Items: steps})
}

// sunk is how deep the heads of the foot's screws lie, mm.
const sunk = 1.0

func (w *writer) foot() {
	j := w.Bend.Joints
	f := j.Feet[1]
	long := w.Letters.Units.ScrewLong(f.Fastener.Length)
	steps := []string{
		"Plane the foot to the keel until no light shows between them, and cut the keel's end square against the step." + w.tapers(f.End),
		fmt.Sprintf("Clamp keel and stem together in one plane. Bore from below, square to the keel: %s through the keel, %s on into the foot, a drill marked with tape %s from its tip. Countersink until the heads lie %s deep."+w.edgeClamp(),
			w.Drill(f.Shank), w.Drill(f.Pilot), w.whole(long+sunk), w.Fine(sunk)),
		fmt.Sprintf("Drive the screws (%s) by hand, with wax on the thread; they reach %s or more into the foot. Fill over the heads with glue that fine sawdust makes stiff, and plane it flush when it is hard.", report.Either(w.Letters.Units, f.Fastener.Name+", ", "stainless wood screw, ")+w.Letters.Units.Screw(f.Fastener.Diameter, f.Fastener.Length), w.whole(f.Deep-f.Fastener.Length+long)),
		fmt.Sprintf("Lash round keel and foot between the screws, %s. Cut a shallow groove for the cord across the keel's underside, so that it cannot chafe.", w.lashed(f.Joint)),
		"Look: push the foot along and across with your hand; nothing may move.",
	}
	w.made("Keel to stem", steps, w.footFigure(f))
	if o := j.Feet[0]; o.Fastener != f.Fastener || w.places(o.FromEnd) != w.places(f.FromEnd) {
		w.add(w.footFigure(o))
	}
}

// edgeClamp keeps the screws of the feet from parting what a stem is glued of: plies of
// plywood stand upright over the keel.
func (w *writer) edgeClamp() string {
	if w.Frame.Design.MadeStems() != design.StemsPlywood {
		return ""
	}
	return " A clamp across the foot stays on while you bore and drive: the screws go in between its layers."
}

func (w *writer) stringerEnds() {
	j := w.Bend.Joints
	l := j.Landings[1]
	var taper []string
	for _, e := range l.Ends {
		taper = append(taper, fmt.Sprintf("S%d %s", e.Number, w.Whole(e.Taper)))
	}
	steps := []string{
		fmt.Sprintf("Bore the holes through the stem, %s, from its pattern: one above and one below each stringer. Where two stringers end close together they share a hole.", w.Drill(l.Drill)),
		fmt.Sprintf("Plane the inner face of each stringer to a feather, so that it lies flat on the stem's side, over the last (bow) %s %s. The outer faces then run fair into the stem.", strings.Join(taper, ", "), w.Unit()),
		fmt.Sprintf("Lay port and starboard on the stem, their ends on the crosses. Lash both at once: through the hole below, over the port stringer, through the hole above, over the starboard one, %s a pair. Knot inside, under a stringer.", w.lashed(l.Joint)),
		"Look: both stringers lie on the stem without a gap that takes a fingernail, and stand level with each other.",
	}
	w.made("Stringers to stem", steps, w.landingFigure(1), w.taperFigure(l))
	w.add(w.holes(1))
	if !w.Frame.Design.EndsAlike() {
		w.add(w.landingFigure(0), w.holes(0))
	}
}

// holes lists the stringers' holes of a stem from its edges.
func (w *writer) holes(i int) report.Table {
	l := w.Bend.Joints.Landings[i]
	t := report.Titled("Stringers' holes, "+l.End+" stem, "+w.Unit()).Names("Hole").Numbers("Down the outer edge from the head", "In from the outer edge, square to it")
	for k, h := range l.Holes {
		name := fmt.Sprintf("S%d, above", h.Stringer)
		switch {
		case h.Shared:
			name = fmt.Sprintf("S%d and S%d", h.Stringer, h.Stringer+1)
		case k+1 < len(l.Holes) && l.Holes[k+1].Stringer == h.Stringer:
			name = fmt.Sprintf("S%d, below", h.Stringer)
		}
		t.Row(name, w.Cell(h.FromHead), w.Cell(h.FromOut))
	}
	return t
}

func (w *writer) gunwaleEnds() {
	j := w.Bend.Joints
	e := j.Ends[1]
	steps := []string{
		fmt.Sprintf("Cut the gunwales' ends as the mortise strip says, %s degrees off square across the underside, the inboard edge the longer one: in the boat the end then stands square across and plumb, flat against the horn. Bore each across, along its sloping cut, %s, %s from its end and %s up from the underside; bore the stem %s under the shelf and %s back from the horn, along the shelf.",
			report.Angle(w.Frame.Gunwale.ForeCut), w.Drill(e.Drill), w.whole(e.FromEnd), w.whole(e.Up), w.whole(e.Under), w.whole(e.FromHorn)),
		fmt.Sprintf("Set both ends on the shelf, half of each on the stem."+w.underEnds()+" Lash: through both gunwales, down outside, through the stem, up outside on the other side; %s. Haul each turn taut with a stick in the cord.", w.lashed(e.Joint)),
		"Leave this lashing on: it stays under the breasthook, which has room over it.",
		"Look: the ends touch the horn, and both stand at one height over the keel.",
	}
	w.made("Gunwales to stem", steps, w.endFigure(e))
	if !w.Frame.Design.EndsAlike() {
		w.add(w.endFigure(j.Ends[0]))
	}
}

// underEnds tells how ends that lean lie on a shelf that does not, "" where that is not seen.
func (w *writer) underEnds() string {
	gap := math.Max(w.Frame.Bow.Thickness, w.Frame.Stern.Thickness) / 2 * math.Tan(float64(w.Frame.Design.Gunwale.Tilt))
	if gap < 0.5 {
		return ""
	}
	return fmt.Sprintf(" They lean, so each rests on its edge of the shelf, and in the middle some %s stay open under them: leave the shelf level, and fill the gap with glue that fine sawdust makes stiff when the breasthook is glued.", w.Fine(gap))
}

func (w *writer) breasthooks() {
	j := w.Bend.Joints
	h := j.Hooks[1]
	f := h.Fastener
	steps := []string{
		w.hookLean(),
		fmt.Sprintf("Glue both edges and press it in; a clamp across the gunwales, a scrap under each jaw. When the glue is hard, bore from outside through the gunwale into the plate's edge: %s wide, at the places that the figure has on the outer face, %s under the gunwale's upper edge. Hold the drill square to the gunwale's face both ways, a try square beside it: the gunwale leans, so that the hole climbs a little in the plate and keeps clear of both its faces. Stop at its depth, measured from outside: the holes of the two sides would meet, or the painter's hole be met.",
			w.Drill(f.Diameter), w.Fine(h.Down)),
		w.pegs(f) + " Drive them with a little glue and cut them flush.",
		"Look: no light between plate and gunwales, and a straightedge over both gunwales touches the plate.",
	}
	w.made("Breasthook to gunwales", steps, w.hookFigure(1))
	if !w.Frame.Design.EndsAlike() {
		w.add(w.hookFigure(0))
	}
}

// hookLean says how a breasthook's sides lean, and why not as the gunwales do.
func (w *writer) hookLean() string {
	lean := [2]float64{w.Frame.SternHook.Bevel, w.Frame.BowHook.Bevel}
	said := report.Angle(lean[1]) + " degrees"
	if !w.Frame.Design.EndsAlike() {
		said += " at the bow and " + report.Angle(lean[0]) + " degrees at the stern"
	}
	return fmt.Sprintf("Plane the plate's edges to their lean, %s off square, until it drops between the gunwales, flush with their tops, its nose against the horn. That is not the gunwales' own lean of %s degrees, which is measured off upright: the plate is not level but rises to the end.",
		said, report.Angle(w.Frame.Gunwale.Tilt))
}

// outerFace takes places along a gunwale's inner face, from its after (0) or fore (1) end, to the
// outer one, which the slant of the end leaves shorter.
func (w *writer) outerFace(end int, inner []float64) []float64 {
	g := &w.Frame.Gunwale
	out := make([]float64, len(inner))
	for i, mm := range inner {
		out[i] = mm - g.Width*math.Tan([2]float64{g.AftCut, g.ForeCut}[end])
	}
	return out
}

// narrowToBore says at which ribs a usual drill hardly goes between the gunwales, "" at none.
func (w *writer) narrowToBore() string {
	const behind = 50.0 // mm, to start a bit and hold the drill; our own choice
	var narrow []frame.Rib
	for _, r := range w.Frame.Ribs {
		if w.between(r) < drillLong+behind {
			narrow = append(narrow, r)
		}
	}
	if len(narrow) == 0 {
		return ""
	}
	least := slices.MinFunc(narrow, func(a, b frame.Rib) int { return cmp.Compare(w.between(a), w.between(b)) })
	return fmt.Sprintf(" Between the gunwales at %s only %s are left: take a short drill with a short bit there, or one with an angle head.",
		wording.List(narrow, func(r frame.Rib) string { return r.Name }), w.whole(w.between(least)))
}

func (w *writer) ribHeads() {
	h := w.Bend.Joints.Head
	glue := "No glue: a broken rib can be replaced."
	switch {
	case h.All():
		glue = "Glue every head as well: pegs so thin would not bear the loaded boat when it is lifted by its gunwales."
	case h.Glued > 0:
		glue = fmt.Sprintf("The heads of the last %d ribs at either end are glued as well, for they hold the edge-set; all others have no glue, so that a broken rib can be replaced.", h.Glued)
	}
	steps := []string{
		"The whole end of the rib goes into its mortise; nothing is sawn at the shoulder line, which only shows how far.",
		w.headsLean(),
		fmt.Sprintf("When the rib is right, bore from inboard, square to the gunwale's inner face, in the middle of the rib and %s up from the underside: %s wide, %s deep with a stop on the drill. That goes through inner wall and tenon at every rib and stops %s short of the gunwale's outer face. The thinnest inner wall at that height, at rib %s, is %s; deeper in the slot it is less: see the table of mortises.",
			w.Fine(h.Up), w.Drill(h.Fastener.Diameter), w.whole(h.Long), w.whole(h.Outer), h.WallRib, w.Fine(math.Floor(10*h.Wall)/10)) + w.narrowToBore(),
		w.pegs(h.Fastener) + " Tap one in dry until it stops and cut it flush.",
		glue,
		"Look: pull at the rib; it may not slide. A wall that cracks is glued, clamped, and pegged anew beside the crack.",
	}
	w.made("Rib to gunwale", steps, w.headFigure(h))
}

// pegs says where the pegs of a joint come from, and how long they are before they are driven:
// so much longer than their hole that they can be held.
func (w *writer) pegs(f joint.Fastener) string {
	const hold = 15.0 // mm
	return fmt.Sprintf("Take pegs of %s from the shopping list, or buy none and split your own from straight offcuts of the ribs, the grain along them, and draw them through a %s hole in a steel plate. Either way each is %s wide and %s long before it is driven.",
		strings.TrimPrefix(f.Name, "peg of "), w.Drill(f.Diameter), w.Drill(f.Diameter), w.whole(5*math.Ceil((f.Length+hold)/5)))
}

// headsLean says how heads that lean along their slots and twist to them are made to fit.
func (w *writer) headsLean() string {
	worst := frame.Mortise{}
	for _, m := range w.Frame.Gunwale.Mortises {
		if math.Abs(m.Along) > math.Abs(worst.Along) {
			worst = m
		}
	}
	words := "Toward the ends the gunwale runs slantwise to its ribs: a head twists to lie along its slot, and leans along it. The table of mortises has both for every rib, under Twist and Along. While a rib is hot, wring its last hand's breadth by its twist, port and starboard alike."
	if !w.eased(worst) {
		return words + " No head leans along so much that it has to be eased."
	}
	return words + fmt.Sprintf(" Where a figure stands under Ease, plane so much off one edge of the head's tip, running out to nothing at the shoulder line: the forward edge where the head leans forward (+), the after edge where it leans aft (-). Rib %s, the worst, leans %s degrees and wants %s off. Plane the heads and leave the slots as they are.", worst.Rib, report.Angle(math.Abs(worst.Along)), w.Fine(worst.Ease))
}

func (w *writer) crossings() {
	j := w.Bend.Joints
	s := j.Stringers
	steps := []string{
		fmt.Sprintf("Start: tie the cord round the rib with a clove hitch beside the crossing, a tail of %s. For the keel use %s of cord, for a stringer %s.", w.Handy(joint.Tails/2), w.Length(j.Keel.Cut()), w.Length(s.Cut())) + " Tie one for trial before you cut the cord for all.",
		fmt.Sprintf("One diagonal: up over the batten to the far corner, slantwise behind the rib back to the corner you came from, and so again: %d turns side by side, each hauled taut.", joint.Turns/2),
		fmt.Sprintf("The other: level behind the rib to the corner beside, on the hitch's side of the batten, then %d turns over that diagonal in the same way.", joint.Turns/2),
		fmt.Sprintf("Frap and finish: %s round all strands where they go from the batten to the rib, over the rib's face above and below and under the batten on both sides, hauled hard, which draws the X tight. Tie it to the first tail with a reef knot and one more turn, on the inboard side; no knot outside, where the skin would chafe on it.", wording.Counted(joint.Fraps, "turn")),
		"Look: twist the batten on the rib with your fingers; it may not turn. Wax a dry cord again.",
	}
	w.made("Ribs to keel and stringers", steps, w.lashingFigure(s))
}

func (w *writer) bolted() {
	j := w.Bend.Joints
	c, side := j.Cross[0], "inboard"
	if c.Lean < 0 {
		side = "outboard"
	}
	steps := []string{
		"Ease the cross piece's upper face to the gunwales' lean, and cut its ends back below, as on its pattern.",
		fmt.Sprintf("The gunwale strip has the bolts' places, in the middle of the gunwale's underside and clear of all mortises. They are bored there on the bench, in the step Gunwales, %s, square to the underside, so that in the boat the hole leans with the gunwale, by %s degrees.", w.Drill(c.Of.Hole), report.Angle(math.Abs(c.Lean))),
		fmt.Sprintf("Clamp the piece in place under the gunwales, a scrap under it, and bore on down through it from above, the gunwale's hole as the guide: bore nothing from its pattern, whose holes only show about where they come. Below they come out some %s farther %s, for the drill leans.", w.whole(math.Abs(c.Drift)), side),
		fmt.Sprintf("Pare the lower face square to each bolt under its washer, %s deep on the %s side, running out to nothing on the other, so that the nut does not bend the bolt.", w.whole(c.Seat), side),
		fmt.Sprintf("On the bench too each head with its washer (%s across) is sunk flush into the gunwale's top: %s deep, with a Forstner drill of that width or the next wider one, which its rim guides over the hole. That leaves %s of wood on either side: go slowly, and glue back what breaks out.", w.whole(c.Washer), w.whole(c.Sunk), w.whole(c.Gunwale-c.Washer/2)),
		fmt.Sprintf("Bolts %s from above; washers and wing nuts below. Tighten with fingers only: the wood is dented before the bolt is tight.", report.Either(w.Letters.Units, w.whole(j.Usual.Bolt), fmt.Sprintf("M%.0f", j.Usual.Bolt))),
		"Oil the holes before the bolts go in.",
		"Look: beam at the cross piece as in its table, and every nut runs off by hand.",
	}
	var all []report.Figure
	for i := range j.Cross {
		if i == 0 || j.Cross[i].PerEnd != j.Cross[0].PerEnd {
			all = append(all, w.crossFigure(i))
		}
	}
	t := report.Titled("Bolts of the cross pieces, "+w.Unit()).Words("Cross piece").Numbers("Bolts", "From its end", "Apart", "From its edge", "To the gunwale's faces", "To the nearest mortise")
	for _, c := range j.Cross {
		t.Row(c.Piece, fmt.Sprint(c.Fastener.Each), w.Cell(c.In), w.Cell(c.Apart), w.Cell(c.Side), w.Cell(c.Gunwale), w.Cell(c.Mortise))
	}
	w.made("Cross pieces to gunwales", steps, all...)
	w.add(t)
}
