package pack

import "math"

// solid is a part at the turn at which it is tried.
func (s *search) solid(p *lying) *solid {
	k := &s.kinds[p.kind]
	if p.turn >= 0 {
		return &k.at[p.turn]
	}
	return s.trial.lie(k.shape, p.angle, &s.done)
}

// body is part i as it lies.
func (s *search) body(i int) *solid {
	p := &s.now.parts[i]
	if p.turn >= 0 {
		return &s.kinds[p.kind].at[p.turn]
	}
	return s.bodies[i].lie(s.kinds[p.kind].shape, p.angle, &s.done)
}

// lie turns the body, when it is not turned so already.
func (b *body) lie(shape *solid, angle float64, done *int) *solid {
	if b.of != shape || b.angle != angle {
		b.turn(shape, angle)
		b.angle = angle
		*done += len(shape.corners) / 4
	}
	return &b.solid
}

// anyhow is a part of a kind at some turn that it may lie at, its middle at the origin.
func (s *search) anyhow(kind int) lying {
	k := &s.kinds[kind]
	if n := len(k.turns); n > 0 {
		return s.turned(kind, s.chance.IntN(n), 0)
	}
	return s.turned(kind, -1, s.chance.Float64()*2*math.Pi)
}

// turned is a part of a kind at one of its turns, or at an angle where it may lie at any.
func (s *search) turned(kind, turn int, angle float64) lying {
	p := lying{kind: kind, turn: turn, angle: angle}
	if turn >= 0 {
		p.angle = s.kinds[kind].turns[turn]
	}
	p.frame = s.solid(&p).frame
	return p
}

// moved moves a part, and into the rectangle; false when it has no room there at its turn.
func (s *search) moved(p *lying, x, y float64) bool {
	wide, high := p.x1-p.x0, p.y1-p.y0
	if wide > s.now.w || high > s.now.h {
		return false
	}
	x = min(max(p.x0+x, 0), s.now.w-wide) - p.x0
	y = min(max(p.y0+y, 0), s.now.h-high) - p.y0
	p.frame, p.x, p.y = p.frame.shifted(x, y), p.x+x, p.y+y
	return true
}
