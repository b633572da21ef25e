package json

import (
	"ribwright/geometry/design"
	"ribwright/layout"
	"ribwright/layout/report"
)

// Bars are how long a proof's scale bars are, as they are lettered.
type Bars struct{ Across, Down string }

// Sheets tells of patterns on sheets: each as a small drawing, in mm of its file, what is
// said of them, and what a proof of the same paper measures.
//
// Errors: a design that has no fingerprint, which Check would have refused.
func Sheets(d *design.Design, paper layout.Paper, small []layout.Drawing, told []report.Block, bars Bars) (Object, error) {
	says, err := Blocks(told, nil)
	if err != nil {
		return nil, err
	}
	return of(d, Object{
		{"paper", Object{{"name", paper.Name}, {"w_mm", fixed(paper.W)}, {"h_mm", fixed(paper.H)}}},
		{"told", says},
		{"bars", Object{{"across", bars.Across}, {"down", bars.Down}}},
		{"sheets", each(small, drawing)},
	}...)
}
