package json

import (
	"ribwright/geometry"
	"ribwright/layout"
)

// pages lists what each sheet shows of which pattern, so that anyone can put
// the tiles back together. A pattern that is half of the whole is listed once
// more for the other half, as it lies when it is turned.
func pages(doc layout.Document) []Object {
	out := []Object{}
	for i, s := range doc.Sheets {
		for _, v := range s.Views {
			show := func(b geometry.Box, m geometry.Affine) Object {
				return Object{
					{"page", i + 1}, // in the file of sheets
					{"pattern", v.Drawing.Name}, {"tile", v.Tile},
					{"frame_mm", as[fixed](b.Min.X, b.Min.Y, b.Max.X, b.Max.Y)},
					{"to_sheet", as[factor](m.A, m.B, m.C, m.D, m.E, m.F)},
					{"sheet_mm", as[fixed](doc.Paper.W, doc.Paper.H)},
				}
			}
			out = append(out, show(v.Frame, v.ToSheet))
			if v.Drawing.Turns {
				other := geometry.Around(v.Frame.Min.Scale(-1), v.Frame.Max.Scale(-1))
				turned := show(other, geometry.Stretch(-1, -1).Then(v.ToSheet))
				out = append(out, append(turned, field{"turned", true}))
			}
		}
	}
	return out
}
