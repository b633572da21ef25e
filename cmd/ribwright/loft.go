package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"ribwright/geometry/design"
	"ribwright/geometry/frame"
	"ribwright/layout"
	"ribwright/layout/pattern"
	"ribwright/layout/tile"
	"ribwright/render/numbers"
	"ribwright/render/pdf"
)

func loftVerb() verb {
	v := verb{
		name:    "loft",
		line:    "full-size patterns on paper, one file for the cutter, and every number",
		usage:   "ribwright loft [DESIGN.toml|" + strings.Join(design.ShippedNames(), "|") + "] [flags]",
		example: "ribwright loft river --paper a4 --units imperial --out river",
	}
	v.run = func(args []string, c console) error { return loft(v, args, c) }
	return v
}

func loft(v verb, args []string, c console) error {
	f := pflag.NewFlagSet(v.name, pflag.ContinueOnError)
	out := f.String("out", "out", "`folder` for the files; made when missing")
	letter, err := tile.ParsePaper("letter")
	if err != nil {
		return err
	}
	paper, units := paperFlag{letter}, unitsFlag{}
	f.Var(&paper, "paper", "size of the sheets in the printer")
	f.Var(&units, "units", "what lengths are lettered in; marks on wood carry both")
	cutter := newCutterFlags()
	cutter.addTo(f)
	rest, err := parse(v, f, args, 1, c.out)
	if err != nil {
		return err
	}
	if *out == "" {
		return usageError{fmt.Errorf("%s: --out: no folder is given; accepted: a folder, as out or ../river", v.name)}
	}
	if err := cutter.check(); err != nil {
		return err
	}
	name := design.ShippedNames()[0]
	if len(rest) == 1 {
		name = rest[0]
	}
	d, err := open(name)
	if err != nil {
		return err
	}
	set, err := newLofting(d, name, paper.Paper, units)
	if err != nil {
		return err
	}
	if err := set.lay(cutter); err != nil {
		return err
	}
	if err := save(*out, set.outputs(), nil); err != nil {
		return err
	}
	return set.report(c.out, *out)
}

// open reads a shipped design by its name, or a design file.
func open(name string) (*design.Design, error) {
	if slices.Contains(design.ShippedNames(), name) {
		return design.Shipped(name)
	}
	file, err := os.Open(name)
	if lower := strings.ToLower(name); errors.Is(err, fs.ErrNotExist) && slices.Contains(design.ShippedNames(), lower) {
		return nil, fmt.Errorf("no design file %q; the shipped design is written %s", name, lower)
	}
	if errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("no design file %q; give a file, or one of %s", name, strings.Join(design.ShippedNames(), ", "))
	}
	if err != nil {
		return nil, fmt.Errorf("cannot open the design file %q: %w", name, cause(err))
	}
	defer file.Close()
	d, err := design.Decode(file, name)
	var fault *design.Fault
	if err != nil && !errors.As(err, &fault) {
		return nil, fmt.Errorf("cannot read the design file %q: %w", name, cause(err))
	}
	return d, err
}

// lofting is everything made from one design for one paper.
type lofting struct {
	frame       *frame.Frame
	slug        string
	fingerprint string
	sheets      layout.Document
	cutter      *cutterFlags
	plate       layout.Plate // none before lay
}

// newLofting goes from a design to sheets; nothing is written yet.
func newLofting(d *design.Design, name string, paper layout.Paper, units unitsFlag) (*lofting, error) {
	f, err := frame.Build(d)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	l := &lofting{frame: f, slug: d.Slug()}
	if l.fingerprint, err = d.Fingerprint(); err != nil {
		return nil, err
	}
	o := pattern.Options{Units: units.System}
	l.sheets, err = tile.Lay(tile.Set{
		Title: d.Title, For: d.For, Fingerprint: l.fingerprint,
		Drawings: pattern.All(f, o), Notes: pattern.Notes(f, o),
	}, tile.Options{Paper: paper, Units: units.System})
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return l, nil
}

// lay fills the plate for the cutter.
func (l *lofting) lay(c *cutterFlags) error {
	var err error
	l.cutter = c
	l.plate, err = c.plate(l.frame.Design.Title, l.frame)
	return err
}

// outputs lists the four files of a lofting.
func (l *lofting) outputs() []output {
	out := []output{{l.slug + "-patterns-" + l.sheets.Paper.Name + ".pdf", func(w io.Writer) error { return pdf.Encode(w, l.sheets) }}}
	out = append(out, cutterOutputs(l.slug, l.plate)...)
	return append(out, output{l.slug + "-numbers.json", func(w io.Writer) error {
		return numbers.Encode(w, l.frame, l.slug, l.fingerprint, l.sheets)
	}})
}

// report says what was made and what to do first.
func (l *lofting) report(w io.Writer, dir string) error {
	outs := l.outputs()
	_, err := fmt.Fprintf(w, "%s\n  %d sheets of %s; print sheet 1 first, at 100 %%, and check its scale bars\n%s%s\n  every number on the patterns\n",
		filepath.Join(dir, outs[0].name), len(l.sheets.Sheets), l.sheets.Paper.Name,
		cutterReport(dir, l.slug, l.plate, l.cutter.byThickness),
		filepath.Join(dir, outs[len(outs)-1].name))
	return err
}
