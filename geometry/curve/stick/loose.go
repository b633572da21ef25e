package stick

import (
	"math"

	"ribwright/geometry"
)

// Loose is the end of a stick that is tied from its first pin up to here and not yet
// any farther: how it points by itself, and how it gives when it is bent on.
type Loose struct {
	pin   Pin
	stiff float64
	bends symmetric      // flexibility at the pin
	slope geometry.Point // by itself
	gives symmetric      // slope for a unit of moment, mm; nothing at the first pin, round which the stick still swings
	swing bool
}

// Loosen ties a stick to its first pin, stiff times as stiff along its flat as off it.
func Loosen(p Pin, stiff float64) Loose {
	return Loose{pin: p, stiff: stiff, bends: flexibility(p.Flat, stiff), swing: true}
}

// To ties the stick to the next pin and returns its end there.
func (l Loose) To(p Pin) Loose {
	b := l.bay(p)
	return l.over(&b, p)
}

// over is To through the bay to that pin.
func (l *Loose) over(b *bay, p Pin) Loose {
	out := Loose{pin: p, stiff: l.stiff, bends: b.f[2], slope: b.chord, gives: b.f22()}
	if !l.swing {
		f12 := b.f12()
		inv := l.gives.add(b.f11()).inverse()
		out.slope = b.chord.Add(f12.of(inv.of(b.chord.Sub(l.slope))))
		out.gives = out.gives.add(inv.between(f12).scale(-1))
	}
	return out
}

// Run returns how the end points by itself, dy/dx and dz/dx.
func (l Loose) Run() geometry.Point { return l.slope }

// moment is that at the loose end when the stick goes on through a bay to a pin with
// the moment far.
func (l *Loose) moment(b *bay, far geometry.Point) geometry.Point {
	if l.swing {
		return geometry.Point{}
	}
	return l.gives.add(b.f11()).inverse().of(b.chord.Sub(l.slope).Sub(b.f12().of(far)))
}

// Energy returns by how much the bending energy grows when the end is tied to one more
// pin, where the stick is free: over E I of bending off the flat, 1/mm. It is zero where
// the stick runs to the pin by itself.
func (l Loose) Energy(p Pin) float64 {
	if l.swing {
		return 0
	}
	b := l.bay(p)
	bent := b.chord.Sub(l.slope)
	return bent.Dot(l.gives.add(b.f11()).inverse().of(bent)) / 2
}

// Runs returns how the stick runs when its end is tied to two more pins and free at the
// last: where the end is now, at the first and at the second, dy/dx and dz/dx.
func (l Loose) Runs(p, q Pin) (here, first, second geometry.Point) {
	b := l.bay(p)
	next := l.over(&b, p)
	c := next.bay(q)
	m := next.moment(&c, geometry.Point{})
	here = b.chord.Sub(b.f11().of(l.moment(&b, m))).Sub(b.f12().of(m))
	return here, c.chord.Sub(c.f11().of(m)), c.chord.Add(c.f12().of(m))
}

// bay is a stick between two pins: the slope of its chord and its flexibility.
type bay struct {
	h     float64
	chord geometry.Point
	f     [3]symmetric // at the near pin, half way, at the far pin
}

// bay is that from the end to one more pin.
func (l *Loose) bay(p Pin) bay {
	a, h := &l.pin, p.X-l.pin.X
	return bay{h, geometry.Point{X: (p.Y - a.Y) / h, Y: (p.Z - a.Z) / h},
		[3]symmetric{l.bends, flexibility(a.Flat+(p.Flat-a.Flat)/2, l.stiff), flexibility(p.Flat, l.stiff)}}
}

// How the ends of a bay turn for moments at them, mm: the near end by f11 and f12, the far
// end by f12 and f22. They are the integrals of (1-t)^2, t(1-t) and t^2 times the parabola
// through the three flexibilities.
func (b *bay) f11() symmetric { return b.weighed(9, 12, -1) }
func (b *bay) f12() symmetric { return b.weighed(1, 8, 1) }
func (b *bay) f22() symmetric { return b.weighed(-1, 12, 9) }

func (b *bay) weighed(u, v, w float64) symmetric {
	return b.f[0].scale(u).add(b.f[1].scale(v)).add(b.f[2].scale(w)).scale(b.h / 60)
}

// bent returns the bay under moments at its ends.
func (b bay) bent(near, far geometry.Point) bent {
	d := far.Sub(near)
	f0 := b.f[0]
	f1 := b.f[1].scale(4).add(f0.scale(-3)).add(b.f[2].scale(-1))
	f2 := f0.add(b.f[2]).add(b.f[1].scale(-2)).scale(2)
	return bent{
		slope: b.chord.Sub(b.f11().of(near)).Sub(b.f12().of(far)),
		h:     b.h,
		c:     [4]geometry.Point{f0.of(near), f0.of(d).Add(f1.of(near)), f1.of(d).Add(f2.of(near)), f2.of(d)},
	}
}

// symmetric is a symmetric matrix of two rows.
type symmetric struct{ xx, xy, yy float64 }

// flexibility is the curvature for a unit of moment: one off the flat, one over stiff
// along it.
func flexibility(flat, stiff float64) symmetric {
	sin, cos := math.Sincos(flat)
	k := 1 / stiff
	return symmetric{sin*sin + k*cos*cos, (k - 1) * sin * cos, cos*cos + k*sin*sin}
}

func (m symmetric) add(n symmetric) symmetric {
	return symmetric{m.xx + n.xx, m.xy + n.xy, m.yy + n.yy}
}

func (m symmetric) scale(k float64) symmetric { return symmetric{m.xx * k, m.xy * k, m.yy * k} }

func (m symmetric) of(p geometry.Point) geometry.Point {
	return geometry.Point{X: m.xx*p.X + m.xy*p.Y, Y: m.xy*p.X + m.yy*p.Y}
}

func (m symmetric) inverse() symmetric {
	det := m.xx*m.yy - m.xy*m.xy
	return symmetric{m.yy / det, -m.xy / det, m.xx / det}
}

// between returns n m n.
func (m symmetric) between(n symmetric) symmetric {
	x := n.of(m.of(n.of(geometry.Point{X: 1})))
	y := n.of(m.of(n.of(geometry.Point{Y: 1})))
	return symmetric{x.X, x.Y, y.Y}
}
