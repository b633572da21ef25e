package pdf

import (
	"fmt"
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

// labels returns the catalogue's entry that names every page by what lies on it,
// for the page box of a print dialogue. Source: ISO 32000-1, 12.4.2.
func labels(doc layout.Document) string {
	var out []string
	for i, s := range doc.Sheets {
		if s.Label != "" {
			out = append(out, fmt.Sprintf("%d <</P (%s)>>", i, literal(s.Label)))
		}
	}
	if out == nil {
		return ""
	}
	return "/PageLabels <</Nums [" + strings.Join(out, " ") + "]>>\n"
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
