package book

import (
	"ribwright/layout/pattern"
	"ribwright/layout/report"
)

// reading tells what must be known to read the full-size patterns, whose first sheet has
// room for no more than how they are put together.
func (w *writer) reading() {
	w.chapter("Reading the patterns")
	for _, n := range pattern.Reading(w.Bend, w.Letters.Units) {
		w.section(n.Heading)
		w.add(report.List{Items: n.Lines})
	}
}
