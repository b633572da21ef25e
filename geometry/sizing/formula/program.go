package formula

import (
	"maps"
	"slices"
	"strings"
)

// Input is a value that formulas may use and that comes from outside: what is
// known of the people, or what is found when the boat floats.
type Input struct {
	Name   string
	Kind   Kind
	Doc    string
	Afloat bool // found by floating the design that the formulas give
}

// Opener finds the text of a file that another uses.
type Opener func(name string) (Source, error)

// Program is a file of formulas, checked and put in order. It does not change
// after Compile and may be used by several goroutines.
type Program struct {
	values []statement // those given from outside, then those of the files in their order
	checks []statement
	limits map[string]statement
	guess  map[string]statement

	slots map[string]int // places in values
	order []int          // slots of formulas such that each follows what it uses
}

// Compile reads a file and those it uses, checks every formula and puts them in
// an order in which they can be worked out.
//
// Errors: *wording.Fault for anything wrong in a file, with line and column.
func Compile(main Source, open Opener, inputs []Input) (_ *Program, err error) {
	defer catch(&err)
	g := &gatherer{open: open}
	g.read(main, nil)
	p := &Program{limits: map[string]statement{}, guess: map[string]statement{}, slots: map[string]int{}}
	for _, v := range inputs {
		p.slots[v.Name] = len(p.values)
		p.values = append(p.values, statement{name: v.Name, kind: v.Kind, reason: v.Doc, afloat: v.Afloat})
	}
	for _, s := range g.all {
		p.place(s)
	}
	(&checker{Program: p, done: make([]bool, len(p.values))}).all()
	return p, nil
}

// place files a statement under its form.
func (p *Program) place(s statement) {
	switch s.form {
	case checkForm:
		p.checks = append(p.checks, s)
	case limitsForm:
		p.limits[s.name] = s
	case guessForm:
		p.guess[s.name] = s
	default:
		if _, given := p.slots[s.name]; given {
			refuse(s.at, s.name, "is given from outside and can have no formula; use another name")
		}
		p.slots[s.name] = len(p.values)
		p.values = append(p.values, s)
	}
}

type gatherer struct {
	open  Opener
	nodes int
	files int
	all   []statement
}

// read takes the statements of a file; those of files it uses come first, and
// are replaced where the file has its own of that name.
func (g *gatherer) read(src Source, above []string) {
	whole := Place{File: src.Name}
	if g.files++; g.files > maxFiles {
		refuse(whole, "", "more than %d files use one another", maxFiles)
	}
	list, uses := parse(src, &g.nodes)
	above = append(slices.Clone(above), src.Name)
	for _, t := range uses {
		g.readUsed(t, above)
	}
	for i, s := range list {
		if first := slices.IndexFunc(list[:i], s.replaces); first >= 0 {
			refuse(s.at, s.name, "is given twice, first on line %d; keep one", list[first].at.Line)
		}
		if old := slices.IndexFunc(g.all, s.replaces); old >= 0 {
			g.all[old] = s
		} else {
			g.all = append(g.all, s)
		}
	}
	if len(g.all) > maxStatements {
		refuse(whole, "", "more than %d statements with the files used", maxStatements)
	}
}

func (g *gatherer) readUsed(t token, above []string) {
	if slices.Contains(above, t.text) {
		refuse(t.at, "", "the files use one another in a circle: %s, %s", strings.Join(above, ", "), t.text)
	}
	if g.open == nil {
		refuse(t.at, "", "no other file can be used here")
	}
	src, err := g.open(t.text)
	if err != nil {
		refuse(t.at, "", "%v", err)
	}
	g.read(src, above)
}

// AllNames lists every name that a formula may use.
func (p *Program) AllNames() []string { return slices.Sorted(maps.Keys(p.slots)) }
