package eyes

import (
	"fmt"

	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/requests"

	"ribwright/render/rendertest"
)

// Kind is a kind of thing on a page.
type Kind int

// The kinds.
const (
	Anything Kind = iota
	Lines
	Letters
)

// Layer says which of the things on a page are drawn.
type Layer struct {
	// Own leaves out the sheet's own furniture: crosses, trim lines, joint
	// codes, captions and scale bars, some of which stand over the pattern. A
	// tile's drawing is clipped to its frame and the furniture is not; the clip
	// is read from the page's content, since PDFium forgets a clip that cuts
	// nothing off. It hides no fault: a pattern's line drawn without the clip
	// goes missing, and furniture drawn with it is one line too many.
	Own bool
	// Only draws one kind of thing.
	Only Kind
	// Solid draws dashed lines without gaps. Where a dash begins says nothing of
	// the place of its line, a printer's stretch and its correction move it, and
	// PDFium itself loses up to 0.8 mm of it along a line of 5 m.
	Solid bool
	// Width leaves out all but lines of this weight, mm; 0 draws any.
	Width float64
}

// clipTol is how far a clip may lie off the frame it belongs to, mm: the file
// rounds it to 0.004.
const clipTol = 0.01

// weightTol is by how much a line's weight may differ and still be the same pen,
// as a share: pens differ by a fifth and more, printer corrections by 5 % at most.
const weightTol = 0.08

// strokes reports whether a line is drawn, on a tile that shows the frame.
func (l Layer) strokes(s rendertest.Stroke, frame rendertest.Box) bool {
	rightPen := l.Width == 0 || s.Width > l.Width*(1-weightTol) && s.Width < l.Width*(1+weightTol)
	return rightPen && l.Only != Letters && (!l.Own || s.Clip.Off(frame) <= clipTol)
}

func (l Layer) texts(t rendertest.Text, frame rendertest.Box) bool {
	return l.Only != Lines && l.Width == 0 && (!l.Own || t.Clip.Off(frame) <= clipTol)
}

// choose hides what the layer leaves out. drawn is the same page as read from its
// content: both list everything in the order it is drawn.
func (p *Page) choose(l Layer, drawn rendertest.Page, frame rendertest.Box) error {
	count, err := p.lib.FPDFPage_CountObjects(&requests.FPDFPage_CountObjects{Page: p.page})
	if err != nil {
		return err
	}
	strokes, texts := 0, 0
	for i := range count.Count {
		o, err := p.lib.FPDFPage_GetObject(&requests.FPDFPage_GetObject{Page: p.page, Index: i})
		if err != nil {
			return err
		}
		kind, err := p.lib.FPDFPageObj_GetType(&requests.FPDFPageObj_GetType{PageObject: o.PageObject})
		if err != nil {
			return err
		}
		show, dashed := false, false
		switch {
		case kind.Type == enums.FPDF_PAGEOBJ_PATH && strokes < len(drawn.Strokes):
			s := drawn.Strokes[strokes]
			show, dashed = l.strokes(s, frame), len(s.Dash) > 0
			strokes++
		case kind.Type == enums.FPDF_PAGEOBJ_TEXT && texts < len(drawn.Texts):
			show = l.texts(drawn.Texts[texts], frame)
			texts++
		default:
			return fmt.Errorf("item %d of %d on the page, of kind %d, is in no list of lines or lettering", i+1, count.Count, kind.Type)
		}
		if !show {
			_, err = p.lib.FPDFPageObj_SetIsActive(&requests.FPDFPageObj_SetIsActive{PageObject: o.PageObject})
		} else if dashed && l.Solid {
			_, err = p.lib.FPDFPageObj_SetDashArray(&requests.FPDFPageObj_SetDashArray{PageObject: o.PageObject})
		}
		if err != nil {
			return err
		}
	}
	if strokes != len(drawn.Strokes) || texts != len(drawn.Texts) {
		return fmt.Errorf("%d lines and %d texts are drawn, %d and %d are in the file", strokes, texts, len(drawn.Strokes), len(drawn.Texts))
	}
	return nil
}
