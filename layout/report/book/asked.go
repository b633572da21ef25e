package book

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/wording"
)

// asked is what a line of the shopping list asks a yard for besides a volume: the boards that are
// not the builder's own, how dry, and how good; "" where it is no wood or all is there.
func (w *writer) asked(key string) string {
	i := slices.IndexFunc(w.Plan.Woods, func(v cutlist.Wood) bool { return "wood: "+v.Species == key })
	if i < 0 {
		return ""
	}
	v := w.Plan.Woods[i]
	v.Boards = slices.DeleteFunc(slices.Clone(v.Boards), func(s cutlist.Sawn) bool { return s.Board.Owned() })
	if len(v.Boards) == 0 {
		return ""
	}
	words := ", with faces planed: " + w.boardSizes(v, " "+w.Unit())
	dry := "air-dried or kiln-dried"
	switch {
	case w.Frame == nil: // of a course: each builder's book says which wood the ribs are of
		dry = "air-dried where ribs are cut from it"
	case v.Species == w.Frame.Design.Ribs.Species:
		dry = w.Frame.Design.Bending.Stock.String()
	}
	return words + "; " + dry + "; straight grain, no knots in what is bent"
}

// spare letters what is left of a rip that is crosscut within so much length, in its layer that
// leaves least: how much more than is reckoned may be unsound at its ends.
func (w *writer) spare(r cutlist.RipCut, within float64) string {
	most := 0.0
	for _, l := range r.Layers {
		most = math.Max(most, w.taken(l))
	}
	if len(r.Rest) > 0 {
		return "-" // its other end is the rest
	}
	return w.Whole(math.Max(0, math.Floor(within-most)))
}

// taken is the length of pieces with a saw cut after each, mm.
func (w *writer) taken(pieces []cutlist.Piece) (sum float64) {
	for _, p := range pieces {
		sum += p.Length + w.Plan.Kerf
	}
	return sum
}

// shortOf says what a rip is good for whose ends turn out worse than is reckoned.
func (w *writer) shortOf() string {
	words := "Spare is what the pieces of a rip leave besides the checked ends: so much more may be cut off. Saw the rips with the least to spare from where the board is soundest. Where that is not enough, or a piece splits, take the rip's shortest piece or the split one from a rip that has so much to spare"
	if w.Frame == nil { // of a course
		words += ", or do without a builder's spare blank"
	} else if n := w.Frame.Design.Ribs.Spare; n > 0 {
		words += ", or do without one of the " + wording.Counted(n, "spare blank")
	}
	return words + fmt.Sprintf(". Boards %s longer give every rip so much more.", w.Length(100)) + w.narrower()
}

// narrower says how a plan is laid on narrower boards than it asks the yard for.
func (w *writer) narrower() string {
	var widest []string
	for _, v := range w.Plan.Woods {
		most, asked := 0.0, len(v.Boards) > 0
		for _, b := range v.Boards {
			if !b.Board.Asked {
				asked = false // it is there already
			}
			for _, r := range b.Rips {
				most = math.Max(most, r.Across)
			}
		}
		if asked {
			widest = append(widest, w.Fine(most)+" of "+v.Species)
		}
	}
	if widest == nil {
		return ""
	}
	return fmt.Sprintf(" Where the yard has narrower boards, as long, as thick and sawn alike, take the rips off them in their order: each wants its width and %s more, and the widest are %s.", w.Fine(w.Plan.Kerf+cutlist.Dressing), wording.And(widest))
}
