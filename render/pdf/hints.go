package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"strconv"
)

// hints ask the print dialogue to keep the size, to pick paper by page size and
// to print on one side. They are only asked for: every sheet carries scale bars.
//
// Source: ISO 32000-1, 12.2, table 150.
const hints = "/ViewerPreferences <</PrintScaling /None /PickTrayByPDFSize true /Duplex /Simplex /DisplayDocTitle true>>\n"

var (
	rootEntry = regexp.MustCompile(`/Root (\d+) 0 R`)
	infoEntry = regexp.MustCompile(`/Info \d+ 0 R`)
	sizeEntry = regexp.MustCompile(`/Size (\d+)`)
	startXref = regexp.MustCompile(`startxref\s+(\d+)\s+%%EOF\s*$`)
)

// withViewerHints returns the finished file with the hints, more entries and a description in
// its catalogue, and an identifier in its trailer. The writing library has no call for them, so the catalogue is written anew in an
// incremental update (ISO 32000-1, 7.5.6), and the header is raised to the
// version that knows them.
func withViewerHints(file []byte, more, about string) ([]byte, error) {
	tail := file[max(0, len(file)-1024):]
	root, size, prev := rootEntry.FindSubmatch(tail), sizeEntry.FindSubmatch(tail), startXref.FindSubmatch(tail)
	info := infoEntry.Find(tail)
	if root == nil || size == nil || prev == nil || !bytes.HasPrefix(file, []byte("%PDF-1.")) {
		return nil, errors.New("the PDF came out without a trailer; please report this")
	}
	open := fmt.Appendf(nil, "%s 0 obj\n<<\n", root[1])
	begin := bytes.LastIndex(file, append([]byte("\n"), open...))
	if begin < 0 {
		return nil, errors.New("the PDF came out without a catalog; please report this")
	}
	object := file[begin+1:]
	end := bytes.Index(object, []byte("endobj"))
	if end < 0 {
		return nil, errors.New("the PDF came out with a broken catalog; please report this")
	}
	out := make([]byte, 0, len(file)+len(more)+len(about)+2<<10) // for entries and their table too
	out = append(append(out, "%PDF-1.7"...), file[len("%PDF-1.7"):]...)
	offset := len(out)
	out = fmt.Appendf(out, "%s%s%s/Metadata %s 0 R\n%sendobj\n", open, hints, more, size[1], object[len(open):end])
	described := len(out)
	out = fmt.Appendf(out, "%s 0 obj\n<</Type /Metadata /Subtype /XML /Length %d>>\nstream\n%s\nendstream\nendobj\n", size[1], len(about), about)
	xref := len(out)
	n, err := strconv.Atoi(string(size[1]))
	return fmt.Appendf(out, "xref\n%s 1\n%010d 00000 n \n%d 1\n%010d 00000 n \ntrailer\n<<\n/Size %d\n/Root %s 0 R\n%s\n%s/Prev %s\n>>\nstartxref\n%d\n%%%%EOF\n",
		root[1], offset, n, described, n+1, root[1], info, fileID(file), prev[1], xref), err
}
