package kit

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
)

// The clip that holds a bar to a gunwale, mm: a hook under its inner edge. How much
// wood stands inboard, how far the lip reaches under the gunwale, how thick lip and
// board are. Common practice, no source.
const (
	ClipWide  = 44.0
	ClipLip   = 10.0
	LipThick  = 16.0
	ClipThick = 18.0
)

// ClipOutline returns the clip seen along the boat: x outboard, y up, zero at the
// gunwale's upper inner edge, where the bar's lower face lies.
func ClipOutline(g frame.Gunwale) []geometry.Point {
	sin, cos := math.Sincos(g.Tilt)
	foot := geometry.Point{X: -sin * g.Height, Y: -cos * g.Height}          // of the inner face
	lip := geometry.Point{X: foot.X + ClipLip*cos, Y: foot.Y - ClipLip*sin} // under the gunwale
	low := math.Min(lip.Y, foot.Y) - LipThick
	back := math.Min(-ClipWide, foot.X-ClipWide+10)
	return []geometry.Point{{X: back}, {X: back, Y: low + 12}, {X: back + 12, Y: low}, {X: lip.X - 4, Y: low}, {X: lip.X, Y: low + 4}, lip, foot, {}}
}

// Clip returns so many clips for a gunwale, with their bolts' weight left to things.
func Clip(g frame.Gunwale, group, wood string, count int, middle geometry.Point3) Piece {
	p := Piece{Group: group, Name: "Clip", Count: count, Wood: wood, Thick: ClipThick, At: middle}
	p.Block(ClipOutline(g))
	return p
}

// Bolts returns what holds the fittings together.
func Bolts(group string, count int, how string, middle geometry.Point3) Thing {
	return Thing{Group: group, Key: "bolt", Name: "bolts of 8 mm with washers and wing nuts, that do not rust", Amount: float64(count), Unit: "each",
		How: how, Mass: boltMass * float64(count), At: middle}
}

// boltMass is one bolt's with its nut and washers, kg. Estimate.
const boltMass = 0.06
