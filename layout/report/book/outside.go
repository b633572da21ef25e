package book

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/outside"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/geometry/wood/fasten"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// outsideSkin is what goes on over the skin.
func (w *writer) outsideSkin() {
	o := w.Bend.Outside
	items := w.outsideSteps()
	if len(items)+len(w.band()) == 0 {
		return
	}
	w.section("Outside the skin")
	t := report.Titled("Strips outside the skin, of "+o.Wood+", "+w.Marks()).Names("Strip").Numbers("Pieces", "Off the skin", "Along it", "Finished length", "Screws in each").Words("How it is bent")
	for _, s := range []struct {
		name  string
		count int
		strip outside.Strip
		bent  string
	}{{"Outwale", 2, o.Outwale, o.Outwales.Verdict.String()}, {"Keel strip", 1, o.Keel, o.UnderKeel.Verdict.String()}} {
		if s.strip.There() {
			t.Row(s.name, fmt.Sprint(s.count), w.Mark(s.strip.Across), w.Mark(s.strip.Tall), w.Mark(s.strip.Long), fmt.Sprint(len(s.strip.Screws)), s.bent)
		}
	}
	w.add(t.IfAny()...)
	w.add(w.screwPlaces().IfAny()...)
	w.add(report.List{First: 1, Items: slices.Concat(w.band(), items)})
	if o.Painter > 0 {
		w.warn("A long loose line catches feet in a capsize: coil each painter and tuck it under the cord that is stretched for it, and leave no loop that a foot goes into.", "common practice, no source read")
	}
}

// screwPlaces lists the screws of the strips, once where fore and aft are alike.
func (w *writer) screwPlaces() report.Table {
	o := w.Bend.Outside
	along := "the keel"
	switch {
	case o.Outwale.There() && o.Keel.There():
		along = "the gunwale and the keel"
	case o.Outwale.There():
		along = "the gunwale"
	}
	t := report.Titled("Screws of the strips, from midship along " + along + ", " + w.Unit()).Names("Strip").Words("Places")
	t.Note = "Forward is positive. "
	if o.Outwale.There() {
		t.Note += "Measure along the middle of the gunwale's upper face and square over: the outwale itself is longer, for it runs outside. "
	}
	t.Note += "A screw stands midway between two ribs, and is moved aside or added where a bolt, a peg or a lashing is in its way or the next one would be too far off. Keep to these places within " + w.Whole(marks.Joined) + " " + w.Unit() + "."
	if o.Outwale.There() {
		t.Note += " One that stands on a scarf of the gunwale may stay: it goes square through both halves and its hole is bored, so that it pulls the joint together."
	}
	row := func(name string, s outside.Strip) {
		all := s.Screws
		if s.Mirrored() {
			name, all = name+", forward and aft alike", all[len(all)/2:]
		}
		if len(all) > 0 {
			t.Row(name, wording.Joined(all, ", ", w.Whole))
		}
	}
	row("Outwale", o.Outwale)
	row("Keel strip", o.Keel)
	return t
}

// outsideSteps is the work outside the skin, when the last coat is hard.
func (w *writer) outsideSteps() (out []string) {
	o := w.Bend.Outside
	const bed = "Lay a bead of bedding compound on the skin where it goes."
	if s := o.Outwale; s.There() {
		out = append(out, fmt.Sprintf("Outwales: plane both to %s x %s, round the outer edges, oil them.", w.Fine(s.Across), w.Fine(s.Tall)),
			"Clamp one dry along the gunwale, its upper edge flush, from midship outward. It covers the tacks and takes the knocks."+w.missTacks(),
			"Mark its ends flush with the gunwales', plumb, and cut them.")
		if o.Outwales.Cure != "" {
			out = append(out, "Its bend: "+o.Outwales.Cure+".")
		}
		out = append(out, bed, w.screwed(s, "between the ribs, clear of mortises, bolts and pegs")+" Put the two on in turn, a few screws a side, so that they pull the boat alike.")
	}
	if s := o.Keel; s.There() {
		out = append(out, fmt.Sprintf("Strip under the keel: plane it to %s x %s, thin its last %s to a feather at both ends, and oil it, a day before it goes on. Hollow it by a shaving where it rides on the bumps of lashings.", w.Fine(s.Across), w.Fine(s.Tall), w.Length(outside.Feather)), bed,
			w.screwed(s, "between the ribs, clear of their lashings and of what holds the stems' feet")+" Strap the thin ends down until the compound grips. Wipe off what comes out.", "When it is worn, in years to come, take it off and put on another.")
	}
	if o.Painter > 0 {
		out = append(out, fmt.Sprintf("Painters: whip both ends of each line with waxed thread, a dozen tight turns. Put %s of line of %s through the hole in each breasthook, with a stopper knot under the plate.", w.meters(o.Painter), w.Length(outside.LineWide)),
			"Tie a lashing cord tight from one gunwale to the other round the heads of the last rib at each end, under the gunwales: the coiled painter is tucked under it.")
	}
	if o.Drain {
		out = append(out, fmt.Sprintf("Drain: bed a round pad, %s across and %s thick, inside against the skin beside the keel at %s, between two ribs.",
			w.Length(outside.PadAcross), w.Length(outside.PadThick), w.Station(o.DrainAt)),
			"Bore through pad and skin to the drain's size, and seal the edge with coating.", "Bed the drain and screw it tight from inside.")
	}
	return out
}

// missTacks says what is done where a screw of the outwale would meet a tack.
func (w *writer) missTacks() string {
	if w.Frame.Design.Skin.Cloth == 0 || w.Bend.Outside.Outwale.Screws == nil {
		return ""
	}
	return " The tacks are in first. Mark the places of the screws on the cloth, and pull out each tack within " + w.Letters.Units.Whole(6) + " of a screw: the outwale holds the cloth there."
}

// band is what covers the tacks where no outwale does; it goes in with the coats.
func (w *writer) band() []string {
	if w.Bend.Outside.Outwale.There() || w.Frame.Design.Skin.Cloth == 0 {
		return nil
	}
	free := ""
	if len(w.Bend.Joints.Cross) > 0 {
		free = " Cut them out round the heads of the cross pieces' bolts: these stay free, so that the pieces come out."
	}
	return []string{fmt.Sprintf("Cut strips %s wide from what is left of the cloth. Bed them along both gunwales in the last coat, over the tacks and round the upper edge onto the bare upper face, and coat strips and face once more: nothing else covers the tacks.", w.Length(40)) + free}
}

// unoiled is the wood that strips of cloth are bedded on later.
func (w *writer) unoiled() []string {
	if w.band() == nil {
		return nil
	}
	return []string{"Leave the gunwales' upper faces bare of oil: strips of cloth are bedded there in the coating, which does not hold on oil."}
}

// painterHoles are bored while the breasthooks are bare.
func (w *writer) painterHoles() []string {
	hook := w.Frame.BowHook
	if hook.Painter == 0 {
		return nil
	}
	return []string{fmt.Sprintf("Bore the painters' holes, %s, through both breasthooks where their patterns have them: on the middle line, %s from the gunwales' ends. Round the edges.", w.Length(frame.PainterHole), w.Length(hook.Painter))}
}

// screwed says how a strip is fastened.
func (w *writer) screwed(s outside.Strip, why string) string {
	if s.Screws == nil {
		return "The wood under it is too thin for screws: clamp or strap it until the compound holds."
	}
	long := w.Letters.Units.ScrewLong(s.Screw)
	more := long - s.Screw
	return fmt.Sprintf("Bore %s through the strip and %s on into the wood, and drive %s, square to the face, in the middle of the strip's breadth, at the places of the table of screws: %s. The first stands %s from the after end, the last %s from the fore end, and the next is never much farther than %s. Sink the heads by %s; then %s of wood or more stay under the tips.%s",
		w.Drill(outside.ScrewWide), w.Drill(s.Pilot), wording.Counted(len(s.Screws), "screw")+report.Either(w.Letters.Units, " of "+w.Fine(outside.ScrewWide)+" x "+w.Length(s.Screw), " "+measure.ScrewNumber(outside.ScrewWide)+" x "+w.Length(long)), why,
		w.Length(s.Screws[0]-s.From), w.Length(s.To-s.Screws[len(s.Screws)-1]), w.Length(s.Apart), w.Length(outside.Sunk), w.Length(outside.Under-math.Max(0, more)), w.shallow(s, more))
}

// shallow says of screws that go less deep than building rules want what they are good for;
// those that are bought go so much deeper than drawn.
func (w *writer) shallow(s outside.Strip, more float64) string {
	want := fasten.ScrewDeep * fasten.Number6Shank
	if s.Into >= want {
		return ""
	}
	return fmt.Sprintf(" They go %s into the wood, where rules for buildings want %s and the wood has no room for it: they hold the strip, and nothing is lifted or tied by it.", w.Length(s.Into+more), w.Length(want))
}
