package book

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/trial/spreader"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// heldToGlue says what holds the dry plies while they are glued in the bend.
func (w *writer) heldToGlue() string {
	if w.Frame.Design.Gunwale.Glued == design.GluedOnForm {
		return "Clamp the plies to the form while they are glued."
	}
	return "Hold the plies of both gunwales to the finished curve while they are glued, both in one set-up. Saw the plies off " + report.Either(w.Letters.Units, "2 mm", "1/16 in") + " past their end marks first: longer they would meet. Tie their ends together round a block that holds them, at the end marks, " + w.endsApart() + " apart, from the middle of one underside to the middle of the other. They stand upright in the notches; the lean comes later, in setting up. " + w.heldApart() + " Measure every beam again when the clamps are on."
}

// endsApart says how far apart the gunwales' ends lie on the stems.
func (w *writer) endsApart() string {
	bow, stern := w.Letters.Units.Whole(w.Frame.Bow.Thickness), w.Letters.Units.Whole(w.Frame.Stern.Thickness)
	if bow == stern {
		return bow
	}
	return bow + " at the bow and " + stern + " at the stern"
}

// sticks says how spreaders are cut. Their notches are square, so that a gunwale bears
// with one edge however it leans.
func (w *writer) sticks() string {
	g := &w.Frame.Gunwale
	sin, cos := math.Sincos(math.Abs(g.Tilt))
	wall := "its inner lower edge on the notch's inner wall"
	if g.Tilt < 0 {
		wall = "its inner face on the notch's inner wall, which is sawn to the lean"
	}
	// A gunwale runs through the stick aslant: as thick as it is, the stick wants more.
	const thick = 20.0 // mm
	aslant := 0.0
	for _, s := range w.Bend.Spread.Spreaders {
		dy, _ := g.Line.Slopes(s.At)
		aslant = math.Max(aslant, math.Abs(dy))
	}
	wide := math.Ceil((g.Width*cos+g.Height*sin)*math.Hypot(1, aslant)+thick*aslant) + 1
	return fmt.Sprintf("Cut a stick for each place of the spreader table, longer than the boat is wide there, and saw a square notch into its lower edge near each end, as deep as a gunwale is tall and %s wide, for a stick %s thick at the most. A gunwale sits in each notch with %s: at the stick's lower edge the two inner walls stand apart by the width between the inner lower edges in the table. Lay the sticks across the tops of the gunwales, so that every mortise in the underside stays free, their middles at the places of the table.", w.Letters.Units.Whole(wide), w.Letters.Units.Whole(thick), wall)
}

// heldApart says how the spreaders go in: the pushing ones first.
func (w *writer) heldApart() string {
	words := ""
	if at := w.held(spreader.Apart); at != "" {
		words = "Set the notched sticks at " + at + "."
	}
	if at := w.held(spreader.Together); at != "" {
		words += " Draw the gunwales TOGETHER at " + at + " with a strap or a windlass of cord, against the inner walls of the notched stick there; lead the strap beside a mortise, never over it."
	}
	return strings.TrimSpace(words)
}

// held lists the places of spreaders that hold one way, "" without one.
func (w *writer) held(way spreader.Holds) string {
	all := slices.DeleteFunc(slices.Clone(w.Bend.Spread.Spreaders), func(s spreader.Spreader) bool { return s.Holds != way })
	return wording.List(all, func(s spreader.Spreader) string { return w.Station(s.At) })
}

// looseBars says how trestles come out of a frame that ribs and keel close round.
const looseBars = " Let the gunwales lie on loose bars: they are drawn out sideways when the ribs are pegged."

// setUp is the work from trestles to a frame that ribs can be fitted to. Depths are
// measured when the keel is there and the edge-set sprung.
func (w *writer) setUp() []string {
	g := &w.Frame.Gunwale
	var cut []string
	if d := w.Frame.Design; d.Gunwale.Plies == 1 || d.Gunwale.Glued != design.GluedBent {
		cut = []string{w.sticks()}
	}
	stand := "Stand the gunwales on two trestles that are level with each other and across." + looseBars
	spread := "Spread the gunwales, their ends lashed in the stems' notches. "
	keel := "Mark the keel from the story stick while it is straight and clamp it to the feet of both stems. Hang it in cords from the gunwales so that it stands at the depths of the table under Depths and corrections. A string at the same depths serves until the keel is planed."
	if w.Bend.EdgeSet != nil {
		stand = w.trestles()
		spread = "Lay the gunwales on the trestles and spread them, their ends tied together round a block that holds them " + w.endsApart() + " apart, from the middle of one underside to the middle of the other. "
		keel = "The keel stays joined to both stems. Shim its blocks, or draw it up in cords from the gunwales, so that it stands at the depths of the table under Depths and corrections."
	}
	return slices.Concat(cut, w.joined(), []string{
		stand, spread + w.heldApart(), fmt.Sprintf("Set the lean of %s degrees with a bevel, and hold it with wedges in the notches.", report.Angle(math.Abs(g.Tilt))),
		"Sight along both gunwales and measure both diagonals, end to spreader.",
	}, w.sprung(), []string{"Peg the breasthooks and glue them, see Joints: the gunwales' ends now lie in the stems' notches."}, w.stayIn(), []string{
		keel,
		"Measure beam and depth at every rib's place: between the gunwales' inner lower edges, and from the straightedge to the keel. Take the corrections from the same table and write each rib's length on its blank.",
	})
}

// stayIn is the step for cross pieces that hold the frame while ribs go in; none where
// ribs in the neutral set do.
func (w *writer) stayIn() []string {
	if w.Bend.Boat.Why == nil || len(w.Frame.Thwarts) == 0 {
		return nil
	}
	return []string{"There is no neutral set for this frame. Fit the cross pieces now, as drawn, before any rib: they hold the shape and stay in."}
}
