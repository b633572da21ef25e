// Package fitted tells of what is fitted to a boat for a while: a sail, a second hull,
// oars. A page of its own tells all; the build book takes what a builder needs.
package fitted

import (
	"fmt"

	"ribwright/geometry/boat/kit"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/report"
)

// teller writes quantities in the units that are asked for.
type teller struct{ report.Letters }

func in(units measure.System) teller { return teller{report.Letters{Units: units}} }

// page is a report of its own: dangers first, then the figures, then what else was found.
func page(found finding.List, blocks ...report.Block) []report.Block {
	out := []report.Block{report.Findings{List: found.Dangers()}, report.Caution{
		Words: "These are estimates, and nothing here certifies a boat. Local law and the authority of the water come first. Wear a life jacket; try every outfit in shallow water near help before you rely on it."}}
	out = append(out, blocks...)
	return append(out, report.Section("What to make of it"), report.Findings{List: found.Others()})
}

// Pieces lists what an outfit is made of and what is bought for it.
func Pieces(k kit.Kit, units measure.System) report.Table {
	l := in(units)
	t := report.Titled(wording.Capital(k.Name)+": what it is made of, "+l.Unit()).Words("Piece").Numbers("Count").Words("Wood, or how much").Numbers("Long", "Wide", "Thick")
	for _, p := range k.Pieces {
		t.Row(wording.Capital(p.Name), fmt.Sprint(p.Count), p.Wood, l.Cell(p.Long), l.Cell(p.Wide), l.Cell(p.Thick))
	}
	for _, b := range k.Things {
		t.Row(wording.Capital(b.Name), "", amount(b), "", "", "")
	}
	t.Note = "Finished sizes, of a shaped piece the block it is sawn from, of a spar where it is thickest. Beams and saddles are those of both boats."
	return t
}

func amount(t kit.Thing) string {
	if t.Unit == "each" {
		return fmt.Sprintf("%.0f: %s", t.Amount, t.How)
	}
	return fmt.Sprintf("%.4g %s: %s", t.Amount, t.Unit, t.How)
}

func newtons(n float64) string { return fmt.Sprintf("%.0f N", n) }
func deg(rad float64) string   { return report.Angle(rad) + " deg" }

// ranges puts figures beside practice; none gives nothing.
func (t teller) ranges(all []finding.Range) []report.Block {
	out := report.Titled("Beside practice: habits of the trade, not limits").Words("What").Numbers("Here", "Practice").Names("").Words("Source")
	for _, r := range all {
		outside := ""
		if !r.Inside() {
			outside = "outside"
		}
		here, span := fmt.Sprintf("%.1f %s", r.Value, r.Unit), fmt.Sprintf("%.4g to %.4g %s", r.Low, r.High, r.Unit)
		if r.Unit == "mm" {
			here, span = t.Length(r.Value), t.Length(r.Low)+" to "+t.Length(r.High)
		}
		out.Row(r.Name, here, span, outside, r.Source)
	}
	return out.IfAny()
}

// roomy draws a sketch as large as every paper has room for.
func roomy(draw func(wide float64) layout.Drawing) layout.Drawing {
	const step = 5.0
	for wide := report.Wide; ; wide -= step {
		if d := draw(wide); d.Bounds().W() <= report.Wide || wide <= 10*step {
			return d
		}
	}
}
