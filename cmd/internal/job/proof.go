package job

import (
	"io"

	"ribwright/geometry/measure"
	"ribwright/layout/paper/proof"
	"ribwright/layout/report"
	"ribwright/layout/tile"
	"ribwright/render/pdf"
)

// Proof asks for one sheet that shows what a printer does.
type Proof struct {
	Units measure.System
	Printer
}

// NewProof returns the request with its defaults.
func NewProof() *Proof { return &Proof{Printer: homePrinter()} }

// Fields lists the choices.
func (p *Proof) Fields() []Field {
	return append([]Field{units(&p.Units, "what the bars are whole in")}, p.Printer.fields()...)
}

// Name takes nothing: a proof is of no design.
func (p *Proof) Name([]string) {}

// measured is how long a piece of a roll is, beside its width, to be measured on.
const measured = 1.4

// Do lays the sheet.
func (p *Proof) Do(world World) (*Result, error) {
	if p.Way == tile.Best {
		p.Way = tile.Standing
	}
	if err := p.Printer.check(); err != nil {
		return nil, err
	}
	setup := p.Setup
	if setup.Size.Roll {
		setup.Size.Down = setup.Size.Across * measured
	}
	sheet, err := setup.Sheet(p.Way == tile.Lying)
	if err != nil {
		return nil, wrong("margins", err)
	}
	doc := proof.Lay(sheet, p.Units)
	says := sheet.Size.Name + ", " + sheet.Way() + "; print it at 100 %, it says what to measure and what to set"
	return &Result{
		Report:  report.Report{Title: "Proof of a printer"},
		Outputs: []Output{{"proof-" + sheet.Size.Name + ".pdf", says, func(w io.Writer) error { return pdf.Encode(w, doc, world.Made) }}},
	}, nil
}
