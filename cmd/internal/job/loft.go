package job

import (
	"bytes"
	"fmt"
	"io"
	"runtime"
	"slices"
	"strings"
	"sync"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/sidebyside"
	"ribwright/geometry/trial/bend"
	"ribwright/layout"
	"ribwright/layout/pattern"
	"ribwright/layout/plate/preview"
	"ribwright/layout/report"
	"ribwright/layout/tile"
	"ribwright/render/json"
	"ribwright/render/pdf"
)

// Loft asks for the full-size patterns of a design, the cutter's files and every
// number on them.
type Loft struct {
	Subject
	Since string // an older edition that is printed already: only what differs is printed; "" for none
	Ribs  pattern.Ribs
	Printing
	Cutting
}

// NewLoft returns the request with its defaults.
func NewLoft() *Loft {
	return &Loft{Subject: usual(), Ribs: usualRibs, Printing: newPrinting(), Cutting: newCutting()}
}

// Fields lists the choices.
func (l *Loft) Fields() []Field {
	own := []Field{
		units(&l.Units, "what lengths are lettered in; marks on wood carry both"),
		{Name: "since", Takes: "OLD.toml", Says: "an older edition that you have printed on the same paper: only the sheets that differ are printed, and the others stay as they are", Value: words(&l.Since)},
	}
	return append(append(append(own, l.Printing.fields()...), ribsOn(&l.Ribs)), l.Cutting.fields()...)
}

// Part reports whether some of the sheets are asked for, and not the whole set.
func (l *Loft) Part() bool { return l.Printing.Part() || l.Since != "" }

// usualRibs is on what ribs are drawn when nobody chooses.
const usualRibs = pattern.Stick

// ribsOn is the field that says on what ribs are drawn.
func ribsOn(to *pattern.Ribs) Field {
	all := []pattern.Ribs{pattern.Stick, pattern.Strips}
	return Field{Name: "ribs", Takes: strings.Join(namesOf(all), "|"), Group: paperGroup,
		Says:  "on what ribs are drawn to be marked: all on one stick with a lane each, or each on a strip as wide as the rib; a single rib that is asked for has its strip",
		Value: oneOf(to, namesOf(all), all)}
}

// ribs is on what ribs are drawn: on strips too where one is asked for by its name.
func (l *Loft) ribs() pattern.Ribs {
	if strings.Contains(strings.ToLower(l.Only), "rib-") {
		return pattern.Strips
	}
	return l.Ribs
}

// Do lofts the design.
func (l *Loft) Do(w World) (*Result, error) {
	if err := l.Printing.check(); err != nil {
		return nil, err
	}
	if err := l.Cutting.check(); err != nil {
		return nil, err
	}
	k, err := w.factsOf(l.Design)
	if err != nil {
		return nil, err
	}
	return l.loft(k, w)
}

// lofted is a boat on sheets and on the cutter's stock.
type lofted struct {
	frame *frame.Frame
	told  finding.List // whether the boat stands and its wood bends, in a line each
	laid
	plate layout.Plate
}

// lay puts the patterns on sheets, which takes longest, while the parts are put on stock and
// the portrait is drawn.
func (l *Loft) lay(k *facts, w World) (out lofted, err error) {
	if out.frame, err = k.frame(); err != nil {
		return out, err
	}
	bends, err := k.bending()
	if err != nil {
		return out, err
	}
	var before *tile.Set
	if l.Since != "" {
		if before, err = l.before(w); err != nil {
			return out, err
		}
	}
	if out.told, err = k.told(w); err != nil {
		return out, err
	}
	plate := sync.OnceValues(func() (layout.Plate, error) { return l.Cutting.plate(k.titled(), bends) })
	all := together
	if l.busy {
		all = sidebyside.InTurn
	}
	err = all(
		func() (err error) { // first, because its picture takes much memory
			_, err = k.portrait()
			return err
		},
		func() error {
			first, err := k.first(bends, out.told, l.Units)
			if err != nil {
				return err
			}
			set := k.set(bends, first, l.Units, l.ribs())
			if l.Only == "" && before == nil { // some sheets are numbered as in the whole set
				set.Last, set.LastTitle = inSmall(plate, l.Units), preview.Listed
			}
			out.laid, err = l.Printing.lay(set, before, l.Units)
			return of(k.name, err)
		},
		func() (err error) {
			out.plate, err = plate()
			return of(k.name, err)
		},
	)
	return out, err
}

// inSmall draws the cutter's plates on a sheet behind a whole set. What is wrong with a plate
// is told by whoever wants it full size.
func inSmall(plate func() (layout.Plate, error), units measure.System) func(geometry.Box) (layout.Sheet, bool) {
	return func(room geometry.Box) (layout.Sheet, bool) {
		p, err := plate()
		if err != nil {
			return layout.Sheet{}, false
		}
		return preview.Sheet(p, room, units.Words)
	}
}

// before are the patterns of the older edition.
func (l *Loft) before(w World) (*tile.Set, error) {
	k, err := w.factsOf(l.Since)
	if err != nil {
		return nil, err
	}
	bends, err := k.bending()
	if err != nil {
		return nil, err
	}
	set := k.set(bends, nil, l.Units, l.ribs())
	return &set, nil
}

// set are the patterns of a design with what the first sheets say.
func (k *facts) set(b *bend.Report, first *layout.First, units measure.System, ribs pattern.Ribs) tile.Set {
	return tile.Set{Title: k.design.Title, For: k.design.For, Edition: k.design.Edition, Fingerprint: k.fingerprint, Drawings: pattern.All(b, units, ribs), First: first}
}

// first is what is read before the patterns, with the boat to be looked at.
func (k *facts) first(b *bend.Report, told finding.List, units measure.System) (*layout.First, error) {
	_, err := k.carried()
	out := pattern.First(b, told, units)
	out.Boat = func() layout.Drawing {
		boat, _ := k.portrait() // which fails where the boat carried does
		return boat
	}
	return out, err
}

// loft goes from the facts of a design to files.
func (l *Loft) loft(k *facts, w World) (*Result, error) {
	made, err := l.lay(k, w)
	if err != nil {
		return nil, err
	}
	return l.deliver(k, w, made)
}

// deliver makes files of what is laid.
func (l *Loft) deliver(k *facts, w World, made lofted) (*Result, error) {
	list, err := k.marks()
	if err != nil {
		return nil, err
	}
	bends, err := k.bending()
	if err != nil {
		return nil, err
	}
	slug, sheets := k.design.Stem(), made.printed
	numbers, err := json.Numbers(bends, list, sheets)
	if err != nil {
		return nil, of(k.name, err)
	}
	out := append([]Output{onSheets(slug, sheets, w)}, cutterFiles(slug+"-cut", l.saysOf(made.plate), made.plate)...)
	if l.Each {
		out = append(out, eachPlate(slug+"-cut", made.plate)...)
	}
	out = append(out, Output{slug + "-numbers.json", "every number on the patterns",
		func(to io.Writer) error { return json.Encode(to, numbers) }})
	if !l.busy && runtime.GOMAXPROCS(0) > 1 { // with one, files may wait until they are asked for
		ahead(out)
	}
	told := slices.Concat(made.laid.told(&l.Printer), report.Told(made.told), k.unlettered())
	return &Result{Report: k.report("patterns", told).In(l.Units), Numbers: numbers, Outputs: out, Warnings: warnings(made.told)}, nil
}

// ahead makes files side by side before they are written. What goes wrong is told when they
// are.
func ahead(files []Output) {
	sidebyside.Each(len(files), func(i int) {
		var all bytes.Buffer
		if files[i].Write(&all) == nil {
			files[i].Write = func(w io.Writer) error { _, err := w.Write(all.Bytes()); return err }
		}
	})
}

// onSheets is the file of patterns.
func onSheets(stem string, d layout.Document, w World) Output {
	says := "print it at 100 %, and check the scale bars"
	if slices.ContainsFunc(d.Sheets, func(s layout.Sheet) bool { return s.Number == 1 }) {
		says = "print sheet 1 first, at 100 %, and check its scale bars"
	}
	return Output{stem + "-patterns-" + d.Paper.Name + ".pdf", says,
		func(to io.Writer) error { return pdf.Encode(to, d, w.Made) }}
}

// saysOf says what lies in the cutter's files.
func (l *Loft) saysOf(p layout.Plate) string {
	how := "all thicknesses together"
	if l.ByThickness {
		how = "one material and thickness each"
	}
	return fmt.Sprintf("%s, %s; the rectangles round them are %.2f times their area", onBoards(p), how, p.Spread())
}
