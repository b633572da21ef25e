// Package html writes a book as one file that a browser opens from the disk: no
// script, nothing fetched, drawings inline.
package html

import (
	"bytes"
	_ "embed"
	"fmt"
	"html"
	"io"
	"strings"
	"unicode"

	"ribwright/layout"
	"ribwright/layout/report"
)

//go:embed style.css
var style string

// Figure writes a drawing as an SVG element to stand in a page, with its name and
// what is to be seen for those who cannot see it.
type Figure func(w io.Writer, d layout.Drawing, about string) error

// Encode writes the book. Every word of it is text, whatever it looks like.
//
// Errors: a drawing that cannot be written, or the writer's own error. Nothing is
// written unless all is made.
func Encode(w io.Writer, b report.Report, figure Figure) error {
	e := &encoder{figure: figure}
	e.put("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
	e.put("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
	// No picture is asked for in the tab: a browser would look for one otherwise.
	e.put("<link rel=\"icon\" href=\"data:,\">\n")
	e.put("<title>%s, build book</title>\n<style>\n%s</style>\n</head>\n<body>\n<main>\n", text(b.Title), style)
	e.chapters = chapters(b)
	for _, block := range b.Blocks {
		e.block(block)
	}
	e.put("</main>\n<footer>%s, build book, design %s</footer>\n</body>\n</html>\n", words(b.Title), text(b.Fingerprint))
	if e.err != nil {
		return e.err
	}
	_, err := w.Write(e.out.Bytes())
	return err
}

// encoder keeps the first error.
type encoder struct {
	out      bytes.Buffer
	figure   Figure
	chapters []string
	at       int // chapters begun
	err      error
}

func (e *encoder) put(format string, args ...any) { fmt.Fprintf(&e.out, format, args...) }

func chapters(b report.Report) []string {
	var out []string
	for _, block := range b.Blocks {
		if h, ok := block.(report.Heading); ok && h.Level == 1 {
			out = append(out, h.Words)
		}
	}
	return out
}

// clean drops what would act on the text round it: control characters and marks
// that turn the direction of writing; joiners of letters stay.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case r == '\u200c' || r == '\u200d':
			return r
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r), unicode.Is(unicode.Co, r):
			return -1
		}
		return r
	}, strings.ToValidUTF8(s, "\ufffd"))
}

// text is words as text, markup and all.
func text(s string) string { return html.EscapeString(clean(s)) }

// words is text whose direction of writing stays its own.
func words(s string) string { return "<bdi>" + text(s) + "</bdi>" }

func (e *encoder) block(b report.Block) {
	switch b := b.(type) {
	case report.Heading:
		e.heading(b)
	case report.Paragraph:
		e.put("<p>%s</p>\n", words(b.Words))
	case report.List:
		e.list(b)
	case report.Caution:
		e.caution(b)
	case report.Table:
		e.table(b)
	case report.Findings:
		for _, part := range b.Blocks() {
			e.block(part)
		}
	case report.Figure:
		e.drawing(b)
	case report.Contents:
		e.put("<nav aria-label=\"Contents\">\n<ul>\n")
		for i, c := range e.chapters {
			e.put("<li><a href=\"#c%d\">%s</a></li>\n", i+1, words(c))
		}
		e.put("</ul>\n</nav>\n")
	default:
		panic(fmt.Sprintf("a block of no known kind: %T", b))
	}
}

func (e *encoder) heading(h report.Heading) {
	id := ""
	if h.Level == 1 {
		e.at++
		id = fmt.Sprintf(" id=\"c%d\"", e.at)
	}
	e.put("<h%d%s>%s</h%d>\n", h.Level, id, words(h.Words), h.Level)
}

func (e *encoder) list(l report.List) {
	open, end := "<ul>", "</ul>"
	if l.First > 0 {
		open, end = fmt.Sprintf("<ol start=\"%d\">", l.First), "</ol>"
	}
	e.put("%s\n", open)
	for _, i := range l.Items {
		e.put("<li>%s</li>\n", words(i))
	}
	e.put("%s\n", end)
}

func (e *encoder) caution(c report.Caution) {
	e.put("<p class=\"caution\" role=\"note\"><strong>CAUTION:</strong> %s", words(c.Words))
	if c.Says != "" {
		e.put(" <small>(%s)</small>", words(c.Says))
	}
	e.put("</p>\n")
}

func (e *encoder) table(t report.Table) {
	e.put("<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"%s\">\n<table>\n", text(t.Title))
	if t.Title != "" {
		e.put("<caption>%s</caption>\n", words(t.Title))
	}
	if t.Headed() {
		e.put("<thead><tr>")
		for _, c := range t.Columns {
			e.put("<th scope=\"col\"%s>%s</th>", class(c), words(c.Head))
		}
		e.put("</tr></thead>\n")
	}
	e.put("<tbody>\n")
	for _, row := range t.Rows {
		e.put("<tr>")
		for i, cell := range row {
			e.put("<td%s>%s</td>", class(t.Columns[i]), words(cell))
		}
		e.put("</tr>\n")
	}
	e.put("</tbody>\n</table>\n</div>\n")
	if t.Note != "" {
		e.put("<p class=\"note\">%s</p>\n", words(t.Note))
	}
}

func class(c report.Column) string {
	switch {
	case c.Align == layout.Right:
		return ` class="r"`
	case c.Text:
		return ` class="t"`
	}
	return ` class="n"`
}

func (e *encoder) drawing(f report.Figure) {
	e.put("<figure>\n<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"%s\">\n", text(f.Drawing.Title))
	if err := e.figure(&e.out, f.Drawing, f.About); err != nil && e.err == nil {
		e.err = fmt.Errorf("the figure %q: %w", f.Drawing.Title, err)
	}
	e.put("\n</div>\n<figcaption>%s</figcaption>\n</figure>\n", words(f.Caption))
}
