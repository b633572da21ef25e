package main

import "ribwright/cmd/internal/job"

// verbs lists everything the program can do, in the order of a builder's work.
func verbs() []verb {
	return []verb{
		sizeVerb(), floatVerb(), bendVerb(),
		{name: "loft", line: "full-size patterns on paper, one file for the cutter, and every number",
			takes: oneDesign(), most: 1, example: "river --paper a4 --units imperial --out river", numbers: true,
			request: func() job.Request { return job.NewLoft() }},
		{name: "proof", line: "one sheet that shows what your printer does, and which flags put it right",
			example: "--paper a4", request: func() job.Request { return job.NewProof() }},
		{name: "book", line: "the build book: drawings, tables, cut list, cost, hours, order of work",
			takes: oneDesign(), most: 1, example: "river --paper a4 --prices shipped --skill beginner --html",
			request: func() job.Request { return job.NewBook() }},
		fleetVerb(), sailVerb(), pairVerb(), rowVerb(),
		{name: "fair", line: "a design taken off a boat that exists, from its table of offsets",
			takes: "OFFSETS.csv", most: 1, example: "old-canoe.csv -o old-canoe.toml", placed: true,
			request: func() job.Request { return job.NewFair() }},
	}
}
