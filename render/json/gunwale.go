package json

import (
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
)

type gunwalePart struct {
	Stock    fixed         `json:"stock_length_mm"`
	Width    fixed         `json:"width_mm"`
	Height   fixed         `json:"height_mm"`
	Tilt     fixed         `json:"tilt_deg"`
	Ends     [2]fixed      `json:"ends_mm"`
	EndCuts  [2]fixed      `json:"end_cuts_deg"`
	EdgeSet  []edgeSetPart `json:"edge_set"`
	Plies    int           `json:"plies"`
	Ply      fixed         `json:"ply_mm"`
	Glued    string        `json:"glued"`
	Form     fixed         `json:"form_radius_mm"` // of a form for the plies, where it is tightest; null for a single ply
	Line     [][3]fixed    `json:"line_mm"`
	Mortises []mortisePart `json:"mortises"`
	Scarfs   []spanPart    `json:"scarfs"`
	NoScarf  []spanPart    `json:"no_scarf"`
}

type edgeSetPart struct {
	End    string `json:"end"`
	Rise   fixed  `json:"rise_mm"`
	Radius fixed  `json:"radius_mm"`
	Strain fixed  `json:"strain_percent"`
	Shift  fixed  `json:"end_shift_mm"`
}

type spanPart struct {
	From fixed `json:"from_mm"`
	To   fixed `json:"to_mm"`
}

type mortisePart struct {
	Rib         string `json:"rib"`
	Station     fixed  `json:"station_mm"`
	FromMidship fixed  `json:"from_midship_mm"`
	InWords     string `json:"from_midship_in"` // as on the patterns
	Length      fixed  `json:"length_mm"`
	Width       fixed  `json:"width_mm"`
	Depth       fixed  `json:"depth_mm"`
	Bevel       fixed  `json:"bevel_deg"`
	Wall        fixed  `json:"wall_mm"`
	Deep        fixed  `json:"wall_at_bottom_mm"`
	ToNext      fixed  `json:"to_next_mm"`
	ToScarf     fixed  `json:"to_scarf_mm"` // null without scarfs
}

func gunwaleOf(l *lookup, f *frame.Frame) gunwalePart {
	g, sheer := &f.Gunwale, &f.Hull.Sheer
	l.part = "gunwale"
	out := gunwalePart{
		Stock: l.of("stock length"), Width: l.of("width"), Height: l.of("height"), Tilt: l.of("tilt"),
		Ends: l.both("end"), EndCuts: l.both("end cut"),
		EdgeSet: []edgeSetPart{edgeSetOf(l, "bow", sheer.BowSet, g.Height), edgeSetOf(l, "stern", sheer.SternSet, g.Height)},
		Plies:   f.Design.Gunwale.Plies, Ply: l.of("ply thickness"), Glued: f.Design.Gunwale.Glued, Form: l.maybe("form radius", 0),
		Line: line(g.Line, stations(g)), Scarfs: spans(l, "scarf", len(g.Scarfs)), NoScarf: spans(l, "no scarf", len(g.NoScarf)),
	}
	for _, m := range g.Mortises {
		out.Mortises = append(out.Mortises, mortiseOf(l, m.Rib))
	}
	return out
}

// stations are the places that the gunwale's line must pass: midship and mortises.
func stations(g *frame.Gunwale) []float64 {
	out := []float64{0}
	for _, m := range g.Mortises {
		out = append(out, m.Station)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func spans(l *lookup, quantity string, n int) []spanPart {
	out := make([]spanPart, n)
	for i := range out {
		out[i] = spanPart{l.nth(quantity+" from", i+1), l.nth(quantity+" to", i+1)}
	}
	return out
}

func edgeSetOf(l *lookup, end string, e hull.EdgeSet, height float64) edgeSetPart {
	return edgeSetPart{end, l.of("edge-set rise, " + end), l.maybe("edge-set radius, "+end, 0),
		fixed(100 * e.Strain(height)), l.of("edge-set end shift, " + end)}
}

func mortiseOf(l *lookup, rib string) mortisePart {
	l.part = "mortise " + rib
	return mortisePart{
		rib, l.of("station"), l.of("from midship"), measure.Sixteenths(l.in[marks.Name{Part: l.part, Quantity: "from midship"}].Value),
		l.of("length"), l.of("width"), l.of("depth"), l.of("bevel"), l.of("wall"), l.of("wall at bottom"), l.of("to next"), l.maybe("to scarf", 0)}
}
