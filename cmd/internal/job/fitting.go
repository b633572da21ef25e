package job

import (
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit"
	"ribwright/geometry/water"
	"ribwright/layout"
	"ribwright/layout/plate/nest"
	"ribwright/layout/report"
	"ribwright/layout/tile"
	"ribwright/render/json"
	"ribwright/render/svg"
)

// Fitting is what the requests for all outfits share.
type Fitting struct {
	Subject
	Water   water.Kind
	Picture bool
	Loft    bool // patterns and the cutter's file too
	// FullSize draws straight pieces and panels at full size too, not as sketches with distances.
	FullSize bool
	Printing
}

func newFitting() Fitting { return Fitting{Subject: usual(), Printing: newPrinting()} }

func (t *Fitting) fields(own ...Field) []Field {
	return append(append(own, kindOfWater(&t.Water), units(&t.Units, "what lengths are lettered in"),
		picture(&t.Picture, "a figure as a file too"),
		Field{Name: "loft", Says: "full-size patterns and one file for the cutter too", Value: yes(&t.Loft)},
		Field{Name: "full-size", Says: "straight pieces and panels at full size, not as sketches with distances", Value: yes(&t.FullSize)}), t.Printing.fields()...)
}

// changes are what a request says in the place of values of the design, by the names of
// its fields.
type changes[T any] map[string]change[T]

type change[T any] struct {
	text string // as it was given
	put  func(*T)
}

// over returns the design's values with what is said in their place.
func (c changes[T]) over(values T) *T {
	for _, one := range c {
		one.put(&values)
	}
	return &values
}

// changing is the value of a field that changes the design.
type changing[T any] struct {
	all  changes[T]
	name string
	read func(string) (func(*T), error)
}

func (v changing[T]) String() string { return v.all[v.name].text }
func (v changing[T]) Set(text string) error {
	put, err := v.read(text)
	if err == nil {
		v.all[v.name] = change[T]{text, put}
	}
	return err
}

// instead is a field for what is at a place in the design, which holds while the field
// is not set.
func instead[T, V any](all changes[T], name, takes, says string, read func(string) (V, error), at func(*T) *V) Field {
	return Field{Name: name, Takes: takes, Says: says, Value: changing[T]{all, name, func(text string) (func(*T), error) {
		v, err := read(text)
		return func(to *T) { *at(to) = v }, err
	}}}
}

// insteadLength is such a field for a length.
func insteadLength[T any](all changes[T], name, says string, at func(*T) *measure.Length) Field {
	return instead(all, name, "length", says, measure.ParseLength, at)
}

// fitter is a request for one outfit.
type fitter interface {
	Fields() []Field
	over(*design.Design) error // puts what the request says into the design
	outfitting(*facts, *outfit.Outfits) outfitting
}

// make sizes the outfit and makes its files.
func (t *Fitting) make(w World, n outfit.Name, r fitter, beside func(*facts) string) (*Result, error) {
	k, err := t.changed(w, r)
	if err != nil {
		return nil, err
	}
	s, err := k.ship(w, k.design.Gear, beside(k), t.Water)
	if err != nil {
		return nil, err
	}
	all, err := outfit.One(s, n) // with the weight of the others that its design has
	if err != nil {
		return nil, of(k.name, err)
	}
	return t.result(r.outfitting(k, all), w)
}

// changed opens the design, puts into it what the request says instead and checks it.
func (t *Fitting) changed(w World, r fitter) (*facts, error) {
	if err := t.Printing.check(); err != nil {
		return nil, err
	}
	d, err := w.open(t.Design)
	if err != nil {
		return nil, err
	}
	if err := r.over(d); err != nil {
		return nil, err
	}
	p := d.Check()
	if p == nil {
		return newFacts(d, t.Design)
	}
	field := strings.ReplaceAll(p.Key[strings.LastIndex(p.Key, ".")+1:], "_", "-")
	if field == "stature" || field == "mass" {
		field = "paddler"
	}
	if strings.HasPrefix(p.Key, "outfit.") && slices.ContainsFunc(r.Fields(), func(f Field) bool { return f.Name == field }) {
		return nil, wrong(field, errors.New(strings.TrimSuffix(p.Text, ", or 0 mm"))) // which stands for none
	}
	return nil, misuse("", "%s: %s", p.Key, p.Text)
}

// outfitting is what there is to tell and to make of an outfit.
type outfitting struct {
	facts  *facts
	name   string // of the outfit, behind the boat's in the names of files
	kind   string // of what is told
	blocks []report.Block
	figure layout.Drawing
	about  string // the figure, for those who cannot see it

	purpose  string // a line under the title of the first sheet
	drawings []layout.Drawing
	first    *layout.First
	plates   []plateOf
	numbers  func(sheets *layout.Document) (any, error) // with the table of sheets where there are some
}

// plateOf is a file for the cutter: cloth is not cut from the same stock as boards.
type plateOf struct {
	name  string // behind the outfit's
	parts []layout.Part
	wide  float64 // of the stock, mm; the parts decide how long
}

// clothWide is how wide the plate for a cutter of cloth is, mm: the panels lie along
// it.
const clothWide = 3000

// result tells of the outfit and makes the files that are asked for.
func (t *Fitting) result(f outfitting, w World) (*Result, error) {
	stem := f.facts.design.Stem() + "-" + f.name
	out := &Result{Report: f.facts.report(f.kind, f.blocks).In(t.Units)}
	var err error
	if out.Numbers, err = f.numbers(nil); err != nil {
		return nil, of(f.facts.name, err)
	}
	if t.Picture {
		out.Outputs = append(out.Outputs, Output{stem + ".svg", "to look at", func(to io.Writer) error { return svg.EncodeFigure(to, f.figure, f.about+" "+f.facts.titled()+".") }})
	}
	if !t.Loft {
		return out, nil
	}
	sheets, err := t.Printing.lay(tile.Set{Title: f.facts.design.Title, For: f.purpose, Edition: f.facts.design.Edition, Fingerprint: f.facts.fingerprint, Drawings: f.drawings, First: f.first}, nil, t.Units)
	if err != nil {
		return nil, of(f.facts.name, err)
	}
	plates, err := f.cut(stem)
	if err != nil {
		return nil, of(f.facts.name, err)
	}
	numbers, err := f.numbers(&sheets.printed)
	if err != nil {
		return nil, of(f.facts.name, err)
	}
	out.Report.Blocks = append(out.Report.Blocks, append(sheets.told(&t.Printer), f.facts.unlettered()...)...)
	out.Outputs = append(append(out.Outputs, onSheets(stem, sheets.printed, w)), plates...)
	out.Outputs = append(out.Outputs, Output{stem + "-numbers.json", "every number, and where each tile lies",
		func(to io.Writer) error { return json.Encode(to, numbers) }})
	return out, nil
}

// cut lays the parts for the cutter, on stock long enough for the longest.
func (f *outfitting) cut(stem string) ([]Output, error) {
	var out []Output
	for _, q := range f.plates {
		plate, err := q.lay(f.facts.report(f.name, nil).Foot())
		if err != nil {
			return nil, err
		}
		out = append(out, cutterFiles(stem+"-"+q.name, onBoards(plate), plate)...)
	}
	return out, nil
}

func (q plateOf) lay(title string) (layout.Plate, error) {
	o := nest.DefaultOptions()
	o.Stock, o.Quick = q.stock(o), true
	return nest.Lay(title, q.parts, o)
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

// boards is the plate of an outfit's boards.
func boards(parts []layout.Part) plateOf { return plateOf{"cut", parts, nest.DefaultOptions().Stock.W} }

// m2 letters an area in running words.
func m2(area float64) string { return fmt.Sprintf("%.2f m2", area) }
