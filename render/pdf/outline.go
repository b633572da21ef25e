package pdf

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode/utf16"

	"github.com/go-pdf/fpdf"

	"ribwright/layout"
	"ribwright/layout/lettering"
)

// bookmark is an entry of the list of contents that a viewer shows.
type bookmark struct {
	key, title string
	page       int     // from 1
	down       float64 // from the top of the page, points
	under      []*bookmark
}

// child returns the entry with the key under b, a new one at the end if there is none:
// what belongs together stands together, whatever lies between its sheets.
func (b *bookmark) child(key, title string, page int, down float64) *bookmark {
	if i := slices.IndexFunc(b.under, func(c *bookmark) bool { return c.key == key }); i >= 0 {
		return b.under[i]
	}
	n := &bookmark{key: key, title: title, page: page, down: down}
	b.under = append(b.under, n)
	return n
}

// piece begins the entry of a piece of a pattern.
const piece = "piece "

// contents lists families of patterns, their patterns, and the pieces of a pattern that
// has several; before them what is to be read first, and chapters as the sheets name them.
func contents(doc layout.Document, p *page) *bookmark {
	root := &bookmark{}
	for i, s := range doc.Sheets {
		if i == 0 && len(s.Views) == 0 && len(s.Outline) == 0 {
			root.child("first", "Read first", 1, 0)
		}
		for _, h := range s.Outline {
			at := root
			for level := h.Level; level > 0 && len(at.under) > 0; level-- {
				at = at.under[len(at.under)-1]
			}
			at.child("chapter "+h.Title, h.Title, i+1, 0)
		}
		for _, v := range s.Views {
			d, at := v.Drawing, root
			down := max(0, p.at(v.ToSheet.Apply(v.Frame.Max)).Y)
			if d.Family != "" {
				at = at.child("family "+d.Family, d.Family, i+1, down)
			}
			at.child(d.Name+" "+d.Title, d.Title, i+1, down).child(piece+v.Tile, piece+v.Tile, i+1, down)
		}
	}
	return root
}

// write puts the entries under b into the file.
func (b *bookmark) write(f *fpdf.Fpdf, level int) {
	for _, c := range b.under {
		title := lettering.Safe(c.title)
		if title == "" || len(b.under) == 1 && b.isPattern() {
			continue
		}
		at := c
		if c.isPattern() {
			slices.SortStableFunc(c.under, inOrder)
			at = c.under[0]
		}
		f.SetPage(at.page)
		f.Bookmark(title, level, at.down)
		c.write(f, level+1)
	}
}

// inOrder puts piece 2 before piece 10.
func inOrder(a, b *bookmark) int {
	return cmp.Or(cmp.Compare(len(a.key), len(b.key)), cmp.Compare(a.key, b.key))
}

// isPattern reports whether what stands under b are pieces.
func (b *bookmark) isPattern() bool {
	return len(b.under) > 0 && strings.HasPrefix(b.under[0].key, piece)
}

// labels returns the catalogue's entry that names every page by what lies on it,
// for the page box of a print dialogue. Source: ISO 32000-1, 12.4.2.
func labels(doc layout.Document) string {
	var out []string
	for i, s := range doc.Sheets {
		if s.Label != "" {
			out = append(out, fmt.Sprintf("%d <</P <%X>>>", i, textString(s.Label)))
		}
	}
	if out == nil {
		return ""
	}
	return "/PageLabels <</Nums [" + strings.Join(out, " ") + "]>>\n"
}

// textString returns a text as the bytes of a string in a PDF, in UTF-16, which holds every
// script. Source: ISO 32000-1, 7.9.2.2.
func textString(s string) string {
	out := []byte{0xfe, 0xff}
	for _, u := range utf16.Encode([]rune(strings.ToValidUTF8(s, "\ufffd"))) {
		out = append(out, byte(u>>8), byte(u))
	}
	return string(out)
}
