package json

import (
	"fmt"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/boat/outside"
	"ribwright/geometry/design"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/spreader"
)

func hullOf(l *lookup, b *bend.Report) Object {
	p := l.part("hull")
	return Object{
		{"length_mm", p.of("length")}, {"beam_mm", p.of("beam")}, {"depth_mm", p.of("depth")}, {"waterline_mm", p.of("waterline")},
		{"sheer_midship_mm", p.of("sheer at midship")}, {"sheer_bow_mm", p.of("sheer at bow")}, {"sheer_stern_mm", p.of("sheer at stern")},
		{"keel_end_bow_mm", p.of("keel end at bow")}, {"keel_end_stern_mm", p.of("keel end at stern")},
		{"spreaders", upTo(len(b.Spread.Spreaders), func(i int) Object {
			return spreaderOf(l.part(fmt.Sprintf("spreader %d", i+1)), b.Spread.Spreaders[i])
		})},
	}
}

// spreaderOf tells how a spreader holds: forces are its push on each gunwale, outward
// positive, as one stick, while dry plies slip, and once glued.
func spreaderOf(p part, s spreader.Spreader) Object {
	return Object{
		{"station_mm", p.of("station")}, {"from_midship_mm", p.of("from midship")}, {"beam_mm", p.of("beam")},
		{"holds", s.Holds.String()}, {"force_n", fixed(s.Force)}, {"before_gluing_n", fixed(s.Before)}, {"after_gluing_n", fixed(s.After)},
		{"beam_with_sticks_alone_mm", fixed(s.Alone)},
	}
}

// ribOf tells of a rib; the radius of an arc, in the boat and as it is bent hot on its
// form or by hand, is null where it is straight.
func ribOf(p part, f *frame.Frame, r frame.Rib) Object {
	arcs := len(r.Section.Half)
	return Object{
		{"rib", r.Name}, {"station_mm", p.of("station")}, {"half_breadth_mm", p.of("half-breadth")}, {"depth_mm", p.of("depth")},
		{"keel_height_mm", p.of("keel height")}, {"length_mm", p.of("length")}, {"correction_mm", p.of("correction")},
		{"tenon_mm", p.of("tenon")}, {"blank_mm", p.of("blank")}, {"thickness_mm", p.of("thickness")}, {"width_mm", p.of("width")},
		{"bottom_and_bilge_merged", r.Section.Merged},
		{"half_arcs", upTo(arcs, func(i int) Object {
			return Object{{"radius_mm", p.maybe("arc radius", i+1)}, {"sweep_deg", p.nth("arc sweep", i+1)}, {"length_mm", p.nth("arc length", i+1)}}
		})},
		{"bend_marks_mm", p.all("bend mark", len(r.BendMarks))}, {"stringer_marks_mm", p.all("stringer mark", len(r.StringerMarks))},
		{"tightest_radius_over_thickness", fixed(r.Tightest)},
		{"skin_half_section_mm", each(f.Corners(r), place)},
		{"relax_to_mm", p.maybe("relax to", 0)},   // null without a neutral set
		{"hot_width_mm", p.maybe("hot width", 0)}, // null when its heads would cross
		{"form_radii_mm", upTo(arcs, func(i int) fixed { return p.maybe("form radius", i+1) })},
		{"pushed_in", Object{{"hinged", pushedIn(p, "hinged")}, {"clamped", pushedIn(p, "clamped")}}},
	}
}

// pushedIn tells of a rib that is only pushed into its mortises, its heads held so; its
// numbers are null where it finds no such rest.
func pushedIn(p part, heads string) Object {
	return Object{
		{"flare_deg", p.maybe("flare pushed in, "+heads, 0)}, {"off_mm", p.maybe("off pushed in, "+heads, 0)},
		{"least_radius_mm", p.maybe("least radius pushed in, "+heads, 0)},
	}
}

func stemOf(p part, s frame.Stem, j *joint.Joints) Object {
	end := ended(s.End)
	l, f := &j.Landings[end], &j.Feet[end]
	return Object{
		{"end", s.End}, {"outline_mm", outline(s.Outline)}, {"thickness_mm", p.of("thickness")},
		{"stringer_landings_mm", orNull(upTo(len(s.Landings), func(i int) []fixed {
			return []fixed{p.nth("stringer landing from midship", i+1), p.nth("stringer landing height", i+1)}
		}))},
		{"stringer_holes_mm", upTo(len(l.Holes), func(i int) []fixed {
			return []fixed{p.maybe("stringer hole from midship", i+1), p.maybe("stringer hole height", i+1)}
		})}, {"stringer_hole_diameter_mm", p.maybe("stringer hole diameter", 0)},
		{"gunwale_hole_mm", []fixed{p.maybe("gunwale hole from midship", 0), p.maybe("gunwale hole height", 0)}}, {"gunwale_hole_diameter_mm", p.maybe("gunwale hole diameter", 0)},
		{"gunwale_hole_from_its_end_mm", p.maybe("gunwale hole from its end", 0)}, {"gunwale_hole_up_mm", p.maybe("gunwale hole up", 0)},
		{"screws_from_keel_end_mm", upTo(len(f.FromEnd), func(i int) fixed { return p.maybe("screw from the keel's end", i+1) })},
	}
}

// ended is the place of an end in a pair: stern and bow.
func ended(name string) int {
	if name == "stern" {
		return 0
	}
	return 1
}

// The numbers of joints are null where the list of marks was made without them.

// jointOf tells what a joint takes, for one and with how many there are; null for what it
// does not have.
func jointOf(o joint.Joint) Object {
	f := o.Fastener
	dims := [2]fixed{fixed(none), fixed(none)}
	if f.Each > 0 {
		dims = [2]fixed{fixed(f.Diameter), fixed(f.Length)}
	}
	return Object{
		{"joint", o.Name}, {"count", o.Count}, {"fastener", f.Name}, {"fasteners_each", f.Each}, {"diameter_mm", dims[0]}, {"fastener_length_mm", dims[1]},
		{"turns", o.Turns}, {"cord_each_mm", fixed(o.Cut())}, {"glue_each_mm2", fixed(o.Glue)},
	}
}

// pegOf tells of the peg of a rib's head.
func pegOf(p part, h *joint.Head) Object {
	return Object{
		{"diameter_mm", p.maybe("diameter", 0)}, {"up_mm", p.maybe("up", 0)}, {"hole_depth_mm", p.maybe("hole depth", 0)}, {"least_wall_mm", p.maybe("least wall", 0)},
		{"glued_ribs_at_each_end", h.Glued},
	}
}

// battenOf tells of the keel (number 0) or a stringer, counted from the keel up.
func battenOf(p part, f *frame.Frame, number int, share float64) Object {
	return Object{
		{"number", number}, {"girth_share", fixed(share)}, {"ends_mm", p.both("end")},
		{"rib_marks_mm", each(f.Ribs, func(r frame.Rib) fixed { return p.of("middle of rib " + r.Name) })},
	}
}

// stringerOf adds to a batten the line that its middle takes in the boat and how hard it
// is bent along its flat, the worst of all bays.
func stringerOf(p part, f *frame.Frame, s frame.Stringer, bent bend.Stringer) Object {
	ribs := make([]float64, len(f.Ribs))
	for i, r := range f.Ribs {
		ribs[i] = r.Station
	}
	return append(battenOf(p, f, s.Number, s.Share), Object{
		{"line_mm", line(s.Line, ribs)}, {"edgewise_n_mm2", fixed(bent.Edgewise)},
	}...)
}

func thwartOf(p part, t frame.Thwart) Object {
	return Object{
		{"name", t.Name}, {"kind", t.Kind.String()}, {"station_mm", p.of("station")}, {"outline_mm", outline(t.Outline)},
		{"thickness_mm", p.of("thickness")}, {"length_mm", p.of("length")}, {"between_gunwales_mm", p.of("between gunwales")},
		{"end_cut_deg", p.of("end cut")}, {"end_cut_back_below_mm", p.of("end cut back below")},
		{"holes_mm", upTo(len(t.Holes), func(i int) []fixed {
			return []fixed{p.nth("hole off the middle line", i+1), p.nth("hole forward of its middle", i+1)}
		})}, {"hole_diameter_mm", p.of("hole diameter")}, {"bolts_lean_deg", p.of("bolts lean")},
		{"bolts_from_midship_mm", p.part("gunwale").all("bolt of "+p.name+" from midship", len(t.Holes)/2)}, // on the straight stock of either gunwale
	}
}

func hookOf(p part, b frame.Breasthook, j *joint.Joints) Object {
	return Object{
		{"end", b.End}, {"outline_mm", outline(b.Outline)}, {"thickness_mm", p.of("thickness")},
		{"bevel_deg", p.of("bevel")}, {"slope_deg", p.of("slope")},
		{"pegs_from_end_mm", upTo(len(j.Hooks[ended(b.End)].FromEnd), func(i int) fixed { return p.maybe("peg from the gunwale's end", i+1) })},
		{"peg_diameter_mm", p.maybe("peg diameter", 0)}, {"pegs_down_mm", p.maybe("pegs down", 0)}, {"peg_holes_deep_mm", p.maybe("peg hole depth", 0)},
		{"painters_hole_from_end_mm", p.maybe("painter's hole from the gunwale ends", 0)}, // null for none
	}
}

func skinOf(p part, s design.Skin) Object {
	return Object{
		{"thickness_mm", p.of("thickness")}, {"midship_girth_mm", p.of("midship girth")}, {"length_mm", p.of("length")},
		{"fiber", s.Fiber.String()}, {"cloth_g_m2", fixed(s.Cloth)}, {"coats", s.Coats}, {"mass_g_m2", fixed(s.Mass())},
	}
}

// outsideOf tells what goes on over the skin; null is what the boat does not have.
func outsideOf(l *lookup, o outside.Fit) Object {
	strip := func(name string, s outside.Strip) any {
		if !s.There() {
			return nil
		}
		p := l.part(name)
		return Object{{"off_skin_mm", p.of("off the skin")}, {"along_skin_mm", p.of("along the skin")}, {"length_mm", p.of("length")}, {"screws", len(s.Screws)},
			{"screws_from_midship_mm", upTo(len(s.Screws), func(i int) fixed { return p.nth("screw from midship", i+1) })}}
	}
	out := Object{{"species", o.Wood}, {"outwales", strip("outwale", o.Outwale)}, {"keel_strip", strip("keel strip", o.Keel)}, {"painters", nil}, {"drain", o.Drain}}
	if p := l.part("painters"); o.Painter > 0 {
		out[3].value = Object{{"length_mm", p.of("length")}, {"hole_from_gunwale_ends_mm", p.of("hole from the gunwale ends")}}
	}
	return out
}
