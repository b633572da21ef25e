package pattern

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// TestDotsOnTheirLine: on the body plan the circle where the line to a name begins stands on the
// ink of one line, not in the gap behind a dash, and no other line passes nearer to its middle
// than 0.75 mm: then paper shows beside a circle 1 mm wide (our own choice).
func TestDotsOnTheirLine(t *testing.T) {
	const least, onIt = 0.75, 0.05
	each(t, func(t *testing.T, f *frame.Frame, units measure.System) {
		d := BodyPlan(bent(t, f), units)
		dots := 0
		for _, s := range d.Strokes {
			b := s.Path.Bounds()
			if !s.Path.Closed() || math.Abs(b.W()-1) > 1e-6 || math.Abs(b.H()-1) > 1e-6 {
				continue
			}
			dots++
			at, own := b.Center(), 0
			for _, o := range d.Strokes {
				off, along := passes(o.Path.Flatten(0.01), at)
				if o.Path.Closed() || o.Pen == layout.Tick && o.Path[0].Start().Sub(at).Norm() < onIt {
					continue // a circle, and the line that leads from this one
				}
				switch {
				case off < onIt:
					own++
					if dash := o.Pen.Dash(); dash != nil && math.Mod(along, dash[0]+dash[1]) > dash[0] {
						t.Errorf("the circle at %.1f stands in a gap of its line", at)
					}
				case off < least:
					t.Errorf("a line passes the circle at %.1f by %.2f mm", at, off)
				}
			}
			if own != 1 {
				t.Errorf("the circle at %.1f stands on %d lines", at, own)
			}
		}
		if dots < 8 {
			t.Errorf("%d circles", dots)
		}
	})
}

// passes is how far a line passes from a point, and how far along it that is, mm.
func passes(line []geometry.Point, p geometry.Point) (off, along float64) {
	off, passed := math.Inf(1), 0.0
	for i := 1; i < len(line); i++ {
		a, step := line[i-1], line[i].Sub(line[i-1])
		long := step.Norm()
		if long == 0 {
			continue
		}
		u := math.Max(0, math.Min(1, p.Sub(a).Dot(step)/(long*long)))
		if o := a.Add(step.Scale(u)).Sub(p).Norm(); o < off {
			off, along = o, passed+u*long
		}
		passed += long
	}
	return off, along
}
