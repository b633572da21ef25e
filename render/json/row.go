package json

import (
	"ribwright/geometry/outfit/rowing"
	"ribwright/layout"
)

// RowReport is what was worked out of a rowing fit.
type RowReport struct {
	Design Header     `json:"design"`
	Row    rowFigures `json:"row"`
	Pages  []pagePart `json:"pages,omitempty"`
}

type rowFigures struct {
	Body       string      `json:"body"`
	Stature    significant `json:"stature_mm"`
	Mass       significant `json:"mass_kg"`
	Span       significant `json:"span_mm"`
	Oar        significant `json:"oar_mm"`
	Inboard    significant `json:"inboard_mm"`
	Ruled      significant `json:"oar_by_rule_mm"`
	LockX      significant `json:"rowlock_station_mm"`
	LockWater  significant `json:"rowlock_over_water_mm"`
	LockSeat   significant `json:"rowlock_over_seat_mm"`
	SeatX      significant `json:"seat_station_mm"`
	SeatOver   significant `json:"seat_over_floor_mm"`
	FootX      significant `json:"heels_station_mm"`
	Heel       significant `json:"heels_from_seat_back_mm"`
	Drive      significant `json:"handle_driving_over_seat_mm"`
	Recover    significant `json:"handle_carried_over_seat_mm"`
	OverLegs   significant `json:"hands_over_legs_mm"`
	OverRail   significant `json:"oar_over_gunwale_mm"`
	Slope      significant `json:"oar_slope_deg"`
	SlopeHigh  significant `json:"oar_slope_high_side_deg"`
	Reaches    bool        `json:"blades_reach"`
	Trim       significant `json:"trim_deg"`
	Freeboard  significant `json:"freeboard_min_mm"`
	GM         significant `json:"gm_mm"`
	BarWide    significant `json:"bar_width_mm"`
	BarThick   significant `json:"bar_thickness_mm"`
	Pull       significant `json:"pull_n"`
	AtLock     significant `json:"at_rowlock_n"`
	Flat       significant `json:"stress_along_n_mm2"`
	Upright    significant `json:"stress_down_n_mm2"`
	Working    significant `json:"working_stress_n_mm2"`
	Sag        significant `json:"sag_mm"`
	Clip       significant `json:"clip_n"`
	ClipLift   significant `json:"clip_lift_n"`
	OutfitMass significant `json:"outfit_kg"`
	Practice   []rangePart `json:"practice"`
	Findings   []notePart  `json:"findings"`
}

// Row gathers what was worked out of a rowing fit; doc are the sheets of its patterns,
// nil without any. What depends on the water is null where the boat does not float.
//
// Errors: as HeaderOf; a wood that is not known.
func Row(f *rowing.Fit, doc *layout.Document) (*RowReport, error) {
	head, err := HeaderOf(f.Boat.Frame.Design)
	if err != nil {
		return nil, err
	}
	items, err := f.Items()
	if err != nil {
		return nil, err
	}
	sum := 0.0
	for _, i := range items {
		sum += i.Load().Mass
	}
	s := f.Strength
	afloat := func(v float64) significant {
		if f.Fault != nil {
			return significant(none)
		}
		return significant(v)
	}
	out := rowFigures{
		f.Row.Body.String(), significant(f.Body.Stature), significant(f.Body.Mass), significant(f.Span), significant(f.Oar.Length), significant(f.Oar.Inboard), significant(f.Ruled.Length),
		significant(f.LockX), afloat(f.WaterLock), significant(f.LockZ - f.SeatZ), significant(f.SeatX), significant(f.SeatOver), significant(f.FootX), significant(f.Legs.Heel),
		afloat(f.Level.Drive), afloat(f.Level.Recover), afloat(f.OverLegs()), afloat(f.OverGunwale()), afloat(inDegrees(f.Level.Slope)), afloat(inDegrees(f.HighSide.Slope)), f.Reaches && f.Fault == nil,
		afloat(inDegrees(f.Rest.Trim)), afloat(f.Rest.Freeboard.Least), afloat(f.Rest.GM), rowing.BarWide, significant(f.BarThick),
		significant(s.Pull), significant(s.AtLock), significant(s.Flat), significant(s.Upright), significant(s.Working), significant(s.Sag), significant(s.Clip), significant(s.ClipLift),
		significant(sum), rangesOf(f.Ranges), notesOf(f.Findings)}
	return &RowReport{head, out, pagesIf(doc)}, nil
}
