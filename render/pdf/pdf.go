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
	"ribwright/render"
)

// perMM is the number of points in a millimetre.
const perMM = 72 / 25.4

// longest is the largest side of a page that common viewers show, mm (14 400
// points: PDF Reference 1.7, appendix C).
const longest = 5080

// Encode writes the document, one page a sheet, in black, with the letters of its font that
// it uses, bookmarks for every pattern and its pieces, and labels that say what lies on
// each page. made is the date in the file; it must be the same for the same bytes.
//
// Accuracy: line ends to 0.002 mm, arcs within 5e-7 of their radius.
// Errors: a document without sheets, a number that is no place on paper, a view
// that is turned or not at full size, a page too long for viewers, or the
// writer's own error. Nothing is written to w unless the whole file is made.
func Encode(w io.Writer, doc layout.Document, made time.Time) error {
	if err := render.CheckDocument(doc); err != nil {
		return err
	}
	if doc.Paper.W > longest || doc.Paper.H > longest {
		return fmt.Errorf("a page of %.0f by %.0f mm is longer than the %d mm that viewers show; use smaller paper", doc.Paper.W, doc.Paper.H, longest)
	}
	f := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "pt",
		Size: fpdf.SizeType{Wd: doc.Paper.W * perMM, Ht: doc.Paper.H * perMM}})
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.SetCompression(false) // that comes at the end
	// A pointed corner of a narrow part would reach past it by a millimetre.
	f.SetLineJoinStyle("round")
	about := describe(f, doc.Title, made)
	f.AddUTF8FontFromBytes(fontKey, "", lettering.Font())
	f.SetFont(fontKey, "", 1) // bookmarks ask which letters are in use
	p := &page{f: f, high: doc.Paper.H}
	for _, s := range doc.Sheets {
		f.AddPage()
		p.sheet(s)
	}
	contents(doc, p).write(f, 0)
	f.SetPage(len(doc.Sheets)) // the writer ends with the page it is on
	var out bytes.Buffer
	if err := f.Output(&out); err != nil {
		return err
	}
	full, err := withViewerHints(withFontName(compressed(out.Bytes(), len(doc.Sheets))), labels(doc), about)
	if err != nil {
		return err
	}
	_, err = w.Write(full)
	return err
}

// page draws on the current page.
type page struct {
	f      *fpdf.Fpdf
	high   float64 // of the sheet, mm
	pen    layout.Pen
	penSet bool // whether pen is what the page's state holds
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
	box := geometry.Around(p.at(v.ToSheet.Apply(v.Frame.Min)), p.at(v.ToSheet.Apply(v.Frame.Max)))
	p.f.ClipRect(box.Min.X, box.Min.Y, box.W(), box.H(), false)
	p.penSet = false
	for _, s := range v.Drawing.Strokes {
		if s.Path.Bounds().Grow(s.Pen.Width()).Overlaps(v.Frame) {
			p.stroke(s.Pen, s.Path.Map(v.ToSheet))
		}
	}
	for _, t := range v.Drawing.Texts {
		if t.Bounds().Overlaps(v.Frame) {
			p.text(v.Lettering(t))
		}
	}
	p.f.ClipEnd()
	p.penSet = false
}

// at turns a place on the sheet into points from its upper left corner.
func (p *page) at(q geometry.Point) geometry.Point {
	return geometry.Pt(q.X*perMM, (p.high-q.Y)*perMM)
}

func (p *page) use(pen layout.Pen) {
	if p.penSet && p.pen == pen {
		return
	}
	p.pen, p.penSet = pen, true
	p.f.SetLineWidth(pen.Width() * perMM)
	dash := pen.Dash()
	for i := range dash {
		dash[i] *= perMM
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
	closed, pieces := path.Closed(), path.Beziers()
	for i, s := range pieces {
		closing, end := closed && i == len(pieces)-1, p.at(s.End())
		if c, bent := s.(curve.Cubic); bent {
			a, b := p.at(c.P1), p.at(c.P2)
			if closing {
				end = p.written(start)
			}
			p.f.CurveBezierCubicTo(a.X, a.Y, b.X, b.Y, end.X, end.Y)
		} else if !closing { // the closing stroke draws it
			p.f.LineTo(end.X, end.Y)
		}
	}
	if closed {
		p.f.ClosePath()
	}
	p.f.DrawPath("D")
}

// written returns where the file puts the beginning of an outline: that is
// rounded to two decimals of a point, and the end of a curve to five. Left so,
// the closing stroke would be a line of a micrometre with a direction of its own,
// and the corner a spike that points anywhere.
func (p *page) written(q geometry.Point) geometry.Point {
	_, h := p.f.GetPageSize()
	return geometry.Pt(hundredth(q.X), h-hundredth(h-q.Y))
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
	// The file rounds sizes to hundredths of a point: cut to them, no line runs on farther
	// than it was laid out.
	size := math.Floor(t.Height/lettering.CapHeight*perMM*100) / 100
	t.Height = size / perMM * lettering.CapHeight
	p.f.SetFont(fontKey, "", size)
	at := p.at(t.Start())
	if t.Angle != 0 {
		p.f.TransformBegin()
		p.f.TransformRotate(t.Angle*180/math.Pi, at.X, at.Y)
		defer p.f.TransformEnd()
		p.penSet = false
	}
	p.f.Text(at.X, at.Y, t.Words)
}
