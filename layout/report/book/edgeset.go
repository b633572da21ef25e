package book

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/trial/edgeset"
	"ribwright/layout/report/trial"
)

// holding tells in the chapter on gunwales what a sprung edge-set asks of the frame.
func (w *writer) holding() { w.add(trial.EdgeSet(w.Bend, w.Letters)...) }

// joined are the steps from keel and stems to a backbone that gunwales are sprung over;
// none where they are not.
func (w *writer) joined() []string {
	e := w.Bend.EdgeSet
	if e == nil {
		return nil
	}
	drop := -math.Min(e.Loose.Sheer[0], e.Loose.Sheer[1])
	return []string{
		markKeel,
		"Now join it to both stems, before anything is sprung: screw and lash each foot on its landing, as the chapter Joints shows, so that it can neither slide nor turn. With loose feet the gunwales' ends would come down by up to " + w.Length(drop) + " when you let go.",
		"Stand keel and stems plumb, in the middle of where the boat will be, with the keel on blocks: " + w.rockers() + ". Clamp each stem to an upright plank that is fast to the floor, beyond the boat's end, where no gunwale comes.",
		"Stretch a string from stem to stem over the keel's middle line: it is straight seen from above.",
	}
}

// sprung are the steps after they are spread.
func (w *writer) sprung() []string {
	if w.Bend.EdgeSet == nil {
		return nil
	}
	return []string{
		"With a helper at each end, lift the spread gunwales with all that holds them over the stems, and lower them until their ends lie on the shelves of both stems, against the horns. The middle stands high still. Lash the ends there, as the chapter Joints shows; then take off what tied them.",
		"Now spring the edge-set; it takes two people. Draw the gunwales down onto the bars of both trestles, at both together and port and starboard alike, and tie them there; tie them down amidships too, to the keel's blocks or with a weight.",
		"Prop both ends of the gunwales from below, close to the stems. Props and ties stay until ribs and keel are lashed.",
		"Measure: the undersides of the ends stand " + w.endsOver() + " over midship's, give or take " + w.Letters.Units.Whole(setWithin) + ". Where they stand lower, draw the middle farther down; where they stand higher, let it up.",
	}
}

// setWithin is how true the edge-set is sprung, mm: what a builder measures over a boat's
// length. Our own choice.
const setWithin = 5.0

// letGo are the steps when ribs and keel are lashed.
func (w *writer) letGo() []string {
	if w.Bend.EdgeSet == nil {
		return nil
	}
	return []string{"Take the props and the tie amidships away, and what ties the gunwales to the trestles, when the keel is lashed to the ribs and the end ribs' heads are pegged and their glue is hard.", "Measure heights and rocker again. Where they have moved by more than " + w.Letters.Units.Whole(edgeset.MostOff) + ", put the props back and look at the feet and the pegs; see The edge-set, in the chapter Gunwales."}
}

// trestles says where they stand when the keel stands there already.
func (w *writer) trestles() []string {
	quarter := w.Frame.Hull.Length / 4
	aft, fore := w.Frame.Nearest(-quarter), w.Frame.Nearest(quarter)
	over := func(r frame.Rib) string { return w.Letters.Units.Rough(r.Section.Depth + r.Thickness/2) }
	high := over(aft)
	if over(fore) != high {
		high += " aft and " + over(fore) + " forward"
	}
	return []string{
		fmt.Sprintf("Set two trestles across the keel, beside the places of ribs %s and %s, level across, with their bars %s over the keel's upper face.%s", aft.Name, fore.Name, high, looseBars),
	}
}

// rockers says how much higher the keel's ends stand than its middle.
func (w *writer) rockers() string {
	h := w.Frame.Hull
	mid, _ := h.KeelZ(0)
	bow, _ := h.KeelZ(h.Bow.Toe.X)
	stern, _ := h.KeelZ(-h.Stern.Toe.X)
	if w.Length(bow-mid) == w.Length(stern-mid) {
		return "its ends stand " + w.Length(bow-mid) + " higher than its middle"
	}
	return fmt.Sprintf("it stands %s higher at the bow and %s at the stern than in the middle", w.Length(bow-mid), w.Length(stern-mid))
}

// endsOver says how far the undersides of the gunwales' ends stand over midship's.
func (w *writer) endsOver() string {
	s := w.Frame.Hull.Sheer
	bow, stern := w.Length(s.BowZ-s.MidZ), w.Length(s.SternZ-s.MidZ)
	if bow == stern {
		return bow
	}
	return bow + " (bow) and " + stern + " (stern)"
}
