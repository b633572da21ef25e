package edition

import (
	"math"

	"ribwright/geometry"
)

// contour is a line with a box round every few of its stretches, so that most of them are
// passed over where the place nearest to a point is looked for.
type contour struct {
	points []geometry.Point
	boxes  []geometry.Box
}

// boxed is how many stretches a box goes round.
const boxed = 16

func newContour(points []geometry.Point) contour {
	c := contour{points: points}
	for i := 0; i+1 < len(points); i += boxed {
		c.boxes = append(c.boxes, geometry.Around(points[i:min(i+boxed+1, len(points))]...))
	}
	return c
}

// nearest is the place of the line nearest to a point, the first of several.
func (c contour) nearest(p geometry.Point) geometry.Point {
	at, least := p, math.Inf(1)
	if len(c.boxes) == 0 {
		return at
	}
	first, close := 0, math.Inf(1)
	for k, b := range c.boxes {
		if d := b.Away(p); d < close {
			first, close = k, d
		}
	}
	_, within := c.in(first, p)
	within *= 1 + 1e-9 // of boxes as near by their rounded figures none is passed over
	for k, b := range c.boxes {
		if b.Away(p) > within {
			continue
		}
		if q, d := c.in(k, p); d < least {
			at, least = q, d
		}
	}
	return at
}

// in is the nearest place within a box, and the square of how far it is.
func (c contour) in(box int, p geometry.Point) (at geometry.Point, least float64) {
	least = math.Inf(1)
	line := c.points[box*boxed : min((box+1)*boxed+1, len(c.points))]
	for i := 1; i < len(line); i++ { // in plain numbers: most of the time goes here
		a, b := line[i-1], line[i]
		dx, dy, px, py := b.X-a.X, b.Y-a.Y, p.X-a.X, p.Y-a.Y
		t, long := px*dx+py*dy, dx*dx+dy*dy
		switch {
		case t <= 0:
			t = 0
		case t >= long:
			t = 1
		default:
			t /= long
		}
		ex, ey := px-t*dx, py-t*dy
		if d := ex*ex + ey*ey; d < least {
			least, at = d, geometry.Point{X: a.X + t*dx, Y: a.Y + t*dy}
		}
	}
	return at, least
}
