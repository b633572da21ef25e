package book

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/wood/timber"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// widths says how far the ribs are bent.
func (w *writer) widths() {
	w.section("How far to bend them")
	back := report.Percent(w.Frame.Design.Bending.Springback)
	if w.Bend.OnForms() {
		w.say("These ribs are bent round forms, one for each kind of rib. A form is tighter than the free rib by the %s of curvature that a rib loses when it comes off. The gauges in the cutter's file show the free rib: hold them to it off the form, before it is fitted.", back)
	} else {
		w.say("These ribs are bent hot, by hand and eye, and set in the boat; they need no form. Bend each a little beyond its marks, for it loses about %s of its curvature when you let go: pull the heads in to the width held hot, one bilge after the other. The gauges in the cutter's file show the rib as it stands in the boat: true the bilges to them. Without a cutter, draw on thin board for them, rib by rib, a line %s inside the rib's own on the body plan, which shows outer faces, from the middle line to the head, with a tick where a thin line crosses it: there a bend begins or ends.", back, w.Fine(float64(w.Frame.Design.Ribs.Thickness)))
	}
	if words := w.each(); words != "" {
		w.say("For each 1 %% of springback more a free rib stands %s wider between its heads.", words)
	}
	w.stock()
	w.firstRib()
}

// each letters how much wider the ribs stand free for each hundredth of springback more,
// from the least to the most; "" where no rib is bent.
func (w *writer) each() string {
	least, most := math.Inf(1), math.Inf(-1)
	for _, b := range w.Bend.Ribs {
		least, most = math.Min(least, b.Point), math.Max(most, b.Point)
	}
	from, to := w.Whole(least), w.Whole(most)
	switch {
	case most < 0.5:
		return ""
	case from == to:
		return to + " " + w.Unit()
	}
	return from + " to " + to + " " + w.Unit()
}

// firstRib says how the springback of a board is measured, and what to do with it.
func (w *writer) firstRib() {
	i, at := w.Bend.TestRib(), w.Bend.Expected()
	b := w.Bend.Ribs[i]
	w.section("The first rib tells the springback")
	set := "leave it in its mortises overnight, then lift it out"
	if w.Bend.OnForms() {
		set = "leave it on its form as long as all others will stay, then take it off"
	}
	w.say("Nobody knows springback to better than %.0f points of a hundred before the first rib of a board is bent, and that is %s of free width at rib %s (from memory). Bend rib %s first: %s, and measure between its heads at their shoulder lines, to the middle of the thickness. The table says what springback that is.",
		100*timber.SpringbackDoubt, w.roughly(100*timber.SpringbackDoubt*b.Point), b.Name, b.Name, set)
	beyond := "hold the others hot at the widths of the last table here, for what you measured"
	if w.Bend.OnForms() {
		beyond = "change the springback in the design and print the rib stick and the forms again before you bend the others: widths and radii change, lengths and marks do not"
	}
	w.say("Expected is %s, for the %s of the design; each %s wider is 1 %% more. Within %s all is well. Beyond it %s. Stock of another board, wetter or drier, wants a first rib of its own.",
		w.roughly(at.Width), report.Percent(at.Back), w.Point(b.Point), report.Either(w.Letters.Units, "10 mm", "3/8 in"), beyond)
	t := report.Titled("Rib "+b.Name+", free width measured, "+w.Unit()).Numbers("Free width", "Springback")
	for i, s := range w.Bend.Test {
		if (i-slices.Index(w.Bend.Test, at))%2 == 0 { // what lies between two rows, the words above tell
			t.Row(w.Rough(s.Width), report.Percent(s.Back))
		}
	}
	if w.add(t); !w.Bend.OnForms() {
		w.add(w.heldHot())
	}
}

// roughly letters mm in running words, in the steps of Rough.
func (w *writer) roughly(mm float64) string { return w.Rough(mm) + " " + w.Unit() }

// bending is the work on the ribs, by the method of the design.
func (w *writer) bending() step {
	s := step{tools: "trough to soak in, steam box and boiler, kettle, thermometer, watch, a post or round former, width stick, gauges, battens, laths and cord to tie them, straightedge, pencil, tape, plane, saw, drill with a stop, brush for glue, hammer, steel plate, gauntlets", dry: "overnight in the boat before the pegs, " + w.dried() + " before the skin",
		check: "bilge battens fair, port and starboard alike, see Judging by eye; tape and straightedge at every rib", do: w.byHand()}
	if w.Bend.OnForms() {
		s = step{tools: "trough to soak in, steam box and boiler, kettle, thermometer, watch, forms, clamps, gauges, laths, pencil, tape, plane, saw, drill with a stop, brush for glue, hammer, steel plate, gauntlets", dry: "a day on the form, then " + w.dried() + " tied across the heads before they are fitted",
			check: "every free rib against its gauge; tape and straightedge at every rib when it is in", do: w.onForms()}
	}
	return s
}

// blanks says how the blanks are readied: a head that goes in hot needs room to swell.
func (w *writer) blanks() []string {
	out, words := []string{"Mark the blanks from the rib stick, or from the rib strips where each rib has its own, with the corrections. Carry the bend and stringer marks round the edges to both faces: battens lie outside."}, ""
	if w.Bend.OnForms() {
		words = "Leave the heads full: they are fitted when the ribs are dry."
	} else {
		words = w.headsToSwell()
	}
	out = append(out, "Draw an arrow on each blank, at its middle and along its width, and its name beside it: the arrow points to the bow, and the face that it stands on lies outside, against the keel. Take the face with the straighter grain for it (common practice). Ease, Twist and Along count from that arrow.", words)
	if n := w.Frame.Design.Ribs.Spare; n > 0 {
		out = append(out, fmt.Sprintf("Keep %s ready, of full length and without marks: some ribs will break, and a spare is marked for the one that did.", wording.Counted(n, "spare blank")))
	}
	return out
}

// trimmed says when a rib is cut to its length.
func (w *writer) trimmed() string {
	tenon, trim := w.Letters.Units.Whole(w.Frame.Ribs[0].Tenon), float64(w.Frame.Design.Ribs.Trim)
	why := "."
	if trim > 0 {
		why = ": with the " + w.Letters.Units.Whole(trim) + " to spare still on, a head does not reach the bottom of its mortise."
		if !w.Bend.OnForms() {
			why = ": with the " + w.Letters.Units.Whole(trim) + " to spare still on, a hot rib does not seat."
		}
	}
	if w.Bend.OnForms() {
		return "When a rib is dry, plane its heads until they slide into their mortises. Cut both ends off at the tenon line, " + tenon + " past the shoulder line, before you fit it" + why
	}
	return "Try each blank's ends in their mortises while it is dry and straight. Then cut both ends off at the tenon line, " + tenon + " past the shoulder line" + why
}

// leaning says what is planed off the tips of heads that lean, once they are cut to length:
// a spare end that is cut off afterward would take the planed tip with it.
func (w *writer) leaning() (out []string) {
	if w.Frame.Gunwale.Blocks != nil && slices.ContainsFunc(w.Frame.Gunwale.Mortises, func(m frame.Mortise) bool { return m.Taper > 0 }) {
		out = append(out, "Taper the heads of ribs that lean, by the table under Gunwales.")
	}
	if slices.ContainsFunc(w.Frame.Gunwale.Mortises, w.eased) {
		out = append(out, "Plane off the tips of heads what the table of the chapter Gunwales has under Ease: the whole tenon leans along its slot.")
	}
	return out
}

// alone says how the first rib is bent before the others are soaked.
func (w *writer) alone(set string) []string {
	soak, wait := w.soaked("it")+", ", "Soak"
	if w.Frame.Design.Ribs.Spare > 0 {
		soak = w.soaked("it and one spare blank") + ", "
	}
	if w.Bend.Soak.Hours == 0 {
		soak, wait = "", "Steam"
	}
	return []string{
		fmt.Sprintf("Bend rib %s first, by itself: %ssteam it for %.0f minutes, %s.", w.first(), soak, w.Bend.Ribs[0].Minutes, set),
		"Measure its free width: between its heads at their shoulder lines, to the middle of the thickness. The chapter Ribs says what springback that is. Then it goes back into its mortises; off by more than " + offWidth(w.Letters.Units) + ", it is steamed again with the others.",
		wait + " no other rib until you have looked at it and know its springback.",
	}
}

func (w *writer) steamed() string {
	if w.Bend.Soak.Hours == 0 {
		return fmt.Sprintf("Steam each of the other blanks for %.0f minutes.", w.Bend.Ribs[0].Minutes)
	}
	return wording.Capital(w.soaked("the other blanks")) + fmt.Sprintf(" and steam each for %.0f minutes.", w.Bend.Ribs[0].Minutes)
}

func (w *writer) first() string { return w.Bend.Ribs[w.Bend.TestRib()].Name }

// byHand is how ribs are bent in place.
func (w *writer) byHand() []string {
	st := w.Frame.Design.Stringers
	return slices.Concat(w.blanks(), []string{w.trimmed()}, w.leaning(), w.steamBox(),
		w.alone("bend it and put it in as the next steps say, leave it overnight, lift it out"), []string{
			w.steamed(),
			w.inTurn(),
			"Begin at midship and go outward in pairs, forward and aft in turn: errors show while there is wood left.",
			"Bend each rib hot: the bottom first, between its bend marks, over your knee; then one bilge after the other, over a post or a round former, until its heads stand at the width held hot, from shoulder line to shoulder line. The width stick shows it, two laths clamped on each other to that width less a rib's thickness, for it goes between the inner faces. The rib is stiff again within half a minute (common practice): begin within five seconds of the box. Hold it there for a few breaths and let go.",
			w.wrung() + "Put one head into its mortise while the rib is hot. Press the middle up until the other goes in, then press the middle down on the keel: the mark at its middle on the middle of the keel's face, the keel's mark of that rib midway between its edges. One turn of cord ties it there until it is lashed.",
			"True both bilges by hand, by sight and with the gauge.",
			fmt.Sprintf("When three ribs are in, tie a batten along each bilge, %s by %s%s", w.Fine(float64(st.Width)), w.Fine(float64(st.Depth)), w.bilgeBatten()),
			"Tie every rib that they reach to both battens as it goes in, while it is still hot. They show lows and highs at once.",
			"Steam a rib again that stands proud or shy, and ease it.",
			"Leave all of it under the battens overnight.",
		}, w.relaxed())
}

// ribEvery are the minutes in which two hands bend a rib, set it and look at it; common practice.
const ribEvery = 5.0

// inTurn says how many ribs are in the box at once.
func (w *writer) inTurn() string {
	minutes := w.Bend.Ribs[0].Minutes
	return fmt.Sprintf("Put a rib into the box every %.0f minutes, its time written on its end: so %s steam at once, each has its %.0f minutes when you reach for it, and none waits. All of them take %s of steam: when the boiler is half empty, fill it up between two ribs with boiling water from a kettle, never with cold, and wait for the thermometer. One person can do it; with a second one, who minds box and boiler, it goes quietly (common practice). The hours of the chapter Hours count the hands alone.",
		ribEvery, wording.Counted(int(math.Ceil(minutes/ribEvery)), "rib"), minutes, atLength(w.steaming()))
}

// steaming is how long the box is fed while the ribs are bent in turn, or one where each has its
// form to itself, h.
func (w *writer) steaming() float64 {
	minutes := w.Bend.Ribs[0].Minutes
	if w.Bend.OnForms() {
		return minutes / 60
	}
	return (minutes + ribEvery*float64(len(w.Frame.Ribs)-1)) / 60
}

// boiledOff is the water that a boiler of so many watts turns to steam in some hours, l, by the
// heat that water takes to boil away, 2.257 MJ/kg at 100 degrees (steam tables).
func boiledOff(watts, hours float64) float64 { return watts * 3600 * hours / 2.257e6 }

// leastTwist is the twist of a head that needs no hand, radians; our own choice.
const leastTwist = 2 * math.Pi / 180

// wrung says which heads are wrung while a rib is hot, "" where none is.
func (w *writer) wrung() string {
	most := 0.0
	for _, m := range w.Frame.Gunwale.Mortises {
		most = math.Max(most, math.Abs(m.Twist))
	}
	if most < leastTwist {
		return ""
	}
	return fmt.Sprintf("At once wring the last hand's breadth of each head by its Twist in the table of the chapter Gunwales, up to %.0f degrees near the ends, port and starboard alike. ", most*180/math.Pi)
}

// bilgeBatten says at which marks the batten along the bilge lies, how far it is tied, and
// which stick serves. It lies where Judging by eye looks along it.
func (w *writer) bilgeBatten() string {
	n := w.Eye.Sighted
	if n == 0 {
		return "."
	}
	words := fmt.Sprintf(", its middle on the ribs' marks of S%d", n)
	if dry := w.stringersThat(func(s bend.Stringer) bool { return len(s.Hot) == 0 }); len(dry) > 0 {
		words += "; the sticks of " + stringers(dry[len(dry)-1:]) + " serve"
	}
	if aft, fore := w.dryRun(n); aft != "" {
		words += fmt.Sprintf(". Tie it from rib %s to rib %s, one turn of cord at each, so that it may ride on its edge: a stringer that is lashed is wrung flat there, and steamed for that, but this one need not lie flat. Let its ends stand free: bent farther out, it may break dry. Tie a lath about half as thick on along the ribs past them, which bends so far (common practice), and true these by their gauges and by eye", aft, fore)
	}
	return words + ". It is a help and no part of the boat."
}

// dryRun names the ribs between which a stringer lies dry round midship, "" where it does
// at all of them or at none.
func (w *writer) dryRun(number int) (aft, fore string) {
	from, to := math.Inf(-1), math.Inf(1)
	for _, h := range w.Bend.Stringers[number-1].Hot {
		switch bent := h.Bent; {
		case bent == frame.Zone{}: // it is only wrung, and a batten that is tied rides on its edge
		case bent.To <= 0:
			from = math.Max(from, bent.To)
		case bent.From >= 0:
			to = math.Min(to, bent.From)
		default:
			return "", ""
		}
	}
	if math.IsInf(from, 0) && math.IsInf(to, 0) {
		return "", ""
	}
	for _, r := range w.Frame.Ribs {
		if r.Station >= from-0.5 && r.Station <= to+0.5 {
			if fore = r.Name; aft == "" {
				aft = fore
			}
		}
	}
	if aft == w.Frame.Ribs[0].Name && fore == w.Frame.Ribs[len(w.Frame.Ribs)-1].Name {
		return "", "" // only past the last ribs it is bent hot
	}
	return aft, fore
}

// headsToSwell says how much smaller than its mortise a head is that goes in hot: the design's
// fit, and what the wood swells until then.
func (w *writer) headsToSwell() string {
	d := w.Frame.Design.Ribs
	words := fmt.Sprintf("Try the heads dry. A mortise is %s longer than the rib is wide, and %s wider than the rib is thick", w.Fine(float64(d.FitWidth)), w.Fine(float64(d.FitThickness)))
	if w.Frame.Gunwale.Blocks != nil {
		words = fmt.Sprintf("Try the heads dry. A gap is %s longer than the rib is wide, and %s wider than the rib is thick", w.Fine(float64(d.FitWidth)), w.Fine(float64(d.FitThickness)))
	}
	swell := w.Bend.Swell
	if swell == 0 {
		return words + "; ease them until they slide in by hand."
	}
	words += fmt.Sprintf("; soaked and steamed, the rib swells by up to %s in width and %s in thickness.", w.Fine(swell*float64(d.Width)), w.Fine(swell*float64(d.Thickness)))
	var off []string
	for _, side := range []struct {
		name      string
		size, fit float64
	}{{"width", float64(d.Width), float64(d.FitWidth)}, {"thickness", float64(d.Thickness), float64(d.FitThickness)}} {
		if more := math.Ceil(10*(swell*side.size-side.fit)) / 10; more > 0 {
			off = append(off, w.Fine(more)+" off their "+side.name)
		}
	}
	if len(off) == 0 {
		return words + " So they go in hot as they are: only ease their edges."
	}
	return words + " So plane " + wording.And(off) + ", as far as they go in, and ease their edges."
}

// steamBox says how the box is rigged before the first rib is soaked.
func (w *writer) steamBox() []string {
	long := 0.0
	for _, r := range w.Frame.Ribs {
		long = math.Max(long, r.Blank)
	}
	return []string{"Rig the steam box outdoors: longer inside than the longest blank, " + w.Whole(long) + " " + w.Unit() + ", sloping, with a drain at its low end and a vent at the other. Count the minutes of steam from when a thermometer in the vent stands near the boiling point again."}
}

// relaxed is how ribs that were bent in place come to their free widths.
func (w *writer) relaxed() []string {
	if w.Bend.Boat.Why != nil {
		return []string{"Sight along the bilge battens once more, then peg all heads" + w.notYet() + w.headsGlued(), battensOff}
	}
	return []string{
		"Then untie the battens, and lift every third rib out, but for the narrow ones at the ends: untie it from the keel and press its middle up until one head comes free.",
		"Measure its free width. Relax it by hand where it is narrower than in the table; steam it again and bend it closer where it is wider.",
		"Where it is off by more than " + offWidth(w.Letters.Units) + ", do the same with its neighbors.",
		"Put them back, tie them and the battens on again and sight along these: it is the last look before the pegs.",
		"Peg all heads, as the chapter Joints shows" + w.notYet() + w.headsGlued(),
		battensOff,
	}
}

// battensOff says how long the bilge battens stay.
const battensOff = "Take the bilge battens off when the pegs are in: the pegs hold the ribs until keel and stringers are lashed."

// offWidth is by how much a width may be off that is bent by hand; common practice.
func offWidth(u measure.System) string { return report.Either(u, "10 mm", "3/8 in") }

// onForms is how ribs are bent round forms.
func (w *writer) onForms() []string {
	strap := ""
	if slices.ContainsFunc(w.Bend.Ribs, func(r bend.Rib) bool {
		return slices.ContainsFunc(r.Arcs, func(a bend.Arc) bool { return a.Band == timber.Strap })
	}) {
		strap = ", the strap outside and its stops tight against the ends"
	}
	untie := "Untie each rib and hold it against its gauge."
	if w.Bend.Boat.Why == nil {
		untie = "Untie each rib, hold it against its gauge and relax it by hand to its width in the table."
	}
	return slices.Concat(w.blanks(), w.steamBox(), []string{
		fmt.Sprintf("Saw the form for rib %s from its pattern, fair its edge and cut the holes.", w.first()),
	}, w.alone("clamp it to its form as the next steps say, take it off when it is dry"), []string{
		fmt.Sprintf("Saw the other forms, %d in all.", len(w.Bend.Forms)), w.steamed(),
		"Clamp the middle of the hot rib to the middle of its form" + strap + "; pull both sides round within seconds and clamp them from the middle outward. " + strings.TrimSuffix(w.wrung(), " "),
		"Leave it on the form for a day. Before you take it off for the next, tie a lath across the heads to hold them at the width on the form, and let it dry so for some days.",
		untie,
		w.trimmed(),
	}, w.leaning(), []string{
		"Fit the ribs from midship outward in pairs, forward and aft in turn; their middles on the keel. Sight the bilges from end and side, see Judging by eye, then peg the heads" + w.notYet() + w.headsGlued(),
	})
}

// forms lists what is sawn for bending the ribs; no table where they are bent in place.
func (w *writer) forms() {
	if !w.Bend.OnForms() {
		return
	}
	t := report.Titled("Forms for bending ribs, "+w.Unit()).Words("For ribs").Numbers("Long", "High", "Layers")
	for _, f := range w.Bend.Forms {
		b := f.Outline.Bounds()
		t.Row(wording.List(f.Names, func(s string) string { return s }), w.Whole(b.W()), w.Whole(b.H()), fmt.Sprint(f.Layers))
	}
	t.Note = fmt.Sprintf("From %s plywood, %s of 1220 x 2440 mm (4 x 8 ft); full-size patterns and the cutter's file have them. Ribs that hardly differ share a form.", w.Fine(bend.FormStock), wording.Counted(w.Needs.Forms.Sheets, "sheet"))
	w.add(t)
}

// traced ends the sentence of what is traced from the patterns.
func (w *writer) traced() string {
	if w.Bend.OnForms() {
		return ", and the forms on their plywood."
	}
	return "."
}

// headsGlued says which rib heads are glued besides, "" for none.
func (w *writer) headsGlued() string {
	h := &w.Needs.Joints.Head
	switch {
	case h.Glued == 0:
		return ""
	case h.All():
		return " Glue each head into its mortise as you peg it." + w.dampGlue()
	}
	return fmt.Sprintf(" The heads of the last %s at each end are glued before they are pegged: untie the rib from the keel and the battens, press its middle up until one head comes out of its mortise, spread glue on it, put it back and peg it; then do the other head so, and tie the rib again. One that is too stiff for that is steamed at its middle for some minutes more, and glued when it is dry.", wording.Counted(h.Glued, "rib")) + w.dampGlue()
}

// dampGlue says when heads that were steamed are dry enough for glue, "" where they dry for
// days anyhow.
func (w *writer) dampGlue() string {
	if w.Bend.OnForms() {
		return ""
	}
	return " Few glues hold on damp wood: wait with these until their heads feel as warm to the cheek as a blank that was never soaked, two nights after the steam or more (common practice), or take a glue whose maker allows damp wood."
}
