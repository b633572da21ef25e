package job

// Verbs lists what a page asks for. With what stands on a command line alone, an engine in
// a browser would be larger by two fifths: fitting a design to a table of offsets is a third
// of it, courses and the reports that the page's own findings take the place of are the rest.
func Verbs() []Verb {
	return []Verb{
		{Name: "size", New: func() Request { return NewSize() }},
		{Name: "loft", New: func() Request { return NewLoft() }},
		{Name: "proof", New: func() Request { return NewProof() }},
		{Name: "book", New: func() Request { return NewBook() }},
		{Name: "sail", New: func() Request { return NewSail() }},
		{Name: "pair", New: func() Request { return NewPair() }},
		{Name: "row", New: func() Request { return NewRow() }},
		{Name: "fleet", New: func() Request { return NewFleet() }},
		{Name: "compare", New: func() Request { return NewCompare() }},
		{Name: "built", New: func() Request { return NewAsBuilt() }},
		{Name: "learn", New: func() Request { return NewLearn() }},
	}
}
