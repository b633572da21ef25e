package json

import (
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/water/effort"
	"ribwright/geometry/water/float"
)

// Afloat gathers what a trial on paper found. A table of offsets is of no design: its
// header has no edition and no fingerprint. Heights are above the baseline, places are
// stations from midship, forward positive; trim is positive with the bow up.
//
// Errors: a design that has no fingerprint, which Check would have refused.
func Afloat(r *afloat.Report) (Object, error) {
	w := r.Options.Water
	told := Object{
		{"water", Object{{"kind", w.Kind.String()}, {"temperature_c", w.Temperature}, {"density_kg_m3", w.Density},
			{"viscosity_m2_s", minute(w.Viscosity)}}},
		{"weights", each(r.Entries(), func(i weight.Item) Object {
			l := i.Load()
			return Object{{"name", i.Name}, {"mass_kg", l.Mass}, {"x_mm", l.At.X}, {"z_mm", l.At.Z}}
		})},
		{"seats", each(r.Boat.Seats, func(s seat.Seat) Object { // that are in the boat
			return Object{{"name", s.Name}, {"kind", s.Kind.String()}, {"station_mm", s.At}, {"top_over_floor_mm", s.Height}, {"top_z_mm", s.TopZ()}}
		})},
		{"hydrostatics", hydrostatics(r.Rest)},
	}
	if s := r.Smooth; s != nil {
		told = append(told, field{"smooth", Object{{"volume_m3", s.Volume * 1e-9}, {"draft_mm", s.Draft},
			{"wetted_surface_m2", s.Wetted * 1e-6}, {"waterplane_m2", s.Waterplane * 1e-6}, {"bm_mm", s.BM}, {"gm_mm", s.GM}}})
	}
	flooding := inDegrees(r.Curve.Flooding)
	if r.Fault != nil {
		flooding = none
	}
	told = append(told, Object{
		standing(r.Standing), known(len(r.Boat.Crew)),
		{"gz", each(r.Curve.Levers, func(v float.Lever) Object {
			return Object{{"heel_deg", inDegrees(v.Heel)}, {"gz_mm", v.GZ}}
		})},
		liveCargo(r.Cargo),
		{"downflooding_deg", flooding}, // null where no water comes in
		{"effort", each(r.Effort, func(p effort.Point) Object {
			return Object{{"speed_m_s", p.Speed}, {"froude", p.Froude}, {"friction_n", p.Friction}, {"form_n", p.Form},
				{"wave_n", p.Wave}, {"total_n", p.Total}, {"power_w", p.Power}}
		})},
		{"swamped", swampedOf(r.Swamped)}, // null for a table of offsets
		{"carried", carriedOf(r.Carried)}, // likewise
		{"effort_assumes", Object{{"form_share_of_friction", effort.Allowance}, {"paddle_efficiency", effort.Efficiency}}},
		{"findings", each(r.Findings, func(f finding.Finding) Object {
			return Object{{"about", f.About}, {"text", f.Text}, {"standing", f.Standing}}
		})},
	}...)
	if r.Boat.Frame == nil {
		title := r.Boat.Title
		return append(Object{{"design", header(title, (&design.Design{Title: title}).Slug(), "", "")}}, told...), nil
	}
	return of(r.Boat.Frame.Design, told...)
}

func hydrostatics(o float.Hydrostatics) Object {
	return Object{
		{"displacement_kg", o.Displacement}, {"volume_m3", o.Volume * 1e-9}, {"draft_mm", o.Draft}, {"trim_deg", inDegrees(o.Trim)},
		{"freeboard_min_mm", o.Freeboard.Least}, {"freeboard_min_at_mm", o.Freeboard.At.X},
		{"wetted_surface_m2", o.Wetted * 1e-6}, {"waterplane_m2", o.Waterplane * 1e-6},
		{"lwl_mm", o.LWL}, {"bwl_mm", o.BWL}, {"cb", o.CB}, {"cp", o.CP}, {"cm", o.CM}, {"cwp", o.CWP},
		{"lcb_mm", o.LCB}, {"lcf_mm", o.LCF}, {"kb_mm", o.KB}, {"bm_mm", o.BM}, {"bml_mm", o.BML}, {"kg_mm", o.KG}, {"gm_mm", o.GM},
		{"moment_to_trim_1mm_n_m", o.MomentToTrim / 1000},
	}
}
