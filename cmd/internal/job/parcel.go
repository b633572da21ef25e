package job

import (
	"archive/zip"
	"io"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/shop/hours"
)

// Parcel asks for everything of a design in one file: patterns, cutter's files, numbers,
// the book, the proof and the design itself, each as the verb of its own makes it. Only a
// page asks for it.
type Parcel struct {
	Loft
	Prices string
	Skill  *hours.Skill // nil for what the design says
}

// NewParcel returns the request with its defaults.
func NewParcel() *Parcel { return &Parcel{Loft: *NewLoft(), Prices: NewBook().Prices} }

// Fields lists the choices.
func (p *Parcel) Fields() []Field {
	return append(p.Loft.Fields(), prices(&p.Prices), skillOrKept(&p.Skill))
}

// Do makes the parcel. Facts are worked out once for all that is in it.
func (p *Parcel) Do(w World) (*Result, error) {
	prices, err := w.prices(p.Prices)
	if err != nil {
		return nil, err
	}
	k, err := w.factsOf(p.Design)
	if err != nil {
		return nil, err
	}
	patterns, err := p.loft(k, w)
	if err != nil {
		return nil, err
	}
	b := NewBook()
	b.Subject, b.Skill = p.Subject, p.Skill
	b.Setup.Size, b.Setup.Margins = p.Setup.Size, p.Setup.Margins
	told, err := b.told(k, w, prices)
	if err != nil {
		return nil, err
	}
	sheet, err := (&Proof{Units: p.Units, Printer: p.Printer}).Do(w)
	if err != nil {
		return nil, err
	}
	all := []Output{{k.design.Stem() + ".toml", "the design", func(to io.Writer) error { return design.Encode(to, k.design) }}}
	all = append(append(append(all, patterns.Outputs...), told.file), sheet.Outputs...)
	one := Output{k.design.Stem() + ".zip", "everything in one file", func(to io.Writer) error { return zipped(to, all, w) }}
	return &Result{Report: patterns.Report, Outputs: []Output{one}}, nil
}

// zipped writes files into one, in their order, with the date of the job. What is squeezed
// already is put in as it is.
func zipped(to io.Writer, all []Output, w World) error {
	z := zip.NewWriter(to)
	for _, o := range all {
		how := zip.Deflate
		if strings.HasSuffix(o.Name, ".pdf") {
			how = zip.Store
		}
		f, err := z.CreateHeader(&zip.FileHeader{Name: o.Name, Method: how, Modified: w.Made})
		if err != nil {
			return err
		}
		if err := o.Write(f); err != nil {
			return err
		}
	}
	return z.Close()
}
