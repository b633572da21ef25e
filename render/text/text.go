// Package text writes a report for a terminal: plain lines of 80 letters at most,
// without codes, to be read from top to bottom or aloud.
package text

import (
	"fmt"
	"io"
	"strings"

	"ribwright/layout/report"
)

// Wide is the width of a page in letters: a terminal is as wide at least.
const Wide = 80

// Encode writes the report. Words are made safe: nothing in them acts on a terminal.
// A figure is told of in words; a list of contents is left out, as lines have no
// sheets.
//
// Errors: the writer's own.
func Encode(w io.Writer, r report.Report) error {
	p := &page{first: true}
	p.said(1, "", r.Foot())
	for i, b := range r.Blocks {
		_, heads := b.(report.Heading)
		if heads && i+1 < len(r.Blocks) && r.Blocks[i+1] == (report.Contents{}) {
			continue // it is left out with what it heads
		}
		p.block(b)
	}
	_, err := io.WriteString(w, p.out.String())
	return err
}

// page is a page in the making.
type page struct {
	out   strings.Builder
	first bool // what comes next follows without air: at the top, and under a heading
}

func (p *page) block(b report.Block) {
	switch b := b.(type) {
	case report.Heading:
		p.heading(b)
	case report.Paragraph:
		p.said(1, "", b.Words)
	case report.List:
		p.list(b)
	case report.Caution:
		p.said(1, hang, b.String())
	case report.Table:
		p.table(b)
	case report.Findings:
		for _, part := range b.Blocks() {
			p.block(part)
		}
	case report.Figure:
		p.said(1, hang, "Figure: "+b.Caption+" "+b.About)
	case report.Contents:
	default:
		panic(fmt.Sprintf("a block of no known kind: %T", b))
	}
}

// hang is how far the second line of what stands out from the text is set in.
const hang = "  "

// air leaves empty lines.
func (p *page) air(lines int) {
	if !p.first {
		p.out.WriteString(strings.Repeat("\n", lines))
	}
	p.first = false
}

// line adds a line, without spaces at its end.
func (p *page) line(s string) { p.out.WriteString(strings.TrimRight(s, " ") + "\n") }

// said adds words broken into lines after some air, all lines but the first set in.
// No words add nothing.
func (p *page) said(air int, indent, words string) {
	for i, l := range wrap(words, Wide-len(indent)) {
		if i == 0 {
			p.air(air)
		} else {
			l = indent + l
		}
		p.line(l)
	}
}

// heading sets a chapter in capitals, underlines a section, and leaves a part of one
// plain.
func (p *page) heading(h report.Heading) {
	words, air := h.Words, 1
	if h.Level == 1 {
		words, air = strings.ToUpper(report.Clean(words)), 2
	}
	lines := wrap(words, Wide)
	if len(lines) == 0 {
		return
	}
	p.first = p.first && p.out.Len() == 0
	p.said(air, "", words)
	if h.Level == 2 {
		wide := 0
		for _, l := range lines {
			wide = max(wide, letters(l))
		}
		p.line(strings.Repeat("-", wide))
	}
	p.first = true
}

// list sets items behind their marks, which end under each other.
func (p *page) list(l report.List) {
	wide := max(letters(l.Mark(0)), letters(l.Mark(len(l.Items)-1)))
	for i, item := range l.Items {
		if i == 0 {
			p.air(1)
		}
		mark, lines := l.Mark(i), wrap(item, Wide-wide-1)
		if len(lines) == 0 {
			lines = []string{""}
		}
		for _, words := range lines {
			p.line(fmt.Sprintf("%*s %s", wide, mark, words))
			mark = ""
		}
	}
}
