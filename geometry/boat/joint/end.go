package joint

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
)

// End is where both gunwales end on a stem's shelf: beveled to it, and lashed to the stem
// through a hole in each and one under the shelf.
type End struct {
	Joint
	End      string
	At       geometry.Point // of the hole in the stem, on its pattern
	Under    float64        // from the shelf down to it, square to the shelf
	FromHorn float64        // from the horn along the shelf to it
	Drill    float64        // of all three holes
	FromEnd  float64        // of a gunwale's hole from its end, along its inner face
	Up       float64        // of it from the underside
	Edge     float64        // least wood from the hole's middle to the stem's edge and to other holes
	Wants    float64
}

func (m *maker) end(e stemAt, outline outline, bored Landing) End {
	g, u := &m.Frame.Gunwale, m.Usual
	const more = 6 // turns: this lashing holds what nothing else does until the breasthook is in
	out := End{End: e.End, Drill: u.cordHole(more)}
	inner, horn := e.Shelf[0], e.Shelf[1]
	out.Wants = u.PegEdge * out.Drill
	along := horn.Sub(inner)
	down := geometry.Polar(1, math.Atan2(along.Y, along.X)-math.Pi/2)
	free := func(p geometry.Point) float64 { return min(outline.edgeTo(p), bored.wallTo(p)) }
	// As near the shelf as the wood over it allows, and clear of all edges and of the stringers'
	// holes: no more room than enough counts, and where that is found the search is over.
	best := math.Inf(-1)
	for under := out.Wants; under <= out.Wants+20 && best+0.01 < out.Wants+1; under++ {
		for share := 0.0; share <= 1; share += 0.05 {
			p := inner.Add(along.Scale(share)).Add(down.Scale(under))
			if room := math.Min(free(p), out.Wants+1); room > best+0.01 {
				best, out.At, out.Under, out.FromHorn = room, p, under, along.Norm()*(1-share)
			}
		}
	}
	out.Edge = free(out.At)
	out.FromEnd = math.Max(math.Ceil(u.PegEnd*out.Drill), math.Round(out.FromHorn))
	out.Up = math.Round(math.Max(u.PegEdge*out.Drill, (g.Height-float64(m.Frame.Design.Breasthook.Thickness))/2))
	out.Joint = Joint{Name: "gunwales to stem, " + e.End, Count: 1, Turns: more,
		Cord: more*2*(e.Thickness+g.Width+out.Up+out.Under) + Tails}
	return out
}

// Hook is a breasthook between the gunwale ends: glued, and pegged through each gunwale
// into its edge. Pegs go in square to the gunwale's outer face, so that they stay as far under
// its edge as they start, and climb in a plate whose sides lean outward.
type Hook struct {
	Joint
	End     string
	FromEnd []float64        // of the pegs, from the gunwales' ends along their inner faces
	At      []geometry.Point // where they enter the plate, on its pattern, on the side where y is negative
	Out     []geometry.Point // outward there, square to the plate's edge, of length 1
	Line    []geometry.Point // that edge, from the nose inward
	Down    float64          // from the gunwale's upper edge to a peg's middle, on either face
	Into    float64          // how deep a peg goes into the plate: short of its faces, of the middle line, where it would meet its twin, and of the painter's hole
	Lean    float64          // of the plate's sides outward at the top, radians
	Edge    float64          // least wood from a peg's middle to a face of the plate or the gunwale's edge, in diameters
	Short   string           // where that is less than it should be: what cures it
	Bears   float64          // of all pegs of one side, across the boat or along it, until they shear or dent the wood round them, N
}

func (m *maker) hook(h frame.Breasthook) Hook {
	u, d := m.Usual, m.Frame.Design
	out, peg, length := pegged(u, h)
	n := len(out.FromEnd)
	gunwale := m.wood(d.Gunwale.Species)
	p := m.peg(peg)
	out.Bears = float64(n) * math.Min(u.Shears(p, gunwale), math.Min(p.CrushesAlong(gunwale, m.Frame.Gunwale.Width), p.CrushesAlong(m.wood(d.Breasthook.Species), out.Into)))
	out.Joint = Joint{Name: "breasthook to gunwales, " + h.End, Count: 1, Glue: 2 * length * h.Thickness,
		Fastener: Fastener{"peg", m.pegName(), peg, m.Frame.Gunwale.Width + out.Into, 2 * n}}
	return out
}

// pegged chooses the pegs of a breasthook and places them along its edge, whose length it
// returns too: as thick as the plate allows, and thinner where they would go into it by
// less than four diameters or stand too near a face.
func pegged(u Usual, h frame.Breasthook) (out Hook, peg, length float64) {
	side := edgeLine(h)
	length = side.length()
	plate := outlineOf(h.Outline.Flatten(0.05))
	for peg = u.PegFor(h.Thickness, u.LeastPeg, u.PegWide); ; peg -= 0.5 {
		out = pegsOf(u, h, peg, side, plate)
		if ok := out.Into >= u.PegEnd*peg && out.Edge >= u.PegEdge; ok || peg-0.5 < u.LeastPeg {
			if !ok {
				least := 2*u.PegEdge*peg + u.PegEnd*peg*math.Abs(math.Sin(h.Bevel))
				out.Short = fmt.Sprintf("a peg of %.0f mm stands %.1f mm from an edge, %.0f mm are wanted; give breasthook.thickness %.0f mm", peg, out.Edge*peg, u.PegEdge*peg, math.Ceil(least+0.5))
			}
			return out, peg, length
		}
	}
}

// lie finds how far down pegs of a diameter stand that go so deep into the plate, midway
// between where they would come too near its faces.
func (h *Hook) lie(u Usual, plate frame.Breasthook, peg float64) {
	sin, cos := math.Sincos(plate.Bevel)
	want, rise := u.PegEdge*peg, h.Into*sin
	lo, hi := math.Max(want, (want+math.Max(0, rise))/cos), (plate.Thickness-want+math.Min(0, rise))/cos
	h.Down = math.Round(lo+hi) / 2
	in := h.Down * cos // where it enters, under the upper face
	under := plate.Thickness - math.Max(in, in-rise)
	h.Edge = math.Min(math.Min(h.Down, under), math.Min(in, in-rise)) / peg
}

// Reach is how far a peg's end lies inward of the edge of the plate's upper face, mm.
func (h *Hook) Reach() float64 { return h.Down*math.Sin(h.Lean) + h.Into*math.Cos(h.Lean) }

// pegsOf places pegs of a diameter along the edge of a breasthook.
func pegsOf(u Usual, h frame.Breasthook, peg float64, side edge, plate outline) Hook {
	length := side.length()
	out := Hook{End: h.End, Line: side.pts, Lean: h.Bevel, Into: math.Ceil(u.PegInHook * peg)}
	out.lie(u, h, peg)
	// Clear of the lashing near the ends, and four diameters and more from the plate's
	// inner end.
	from, to := math.Max(0.25*length, 25), length-math.Max(3*u.PegEnd*peg/2, 12)
	// The plate is hollow there: all of a peg must lie in wood.
	inside := func(s float64) bool {
		return plate.edgeTo(side.at(s).Sub(side.outward(s).Scale(out.Reach()))) >= u.PegEdge*peg
	}
	for to > length/2 && !inside(to) {
		to--
	}
	n := 3
	if to-from < 4*u.PegEnd*peg {
		n, from = 2, math.Min(from, to)
	}
	for i := range n {
		s := math.Round(from + (to-from)*float64(i)/float64(n-1))
		out.FromEnd = append(out.FromEnd, s)
		out.At, out.Out = append(out.At, side.at(s)), append(out.Out, side.outward(s))
	}
	for out.Into > 1 && !(out.Edge >= u.PegEdge && out.apart(h, u.PegEdge*peg)) {
		out.Into--
		out.lie(u, h, peg)
	}
	return out
}

// apart reports whether all pegs stay so far from the middle line of the plate, and from
// the edge of the painter's hole.
func (h *Hook) apart(plate frame.Breasthook, off float64) bool {
	for i, at := range h.At {
		tip := at.Sub(h.Out[i].Scale(h.Reach()))
		if tip.Y > -off {
			return false
		}
		if plate.Painter > 0 {
			hole := geometry.Point{X: -plate.Painter}
			near := math.Min(h.Reach(), math.Max(0, at.Sub(hole).X*h.Out[i].X+at.Sub(hole).Y*h.Out[i].Y))
			if at.Sub(h.Out[i].Scale(near)).Sub(hole).Norm() < frame.PainterHole/2+off {
				return false
			}
		}
	}
	return true
}

// edge is one edge of a breasthook from its nose inward.
type edge struct {
	pts   []geometry.Point
	along []float64 // from the nose to each, mm
}

func edgeLine(h frame.Breasthook) edge {
	var pts []geometry.Point
	for _, p := range h.Outline.Flatten(0.01) {
		if p.Y < 0 && (len(pts) == 0 || pts[len(pts)-1].X < p.X) {
			pts = append(pts, p)
		}
	}
	slices.Reverse(pts)
	along := make([]float64, len(pts))
	for i := 1; i < len(pts); i++ {
		along[i] = along[i-1] + pts[i].Sub(pts[i-1]).Norm()
	}
	return edge{pts, along}
}

// length returns how long the edge is, mm.
func (e edge) length() float64 { return e.along[len(e.along)-1] }

// at returns the place so far along the edge, its last one beyond.
func (e edge) at(s float64) geometry.Point {
	i := sort.SearchFloat64s(e.along[1:], s)
	if i+1 == len(e.pts) {
		return e.pts[i]
	}
	return e.pts[i].Lerp(e.pts[i+1], (s-e.along[i])/(e.along[i+1]-e.along[i]))
}

// outward is the way outward, square to the edge, so far along it.
func (e edge) outward(s float64) geometry.Point { return Outward(e.at(s-1), e.at(s+1)) }

// Outward is square to the way from a on to b along such an edge, of length 1: the edge
// runs inward, so outward lies on its left.
func Outward(a, b geometry.Point) geometry.Point {
	way := b.Sub(a).Unit()
	return geometry.Point{X: -way.Y, Y: way.X}
}
