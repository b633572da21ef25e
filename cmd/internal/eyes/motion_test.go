package eyes

import "ribwright/render/rendertest"

// Motion takes (x, y) to (m0 x + m2 y + m4, m1 x + m3 y + m5), as to_sheet in
// the table of pages does.
type Motion [6]float64

// Shift returns the motion by (dx, dy).
func Shift(dx, dy float64) Motion { return Motion{1, 0, 0, 1, dx, dy} }

// Apply returns where m takes p.
func (m Motion) Apply(p rendertest.Point) rendertest.Point {
	return rendertest.Point{X: m[0]*p.X + m[2]*p.Y + m[4], Y: m[1]*p.X + m[3]*p.Y + m[5]}
}

// Then returns the motion that does m first and n after it.
func (m Motion) Then(n Motion) Motion {
	return Motion{
		m[0]*n[0] + m[1]*n[2], m[0]*n[1] + m[1]*n[3],
		m[2]*n[0] + m[3]*n[2], m[2]*n[1] + m[3]*n[3],
		m[4]*n[0] + m[5]*n[2] + n[4], m[4]*n[1] + m[5]*n[3] + n[5],
	}
}

// Back returns the motion that undoes m, which must not flatten.
func (m Motion) Back() Motion {
	det := m[0]*m[3] - m[1]*m[2]
	a, b, c, d := m[3]/det, -m[1]/det, -m[2]/det, m[0]/det
	return Motion{a, b, c, d, -(a*m[4] + c*m[5]), -(b*m[4] + d*m[5])}
}
