package job

// Verbs lists what a page asks for. With what stands on a command line alone, an engine in
// a browser would be half as large again: fitting a design to a table of offsets is a third
// of it, editions, frames on the trestles, what many builds say, courses and the reports
// that the page's own findings take the place of a tenth more.
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
	}
}
