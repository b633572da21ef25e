// Package outfits writes what was worked out of an outfit: as a page for a terminal
// of 80 columns and as JSON for other programs. The names of the JSON fields are a
// promise; they are added to, never changed. Lengths end in _mm.
package outfits

import (
	"fmt"
	"io"
	"strings"

	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
)

// wide is the width of the page in letters: a terminal's.
const wide = 80

type page struct {
	b     strings.Builder
	units measure.System
}

func (p *page) line(format string, args ...any) {
	fmt.Fprintln(&p.b, strings.TrimRight(fmt.Sprintf(format, args...), " "))
}

// length letters mm, to the millimetre or the sixteenth.
func (p *page) length(mm float64) string {
	if p.units == measure.Imperial {
		return measure.FeetInches(mm)
	}
	return measure.MM(mm, 0) + " mm"
}

// two writes two figures beside each other.
func (p *page) two(a, av, b, bv string) { p.line("  %-20s %-17s  %-18s %s", a, av, b, bv) }

// wrap writes text under a first line's head, broken between words at the page's
// width and indented below it.
func (p *page) wrap(head, text string) {
	if text == "" {
		return
	}
	indent := strings.Repeat(" ", min(len(head), 4))
	if strings.TrimSpace(head) == "" {
		indent = head
	}
	now := head
	for _, word := range strings.Fields(text) {
		if len([]rune(now))+len([]rune(word)) > wide && strings.TrimSpace(now) != "" {
			p.line("%s", now)
			now = indent
		}
		now += word + " "
	}
	p.line("%s", now)
}

// cautions writes the notes of danger, before any figure.
func (p *page) cautions(notes finding.Notes) {
	p.line("CAUTION")
	for _, n := range notes {
		if n.Danger {
			p.wrap("  "+n.About+": ", fmt.Sprintf("%s [%s]", n.Text, n.Standing))
		}
	}
	p.wrap("  ", "These are estimates, and nothing here certifies a boat. Local law and the authority of the water come first. Wear a life jacket; try every outfit in shallow water near help before you rely on it.")
	p.line("")
}

// notes writes the rest.
func (p *page) notes(notes finding.Notes) {
	p.line("WHAT TO MAKE OF IT")
	for _, n := range notes {
		if !n.Danger {
			p.wrap("  "+n.About+": ", fmt.Sprintf("%s [%s]", n.Text, n.Standing))
		}
	}
}

// ranges writes figures beside what practice gives.
func (p *page) ranges(all []finding.Range) {
	p.line("BESIDE PRACTICE: habits of the trade, not limits")
	for _, r := range all {
		mark := " "
		if !r.Inside() {
			mark = "*"
		}
		value, span := p.ranged(r)
		p.line("%s %-36s %10s   %s", mark, r.Name, value, span)
		p.wrap("      ", r.Source)
	}
	p.line("  * outside the range")
	p.line("")
}

func (p *page) ranged(r finding.Range) (value, span string) {
	if r.Unit == "mm" {
		return p.length(r.Value), p.length(r.Low) + " to " + p.length(r.High)
	}
	return fmt.Sprintf("%.1f %s", r.Value, r.Unit), fmt.Sprintf("%.4g to %.4g %s", r.Low, r.High, r.Unit)
}

// write sends the page off.
func (p *page) write(w io.Writer) error {
	_, err := io.WriteString(w, p.b.String())
	return err
}
