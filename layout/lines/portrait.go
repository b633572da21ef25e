package lines

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/solid"
	"ribwright/layout"
	"ribwright/layout/sight"
)

// Portrait draws a boat under its cloth over the bow from port, 160 mm wide, with all that
// hides left out.
func Portrait(f *frame.Frame, cloth *skin.Cloth) layout.Drawing {
	const wide, turn, rise = 160.0, 55 * math.Pi / 180, 22 * math.Pi / 180
	d := layout.Drawing{Name: "portrait", Title: "Three-quarter view"}
	k := wide / (f.Hull.Length*math.Sin(turn) + f.Hull.Beam*math.Cos(turn))
	b := solid.Of(f, solid.AsDrawn{}, nil)
	b.Cover(cloth)
	eye := solid.Eye{At: Eye{Turn: turn, Rise: rise}.direction(), Parallel: true}
	sight.Picture{View: sight.NewView(eye, k), Window: geometry.EmptyBox(), Fold: layout.Mark, Pen: penOf}.Draw(&d, b, geometry.Point{})
	return d
}
