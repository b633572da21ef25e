// Package outfits writes what was worked out of an outfit as a page for a terminal of
// 80 columns.
package outfits

import (
	"fmt"
	"math"

	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/layout/terminal"
)

type page struct{ terminal.Page }

func newPage(units measure.System) *page { return &page{terminal.Page{Units: units}} }

// two writes two figures beside each other.
func (p *page) two(a, av, b, bv string) { p.Line("  %-20s %-17s  %-18s %s", a, av, b, bv) }

// cautions writes the findings of danger, before any figure.
func (p *page) cautions(all finding.List) {
	p.Line("CAUTION")
	p.findings(all.Dangers())
	p.Wrap("  ", "These are estimates, and nothing here certifies a boat. Local law and the authority of the water come first. Wear a life jacket; try every outfit in shallow water near help before you rely on it.")
	p.Line("")
}

// notes writes the rest.
func (p *page) notes(all finding.List) {
	p.Line("WHAT TO MAKE OF IT")
	p.findings(all.Others())
}

func (p *page) findings(all finding.List) {
	for _, f := range all {
		p.Wrap("  "+f.About+": ", fmt.Sprintf("%s [%s]", f.Text, f.Standing))
	}
}

// ranges writes figures beside what practice gives.
func (p *page) ranges(all []finding.Range) {
	p.Line("BESIDE PRACTICE: habits of the trade, not limits")
	for _, r := range all {
		mark := " "
		if !r.Inside() {
			mark = "*"
		}
		value, span := p.ranged(r)
		p.Line("%s %-36s %10s   %s", mark, r.Name, value, span)
		p.Wrap("      ", r.Source)
	}
	p.Line("  * outside the range")
	p.Line("")
}

func (p *page) ranged(r finding.Range) (value, span string) {
	if r.Unit == "mm" {
		return p.Length(r.Value), p.Length(r.Low) + " to " + p.Length(r.High)
	}
	return fmt.Sprintf("%.1f %s", r.Value, r.Unit), fmt.Sprintf("%.4g to %.4g %s", r.Low, r.High, r.Unit)
}

func deg(a float64) float64 { return a * 180 / math.Pi }
