package job

import "fmt"

// Verb is something that can be asked of the engine, by the name that every front end
// has for it.
type Verb struct {
	Name string
	Says string // what comes of it, in a line
	New  func() Request
}

// Verbs lists what can be asked, in the order of a builder's work.
func Verbs() []Verb {
	return append([]Verb{
		{"size", "from the people and the water to a design, by formulas you can change", func() Request { return NewSize() }},
		{"class", "a course: every builder's boat in a folder of its own, and a summary", func() Request { return NewClass() }},
		{"float", "whether it carries you, stays upright and moves easily", func() Request { return NewFloat() }},
		{"bend", "whether the wood takes each bend, and what holds the frame's shape", func() Request { return NewBend() }},
		{"loft", "full-size patterns on paper, one file for the cutter, and every number", func() Request { return NewLoft() }},
		{"proof", "one sheet that shows what your printer does, and what puts it right", func() Request { return NewProof() }},
		{"book", "the build book: drawings, tables, cut list, cost, hours, order of work", func() Request { return NewBook() }},
		{"sail", "a small sail: how much the boat stands, in what wind to reef and to stop", func() Request { return NewSail() }},
		{"pair", "two hulls side by side: how stiff, when the windward one lifts, and beams that hold", func() Request { return NewPair() }},
		{"row", "a clip-on frame, oars and a seat to row the boat, fitted to the rower", func() Request { return NewRow() }},
	}, offPage()...)
}

// Asked lists what a page can ask besides: it stands on no command line.
func Asked() []Verb {
	return append(Verbs(), Verb{"look", "the boat's lines and how it stands, while it is changed", func() Request { return NewLook() }})
}

// Ask makes a request of the verb's name and sets the fields given, each by its name
// and its value as text: "true" for a yes.
//
// Errors: *Misuse for no such verb or field, or a value that is not accepted.
func Ask(verb string, names []string, fields ...[2]string) (Request, error) {
	for _, v := range Asked() {
		if v.Name != verb {
			continue
		}
		r := v.New()
		for _, f := range fields {
			if err := set(r, f[0], f[1]); err != nil {
				return nil, err
			}
		}
		if len(names) > 0 {
			r.Name(names)
		}
		return r, nil
	}
	return nil, misuse("", "nothing is called %q", verb)
}

// set gives a field of a request a value.
func set(r Request, name, text string) error {
	for _, f := range r.Fields() {
		if f.Name == name {
			return wrong(name, f.Value.Set(text))
		}
	}
	return wrong(name, fmt.Errorf("there is no such choice"))
}
