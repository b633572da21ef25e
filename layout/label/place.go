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
	l := lattice{apart(r.Within.Min.X, r.Within.Max.X), apart(r.Within.Min.Y, r.Within.Max.Y), near}
	dearest := l.farthest() + mostTurns*perTurn
	var some []wish
	for from := 0.0; from <= dearest; from += lot { // words find room before most are looked at
		some = l.costing(some[:0], b.Angle, from, from+lot)
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

// lattice is the columns and rows where the middle of a block is tried, and where it is wished.
type lattice struct {
	xs, ys []float64
	near   geometry.Point
}

// apart lists what lies from one value up to another, a step apart.
func apart(from, to float64) (out []float64) {
	for v := from; v < to; v += placeStep {
		out = append(out, v)
	}
	return out
}

// farthest is the longest way to a place, mm; 0 where there is none.
func (l lattice) farthest() float64 {
	if len(l.xs) == 0 || len(l.ys) == 0 {
		return 0
	}
	off := func(at float64, all []float64) float64 {
		return max(math.Abs(all[0]-at), math.Abs(all[len(all)-1]-at))
	}
	return math.Hypot(off(l.near.X, l.xs), off(l.near.Y, l.ys))
}

// costing adds to out what costs at least from and less than to, cheapest first, with all turns
// that leave words upright.
func (l lattice) costing(out []wish, angle, from, to float64) []wish {
	for _, x := range l.xs {
		if math.Abs(x-l.near.X) >= to {
			continue
		}
		for _, y := range l.ys {
			if math.Abs(y-l.near.Y) >= to {
				continue
			}
			mid := geometry.Point{X: x, Y: y}
			way := mid.Sub(l.near).Norm()
			if way >= to || way+mostTurns*perTurn < from {
				continue
			}
			for k := -mostTurns; k <= mostTurns; k++ {
				cost, a := way+perTurn*math.Abs(float64(k)), angle+placeTurn*float64(k)
				if cost >= from && cost < to && a >= -math.Pi/2-1e-9 && a <= math.Pi/2+1e-9 {
					out = append(out, wish{mid, k, cost})
				}
			}
		}
	}
	slices.SortStableFunc(out, func(a, b wish) int { return cmp.Compare(a.cost, b.cost) })
	return out
}
