package job

import "fmt"

// Verb is something that can be asked of the engine, by the name that every front end
// has for it.
type Verb struct {
	Name string
	Says string // what comes of it, in a line
	New  func() Request
}

// Asked lists what a page can ask besides: it stands on no command line.
func Asked() []Verb {
	return append(Verbs(),
		Verb{"look", "the boat's lines and how it stands, while it is changed", func() Request { return NewLook() }},
		Verb{"workshop", "what a builder has beside them while they work", func() Request { return NewWorkshop() }},
		Verb{"sheets", "the patterns on their sheets, to be looked at", func() Request { return NewSheets() }},
		Verb{"sight", "what an eye sees of a frame with a fault", func() Request { return NewSight() }},
		Verb{"parcel", "everything of a design in one file", func() Request { return NewParcel() }})
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
