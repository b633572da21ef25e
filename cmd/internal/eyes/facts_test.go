package eyes

import (
	"strings"

	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/responses"
)

// Hints is what a file asks of the print dialogue.
type Hints struct {
	Version     int  // 17 for 1.7
	FitsToPage  bool // whether the dialogue may choose to scale
	SimplexOnly bool
}

// Hints reads what the file asks for.
func (f *File) Hints() (Hints, error) {
	version, err := f.lib.FPDF_GetFileVersion(&requests.FPDF_GetFileVersion{Document: f.doc})
	if err != nil {
		return Hints{}, err
	}
	scaling, err := f.lib.FPDF_VIEWERREF_GetPrintScaling(&requests.FPDF_VIEWERREF_GetPrintScaling{Document: f.doc})
	if err != nil {
		return Hints{}, err
	}
	duplex, err := f.lib.FPDF_VIEWERREF_GetDuplex(&requests.FPDF_VIEWERREF_GetDuplex{Document: f.doc})
	if err != nil {
		return Hints{}, err
	}
	return Hints{version.FileVersion, scaling.PreferPrintScaling, duplex.DuplexType == enums.FPDF_DUPLEXTYPE_SIMPLEX}, nil
}

// Count returns the number of pages.
func (f *File) Count() (int, error) {
	got, err := f.lib.FPDF_GetPageCount(&requests.FPDF_GetPageCount{Document: f.doc})
	if err != nil {
		return 0, err
	}
	return got.PageCount, nil
}

// Turned reports whether a viewer turns the page, which would swap its edges.
func (p *Page) Turned() (bool, error) {
	got, err := p.lib.FPDFPage_GetRotation(&requests.FPDFPage_GetRotation{Page: p.page})
	if err != nil {
		return false, err
	}
	return got.PageRotation != enums.FPDF_PAGE_ROTATION_NONE, nil
}

// Text returns all lettering of the page as a reader copies it out.
func (p *Page) Text() (string, error) {
	got, err := p.lib.GetPageText(&requests.GetPageText{Page: p.page})
	if err != nil {
		return "", err
	}
	return got.Text, nil
}

// Label returns what viewers call a page, counted from 1; "" when it has only
// its number.
func (f *File) Label(number int) string {
	got, err := f.lib.FPDF_GetPageLabel(&requests.FPDF_GetPageLabel{Document: f.doc, Page: number - 1})
	if err != nil {
		return "" // the library has no other word for none
	}
	return got.Label
}

// Bookmark is one entry of the outline.
type Bookmark struct {
	Title string
	Page  int // from 1; 0 when it leads nowhere
	Under []Bookmark
}

// piece begins the title of a piece of a pattern.
const piece = "piece "

func (b Bookmark) isPiece() bool { return strings.HasPrefix(b.Title, piece) }

// Bookmarks lists the outline, from the top down.
func (f *File) Bookmarks() ([]Bookmark, error) {
	got, err := f.lib.GetBookmarks(&requests.GetBookmarks{Document: f.doc})
	if err != nil {
		return nil, err
	}
	return bookmarks(got.Bookmarks), nil
}

func bookmarks(list []responses.GetBookmarksBookmark) []Bookmark {
	var out []Bookmark
	for _, b := range list {
		mark := Bookmark{Title: b.Title, Under: bookmarks(b.Children)}
		if b.DestInfo != nil {
			mark.Page = b.DestInfo.PageIndex + 1
		}
		out = append(out, mark)
	}
	return out
}
