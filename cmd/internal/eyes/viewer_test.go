// Package eyes looks at finished patterns as a print shop would: it draws the
// sheets with PDFium, puts the tiles together by the table of pages, and holds
// the result against the same pattern in one piece and against the numbers.
// All of it is tests: the program needs none of what a renderer needs.
//
// All pictures lie on one grid of 254 dots to the inch: a dot is 0.1 mm, and
// dot (0, 0) begins a quarter of a dot from the pattern's own zero. A tile is drawn
// straight onto that grid, so nothing is resampled between the page and the comparison.
package eyes

import (
	"fmt"
	"io"
	"time"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/structs"
	"github.com/klippa-app/go-pdfium/webassembly"

	"ribwright/render/rendertest"
)

// perMM is the number of dots in a millimetre: 254 dpi.
const perMM = 10

// begin is where the grid begins, dots to the right of and below the pattern's zero. Many
// lines lie at whole tenths of a mm; one as wide as a dot would there be half of the ink of
// two, and a rounding would say whether either is dark.
const begin = 0.25

// gridX and gridY are where a column or a row begins, mm; with 0.5 more the middle of it.
func gridX(col float64) float64 { return (col + begin) / perMM }
func gridY(row float64) float64 { return -(row + begin) / perMM }

// colOf and rowOf are the column and the row of a place in mm, with its share of a dot.
func colOf(x float64) float64 { return x*perMM - begin }
func rowOf(y float64) float64 { return -y*perMM - begin }

// mmPerPoint is the length of a PDF unit, 1/72 inch.
const mmPerPoint = 25.4 / 72

// Viewer is a running renderer.
type Viewer struct {
	pool pdfium.Pool
	lib  pdfium.Pdfium
}

// NewViewer starts a renderer; it takes some seconds. Close it after use.
func NewViewer() (*Viewer, error) {
	pool, err := webassembly.Init(webassembly.Config{MinIdle: 1, MaxIdle: 1, MaxTotal: 1, Stdout: io.Discard, Stderr: io.Discard})
	if err != nil {
		return nil, fmt.Errorf("the renderer does not start: %w", err)
	}
	lib, err := pool.GetInstance(time.Minute)
	if err != nil {
		return nil, fmt.Errorf("the renderer does not start: %w", err)
	}
	return &Viewer{pool, lib}, nil
}

// Close ends the renderer.
func (v *Viewer) Close() error { return v.pool.Close() }

// File is an open PDF.
type File struct {
	lib pdfium.Pdfium
	doc references.FPDF_DOCUMENT
}

// Open reads a PDF. The bytes must stay as they are until the file is closed.
func (v *Viewer) Open(src []byte) (*File, error) {
	doc, err := v.lib.OpenDocument(&requests.OpenDocument{File: &src})
	if err != nil {
		return nil, err
	}
	return &File{v.lib, doc.Document}, nil
}

// Close lets the file go.
func (f *File) Close() error {
	_, err := f.lib.FPDF_CloseDocument(&requests.FPDF_CloseDocument{Document: f.doc})
	return err
}

// Page is an open page.
type Page struct {
	lib  pdfium.Pdfium
	page requests.Page
	ref  references.FPDF_PAGE
	w, h float64 // points
}

// Page opens a page, counted from 1.
func (f *File) Page(number int) (*Page, error) {
	got, err := f.lib.FPDF_LoadPage(&requests.FPDF_LoadPage{Document: f.doc, Index: number - 1})
	if err != nil {
		return nil, fmt.Errorf("page %d: %w", number, err)
	}
	p := &Page{lib: f.lib, ref: got.Page, page: requests.Page{ByReference: &got.Page}}
	w, err := f.lib.FPDF_GetPageWidthF(&requests.FPDF_GetPageWidthF{Page: p.page})
	if err != nil {
		return nil, fmt.Errorf("page %d: %w", number, err)
	}
	h, err := f.lib.FPDF_GetPageHeightF(&requests.FPDF_GetPageHeightF{Page: p.page})
	if err != nil {
		return nil, fmt.Errorf("page %d: %w", number, err)
	}
	p.w, p.h = float64(w.PageWidth), float64(h.PageHeight)
	return p, nil
}

// Close lets the page go.
func (p *Page) Close() error {
	_, err := p.lib.FPDF_ClosePage(&requests.FPDF_ClosePage{Page: p.ref})
	return err
}

// Size returns width and height in mm.
func (p *Page) Size() (w, h float64) { return p.w * mmPerPoint, p.h * mmPerPoint }

// largest is the longest edge of a picture drawn at once, dots: PDFium loses
// lines in pictures wider than some 32 000.
const largest = 4000

// Draw adds the page to a picture. to takes mm from the page's lower left
// corner to the picture's own mm; where dots are darkened twice the darker
// counts.
func (p *Page) Draw(to Motion, on *Raster) error { return p.drawIn(to, on, on.Box()) }

// drawIn adds what lies in the box of mm.
func (p *Page) drawIn(to Motion, on *Raster, in rendertest.Box) error {
	room := around(in.Meet(on.Box()))
	for top := 0; top < room.H; top += largest {
		for left := 0; left < room.W; left += largest {
			part := &Raster{Left: room.Left + left, Top: room.Top + top, W: min(largest, room.W-left), H: min(largest, room.H-top)}
			if err := p.draw(to, part, on); err != nil {
				return err
			}
		}
	}
	return nil
}

// draw adds what lies in a part of the picture.
func (p *Page) draw(to Motion, part, on *Raster) error {
	made, err := p.lib.FPDFBitmap_CreateEx(&requests.FPDFBitmap_CreateEx{
		Width: part.W, Height: part.H, Format: enums.FPDF_BITMAP_FORMAT_GRAY, Pointer: uint64(0)}) // room of its own
	if err != nil {
		return err
	}
	bitmap := made.Bitmap
	defer p.lib.FPDFBitmap_Destroy(&requests.FPDFBitmap_Destroy{Bitmap: bitmap})
	if _, err := p.lib.FPDFBitmap_FillRect(&requests.FPDFBitmap_FillRect{Bitmap: bitmap, Width: part.W, Height: part.H, Color: 0xFFFFFFFF}); err != nil {
		return err
	}
	m := p.shown().Then(Motion{mmPerPoint, 0, 0, mmPerPoint, 0, 0}).Then(to).Then(part.fromMM())
	if _, err := p.lib.FPDF_RenderPageBitmapWithMatrix(&requests.FPDF_RenderPageBitmapWithMatrix{
		Bitmap: bitmap, Page: p.page,
		Matrix:   structs.FPDF_FS_MATRIX{A: float32(m[0]), B: float32(m[1]), C: float32(m[2]), D: float32(m[3]), E: float32(m[4]), F: float32(m[5])},
		Clipping: structs.FPDF_FS_RECTF{Right: float32(part.W), Bottom: float32(part.H)},
		Flags:    enums.FPDF_RENDER_FLAG_GRAYSCALE,
	}); err != nil {
		return err
	}
	got, err := p.lib.FPDFBitmap_GetBuffer(&requests.FPDFBitmap_GetBuffer{Bitmap: bitmap})
	if err != nil {
		return err
	}
	stride := len(got.Buffer) / part.H
	for row := range part.H {
		on.row(part.Top+row, part.Left, part.W).darken(got.Buffer[row*stride:][:part.W])
	}
	return nil
}

// shown takes the renderer's own view of a page, in points with y down, to points
// from the page's lower left corner.
func (p *Page) shown() Motion { return Motion{1, 0, 0, -1, 0, p.h} }
