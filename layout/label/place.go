package label

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

// OnWood is how far words keep from what is drawn on a piece of wood, its edge too, mm.
const OnWood = 0.8

const (
	placeStep = 4.0          // between places that are tried for a block on wood, mm
	placeTurn = math.Pi / 12 // between angles that are tried
	perTurn   = 6.0          // mm of way that a turn is worth
	mostTurns = 12           // to either side
	lot       = 8.0          // mm of way whose places are put in order together
)

// On is the room on a piece of wood, inside its outline and clear of it.
func On(outline curve.Path) *Room {
	r := &Room{Within: outline.Bounds(), wood: outline.Flatten(chord)}
	r.Line(outline)
	return r
}

// Drawing takes all that a drawing holds.
func (g *Ground) Drawing(d *layout.Drawing) {
	for _, s := range d.Strokes {
		g.Line(s.Path)
	}
	for _, t := range d.Texts {
		g.Text(t)
	}
}

// Free reports whether a block lies in the room and keeps off all that is there.
func (r *Room) Free(b Block) bool {
	off := Off
	if r.wood != nil {
		off = OnWood
	}
	return r.Holds(b) && r.Clear(b, off)
}

// First returns the first of some texts that is free, and takes its place; the very first
// where none is.
func (r *Room) First(all ...layout.Text) layout.Text {
	best := all[max(0, slices.IndexFunc(all, func(t layout.Text) bool { return r.Free(BlockOf(t)) }))]
	r.Text(best)
	return best
}

// wish is a way to lay a block that is looked at: where its middle lies, how often it is
// turned from its best angle, and what that costs in mm of way.
type wish struct {
	mid   geometry.Point
	turns int
	cost  float64
}

// Place lays a block with its middle as near to a point as can be, best at the block's own
// angle. ok is false where the room has no place for it. Nothing is taken.
func (r *Room) Place(b Block, near geometry.Point) (placed Block, ok bool) {
	across, up := int(r.Within.W()/placeStep)+1, int(r.Within.H()/placeStep)+1
	all := make([]wish, 0, across*up) // without a turn
	dearest := 0.0
	for x := r.Within.Min.X; x < r.Within.Max.X; x += placeStep {
		for y := r.Within.Min.Y; y < r.Within.Max.Y; y += placeStep {
			mid := geometry.Point{X: x, Y: y}
			way := mid.Sub(near).Norm()
			all, dearest = append(all, wish{mid: mid, cost: way}), math.Max(dearest, way+mostTurns*perTurn)
		}
	}
	var some []wish
	for from := 0.0; from <= dearest; from += lot { // words find room before most are looked at
		some = costing(some[:0], all, b.Angle, from, from+lot)
		for _, w := range some {
			c := b
			c.Angle = b.Angle + placeTurn*float64(w.turns)
			c.At = w.mid.Sub(geometry.Polar(b.Wide/2, c.Angle)).Sub(geometry.Polar((b.Low+b.High)/2, c.Angle+math.Pi/2))
			if r.Free(c) {
				return c, true
			}
		}
	}
	return b, false
}

// costing adds to out what costs at least from and less than to, cheapest first, with all turns
// of some places that leave words upright.
func costing(out, all []wish, angle, from, to float64) []wish {
	for _, w := range all {
		if w.cost >= to || w.cost+mostTurns*perTurn < from {
			continue
		}
		for k := -mostTurns; k <= mostTurns; k++ {
			cost, a := w.cost+perTurn*math.Abs(float64(k)), angle+placeTurn*float64(k)
			if cost >= from && cost < to && a >= -math.Pi/2-1e-9 && a <= math.Pi/2+1e-9 {
				out = append(out, wish{w.mid, k, cost})
			}
		}
	}
	slices.SortStableFunc(out, func(a, b wish) int { return cmp.Compare(a.cost, b.cost) })
	return out
}
