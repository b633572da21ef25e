package laden

import (
	"ribwright/geometry"
	"ribwright/geometry/measure"
)

// bed is what pushes up on keel or stringer at a rib, afloat and aground, N for each mm that it sinks.
type bed struct {
	of             int
	afloat, ground float64
}

const (
	weighs = 1e-6 * measure.Gravity // what fresh water pushes up with on a square mm for each mm that it sinks, N
	hard   = 1000.0                 // what hard ground does under a crossing: far stiffer than any rib, N/mm
)

// bed lays keel and stringers at a rib on the water: each on the breadth of cloth that it carries,
// half-way to its neighbors and no farther out than the waterline, over half a pitch either way;
// those on the bottom arc on the ground.
func (b *builder) bed(i int, line []*joint) {
	r := b.frame.Ribs[i]
	cloth := b.frame.Corners(r)
	wet := wetted(cloth, float64(b.frame.Design.Hull.Waterline))
	long := b.frame.Carries(i)
	from := 0.0
	for k, j := range line[:len(line)-1] {
		to := min(wet, (cloth[2*k+1].X+cloth[2*k+2].X)/2)
		s := bed{of: j.of[2], afloat: weighs * max(0, to-from) * long}
		if k == 0 || !r.Section.Merged && r.Stringers[k-1] <= r.Section.Half[0].Length {
			s.ground = hard
		}
		b.beds = append(b.beds, s)
		from = to
	}
}

// wetted is how far out cloth meets a water line; to its end where it does not.
func wetted(cloth []geometry.Point, z float64) float64 {
	for k := 1; k < len(cloth); k++ {
		if p, q := cloth[k-1], cloth[k]; p.Y <= z && q.Y > z {
			return p.Lerp(q, (z-p.Y)/(q.Y-p.Y)).X
		}
	}
	if cloth[0].Y > z {
		return 0
	}
	return cloth[len(cloth)-1].X
}
