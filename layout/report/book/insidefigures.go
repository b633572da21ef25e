package book

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/inside"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/report"
)

// slatFigure is a slat between two battens, lashed to the rib beside both, from the end of the
// boat: the rib is taken for straight.
func (w *writer) slatFigure(fl inside.Floor) report.Figure {
	d := w.Frame.Design
	rib, turn := float64(d.Ribs.Thickness), 2*inside.CordWide
	apart := fl.Wide + 60 // between the battens' edges: enough to tell them from the slat
	per := jointScale(apart+140, fl.Thick+rib+60, report.Wide-50, 60)
	s := newSketch("slat", "Floor slat", per)
	edge := apart / 2
	s.box(layout.Cut, -edge-50, -rib, edge+50, 0)
	s.box(layout.Cut, -fl.Wide/2, 0, fl.Wide/2, fl.Thick)
	for _, b := range []struct {
		side, wide, deep float64
		words            string
	}{{-1, float64(d.Keel.Width), float64(d.Keel.Depth), "keel"}, {1, float64(d.Stringers.Width), float64(d.Stringers.Depth), "stringer"}} {
		s.box(layout.Cut, b.side*edge, -rib-b.deep, b.side*(edge+b.wide), -rib)
		s.note(b.side*(edge+b.wide/2), -rib-b.deep, 0, -4, layout.Middle, b.words)
		s.path(layout.Mark, curve.Polyline(geometry.Pt(b.side*(fl.Wide/2+turn), 0), geometry.Pt(b.side*(edge-turn), 0), geometry.Pt(b.side*(edge-turn), -rib-turn/2), geometry.Pt(b.side*(edge-turn-4), -rib-turn/2), geometry.Pt(b.side*(edge-turn-4), 0)))
	}
	top := fl.Thick + turn/2
	s.path(layout.Mark, curve.Polyline(geometry.Pt(-fl.Wide/2-turn, 0), geometry.Pt(-fl.Wide/2, top), geometry.Pt(fl.Wide/2, top), geometry.Pt(fl.Wide/2+turn, 0)))
	s.note(0, top, 0, 3, layout.Middle, "cord over the slat and back")
	s.note(edge+50, 0, 2, -3, layout.Left, "rib")
	return report.Figure{Drawing: s.settled(),
		Caption: fmt.Sprintf("A slat between the keel and a stringer, %s, seen along the boat: the cord goes round the rib beside the one, over the slat, round the rib beside the other and back over the slat, where it is hauled taut and tied.", times(per)),
		About:   "A slat on a rib between the keel and a stringer, with a loop of cord from beside the one over the slat to beside the other."}
}

// braceFigure is a footbrace from above and, under that, from the side, forward to the right.
func (w *writer) braceFigure(b inside.Brace) report.Figure {
	per := scaleFor(b.Rail+80, b.Bar+b.RailTall+b.Tall+100, 120, 130)
	s := newSketch("footbrace", "Footbrace", per)
	face, knee, hole := b.At+b.Thick, b.KneeAcross(), b.HoleAt
	s.box(layout.Cut, b.At, -b.Bar/2, face, b.Bar/2)
	for _, side := range []float64{-1, 1} {
		s.box(layout.Cut, b.RailAft, side*b.Across-b.RailWide/2, b.RailAft+b.Rail, side*b.Across+b.RailWide/2)
		s.box(layout.Cut, face, side*knee-b.RailWide/2, face+inside.Knee, side*knee+b.RailWide/2)
		s.line(layout.Center, hole, side*(knee-b.RailWide), hole, side*(b.Across+b.RailWide))
	}
	s.line(layout.Center, b.RailAft-20, 0, b.RailAft+b.Rail+20, 0)
	left := b.RailAft/per - 5
	s.up(0, b.Across, left, w.Fine(b.Across))
	s.up(0, knee, (b.At-25)/per, w.Fine(knee))
	s.up(-b.Bar/2, b.Bar/2, (b.RailAft+b.Rail)/per+6, w.Fine(b.Bar))
	s.across(face, hole, b.Bar/2/per+4, w.Fine(hole-face))
	down := -b.Bar/2 - (b.Tall + b.RailTall + 40)
	s.box(layout.Cut, b.RailAft, down, b.RailAft+b.Rail, down+b.RailTall)
	s.box(layout.Cut, b.At, down+b.RailTall, face, down+b.RailTall+b.Tall)
	foot := down + b.KneeFoot
	s.path(layout.Mark, curve.Polygon(geometry.Pt(face, foot), geometry.Pt(face+inside.Knee, foot), geometry.Pt(face, foot+inside.Knee)))
	for i := range inside.Holes {
		s.path(layout.Cut, curve.Circle(geometry.Pt(hole+inside.Step*(float64(i)-float64(inside.Holes-1)/2), down+b.HoleUp), inside.Peg/2))
	}
	right := (b.RailAft + b.Rail) / per
	s.up(down, down+b.HoleUp, right+4, w.Fine(b.HoleUp))
	s.up(down, down+b.RailTall, right+16, w.Fine(b.RailTall))
	s.up(down+b.RailTall, down+b.RailTall+b.Tall, (b.At-12)/per, w.Fine(b.Tall))
	s.across(b.RailAft, b.RailAft+b.Rail, down/per-6, w.Fine(b.Rail))
	return report.Figure{Drawing: s.settled(),
		Caption: fmt.Sprintf("Footbrace, %s, from above and from the side, forward to the right: the board stands on both rails, a knee stands against the inboard side of each, and a peg goes level through rail and knee.", ratio(per)),
		About:   "A footbrace from above and from the side with the sizes of board, rails, knees and the places of the pegs."}
}

// Slots of a backrest's bars, mm: as long as webbing is wide and a little more.
const (
	slotLong, slotWide = 28.0, 5.0
	slotIn             = 30.0 // the nearer slot's middle from a bar's end
	slotApart          = 30.0 // the farther one from it
)

// backFigure is a backrest seen from ahead, with its webbing dashed.
func (w *writer) backFigure(b inside.Back) report.Figure {
	per := scaleFor(b.Gunwale+20, b.Tall+120, 140, 70)
	s := newSketch("backrest", "Backrest", per)
	half := b.Across / 2
	rail := w.Frame.Gunwale.At(b.RibAt, 0, 0).Z - b.Floor - b.Low
	for _, low := range []float64{0, b.Tall - b.Bar} {
		s.box(layout.Cut, -half, low, half, low+b.Bar)
		for _, side := range []float64{-1, 1} {
			for _, x := range []float64{half - slotIn, half - slotIn - slotApart} {
				s.box(layout.Mark, side*x-slotWide/2, low+b.Bar/2-slotLong/2, side*x+slotWide/2, low+b.Bar/2+slotLong/2)
			}
			s.line(layout.Guide, side*(half-slotIn), low+b.Bar/2, side*b.Gunwale/2, rail)
		}
	}
	s.across(-half, half, -6, w.Length(b.Across))
	s.across(-b.Gunwale/2, b.Gunwale/2, rail/per+4, w.Length(b.Gunwale)+" between the gunwales")
	s.up(0, b.Tall, -half/per-5, w.Length(b.Tall))
	s.up(b.Tall-b.Bar, b.Tall, half/per+3, w.Length(b.Bar))
	return report.Figure{Drawing: s.settled(),
		Caption: fmt.Sprintf("Backrest, %s, seen from ahead: two bars with their slots; dashed the webbing to the loops on rib %s, close under the gunwales.", ratio(per), b.Rib),
		About:   "The two bars of a backrest with slots and the webbing that they hang by."}
}

// inTheWay warns of gear that the design has where a footbrace and the feet are.
func (w *writer) inTheWay() {
	for _, b := range w.Bend.Inside.Braces {
		for _, g := range w.Frame.Design.Gear {
			if at := float64(g.At); math.Abs(at-b.HoleAt) < inside.Step*(inside.Holes-1)/2+inside.Knee {
				w.warn(fmt.Sprintf("%s is reckoned %s, where feet and footbrace are: stow it close forward of the rails, tied down. The boat's trim hardly changes by it.", g.Name, w.Station(at)), "our own choice")
			}
		}
	}
}
