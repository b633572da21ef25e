package json

import (
	"fmt"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/design"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
)

func gunwaleOf(l *lookup, f *frame.Frame) Object {
	g, sheer, wood, p := &f.Gunwale, &f.Hull.Sheer, f.Design.Gunwale, l.part("gunwale")
	out := Object{
		{"stock_length_mm", p.of("stock length")}, {"width_mm", p.of("width")}, {"height_mm", p.of("height")}, {"tilt_deg", p.of("tilt")},
		{"ends_mm", p.both("end")}, {"end_cuts_deg", p.both("end cut")}, {"ends_longer_above_mm", p.both("end longer above")},
		{"edge_set", []Object{edgeSet(p, "bow", sheer.BowSet, g.Height), edgeSet(p, "stern", sheer.SternSet, g.Height)}},
		{"plies", wood.Plies}, {"ply_mm", p.of("ply thickness")}, {"glued", wood.Glued},
		{"form_radius_mm", p.maybe("form radius", 0)}, // of a form for the plies, where it is tightest; null for a single ply
		{"line_mm", line(g.Line, stations(f))},
		{"mortises", each(g.Mortises, func(m frame.Mortise) Object { return mortise(l.part("mortise "+m.Rib), m) })},
		{"scarfs", spans(p, "scarf", len(g.Scarfs))}, {"no_scarf", spans(p, "no scarf", len(g.NoScarf))},
	}
	if g.Blocks != nil { // only where the mortises are gaps between blocks of the middle ply
		out = append(out, Object{{"blocks", upTo(len(g.Blocks), func(i int) Object {
			b := l.part(fmt.Sprintf("block %d", i+1))
			return Object{{"block", i + 1}, {"from_mm", b.of("from")}, {"to_mm", b.of("to")}, {"length_mm", b.of("length")}}
		})}}...)
	}
	return out
}

// stations are the places that the gunwale's line must pass: mortises and spreaders,
// midship among them.
func stations(f *frame.Frame) []float64 {
	out := append(each(f.Gunwale.Mortises, func(m frame.Mortise) float64 { return m.Station }),
		each(f.Design.AllSpreaders(), func(s design.Spreader) float64 { return float64(s.At) })...)
	slices.Sort(out)
	return slices.Compact(out)
}

func spans(p part, quantity string, n int) []Object {
	return upTo(n, func(i int) Object {
		return Object{{"from_mm", p.nth(quantity+" from", i+1)}, {"to_mm", p.nth(quantity+" to", i+1)}}
	})
}

func edgeSet(p part, end string, e hull.EdgeSet, height float64) Object {
	out := Object{
		{"end", end}, {"rise_mm", p.of("edge-set rise, " + end)}, {"radius_mm", p.maybe("edge-set radius, "+end, 0)},
		{"strain_percent", fixed(100 * e.Strain(height))}, {"end_shift_mm", p.of("edge-set end shift, " + end)},
	}
	if e.Made > 0 { // of the rise; radius and strain are of the rest, which is sprung
		out = append(out, Object{{"made_mm", p.of("edge-set made, " + end)}}...)
	}
	return out
}

// mortise gives two lengths from midship: from_midship_mm, where the straight stock is
// marked, and along_line_mm, along line_mm in the boat. They differ where edge-set is sprung
// in after marking, for that stretches the underside, on which the line runs.
func mortise(p part, m frame.Mortise) Object {
	const from = "from midship"
	out := Object{
		{"rib", m.Rib}, {"station_mm", p.of("station")}, {"from_midship_mm", p.of(from)},
		{"from_midship_in", measure.Sixteenths(p.in[marks.Name{Part: p.name, Quantity: from}].Value)}, // as on the patterns
		{"along_line_mm", fixed(m.AlongLine)},
		{"length_mm", p.of("length")}, {"width_mm", p.of("width")}, {"depth_mm", p.of("depth")}, {"bevel_deg", p.of("bevel")},
		{"wall_mm", p.of("wall")}, {"wall_at_bottom_mm", p.of("wall at bottom")}, {"to_next_mm", p.of("to next")},
		{"to_scarf_mm", p.maybe("to scarf", 0)}, // null without scarfs
		// Forward, and forward edge outboard, are positive; null where the slot has room.
		{"lean_along_deg", p.of("lean along")}, {"twist_deg", p.of("twist")}, {"ease_mm", p.maybe("ease", 0)},
	}
	if m.Taper > 0 { // only of a gap, which cannot lean
		out = append(out, Object{{"head_taper_mm", p.of("head taper")}}...)
	}
	return out
}
