package outfit

import (
	"math"

	"ribwright/geometry/finding"
	"ribwright/geometry/outfit/rowing"
	"ribwright/geometry/outfit/sail"
)

// place is what an outfit lays across the gunwales, from station to station.
type place struct {
	outfit   Name
	what     string
	from, to float64
}

func (o *Outfits) places() []place {
	var out []place
	add := func(n Name, what string, at, wide float64) {
		out = append(out, place{n, what, at - wide/2, at + wide/2})
	}
	if f := o.Sail; f != nil {
		add(Sail, "the mast's partner", f.Mast.At, sail.PartnerWide)
		if f.Board.Area > 0 {
			add(Sail, "the leeboard's bracket", f.BracketAt(), sail.BracketBar)
		}
	}
	if c := o.Pair; c != nil {
		for _, x := range c.Beams.At {
			add(Pair, "a beam of the pair", x, c.Beams.Width)
		}
	}
	if f := o.Row; f != nil {
		add(Row, "the forward bar of the rowing frame", f.Bars[0], rowing.BarWide)
		add(Row, "the after bar of the rowing frame", f.Bars[1], rowing.BarWide)
	}
	return out
}

func (o *Outfits) clash() {
	n := &o.Findings
	all := o.places()
	for i, a := range all {
		for _, b := range all[:i] {
			if a.outfit != b.outfit && a.from < b.to && b.from < a.to {
				n.Judge(finding.Unfit, "places", finding.Arithmetic, "%s and %s both lie on the gunwales at station %.0f mm: move one of them, or use one outfit at a time", b.what, a.what, (math.Max(a.from, b.from)+math.Min(a.to, b.to))/2)
			}
		}
	}
	if o.Sail != nil && o.Row != nil && o.Sail.Mast.At > o.Row.FootX && o.Sail.Mast.At < o.Row.Back() {
		n.Judge(finding.Unfit, "places", finding.Arithmetic, "the mast at %.0f mm stands where the rower sits, from %.0f to %.0f mm: row with the mast out, or move one of them", o.Sail.Mast.At, o.Row.FootX, o.Row.Back())
	}
	if o.Sail != nil && o.Pair != nil {
		n.Warn("sail on a pair", finding.Practice, "the sail's winds are those of this hull alone. On the pair its mast stands on a plank across all beams, never on one hull's gunwales, and what ends it is the windward hull leaving the water: take the pair's own figures, and far less wind")
	}
	if o.Pair != nil && o.Row != nil {
		n.Say("oars in a pair", finding.Arithmetic, "an oar reaches %.0f mm from the middle line, and the other hull's middle line lies at %.0f mm: rowing is for this hull alone", o.Row.Span/2+o.Row.Oar.Outboard(), o.Pair.Spacing)
	}
}
