package offsets

import (
	"fmt"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/water/float"
)

// A table with this many stations, none farther apart than this share of the
// length, is floated as it stands. One with fewer is faired to drawn stations.
const (
	enough = 9
	widest = 1.0/8 + 1e-6
	drawn  = 60
)

// Hull makes a hull to float: straight lines between the points of a section,
// and between stations, where they stand far apart, fair curves that do not
// overshoot through the points at equal shares of the girth.
//
// Errors: sections that hold nothing.
func (t *Table) Hull() (*float.Hull, error) {
	if len(t.Stations) >= enough && t.gap() <= widest*t.Length() {
		var out []float.Station
		for i, s := range t.Stations {
			out = append(out, float.Station{X: s.X, Half: s.Points, Knuckle: s.X == 0 && t.breaksAt(i)})
		}
		return float.New(out)
	}
	return t.faired()
}

// gap is the greatest distance between neighboring stations, mm.
func (t *Table) gap() float64 {
	most := 0.0
	for i := 1; i < len(t.Stations); i++ {
		most = max(most, t.Stations[i].X-t.Stations[i-1].X)
	}
	return most
}

// faired draws stations evenly over the hull, those measured included as breaks
// in nothing but the spacing.
func (t *Table) faired() (*float.Hull, error) {
	shares := t.shares()
	x, girths := make([]float64, len(t.Stations)), make([]girth, len(t.Stations))
	for i, s := range t.Stations {
		x[i], girths[i] = s.X, s.girth()
	}
	lines := make([][2]*curve.Ease, len(shares))
	for k, share := range shares {
		y, z := make([]float64, len(x)), make([]float64, len(x))
		for i := range t.Stations {
			p := girths[i].at(share)
			y[i], z[i] = p.X, p.Y
		}
		for c, v := range [][]float64{y, z} {
			e, err := curve.NewEase(x, v)
			if err != nil {
				return nil, fmt.Errorf("offsets: %w", err)
			}
			lines[k][c] = e
		}
	}
	var out []float.Station
	for i := range drawn + 1 {
		at := x[0] + t.Length()*float64(i)/drawn
		s := float.Station{X: at}
		for _, l := range lines {
			s.Half = append(s.Half, geometry.Point{X: max(0, l[0].At(at)), Y: l[1].At(at)})
		}
		out = append(out, s)
	}
	return float.New(out)
}

// most is how many shares are kept: more than a drawing has points.
const most = 300

// shares are the shares of the girth at which any station has a point, so that
// no corner is cut; of too many, even ones.
func (t *Table) shares() []float64 {
	const close = 1e-4
	var all []float64
	for _, s := range t.Stations {
		all = append(all, s.girth().shares...)
	}
	slices.Sort(all)
	out := []float64{0}
	for _, v := range all {
		if v > out[len(out)-1]+close {
			out = append(out, min(1, v))
		}
	}
	if len(out) < 2 || len(out) > most {
		out = nil
		for i := range most {
			out = append(out, float64(i)/(most-1))
		}
	}
	return out
}

// girth is the outline of a station from the middle line out, with the share of
// its length at each point.
type girth struct {
	pts    []geometry.Point
	shares []float64
}

// girth measures a station's outline; a first point off the middle line is reached
// over a level bottom.
func (s Station) girth() girth {
	g := girth{pts: s.Points}
	if s.Points[0].X > 0 && len(s.Points) > 1 {
		g.pts = append([]geometry.Point{{Y: s.Points[0].Y}}, s.Points...)
	}
	g.shares = make([]float64, len(g.pts))
	for i := 1; i < len(g.pts); i++ {
		g.shares[i] = g.shares[i-1] + g.pts[i].Sub(g.pts[i-1]).Norm()
	}
	if whole := g.shares[len(g.shares)-1]; whole > 0 {
		for i := range g.shares {
			g.shares[i] /= whole
		}
	}
	return g
}

// at is the point at a share of the girth.
func (g girth) at(share float64) geometry.Point {
	i, _ := slices.BinarySearch(g.shares, share)
	if i == 0 {
		return g.pts[0]
	}
	if i >= len(g.pts) {
		return g.pts[len(g.pts)-1]
	}
	if g.shares[i] <= g.shares[i-1] {
		return g.pts[i]
	}
	return g.pts[i-1].Lerp(g.pts[i], (share-g.shares[i-1])/(g.shares[i]-g.shares[i-1]))
}
