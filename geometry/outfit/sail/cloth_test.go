package sail

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
)

// TestCloth: without allowances the panels are the sail; a seam adds its overlap for
// its length, a hem its strip and corners; a round edge the circle segment's area.
func TestCloth(t *testing.T) {
	for _, r := range design.Rigs() {
		p := NewPlan(r, 3, 150)
		s := design.Sail{Rig: r, Bolt: 700}
		c := p.cut(s)
		near(t, r.String()+": cloth", c.Area, 3, 1e-9)
		if len(c.Panels) < 2 {
			t.Fatalf("%v in %d panels", r, len(c.Panels))
		}
		for i, q := range c.Panels {
			lo, hi := math.Inf(1), math.Inf(-1)
			for _, v := range q.Outline {
				lo, hi = math.Min(lo, v.Y), math.Max(hi, v.Y)
			}
			if hi-lo > 700+1e-9 {
				t.Errorf("%v: panel %d is %.1f mm wide, the cloth 700", r, i+1, hi-lo)
			}
		}
		// Neighbours overlap by the seam along their whole joint.
		s.Seam = 15
		d := p.cut(s)
		extra := 0.0
		for i := 1; i < len(d.Panels); i++ {
			lo, hi := math.Inf(1), math.Inf(-1)
			for _, v := range d.Panels[i].Outline {
				lo, hi = math.Min(lo, v.Y), math.Max(hi, v.Y)
			}
			both := band(d.Panels[i-1].Outline, lo, hi)
			extra += math.Abs(curve.Area(both)) / 1e6
			near(t, "seam", d.Panels[i-1].Seam, lo, 1e-9)
		}
		near(t, r.String()+": seams", d.Area, 3+extra, 1e-9)
		s.Seam, s.Hem = 0, 20
		around := 0.0
		for i, q := range p.Corners {
			around += p.Corners[(i+1)%len(p.Corners)].Sub(q).Norm()
		}
		hem := p.cut(s).Area - 3
		if least := around * 20 / 1e6; hem < least || hem > least*1.15 {
			t.Errorf("%v: a hem of 20 mm takes %.4f m2, its strip alone %.4f", r, hem, least)
		}
	}
}

// TestRoach: a share of 0.02 on the luff adds the segment of a circle: 2/3 chord times
// rise, nearly; the arc is highest in its middle by that share.
func TestRoach(t *testing.T) {
	a, b := geometry.Point{}, geometry.Point{Y: 1500}
	arc := Bulge(a, b, 0.02)
	near(t, "start", arc.Start().Sub(a).Norm(), 0, 1e-9)
	near(t, "end", arc.End().Sub(b).Norm(), 0, 1e-9)
	near(t, "rise", arc.At(0.5).X, 30, 1e-9)
	p := NewPlan(design.LegOfMutton, 3, 0)
	got := math.Abs(curve.Area(p.outline(0.02)))/1e6 - 3
	luff, foot := p.Corners[1].Sub(p.Corners[0]).Norm(), p.Corners[0].Sub(p.Corners[2]).Norm()
	near(t, "roach", got, (luff*luff+foot*foot)*0.02*2/3/1e6, 8e-4) // flattened to 0.2 mm
}
