package json

import (
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/outfit/rowing"
	"ribwright/layout"
)

// Row gathers what was worked out of a rowing fit; doc are the sheets of its patterns,
// nil without any. What depends on the water is null where the boat does not float.
//
// Errors: a design that has no fingerprint, which Check would have refused; a wood that
// is not known.
func Row(f *rowing.Fit, doc *layout.Document) (Object, error) {
	items, err := f.Items()
	if err != nil {
		return nil, err
	}
	s := f.Strength
	afloat := func(v float64) float64 {
		if f.Fault != nil {
			return none
		}
		return v
	}
	stands := field{"standing", nil}
	if f.Fault == nil {
		stands = standing(f.Standing)
	}
	return outfit(f.Boat.Frame.Design, "row", Object{
		{"rower", f.Who}, {"body", f.Row.Body.String()}, {"stature_mm", f.Body.Stature}, {"mass_kg", f.Body.Mass}, {"span_mm", f.Span},
		{"oar_mm", f.Oar.Length}, {"inboard_mm", f.Oar.Inboard}, {"oar_by_rule_mm", f.Ruled.Length},
		{"rowlock_station_mm", f.LockX}, {"rowlock_over_water_mm", afloat(f.WaterLock)}, {"rowlock_over_seat_mm", f.LockZ - f.SeatZ},
		{"seat_station_mm", f.SeatX}, {"seat_over_floor_mm", f.SeatOver},
		{"heels_station_mm", f.FootX}, {"heels_from_seat_back_mm", f.Legs.Heel},
		{"handle_driving_over_seat_mm", afloat(f.Level.Drive)}, {"handle_carried_over_seat_mm", afloat(f.Level.Recover)},
		{"hands_over_legs_mm", afloat(f.OverLegs())}, {"oar_over_gunwale_mm", afloat(f.OverGunwale())},
		{"oar_slope_deg", afloat(inDegrees(f.Level.Slope))}, {"oar_slope_high_side_deg", afloat(inDegrees(f.HighSide.Slope))},
		{"blades_reach", f.Reaches && f.Fault == nil},
		{"trim_deg", afloat(inDegrees(f.Rest.Trim))}, {"freeboard_min_mm", afloat(f.Rest.Freeboard.Least)}, {"gm_mm", afloat(f.Rest.GM)}, stands,
		{"bar_width_mm", rowing.BarWide}, {"bar_thickness_mm", f.BarThick},
		{"pull_n", s.Pull}, {"at_rowlock_n", s.AtLock}, {"stress_along_n_mm2", s.Flat}, {"stress_down_n_mm2", s.Upright},
		{"working_stress_n_mm2", s.Working}, {"sag_mm", s.Sag}, {"clip_n", s.Clip}, {"clip_lift_n", s.ClipLift},
		{"outfit_kg", weight.Sum(items).Mass}, {"practice", ranges(f.Ranges)}, {"findings", notes(f.Findings)},
	}, doc)
}
