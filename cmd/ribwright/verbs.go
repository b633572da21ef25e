package main

import (
	"strings"

	"ribwright/cmd/internal/job"
	"ribwright/geometry/design"
)

// verbs lists everything the program can do, in the order of a builder's work.
func verbs() []verb {
	tables := "[DESIGN.toml|" + strings.Join(design.ShippedNames(), "|") + "|OFFSETS.csv]"
	const any = 1 << 20
	return []verb{
		{name: "size", line: "from the people and the water to a design, by formulas you can change",
			takes: `--paddler "62 kg, 168 cm"`, example: `--paddler "62 kg, 168 cm" --gear "12 kg" --use pack -o mine.toml`, numbers: true, placed: true,
			request: func() job.Request { return job.NewSize() }},
		classVerb(),
		{name: "float", line: "whether it carries you, stays upright and moves easily",
			takes: tables, most: 1, example: "river --load 230kg --water salt --svg", numbers: true,
			request: func() job.Request { return job.NewFloat() }},
		{name: "bend", line: "whether the wood takes each bend, and what holds the frame's shape",
			takes: oneDesign(), most: 1, example: "river --without seat,thwart-2 --svg", numbers: true,
			request: func() job.Request { return job.NewBend() }},
		{name: "loft", line: "full-size patterns on paper, one file for the cutter, and every number",
			takes: oneDesign(), most: 1, example: "river --paper a4 --units imperial --out river", numbers: true,
			request: func() job.Request { return job.NewLoft() }},
		{name: "proof", line: "one sheet that shows what your printer does, and which flags put it right",
			example: "--paper a4", request: func() job.Request { return job.NewProof() }},
		{name: "book", line: "the build book: drawings, tables, cut list, cost, hours, order of work",
			takes: oneDesign(), most: 1, example: "river --paper a4 --prices shipped --skill beginner --html",
			request: func() job.Request { return job.NewBook() }},
		{name: "fleet", line: "which boats nest in one another, in which order, and what must come out",
			takes: oneDesign() + " ...", most: any, example: "brook lake river --roof 75kg --door '900 mm' --svg", numbers: true,
			request: func() job.Request { return job.NewFleet() }},
		{name: "sail", line: "a small sail: how much the boat stands, in what wind to reef and to stop",
			takes: oneDesign(), most: 1, example: "lake --rig lug --wind 5m/s --loft --paper roll36", numbers: true,
			request: func() job.Request { return job.NewSail() }},
		{name: "pair", line: "two hulls side by side: how stiff, when the windward one lifts, and beams that hold",
			takes: oneDesign() + " [DESIGN2]", most: 2, example: "river --spacing 2400mm --svg", numbers: true,
			request: func() job.Request { return job.NewPair() }},
		{name: "row", line: "a clip-on frame, oars and a seat to row the boat, fitted to the rower",
			takes: oneDesign(), most: 1, example: `lake --paddler "man, 175 cm" --loft --paper a4`, numbers: true,
			request: func() job.Request { return job.NewRow() }},
		{name: "fair", line: "a design taken off a boat that exists, from its table of offsets",
			takes: "OFFSETS.csv", most: 1, example: "old-canoe.csv -o old-canoe.toml", placed: true,
			request: func() job.Request { return job.NewFair() }},
	}
}
