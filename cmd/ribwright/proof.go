package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"

	"github.com/spf13/pflag"

	"ribwright/layout/paper/proof"
	"ribwright/layout/tile"
	"ribwright/render/pdf"
)

func proofVerb() verb {
	v := verb{
		name:    "proof",
		line:    "one sheet that shows what your printer does, and which flags put it right",
		usage:   "ribwright proof [flags]",
		example: "ribwright proof --paper a4",
	}
	v.run = func(args []string, c console) error { return proofSheet(v, args, c) }
	return v
}

func proofSheet(v verb, args []string, c console) error {
	f := pflag.NewFlagSet(v.name, pflag.ContinueOnError)
	out := f.String("out", "out", "`folder` for the file; made when missing")
	units := unitsFlag{}
	f.Var(&units, "units", "what the bars are whole in")
	printer := newPrinter(f)
	if _, err := parse(v, f, args, 0, c.out); err != nil {
		return err
	}
	if err := outGiven(v, *out); err != nil {
		return err
	}
	if err := printer.check(v); err != nil {
		return err
	}
	if printer.setup.Size.Roll {
		printer.setup.Size.Down = printer.setup.Size.Across * 1.4 // enough of a roll to measure
	}
	sheet, err := printer.setup.Sheet(printer.way == tile.Lying)
	if err != nil {
		return usageError{fmt.Errorf("%s: --margins: %w", v.name, err)}
	}
	made, err := dateOfFiles(os.Getenv("SOURCE_DATE_EPOCH"))
	if err != nil {
		return err
	}
	file := output{"proof-" + sheet.Size.Name + ".pdf", func(w io.Writer) error {
		return pdf.Encode(w, proof.Lay(sheet, units.System), made)
	}}
	if err := save(*out, []output{file}, nil); err != nil {
		return err
	}
	_, err = fmt.Fprintf(c.out, "%s\n  %s, %s; print it at 100 %%, it says what to measure and which flags to give\n",
		filepath.Join(*out, file.name), sheet.Size.Name, sheet.Way())
	return err
}

// outGiven refuses an empty folder name.
func outGiven(v verb, out string) error {
	if out == "" {
		return usageError{fmt.Errorf("%s: --out: no folder is given; accepted: a folder, as out or ../river", v.name)}
	}
	return nil
}
