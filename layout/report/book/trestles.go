package book

import (
	"fmt"
	"math"

	"ribwright/geometry/trial/edgeset"
	"ribwright/geometry/wording"
)

// A trestle as it is made for the boat, mm: common practice, no source.
const (
	loose   = 20.0 // a loose bar, tall
	shims   = 10.0 // under a loose bar, the least: some to take out, and more to add
	barTall = 60.0 // a trestle's own bar
	barMost = 40.0 // all bars, along the boat, where their bay is so wide
	barFree = 10.0 // between a bar and a rib's place beside it, the least
	besides = 60.0 // between a trestle's leg and the widest of the frame
	legWide = 45.0 // a leg, across the boat
	barPast = 15.0 // the bar beyond its legs
	toHold  = 30.0 // a loose bar beyond the trestle's own, to be drawn by
)

// trestlesAt are the trestles under the gunwales, aft and forward.
func (w *writer) trestlesAt() []edgeset.Hold {
	if e := w.Bend.EdgeSet; e != nil {
		return e.Holds[1:3]
	}
	both := edgeset.Trestles(w.Frame)
	return both[:]
}

// barOver is how high the upper face of a trestle's loose bar stands over the keel's, mm.
func (w *writer) barOver(h edgeset.Hold) float64 {
	keel, _ := w.Frame.Hull.KeelZ(h.At)
	return w.Frame.Gunwale.At(h.At, 0, 0).Z + h.Over - keel - w.keelTall()
}

// looseTop is how high the upper face of a loose bar stands over the floor, mm.
func (w *writer) looseTop(h edgeset.Hold) float64 {
	keel, _ := w.Frame.Hull.KeelZ(h.At)
	return keelUp + keel + w.keelTall() + w.barOver(h)
}

// barTop is the same of a trestle's own bar, in steps that one saws legs to; shims make up the
// rest.
func (w *writer) barTop(h edgeset.Hold) float64 {
	return 5 * math.Floor((w.looseTop(h)-loose-shims)/5)
}

// legsApart is how far the inner faces of a trestle's legs stand apart at the least, mm.
func (w *writer) legsApart() float64 {
	most := 0.0
	for _, r := range w.Frame.Ribs {
		for _, p := range w.Frame.Corners(r) {
			most = math.Max(most, p.X)
		}
	}
	return 50 * math.Ceil((2*most+2*besides)/50)
}

// barLong and looseLong are the least lengths of a trestle's own bar and of a loose one, mm.
func (w *writer) barLong() float64   { return w.legsApart() + 2*(legWide+barPast) }
func (w *writer) looseLong() float64 { return w.barLong() + 2*toHold }

// barWide is how wide all bars are along the boat, mm: they come out between two ribs.
func (w *writer) barWide() float64 {
	wide := barMost
	for _, h := range w.trestlesAt() {
		for _, r := range w.Frame.Ribs {
			room := 2*(math.Abs(r.Station-h.At)-barFree) - float64(w.Frame.Design.Ribs.Width)
			wide = math.Min(wide, 5*math.Floor(room/5))
		}
	}
	return wide
}

// aftAndFore letters a height at both trestles, once where they are alike.
func (w *writer) aftAndFore(high func(edgeset.Hold) float64) string {
	both, u := w.trestlesAt(), w.Letters.Units
	aft, fore := u.Whole(high(both[0])), u.Whole(high(both[1]))
	if aft == fore {
		return aft
	}
	return aft + " (aft) and " + fore + " (forward)"
}

// aTrestle says what a trestle is made of.
func (w *writer) aTrestle() string {
	return fmt.Sprintf("a bar %s wide, %s tall and %s long or more, its upper face %s over the floor; legs on both sides, %s apart inside or more, those of one side held by bolts, to come off",
		w.Length(w.barWide()), w.Length(barTall), w.Length(w.barLong()), w.aftAndFore(w.barTop), w.Length(w.legsApart()))
}

// trestles says where they stand and what lies on them.
func (w *writer) trestles() []string {
	var at []string
	for _, h := range w.trestlesAt() {
		if h.Between[0] == "" {
			at = append(at, w.Station(h.At))
			continue
		}
		at = append(at, "between the places of ribs "+h.Between[0]+" and "+h.Between[1])
	}
	lies := fmt.Sprintf("Lay a loose bar across each, on shims: its upper face, on which the gunwales will lie, stands %s over the floor", w.aftAndFore(w.looseTop))
	if w.Bend.EdgeSet == nil {
		return []string{"Set two trestles, level across, " + wording.And(at) + ": " + w.aTrestle() + ".", lies + "."}
	}
	return []string{
		"Set two trestles across the keel, level across, " + wording.And(at) + ": " + w.aTrestle() + ".",
		fmt.Sprintf("%s and %s over the keel's upper face. That is %s more than drawn, for the gunwales bend a little in the middle too. The figures under The edge-set, in the chapter Gunwales, show it all.",
			lies, w.aftAndFore(w.barOver), w.Letters.Units.Whole(w.trestlesAt()[0].Over)),
	}
}

// letGo are the steps when the keel is lashed to the ribs: what held the gunwales goes, and the
// trestles come out of a frame that ribs and keel close round, before stringers cross their bays.
func (w *writer) letGo() []string {
	const when = "when the keel is lashed to the ribs and the end ribs' heads are pegged and their glue is hard."
	var free []string
	if w.Bend.EdgeSet == nil {
		free = []string{"Stand the keel on three blocks, " + w.blockBays() + ", and clamp each stem to an upright plank that is fast to the floor, " + when + " Untie the cords that the keel hangs in, and draw the loose bars out sideways."}
	} else {
		free = []string{"Take the props away, and what ties the gunwales to the trestles, and draw the loose bars out sideways, " + when, "Ease the clamps of the stems' planks, so that the frame can go where it wants, and measure the heights of both ends over midship again; then draw the clamps tight. Where they have moved by more than " + w.Letters.Units.Whole(edgeset.MostOff) + ", put bars, ties and props back and look at the feet and the pegs; see The edge-set, in the chapter Gunwales."}
	}
	before := ""
	if len(w.Frame.Stringers) > 0 {
		before = " before a stringer is in the way,"
	}
	return append(free, "Now take the trestles out,"+before+" a helper's hand on the gunwales: unbolt the legs of one side, and draw the bar by its other legs out sideways, between its two ribs, under the gunwales and over the keel. The frame stands on its blocks, its stems clamped, until the spreaders are out.")
}

// liftOff says how a frame that stands by itself comes to where it is smoothed and covered.
const liftOff = "Free the stems from their planks, and lift the frame off its blocks, one at each end. Bolt the trestles' legs on again and pad their bars: the frame lies on them from now on, either way up."
