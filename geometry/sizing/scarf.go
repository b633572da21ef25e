package sizing

import (
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// placeScarfs moves each scarf that the formulas ask for to the nearest room
// between mortises and cross pieces, which is only known when the gunwale has
// been drawn.
func placeScarfs(d *design.Design) error {
	wanted := d.Gunwale.Scarfs
	if len(wanted) == 0 {
		return nil
	}
	d.Gunwale.Scarfs = nil
	if d.Check() != nil {
		d.Gunwale.Scarfs = wanted
		return nil // the finish tells what is wrong
	}
	f, err := frame.Build(d)
	if err != nil {
		return err
	}
	for _, w := range wanted {
		best := math.Inf(1)
		for _, room := range f.Gunwale.ScarfRooms(f.Gunwale.ScarfLength) {
			if mid := (room.From + room.To) / 2; math.Abs(mid-float64(w)) < math.Abs(best-float64(w)) {
				best = mid
			}
		}
		if math.IsInf(best, 1) {
			best = float64(w)
		}
		d.Gunwale.Scarfs = append(d.Gunwale.Scarfs, measure.Length(math.Round(best)))
	}
	return nil
}
