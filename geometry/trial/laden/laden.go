// Package laden tells how the frame of a boat bears what hangs on its gunwales: afloat, when the
// water under its whole length carries it, or aground, when its bottom lies on the ground.
//
// How: one half of a boat that bears alike on both sides. Gunwale, half of the keel and stringers
// are sticks from rib to rib that bend, twist and stretch; half ribs are condensed to where they
// cross them and to their heads; cross pieces keep the gunwales' distance; stems are sticks too.
// Keel and stringers are tied to ribs and free to turn there; water pushes up on them by how deep
// they sink. Outwales bend with the gunwales, beside them. Cloth between sticks resists being drawn
// askew. That cloth stretches round the ribs, and slats, which help, are left out.
package laden

import (
	"errors"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/equations"
)

// Load hangs on each gunwale at a station, N upward and outward.
type Load struct{ At, Up, Out float64 }

// Case is how the boat lies, and what no drawing settles.
type Case struct {
	Heads  float64 // share of the moment that heads which cannot turn in their mortises would bear: 0 hinged, 1 fast
	Cloth  float64 // against being drawn askew, N for each mm and radian
	Ground bool    // the bottom lies on hard ground; else the boat floats
}

// Borne is how loads bend the frame.
type Borne struct {
	Gunwale []Curve   // from aft forward, straight between them
	Ribs    []float64 // the greatest stress in each, from aft forward, N/mm2
}

// Curve is how the gunwale is curved at a station, 1/mm, positive where it is hollow above, and
// where it is hollow outboard; and how much it is stretched.
type Curve struct{ At, Tall, Flat, Long float64 }

// Boat is a half that is ready to be laden.
type Boat struct {
	frame    *frame.Frame
	wide     float64 // of the ribs
	unknowns int
	first    []int // of those that each unknown meets
	sticks   []stick
	rails    []stick // of them the gunwale's
	hoops    []hoop
	bays     []bay
	beds     []bed
	hung     [][]push
	base     equations.Profile // of the sticks
}

// push is a force on a movement.
type push struct {
	of    int
	force float64
}

// Under returns how each of the lists of loads bends the frame, case by case.
//
// Errors: a frame that does not stand.
func (b *Boat) Under(cases ...Case) ([][]Borne, error) {
	k := b.base.Clone()
	hoops, u := make([]hoop, len(b.hoops)), make([]float64, b.unknowns)
	out := make([][]Borne, len(cases))
	for i, c := range cases {
		b.hold(k, c, hoops)
		if !k.Factor() {
			return nil, errors.New("gunwales, ribs, keel and stringers do not make a frame that stands")
		}
		for _, loads := range b.hung {
			clear(u)
			for _, l := range loads {
				if l.of != held {
					u[l.of] += l.force
				}
			}
			k.Solve(u)
			out[i] = append(out[i], b.read(hoops, u))
		}
	}
	return out, nil
}

// hold makes the equations of a case, and the hoops with heads that give as they do in it: both
// in the room of the last case.
func (b *Boat) hold(k equations.Profile, c Case, hoops []hoop) {
	k.Copy(b.base)
	for i, h := range b.hoops {
		eased := &hoops[i]
		*eased = hoop{h.within.with(c.Heads, eased.within.stiff), h.square.with(c.Heads, eased.square.stiff), h.bits}
		eased.within.hold(k)
		eased.square.hold(k)
	}
	for _, s := range b.beds {
		on := s.afloat
		if c.Ground {
			on = s.ground
		}
		k.Add(s.of, s.of, on)
	}
	for _, y := range b.bays {
		y.hold(k, c.Cloth)
	}
}

// read takes from the movements what is asked for.
func (b *Boat) read(hoops []hoop, u []float64) Borne {
	out := Borne{make([]Curve, len(b.rails)+1), make([]float64, len(hoops))}
	for i, t := range b.rails {
		from, to := t.curves(u)
		if i == 0 {
			out.Gunwale[0] = from
		}
		out.Gunwale[i+1] = to
	}
	for i, h := range hoops {
		out.Ribs[i] = h.stress(u, b.wide, b.frame.Ribs[i].Thickness)
	}
	return out
}

// At returns how the gunwale is curved and stretched at a station.
func (b Borne) At(x float64) Curve {
	g := b.Gunwale
	i := 1
	for i < len(g)-1 && g[i].At < x {
		i++
	}
	t := (x - g[i-1].At) / (g[i].At - g[i-1].At)
	between := func(a, b float64) float64 { return a + t*(b-a) }
	p, q := g[i-1], g[i]
	return Curve{x, between(p.Tall, q.Tall), between(p.Flat, q.Flat), between(p.Long, q.Long)}
}

// joint is a place that moves in the ways given: 0 to 2 along x, y and z, 3 to 5 about them.
func (b *Boat) joint(at geometry.Point3, ways ...int) *joint {
	j := &joint{at, [6]int{held, held, held, held, held, held}}
	b.free(j, ways...)
	return j
}

func (b *Boat) free(j *joint, ways ...int) {
	for _, w := range ways {
		j.of[w] = b.unknowns
		b.first = append(b.first, b.unknowns)
		b.unknowns++
	}
}

// meet notes that movements meet in the equations.
func (b *Boat) meet(moves ...int) {
	least := b.unknowns
	for _, m := range moves {
		if m != held {
			least = min(least, m)
		}
	}
	for _, m := range moves {
		if m != held {
			b.first[m] = min(b.first[m], least)
		}
	}
}
