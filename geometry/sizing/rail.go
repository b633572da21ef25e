package sizing

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/curve"
)

// rail is the gunwale of a sketch. It keeps its tilt square across the boat, and its stock is
// as long as its line. Between the ribs, where alone seats hang, stations go with lengths in a
// straight line: 0.15 mm off at most, and much quicker (TestRailMarks).
type rail struct {
	line     *curve.Track
	sin, cos float64          // of its tilt
	marks    []geometry.Point // X the station, Y the mark on the stock: its after end, the ribs from aft forward, its forward end
}

// railPanel is the longest stretch of the line that is measured in one: some 1e-4 mm are
// lost in a whole gunwale (TestRailMarks), where a finished frame's loses less and takes
// several times as long.
const railPanel = 150

func newRail(line *curve.Track, tilt float64, ribs []hull.Section) rail {
	r := rail{line: line, marks: make([]geometry.Point, 0, len(ribs)+2)}
	r.sin, r.cos = math.Sincos(tilt)
	aft, fore := line.Ends()
	r.marks = append(r.marks, geometry.Point{X: aft, Y: r.between(0, aft)})
	for _, s := range ribs {
		r.to(s.Station)
	}
	r.to(fore)
	return r
}

// to marks the next station.
func (r *rail) to(x float64) {
	last := r.marks[len(r.marks)-1]
	r.marks = append(r.marks, geometry.Point{X: x, Y: last.Y + r.between(last.X, x)})
}

// between is the length of the line from one station to another.
func (r *rail) between(a, b float64) float64 {
	return curve.Integrate(r.speed, a, b, int(math.Ceil(math.Abs(b-a)/railPanel)))
}

func (r *rail) speed(x float64) float64 {
	dy, dz := r.line.Slopes(x)
	return math.Sqrt(1 + dy*dy + dz*dz)
}

// long is the length of the stick.
func (r *rail) long() float64 { return r.marks[len(r.marks)-1].Y - r.marks[0].Y }

func (r *rail) EdgeAt(x, across, up float64) geometry.Point3 {
	p := r.line.Point(x)
	return geometry.Point3{X: x, Y: p.Y + across*r.cos + up*r.sin, Z: p.Z - across*r.sin + up*r.cos}
}

func (r *rail) OnStock(x float64) float64 {
	k := 0
	for k < len(r.marks)-1 && r.marks[k+1].X <= x {
		k++
	}
	return r.marks[k].Y + r.between(r.marks[k].X, x)
}

func (r *rail) StationOf(mark float64) float64 {
	k := 1
	for k < len(r.marks)-1 && r.marks[k].Y < mark {
		k++
	}
	a, b := r.marks[k-1], r.marks[k]
	x := a.X + (b.X-a.X)*(mark-a.Y)/(b.Y-a.Y)
	if k > 1 && k < len(r.marks)-1 {
		return x
	}
	for range 3 { // Newton, in the ends: the speed is nearly constant
		x -= (a.Y + r.between(a.X, x) - mark) / r.speed(x)
	}
	return x
}

// fitted is the boat that seats are fitted into.
func (s *sketch) fitted() seat.Boat {
	b := seat.Boat{Design: s.d, Hull: s.hull, Gunwale: &s.rail, Mortises: make([]seat.Span, 0, len(s.ribs))}
	marks := s.rail.marks
	b.Stock = seat.Span{From: marks[0].Y, To: marks[len(marks)-1].Y}
	half := float64(s.d.Ribs.Width+s.d.Ribs.FitWidth) / 2
	for _, m := range marks[1 : len(marks)-1] {
		b.Mortises = append(b.Mortises, seat.Span{From: m.Y - half, To: m.Y + half})
	}
	b.Crosses = seat.Under(s.d.Thwarts, s.rail.OnStock)
	return b
}
