package book

import (
	"ribwright/geometry/outfit"
	"ribwright/geometry/trial/afloat"
	"ribwright/layout/report"
	"ribwright/layout/report/fitted"
)

func (w *writer) outfits() {
	o := w.Outfits
	kits := o.Kits()
	if len(kits) == 0 && len(o.Findings) == 0 {
		return
	}
	w.chapter("Outfits")
	w.say("What the design adds to the boat for a while. Full-size patterns are made by ribwright sail, pair and row with --loft; no line of this book may be cut by. A page or pattern with this book's design code has this book's numbers; one with another code is for another boat, with other outfits or people aboard, and does not hold here. Every piece is in the cut list under an X, what is bought in the shopping list, the work in the hours.")
	w.add(report.Findings{List: o.Findings})
	w.lies()
	for _, k := range kits {
		switch outfit.Name(k.Name) {
		case outfit.Sail:
			w.add(fitted.SailInBook(o.Sail, w.Facts.Units)...)
		case outfit.Pair:
			w.add(fitted.PairInBook(o.Pair, w.Facts.Units)...)
		case outfit.Row:
			w.add(fitted.RowingInBook(o.Row, w.Facts.Units)...)
		}
		w.add(fitted.Pieces(k, w.Facts.Units))
	}
	w.warn("Wear a life jacket. Try every outfit in shallow water near help, swamped and with flotation fitted, before you rely on it. Every strength here is an estimate from clear wood at rest; nothing here certifies a boat.", "common practice; local law and the authority of the water come first")
}

// lies is how the boat lies on the water with each outfit, its own people aboard.
func (w *writer) lies() {
	t := report.Titled("How the boat lies with the design's people and gear, "+w.Unit()).Words("With").Numbers("Outfit", "All up", "Draft", "Bow up by", "Least freeboard").Noted("Bow up by is over the length of the waterline; less than nothing is bow down; - where it does not float upright. Of a pair one hull has half of the beams. The rower on the rowing seat is told of under Rowing, the two hulls as one under Pair.")
	var faults []afloat.Outfitted
	for _, l := range w.Outfitted {
		row := []string{l.With, w.Mass(l.Added), w.Mass(l.All.Mass), "-", "-", "-"}
		if l.Fault != nil {
			faults = append(faults, l)
		} else {
			row = append(row[:3], w.Cell(l.Rest.Draft), w.Cell(l.Rest.TrimRise()), w.Cell(l.Rest.Freeboard.Least))
		}
		t.Rows = append(t.Rows, row)
	}
	w.add(t)
	for _, l := range faults {
		w.warn("With "+l.With+" it does not float upright: "+l.Fault.Error()+".", "arithmetic of this design")
	}
}
