package main

import (
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/pflag"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/water"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/plate/nest"
	"ribwright/layout/tile"
	"ribwright/render/json"
	"ribwright/render/pdf"
	"ribwright/render/svg"
)

// fitting are the flags that the verbs of all outfits share.
type fitting struct {
	verb            verb
	flags           *pflag.FlagSet
	units           unitsFlag
	water           waterFlag
	json, svg, loft bool
	out             string
	printer         *printer
	choice          *choice
}

func newFitting(v verb) *fitting {
	t := &fitting{verb: v, flags: pflag.NewFlagSet(v.name, pflag.ContinueOnError)}
	f := t.flags
	f.Var(&t.water, "water", "what it floats in")
	f.Var(&t.units, "units", "what lengths are lettered in")
	f.BoolVar(&t.json, "json", false, "every figure as JSON instead of the page")
	f.BoolVar(&t.svg, "svg", false, "a figure as NAME-"+v.name+".svg too")
	f.BoolVar(&t.loft, "loft", false, "full-size patterns and one file for the cutter too")
	f.StringVar(&t.out, "out", "out", "`folder` for the files; made when missing")
	t.printer, t.choice = newPrinter(f), newChoice(f)
	return t
}

// read takes the flags and returns the names of designs given, at most so many.
func (t *fitting) read(args []string, most int, c console) ([]string, error) {
	rest, err := parse(t.verb, t.flags, args, most, c.out)
	if err != nil {
		return nil, err
	}
	if err := outGiven(t.verb, t.out); err != nil {
		return nil, err
	}
	if err := t.printer.check(t.verb); err != nil {
		return nil, err
	}
	return rest, t.choice.check(t.verb)
}

// checked refuses what flags made of a design, by the flag's own name.
func (t *fitting) checked(d *design.Design, flagOf map[string]string) error {
	p := d.Check()
	if p == nil {
		return nil
	}
	key := p.Key
	if flag := flagOf[p.Key]; flag != "" {
		key = "--" + flag
	}
	return usageError{fmt.Errorf("%s: %s: %s", t.verb.name, key, p.Text)}
}

// overLength is a length of the design with the flag that may replace it.
type overLength struct {
	to   *measure.Length
	flag lengthFlag
}

func overLengths(all []overLength) {
	for _, o := range all {
		if o.flag.mm != 0 {
			*o.to = measure.Length(o.flag.mm)
		}
	}
}

// still is the water the outfit is worked for, at the usual temperature.
func (t *fitting) still() (water.Water, error) { return water.At(t.water.Kind, water.Usual) }

// told is what a verb has to say of its outfit.
type told struct {
	design *design.Design
	name   string // of the design, as it was given
	page   func(io.Writer) error
	json   func(*layout.Document) (any, error)
	figure layout.Drawing
	about  string // the figure, for those who cannot see it

	purpose  string // a line under the title of the first sheet
	drawings []layout.Drawing
	parts    []layout.Part
	notes    []layout.Note
	more     []plateOf // files for the cutter besides the first
}

// plateOf is a further file for the cutter: cloth is not cut from the same stock as
// boards.
type plateOf struct {
	name  string // of the file, behind the boat's and the verb's
	parts []layout.Part
	wide  float64
}

// tell writes the page or the JSON, and the files that are asked for.
func (t *fitting) tell(c console, s told) error {
	id, err := json.HeaderOf(s.design)
	if err != nil {
		return err
	}
	stem := id.Slug + "-" + t.verb.name
	var outs []output
	said := ""
	if t.svg {
		outs = append(outs, output{stem + ".svg", func(w io.Writer) error { return svg.EncodeFigure(w, s.figure, s.about) }})
		said += "\n" + filepath.Join(t.out, stem+".svg") + "\n  to look at\n"
	}
	if t.loft {
		more, words, err := t.lofted(s, id, stem)
		if err != nil {
			return err
		}
		outs, said = append(outs, more...), said+"\n"+words
	}
	if len(outs) > 0 {
		if err := save(t.out, outs, nil); err != nil {
			return err
		}
	}
	if t.json {
		report, err := s.json(nil)
		if err != nil {
			return err
		}
		return json.Encode(c.out, report)
	}
	if err := s.page(c.out); err != nil {
		return err
	}
	_, err = io.WriteString(c.out, said)
	return err
}

// lofted lays the patterns on sheets and the parts on plates, as loft does, and says
// what it made.
func (t *fitting) lofted(s told, id json.Header, stem string) ([]output, string, error) {
	made, err := dateOfFiles(os.Getenv("SOURCE_DATE_EPOCH"))
	if err != nil {
		return nil, "", err
	}
	drawings, err := t.choice.patterns(s.drawings)
	if err != nil {
		return nil, "", err
	}
	laid, err := tile.Lay(tile.Set{Title: id.Title, For: s.purpose, Fingerprint: id.Fingerprint, Drawings: drawings, Notes: s.notes},
		tile.Options{Paper: t.printer.setup, Way: t.printer.way, Units: t.units.System})
	if err != nil {
		return nil, "", fmt.Errorf("%s: %w", s.name, err)
	}
	doc := laid.Document
	if doc.Sheets, err = t.choice.pick(doc.Sheets); err != nil {
		return nil, "", err
	}
	if n := len(doc.Sheets); n > t.choice.most {
		return nil, "", fmt.Errorf("%s takes %d sheets of %s, more than --max-sheets %d; choose patterns with --only, take a larger --paper or a roll, or allow more", s.name, n, laid.Paper.Size.Name, t.choice.most)
	}
	plates, err := t.plates(s, id)
	if err != nil {
		return nil, "", err
	}
	pdfName := stem + "-patterns-" + doc.Paper.Name + ".pdf"
	outs, said := []output{sheetsOut(pdfName, doc, made)}, ""
	for _, p := range plates {
		name := stem + "-" + p.name
		outs = append(outs, cutterOutputs(name, p.Plate)...)
		said += fmt.Sprintf("%s.svg\n%s.dxf\n  %s on %s for the cutter\n", filepath.Join(t.out, name), filepath.Join(t.out, name),
			wording.Counted(len(p.Parts), "part"), boardsOf(p.Plate))
	}
	numbers, err := s.json(&doc)
	if err != nil {
		return nil, "", err
	}
	outs = append(outs, output{stem + "-numbers.json", func(w io.Writer) error { return json.Encode(w, numbers) }})
	l := lofting{laid: laid, sheets: doc}
	return outs, l.sheetsLine(t.printer) + filepath.Join(t.out, pdfName) + "\n  print sheet 1 first, at 100 %, and check its scale bars\n" +
		said + filepath.Join(t.out, stem+"-numbers.json") + "\n  every number, and where each tile lies\n", nil
}

func sheetsOut(name string, doc layout.Document, made time.Time) output {
	return output{name, func(w io.Writer) error { return pdf.Encode(w, doc, made) }}
}

// laidPlate is a plate and the name of its files, behind the boat's and the verb's.
type laidPlate struct {
	name string
	layout.Plate
}

// plates lays the parts for the cutter, on stock long enough for the longest.
func (t *fitting) plates(s told, id json.Header) ([]laidPlate, error) {
	var out []laidPlate
	for _, q := range append([]plateOf{{"cut", s.parts, nest.DefaultOptions().Stock.W}}, s.more...) {
		o := nest.DefaultOptions()
		o.Stock, o.Quick = q.stock(o), true
		plate, err := nest.Lay(id.Title+" "+t.verb.name, q.parts, o)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", s.name, err)
		}
		out = append(out, laidPlate{q.name, plate})
	}
	return out, nil
}

// stock is a size of sheet as wide as is usual, and as wide and long as the largest
// part needs; the grain of parts runs along it.
func (q plateOf) stock(o nest.Options) nest.Stock {
	out := nest.Stock{W: q.wide, H: o.Stock.H}
	for _, p := range q.parts {
		b := p.Bounds()
		out.W = max(out.W, math.Ceil(b.H()+2*o.Gap+1))
		out.H = max(out.H, math.Ceil(b.W()+2*o.Gap+1))
	}
	out.H = max(out.H, out.W)
	return out
}
