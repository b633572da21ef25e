package bend

import (
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/finding"
	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wood/timber"
)

// Hole is what a mortise with its peg or the hole of a bolt leaves of the gunwale.
type Hole struct {
	Of         string  // the rib, or what is bolted there
	Flat, Tall float64 // shares left of the section modulus against bending in plan and in the tall way
	Stress     float64 // there at rest, N/mm2
}

// slots judges what is taken out of the gunwales. Plies are bent whole: mortises are cut when
// their glue holds the bend, seats' nuts are let in when the frame stands. So no hole is
// there while a ply is bent at once, and what stays in the wood goes over to what is left. A
// gunwale that is glued straight is bent with its mortises, and an edge-set sprung with them,
// but both bear at rest what they bore then.
func (r *Report) slots() {
	g := &r.Frame.Gunwale
	first := g.Mortises[0]
	r.SquareTenon = timber.SquareTenon(first.Length, first.Width, float64(r.Frame.Design.Ribs.Thickness))
	if g.Blocks != nil { // the ends of gaps are square
		r.SquareTenon = first.Length
	}
	for _, m := range g.Mortises {
		r.Slots = append(r.Slots, r.hole(m.Rib, m.Station, slot(m), r.Joints.Head.Out(g.Width)))
	}
	r.held("gunwale at mortise ", r.Slots, "a shallower mortise (ribs.mortise_depth), or more plies glued bent")
	r.judgeWalls()
	r.judgeScarfs()
	r.bolted()
}

func slot(m frame.Mortise) beam.Opening {
	return beam.Opening{From: -m.Width / 2, To: m.Width / 2, Top: m.Depth}
}

// hole judges the gunwale where openings are taken out of it.
func (r *Report) hole(of string, x float64, out ...beam.Opening) Hole {
	n, rest := r.opened(x, out...)
	h := Hole{Of: of, Stress: n.Worst(rest)}
	h.Flat, h.Tall = n.Left()
	return h
}

// opened is the gunwale with openings taken out of it, and what it bears there at rest.
func (r *Report) opened(x float64, out ...beam.Opening) (beam.Net, beam.Stress) {
	g := &r.Frame.Gunwale
	rest := r.Boat.RestAt(r.AtRest, x)
	var seams []float64
	for _, p := range rest.Plies {
		seams = append(seams, p.In)
	}
	n := beam.Opened(g.Width, g.Height, seams, out...)
	return n, n.Over(func(y, z float64) float64 { return rest.At(y, z, g.Height) })
}

// held notes the hole at which the gunwale bears most, the last of those that are alike.
func (r *Report) held(about string, holes []Hole, cure string) {
	var worst Hole
	for _, h := range holes {
		if h.Stress >= worst.Stress {
			worst = h
		}
	}
	r.noteCure(byStress(about+worst.Of, r.Boat.Wood, worst.Stress, finding.Weak), "%s", cure)
}

// bolted judges the gunwales where bolts go through them.
func (r *Report) bolted() {
	g := &r.Frame.Gunwale
	for _, c := range r.Joints.Cross {
		for _, at := range c.Of.BoltsOn(g) {
			r.Bolted = append(r.Bolted, r.hole(c.Piece, g.StationOf(at), c.Out(g.Height)...))
		}
	}
	for _, s := range r.Frame.Seats {
		if s.Hung == nil {
			continue
		}
		for _, h := range []seat.Hanger{s.Hung.Front.Hanger, s.Hung.After.Hanger} {
			for _, at := range h.Bolts {
				r.Bolted = append(r.Bolted, r.hole(s.Name, g.StationOf(at), h.Out()...))
			}
		}
	}
	if r.Bolted == nil {
		return
	}
	cure := "more plies glued bent"
	if r.Boat.Glue.Plies > 1 {
		cure += ", or an edge-set that begins nearer midship or is made into them (gunwale.edge_set_made)"
	}
	r.held("gunwale at the bolts of ", r.Bolted, cure)
}
