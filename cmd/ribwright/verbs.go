package main

import (
	"strings"

	"ribwright/cmd/internal/job"
	"ribwright/geometry/design"
)

// verbs lists everything the program can do, in the order of a builder's work.
func verbs() []verb {
	typed := howTyped()
	var out []verb
	for _, v := range job.Verbs() {
		t := typed[v.Name]
		t.name, t.line, t.request = v.Name, v.Says, v.New
		if v.Name == "class" {
			t.run = t.class
		}
		out = append(out, t)
	}
	return append(out, opening())
}

// howTyped is what a line of words adds to a verb: the names that follow it, and where
// the answer goes.
func howTyped() map[string]verb {
	const any = 1 << 20
	shipped := strings.Join(design.ShippedNames(), "|")
	design := "[DESIGN.toml|" + shipped + "]"
	return map[string]verb{
		"size":    {takes: `--paddler "62 kg, 168 cm"`, example: `--paddler "62 kg, 168 cm" --gear "12 kg" --use pack -o mine.toml`, numbers: true, placed: true, judges: true},
		"class":   {takes: "BUILDERS.csv", most: 1, example: "builders.csv --out course --paper a4", numbers: true},
		"float":   {takes: "[DESIGN.toml|" + shipped + "|OFFSETS.csv]", most: 1, example: "river --load 230kg --water salt --svg", numbers: true, judges: true},
		"bend":    {takes: design, most: 1, example: "river --without seat,thwart-2 --svg", numbers: true, judges: true},
		"loft":    {takes: design, most: 1, example: "river --paper a4 --units imperial --out river", numbers: true, judges: true},
		"proof":   {example: "--paper a4"},
		"book":    {takes: design, most: 1, example: "river --paper a4 --prices shipped --skill beginner --html", judges: true},
		"fleet":   {takes: design + " ...", most: any, example: "brook lake river --roof 75kg --door '900 mm' --svg", numbers: true},
		"sail":    {takes: design, most: 1, example: "lake --rig lug --wind 5m/s --loft --paper roll36", numbers: true},
		"pair":    {takes: design + " [DESIGN2]", most: 2, example: "river --purpose moving --svg", numbers: true},
		"row":     {takes: design, most: 1, example: `lake --paddler "man, 175 cm" --loft --paper a4`, numbers: true},
		"compare": {takes: "OLD.toml NEW.toml", most: 2, example: "old.toml new.toml --paper a4 --cut stems,ribs:A1-A6", numbers: true, placed: true},
		"built":   {takes: design + " [MEASURES.csv]", most: 2, example: "brook measures.csv --weight 21kg -o as-built.toml", numbers: true, placed: true, judges: true},
		"learn":   {takes: "BUILDS.csv ...", most: any, example: "builds.csv feedback.csv --use pack --check 20", numbers: true},
		"fair":    {takes: "OFFSETS.csv", most: 1, example: "old-canoe.csv -o old-canoe.toml", placed: true},
	}
}
