package json

import (
	"ribwright/geometry/shop/fan"
	"ribwright/layout"
)

// FanBoard gives the rays of a board that a course shares, where each of its builders reads,
// and where each piece of it lies on the sheets. A ray's ends are where it lies, mm from its
// zero, at the least and the most reading: of the narrowest boats, then of the widest.
func FanBoard(of string, b *fan.Board, doc layout.Document) Object {
	return Object{
		{"board", of},
		{"midship_rib_mm", as[fixed](b.Rib.From, b.Rib.To)},
		{"half_length_mm", as[fixed](b.Half.From, b.Half.To)},
		{"builders", each(b.On, func(o fan.Boat) Object {
			return Object{{"builder", o.Builder}, {"midship_rib_mm", fixed(o.Rib)}, {"half_length_mm", fixed(o.Half)}, {"beam_mm", fixed(o.Beam)},
				{"share_ribs", factor(b.Across(fan.Length, o.Reading))}, {"share_mortises", factor(b.Across(fan.Mortise, o.Reading))}}
		})},
		{"rays", each(b.Rays, func(r fan.Ray) Object {
			return Object{{"mark", r.Mark.String()}, {"net", r.Net}, {"narrowest_mm", as[fixed](r.Ends[0][:]...)}, {"widest_mm", as[fixed](r.Ends[1][:]...)}}
		})},
		{"pages", pages(doc)},
	}
}
