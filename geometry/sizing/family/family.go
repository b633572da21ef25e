// Package family holds families of boats: files of formulas that turn what is
// known of the people, their gear and the water into a complete design. A few
// families come with the program; anyone can change one or write another.
package family

import (
	"embed"
	"fmt"
	"path"
	"slices"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/sizing/formula"
)

//go:embed shipped/*.family
var shippedFiles embed.FS

// Names lists the families that come with the program.
func Names() []string { return []string{"pack", "solo", "tandem"} }

// Files lists the families and the shared files that they use.
func Files() []string { return append(Names(), "people", "making") }

// Family is a file of formulas that gives a design.
type Family struct {
	Name    string
	Seats   int // how many paddle
	Program *formula.Program
	Drawing formula.Mask // what the design rests on, and the places of people and gear; all else judges the result

	targets []target // the keys of the design that have a formula, in the order of the files
	rows    []row    // that they lie in
}

// Shipped returns a family that comes with the program. Errors: an unknown name,
// listing the known ones.
func Shipped(name string) (*Family, error) {
	if !slices.Contains(Names(), name) {
		return nil, fmt.Errorf("no family %q; there are %s, or a family file of your own", name, strings.Join(Names(), ", "))
	}
	src, err := Source(name)
	if err != nil {
		return nil, err
	}
	return Read(src)
}

// Source returns the file of a shipped family or of a part it uses. Errors: an unknown
// name, listing the known ones.
func Source(name string) (formula.Source, error) {
	if !slices.Contains(Files(), name) {
		return formula.Source{}, fmt.Errorf("no file %q to use; there are %s", name, strings.Join(Files(), ", "))
	}
	data, err := shippedFiles.ReadFile("shipped/" + name + ".family")
	return formula.Source{Name: name + ".family", Text: string(data)}, err
}

// Read checks a family file. It may use the shipped ones.
//
// Errors: *wording.Fault for what is wrong in the file, with line and column.
func Read(src formula.Source) (*Family, error) {
	// The partner is known only where two paddle, so the seats are read first.
	p, err := formula.Compile(src, Source, inputs(2))
	if err != nil {
		return nil, err
	}
	f := &Family{Name: src.Name}
	if f.Seats, err = seats(p, src.Name); err != nil {
		return nil, err
	}
	if f.Seats == 1 {
		if p, err = formula.Compile(src, Source, inputs(1)); err != nil {
			return nil, err
		}
	}
	f.Program = p
	if err := f.checkRequired(); err != nil {
		return nil, err
	}
	if err := f.connect(); err != nil {
		return nil, err
	}
	var names []string
	for _, t := range f.targets {
		names = append(names, t.name)
	}
	for _, w := range required(f.Seats) {
		names = append(names, w.Name)
	}
	if p.HasFormula("live_at") {
		names = append(names, "live_at")
	}
	f.Drawing = p.Behind(names...)
	for _, n := range names {
		for _, found := range p.AfloatBehind(n) {
			if !p.Guess(found) {
				return f, f.fault(n, "rests on %s, which is only known afloat; say where to start, as in: guess %s = ...", found, found)
			}
		}
	}
	return f, nil
}

// seats works out how many paddle, which must not depend on anything.
func seats(p *formula.Program, file string) (int, error) {
	k, err := p.Kind("seats")
	v, fixed := p.Constant("seats")
	text := ""
	switch {
	case err != nil || k != formula.Of(formula.Plain):
		text = "is missing or no plain number; write seats = 1 or seats = 2"
	case !fixed || v.Num != 1 && v.Num != 2:
		text = "is not 1 or 2 written out; write seats = 1 or seats = 2"
	default:
		return int(v.Num), nil
	}
	at := p.Where("seats")
	if at.Line == 0 {
		at = formula.Place{File: file}
	}
	return 0, at.Fault("seats", text)
}

// checkRequired checks that the file gives what the program must know to float the
// boat and to judge the reach.
func (f *Family) checkRequired() error {
	for _, w := range required(f.Seats) {
		if !f.Program.HasFormula(w.Name) {
			return formula.Place{File: f.Name}.Fault(w.Name, "is missing: "+w.Doc)
		}
		if err := f.checkKind(w.Name, w.Kind, "accepted:"); err != nil {
			return err
		}
	}
	return nil
}

// Slug returns the name in a form that is safe in file names.
func (f *Family) Slug() string {
	d := design.Design{Title: strings.TrimSuffix(path.Base(strings.ReplaceAll(f.Name, "\\", "/")), ".family")}
	return d.Slug()
}
