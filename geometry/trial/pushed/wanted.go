package pushed

import (
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
)

// wanted is the section that is asked for.
type wanted struct {
	hull.Section
	stringers []float64 // shares of its length
	stiff     float64   // of the rib in bending, N mm2
	length    float64   // of half of it, mm
	heading   float64   // at the gunwale, radians
	runs      []run
	crossings []geometry.Point // where the stringers cross it
}

// run is one bend of it in its place.
type run struct {
	curve.Bend
	from  geometry.Point // its start, from the keel's point
	ahead geometry.Point // heading there, of length 1
	turn  float64        // the same, radians
	end   geometry.Point // its end
	on    geometry.Point // heading there, of length 1
	along float64        // from the keel to its start, mm
}

func newWanted(s hull.Section, stringers []float64) *wanted {
	w := &wanted{Section: s, stringers: stringers, length: s.Half.Length()}
	along := 0.0
	w.runs = make([]run, 0, len(s.Half))
	for _, b := range s.Half {
		from, turn := s.Half.At(along)
		end, turned := s.Half.At(along + b.Length)
		w.runs = append(w.runs, run{b, from, geometry.Polar(1, turn), turn, end, geometry.Polar(1, turned), along})
		along += b.Length
	}
	_, w.heading = s.Half.End()
	w.crossings = make([]geometry.Point, len(stringers))
	for k, share := range stringers {
		w.crossings[k], _ = s.Half.At(share * w.length)
	}
	return w
}

// strip is the section as a strip of n arcs, in the room given where that is enough.
func (w *wanted) strip(n int, room []float64) *strip {
	out := &strip{turn: slices.Grow(room[:0], n)[:n]}
	i, before := 0, 0.0
	for k := range out.turn {
		s := float64(k+1) / float64(n) * w.length
		for i+1 < len(w.runs) && s > w.runs[i+1].along {
			i++
		}
		heading := w.runs[i].turn
		if r := &w.runs[i]; r.Radius != 0 {
			heading += (s - r.along) / r.Radius
		}
		out.turn[k], before = heading-before, heading
	}
	return out
}

// measure finds where the ends of a curve's bends stand farthest off the section on either
// side: what lies between falls short by less than 0.03 mm. On its way it calls passing
// before it walks each bend, with the share of the bends up to its end.
func (w *wanted) measure(c *curve.Walked, passing func(to float64)) (out, in Apart) {
	var atOut, atIn geometry.Point
	i := 0
	for k := range c.Bends() {
		passing(float64(k+1) / float64(c.Bends()))
		at := c.Joint(k)
		for i+1 < len(w.runs) && at.Sub(w.runs[i].end).Dot(w.runs[i].on) > 0 {
			i++
		}
		switch off := w.runs[i].off(at); {
		case off > in.By:
			in, atIn = Apart{By: off, Bend: i}, at
		case -off > out.By:
			out, atOut = Apart{By: -off, Bend: i}, at
		}
	}
	out.At, in.At = w.runs[out.Bend].foot(atOut), w.runs[in.Bend].foot(atIn)
	return out, in
}

// off returns how far a point lies to the left of the run, inside the section, measured
// square to it, mm.
func (r *run) off(p geometry.Point) float64 {
	to := p.Sub(r.from)
	across := r.ahead.Cross(to)
	if r.Radius == 0 {
		return across
	}
	x, y := to.Dot(r.ahead), r.Radius-across // from the arc's center
	return r.Radius - math.Sqrt(x*x+y*y)
}

// foot returns the place on the section that is nearest to a point beside the run, mm
// from the keel.
func (r *run) foot(p geometry.Point) float64 {
	to := p.Sub(r.from)
	if r.Radius == 0 {
		return r.along + to.Dot(r.ahead)
	}
	return r.along + r.Radius*math.Atan2(to.Dot(r.ahead), r.Radius-r.ahead.Cross(to))
}
