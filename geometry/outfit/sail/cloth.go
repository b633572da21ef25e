package sail

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
)

// Cloth is how a sail is cut: panels along the leech, from there forward. The axes
// are turned so that X runs along the leech, from clew to peak, and Y forward from it.
type Cloth struct {
	Finished []geometry.Point // the sail's edge as it will hang, roach included
	Panels   []Panel
	Area     float64 // of all cloth cut, m2
	Turn     geometry.Affine
}

// Panel is one strip of cloth with its allowances.
type Panel struct {
	Outline []geometry.Point // to cut, hem and seam included
	Edge    []geometry.Point // what is in it of the finished sail, to the seam line
	Seam    float64          // Y of the edge of the next panel's cloth on this one; NaN on the last
}

// arcTol is how far a chord of a round edge may leave it, mm.
const arcTol = 0.2

// cut lays the sail out in panels: bolt, seam and hem in mm, roach a share.
func (p Plan) cut(s design.Sail) Cloth {
	clew, peak := p.leech()
	along := peak.Sub(clew)
	turn := geometry.Shift(-clew.X, -clew.Y).Then(geometry.Turn(-math.Atan2(along.Y, along.X)))
	c := Cloth{Turn: turn}
	for _, q := range p.outline(s.Roach) {
		c.Finished = append(c.Finished, turn.Apply(q))
	}
	// Forward of the leech is up when the sail's middle lies there.
	if Centroid(c.Finished).Y < 0 {
		c.Turn = turn.Then(geometry.Stretch(1, -1))
		for i := range c.Finished {
			c.Finished[i].Y = -c.Finished[i].Y
		}
	}
	whole := grown(c.Finished, float64(s.Hem))
	box := geometry.Around(whole...)
	hi, bolt, seam := box.Max.Y, float64(s.Bolt), float64(s.Seam)
	for y := box.Min.Y; y < hi-1; y += bolt - seam {
		panel := Panel{Outline: band(whole, y, y+bolt), Edge: band(c.Finished, y, y+bolt), Seam: y + bolt - seam}
		if y+bolt >= hi-1e-9 {
			panel.Seam = math.NaN()
		}
		c.Panels = append(c.Panels, panel)
		c.Area += math.Abs(curve.Area(panel.Outline)) / 1e6
		if math.IsNaN(panel.Seam) {
			break
		}
	}
	return c
}

// leech returns the lower and the upper end of the after edge; of the vee its starboard side.
func (p Plan) leech() (clew, peak geometry.Point) {
	for i, e := range p.Edges {
		if e.Name == "leech" || e.Name == "starboard side" {
			return p.Corners[(i+1)%len(p.Corners)], p.Corners[i]
		}
	}
	return p.Corners[0], p.Corners[1]
}

// outline returns the edge of the sail with its rounds, flattened.
func (p Plan) outline(roach float64) []geometry.Point {
	var out []geometry.Point
	for i, e := range p.Edges {
		a, b := p.Corners[i], p.Corners[(i+1)%len(p.Corners)]
		if !e.Round || roach == 0 {
			out = append(out, a)
			continue
		}
		pts := curve.Path{Bulge(a, b, roach)}.Flatten(arcTol)
		out = append(out, pts[:len(pts)-1]...)
	}
	return out
}

// Bulge returns the arc from a to b that stands out to the right of the way by a
// share of its length.
func Bulge(a, b geometry.Point, share float64) curve.Arc {
	chord := b.Sub(a)
	half, rise := chord.Norm()/2, share*chord.Norm()
	r := (half*half + rise*rise) / (2 * rise)
	center := a.Lerp(b, 0.5).Add(chord.Unit().Left().Scale(r - rise))
	from := a.Sub(center)
	return curve.Arc{Center: center, Radius: r, From: math.Atan2(from.Y, from.X), Sweep: 2 * math.Asin(half/r)}
}

// grown moves every side of a polygon that is nowhere hollow outward by mm; corners
// stay sharp. The polygon may run either way.
func grown(pts []geometry.Point, by float64) []geometry.Point {
	way, n := math.Copysign(1, curve.Area(pts)), len(pts)
	out := make([]geometry.Point, n)
	for i, p := range pts {
		before, after := p.Sub(pts[(i+n-1)%n]).Unit(), pts[(i+1)%n].Sub(p).Unit()
		nb, na := before.Left().Scale(-way), after.Left().Scale(-way)
		mid := nb.Add(na).Unit()
		out[i] = p.Add(mid.Scale(by / math.Max(0.3, mid.Dot(na))))
	}
	return out
}

// band keeps what of a polygon lies between two levels.
func band(pts []geometry.Point, lo, hi float64) []geometry.Point {
	over := geometry.Beside(pts, func(q geometry.Point) float64 { return q.Y - lo })
	return geometry.Beside(over, func(q geometry.Point) float64 { return -(q.Y - hi) })
}
