package formula

import (
	"fmt"
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
//
// Errors: *Fault for anything wrong in a file, with line and column.
func Compile(main Source, open Opener, inputs []Input) (*Program, error) {
	g := &gatherer{open: open, own: map[string]statement{}}
	if err := g.read(main, nil); err != nil {
		return nil, err
	}
	p := &Program{
		inputs: inputs, limits: map[string]statement{}, guess: map[string]statement{},
		slots: map[string]int{}, kinds: make([]Kind, len(inputs)),
	}
	for i, v := range inputs {
		p.slots[v.Name], p.kinds[i] = i, v.Kind
	}
	for _, s := range g.all {
		if f := p.place(s); f != nil {
			return nil, f
		}
	}
	c := &checker{Program: p, state: make([]int8, len(p.lines))}
	if f := c.checkAll(); f != nil {
		return nil, f
	}
	return p, nil
}

// place files a statement under its form.
func (p *Program) place(s statement) *Fault {
	_, isGiven := p.slots[s.name]
	switch s.form {
	case Checked:
		p.checks = append(p.checks, s)
		return nil
	case Limited:
		p.limits[s.name] = s
		return nil
	case Guessed:
		p.guess[s.name] = s
		return nil
	}
	if isGiven {
		return faultAt(s.at, s.name, "is given from outside and can have no formula; use another name")
	}
	p.slots[s.name] = len(p.inputs) + len(p.lines)
	p.kinds = append(p.kinds, Kind{})
	p.lines = append(p.lines, s)
	return nil
}

// gatherer reads a file and those it uses.
type gatherer struct {
	open  Opener
	nodes int
	files int
	all   []statement
	own   map[string]statement // by form and name, the one that counts
}

func key(s statement) string {
	form := s.form
	if form == ForPage {
		form = Plainly
	}
	return fmt.Sprint(form, " ", s.name)
}

// read takes the statements of a file; those of files it uses come first, and
// are replaced where the file has its own of that name.
func (g *gatherer) read(src Source, above []string) error {
	if g.files++; g.files > maxFiles {
		return &Fault{At: Place{File: src.Name}, Text: fmt.Sprintf("more than %d files use one another", maxFiles)}
	}
	list, uses, f := parse(src, &g.nodes)
	if f != nil {
		return f
	}
	above = append(slices.Clone(above), src.Name)
	for _, t := range uses {
		if err := g.readUsed(t, above); err != nil {
			return err
		}
	}
	here := map[string]Place{}
	for _, s := range list {
		k := key(s)
		if first, twice := here[k]; twice {
			return faultAt(s.at, s.name, "is given twice, first on line %d; keep one", first.Line)
		}
		here[k] = s.at
		g.put(k, s)
	}
	if len(g.all) > maxStatements {
		return &Fault{At: Place{File: src.Name}, Text: fmt.Sprintf("more than %d statements with the files used", maxStatements)}
	}
	return nil
}

// put adds a statement, in the place of an earlier one of its name.
func (g *gatherer) put(k string, s statement) {
	if _, ok := g.own[k]; !ok {
		g.all = append(g.all, s)
	} else {
		for i := range g.all {
			if key(g.all[i]) == k {
				g.all[i] = s
			}
		}
	}
	g.own[k] = s
}

func (g *gatherer) readUsed(t token, above []string) error {
	if slices.Contains(above, t.text) {
		return faultAt(t.at, "", "the files use one another in a circle: %s, %s", strings.Join(above, ", "), t.text)
	}
	if g.open == nil {
		return faultAt(t.at, "", "no other file can be used here")
	}
	src, err := g.open(t.text)
	if err != nil {
		return faultAt(t.at, "", "%v", err)
	}
	return g.read(src, above)
}

// AllNames lists every name that a formula may use.
func (p *Program) AllNames() []string { return slices.Sorted(maps.Keys(p.slots)) }
