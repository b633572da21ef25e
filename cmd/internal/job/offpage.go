//go:build !js

package job

// offPage lists what no page asks for; an engine in a browser goes without it.
func offPage() []Verb {
	return []Verb{
		{"fleet", "which boats nest in one another, in which order, and what must come out", func() Request { return NewFleet() }},
		{"compare", "two editions of a design: what moved, what to print again, what of the cut wood still serves", func() Request { return NewCompare() }},
		{"built", "the frame on the trestles: what is off, what to do, how the other ribs are set; or the card to measure it", func() Request { return NewAsBuilt() }},
		{"learn", "what many builds say of the formulas: lines for a family and for hours, each with its evidence", func() Request { return NewLearn() }},
		{"fair", "a design taken off a boat that exists, from its table of offsets", func() Request { return NewFair() }},
	}
}
