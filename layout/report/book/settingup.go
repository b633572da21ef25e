package book

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/trial/spreader"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// leastBlock is the thinnest block that is worth a place between the gunwales' ends, mm; where
// less would go between, they are tied to one another. Our own choice.
const leastBlock = 2.0

// atEnds lists the stern and the bow with the cut of the gunwales there.
func (w *writer) atEnds() [2]struct {
	stem *frame.Stem
	cut  float64
} {
	g := &w.Frame.Gunwale
	return [2]struct {
		stem *frame.Stem
		cut  float64
	}{{&w.Frame.Stern, g.AftCut}, {&w.Frame.Bow, g.ForeCut}}
}

// endBlocks are what fills the room between the inner faces of the gunwales' ends while these
// stand upright, their middles as far apart as on the stems, aft and forward, mm: a gunwale
// that is cut aslant is wider across the boat than its stock. 0 where none goes between.
func (w *writer) endBlocks() (out [2]float64) {
	for i, e := range w.atEnds() {
		if room := e.stem.Thickness - w.Frame.Gunwale.Width/math.Cos(e.cut); room >= leastBlock {
			out[i] = math.Round(room)
		}
	}
	return out
}

// blockSizes letters the blocks, "" where none goes between.
func (w *writer) blockSizes() string {
	b, u := w.endBlocks(), w.Letters.Units
	switch {
	case b[0] == b[1] && b[0] == 0:
		return ""
	case b[0] == b[1]:
		return u.Whole(b[0])
	case b[0] == 0:
		return u.Whole(b[1]) + " at the bow, none at the stern"
	case b[1] == 0:
		return u.Whole(b[0]) + " at the stern, none at the bow"
	}
	return u.Whole(b[1]) + " at the bow, " + u.Whole(b[0]) + " at the stern"
}

// tieEnds says how the gunwales' ends are tied together until they lie on the stems.
func (w *writer) tieEnds() string {
	if blocks := w.blockSizes(); blocks != "" {
		return "Tie the gunwales' ends together, round a block between their inner faces (" + blocks + " thick): so they stand as on the stems."
	}
	var apart []string
	for _, e := range w.atEnds() {
		words := w.Letters.Units.Whole(math.Max(e.stem.Thickness, w.Frame.Gunwale.Width/math.Cos(e.cut)))
		if !slices.Contains(apart, words) {
			apart = append(apart, words)
		}
	}
	return "Tie the gunwales' ends to each other, their inner edges touching and no block between: cut aslant, they are so wide that the middles of their undersides then stand about " + strings.Join(apart, " to ") + " apart, as on the stems."
}

// sticks says how spreaders are cut. Their notches are square, so that a gunwale bears
// with one edge however it leans.
func (w *writer) sticks() []string {
	g := &w.Frame.Gunwale
	sin, cos := math.Sincos(math.Abs(g.Tilt))
	wall := "its inner lower edge on the notch's inner wall"
	if g.Tilt < 0 {
		wall = "its inner face on the notch's inner wall, which is sawn to the lean"
	}
	// A gunwale runs through the stick aslant: as thick as it is, the stick wants more.
	const thick = spreader.Stick
	aslant := 0.0
	for _, s := range w.Bend.Spread.Spreaders {
		dy, _ := g.Line.Slopes(s.At)
		aslant = math.Max(aslant, math.Abs(dy))
	}
	wide := math.Ceil((g.Width*cos+g.Height*sin)*math.Hypot(1, aslant)+thick*aslant) + 1
	return []string{
		"Cut a stick of scrap for each place of the table Spreaders while building, in the chapter on spreaders. Leave it longer than the boat is wide there. It may be " + w.Letters.Units.Whole(thick) + " thick at the most.",
		fmt.Sprintf("Saw a square notch into the stick's lower edge near each end, as deep as a gunwale is tall and %s wide. At the lower edge the two inner walls stand apart by the width between the inner lower edges in the table.", w.Letters.Units.Whole(wide)),
		"A gunwale sits in each notch with " + wall + ".",
		"Sticks lie across the tops of the gunwales, their middles at the places of the table, so that every mortise in the underside stays free.",
	}
}

// heldApart says how the spreaders go in: the pushing ones first.
func (w *writer) heldApart() (out []string) {
	if at := w.held(spreader.Apart); at != "" {
		out = append(out, "Set the notched sticks at "+at+".")
	}
	if at := w.held(spreader.Together); at != "" {
		out = append(out, "Draw the gunwales TOGETHER at "+at+" with a strap or a windlass of cord, against the inner walls of the notched stick there."+w.straps())
	}
	return out
}

// straps says on which side of its stick each strap lies: on no mortise, and not where a cross
// piece is fitted while it still holds.
func (w *writer) straps() (words string) {
	u := w.Letters.Units
	for _, s := range w.Bend.Spread.Spreaders {
		if s.Holds != spreader.Together {
			continue
		}
		with, side := "a strap no wider than ", "forward"
		if s.Strap.Off < 0 {
			side = "aft"
		}
		if s.Strap.Wide < 20 {
			with = "cord in turns no wider than "
		}
		if s.Strap.Off == 0 {
			words += " At " + w.Station(s.At) + " lead it over no mortise."
			continue
		}
		words += fmt.Sprintf(" At %s take %s%s and lay it beside the stick, its middle %s %s of the stick's: there it covers no mortise, and nothing is fitted under it later.", w.Station(s.At), with, u.Whole(s.Strap.Wide), u.Whole(math.Abs(s.Strap.Off)), side)
	}
	return words
}

// waiting names the ribs whose heads a spreader's stick keeps from the drill, from aft forward.
func (w *writer) waiting() (names []string) {
	for _, r := range w.Frame.Ribs {
		if slices.ContainsFunc(w.Bend.Spread.Spreaders, func(s spreader.Spreader) bool { return slices.Contains(s.Waits, r.Name) }) {
			names = append(names, r.Name)
		}
	}
	return names
}

// theRibs names one rib or more.
func theRibs(names []string) string {
	if len(names) == 1 {
		return "rib " + names[0]
	}
	return "ribs " + wording.And(names)
}

// notYet goes on after the words that peg all heads: which of them wait for the spreaders.
func (w *writer) notYet() string {
	names := w.waiting()
	if len(names) == 0 {
		return "."
	}
	words := ", but not yet those of " + theRibs(names) + ": a spreader stands in the way of the drill. They are pegged when it is out, after the battens are lashed."
	glued := slices.DeleteFunc(names, func(name string) bool {
		at, n, h := slices.IndexFunc(w.Frame.Ribs, func(r frame.Rib) bool { return r.Name == name }), len(w.Frame.Ribs), w.Needs.Joints.Head.Glued
		return at >= h && at < n-h
	})
	if len(glued) > 0 && !w.Needs.Joints.Head.All() {
		words += " Glue the heads of " + theRibs(glued) + " now all the same: the glue holds them until then."
	}
	return words
}

// pegLast is the work on heads that had to wait.
func (w *writer) pegLast() []string {
	names := w.waiting()
	if len(names) == 0 {
		return nil
	}
	return []string{"Peg the heads of " + theRibs(names) + " now, as you did the others. Push each home to its shoulder line first." + w.offForDrill()}
}

// offForDrill says what is taken out of a drill's way, "" where nothing can be in it.
func (w *writer) offForDrill() string {
	if len(w.Frame.Thwarts) == 0 {
		return ""
	}
	return " A cross piece in the drill's way comes off for it."
}

// boltLast says which cross pieces wait for a stick, "" for none.
func (w *writer) boltLast() (words string) {
	for _, s := range w.Bend.Spread.Spreaders {
		if len(s.Over) > 0 {
			words += fmt.Sprintf(" %s has its bolts under the stick at %s: clamp it in place now, and bolt it as soon as that stick is lifted off.", wording.And(s.Over), w.Station(s.At))
		}
	}
	return words
}

// held lists the places of spreaders that hold one way, "" without one.
func (w *writer) held(way spreader.Holds) string {
	all := slices.DeleteFunc(slices.Clone(w.Bend.Spread.Spreaders), func(s spreader.Spreader) bool { return s.Holds != way })
	return wording.List(all, func(s spreader.Spreader) string { return w.Station(s.At) })
}

// markBattens is what is done to stringers and keel before any of them is joined to anything.
func (w *writer) markBattens() string {
	saw := " Saw the keel's ends square to its marks." + w.keelTaper()
	if len(w.Frame.Stringers) == 0 {
		return "Mark the keel from the story stick while it is straight." + saw
	}
	return "Mark the stringers and the keel from the story stick while they are straight, port and starboard side by side: carry the marks of each one's lane over with a square along the stick's upper edge." + saw
}

// setUp is the work from trestles to a frame that ribs can be fitted to. Depths are
// measured when the keel is there and the edge-set sprung.
func (w *writer) setUp() []string {
	g := &w.Frame.Gunwale
	var cut []string
	if d := w.Frame.Design; d.Gunwale.Plies == 1 || d.Gunwale.Glued != design.GluedBent {
		cut = w.sticks()
	}
	stand := append(w.trestles(), "Lay the gunwales on the loose bars.")
	spread := []string{"Spread the gunwales, their ends lashed on the stems' shelves."}
	keel := []string{w.markBattens(), "Clamp it to the feet of both stems.",
		"Hang it in cords from the gunwales until it stands at the depths of the table Depths and corrections, in the chapter Ribs."}
	if w.Bend.EdgeSet != nil {
		stand = w.trestles()
		spread = []string{"Lay the gunwales on blocks of one height" + w.underMiddle() + ", beside the place of the boat, and spread them.", w.tieEnds() + " Tie them a hand's length from the ends, so that the cord will clear the stems, with a clove hitch round each gunwale: a plain loop slides off toward the ends."}
		keel = []string{"The keel stays joined to both stems. Shim its blocks, or draw it up in cords from the gunwales, until it stands at the depths of the table Depths and corrections, in the chapter Ribs, at M, " + w.Frame.Ribs[0].Name + " and " + w.Frame.Ribs[len(w.Frame.Ribs)-1].Name + ". Beside the trestles there is some " + w.Letters.Units.Whole(w.trestlesAt()[0].Over) + " more: leave it. The ribs there are marked longer by what you measure, and the boat stays that much deeper there than drawn."}
	}
	shaped := slices.Concat(spread, w.heldApart(), []string{
		fmt.Sprintf("Set the lean of %s degrees with a bevel, and hold it with wedges in the notches.", report.Angle(math.Abs(g.Tilt))) + w.endsLift(),
		"Sight along both gunwales: each runs in one sweep. Then measure both diagonals, from one end of each gunwale to the farther spreader on the other.",
	})
	if w.Bend.EdgeSet == nil {
		shaped = slices.Concat(stand, shaped)
	} else {
		shaped = slices.Concat(shaped, w.joined(), stand, w.sprung())
	}
	return slices.Concat([]string{"Choose the place: ribs" + w.andEnds() + " go from the steam into the frame within seconds, and steam wants open air. Let the frame stand at a wide open door with box and boiler just outside, or outdoors under a roof with all of it."}, cut, shaped, []string{
		"Glue the breasthooks in, as the chapter Joints shows: the gunwales' ends now lie on the stems' shelves. Leave them overnight.",
		"When the glue is hard, bore for their pegs and drive them."}, w.stayIn(), keel, []string{
		"Lay a straightedge across the gunwales at each rib's place." + w.besideSticks() + " Measure beam and depth there: between the gunwales' inner lower edges, and from the straightedge to the keel's upper face.",
		"Write on the card under that table what you measured, and each rib's corrected length: the blanks are marked by it.",
	})
}

// andEnds adds the stringers where their ends are steamed too.
func (w *writer) andEnds() string {
	if len(w.hotStringers()) == 0 {
		return ""
	}
	return " and stringers"
}

// endsLift says how the ends of bent gunwales on blocks are held when they lean: a curve that is
// turned about its middle rises at its ends.
func (w *writer) endsLift() string {
	s := w.Frame.Hull.Sheer
	bow, stern := s.BowZ-s.MidZ-s.BowSet.Rise, s.SternZ-s.MidZ-s.SternSet.Rise
	if w.Bend.EdgeSet == nil || w.underMiddle() != "" || math.Min(bow, stern) < 1 {
		return ""
	}
	by := w.Letters.Units.Whole(bow)
	if end := w.Letters.Units.Whole(stern); end != by {
		by += " (bow) and " + end + " (stern)"
	}
	return " Bent as they are, their ends come up off the blocks as they lean, by " + by + ": raise those blocks by so much."
}

// besideSticks says where a spreader's stick lies in the straightedge's way.
func (w *writer) besideSticks() string {
	const edge = 15.0 // mm, how thick a straightedge is at the most, and a little air
	var at []string
	for _, r := range w.Frame.Ribs {
		for _, s := range w.Bend.Spread.Spreaders {
			off := r.Station - s.At
			if math.Abs(off) >= spreader.Stick/2+edge {
				continue
			}
			side := "forward"
			if off < -0.5 || math.Abs(off) <= 0.5 && s.Strap.Off > 0 {
				side = "aft"
			}
			at = append(at, side+" of the stick at "+r.Name)
		}
	}
	if at == nil {
		return ""
	}
	return " Where a spreader's stick lies in its way, lay it close beside the stick: " + wording.And(at) + "."
}

// stayIn is the work on cross pieces that hold the frame while ribs go in; none where
// ribs in the neutral set do.
func (w *writer) stayIn() []string {
	if w.Bend.Boat.Why == nil || len(w.Frame.Thwarts) == 0 {
		return nil
	}
	return []string{"There is no neutral set for this frame. Saw the cross pieces to their patterns.", "Fit the cross pieces now, as drawn, before any rib: they hold the shape and stay in." + w.boltLast()}
}
