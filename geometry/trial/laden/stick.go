package laden

import (
	"ribwright/geometry"
	"ribwright/geometry/equations"
	"ribwright/geometry/wood/beam"
)

// held is the number of a movement that nothing lets go.
const held = -1

// joint is a place with the numbers of its movements along and about x, y and z. Sticks that share
// the first three are tied together, those that share all hold each other square.
type joint struct {
	at geometry.Point3
	of [6]int
}

// stick runs straight from joint to joint.
type stick struct {
	from, to *joint
	up       geometry.Point3 // the way of its depth, not along the stick
	stiff    stiffness
}

// stiffness is a stick's against being stretched, N, and against being bent its tall way, bent
// its flat way and twisted, N mm2.
type stiffness struct{ long, tall, flat, twist float64 }

// rectangle is the stiffness of a stick of wood.
func rectangle(wide, deep, moe float64) stiffness {
	a, b := max(wide, deep), min(wide, deep)
	r := b / a
	return stiffness{
		long: moe * wide * deep,
		tall: moe * beam.Rectangle(wide, deep).Inertia,
		flat: moe * beam.Rectangle(deep, wide).Inertia,
		// To 0.5 %. Source: Roark's Formulas for Stress and Strain, solid rectangular section.
		twist: moe * beam.Rigidity * a * b * b * b * (1.0/3 - 0.21*r*(1-r*r*r*r/12)),
	}
}

// strain is how much of one way of being strained each of the twelve movements of a stick's ends makes.
type strain [12]float64

func (s *strain) put(at int, p geometry.Point3, by float64) {
	s[at], s[at+1], s[at+2] = s[at]+by*p.X, s[at+1]+by*p.Y, s[at+2]+by*p.Z
}

// plus is s and so much of another.
func (s strain) plus(by float64, o strain) strain {
	for i, v := range o {
		s[i] += by * v
	}
	return s
}

// of is the strain that movements make.
func (s strain) of(on [12]int, u []float64) (sum float64) {
	for i, k := range on {
		if k != held {
			sum += s[i] * u[k]
		}
	}
	return sum
}

// turns are how far a stick's ends turn off the straight line between them, in the plane in
// which it moves the way w: about the axis a.
func (t stick) turns(long float64, w, a geometry.Point3) (from, to strain) {
	from.put(0, w, 1/long)
	from.put(6, w, -1/long)
	to = from
	from.put(3, a, 1)
	to.put(9, a, 1)
	return from, to
}

// axes are the stick's length and its own axes: on, up, and out, square to both: outboard where it runs forward.
func (t stick) axes() (long float64, on, up, out geometry.Point3) {
	on = t.to.at.Sub(t.from.at)
	long = on.Norm()
	on = on.Scale(1 / long)
	up = t.up.Sub(on.Scale(t.up.Dot(on)))
	up = up.Scale(1 / up.Norm())
	return long, on, up, up.Cross(on)
}

func (t stick) moves() (out [12]int) {
	copy(out[:6], t.from.of[:])
	copy(out[6:], t.to.of[:])
	return out
}

// hold adds the stick to the equations: its ways of being strained one by one. Bent by turns p
// and q of its ends off the line between them it holds with E I/L (p - q)² and 3 E I/L (p + q)².
// Source: the slope-deflection equations, as in S. Timoshenko and D. H. Young, Theory of Structures.
func (t stick) hold(k equations.Profile) {
	long, on, up, out := t.axes()
	moves := t.moves()
	var s strain
	s.put(0, on, -1)
	s.put(6, on, 1)
	resist(k, t.stiff.long/long, moves[:], s[:])
	s = strain{}
	s.put(3, on, -1)
	s.put(9, on, 1)
	resist(k, t.stiff.twist/long, moves[:], s[:])
	for _, b := range []struct {
		stiff float64
		w, a  geometry.Point3
	}{{t.stiff.tall, up, out.Scale(-1)}, {t.stiff.flat, out, up}} {
		p, q := t.turns(long, b.w, b.a)
		even, odd := p.plus(-1, q), p.plus(1, q)
		resist(k, b.stiff/long, moves[:], even[:])
		resist(k, 3*b.stiff/long, moves[:], odd[:])
	}
}

// resist adds what resists a strain, of which each movement makes so much: N or N mm for each unit.
func resist(k equations.Profile, stiff float64, on []int, by []float64) {
	for i, v := range by {
		if stiff*v == 0 || on[i] == held {
			continue
		}
		for j, w := range by[:i+1] {
			if on[j] != held {
				k.Add(on[i], on[j], stiff*v*w)
			}
		}
	}
}

// curves returns how a stick is curved at both ends: straight between them.
func (t stick) curves(u []float64) (from, to Curve) {
	long, on, up, out := t.axes()
	moves := t.moves()
	var s strain
	s.put(0, on, -1/long)
	s.put(6, on, 1/long)
	from = Curve{At: t.from.at.X, Long: s.of(moves, u)}
	to = Curve{At: t.to.at.X, Long: from.Long}
	bend := func(w, a geometry.Point3) (float64, float64) {
		ps, qs := t.turns(long, w, a)
		p, q := ps.of(moves, u), qs.of(moves, u)
		return -(4*p + 2*q) / long, (2*p + 4*q) / long
	}
	from.Tall, to.Tall = bend(up, out.Scale(-1))
	from.Flat, to.Flat = bend(out, up)
	return from, to
}
