package eyes

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"time"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/layout"
	"ribwright/layout/pattern"
	"ribwright/render/pdf"
	"ribwright/render/rendertest"
)

const (
	longest = 4800.0 // of a stretch on one page, mm: viewers stop at 5080
	shared  = 20.0   // that neighbouring stretches both show, mm
	edge    = 5.0    // of bare paper round a stretch, mm
)

// Whole draws a pattern of a shipped design in one piece, on a page as large as
// it is. One longer than a page may be comes on several, the first of them as
// long as can be, so that they part at other places than the sheets do.
func Whole(v *Viewer, shipped, name string) (*Sheets, error) {
	d, err := design.Shipped(shipped)
	if err != nil {
		return nil, err
	}
	f, err := frame.Build(d)
	if err != nil {
		return nil, err
	}
	bent, err := bend.Of(f)
	if err != nil {
		return nil, err
	}
	all := append(pattern.All(bent, measure.Metric, pattern.Stick), pattern.All(bent, measure.Metric, pattern.Strips)...)
	i := slices.IndexFunc(all, func(d layout.Drawing) bool { return d.Name == name })
	if i < 0 {
		return nil, fmt.Errorf("%s has no pattern %q", shipped, name)
	}
	return WholeOf(v, &all[i])
}

// WholeOf draws any pattern in one piece.
func WholeOf(v *Viewer, d *layout.Drawing) (*Sheets, error) {
	name, doc := d.Name, spread(d)
	var file bytes.Buffer
	if err := pdf.Encode(&file, doc, time.Unix(0, 0)); err != nil {
		return nil, err
	}
	var views []rendertest.View
	for n, s := range doc.Sheets {
		b, m := s.Views[0].Frame, s.Views[0].ToSheet
		views = append(views, rendertest.View{Page: n + 1, Pattern: name, Tile: fmt.Sprint(n + 1), Sheet: [2]float64{doc.Paper.W, doc.Paper.H},
			Edges: [4]float64{b.Min.X, b.Min.Y, b.Max.X, b.Max.Y}, ToSheet: [6]float64{m.A, m.B, m.C, m.D, m.E, m.F}})
	}
	return Read(v, file.Bytes(), views)
}

// spread lays a drawing on one or more long pages, with nothing else on them.
func spread(d *layout.Drawing) layout.Document {
	all := d.Bounds().Grow(1)
	long := math.Min(all.W(), longest)
	doc := layout.Document{Title: d.Title, Paper: layout.Paper{Name: "one piece", W: long + 2*edge, H: all.H() + 2*edge}}
	for from := all.Min.X; ; from += long - shared {
		part := geometry.Box{Min: geometry.Point{X: from, Y: all.Min.Y}, Max: geometry.Point{X: math.Min(from+long, all.Max.X), Y: all.Max.Y}}
		doc.Sheets = append(doc.Sheets, layout.Sheet{Views: []layout.View{{
			Drawing: d, Frame: part, ToSheet: geometry.Shift(edge-from, edge-all.Min.Y)}}})
		if part.Max.X >= all.Max.X {
			return doc
		}
	}
}

// Read opens a printed set with the table of its tiles.
func Read(v *Viewer, src []byte, views []rendertest.View) (*Sheets, error) {
	content, err := rendertest.ReadPDF(src)
	if err != nil {
		return nil, err
	}
	drawn, err := content.Pages()
	if err != nil {
		return nil, err
	}
	f, err := v.Open(src)
	if err != nil {
		return nil, err
	}
	return &Sheets{File: f, Drawn: drawn, Views: views}, nil
}
