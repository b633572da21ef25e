package book

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/spreader"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
	"ribwright/layout/report/trial"
)

// readyStringers is the work on the stringers while they are straight sticks.
func (w *writer) readyStringers() []string {
	if len(w.Frame.Stringers) == 0 {
		return nil
	}
	return []string{
		"Saw the stringers' ends to their marks from the story stick.",
		"Feather their ends now: plane the inner face away to nothing, as the chapter Joints says under Stringers to stem.",
	}
}

// lashStringers are the steps of the stringers, with the lengths that want steam.
func (w *writer) lashStringers() []string {
	hot := w.hotStringers()
	if len(hot) == 0 && len(w.Frame.Stringers) > 0 {
		return []string{"Lash the stringers in pairs from the keel up, from midship to both ends."}
	}
	if len(w.Frame.Stringers) == 0 {
		return nil
	}
	out := []string{
		"Lash the stringers in pairs from the keel up, from midship outward. " + stringers(hot) + " stay loose for now between the ribs, or rib and stem, that the table Lengths to steam names in the chapter Keel and stringers, and outward of there, the rib where such a length begins too; all nearer midship is bent dry. Finish each pair to both stems, steamed, cold and lashed, before you begin the next.",
		fmt.Sprintf("Steam each of those lengths in place for %.0f minutes: in a sleeve of plastic sheet or tube, tied round the stick a hand's breadth past both ends of the length, or off the stick's end where the length goes so far, fed from the boiler at its high end and open a finger at its low end. The longest sleeve is %s.", hot[0].Minutes, w.Letters.Units.Rough(longestHot(hot)+2*sleevePast)),
		"Pull the sleeve off, bend the stick in and clamp it to one rib after another, outward, within a minute; forced cold it may break.",
	}
	if wrung := w.stringersThat(func(s bend.Stringer) bool {
		return slices.ContainsFunc(s.Hot, func(h bend.Hot) bool { return h.Twist > 0 })
	}); len(wrung) > 0 {
		turns := wording.List(wrung, func(s bend.Stringer) string { return fmt.Sprintf("S%d by %.0f", s.Number, s.Twist*180/math.Pi) })
		out = append(out, "Wring it as you clamp it, until its flat lies on each rib, and its end on the stem's side ("+turns+" degrees from one rib to the next, at most). Where one will not turn so far, let it ride on its edge and plane a seat for it.")
	}
	return append(out, "Leave it clamped until it is cold, an hour or so, then lash it on to the stem.")
}

// longestHot is the longest piece of a stringer that is steamed at once, mm.
func longestHot(hot []bend.Stringer) (longest float64) {
	for _, s := range hot {
		for _, h := range s.Hot {
			longest = math.Max(longest, h.Along.To-h.Along.From)
		}
	}
	return longest
}

// sleevePast is how far a sleeve for steam reaches past the length that is steamed, mm.
const sleevePast = 100.0

// toSteam lists what is steamed of each stringer; no table where all bends dry.
func (w *writer) toSteam() report.Table {
	t := report.Titled("Lengths to steam, along the straight stick from midship, "+w.Unit()).Names("Stringer").Words("Between").Numbers("Begins", "Ends", "Minutes", "Flat turns in one bay, degrees")
	for _, s := range w.hotStringers() {
		for _, h := range s.Hot {
			turn := "-"
			if h.Twist > 0 {
				turn = fmt.Sprintf("%.0f", h.Twist*180/math.Pi)
			}
			t.Row(fmt.Sprintf("S%d", s.Number), w.tie(h.Bays.From)+" and "+w.tie(h.Bays.To), w.Rough(h.Along.From), w.Rough(h.Along.To), fmt.Sprintf("%.0f", s.Minutes), turn)
		}
	}
	return t.Noted("What the wood is asked for calls the bays at the last two ribs of either end a stringer's ends, whether they are steamed whole or in part. All else of the keel and the stringers bends dry. Do not plane a stringer thinner to bend it dry: the cloth would then lie nearer to the ribs, see Skin.")
}

// tie names a rib by its station, or the stem that a stringer runs to.
func (w *writer) tie(station float64) string {
	for _, r := range w.Frame.Ribs {
		if math.Abs(r.Station-station) < 0.5 {
			return r.Name
		}
	}
	if station < 0 {
		return "the stern stem"
	}
	return "the bow stem"
}

func (w *writer) hotStringers() []bend.Stringer {
	return w.stringersThat(func(s bend.Stringer) bool { return len(s.Hot) > 0 })
}

func (w *writer) stringersThat(do func(bend.Stringer) bool) []bend.Stringer {
	return slices.DeleteFunc(slices.Clone(w.Bend.Stringers), func(s bend.Stringer) bool { return !do(s) })
}

func stringers(all []bend.Stringer) string {
	return wording.List(all, func(s bend.Stringer) string { return fmt.Sprintf("S%d", s.Number) })
}

// toSteamEnds ends the list of tools.
func (w *writer) toSteamEnds() string {
	if len(w.hotStringers()) > 0 {
		return ", boiler, plastic sheet or tube for the sleeve, watch, gauntlets"
	}
	return ""
}

// cutToGaps is the step for cross pieces that are cut to a frame that stands by its ribs.
func (w *writer) cutToGaps() []string {
	if w.Bend.Boat.Why != nil || len(w.Frame.Thwarts) == 0 {
		return nil
	}
	return []string{
		"Saw the cross pieces by hand to their patterns, but leave their ends full: " + w.Letters.Units.Whole(frame.Around) + " longer at each end, which is what the cut list gives them.",
		fmt.Sprintf("Measure between the gunwales at each cross piece, with the spreaders still in. Where they stand off the table's width by more than %s, look at the spreader there and at the free widths of the ribs beside it first.", w.Letters.Units.Whole(trial.OffDrawing(w.Bend))),
		"Now cut each cross piece longer or shorter than its pattern by the difference, half of it at each end. Its holes are bored later, through the gunwales'. Never force the gunwales to it.",
		"Fit and bolt the cross pieces, as the chapter Joints shows." + w.boltLast(),
	}
}

// takeOut is the step that leaves the frame to itself. While sticks stand they push the
// middle out against the strap, so the strap is the last to go.
func (w *writer) takeOut() []string {
	how := "one by one"
	switch apart, together := w.held(spreader.Apart), w.held(spreader.Together); {
	case apart != "" && together != "":
		how = "one by one: the sticks first, for they push the gunwales out against the strap, and the strap last, let out slowly"
	case together != "":
		how += "; let the strap out slowly"
	}
	look := "look at the free widths of the ribs there"
	switch {
	case w.Bend.Boat.Why != nil && len(w.Frame.Thwarts) > 0:
		look = "measure the cross pieces beside it"
	case w.Bend.Boat.Why != nil:
		look = "read What holds the shape: nothing else holds this frame"
	}
	return append([]string{
		"Measure the beam at every spreader and write it down.",
		"Now take the spreaders out " + how + ".",
		"Measure the beam there again. Where it has moved by more than " + offWidth(w.Letters.Units) + ", put the spreader back and " + look + ".",
	}, append(w.pegLast(), liftOff)...)
}
