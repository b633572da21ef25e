package job

import (
	"fmt"
	"io"

	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/pattern"
	"ribwright/layout/report"
	"ribwright/layout/tile"
	"ribwright/render/json"
	"ribwright/render/pdf"
)

// Loft asks for the full-size patterns of a design, the cutter's files and every
// number on them.
type Loft struct {
	Design string
	Units  measure.System
	Printing
	Cutting
}

// NewLoft returns the request with its defaults.
func NewLoft() *Loft {
	return &Loft{Design: usual(), Printing: newPrinting(), Cutting: newCutting()}
}

// Fields lists the choices.
func (l *Loft) Fields() []Field {
	own := []Field{units(&l.Units, "what lengths are lettered in; marks on wood carry both")}
	return append(append(own, l.Printing.fields()...), l.Cutting.fields()...)
}

// Name takes the design.
func (l *Loft) Name(names []string) { l.Design = names[0] }

// Do lofts the design.
func (l *Loft) Do(w World) (*Result, error) {
	if err := l.check(); err != nil {
		return nil, err
	}
	k, err := w.factsOf(l.Design)
	if err != nil {
		return nil, err
	}
	return l.loft(k, w)
}

func (l *Loft) check() error {
	if err := l.Printing.check(); err != nil {
		return err
	}
	return l.Cutting.check()
}

// Lofted is what a loft made, for those who measure it.
type Lofted struct {
	Sheets layout.Document // that are printed
	Set    tile.Laid       // the whole set
	Plate  layout.Plate
}

// loft goes from the facts of a design to files.
func (l *Loft) loft(k *facts, world World) (*Result, error) {
	f, err := k.frame()
	if err != nil {
		return nil, err
	}
	o := pattern.Options{Units: l.Units}
	set := tile.Set{Title: k.design.Title, For: k.design.For, Fingerprint: k.fingerprint, Drawings: pattern.All(f, o), Notes: pattern.Notes(f, o)}
	sheets, err := l.Printing.lay(set, l.Units)
	if err != nil {
		return nil, of(k.name, err)
	}
	plate, err := l.Cutting.plate(k.design.Title, f)
	if err != nil {
		return nil, of(k.name, err)
	}
	slug := k.design.Slug()
	out := []Output{{slug + "-patterns-" + sheets.printed.Paper.Name + ".pdf", "print sheet 1 first, at 100 %, and check its scale bars",
		func(w io.Writer) error { return pdf.Encode(w, sheets.printed, world.Made) }}}
	out = append(out, cutterFiles(slug+"-cut", l.saysOf(plate), plate)...)
	out = append(out, Output{slug + "-numbers.json", "every number on the patterns",
		func(w io.Writer) error { return json.Encode(w, f, slug, k.fingerprint, sheets.printed) }})
	r := report.Report{Title: k.design.Title, For: k.design.For, Fingerprint: k.fingerprint, Blocks: sheets.told(&l.Printing.Printer)}
	return &Result{Report: r, Outputs: out}, nil
}

// saysOf says what lies in the cutter's files.
func (l *Loft) saysOf(p layout.Plate) string {
	how := "all thicknesses together"
	if l.ByThickness {
		how = "every thickness on sheets of its own"
	}
	return fmt.Sprintf("%s, %s; the rectangle round them is %.2f times their area", onBoards(p), how, p.Spread())
}
