package fair

import (
	"errors"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/survey/offsets"
)

// fitEnds finds the straight of the keel, the rocker and the stems from the
// lowest points, and from all points of stations too narrow to be sections.
func (f *fit) fitEnds() error {
	d := f.d
	if !f.even {
		stern := d.Bow
		d.Stern = &stern
	}
	spans := []span{{0, 0.78 * 2 * f.half}, {0, 200}, {-9, 44}, {65, 500}, {0, 200}, {-9, 44}, {65, 500}}
	n := 4
	if !f.even {
		n = 7
	}
	cost := func(p []float64) float64 {
		f.setEnds(p)
		h, err := hull.New(d)
		if err != nil {
			return math.Inf(1)
		}
		sum := f.profileCost(h, h.Bow, f.bow, 1)
		if !f.even {
			sum += f.profileCost(h, h.Stern, f.aft, -1)
		}
		for i := 3; i < n; i += 3 { // of equals the easier forefoot
			sum += 1e-4 * (p[i] - 200) * (p[i] - 200)
		}
		return sum
	}
	var starts [][]float64
	for _, straight := range []float64{0.5, 1, 1.4} {
		for _, rake := range []float64{2, 12, 25} {
			starts = append(starts, []float64{straight * f.half, 25, rake, 120, 25, rake, 120}[:n])
		}
	}
	p, c := least(spans[:n], starts, cost)
	if p == nil || c >= 1e11 {
		return errors.New("no keel and stems fit the lowest points and the ends; the table needs an end point at each end")
	}
	f.setEnds(p)
	return nil
}

// setEnds writes parameters into the design, rounded as its file will show them.
func (f *fit) setEnds(p []float64) {
	d := f.d
	d.Hull.KeelStraight = rounded(p[0])
	d.Hull.RockerBow, d.Bow.Rake, d.Bow.ForefootRadius = rounded(p[1]), turned(p[2]), rounded(p[3])
	d.Hull.RockerStern = d.Hull.RockerBow
	if !f.even {
		d.Hull.RockerStern, d.Stern.Rake, d.Stern.ForefootRadius = rounded(p[4]), turned(p[5]), rounded(p[6])
	}
}

// profileCost sums the squares of what the lowest points, and every point of the
// narrow ends, lie off the keel and stem. Sections must stand on the keel: one
// past its toe costs as much as it lies past.
func (f *fit) profileCost(h *hull.Hull, e hull.End, half []offsets.Station, side float64) float64 {
	sum := 0.0
	for _, s := range half {
		past := s.X + 1 - e.Toe.X
		switch {
		case isSection(s) && past > 0:
			sum += 100 * past * past
		case isSection(s):
			z, _ := h.KeelZ(side * s.X)
			sum += (z - s.Keel().Y) * (z - s.Keel().Y)
		default:
			for _, p := range endPoints(s) {
				off := profileOff(h, e, geometry.Point{X: s.X, Y: p.Y}, side)
				sum += off * off
			}
		}
	}
	return sum
}

// endPoints are the points of a narrow station that show the profile: the lowest,
// and the uppermost of the outermost station, which ends the sheer.
func endPoints(s offsets.Station) []geometry.Point {
	if len(s.Points) > 1 && s.Sheer().X < 8 {
		return []geometry.Point{s.Keel(), s.Sheer()}
	}
	return []geometry.Point{s.Keel()}
}

// profileOff is the distance of a point from the profile: keel, then the stem's
// outer edge. x is the distance from midship.
func profileOff(h *hull.Hull, e hull.End, p geometry.Point, side float64) float64 {
	const keelStep, edgeSteps = 25.0, 40
	var line []geometry.Point
	for x := math.Max(0, math.Min(p.X-200, e.Toe.X)); ; x = math.Min(x+keelStep, e.Toe.X) {
		z, _ := h.KeelZ(side * x)
		line = append(line, geometry.Point{X: x, Y: z})
		if x == e.Toe.X {
			break
		}
	}
	for i := 1; i <= edgeSteps; i++ {
		q, _ := e.Point(e.Outer.Length() * float64(i) / edgeSteps)
		line = append(line, q)
	}
	return offLine(p, line)
}

// offLine is the distance of a point from a row of points.
func offLine(p geometry.Point, line []geometry.Point) float64 {
	best := math.Inf(1)
	for i := 1; i < len(line); i++ {
		best = math.Min(best, p.Off(line[i-1], line[i]))
	}
	return best
}
