package float

import "ribwright/geometry"

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
	pts := s.round
	p := pts[len(pts)-1]
	hp := ny*p.X + nz*p.Y - d
	for _, q := range pts {
		hq := ny*q.X + nz*q.Y - d
		switch {
		case hp < 0 && hq < 0:
			c.fan(p, q)
		case hp < 0: // up through the line
			m := p.Lerp(q, hp/(hp-hq))
			c.fan(p, m)
			c.end(m, 1)
		case hq < 0: // down through it
			m := p.Lerp(q, hp/(hp-hq))
			c.end(m, -1)
			c.fan(m, q)
		}
		p, hp = q, hq
	}
	c.my = c.my/6 + c.area/2*c.footY
	c.mz = c.mz/6 + c.area/2*c.footZ
	c.area /= 2
	return c
}

// fan adds the triangle from the foot point to the edge; sums are kept without
// their common factors until the end.
func (c *cut) fan(p, q geometry.Point) {
	py, pz, qy, qz := p.X-c.footY, p.Y-c.footZ, q.X-c.footY, q.Y-c.footZ
	cross := py*qz - pz*qy
	c.area += cross
	c.my += cross * (py + qy)
	c.mz += cross * (pz + qz)
}

// end adds one end of a chord; the outline runs up through the line at the
// chord's port end.
func (c *cut) end(m geometry.Point, side float64) {
	t := (m.X-c.footY)*c.towardY + (m.Y-c.footZ)*c.towardZ
	c.chord += side * t
	c.first += side * t * t / 2
	c.second += side * t * t * t / 3
}
