// Package terminal sets words and figures on a page of 80 letters, as wide as a
// terminal is at least.
package terminal

import (
	"fmt"
	"io"
	"strings"

	"ribwright/geometry/measure"
)

// Wide is the width of a page in letters.
const Wide = 80

// Page is a page in the making, lengths in the builder's units. The zero Page is
// empty and metric.
type Page struct {
	Units measure.System
	text  strings.Builder
}

// Line adds a line, without spaces at its end.
func (p *Page) Line(format string, args ...any) {
	fmt.Fprintln(&p.text, strings.TrimRight(fmt.Sprintf(format, args...), " "))
}

// Wrap adds text behind a head, broken between words at the page's width and
// indented below it: as far as a head of spaces, else by up to four. No text adds
// nothing.
func (p *Page) Wrap(head, text string) {
	indent := strings.Repeat(" ", min(len(head), 4))
	if strings.TrimSpace(head) == "" {
		indent = head
	}
	p.broken(head, indent, text)
}

// Say adds a paragraph that begins as far in as its text does; what follows stands
// a little farther in.
func (p *Page) Say(format string, args ...any) {
	text := fmt.Sprintf(format, args...)
	head := text[:len(text)-len(strings.TrimLeft(text, " "))]
	p.broken(head, head+"  ", text)
}

func (p *Page) broken(now, indent, text string) {
	words := strings.Fields(text)
	if len(words) == 0 {
		return
	}
	for _, word := range words {
		if len([]rune(now))+len([]rune(word)) > Wide && strings.TrimSpace(now) != "" {
			p.Line("%s", now)
			now = indent
		}
		now += word + " "
	}
	p.Line("%s", now)
}

// Length letters mm, to the millimetre or the sixteenth.
func (p *Page) Length(mm float64) string {
	if p.Units == measure.Imperial {
		return measure.FeetInches(mm)
	}
	return measure.MM(mm, 0) + " mm"
}

// Kilos letters a mass.
func (p *Page) Kilos(kg float64) string {
	if p.Units == measure.Imperial {
		return fmt.Sprintf("%.1f lb", kg/measure.Pound)
	}
	return fmt.Sprintf("%.1f kg", kg)
}

// WriteTo sends the page off. Errors: the writer's own.
func (p *Page) WriteTo(w io.Writer) (int64, error) {
	n, err := io.WriteString(w, p.text.String())
	return int64(n), err
}
