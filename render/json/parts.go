package json

import (
	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/layout"
)

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
	Relax         *fixed     `json:"relax_to_mm"`   // null without a neutral set
	Forms         []*fixed   `json:"form_radii_mm"` // one for each of HalfArcs; null for a straight one
}

// arcPart is one piece of a half section; the radius is null when straight.
type arcPart struct {
	Radius *fixed `json:"radius_mm"`
	Sweep  fixed  `json:"sweep_deg"`
	Length fixed  `json:"length_mm"`
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

type pagePart struct {
	Page    int       `json:"page"`
	Pattern string    `json:"pattern"`
	Tile    string    `json:"tile"`
	Frame   [4]fixed  `json:"frame_mm"`
	ToSheet [6]factor `json:"to_sheet"`
	Sheet   [2]fixed  `json:"sheet_mm"`
	Turned  bool      `json:"turned,omitempty"` // shows the half pattern turned end for end
}

func ribOf(f *frame.Frame, r frame.Rib) ribPart {
	out := ribPart{
		Rib: r.Name, Station: fixed(r.Station), HalfBreadth: fixed(r.Section.HalfBreadth), Depth: fixed(r.Section.Depth),
		KeelHeight: fixed(r.Section.KeelZ), Length: fixed(r.Length), Correction: fixed(r.Correction), Tenon: fixed(r.Tenon),
		Blank: fixed(r.Blank), Thickness: fixed(r.Thickness), Width: fixed(f.Design.Ribs.Width),
		Merged: r.Section.Merged, BendMarks: all(r.BendMarks), StringerMarks: all(r.StringerMarks), Tightest: fixed(r.Tightest),
	}
	for _, b := range r.Section.Half {
		a := arcPart{Sweep: deg(b.Sweep), Length: fixed(b.Length)}
		if b.Radius > 0 {
			radius := fixed(b.Radius)
			a.Radius = &radius
		}
		out.HalfArcs = append(out.HalfArcs, a)
	}
	for _, p := range f.SkinAt(r) {
		out.Skin = append(out.Skin, [2]fixed{fixed(p.X), fixed(p.Y)})
	}
	return out
}

func stemOf(s frame.Stem) stemPart {
	out := stemPart{End: s.End, Outline: outline(s.Outline), Thickness: fixed(s.Thickness)}
	for _, l := range s.Landings {
		out.Landings = append(out.Landings, [2]fixed{fixed(l.At.X), fixed(l.At.Y)})
	}
	return out
}

func thwartOf(t frame.Thwart) thwartPart {
	return thwartPart{t.Name, t.Kind.String(), fixed(t.At), outline(t.Outline), fixed(t.Thickness),
		fixed(t.Length), fixed(t.Between), deg(t.EndCut)}
}

// pagesOf lists what each sheet shows of which pattern, so that anyone can put
// the tiles back together. A pattern that is half of the whole is listed once
// more for the other half, as it lies when it is turned.
func pagesOf(doc layout.Document) []pagePart {
	out := []pagePart{}
	for i, s := range doc.Sheets {
		for _, v := range s.Views {
			out = append(out, partOf(doc, i, v, v.Frame, v.ToSheet))
			if v.Drawing.Turns {
				b := v.Frame
				turned := geometry.Around(b.Min.Scale(-1), b.Max.Scale(-1))
				out = append(out, partOf(doc, i, v, turned, geometry.Stretch(-1, -1).Then(v.ToSheet)))
				out[len(out)-1].Turned = true
			}
		}
	}
	return out
}

func partOf(doc layout.Document, sheet int, v layout.View, b geometry.Box, m geometry.Affine) pagePart {
	return pagePart{
		Page: sheet + 1, Pattern: v.Drawing.Name, Tile: v.Tile,
		Frame:   [4]fixed{fixed(b.Min.X), fixed(b.Min.Y), fixed(b.Max.X), fixed(b.Max.Y)},
		ToSheet: [6]factor{factor(m.A), factor(m.B), factor(m.C), factor(m.D), factor(m.E), factor(m.F)},
		Sheet:   [2]fixed{fixed(doc.Paper.W), fixed(doc.Paper.H)},
	}
}
