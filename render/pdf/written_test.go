package pdf_test

import (
	"bytes"
	"math"
	"testing"
	"time"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/render/pdf"
	"ribwright/render/rendertest"
)

// step is half of the last place of a point the writer rounds to, mm: two
// decimals of 1/72 inch.
const step = 0.005*25.4/72 + 1e-9

// made is the date in the files.
func made() time.Time { return time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC) }

func pt(x, y float64) geometry.Point { return geometry.Point{X: x, Y: y} }

func a4() layout.Paper { return layout.Paper{Name: "a4", W: 297, H: 210} }

// shown returns a document whose one sheet shows the strokes and texts in a
// frame of their own coordinates, moved to the sheet.
func shown(strokes []layout.Stroke, texts []layout.Text, frame geometry.Box, move geometry.Affine) layout.Document {
	d := &layout.Drawing{Name: "test", Title: "Bow stem", Strokes: strokes, Texts: texts}
	return layout.Document{Title: "Brook", Paper: a4(), Sheets: []layout.Sheet{
		{Views: []layout.View{{Drawing: d, Frame: frame, ToSheet: move}}}}}
}

// onSheet returns a document of one sheet with ink of its own.
func onSheet(strokes []layout.Stroke, texts []layout.Text) layout.Document {
	return layout.Document{Title: "Brook", Paper: a4(), Sheets: []layout.Sheet{{Strokes: strokes, Texts: texts}}}
}

func encode(t *testing.T, doc layout.Document) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := pdf.Encode(&b, doc, made()); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func readFile(t *testing.T, doc layout.Document) *rendertest.PDF {
	t.Helper()
	f, err := rendertest.ReadPDF(encode(t, doc))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func readPages(t *testing.T, doc layout.Document) []rendertest.Page {
	t.Helper()
	pages, err := readFile(t, doc).Pages()
	if err != nil {
		t.Fatal(err)
	}
	if len(pages) != len(doc.Sheets) {
		t.Fatalf("%d pages of %d sheets", len(pages), len(doc.Sheets))
	}
	return pages
}

// readPath returns the one outline a document with a single stroke draws.
func readPath(t *testing.T, doc layout.Document) rendertest.Outline {
	t.Helper()
	strokes := readPages(t, doc)[0].Strokes
	if len(strokes) != 1 || len(strokes[0].Outlines) != 1 {
		t.Fatalf("%d strokes, want one of one outline", len(strokes))
	}
	return strokes[0].Outlines[0]
}

// at fails unless got lies at want, to tol mm in each direction.
func at(t *testing.T, what string, got rendertest.Point, want geometry.Point, tol float64) {
	t.Helper()
	if !(math.Abs(got.X-want.X) <= tol && math.Abs(got.Y-want.Y) <= tol) {
		t.Errorf("%s at (%.5f, %.5f), want (%.5f, %.5f), off by (%.5f, %.5f), allowed %g mm",
			what, got.X, got.Y, want.X, want.Y, got.X-want.X, got.Y-want.Y, tol)
	}
}

func alone(p curve.Path) []layout.Stroke { return []layout.Stroke{{Pen: layout.Cut, Path: p}} }
