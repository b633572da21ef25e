package book

import (
	"fmt"
	"math"

	"ribwright/geometry/wording"
	"ribwright/layout/report/trial"
)

// holding tells in the chapter on gunwales what a sprung edge-set asks of the frame.
func (w *writer) holding() {
	if w.add(trial.EdgeSet(w.Bend, w.Letters)...); w.Bend.EdgeSet != nil {
		w.add(w.springingSide(), w.springingEnd())
	}
}

// joined are the steps from keel and stems to a backbone that gunwales are sprung over;
// none where they are not.
func (w *writer) joined() []string {
	e := w.Bend.EdgeSet
	if e == nil {
		return nil
	}
	drop := -math.Min(e.Loose.Sheer[0], e.Loose.Sheer[1])
	return []string{
		w.markBattens(),
		"Now join it to both stems, before anything is sprung: screw and lash each stem's foot on the keel's end, as the chapter Joints shows, so that it can neither slide nor turn. With loose feet the gunwales' ends would come down by up to " + w.Length(drop) + " when you let go.",
		"Stand keel and stems plumb, in the middle of where the boat will be, with the keel on three blocks, " + w.blockBays() + ". " + wording.Capital(w.rockers()) + ": " + w.packed() + ". Blocks some " + w.Length(keelUp) + " high let hands under the keel; it is the height of the gunwales over the keel, below, that counts, and shims set it. Clamp each stem to an upright plank that is fast to the floor, beyond the boat's end, where no gunwale comes: its flat side against a block screwed to the plank, above the waterline and below the shelf, clear of the crosses." + w.hornToHorn(),
		"Stretch a string from stem to stem over the keel's middle line: it is straight seen from above.",
	}
}

// sprung are the steps after they are spread.
func (w *writer) sprung() []string {
	if w.Bend.EdgeSet == nil {
		return nil
	}
	return []string{
		"Take the string off, for the sticks must come down past it. With a helper at each end, lift the spread gunwales with all that holds them over the stems, and lower them until their ends lie on the shelves of both stems, against the horns. Until they are sprung they are a few millimeters too long to go down there freely: press their middle down, or ease the clamps of one stem for it, and saw nothing off. The middle stands high still. Lash the ends there, as the chapter Joints shows; then take off what tied them. Stretch the string again from stem to stem, over the sticks.",
		"Now spring the edge-set; it takes two people. Draw the gunwales down onto the loose bars of both trestles, at both together and port and starboard alike, and tie each gunwale down round the trestle's own bar. A trestle holds them down by up to " + w.weight(w.pull()) + ": put as much on its feet where it is lighter. Nothing holds them amidships.",
		"Prop both ends of the gunwales from below, close to the stems: a board nailed across the top of each prop, which stands beside the stem, bears both gunwales. Props and ties stay until ribs and keel are lashed.",
		"Measure: the undersides of the ends stand " + w.endsOver() + " over midship's, give or take " + w.Letters.Units.Whole(setWithin) + ". Where they stand lower, take shims from under the loose bars, and draw the gunwales down after them; where they stand higher, add shims. Haul the lashings of the ends once more: they have turned a little.",
	}
}

// hornToHorn is how far apart the stems stand where the gunwales' ends lie against them.
func (w *writer) hornToHorn() string {
	f := w.Frame
	return " From horn to horn, just over the shelves, it is then " + w.Letters.Units.Whole(f.Bow.Shelf[1].X+f.Stern.Shelf[1].X) + ": off by more than " + w.Letters.Units.Whole(setWithin) + ", look at the feet, and whether both stems stand plumb, before any gunwale comes on."
}

// setWithin is how true the edge-set is sprung, mm: what a builder measures over a boat's
// length. Our own choice.
const setWithin = 5.0

// pull is the most that a trestle holds down, N.
func (w *writer) pull() (most float64) {
	for _, h := range w.trestlesAt() {
		most = math.Max(most, h.Down)
	}
	return most
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

// packed says how much higher the keel lies on the blocks near its ends than on the middle one.
func (w *writer) packed() string {
	at := w.keelBlocks()
	high := func(i int) string {
		z, _ := w.Frame.Hull.KeelZ(at[i])
		mid, _ := w.Frame.Hull.KeelZ(at[1])
		return w.Length(z - mid)
	}
	if high(0) == high(2) {
		return "pack the blocks near its ends up by " + high(0)
	}
	return "pack its after block up by " + high(0) + " and its forward one by " + high(2)
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
