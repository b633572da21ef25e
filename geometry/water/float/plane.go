package float

import (
	"math"

	"ribwright/geometry"
)

// Plane is a water surface in the boat's own axes: the points p with
// Up . p = Rise.
type Plane struct {
	Heel float64 // radians; positive with the starboard gunwale down
	Trim float64 // radians; positive with the bow up
	Rise float64 // mm, distance of the plane above the origin (midship, baseline)
}

// Level returns the plane of an upright, untrimmed boat with the water at the
// height z above the baseline, mm.
func Level(z float64) Plane { return Plane{Rise: z} }

// Up returns the direction straight up from the water.
func (p Plane) Up() geometry.Point3 {
	sh, ch := math.Sincos(p.Heel)
	st, ct := math.Sincos(p.Trim)
	return geometry.Point3{X: st, Y: sh * ct, Z: ch * ct}
}

// Ahead returns the level direction forward along the boat.
func (p Plane) Ahead() geometry.Point3 {
	sh, ch := math.Sincos(p.Heel)
	st, ct := math.Sincos(p.Trim)
	return geometry.Point3{X: ct, Y: -st * sh, Z: -st * ch}
}

// ToPort returns the level direction across the boat.
func (p Plane) ToPort() geometry.Point3 {
	sh, ch := math.Sincos(p.Heel)
	return geometry.Point3{Y: ch, Z: -sh}
}

// Above returns how high a point of the boat stands above the water, mm.
func (p Plane) Above(q geometry.Point3) float64 { return p.Up().Dot(q) - p.Rise }

// Water returns the height of the water on the middle line at the station x,
// mm above the baseline.
func (p Plane) Water(x float64) float64 {
	up := p.Up()
	return (p.Rise - up.X*x) / up.Z
}

// Immersed is what a plane puts under water.
type Immersed struct {
	Volume float64         // mm3
	Moment geometry.Point3 // of the volume about the origin, mm4

	// The waterplane, in its own plane. Along is measured as in the boat's x
	// drawn down on to the water, across from the foot point of each section.
	Area         float64 // mm2
	alongFirst   float64 // mm3, integral of the distance ahead of the origin's foot
	alongSecond  float64 // mm4
	acrossFirst  float64 // mm3, to port
	acrossSecond float64 // mm4, about the fore-and-aft line through the origin's foot
}

// Center returns the center of buoyancy, mm.
func (m Immersed) Center() geometry.Point3 {
	return geometry.Point3{X: m.Moment.X / m.Volume, Y: m.Moment.Y / m.Volume, Z: m.Moment.Z / m.Volume}
}

// AcrossInertia returns the waterplane's second moment about the fore-and-aft
// line through its own center, mm4.
func (m Immersed) AcrossInertia() float64 {
	return m.acrossSecond - m.acrossFirst*m.acrossFirst/m.Area
}

// Immerse clips every section at the plane and adds up.
//
// Accuracy: exact for the polygons; along the boat the rule of Weights.
// Cost: linear in the points of all sections; allocates nothing.
func (h *Hull) Immerse(p Plane) Immersed {
	k := p.knife()
	var m Immersed
	for _, s := range h.sections {
		m.add(s, k)
	}
	return m
}

// knife is a plane made ready to clip sections.
type knife struct {
	up           geometry.Point3
	rise         float64
	flat, ny, nz float64 // cos of the trim; the plane's direction in a section
	tilt         float64
}

func (p Plane) knife() knife {
	k := knife{up: p.Up(), rise: p.Rise, tilt: math.Tan(p.Trim)}
	k.flat = math.Hypot(k.up.Y, k.up.Z)
	k.ny, k.nz = k.up.Y/k.flat, k.up.Z/k.flat
	return k
}

// add adds what of a section lies under the knife's plane.
func (m *Immersed) add(s *section, k knife) {
	c := s.clip(k.ny, k.nz, (k.rise-k.up.X*s.x)/k.flat)
	w := s.weight
	m.Volume += w * c.area
	m.Moment.X += w * c.area * s.x
	m.Moment.Y += w * c.my
	m.Moment.Z += w * c.mz
	wet := w * c.chord / k.flat
	ahead := s.x/k.flat - k.rise*k.tilt // along the water from the origin's foot
	m.Area += wet
	m.alongFirst += wet * ahead
	m.alongSecond += wet * ahead * ahead
	m.acrossFirst += w * c.first / k.flat
	m.acrossSecond += w * c.second / k.flat
}

// cut is what of a section lies under a line, and the chord the line makes.
type cut struct {
	area   float64 // mm2
	my, mz float64 // its first moments, mm3

	chord            float64 // length of the waterline in the section, mm
	first, second    float64 // of the chord about the line's foot point: integrals of t dt and t2 dt
	footY, footZ     float64 // the point of the line nearest the origin, where t is 0
	towardY, towardZ float64 // the step along the line for t = 1, to port
}

// clip cuts the section at the line ny y + nz z = d, with (ny, nz) of length 1,
// and keeps what lies below it.
//
// How: the area under the line is a fan of triangles from the line's own foot
// point; the pieces of the outline that the cut adds lie on the line and span
// no area. The chord comes from where the outline passes up and down through
// the line.
func (s *section) clip(ny, nz, d float64) cut {
	c := cut{footY: d * ny, footZ: d * nz, towardY: nz, towardZ: -ny}
	var area, my, mz float64 // without their common factors until the end
	p := s.last()
	hp := ny*p.X + nz*p.Y - d
	for i := range s.round() {
		q, ok := s.at(i)
		if !ok {
			continue
		}
		hq := ny*q.X + nz*q.Y - d
		if hp < 0 || hq < 0 {
			a, b := p, q // what of the edge is wet
			switch {
			case hq >= 0: // up through the line
				b = p.Lerp(q, hp/(hp-hq))
				c.end(b, 1)
			case hp >= 0: // down through it
				a = p.Lerp(q, hp/(hp-hq))
				c.end(a, -1)
			}
			// The triangle from the foot point to the edge.
			ay, az, by, bz := a.X-c.footY, a.Y-c.footZ, b.X-c.footY, b.Y-c.footZ
			cross := ay*bz - az*by
			area += cross
			my += cross * (ay + by)
			mz += cross * (az + bz)
		}
		p, hp = q, hq
	}
	c.my = my/6 + area/2*c.footY
	c.mz = mz/6 + area/2*c.footZ
	c.area = area / 2
	return c
}

// end adds one end of a chord; the outline runs up through the line at the
// chord's port end.
func (c *cut) end(m geometry.Point, side float64) {
	t := (m.X-c.footY)*c.towardY + (m.Y-c.footZ)*c.towardZ
	c.chord += side * t
	c.first += side * t * t / 2
	c.second += side * t * t * t / 3
}
