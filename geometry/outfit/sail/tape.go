package sail

import (
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
)

// Taped is a panel as two tapes set it out on a floor: a base line from its first
// corner to its second, and every other corner by its way along that line and off it,
// or by its distance from both ends. Corners run counterclockwise, in the panel's own axes.
type Taped struct {
	Corners []geometry.Point
	Rounds  []Round
}

// Round is an edge of a panel that is cut round.
type Round struct {
	From  int       // the corner that it begins at; it ends at the next
	Chord float64   // straight from corner to corner, mm
	Off   []float64 // how far it stands outside that line at each eighth of it, mm
}

// eighths are how many parts the line under a round edge has.
const eighths = 8

// sharpest is the turn, radians, up to which two chords belong to one round edge: those
// of the roundest one turn 3 degrees, and corners of sails and panels turn 8 and more.
const sharpest = 5 * math.Pi / 180

// Tape returns how the panel is set out.
func (p Panel) Tape() Taped {
	pts := around(p.Outline)
	n := len(pts)
	var at []int
	for i := range pts {
		before, after := pts[i].Sub(pts[(i+n-1)%n]), pts[(i+1)%n].Sub(pts[i])
		if math.Abs(math.Atan2(before.Cross(after), before.Dot(after))) > sharpest {
			at = append(at, i)
		}
	}
	out := Taped{}
	for k, i := range at {
		out.Corners = append(out.Corners, pts[i])
		j := at[(k+1)%len(at)]
		if r, ok := round(run(pts, i, j)); ok {
			r.From = k
			out.Rounds = append(out.Rounds, r)
		}
	}
	return out
}

// straight is how little round an edge must be to be cut straight, mm. Our own choice.
const straight = 1.5

// around is a polygon without repeated points, counterclockwise, from the left end of
// its lowest side on.
func around(outline []geometry.Point) []geometry.Point {
	pts := slices.CompactFunc(slices.Clone(outline), func(a, b geometry.Point) bool { return a.Sub(b).Norm() < 1e-6 })
	for len(pts) > 1 && pts[0].Sub(pts[len(pts)-1]).Norm() < 1e-6 {
		pts = pts[:len(pts)-1]
	}
	if curve.Area(pts) < 0 {
		slices.Reverse(pts)
	}
	first, low := 0, geometry.Around(pts...).Min.Y+1e-6
	for i, q := range pts {
		if q.Y <= low && (pts[first].Y > low || q.X < pts[first].X) {
			first = i
		}
	}
	return slices.Concat(pts[first:], pts[:first])
}

// run lists the points of a polygon from one to another, both included.
func run(pts []geometry.Point, from, to int) []geometry.Point {
	out := []geometry.Point{pts[from]}
	for i := from; i != to; {
		i = (i + 1) % len(pts)
		out = append(out, pts[i])
	}
	return out
}

// round measures an edge against the straight line between its ends; it reports false
// for one that is as straight as cloth is cut.
func round(edge []geometry.Point) (Round, bool) {
	a, b := edge[0], edge[len(edge)-1]
	out := Round{Chord: b.Sub(a).Norm()}
	along := b.Sub(a).Unit()
	most := 0.0
	for i := 1; i < eighths; i++ {
		want := out.Chord * float64(i) / eighths
		for k := 1; k < len(edge); k++ {
			p, q := edge[k-1].Sub(a), edge[k].Sub(a)
			if t := (want - p.Dot(along)) / (q.Sub(p).Dot(along)); t >= 0 && t <= 1 {
				off := -along.Cross(p.Lerp(q, t)) // outward is to the right of the way round
				out.Off, most = append(out.Off, off), math.Max(most, math.Abs(off))
				break
			}
		}
	}
	return out, most > straight
}
