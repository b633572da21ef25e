package label

import (
	"math"

	"ribwright/geometry"
)

const (
	sectors = 256  // that the lines round a place are told apart by
	beside  = 1e-3 // radians by which a line lies in a sector too that it only comes near
	touched = 0.01 // mm within which a line lies in every way from a place: far more than a way is wide
)

// fan is the lines of a ground as they lie round a place: a straight way from there is asked
// only of those that lie its way.
type fan struct {
	at    geometry.Point
	ends  [sectors + 1]int // where the lines of a sector end and those of the next begin
	lines []straight       // a line once for each of its sectors
}

// fan sees the lines of the ground from a place.
func (g *Ground) fan(at geometry.Point) *fan {
	f := &fan{at: at}
	type spread struct{ first, n int }
	var all []spread
	for l := range g.lines() {
		first, n := f.spread(l)
		all = append(all, spread{first, n})
		for k := range n {
			f.ends[(first+k)%sectors+1]++
		}
	}
	for k := range sectors {
		f.ends[k+1] += f.ends[k]
	}
	f.lines = make([]straight, f.ends[sectors])
	next, i := f.ends, 0
	for l := range g.lines() {
		for k := range all[i].n {
			to := &next[(all[i].first+k)%sectors]
			f.lines[*to] = l
			*to++
		}
		i++
	}
	return f
}

// spread is the sectors that a line lies in: the first, and how many.
func (f *fan) spread(l straight) (first, n int) {
	if f.at.Off(l.from, l.to) < touched {
		return 0, sectors
	}
	a, b := l.from.Sub(f.at), l.to.Sub(f.at)
	from, turn := math.Atan2(a.Y, a.X), math.Atan2(a.Cross(b), a.Dot(b))
	first, last := sector(from+min(turn, 0)-beside), sector(from+max(turn, 0)+beside)
	return first + sectors, last - first + 1
}

// sector counts the sectors up to an angle, from straight to the left on.
func sector(angle float64) int { return int(math.Floor((angle/(2*math.Pi) + 0.5) * sectors)) }

// crossings counts the lines that a straight line from the place to q meets, up to most.
func (f *fan) crossings(q geometry.Point, most int) int {
	b := thin(f.at, q)
	k := sector(b.Angle) % sectors
	return b.met(f.lines[f.ends[k]:f.ends[k+1]], b.Bounds(), geometry.Polar(1, b.Angle), most)
}
