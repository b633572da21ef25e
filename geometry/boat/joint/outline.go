package joint

import (
	"math"

	"ribwright/geometry"
)

// outline is a closed outline, in stretches of some sides that follow each other: this is
// asked for thousands of places, and most stretches are too far off to matter.
type outline []stretch

type stretch struct {
	box   geometry.Box
	sides []side
}

// side is one side of an outline.
type side struct {
	from, to, run geometry.Point
	long, square  float64 // its length, and the square of that
}

// outlineOf returns the outline that closes through these points.
func outlineOf(pts []geometry.Point) outline {
	sides := make([]side, 0, len(pts))
	a := pts[len(pts)-1]
	for _, b := range pts {
		run := b.Sub(a)
		if n := run.X*run.X + run.Y*run.Y; n > 0 {
			sides = append(sides, side{a, b, run, math.Sqrt(n), n})
		}
		a = b
	}
	const stretched = 8 // sides
	out := make(outline, 0, len(sides)/stretched+1)
	for len(sides) > 0 {
		s := stretch{sides: sides[:min(stretched, len(sides))]}
		s.box = geometry.Around(s.sides[0].from)
		for _, one := range s.sides {
			s.box = s.box.Union(geometry.Around(one.to))
		}
		out, sides = append(out, s), sides[len(s.sides):]
	}
	return out
}

// edgeTo returns how far a place lies from the nearest point of the outline, negative
// outside.
func (o outline) edgeTo(p geometry.Point) float64 {
	next, inside := 0, false // the stretch whose box is nearest bounds all others
	for i, least := 0, math.Inf(1); i < len(o); i++ {
		s := &o[i]
		if away := s.box.Away(p); away < least {
			next, least = i, away
		}
		if p.Y >= s.box.Min.Y && p.Y <= s.box.Max.Y && p.X <= s.box.Max.X && s.crossed(p) {
			inside = !inside
		}
	}
	best := o[next].near(p, math.Inf(1))
	for i := range o {
		if i != next && o[i].box.Away(p) < best*best {
			best = o[i].near(p, best)
		}
	}
	if !inside {
		return -best
	}
	return best
}

// near returns how far a place lies from the nearest of the sides, where that is nearer
// than best.
func (s *stretch) near(p geometry.Point, best float64) float64 {
	for i := range s.sides {
		s := &s.sides[i]
		to := p.Sub(s.from)
		// A side whose start is too far off is passed over.
		if away, off := best+s.long, to.X*to.X+to.Y*to.Y; off < away*away {
			dx, dy := to.X, to.Y
			if along := to.X*s.run.X + to.Y*s.run.Y; along > 0 {
				t := min(1, along/s.square)
				dx, dy = dx-t*s.run.X, dy-t*s.run.Y
			}
			if square := dx*dx + dy*dy; square < best*best {
				best = math.Sqrt(square)
			}
		}
	}
	return best
}

// crossed tells whether a way straight on to the right of a place crosses an odd number of
// the sides.
func (s *stretch) crossed(p geometry.Point) (odd bool) {
	for i := range s.sides {
		s := &s.sides[i]
		if (s.from.Y > p.Y) != (s.to.Y > p.Y) && p.X-s.from.X < (p.Y-s.from.Y)/s.run.Y*s.run.X {
			odd = !odd
		}
	}
	return odd
}
