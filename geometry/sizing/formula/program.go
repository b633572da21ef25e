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
	inputs []Input
	lines  []statement
	checks []statement
	limits map[string]statement
	guess  map[string]statement

	slots map[string]int // of given values, then of lines
	kinds []Kind         // by slot
	order []int          // lines such that each follows what it uses
	uses  [][]int        // by line: the slots it uses, each once, in the order of the formula
}

// Compile reads a file and those it uses, checks every formula and puts them in
// an order in which they can be worked out.
// Errors: *Fault for anything wrong in a file, with line and column.
func Compile(main Source, open Opener, inputs []Input) (p *Program, err error) {
	defer func() {
		switch f := recover().(type) {
		case nil:
		case *Fault:
			p, err = nil, f
		default:
			panic(f)
		}
	}()
	g := &gatherer{open: open, at: map[key]int{}}
	g.read(main, nil)
	p = &Program{
		inputs: inputs, limits: map[string]statement{}, guess: map[string]statement{},
		slots: map[string]int{}, kinds: make([]Kind, len(inputs)),
	}
	for i, v := range inputs {
		p.slots[v.Name], p.kinds[i] = i, v.Kind
	}
	for _, s := range g.all {
		p.place(s)
	}
	c := &checker{Program: p, state: make([]int8, len(p.lines))}
	c.checkAll()
	return p, nil
}

// place files a statement under its form.
func (p *Program) place(s statement) {
	switch s.form {
	case checkForm:
		p.checks = append(p.checks, s)
		return
	case limitsForm:
		p.limits[s.name] = s
		return
	case guessForm:
		p.guess[s.name] = s
		return
	}
	if _, given := p.slots[s.name]; given {
		refuse(s.at, s.name, "is given from outside and can have no formula; use another name")
	}
	p.slots[s.name] = len(p.inputs) + len(p.lines)
	p.kinds = append(p.kinds, Kind{})
	p.lines = append(p.lines, s)
}

type gatherer struct {
	open  Opener
	nodes int
	files int
	all   []statement
	at    map[key]int // place of each in all
}

// key tells statements apart: of two with the same key one replaces the other.
type key struct {
	form form
	name string
}

func (s statement) key() key {
	if s.form == tellForm {
		return key{plainForm, s.name}
	}
	return key{s.form, s.name}
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
	here := map[key]Place{}
	for _, s := range list {
		if first, twice := here[s.key()]; twice {
			refuse(s.at, s.name, "is given twice, first on line %d; keep one", first.Line)
		}
		here[s.key()] = s.at
		g.put(s)
	}
	if len(g.all) > maxStatements {
		refuse(whole, "", "more than %d statements with the files used", maxStatements)
	}
}

func (g *gatherer) put(s statement) {
	if i, ok := g.at[s.key()]; ok {
		g.all[i] = s
		return
	}
	g.at[s.key()] = len(g.all)
	g.all = append(g.all, s)
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
