package nest

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/layout"
	"ribwright/layout/plate/split"
)

// TooLarge is a part that no sheet of the stock has room for.
type TooLarge struct {
	Part   string
	W, H   float64 // of its box as it must lie, mm
	Stock  Stock
	Takes  Stock // the least stock that has room for it
	Pieces int   // in how many it could be made, 0 when no scarf helps
	Why    error // why splitting does not help, when it was asked for
}

func (e *TooLarge) Error() string {
	words := fmt.Sprintf("%s is %.1f x %.1f mm as its grain must lie and has no room on stock of %v; accepted: stock of at least %v", e.Part, e.W, e.H, e.Stock, e.Takes)
	if e.Why != nil {
		words += "; it cannot be split: " + e.Why.Error()
	}
	return words
}

const mostPieces = 6

// fitting returns the parts, each of which some sheet has room for, in pieces
// where that is asked for and needed.
func (o Options) fitting(parts []layout.Part) ([]layout.Part, error) {
	var out []layout.Part
	usual := o
	for _, p := range parts {
		o := usual
		if o.ByThickness {
			o = o.on(p)
		}
		if p.Blank != nil && !o.fits(p) {
			p.Blank = nil
		}
		if o.fits(p) {
			out = append(out, p)
			continue
		}
		pieces, why := o.pieces(p)
		if !o.Split || why != nil {
			e := o.tooLarge(p)
			e.Pieces = len(pieces)
			if o.Split {
				e.Why = why
			}
			return nil, e
		}
		out = append(out, pieces...)
	}
	return out, nil
}

// boxes calls f with the size of the part's box at every angle it may lie at.
func (o Options) boxes(p layout.Part, f func(w, h float64)) {
	s := newShape(p, rough)
	for _, a := range turnsOf(p, o.Stock.Grain()) {
		b := s.mapped(geometry.Turn(a)).box
		f(b.W(), b.H())
	}
}

// rim is what is kept free of the room for rounding, mm.
const rim = 0.05

func (o Options) fits(p layout.Part) bool {
	ok, room := false, o.room()
	o.boxes(p, func(w, h float64) { ok = ok || w <= room.X-rim && h <= room.Y-rim })
	return ok
}

// pieces splits a part into as few pieces as fit.
func (o Options) pieces(p layout.Part) (out []layout.Part, why error) {
	for n := 2; n <= mostPieces; n++ {
		if out, why = split.Part(p, n); why != nil {
			continue
		}
		if !slices.ContainsFunc(out, func(q layout.Part) bool { return !o.fits(q) }) {
			return out, nil
		}
	}
	if why == nil {
		why = fmt.Errorf("even %d pieces are too large", mostPieces)
	}
	return nil, why
}

// tooLarge says how large the part is as it must lie, and what stock takes it.
func (o Options) tooLarge(p layout.Part) *TooLarge {
	e := &TooLarge{Part: p.Name, Stock: o.Stock}
	over := math.Inf(1)
	room := o.room()
	o.boxes(p, func(w, h float64) {
		if more := math.Max(w-room.X, h-room.Y); more < over {
			over, e.W, e.H = more, w, h
		}
	})
	// The stock's longer side is where its grain runs.
	least := func(v float64) float64 { return math.Ceil(v + 2*o.Gap + rim) }
	e.Takes = Stock{math.Max(o.Stock.W, least(e.W)), math.Max(o.Stock.H, least(e.H))}
	if o.Stock.Grain() == 0 {
		e.Takes.W = math.Max(e.Takes.W, e.Takes.H+1)
	} else {
		e.Takes.H = math.Max(e.Takes.H, e.Takes.W)
	}
	return e
}
