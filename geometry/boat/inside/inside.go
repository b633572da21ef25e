// Package inside is what is fitted in a boat for the people in it: floor slats under
// them, a backrest behind them and a footbrace at the length of their leg. Units: mm, kg.
package inside

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
)

// Fit is all of it.
type Fit struct {
	Wood   string
	Floors []Floor // from aft forward
	Braces []Brace // a row for each person who has one, in the order of the crew
	Backs  []Back
}

// Boat is what people and their fittings are in: a finished frame, or a sketch of one.
type Boat struct {
	Design  *design.Design
	Hull    *hull.Hull
	Gunwale seat.Gunwale
	Ribs    []Rib // from aft forward
	Seats   []seat.Seat
}

// Rib is one that floor slats may lie on.
type Rib struct {
	Name string
	hull.Section
}

// Of works out what the design of a frame has inside.
func Of(f *frame.Frame) Fit { return framed(f).Fit() }

func framed(f *frame.Frame) Boat {
	b := Boat{Design: f.Design, Hull: f.Hull, Gunwale: &f.Gunwale, Seats: f.Seats}
	for _, r := range f.Ribs {
		b.Ribs = append(b.Ribs, Rib{r.Name, r.Section})
	}
	return b
}

// Fit works out what a boat has inside.
func (f Boat) Fit() Fit {
	d := f.Design
	out := Fit{Wood: d.InsideWood()}
	out.floors(f)
	for _, p := range d.Crew {
		w := placed(d, p)
		if d.Inside.Backrest && w.leans {
			out.Backs = append(out.Backs, back(f, p, w))
		}
		if d.Inside.Footbrace && w.braces {
			if b, ok := brace(f, p, w); ok {
				b.Across = out.clear(b)
				b.Lean = f.lean(b)
				out.Braces = append(out.Braces, b)
			}
		}
	}
	return out
}

// flat is how far from the middle line a rib's upper face has risen by so much, mm.
func (f Boat) flat(r Rib, by float64) float64 {
	return f.upper(r, func(face curve.Chain) float64 { return face.Until(by, -math.Pi/2) }).X
}

// faceAt is the place of a rib's upper face so far from the middle line.
func (f Boat) faceAt(r Rib, across float64) geometry.Point {
	return f.upper(r, func(face curve.Chain) float64 { return face.Until(across, 0) })
}

// upper is a place of a rib's upper face, told by the length along it; the keel's of a rib
// bent so hard that it has no upper face.
func (f Boat) upper(r Rib, along func(face curve.Chain) float64) geometry.Point {
	in := float64(f.Design.Ribs.Thickness) / 2
	face, err := r.Half.Offset(in)
	if err != nil {
		face = nil
	}
	p, _ := face.At(along(face))
	return p.Add(geometry.Point{Y: r.KeelZ + in})
}

// nearest returns the rib nearest to a station.
func (f Boat) nearest(x float64) Rib {
	best := f.Ribs[0]
	for _, r := range f.Ribs {
		if math.Abs(r.Station-x) < math.Abs(best.Station-x) {
			best = r
		}
	}
	return best
}
