package book

import (
	"fmt"
	"math"
	"slices"

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
		w.say("These ribs are bent hot, by hand and eye, and set in the boat; they need no form. Bend each a little beyond its marks, for it loses about %s of its curvature when you let go: pull the heads in to the width held hot, one bilge after the other. The gauges in the cutter's file show the rib as it stands in the boat: true the bilges to them.", back)
	}
	if words := w.each(); words != "" {
		w.say("For each 1 %% of springback more a free rib stands %s wider between its heads.", words)
	}
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
	w.say("Nobody knows springback to better than %.0f points of a hundred before the first rib of a board is bent, and that is %s of free width at rib %s (from memory). Bend rib %s first: %s, and measure between its heads, to the middle of the thickness. The table says what springback that is.",
		100*timber.SpringbackDoubt, w.roughly(100*timber.SpringbackDoubt*b.Point), b.Name, b.Name, set)
	w.say("Expected is %s, for the %s of the design; each %s wider is 1 %% more. Within %s all is well. Beyond it write the springback into the design (bending.springback, 0.10 for 10 %%) and print %s again before you bend the others: widths and radii change, lengths and marks do not. Stock of another board, wetter or drier, wants a first rib of its own.",
		w.roughly(at.Width), report.Percent(at.Back), w.Whole(b.Point)+" "+w.Unit(), report.Either(w.Letters.Units, "10 mm", "3/8 in"), w.printed())
	t := report.Titled("Rib "+b.Name+", free width measured, "+w.Unit()).Numbers("Free width", "Springback")
	for i, s := range w.Bend.Test {
		if (i-slices.Index(w.Bend.Test, at))%2 == 0 { // what lies between two rows, the words above tell
			t.Row(w.Rough(s.Width), report.Percent(s.Back))
		}
	}
	w.add(t)
}

func (w *writer) printed() string {
	if w.Bend.OnForms() {
		return "strips and forms"
	}
	return "the strips"
}

// roughly letters mm in running words, in the steps of Rough.
func (w *writer) roughly(mm float64) string { return w.Rough(mm) + " " + w.Unit() }

// setUp is the work from trestles to a frame that ribs can be fitted to. Depths are
// measured when the keel is there and the edge-set sprung.
func (w *writer) setUp() []string {
	keel := "Hang the keel in cords from the gunwales so that it stands at the depths of the table under Depths and corrections."
	if w.Bend.EdgeSet == nil {
		keel = "Mark the keel from the story stick while it is straight and clamp it to the feet of both stems. Hang it in cords from the gunwales so that it stands at the depths of the table under Depths and corrections. A string at the same depths serves until the keel is planed."
	}
	return slices.Concat(w.joined(), []string{
		"Stand the gunwales on two trestles that are level with each other and across.",
		"Spread the gunwales, their ends tied to the stems. " + w.heldApart() + " Peg the breasthooks.",
		"Set the lean with a bevel; fit the cross pieces.",
		"Sight along both gunwales and measure both diagonals, end to spreader.",
	}, w.sprung(), []string{
		keel,
		"Measure beam and depth at every rib's place, between the gunwales and from the straightedge to the keel. Take the corrections from the same table and write each rib's length on its blank.",
	})
}

// bending is the work on the ribs, by the method of the design.
func (w *writer) bending() step {
	s := step{tools: "steam box and boiler, a post or round former, gauges, battens, straightedge, gauntlets", dry: "overnight in the boat before the pegs, some days before the skin",
		check: "bilge battens fair, port and starboard alike; tape and straightedge at every rib", do: w.byHand()}
	if w.Bend.OnForms() {
		s = step{tools: "steam box and boiler, forms, clamps, gauges, laths, gauntlets", dry: "a day on the form, then some days tied across the heads before they are fitted",
			check: "every free rib against its gauge; tape and straightedge at every rib when it is in", do: w.onForms()}
	}
	if w.Bend.Boat.Why != nil {
		s.do = append(s.do, "There is no neutral set for this frame: the cross pieces stay in.")
	}
	return s
}

// blanks says how the blanks are readied.
func (w *writer) blanks() string {
	words := "Mark the blanks from the rib strips, with the corrections; plane the heads until they slide into their mortises."
	if n := w.Frame.Design.Ribs.Spare; n > 0 {
		words += fmt.Sprintf(" Keep %s ready: some will break.", wording.Counted(n, "spare blank"))
	}
	return words
}

func (w *writer) steamed() string {
	return fmt.Sprintf("Soak the blanks overnight and steam each for %.0f minutes.", w.Bend.Ribs[0].Minutes)
}

func (w *writer) first() string { return w.Bend.Ribs[w.Bend.TestRib()].Name }

// byHand is how ribs are bent in place.
func (w *writer) byHand() []string {
	return []string{
		w.blanks(), w.steamed(),
		fmt.Sprintf("Bend rib %s first and measure its springback; see Ribs.", w.first()),
		"Bend each rib hot over your knee, a post or a round former, one bilge after the other, until its heads stand at the width held hot; hold it there for a few breaths and let go.",
		"Put both heads into their mortises while the rib is hot, set its middle on the keel, and true both bilges by hand, by sight and with the gauge.",
		"Begin at midship and go outward in pairs, forward and aft in turn: errors show while there is wood left.",
		"Tie a batten along each bilge. It shows lows and highs at once: steam a rib again that stands proud or shy, and ease it.",
		"Leave all of it under the battens overnight. Then lift every third rib out, measure its free width and relax it by hand to its width in the table; do the same with its neighbors when it is off by more than 10 mm (3/8 in). Put it back and peg all heads.",
	}
}

// onForms is how ribs are bent round forms.
func (w *writer) onForms() []string {
	strap := ""
	if slices.ContainsFunc(w.Bend.Ribs, func(r bend.Rib) bool {
		return slices.ContainsFunc(r.Arcs, func(a bend.Arc) bool { return a.Band == timber.Strap })
	}) {
		strap = ", the strap outside and its stops tight against the ends"
	}
	return []string{
		w.blanks(), w.steamed(),
		fmt.Sprintf("Saw the form for rib %s from its pattern, fair its edge and cut the holes. Bend that rib first and measure its springback; see Ribs. Then saw the other forms, %d in all.", w.first(), len(w.Bend.Forms)),
		"Clamp the middle of the hot rib to the middle of its form" + strap + "; pull both sides round within seconds and clamp them from the middle outward.",
		"Leave it on the form for a day. Before you take it off for the next, tie a lath across the heads to hold them at the width on the form, and let it dry so for some days.",
		"Untie each rib, hold it against its gauge and relax it by hand to its width in the table.",
		"Fit the ribs from midship outward in pairs, forward and aft in turn; their middles on the keel. Sight the bilges from end and side, then peg the heads.",
	}
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
	t.Note = fmt.Sprintf("From %s plywood, %s of 1220 x 2440 mm (4 x 8 ft); full-size patterns and the cutter's file have them. Ribs that differ by less than ribs.tolerance share a form: a larger one saves forms.", w.Fine(bend.FormStock), wording.Counted(w.Needs.Forms.Sheets, "sheet"))
	w.add(t)
}

// traced ends the sentence of what is traced from the patterns.
func (w *writer) traced() string {
	if w.Bend.OnForms() {
		return ", and the forms on their plywood."
	}
	return "."
}
