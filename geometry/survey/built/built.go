// Package built compares a frame on the trestles with its drawing: how far off each rib
// is, whether it is fair, what its board springs back, and how to set the ribs that are
// still to be bent so that the finished boat comes fair with those that stand.
package built

import (
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/handwork"
)

// Frame is a frame as it is drawn, made ready to be measured.
type Frame struct {
	*bend.Report
	ribs []drawn // from aft forward
	curb []frame.Correction
	at   []float64 // stations of the after stem, the ribs and the fore stem
}

// drawn is a rib as the card asks for it, mm.
type drawn struct {
	beam, depth, blank float64
	free, hot          float64 // widths between its heads
	bilge              float64 // out to the rib's outside at the bilge stringer's mark
	off                float64 // what its free width is wider than its plain arcs make
	deeper             float64 // with its heads held, for each mm that it stands free too wide
}

// NewFrame readies a frame.
//
// Errors: a section from which half a millimeter takes the shape away.
func NewFrame(b *bend.Report) (*Frame, error) {
	f := &Frame{Report: b}
	var err error
	if f.curb, err = frame.Corrections(b.Frame); err != nil {
		return nil, err
	}
	aft, fore := b.Frame.Gunwale.Line.Ends()
	f.at = append(f.at, aft)
	for i, r := range b.Frame.Ribs {
		f.at = append(f.at, r.Station)
		d := drawn{beam: 2 * r.Section.HalfBreadth, depth: r.Section.Depth, blank: r.Blank, hot: b.Ribs[i].Hot, free: b.Ribs[i].Relax}
		plain := b.Bent(i, 1)
		if d.free == 0 {
			d.free = plain
		}
		d.off = d.free - plain
		if k := f.Bilge(); k >= 0 {
			d.bilge = r.Section.Face(r.Stringers[k], r.Thickness/2).X
		}
		if wider, deeper := handwork.Opened(r); wider > 0 {
			d.deeper = deeper / wider
		}
		f.ribs = append(f.ribs, d)
	}
	f.at = append(f.at, fore)
	return f, nil
}

// Rail is how much more a straightedge over the gunwales reads than a rib is deep, mm: the
// gunwale's height, less half the rib's thickness.
func (f *Frame) Rail() float64 {
	d := f.Frame.Design
	return float64(d.Gunwale.Height)*math.Cos(float64(d.Gunwale.Tilt)) - float64(d.Ribs.Thickness)/2
}

// Bilge is the number of the stringer, from 0 at the keel, at whose mark a rib's breadth is
// measured to either side: where the rib nearest midship is steepest about halfway up;
// -1 without stringers.
func (f *Frame) Bilge() int {
	r := f.Frame.Ribs[f.TestRib()]
	best, apart := -1, math.Inf(1)
	for k, along := range r.Stringers {
		if _, heading := r.Section.Half.At(along); math.Abs(heading-math.Pi/4) < apart {
			best, apart = k, math.Abs(heading-math.Pi/4)
		}
	}
	return best
}

// Measures are what a card holds of a rib, in this order.
const (
	Beam = iota
	Depth
	Blank
	Free
	Hot
	BilgePort
	BilgeStarboard
	Moisture
	Steam
	measures
)

// Drawn is what the drawing has for a measure of rib i, mm; NaN where it has none.
func (f *Frame) Drawn(i, measure int) float64 {
	d := f.ribs[i]
	switch measure {
	case Beam:
		return d.beam
	case Depth:
		return d.depth
	case Blank:
		return d.blank
	case Free:
		return d.free
	case Hot:
		return d.hot
	case BilgePort, BilgeStarboard:
		if d.bilge > 0 {
			return d.bilge
		}
	}
	return math.NaN()
}

// Row is one rib of a card. What was not measured is NaN.
type Row struct {
	Line   int
	Rib    int // from aft
	Is     [measures]float64
	Broken bool
	less   float64 // that was taken off what is written as its depth
}

// Stands reports whether the rib stands in the boat, measured.
func (r Row) Stands() bool {
	return !r.Broken && !(math.IsNaN(r.Is[Beam]) && math.IsNaN(r.Is[Depth]))
}

// Report is what the measures come to.
type Report struct {
	*Frame
	Ribs      []Rib       // that are on the card, from aft forward
	Remaining []Remaining // that do not stand yet, from midship outward
	Spring    Springback
	Common    Common // how much deeper ribs come out here than their bend and length explain
	Rests     []Rest // that, rib by rib, where depth and free width were measured
	Off       Off    // the whole frame
	bent      []Bend // see Bends
	Kept      []Kept // beam and depth of every rib as they are or shall come, off the drawing
}

// Kept is how far a rib is off the drawing in the boat as it will be, mm.
type Kept struct{ Beam, Depth float64 }

// Of judges the measures of a card, which Read has checked. The order of its rows does not
// matter.
func (f *Frame) Of(card []Row) *Report {
	card = slices.Clone(card)
	slices.SortStableFunc(card, func(a, b Row) int { return a.Rib - b.Rib })
	r := &Report{Frame: f}
	r.learn(card)
	r.bends(card)
	r.resolve(card)
	r.judge(card)
	r.sum()
	return r
}

// name is the rib's.
func (f *Frame) name(i int) string { return f.Frame.Ribs[i].Name }
