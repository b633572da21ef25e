package pattern

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// ground is a piece of wood on which lettering finds a place: clear of its edges, of every
// hole and cross, and of other words.
type ground struct {
	wood  []geometry.Point // its outline
	taken []geometry.Point // what is drawn, a point every millimeter
}

// off is how far words keep from what is drawn, mm.
const off = 0.8

func newGround(wood curve.Path) *ground {
	g := &ground{wood: wood.Flatten(0.1)}
	g.line(wood)
	return g
}

// line takes what a line covers.
func (g *ground) line(p curve.Path) {
	pts := p.Flatten(0.1)
	for i := 1; i < len(pts); i++ {
		n := max(1, int(math.Ceil(pts[i].Sub(pts[i-1]).Norm())))
		for k := range n + 1 {
			g.taken = append(g.taken, pts[i-1].Lerp(pts[i], float64(k)/float64(n)))
		}
	}
}

// block takes what words cover that begin at a place and run so wide at an angle, from so
// far under their line to so far over it.
func (g *ground) block(at geometry.Point, angle, wide, low, high float64) {
	along, up := geometry.Polar(1, angle), geometry.Polar(1, angle+math.Pi/2)
	for x := 0.0; x < wide+1; x++ {
		for y := low; y < high+1; y++ {
			g.taken = append(g.taken, at.Add(along.Scale(math.Min(x, wide))).Add(up.Scale(math.Min(y, high))))
		}
	}
}

// text takes what a line of lettering covers.
func (g *ground) text(t layout.Text) {
	g.block(t.Start(), t.Angle, lettering.Width(t.Words, t.Height), -0.3*t.Height, t.Height)
}

// drawing takes all that a drawing holds.
func (g *ground) drawing(d *layout.Drawing) {
	for _, s := range d.Strokes {
		g.line(s.Path)
	}
	for _, t := range d.Texts {
		g.text(t)
	}
}

// free reports whether such a block lies on the wood and covers nothing.
func (g *ground) free(at geometry.Point, angle, wide, low, high float64) bool {
	sin, cos := math.Sincos(angle)
	for _, p := range g.taken {
		d := p.Sub(at)
		if x, y := d.X*cos+d.Y*sin, d.Y*cos-d.X*sin; x > -off && x < wide+off && y > low-off && y < high+off {
			return false
		}
	}
	return curve.Holds(g.wood, at.Add(geometry.Polar(wide/2, angle)))
}

// first returns the first of some texts that covers nothing, and takes its place; the very
// first where none is free.
func (g *ground) first(all ...layout.Text) layout.Text {
	best := all[0]
	for _, t := range all {
		if g.free(t.Start(), t.Angle, lettering.Width(t.Words, t.Height), -0.3*t.Height, t.Height) {
			best = t
			break
		}
	}
	g.text(best)
	return best
}

// spot is a place for a block of words: where its first line begins, and the angle.
type spot struct {
	at    geometry.Point
	angle float64
}

// wish is a way to lay a block that is looked at: where its middle lies, how often it is
// turned from its best angle, and what that costs in mm of way.
type wish struct {
	mid   geometry.Point
	turns int
	cost  float64
}

const (
	placeStep = 4.0          // between places that are tried, mm
	placeTurn = math.Pi / 12 // between angles that are tried
	perTurn   = 6.0          // mm of way that a turn is worth
	mostTurns = 12           // to either side
	lot       = 8.0          // mm of way whose places are put in order together
)

// place finds room for a block as near to a point as can be, best at the given angle. ok
// is false where the wood has no room for it.
func (g *ground) place(near geometry.Point, angle, wide, low, high float64) (spot, bool) {
	var all []wish // without a turn
	box, dearest := geometry.Around(g.wood...), 0.0
	for x := box.Min.X; x < box.Max.X; x += placeStep {
		for y := box.Min.Y; y < box.Max.Y; y += placeStep {
			mid := geometry.Point{X: x, Y: y}
			way := mid.Sub(near).Norm()
			all, dearest = append(all, wish{mid: mid, cost: way}), math.Max(dearest, way+mostTurns*perTurn)
		}
	}
	for from := 0.0; from <= dearest; from += lot { // words find room before most are looked at
		for _, w := range costing(all, angle, from, from+lot) {
			a := angle + placeTurn*float64(w.turns)
			at := w.mid.Sub(geometry.Polar(wide/2, a)).Sub(geometry.Polar((low+high)/2, a+math.Pi/2))
			if curve.Holds(g.wood, w.mid) && g.free(at, a, wide, low, high) {
				return spot{at, a}, true
			}
		}
	}
	return spot{}, false
}

// costing lists what costs at least from and less than to, cheapest first, with all turns
// of some places that leave words upright.
func costing(all []wish, angle, from, to float64) []wish {
	var out []wish
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
