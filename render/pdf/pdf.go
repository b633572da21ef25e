// Package pdf writes a document as a PDF at full size. It alone knows points
// and y down. fpdf only writes the bytes: every curve is ours, because its own
// arcs are off by up to 1.5 % of the radius.
package pdf

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strconv"
	"time"

	"github.com/go-pdf/fpdf"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/layout/paper"
	"ribwright/render"
)

// perMM is the number of points in a millimeter.
const perMM = 72 / 25.4

// Encode writes the document, one page a sheet, in black, with a bookmark for
// every pattern and labels that say what lies on each page. made is the date in
// the file; it must be the same for the same bytes.
// Accuracy: line ends to 0.002 mm, arcs within 5e-7 of their radius.
// Errors: a document without sheets, a number that is no place on paper, a view
// that is turned or not at full size, a page too long for viewers, or the
// writer's own error. Nothing is written to w unless the whole file is made.
func Encode(w io.Writer, doc layout.Document, made time.Time) error {
	if err := render.CheckDocument(doc); err != nil {
		return err
	}
	if max(doc.Paper.W, doc.Paper.H) > paper.Longest {
		return fmt.Errorf("a page of %.0f by %.0f mm is longer than the %.0f mm that viewers show; use smaller paper", doc.Paper.W, doc.Paper.H, paper.Longest)
	}
	f := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "pt",
		Size: fpdf.SizeType{Wd: doc.Paper.W * perMM, Ht: doc.Paper.H * perMM}})
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	// A pointed corner of a narrow part would reach past it by a millimeter.
	f.SetLineJoinStyle("round")
	f.SetCatalogSort(true)
	f.SetCreationDate(made.UTC())
	f.SetModificationDate(made.UTC())
	f.SetTitle(lettering.Safe(doc.Title), true)
	f.SetCreator("ribwright", false)
	f.SetProducer("ribwright", false)
	p := &page{f: f, high: doc.Paper.H, toCP1252: f.UnicodeTranslatorFromDescriptor("")}
	marked := bookmarks{}
	for _, s := range doc.Sheets {
		f.AddPage()
		marked.add(f, s)
		p.sheet(s)
	}
	var out bytes.Buffer
	if err := f.Output(&out); err != nil {
		return err
	}
	full, err := withViewerHints(out.Bytes(), labels(doc))
	if err != nil {
		return err
	}
	_, err = w.Write(full)
	return err
}

type page struct {
	f        *fpdf.Fpdf
	high     float64 // of the sheet, mm
	toCP1252 func(string) string
	pen      layout.Pen
	penSet   bool // whether pen is what the page's state holds
}

func (p *page) sheet(s layout.Sheet) {
	p.penSet = false
	for _, v := range s.Views {
		p.view(v)
	}
	for _, k := range s.Strokes {
		p.stroke(k.Pen, k.Path)
	}
	for _, t := range s.Texts {
		p.text(t)
	}
}

// view draws what shows of a drawing, clipped to its frame. Dashes are not cut
// off but clipped, so they meet across a joint.
func (p *page) view(v layout.View) {
	lo, hi := p.at(v.ToSheet.Apply(v.Frame.Min)), p.at(v.ToSheet.Apply(v.Frame.Max))
	box := geometry.Around(lo, hi)
	p.f.ClipRect(box.Min.X, box.Min.Y, box.W(), box.H(), false)
	p.penSet = false
	for _, s := range v.Drawing.Strokes {
		if s.Path.Bounds().Grow(s.Pen.Width()).Overlaps(v.Frame) {
			p.stroke(s.Pen, s.Path.Map(v.ToSheet))
		}
	}
	for _, t := range v.Drawing.Texts {
		if t.Bounds().Overlaps(v.Frame) {
			t.At = v.ToSheet.Apply(t.At)
			p.text(t)
		}
	}
	p.f.ClipEnd()
	p.penSet = false
}

// at turns a place on the sheet into points from its upper left corner.
func (p *page) at(q geometry.Point) geometry.Point {
	return geometry.Point{X: q.X * perMM, Y: (p.high - q.Y) * perMM}
}

func (p *page) use(pen layout.Pen) {
	if p.penSet && p.pen == pen {
		return
	}
	p.pen, p.penSet = pen, true
	p.f.SetLineWidth(pen.Width() * perMM)
	dash := make([]float64, len(pen.Dash()))
	for i, d := range pen.Dash() {
		dash[i] = d * perMM
	}
	p.f.SetDashPattern(dash, 0)
}

func (p *page) stroke(pen layout.Pen, path curve.Path) {
	if len(path) == 0 {
		return
	}
	p.use(pen)
	start := p.at(path[0].Start())
	p.f.MoveTo(start.X, start.Y)
	last := len(path) - 1
	closed := path.Closed()
	for i, s := range path {
		switch s := s.(type) {
		case curve.Line:
			if closed && i == last {
				continue // the closing stroke draws it
			}
			b := p.at(s.B)
			p.f.LineTo(b.X, b.Y)
		case curve.Cubic:
			p.cubics(closed && i == last, start, s)
		case curve.Arc:
			p.cubics(closed && i == last, start, s.Cubics()...)
		}
	}
	if closed {
		p.f.ClosePath()
	}
	p.f.DrawPath("D")
}

// cubics draws curves one after the other. When they close the outline the last
// one ends where the file says that it starts.
func (p *page) cubics(closing bool, start geometry.Point, all ...curve.Cubic) {
	for i, c := range all {
		a, b, d := p.at(c.P1), p.at(c.P2), p.at(c.P3)
		if closing && i == len(all)-1 {
			d = p.written(start)
		}
		p.f.CurveBezierCubicTo(a.X, a.Y, b.X, b.Y, d.X, d.Y)
	}
}

// written returns where the file puts the beginning of an outline: that is
// rounded to two decimals of a point, and the end of a curve to five. Left so,
// the closing stroke would be a line of a micrometer with a direction of its own,
// and the corner a spike that points anywhere.
func (p *page) written(q geometry.Point) geometry.Point {
	_, h := p.f.GetPageSize()
	return geometry.Point{X: hundredth(q.X), Y: h - hundredth(h-q.Y)}
}

// hundredth rounds as the file's own numbers are.
func hundredth(v float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'f', 2, 64), 64)
	if err != nil {
		panic(err) // it was written by the line above
	}
	return r
}

// text writes a line of lettering. It is made safe once more: a control
// character would not come out as a letter.
func (p *page) text(t layout.Text) {
	t.Words = lettering.Safe(t.Words)
	if t.Words == "" {
		return
	}
	p.f.SetFont("Helvetica", "", t.Height/lettering.CapHeight*perMM)
	at := p.at(t.Start())
	words := p.toCP1252(t.Words)
	if t.Angle == 0 {
		p.f.Text(at.X, at.Y, words)
		return
	}
	p.f.TransformBegin()
	p.f.TransformRotate(t.Angle*180/math.Pi, at.X, at.Y)
	p.f.Text(at.X, at.Y, words)
	p.f.TransformEnd()
	p.penSet = false
}
