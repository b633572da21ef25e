package json

import (
	"fmt"

	"ribwright/geometry/boat/frame"
)

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

type ribPart struct {
	Rib           string     `json:"rib"`
	Station       fixed      `json:"station_mm"`
	HalfBreadth   fixed      `json:"half_breadth_mm"`
	Depth         fixed      `json:"depth_mm"`
	KeelHeight    fixed      `json:"keel_height_mm"`
	Length        fixed      `json:"length_mm"`
	Correction    fixed      `json:"correction_mm"`
	Tenon         fixed      `json:"tenon_mm"`
	Blank         fixed      `json:"blank_mm"`
	Thickness     fixed      `json:"thickness_mm"`
	Width         fixed      `json:"width_mm"`
	Merged        bool       `json:"bottom_and_bilge_merged"`
	HalfArcs      []arcPart  `json:"half_arcs"`
	BendMarks     []fixed    `json:"bend_marks_mm"`
	StringerMarks []fixed    `json:"stringer_marks_mm"`
	Tightest      fixed      `json:"tightest_radius_over_thickness"`
	Skin          [][2]fixed `json:"skin_half_section_mm"`
	Relax         fixed      `json:"relax_to_mm"`   // null without a neutral set
	Forms         []fixed    `json:"form_radii_mm"` // one for each of HalfArcs; null for a straight one
}

// arcPart is one piece of a half section; the radius is null when straight.
type arcPart struct {
	Radius fixed `json:"radius_mm"`
	Sweep  fixed `json:"sweep_deg"`
	Length fixed `json:"length_mm"`
}

type stemPart struct {
	End       string     `json:"end"`
	Outline   [][2]fixed `json:"outline_mm"`
	Thickness fixed      `json:"thickness_mm"`
	Landings  [][2]fixed `json:"stringer_landings_mm"`
}

// battenPart is the keel (number 0) or a stringer, counted from the keel up.
type battenPart struct {
	Number int      `json:"number"`
	Share  fixed    `json:"girth_share"`
	Ends   [2]fixed `json:"ends_mm"`
	Ribs   []fixed  `json:"rib_marks_mm"`
}

type thwartPart struct {
	Name      string     `json:"name"`
	Kind      string     `json:"kind"`
	At        fixed      `json:"station_mm"`
	Outline   [][2]fixed `json:"outline_mm"`
	Thickness fixed      `json:"thickness_mm"`
	Length    fixed      `json:"length_mm"`
	Between   fixed      `json:"between_gunwales_mm"`
	EndCut    fixed      `json:"end_cut_deg"`
}

type hookPart struct {
	End       string     `json:"end"`
	Outline   [][2]fixed `json:"outline_mm"`
	Thickness fixed      `json:"thickness_mm"`
	Bevel     fixed      `json:"bevel_deg"`
	Slope     fixed      `json:"slope_deg"`
}

type skinPart struct {
	Thickness fixed `json:"thickness_mm"`
	Girth     fixed `json:"midship_girth_mm"`
	Length    fixed `json:"length_mm"`
}

func hullOf(l *lookup) hullPart {
	l.part = "hull"
	return hullPart{l.of("length"), l.of("beam"), l.of("depth"), l.of("waterline"),
		l.of("sheer at midship"), l.of("sheer at bow"), l.of("sheer at stern"), l.of("keel end at bow"), l.of("keel end at stern")}
}

func ribOf(l *lookup, f *frame.Frame, r frame.Rib) ribPart {
	l.part = "rib " + r.Name
	out := ribPart{
		Rib: r.Name, Station: l.of("station"), HalfBreadth: l.of("half-breadth"), Depth: l.of("depth"),
		KeelHeight: l.of("keel height"), Length: l.of("length"), Correction: l.of("correction"), Tenon: l.of("tenon"),
		Blank: l.of("blank"), Thickness: l.of("thickness"), Width: l.of("width"), Merged: r.Section.Merged,
		BendMarks: l.each("bend mark", len(r.BendMarks)), StringerMarks: l.each("stringer mark", len(r.StringerMarks)),
		Tightest: fixed(r.Tightest), Relax: l.maybe("relax to", 0),
	}
	for i := range r.Section.Half {
		out.HalfArcs = append(out.HalfArcs, arcPart{l.maybe("arc radius", i+1), l.nth("arc sweep", i+1), l.nth("arc length", i+1)})
		out.Forms = append(out.Forms, l.maybe("form radius", i+1))
	}
	for _, p := range f.Corners(r) {
		out.Skin = append(out.Skin, [2]fixed{fixed(p.X), fixed(p.Y)})
	}
	return out
}

func stemOf(l *lookup, s frame.Stem) stemPart {
	l.part = s.End + " stem"
	out := stemPart{End: s.End, Outline: outline(s.Outline), Thickness: l.of("thickness")}
	for i := range s.Landings {
		out.Landings = append(out.Landings, [2]fixed{l.nth("stringer landing from midship", i+1), l.nth("stringer landing height", i+1)})
	}
	return out
}

func battenOf(l *lookup, f *frame.Frame, part string, number int, share float64) battenPart {
	l.part = part
	out := battenPart{Number: number, Share: fixed(share), Ends: l.both("end"), Ribs: make([]fixed, len(f.Ribs))}
	for i, r := range f.Ribs {
		out.Ribs[i] = l.of("middle of rib " + r.Name)
	}
	return out
}

func thwartOf(l *lookup, i int, t frame.Thwart) thwartPart {
	l.part = fmt.Sprintf("thwart %d", i+1)
	return thwartPart{t.Name, t.Kind.String(), l.of("station"), outline(t.Outline), l.of("thickness"),
		l.of("length"), l.of("between gunwales"), l.of("end cut")}
}

func hookOf(l *lookup, b frame.Breasthook) hookPart {
	l.part = b.End + " breasthook"
	return hookPart{b.End, outline(b.Outline), l.of("thickness"), l.of("bevel"), l.of("slope")}
}

func skinOf(l *lookup) skinPart {
	l.part = "skin"
	return skinPart{l.of("thickness"), l.of("midship girth"), l.of("length")}
}
