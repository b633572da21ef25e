package book

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/spreader"
	"ribwright/geometry/wording"
	"ribwright/layout/report/trial"
)

// lashStringers are the steps of the stringers, with the ends that want steam.
func (w *writer) lashStringers() []string {
	hot := w.stringersThat(func(s bend.Stringer) bool { return s.Steamed || s.Wrung })
	if len(hot) == 0 && len(w.Frame.Stringers) > 0 {
		return []string{"Lash the stringers in pairs from the keel up, from midship to both ends."}
	}
	run := 0.0
	for _, s := range hot {
		run = math.Max(run, s.EndRun())
	}
	last := w.Letters.Units.Rough(50 * math.Ceil(run/50))
	if len(w.Frame.Stringers) == 0 {
		return nil
	}
	out := []string{
		"Lash the stringers in pairs from the keel up, from midship outward. Leave the last " + last + " of " + stringers(hot) + " loose at either end.",
		fmt.Sprintf("Steam these ends for %.0f minutes: in place, in a bag fed from the boiler.", hot[0].Minutes),
		"Bend them in and lash them while they are hot; forced cold they may break.",
	}
	if wrung := w.stringersThat(func(s bend.Stringer) bool { return s.Wrung }); len(wrung) > 0 {
		turns := wording.List(wrung, func(s bend.Stringer) string { return fmt.Sprintf("S%d by %.0f", s.Number, s.Twist*180/math.Pi) })
		out = append(out, "While they are hot, wring their flats to the stems' sides ("+turns+" degrees) and clamp them there until they are cold. Or let such an end ride on its edge and plane a seat for it.")
	}
	if whole := w.stringersThat(func(s bend.Stringer) bool { return s.Whole }); len(whole) > 0 {
		out = slices.Insert(out, 0, fmt.Sprintf("Steam %s between the ends as well, for %.0f minutes just before they are lashed, or plane them thinner; see What the wood is asked for, in the chapter Frame balance.", stringers(whole), whole[0].Minutes))
	}
	return out
}

func (w *writer) stringersThat(do func(bend.Stringer) bool) []bend.Stringer {
	return slices.DeleteFunc(slices.Clone(w.Bend.Stringers), func(s bend.Stringer) bool { return !do(s) })
}

func stringers(all []bend.Stringer) string {
	return wording.List(all, func(s bend.Stringer) string { return fmt.Sprintf("S%d", s.Number) })
}

// toSteamEnds ends the list of tools.
func (w *writer) toSteamEnds() string {
	if len(w.stringersThat(func(s bend.Stringer) bool { return s.Steamed || s.Wrung || s.Whole })) > 0 {
		return ", boiler and a plastic bag, gauntlets"
	}
	return ""
}

// cutToGaps is the step for cross pieces that are cut to a frame that stands by its ribs.
func (w *writer) cutToGaps() []string {
	if w.Bend.Boat.Why != nil || len(w.Frame.Thwarts) == 0 {
		return nil
	}
	return []string{
		"Saw the cross pieces to their patterns, but leave their ends full.",
		fmt.Sprintf("Measure between the gunwales at each cross piece, with the spreaders still in. Where they stand off the table's width by more than %s, look at the spreader there and at the free widths of the ribs beside it first.", w.Letters.Units.Whole(trial.OffDrawing(w.Bend))),
		"Cut each cross piece longer or shorter than its pattern by the difference, half of it at each end, and move its holes with the ends. Never force the gunwales to it.",
		"Fit and bolt the cross pieces, as the chapter Joints shows.",
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
	return []string{
		"Measure the beam at every spreader and write it down.",
		"Now take the spreaders out " + how + ".",
		"Measure the beam there again. Where it has moved by more than " + offWidth(w.Letters.Units) + ", put the spreader back and " + look + ".",
	}
}
