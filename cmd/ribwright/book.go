package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/cost"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/water"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/paper"
	"ribwright/layout/report"
	"ribwright/layout/report/book"
	"ribwright/layout/typeset"
	"ribwright/render/html"
	"ribwright/render/pdf"
	"ribwright/render/svg"
)

func bookVerb() verb {
	v := verb{
		name:    "book",
		line:    "the build book: drawings, tables, cut list, cost, hours, order of work",
		usage:   "ribwright book [DESIGN.toml|" + strings.Join(design.ShippedNames(), "|") + "] [flags]",
		example: "ribwright book river --paper a4 --prices shipped --skill beginner --html",
	}
	v.run = func(args []string, c console) error { return bookRun(v, args, c) }
	return v
}

// skillFlag is how practised the builder is.
type skillFlag struct{ hours.Skill }

func (s *skillFlag) Type() string { return "experienced|average|beginner" }
func (s *skillFlag) Set(text string) error {
	var err error
	s.Skill, err = hours.ParseSkill(text)
	return err
}

func bookRun(v verb, args []string, c console) error {
	f := pflag.NewFlagSet(v.name, pflag.ContinueOnError)
	out := f.String("out", "out", "`folder` for the files; made when missing")
	units, skill := unitsFlag{}, skillFlag{}
	f.Var(&units, "units", "what lengths are lettered in; marks on wood carry both")
	prices := f.String("prices", "mixed", "`level` of the invented prices ("+strings.Join(cost.Levels(), ", ")+"), or a price table of your own, as prices.toml")
	f.Var(&skill, "skill", "how practised the builder is")
	web := f.Bool("html", false, "one HTML file too, to read on a screen or a phone")
	setup := paper.Setup{Size: paper.Letter(), Margins: paper.HomeMargins()}
	f.Var(sizeFlag{&setup.Size}, "paper", `size of the sheets in the printer, which stand; WxH as "300 mm x 420 mm" or 12x18in, both prints on letter and on a4`)
	f.Var(marginsFlag{&setup.Margins}, "margins", `what the printer leaves blank, as "10 mm" or "left 8 mm, bottom 15 mm"`)
	rest, err := parse(v, f, args, 1, c.out)
	if err != nil {
		return err
	}
	if err := outGiven(v, *out); err != nil {
		return err
	}
	sheet, err := bookSheet(v, setup)
	if err != nil {
		return err
	}
	made, err := dateOfFiles(os.Getenv("SOURCE_DATE_EPOCH"))
	if err != nil {
		return err
	}
	table, err := openPrices(v, *prices)
	if err != nil {
		return err
	}
	d, name, err := usually(rest)
	if err != nil {
		return err
	}
	b, err := newBooking(d, name, table, skill.Skill, units.System)
	if err != nil {
		return err
	}
	b.made = made
	if b.sheets, err = typeset.Lay(b.book, sheet); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	outs := b.outputs(*web)
	if err := save(*out, outs, nil); err != nil {
		return err
	}
	return b.report(c.out, *out, outs)
}

// openPrices reads a level that comes with the program or a table of one's own.
func openPrices(v verb, name string) (*cost.Table, error) {
	if slices.Contains(cost.Levels(), name) {
		return cost.Level(name)
	}
	if !strings.EqualFold(filepath.Ext(name), ".toml") {
		return nil, usageError{fmt.Errorf("%s: --prices: no price level %q; accepted: %s, or a file whose name ends in .toml", v.name, name, strings.Join(cost.Levels(), ", "))}
	}
	file, err := os.Open(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("no price table %q; give a file, or one of %s", name, strings.Join(cost.Levels(), ", "))
	}
	if err != nil {
		return nil, fmt.Errorf("cannot open the price table %q: %w", name, cause(err))
	}
	defer file.Close()
	return cost.Read(file, filepath.Base(name))
}

// booking is a build book in the making.
type booking struct {
	facts  book.Facts
	book   report.Report
	slug   string
	sheets layout.Document
	made   time.Time
}

// newBooking works out everything that the book tells.
func newBooking(d *design.Design, name string, table *cost.Table, skill hours.Skill, units measure.System) (*booking, error) {
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		return nil, err
	}
	fitted, err := outfitsOf(d, d.Gear, name)
	if err != nil {
		return nil, err
	}
	b := &booking{slug: d.Slug()}
	b.facts, err = book.Gather(d, book.Options{Units: units, Prices: table, Skill: skill, Water: w, Speeds: speeds(), Outfits: fitted})
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	b.book = book.Of(b.facts)
	return b, nil
}

// bookSheet stands the paper upright, as a book is read.
func bookSheet(v verb, s paper.Setup) (paper.Sheet, error) {
	if s.Size.Roll {
		return paper.Sheet{}, usageError{fmt.Errorf("%s: --paper: a book wants sheets, and %s is a roll; accepted: letter, a4, legal, tabloid, a3, both or WxH", v.name, s.Size.Name)}
	}
	sheet, err := s.Sheet(false)
	if err == nil && sheet.Area.W() < report.Wide {
		err = fmt.Errorf("margins (%s) leave %.0f mm of paper %s; accepted: %.0f mm or more between left and right", s.Margins, sheet.Area.W(), s.Size.Name, report.Wide)
	}
	if err != nil {
		return sheet, usageError{fmt.Errorf("%s: --margins: %w", v.name, err)}
	}
	return sheet, nil
}

func (b *booking) outputs(web bool) []output {
	outs := []output{{b.slug + "-book-" + b.sheets.Paper.Name + ".pdf", func(w io.Writer) error { return pdf.Encode(w, b.sheets, b.made) }}}
	if web {
		outs = append(outs, output{b.slug + "-book.html", func(w io.Writer) error { return html.Encode(w, b.book, svg.EncodeInline) }})
	}
	return outs
}

// report says what was made and what is missing.
func (b *booking) report(w io.Writer, dir string, outs []output) error {
	_, err := fmt.Fprintf(w, "%s\n  the build book, %s of %s\n", filepath.Join(dir, outs[0].name), wording.Counted(len(b.sheets.Sheets), "sheet"), b.sheets.Paper.Name)
	if len(outs) > 1 {
		_, more := fmt.Fprintf(w, "%s\n  the same for a screen\n", filepath.Join(dir, outs[1].name))
		err = cmp.Or(err, more)
	}
	p := &b.facts
	hours := hours.Hours(p.Work, "", p.Skill)
	_, more := fmt.Fprintf(w, "  materials about %.0f at prices %s, give or take %.0f; %.0f hours, %s\n", p.Cost.Likely, p.Prices.Name, p.Cost.Off, hours, p.Skill)
	err = cmp.Or(err, more)
	return cmp.Or(err, reportMissing(w, p.Plan))
}

// reportMissing tells for which sticks there is no wood, once where several alike are
// the layers of a part.
func reportMissing(w io.Writer, p *cutlist.Plan) error {
	missing := p.Missing()
	if len(missing) == 0 {
		return nil
	}
	_, err := fmt.Fprintf(w, "  the materials are without %s for which there is no wood:\n", wording.Counted(len(missing), "stick"))
	said := map[string]bool{}
	for _, m := range missing {
		s := p.Sticks[m.Stick]
		part := cmp.Or(s.Member, s.Part)
		if said[part+m.Why] {
			continue
		}
		said[part+m.Why] = true
		_, more := fmt.Fprintf(w, "  no wood for %s: it %s\n", part, m.Why)
		err = cmp.Or(err, more)
	}
	return err
}
