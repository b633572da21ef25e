package outfits

import (
	"fmt"
	"io"
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/rowing"
	"ribwright/layout"
)

// RowPage writes a rowing fit to be read.
func RowPage(w io.Writer, f *rowing.Fit, units measure.System) error {
	p := newPage(units)
	p.Line("%s rowed by a %s of %s and %.0f kg, alone with the gear", f.Boat.Frame.Design.Title, f.Row.Body, p.Length(f.Body.Stature), f.Body.Mass)
	p.Line("")
	p.cautions(f.Findings)
	afloat := func(mm float64) string {
		if f.Fault != nil {
			return "-"
		}
		return p.Length(mm)
	}
	p.Line("OARS AND PLACES (stations from midship, forward positive)")
	p.two("span", p.Length(f.Span), "oar", p.Length(f.Oar.Length))
	p.two("inboard", p.Length(f.Oar.Inboard), "outboard", p.Length(f.Oar.Outboard()))
	p.two("rowlocks at", p.Length(f.LockX), "over the water", afloat(f.WaterLock))
	p.two("seat's middle at", p.Length(f.SeatX), "over the floor", p.Length(f.SeatOver))
	p.two("heels at", p.Length(f.FootX), "from the seat's back", p.Length(f.Legs.Heel))
	p.two("handles over seat", afloat(f.Level.Drive)+", pulled", "carried clear", afloat(f.Level.Recover))
	p.two("over the legs", afloat(f.OverLegs()), "over the gunwale", afloat(f.OverGunwale()))
	if f.Fault != nil {
		p.Line("  - depends on the water, and the boat does not float upright")
	}
	p.Line("")
	p.Line("FRAME: two bars on the gunwales, a board under each pair of ends")
	p.two("bars", p.Length(rowing.BarWide)+" x "+p.Length(f.BarThick), "long", p.Length(f.BarLong()))
	p.two("pull on a handle", fmt.Sprintf("%.0f N", f.Strength.Pull), "on the rowlock", fmt.Sprintf("%.0f N", f.Strength.AtLock))
	p.two("stress", fmt.Sprintf("%.1f N/mm2", math.Max(f.Strength.Flat, f.Strength.Upright)), "asked of the wood", fmt.Sprintf("%.1f N/mm2", f.Strength.Working))
	p.two("sag", fmt.Sprintf("%.1f mm", f.Strength.Sag), "each clip", fmt.Sprintf("%.0f N, lift %.0f N", f.Strength.Clip, f.Strength.ClipLift))
	p.Line("")
	p.ranges(f.Ranges)
	p.notes(f.Findings)
	_, err := p.WriteTo(w)
	return err
}

type row struct {
	Body       string `json:"body"`
	Stature    number `json:"stature_mm"`
	Mass       number `json:"mass_kg"`
	Span       number `json:"span_mm"`
	Oar        number `json:"oar_mm"`
	Inboard    number `json:"inboard_mm"`
	Ruled      number `json:"oar_by_rule_mm"`
	LockX      number `json:"rowlock_station_mm"`
	LockWater  number `json:"rowlock_over_water_mm"`
	LockSeat   number `json:"rowlock_over_seat_mm"`
	SeatX      number `json:"seat_station_mm"`
	SeatOver   number `json:"seat_over_floor_mm"`
	FootX      number `json:"heels_station_mm"`
	Heel       number `json:"heels_from_seat_back_mm"`
	Drive      number `json:"handle_driving_over_seat_mm"`
	Recover    number `json:"handle_carried_over_seat_mm"`
	OverLegs   number `json:"hands_over_legs_mm"`
	OverRail   number `json:"oar_over_gunwale_mm"`
	Slope      number `json:"oar_slope_deg"`
	SlopeHigh  number `json:"oar_slope_high_side_deg"`
	Reaches    bool   `json:"blades_reach"`
	Trim       number `json:"trim_deg"`
	Freeboard  number `json:"freeboard_min_mm"`
	GM         number `json:"gm_mm"`
	BarWide    number `json:"bar_width_mm"`
	BarThick   number `json:"bar_thickness_mm"`
	Pull       number `json:"pull_n"`
	AtLock     number `json:"at_rowlock_n"`
	Flat       number `json:"stress_along_n_mm2"`
	Upright    number `json:"stress_down_n_mm2"`
	Working    number `json:"working_stress_n_mm2"`
	Sag        number `json:"sag_mm"`
	Clip       number `json:"clip_n"`
	ClipLift   number `json:"clip_lift_n"`
	OutfitMass number `json:"outfit_kg"`
	Practice   []span `json:"practice"`
	Findings   []note `json:"findings"`
}

// RowJSON writes a rowing fit as JSON, with the table of its sheets when there are
// some.
func RowJSON(w io.Writer, f *rowing.Fit, id Identity, doc *layout.Document) error {
	items, err := f.Items()
	if err != nil {
		return err
	}
	sum := 0.0
	for _, i := range items {
		sum += i.Load().Mass
	}
	s := f.Strength
	afloat := func(v float64) number {
		if f.Fault != nil {
			return number(math.NaN())
		}
		return number(v)
	}
	return document{Design: id, Row: &row{
		f.Row.Body.String(), number(f.Body.Stature), number(f.Body.Mass), number(f.Span), number(f.Oar.Length), number(f.Oar.Inboard), number(f.Ruled.Length),
		number(f.LockX), afloat(f.WaterLock), number(f.LockZ - f.SeatZ), number(f.SeatX), number(f.SeatOver), number(f.FootX), number(f.Legs.Heel),
		afloat(f.Level.Drive), afloat(f.Level.Recover), afloat(f.OverLegs()), afloat(f.OverGunwale()), afloat(deg(f.Level.Slope)), afloat(deg(f.HighSide.Slope)), f.Reaches && f.Fault == nil,
		afloat(deg(f.Rest.Trim)), afloat(f.Rest.Freeboard.Least), afloat(f.Rest.GM), rowing.BarWide, number(f.BarThick),
		number(s.Pull), number(s.AtLock), number(s.Flat), number(s.Upright), number(s.Working), number(s.Sag), number(s.Clip), number(s.ClipLift),
		number(sum), rangesOf(f.Ranges), notesOf(f.Findings)}}.encode(w, doc)
}

func deg(a float64) float64 { return a * 180 / math.Pi }
