package json

import (
	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/outfit/sail"
	"ribwright/layout"
)

// Sail gathers what was worked out of a sail; doc are the sheets of its patterns, nil
// without any.
//
// Errors: a design that has no fingerprint, which Check would have refused; a wood that
// is not known.
func Sail(f *sail.Fit, doc *layout.Document) (Object, error) {
	items, err := f.Items()
	if err != nil {
		return nil, err
	}
	m := f.Mast
	return outfit(f.Boat.Frame.Design, "sail", Object{
		{"rig", f.Sail.Rig.String()}, {"area_m2", f.Plan.Area()}, {"all_up_kg", f.Load.Mass},
		{"counts_as_sailing_from_m2", sail.Sailing(f.Load.Mass)}, {"no_sail_at_m_s", f.Wind.Stop},
		{"crew", f.Chosen().String()}, {"reefs_needed", f.Needed(f.Chosen()) - 1},
		{"sails", upTo(len(f.States), func(i int) Object { return sailState(f, i) })},
		{"stands", each(f.Stands, sailStand)},
		{"mast", Object{
			{"station_mm", m.At}, {"length_mm", m.Long}, {"diameter_mm", m.Diameter}, {"sail_force_n", m.Force},
			{"partner_n", m.Partner}, {"step_n", m.Step}, {"moment_n_m", m.Moment}, {"stress_n_mm2", m.Stress},
			{"working_stress_n_mm2", m.Working},
		}},
		{"spars", each(f.Plan.Spars, func(s sail.Spar) Object {
			return Object{{"name", s.Name}, {"length_mm", s.Length()}, {"diameter_mm", s.Diameter}, {"pieces", f.Pieces(s)}}
		})},
		{"mast_box", mastBox(f)}, {"before_the_wind", running(f)},
		{"leeboard", leeboard(f)},
		{"corners_mm", each(f.Plan.Corners, func(c geometry.Point) []significant { return as[significant](c.X, c.Y) })},
		{"cloth_m2", f.Cloth.Area}, {"panels", len(f.Cloth.Panels)}, {"panel_points", each(f.Cloth.Panels, taped)},
		{"outfit_kg", weight.Sum(items).Mass}, {"practice", ranges(f.Ranges)}, {"findings", notes(f.Findings)},
	}, doc)
}

// taped is a panel as it is set out on a floor: its corners from the first, along the
// base line to the second and off it, and its round edges.
func taped(p sail.Panel) Object {
	t := p.Tape()
	return Object{
		{"points_mm", each(t.Corners, func(q geometry.Point) []significant {
			q = q.Sub(t.Corners[0])
			return as[significant](q.X, q.Y)
		})},
		{"rounds", each(t.Rounds, func(r sail.Round) Object {
			return Object{{"from_point", r.From}, {"chord_mm", r.Chord}, {"outside_mm", as[significant](r.Off...)}}
		})},
	}
}

// mastBox tells of what holds the mast's foot.
func mastBox(f *sail.Fit) Object {
	b := f.Bed
	return Object{
		{"bed_length_mm", b.Long}, {"bed_ribs", each(b.Ribs, func(r frame.Rib) string { return r.Name })},
		{"side_height_mm", f.BoxHigh(0)}, {"fore_side_height_mm", f.BoxHigh(1)}, {"after_side_height_mm", f.BoxHigh(-1)}, {"gunwales_rise_deg", inDegrees(f.Pitch())}, {"side_width_mm", f.BoxWide()}, {"rod_n", b.Rod}, {"gunwale_lift_n", b.Lift},
		{"partner_stress_n_mm2", b.Partner}, {"partner_working_stress_n_mm2", b.Boards}, {"foot_gives_mm", b.Gives},
		{"ribs_n", b.Share}, {"rib_stress_n_mm2", b.Stress}, {"rib_working_stress_n_mm2", b.Asked},
	}
}

// running tells what limits a sail that only runs; null for one that does not.
func running(f *sail.Fit) any {
	if f.Run == nil {
		return nil
	}
	return Object{{"bow_down_at_m_s", f.Run.Bow}, {"broaches_at_m_s", f.Run.Broach}, {"packs_to_mm", f.Packed()}}
}

func sailState(f *sail.Fit, i int) Object {
	s := f.States[i]
	return Object{
		{"name", s.Name}, {"area_m2", s.Area}, {"center_station_mm", f.Mast.At + s.Center.X}, {"center_height_mm", f.Tack + s.Center.Y},
		{"arm_m", s.Arm}, {"take_in_at_m_s", f.Wind.Reef[i]},
		{"limits", upTo(len(s.Limits), func(k int) Object {
			l := s.Limits[k]
			return Object{{"crew", sail.Place(k).String()}, {"take_in_m_s", l.Reef}, {"over_m_s", l.Under},
				{"heel_deg", inDegrees(l.Heel)}, {"lee_gunwale_mm", l.Left}}
		})},
	}
}

func sailStand(s sail.Stand) Object {
	return Object{
		{"crew", s.Place.String()},
		{"heel_deg_moment_n_m", orNull(each(s.Moments, func(v sail.Moment) []significant {
			return as[significant](inDegrees(v.Heel), v.N)
		}))},
		{"most_n_m", s.Most.N}, {"downflooding_deg", inDegrees(s.Flooded)}, {"lull_heel_deg", inDegrees(s.Calm)},
	}
}

// leeboard tells of the leeboard; null without one.
func leeboard(f *sail.Fit) any {
	b := f.Board
	if b.Area <= 0 {
		return nil
	}
	return Object{
		{"area_m2", b.Area}, {"chord_mm", b.Chord}, {"length_mm", b.Long}, {"under_water_mm", b.Deep}, {"station_mm", f.BracketAt()},
		{"station_least_mm", b.Range[0]}, {"station_greatest_mm", b.Range[1]}, {"thickness_mm", b.Thick}, {"load_n", b.Load},
	}
}
