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

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/marks"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/pattern"
	"ribwright/layout/tile"
	"ribwright/render/json"
	"ribwright/render/pdf"
)

func loftVerb() verb {
	v := verb{
		name:    "loft",
		line:    "full-size patterns on paper, one file for the cutter, and every number",
		takes:   "ribwright loft [DESIGN.toml|" + strings.Join(design.ShippedNames(), "|") + "] [flags]",
		example: "ribwright loft river --paper a4 --units imperial --out river",
	}
	v.run = func(args []string, c console) error { return loft(v, args, c) }
	return v
}

func loft(v verb, args []string, c console) error {
	f := pflag.NewFlagSet(v.name, pflag.ContinueOnError)
	out := f.String("out", "out", "`folder` for the files; made when missing")
	units := unitsFlag{}
	f.Var(&units, "units", "what lengths are lettered in; marks on wood carry both")
	cutter := newCutterFlags()
	cutter.addTo(f)
	printer, choice := newPrinter(f), newChoice(f)
	rest, err := parseOld(v, f, args, 1, c.out)
	if err != nil {
		return err
	}
	if err := outGiven(v, *out); err != nil {
		return err
	}
	if err := printer.check(v); err != nil {
		return err
	}
	if err := choice.check(v); err != nil {
		return err
	}
	made, err := dateOfFiles(os.Getenv("SOURCE_DATE_EPOCH"))
	if err != nil {
		return err
	}
	if err := cutter.check(); err != nil {
		return err
	}
	d, name, err := usually(rest)
	if err != nil {
		return err
	}
	set, err := newLofting(d, name, printer, choice, units)
	if err != nil {
		return err
	}
	if err := set.lay(cutter); err != nil {
		return err
	}
	set.made = made
	// Files are written even when nobody hears of it.
	_, unheard := io.WriteString(c.out, set.sheetsLine(printer))
	if err := saveIn(*out, set.outputs(), nil); err != nil {
		return err
	}
	return cmp.Or(unheard, set.report(c.out, *out))
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

// usually opens the design named, or the first shipped one.
func usually(names []string) (*design.Design, string, error) {
	name := design.ShippedNames()[0]
	if len(names) > 0 {
		name = names[0]
	}
	d, err := open(name)
	return d, name, err
}

// lofting is everything made from one design for one paper.
type lofting struct {
	frame       *frame.Frame
	slug        string
	fingerprint string
	laid        tile.Laid // every sheet of the set
	sheets      layout.Document
	cutter      *cutterFlags
	plate       layout.Plate // none before lay
	numbers     *json.NumbersReport
	made        time.Time
}

// newLofting goes from a design to sheets; nothing is written yet.
func newLofting(d *design.Design, name string, p *printer, c *choice, units unitsFlag) (*lofting, error) {
	f, err := frame.Build(d)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	l := &lofting{frame: f, slug: d.Slug()}
	if l.fingerprint, err = d.Fingerprint(); err != nil {
		return nil, err
	}
	bent, err := bend.Of(f)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	drawings, err := c.patterns(pattern.All(bent, units.System))
	if err != nil {
		return nil, err
	}
	l.laid, err = tile.Lay(tile.Set{
		Title: d.Title, For: d.For, Fingerprint: l.fingerprint,
		Drawings: drawings, Notes: pattern.Notes(bent, units.System),
	}, tile.Options{Paper: p.setup, Way: p.way, Units: units.System})
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	l.sheets = l.laid.Document
	if l.sheets.Sheets, err = c.pick(l.sheets.Sheets); err != nil {
		return nil, err
	}
	if n := len(l.sheets.Sheets); n > c.most {
		room := l.laid.Paper.Area
		return nil, fmt.Errorf("%s takes %d sheets, more than --max-sheets %d: the boat is %.2f m long and a sheet of %s shows %.0f x %.0f mm of it; check the units of hull.length and of --paper, choose patterns with --only, or allow more",
			name, n, c.most, f.Hull.Length/1000, l.laid.Paper.Size.Name, room.W(), room.H())
	}
	if err := l.number(bent); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return l, nil
}

// number lists every mark and where each pattern lies.
func (l *lofting) number(b *bend.Report) error {
	list, err := marks.Of(l.frame, b)
	if err != nil {
		return err
	}
	l.numbers, err = json.Numbers(l.frame, list, l.sheets)
	return err
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
	out := []output{{l.slug + "-patterns-" + l.sheets.Paper.Name + ".pdf", func(w io.Writer) error { return pdf.Encode(w, l.sheets, l.made) }}}
	out = append(out, cutterOutputs(l.slug+"-cut", l.plate)...)
	return append(out, output{l.slug + "-numbers.json", func(w io.Writer) error {
		return json.Encode(w, l.numbers)
	}})
}

// sheetsLine says how much paper it takes, before anything is written.
func (l *lofting) sheetsLine(p *printer) string {
	out := fmt.Sprintf("%s of %s, %s", wording.Counted(len(l.laid.Sheets), "sheet"), l.laid.Paper.Size.Name, l.laid.Paper.Way())
	if o := l.laid.Other; o.Sheets > 0 {
		out += fmt.Sprintf(", %s (%s: %s, %s)", wording.Counted(l.laid.Pieces, "piece"), o.Way, wording.Counted(o.Sheets, "sheet"), wording.Counted(o.Pieces, "piece"))
	}
	if c := l.laid.Paper.Correction(); c != "" {
		out += ", " + c
	}
	if n := len(l.sheets.Sheets); n < len(l.laid.Sheets) {
		out += fmt.Sprintf("; %d of them printed", n)
	}
	if l.laid.Least < float64(len(l.laid.Sheets)) { // boxes of large hollow patterns may take more than their tiles
		out += fmt.Sprintf("\n  the patterns alone would fill %.1f", l.laid.Least)
	}
	return out + "\n" + p.warning()
}

// report says what was made and what to do first.
func (l *lofting) report(w io.Writer, dir string) error {
	outs := l.outputs()
	_, err := fmt.Fprintf(w, "%s\n  print sheet 1 first, at 100 %%, and check its scale bars\n%s%s\n  every number on the patterns\n",
		filepath.Join(dir, outs[0].name),
		cutterReport(dir, l.slug, l.plate, l.cutter.byThickness),
		filepath.Join(dir, outs[len(outs)-1].name))
	return err
}
