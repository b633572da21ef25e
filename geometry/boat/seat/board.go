package seat

import (
	"math"

	"ribwright/geometry"
)

// board is how a hanger stands in the boat: square to the gunwale that it hangs on, which
// leans, closes in toward the ends and rises there.
type board struct {
	from               geometry.Point3 // the gunwale's upper inner edge, midway between the bolts
	fore, down, inward geometry.Point3 // of length 1: along the gunwale, down its face, square out of it
}

// board stands where the gunwale's middle line passes a station.
func (b Boat) board(x, wide, high float64) board {
	const near = 1.0 // mm, over which the gunwale is taken as straight
	foot := b.Gunwale.EdgeAt(x, 0, 0)
	fore := unit(b.Gunwale.EdgeAt(x+near, 0, 0).Sub(b.Gunwale.EdgeAt(x-near, 0, 0)))
	up := b.Gunwale.EdgeAt(x, 0, high).Sub(foot)
	down := unit(fore.Scale(up.Dot(fore)).Sub(up))
	inward := down.Cross(fore)
	return board{foot.Add(inward.Scale(wide / 2)).Sub(down.Scale(high)), fore, down, inward}
}

func unit(p geometry.Point3) geometry.Point3 { return p.Scale(1 / p.Norm()) }

// at is the place in the boat of a point of the board: forward of its middle, down from its
// top and inboard of the gunwale's inner face.
func (b board) at(fore, down, in float64) geometry.Point3 {
	return b.from.Add(b.fore.Scale(fore)).Add(b.down.Scale(down)).Add(b.inward.Scale(in))
}

// meets is where a line across the boat, at a station and a height, goes through the board
// so far inboard of the gunwale's inner face: x forward of the board's middle, y down from
// its top.
func (b board) meets(x, z, in float64) geometry.Point {
	p := b.at(0, 0, in)
	x, z = x-p.X, z-p.Z
	det := b.fore.X*b.down.Z - b.fore.Z*b.down.X
	return geometry.Point{X: (x*b.down.Z - z*b.down.X) / det, Y: (z*b.fore.X - x*b.fore.Z) / det}
}

// Mouth returns the corners of a rail's slot on the hanger's face that looks inboard, or on
// the one that looks outboard: x forward of the hanger's middle, y down from its top. The
// rail lies level, athwart and plumb, and the board does not, so that the two faces have
// their mouths in different places.
func (r Rail) Mouth(width, depth float64, inboard bool) [4]geometry.Point {
	in := r.Hanger.Block
	if inboard {
		in += Thick
	}
	return r.mouth(width, depth, in)
}

func (r Rail) mouth(width, depth, in float64) (out [4]geometry.Point) {
	for i, s := range [4][2]float64{{-1, 0}, {1, 0}, {1, 1}, {-1, 1}} {
		out[i] = r.Hanger.stands.meets(r.Station+s[0]*width/2, r.TopZ-s[1]*depth, in)
	}
	return out
}

// At returns the place in the boat of a point of a hanger on port: forward of its middle, down
// from its upper end, and inboard of the gunwale's inner face.
func (h Hanger) At(fore, down, in float64) geometry.Point3 { return h.stands.at(fore, down, in) }

// Shift returns how far the slot's outboard mouth lies forward of and below its inboard one.
func (r Rail) Shift() geometry.Point {
	h := r.Hanger
	return h.stands.meets(r.Station, r.TopZ, h.Block).Sub(h.stands.meets(r.Station, r.TopZ, h.Block+Thick))
}

// Through returns the corners of what both mouths share: what a saw square to the board
// opens; the rest is pared from either face.
func (r Rail) Through(width, depth float64) [4]geometry.Point {
	a, by := r.Mouth(width, depth, true), r.Shift()
	// Both are the same four-cornered shape, whose sides run down the board or nearly: each
	// corner moves toward the other mouth where that leads inward.
	fore, down := a[1].Sub(a[0]), a[3].Sub(a[0])
	det := fore.X*down.Y - fore.Y*down.X
	s, t := (by.X*down.Y-by.Y*down.X)/det, (by.Y*fore.X-by.X*fore.Y)/det
	lo, hi := geometry.Pt(max(s, 0), max(t, 0)), geometry.Pt(1+min(s, 0), 1+min(t, 0))
	corner := func(s, t float64) geometry.Point { return a[0].Add(fore.Scale(s)).Add(down.Scale(t)) }
	return [4]geometry.Point{corner(lo.X, lo.Y), corner(hi.X, lo.Y), corner(hi.X, hi.Y), corner(lo.X, hi.Y)}
}

// wideFor is how wide a board must be for a rail that goes through it at a slant in plan
// and leaves enough wood beside both mouths; skew is the gunwale's off the middle line.
func wideFor(width, skew float64) float64 {
	return width/math.Cos(skew) + Thick*math.Tan(skew) + 2*beside
}
