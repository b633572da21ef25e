package spreader

import (
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
)

// Stick is the most that a spreader's stick is thick along the boat, mm: a gunwale runs through
// its notch aslant. Common practice, no source.
const Stick = 20.0

// What stands beside a stick, mm. Common practice, no source.
const (
	chuck   = 25.0 // from the middle of a drill to whatever its chuck and a hand must clear
	bolt    = 10.0 // from the middle of a bolt to what its washer and a finger must clear
	webbing = 25.0 // a strap's width
	cord    = 10.0 // a windlass of cord, its turns side by side
	beside  = 3.0  // between a strap and what it may not lie on
)

// Strap is where a strap or a windlass that draws the gunwales together lies round them: along
// the stock from the middle of the stick, forward positive, mm.
type Strap struct {
	Off  float64 // its middle; 0 where no place within reach is free
	Wide float64 // what it may be wide: webbing, or cord where that alone finds room
}

// reach fills in what a stick across the gunwales keeps from being done while it stands. It has
// a notch as deep as a gunwale is tall, so that it covers the inner faces where it lies.
func (s *Spreader) reach(g *frame.Gunwale, cross []frame.Thwart) {
	if s.Holds == Idle {
		return // no stick is set
	}
	for _, m := range g.Mortises {
		if math.Abs(m.FromMidship-s.Along) < Stick/2+chuck {
			s.Waits = append(s.Waits, m.Rib)
		}
	}
	for _, c := range cross {
		under := func(at float64) bool { return math.Abs(at-s.Along) < Stick/2+bolt }
		if slices.ContainsFunc(c.BoltsOn(g), under) {
			s.Over = append(s.Over, c.Name)
		}
	}
	if s.Holds == Together {
		s.Strap = s.strap(g, cross)
	}
}

// strap finds the place next to the stick where a strap lies on no mortise and under no cross
// piece; of two as near, the after one.
func (s *Spreader) strap(g *frame.Gunwale, cross []frame.Thwart) Strap {
	const farthest = 100.0 // from there the stick's inner walls no longer set the width; our own choice
	for _, wide := range []float64{webbing, cord} {
		for off := math.Ceil(Stick/2 + wide/2 + 1); off <= farthest; off++ {
			for _, side := range []float64{-1, 1} {
				if at := s.Along + side*off; clear(g, cross, at, wide/2+beside) {
					return Strap{Off: side * off, Wide: wide}
				}
			}
		}
	}
	return Strap{}
}

// clear reports whether nothing that must stay free reaches within so much of a place on the
// stock: no mortise, and no cross piece, which is fitted while the strap still holds.
func clear(g *frame.Gunwale, cross []frame.Thwart, at, within float64) bool {
	for _, m := range g.Mortises {
		if math.Abs(m.FromMidship-at) < m.Length/2+within {
			return false
		}
	}
	for _, c := range cross {
		b := c.Outline.Bounds()
		if g.OnStock(c.At+b.Min.Y) < at+within && g.OnStock(c.At+b.Max.Y) > at-within {
			return false
		}
	}
	return true
}
