package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"github.com/go-pdf/fpdf"

	"ribwright/layout"
	"ribwright/layout/lettering"
)

// bookmarks remembers which patterns and families have theirs.
type bookmarks map[string]bool

// add puts a bookmark on the page that is being written for every pattern that
// begins on it; patterns of a family stand under the family.
func (b bookmarks) add(f *fpdf.Fpdf, s layout.Sheet) {
	if len(b) == 0 && len(s.Views) == 0 && len(s.Outline) == 0 {
		b.mark(f, "Read first", 0)
	}
	for _, h := range s.Outline {
		b.mark(f, h.Title, h.Level)
	}
	for _, v := range s.Views {
		level := 0
		if v.Drawing.Family != "" {
			b.mark(f, v.Drawing.Family, 0)
			level = 1
		}
		b.mark(f, v.Drawing.Title, level)
	}
}

func (b bookmarks) mark(f *fpdf.Fpdf, title string, level int) {
	key := fmt.Sprint(level, title)
	if title = lettering.Safe(title); title != "" && !b[key] {
		b[key] = true
		f.Bookmark(title, level, 0)
	}
}

// labels returns the catalog's entry that names every page by what lies on it,
// for the page box of a print dialog. Source: ISO 32000-1, 12.4.2.
func labels(doc layout.Document) string {
	var out strings.Builder
	for i, s := range doc.Sheets {
		if s.Label != "" {
			fmt.Fprintf(&out, "%d <</P (%s)>> ", i, literal(s.Label))
		}
	}
	if out.Len() == 0 {
		return ""
	}
	return "/PageLabels <</Nums [" + strings.TrimSpace(out.String()) + "]>>\n"
}

// literal makes a text fit for a string in a PDF: printing ASCII, the
// parentheses and the backslash guarded.
func literal(s string) string {
	s = strings.Map(func(r rune) rune {
		if r < ' ' || r > '~' {
			return '?'
		}
		return r
	}, s)
	return strings.NewReplacer(`\`, `\\`, "(", `\(`, ")", `\)`).Replace(s)
}

// hints ask the print dialog to keep the size, to pick paper by page size and
// to print on one side. They are only asked for: every sheet carries scale bars.
// Source: ISO 32000-1, 12.2, table 150.
const hints = "/ViewerPreferences <</PrintScaling /None /PickTrayByPDFSize true /Duplex /Simplex /DisplayDocTitle true>>\n"

var (
	rootEntry = regexp.MustCompile(`/Root (\d+) 0 R`)
	infoEntry = regexp.MustCompile(`/Info \d+ 0 R`)
	sizeEntry = regexp.MustCompile(`/Size (\d+)`)
	startXref = regexp.MustCompile(`startxref\s+(\d+)\s+%%EOF\s*$`)
)

// withViewerHints returns the finished file with the hints and more entries in its catalog. The
// writing library has no call for them, so the catalog is written anew in an
// incremental update (ISO 32000-1, 7.5.6), and the header is raised to the
// version that knows them.
func withViewerHints(file []byte, more string) ([]byte, error) {
	tail := file[max(0, len(file)-1024):]
	root, size, prev := rootEntry.FindSubmatch(tail), sizeEntry.FindSubmatch(tail), startXref.FindSubmatch(tail)
	info := infoEntry.Find(tail)
	if root == nil || size == nil || prev == nil || !bytes.HasPrefix(file, []byte("%PDF-1.")) {
		return nil, errors.New("the PDF came out without a trailer; please report this")
	}
	number, err := strconv.Atoi(string(root[1]))
	if err != nil {
		return nil, err
	}
	begin := bytes.LastIndex(file, fmt.Appendf(nil, "\n%d 0 obj\n<<\n", number))
	if begin < 0 {
		return nil, errors.New("the PDF came out without a catalogue; please report this")
	}
	object := file[begin+1:]
	end := bytes.Index(object, []byte("endobj"))
	if end < 0 {
		return nil, errors.New("the PDF came out with a broken catalogue; please report this")
	}
	out := bytes.Clone(file)
	copy(out, "%PDF-1.7")
	offset := len(out)
	open := fmt.Appendf(nil, "%d 0 obj\n<<\n", number)
	out = append(out, open...)
	out = append(out, hints...)
	out = append(out, more...)
	out = append(out, object[len(open):end]...)
	out = append(out, "endobj\n"...)
	xref := len(out)
	return fmt.Appendf(out, "xref\n%d 1\n%010d 00000 n \ntrailer\n<<\n/Size %s\n/Root %d 0 R\n%s\n/Prev %s\n>>\nstartxref\n%d\n%%%%EOF\n",
		number, offset, size[1], number, info, prev[1], xref), nil
}
