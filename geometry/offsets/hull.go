package offsets

import (
	"fmt"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/float"
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
		for _, s := range t.Stations {
			out = append(out, float.Station{X: s.X, Half: s.Points, Knuckle: s.X == 0})
		}
		return float.New(out)
	}
	return t.faired()
}

// gap is the greatest distance between neighbouring stations, mm.
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
	x := make([]float64, len(t.Stations))
	for i, s := range t.Stations {
		x[i] = s.X
	}
	lines := make([][2]*curve.Ease, len(shares))
	for k, share := range shares {
		y, z := make([]float64, len(x)), make([]float64, len(x))
		for i, s := range t.Stations {
			p := s.at(share)
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

// shares are the shares of the girth at which any station has a point, so that
// no corner is cut.
func (t *Table) shares() []float64 {
	const close = 1e-4
	var all []float64
	for _, s := range t.Stations {
		all = append(all, s.shares()...)
	}
	slices.Sort(all)
	out := []float64{0}
	for _, v := range all {
		if v > out[len(out)-1]+close {
			out = append(out, min(1, v))
		}
	}
	if len(out) < 2 {
		out = append(out, 1)
	}
	return out
}

// shares are the shares of the girth of a station's points; a first point off the
// middle line is reached over a level bottom.
func (s Station) shares() []float64 {
	pts := s.closed()
	out := make([]float64, len(pts))
	for i := 1; i < len(pts); i++ {
		out[i] = out[i-1] + pts[i].Sub(pts[i-1]).Norm()
	}
	if girth := out[len(out)-1]; girth > 0 {
		for i := range out {
			out[i] /= girth
		}
	}
	return out
}

// closed is the outline from the middle line out.
func (s Station) closed() []geometry.Point {
	if s.Points[0].X > 0 && len(s.Points) > 1 {
		return append([]geometry.Point{{Y: s.Points[0].Y}}, s.Points...)
	}
	return s.Points
}

// at is the point at a share of the girth.
func (s Station) at(share float64) geometry.Point {
	pts, shares := s.closed(), s.shares()
	for i := 1; i < len(pts); i++ {
		if share <= shares[i] && shares[i] > shares[i-1] {
			return pts[i-1].Lerp(pts[i], (share-shares[i-1])/(shares[i]-shares[i-1]))
		}
	}
	return pts[len(pts)-1]
}
