package json

import (
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/layout"
)

type boat struct {
	Design      designPart   `json:"design"`
	Hull        hullPart     `json:"hull"`
	Gunwale     gunwalePart  `json:"gunwale"`
	Ribs        []ribPart    `json:"ribs"`
	Stems       []stemPart   `json:"stems"`
	Keel        battenPart   `json:"keel"`
	Stringers   []battenPart `json:"stringers"`
	Thwarts     []thwartPart `json:"thwarts"`
	Breasthooks []hookPart   `json:"breasthooks"`
	Skin        skinPart     `json:"skin"`
	Pages       []pagePart   `json:"pages"`
}

type designPart struct {
	Title       string `json:"title"`
	Slug        string `json:"slug"`
	Fingerprint string `json:"fingerprint"`
}

type hullPart struct {
	Length    fixed `json:"length_mm"`
	Beam      fixed `json:"beam_mm"`
	Depth     fixed `json:"depth_mm"`
	Waterline fixed `json:"waterline_mm"`
	MidSheer  fixed `json:"sheer_midship_mm"`
	BowSheer  fixed `json:"sheer_bow_mm"`
	AftSheer  fixed `json:"sheer_stern_mm"`
	BowToe    fixed `json:"keel_end_bow_mm"`
	AftToe    fixed `json:"keel_end_stern_mm"`
}

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
	Form     *fixed        `json:"form_radius_mm"` // of a form for the plies, where it is tightest; null for a single ply
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
	InWords     string `json:"from_midship_in"`
	Length      fixed  `json:"length_mm"`
	Width       fixed  `json:"width_mm"`
	Depth       fixed  `json:"depth_mm"`
	Bevel       fixed  `json:"bevel_deg"`
	Wall        fixed  `json:"wall_mm"`
	Deep        fixed  `json:"wall_at_bottom_mm"`
	ToNext      fixed  `json:"to_next_mm"`
	ToScarf     fixed  `json:"to_scarf_mm"`
}

func gather(f *frame.Frame, slug, fingerprint string, doc layout.Document) boat {
	h := f.Hull
	out := boat{
		Design: designPart{f.Design.Title, slug, fingerprint},
		Hull: hullPart{fixed(h.Length), fixed(h.Beam), fixed(h.Depth), fixed(f.Design.Hull.Waterline),
			fixed(h.Sheer.MidZ), fixed(h.Sheer.BowZ), fixed(h.Sheer.SternZ), fixed(h.Bow.Toe.X), fixed(-h.Stern.Toe.X)},
		Gunwale: gunwaleOf(f),
		Stems:   []stemPart{stemOf(f.Bow), stemOf(f.Stern)},
		Keel:    battenPart{Number: 0, Ends: [2]fixed{fixed(f.Keel.Aft), fixed(f.Keel.Fore)}, Ribs: all(f.Keel.RibMarks)},
		Skin:    skinPart{fixed(f.Design.Skin.Thickness), fixed(f.Skin.Girth), fixed(f.Skin.Length)},
		Pages:   pagesOf(doc),
	}
	for _, r := range f.Ribs {
		out.Ribs = append(out.Ribs, ribOf(f, r))
	}
	out.addBending(f)
	for _, s := range f.Stringers {
		out.Stringers = append(out.Stringers, battenPart{s.Number, fixed(s.Share), [2]fixed{fixed(s.Aft), fixed(s.Fore)}, all(s.RibMarks)})
	}
	for _, t := range f.Thwarts {
		out.Thwarts = append(out.Thwarts, thwartOf(t))
	}
	for _, b := range []frame.Breasthook{f.BowHook, f.SternHook} {
		out.Breasthooks = append(out.Breasthooks, hookPart{b.End, outline(b.Outline), fixed(b.Thickness), deg(b.Bevel), deg(math.Atan(b.Slope))})
	}
	return out
}

func gunwaleOf(f *frame.Frame) gunwalePart {
	g := &f.Gunwale
	out := gunwalePart{
		Stock: fixed(g.Fore - g.Aft), Width: fixed(g.Width), Height: fixed(g.Height), Tilt: deg(g.Tilt),
		Ends: [2]fixed{fixed(g.Aft), fixed(g.Fore)}, EndCuts: [2]fixed{deg(g.AftCut), deg(g.ForeCut)},
		EdgeSet: []edgeSetPart{
			edgeSetOf("bow", f.Hull.Sheer.BowSet, g.Height), edgeSetOf("stern", f.Hull.Sheer.SternSet, g.Height)},
		Scarfs: []spanPart{}, NoScarf: []spanPart{},
	}
	stations := []float64{0}
	for _, m := range g.Mortises {
		stations = append(stations, m.Station)
		out.Mortises = append(out.Mortises, mortisePart{
			m.Rib, fixed(m.Station), fixed(m.FromMidship), words(m.FromMidship), fixed(m.Length), fixed(m.Width),
			fixed(m.Depth), deg(m.Bevel), fixed(m.Wall), fixed(m.Deep), fixed(m.ToNext), fixed(m.ToScarf)})
	}
	slices.Sort(stations)
	out.Line = line(g.Line, slices.Compact(stations))
	for _, s := range g.Scarfs {
		out.Scarfs = append(out.Scarfs, spanPart{fixed(s.Middle - s.Length/2), fixed(s.Middle + s.Length/2)})
	}
	for _, z := range g.NoScarf {
		out.NoScarf = append(out.NoScarf, spanPart{fixed(z.From), fixed(z.To)})
	}
	return out
}

func edgeSetOf(end string, e hull.EdgeSet, height float64) edgeSetPart {
	return edgeSetPart{end, fixed(e.Rise), fixed(e.Radius()), fixed(100 * e.Strain(height)), fixed(e.EndShift(height))}
}
