package json

import (
	"ribwright/geometry"
	"ribwright/layout"
)

type pagePart struct {
	Page    int       `json:"page"` // in the file of sheets, from 1
	Pattern string    `json:"pattern"`
	Tile    string    `json:"tile"`
	Frame   [4]fixed  `json:"frame_mm"`
	ToSheet [6]factor `json:"to_sheet"`
	Sheet   [2]fixed  `json:"sheet_mm"`
	Turned  bool      `json:"turned,omitempty"` // shows the half pattern turned end for end
}

// pagesOf lists what each sheet shows of which pattern, so that anyone can put
// the tiles back together. A pattern that is half of the whole is listed once
// more for the other half, as it lies when it is turned.
func pagesOf(doc layout.Document) []pagePart {
	out := []pagePart{}
	for i, s := range doc.Sheets {
		for _, v := range s.Views {
			out = append(out, partOf(doc, i, v, v.Frame, v.ToSheet))
			if v.Drawing.Turns {
				b := v.Frame
				turned := geometry.Around(b.Min.Scale(-1), b.Max.Scale(-1))
				out = append(out, partOf(doc, i, v, turned, geometry.Stretch(-1, -1).Then(v.ToSheet)))
				out[len(out)-1].Turned = true
			}
		}
	}
	return out
}

func partOf(doc layout.Document, sheet int, v layout.View, b geometry.Box, m geometry.Affine) pagePart {
	return pagePart{
		Page: sheet + 1, Pattern: v.Drawing.Name, Tile: v.Tile,
		Frame:   [4]fixed{fixed(b.Min.X), fixed(b.Min.Y), fixed(b.Max.X), fixed(b.Max.Y)},
		ToSheet: [6]factor{factor(m.A), factor(m.B), factor(m.C), factor(m.D), factor(m.E), factor(m.F)},
		Sheet:   [2]fixed{fixed(doc.Paper.W), fixed(doc.Paper.H)},
	}
}

// pagesIf lists the pages of sheets that there may be none of.
func pagesIf(doc *layout.Document) []pagePart {
	if doc == nil {
		return nil
	}
	return pagesOf(*doc)
}
