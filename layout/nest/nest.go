// Package nest lays parts side by side on a plate for the cutter.
package nest

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/layout"
)

// Options say how the plate is filled.
type Options struct {
	Wide float64 // of the plate, mm, unless a part is longer; the height grows as needed
	Gap  float64 // least distance between parts and to the edges, mm
}

// DefaultOptions is a common width of sheet stock and room for a 6 mm cutter.
func DefaultOptions() Options { return Options{Wide: 1220, Gap: 12} }

// checkSide is the side of the square that shows whether a file has come
// through at its true size, mm.
const checkSide = 100

// Lay places the parts in rows by their upright boxes, tallest first, none
// turned, so that the grain runs as drawn. The scale check square lies alone in
// the lower left corner.
func Lay(title string, parts []layout.Part, o Options) layout.Plate {
	order := make([]int, len(parts))
	for i, p := range parts {
		order[i] = i
		o.Wide = math.Max(o.Wide, p.Bounds().W()+2*o.Gap)
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(parts[b].Bounds().H(), parts[a].Bounds().H())
	})
	out := layout.Plate{Title: title, W: o.Wide, Check: geometry.Box{
		Min: geometry.Point{X: o.Gap, Y: o.Gap}, Max: geometry.Point{X: o.Gap + checkSide, Y: o.Gap + checkSide}}}
	x, y, high := o.Gap+checkSide+o.Gap, o.Gap, float64(checkSide)
	for _, i := range order {
		b := parts[i].Bounds()
		if x+b.W()+o.Gap > o.Wide {
			x, y, high = o.Gap, y+high+o.Gap, 0
		}
		out.Parts = append(out.Parts, layout.Placed{Part: parts[i], Move: geometry.Shift(x-b.Min.X, y-b.Min.Y)})
		x += b.W() + o.Gap
		high = math.Max(high, b.H())
	}
	out.H = y + high + o.Gap
	return out
}
