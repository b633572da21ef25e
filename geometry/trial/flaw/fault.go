// Package flaw is a frame that came out with one stated fault, as an eye meets it, and
// what the fault does to the boat.
//
// Model: the points of the ribs move by the offsets stated in closed form, each along
// the way that its kind says; ribs are held by their keel and heads where the fault does
// not move these. Keel, gunwales and stringers are tied to every rib, so between the
// ribs their change is the natural spline through what the ribs do, to none at the
// stems: over one proud rib a bump with a shallow hollow on either side. Ribs are taken
// as firm: a stringer does not draw them in. Twist turns every point about a line along
// the boat.
package flaw

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
)

// Kind is a kind of fault.
type Kind int

// The kinds.
const (
	Proud   Kind = iota // one rib bulges at both bilges
	OneSide             // one rib bulges to port and is as much too flat to starboard
	Wavy                // the keel lies high and low in turn, four bays to a wave
	Aside               // both gunwales stand too far to port, most amidships
	Twist               // the bow is turned against the stern
)

// Fault is one fault of a frame.
type Fault struct {
	Kind Kind
	Size float64 // the most that anything moves, mm; of a twist the whole angle from end to end, radians, positive with the port side up at the bow
	Rib  int     // from aft, where it is one rib's
}

// Moved is a frame with a fault: how far each part stands off where it is drawn.
type Moved struct {
	fault      Fault
	f          *frame.Frame
	keel       line
	gunwales   [2]line   // port, starboard
	stringers  [2][]line // likewise
	bulge      bulge
	long, axis float64 // of the boat; height of the line that a twist turns about, mm
}

// line is what a stick tied to the ribs is off, across and up.
type line struct{ y, z *curve.Batten }

func (l line) at(x float64) geometry.Point3 {
	y, _ := l.y.Rise(x)
	z, _ := l.z.Rise(x)
	return geometry.Point3{Y: y, Z: z}
}

// New gives a frame a fault.
//
// Errors: a rib that the frame has not; a stick with its ends inside the ribs.
func New(f *frame.Frame, fault Fault) (*Moved, error) {
	if fault.Rib < 0 || fault.Rib >= len(f.Ribs) {
		return nil, fmt.Errorf("the frame has no rib number %d from aft; accepted: 0 to %d", fault.Rib, len(f.Ribs)-1)
	}
	m := &Moved{fault: fault, f: f, bulge: bulgeOf(f.Ribs[fault.Rib]), long: f.Hull.Length, axis: f.Hull.Depth / 2}
	return m, m.lay()
}

// lay runs the sticks through what the ribs do.
func (m *Moved) lay() (err error) {
	run := func(t *curve.Track, side float64, share func(i int) float64) line {
		aft, fore := t.Ends()
		x, y, z := []float64{aft}, []float64{0}, []float64{0}
		for i, r := range m.f.Ribs {
			by := m.Rib(i, side, share(i))
			x, y, z = append(x, r.Station), append(y, by.Y), append(z, by.Z)
		}
		x, y, z = append(x, fore), append(y, 0), append(z, 0)
		var l line
		for _, c := range []struct {
			to *(*curve.Batten)
			of []float64
		}{{&l.y, y}, {&l.z, z}} {
			b, fault := curve.NewBatten(x, c.of)
			if fault != nil && err == nil {
				err = fmt.Errorf("a stick of the frame with a fault: %w", fault)
			}
			*c.to = b
		}
		return l
	}
	m.keel = run(m.f.Keel.Line, 1, func(int) float64 { return 0 })
	for k, side := range [2]float64{1, -1} {
		m.gunwales[k] = run(m.f.Gunwale.Line, side, func(int) float64 { return 1 })
		for n, s := range m.f.Stringers {
			m.stringers[k] = append(m.stringers[k], run(s.Line, side, func(i int) float64 {
				return m.f.Ribs[i].Stringers[n] / m.f.Ribs[i].Section.Half.Length()
			}))
		}
	}
	return err
}

// Rib returns how far a point of rib i has moved, mm.
func (m *Moved) Rib(i int, side, share float64) geometry.Point3 {
	size, r := m.fault.Size, m.f.Ribs[i]
	at := r.Section.Half.Length() * share
	switch m.fault.Kind {
	case Proud, OneSide:
		if i != m.fault.Rib {
			break
		}
		if m.fault.Kind == OneSide {
			size *= side
		}
		n := r.Face(at, 1).Sub(r.Face(at, 0)).Scale(size * m.bulge.at(share))
		return geometry.Point3{Y: side * n.X, Z: n.Y}
	case Wavy:
		return geometry.Point3{Z: size * wave(i, len(m.f.Ribs)) * (1 - eased(share))}
	case Aside:
		return geometry.Point3{Y: size * m.bow(r.Station) * eased(share)}
	case Twist:
		p := r.Face(at, 0)
		return m.turned(geometry.Point3{X: r.Station, Y: side * p.X, Z: p.Y})
	}
	return geometry.Point3{}
}

// Stringer, Gunwale and Keel return how far the middle of a stick has moved at a
// station, mm; stringers are counted from 0 at the keel.
func (m *Moved) Stringer(k int, side, x float64) geometry.Point3 {
	return m.stick(m.stringers[of(side)][k], m.f.Stringers[k].Line, side, x)
}

// Gunwale is told of under Stringer.
func (m *Moved) Gunwale(side, x float64) geometry.Point3 {
	return m.stick(m.gunwales[of(side)], m.f.Gunwale.Line, side, x)
}

// Keel is told of under Stringer.
func (m *Moved) Keel(x float64) geometry.Point3 { return m.stick(m.keel, m.f.Keel.Line, 1, x) }

func (m *Moved) stick(l line, drawn *curve.Track, side, x float64) geometry.Point3 {
	if m.fault.Kind != Twist {
		return l.at(x)
	}
	p := drawn.Point(x)
	p.Y *= side
	return m.turned(p)
}

// of is 0 for port and 1 for starboard.
func of(side float64) int {
	if side < 0 {
		return 1
	}
	return 0
}

// Stem returns how far a place of a stem has moved, mm: only a twist moves it.
func (m *Moved) Stem(p geometry.Point3) geometry.Point3 {
	if m.fault.Kind != Twist {
		return geometry.Point3{}
	}
	return m.turned(p)
}

// turned is how far a twist moves a place: it turns about a line at half the depth, by
// an angle that grows evenly from end to end and is none amidships.
func (m *Moved) turned(p geometry.Point3) geometry.Point3 {
	sin, cos := math.Sincos(m.fault.Size * p.X / m.long)
	y, z := p.Y, p.Z-m.axis
	return geometry.Point3{Y: y*cos - z*sin - y, Z: y*sin + z*cos - z}
}

// eased goes smoothly from 0 at the keel to 1 at the head.
func eased(share float64) float64 { return share * share * (3 - 2*share) }

// wave is 0, 1, 0, -1 and so on from the rib in the middle forward, with none at the
// last two ribs of either end, or fewer of a short row.
func wave(i, n int) float64 {
	calm := min(2, (n-1)/4)
	if i < calm || i >= n-calm {
		return 0
	}
	return [4]float64{0, 1, 0, -1}[((i-n/2)%4+4)%4]
}

// bow is 1 at midship and falls to either end as a stick does that lies along the boat
// there and is pinned at its end: 1 - 3/2 u2 + 1/2 u3 at the share u of the way out. Any
// text on beams.
func (m *Moved) bow(x float64) float64 {
	aft, fore := m.f.Gunwale.Line.Ends()
	u := x / fore
	if x < 0 {
		u = x / aft
	}
	return 1 - u*u*(3-u)/2
}

// bulge is the shape of a half rib that is too full between its keel and its head,
// which stay where they are with their headings: ta (1-t)b, 1 at the bilge.
type bulge struct{ peak, a, b float64 }

// bulgeOf puts the fullest place in the middle of the tightest bend, or halfway on a
// straight rib. It stays off the ends, where a bulge would be too sharp for a rib: our
// own choice.
func bulgeOf(r frame.Rib) bulge {
	const inner, outer, least = 0.3, 0.75, 2.0
	peak := 0.5
	if bend, from := r.Bilge(); bend >= 0 {
		peak = (from + r.Section.Half[bend].Length/2) / r.Section.Half.Length()
	}
	peak = math.Min(math.Max(peak, inner), outer)
	// a/(a+b) is the peak, and the less of the two is 2: no slope at either end.
	a, b := least, least
	if peak > 0.5 {
		a = least * peak / (1 - peak)
	} else {
		b = least * (1 - peak) / peak
	}
	return bulge{peak, a, b}
}

func (u bulge) at(t float64) float64 {
	return math.Pow(t/u.peak, u.a) * math.Pow((1-t)/(1-u.peak), u.b)
}
