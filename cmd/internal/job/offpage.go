//go:build !js

package job

// Verbs lists what can be asked, in the order of a builder's work.
func Verbs() []Verb {
	return []Verb{
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
		{"fleet", "which boats nest in one another, in which order, and what must come out", func() Request { return NewFleet() }},
		{"compare", "two editions of a design: what moved, what to print again, what of the cut wood still serves", func() Request { return NewCompare() }},
		{"built", "the frame on the trestles: what is off, what to do, how the other ribs are set; or the card to measure it", func() Request { return NewAsBuilt() }},
		{"learn", "what many builds say of the formulas: lines for a family and for hours, each with its evidence", func() Request { return NewLearn() }},
		{"fair", "a design taken off a boat that exists, from its table of offsets", func() Request { return NewFair() }},
	}
}
