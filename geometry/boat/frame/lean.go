package frame

import (
	"math"

	"ribwright/geometry/design"
)

// MostLean returns how far the head of a rib may lean off its gunwale's square, either
// way, radians: as far as leaves the wood beside a cut mortise's bottom, or by gap half of
// the head at its tip. 0 where even an upright head leaves too little.
//
// Accuracy: exact; Build refuses what leans farther.
func MostLean(d *design.Design) float64 {
	g, r := d.Gunwale, d.Ribs
	if g.Mortises != design.ByGap {
		wall := float64(g.Width-r.Thickness-r.FitThickness) / 2
		return math.Atan(math.Max(0, wall-leastWall) / float64(r.MortiseDepth))
	}
	// taper is half the thickness t where tenon sin(lean) - slot cos(lean) = -t/2.
	half, tenon, slot := float64(r.Thickness)/2, float64(r.MortiseDepth-r.TenonGap), float64(g.Width)/float64(g.Plies)
	return math.Max(0, math.Atan2(slot, tenon)-math.Asin(math.Min(1, half/math.Hypot(slot, tenon))))
}
