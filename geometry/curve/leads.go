package curve

import "math"

// Until returns the length along the chain until it has led so far, mm, in the direction
// from which its start turns left by the heading, radians: on a straight run by the cosine
// of its heading, on an arc by what its sine gains. 0 for a chain that need not lead, the
// whole length for one that does not lead so far.
func (c Chain) Until(far, heading float64) float64 {
	s := 0.0
	for i := 0; i < len(c) && far > 0; i++ {
		b := c[i]
		if along := b.until(far, heading); along <= b.Length {
			return s + along
		}
		far -= b.leads(heading)
		heading, s = heading+b.Sweep, s+b.Length
	}
	return s
}

// until is the length from a bend's start until it has led so far; more than any for one
// that turns away before or begins to lead back.
func (b Bend) until(far, heading float64) float64 {
	sin, cos := math.Sincos(heading)
	switch to := sin + far/b.Radius; {
	case b.Radius == 0 && cos > 0:
		return far / cos
	case b.Radius != 0 && cos > 0 && math.Abs(to) < 1:
		return b.Radius * (math.Asin(to) - heading)
	}
	return math.Inf(1)
}

// leads is how far a bend leads along a way from which its start is turned by a heading, mm.
func (b Bend) leads(heading float64) float64 {
	if b.Radius == 0 {
		return b.Length * math.Cos(heading)
	}
	return b.Radius * (math.Sin(heading+b.Sweep) - math.Sin(heading))
}
