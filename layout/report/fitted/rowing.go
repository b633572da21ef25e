package fitted

import (
	"fmt"
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/rowing"
	"ribwright/layout"
	"ribwright/layout/figure"
	"ribwright/layout/report"
)

// Rowing tells all of a frame, oars and a seat.
func Rowing(f *rowing.Fit, units measure.System) []report.Block {
	t := in(units)
	return page(f.Findings, append([]report.Block{
		report.Facts("The rower, alone with the gear", "who", f.Who, "proportions of a", f.Row.Body.String(), "stature", t.Length(f.Body.Stature), "weight", t.Mass(f.Body.Mass)),
		t.oars(f), t.reach(f), t.frame(f), Pieces(f.Kit(), units)}, t.ranges(f.Ranges)...)...)
}

// RowingInBook tells a builder of a frame, oars and a seat.
func RowingInBook(f *rowing.Fit, units measure.System) []report.Block {
	t := in(units)
	out := []report.Block{report.Section("Rowing"),
		report.Figure{Drawing: roomy(func(wide float64) layout.Drawing { return figure.RowingSketch(f, wide) }),
			Caption: fmt.Sprintf("Rowed by a %s of %.0f mm and %.0f kg, from the side and from astern, not to scale; stations in mm.", f.Row.Body, f.Body.Stature, f.Body.Mass),
			About:   "The boat with a rower on the seat, and the oars from astern."},
		t.oars(f), report.Findings{List: f.Findings}}
	return append(out, t.ranges(f.Ranges)...)
}

func (t teller) oars(f *rowing.Fit) report.Table {
	clear, overWater, alone, stands := "-", "-", "-", "-"
	if f.Fault == nil {
		clear, overWater = t.Length(f.OverLegs())+", "+t.Length(f.OverGunwale()), t.Length(f.WaterLock)
		alone = t.Length(f.Rest.Draft) + ", " + t.Length(f.Rest.TrimRise()) + ", " + t.Length(f.Rest.Freeboard.Least)
		stands = fmt.Sprintf("%.0f mm, %.0f mm, %.0f mm", f.Rest.GM, f.Standing.Most, f.Standing.Held)
	}
	return report.Facts("Oars and places",
		"between the rowlocks", t.Length(f.Span), "oars, and inboard of the button", t.Length(f.Oar.Length)+", "+t.Length(f.Oar.Inboard),
		"rowlocks at", t.Station(f.LockX), "rowlocks over the seat, over the water", t.Length(f.LockZ-f.SeatZ)+", "+overWater,
		"seat's middle at, over the floor", t.Station(f.SeatX)+", "+t.Length(f.SeatOver), "heels at", t.Station(f.FootX),
		"hands over the legs, oar over the gunwale", clear,
		"rower alone: draft, bow up by, least freeboard", alone,
		"GM, greatest lever, weight held aside", stands,
		"stress in a bar, asked of the wood", fmt.Sprintf("%.1f, %.1f N/mm2 at %.0f N on each handle", math.Max(f.Strength.Flat, f.Strength.Upright), f.Strength.Working, f.Strength.Pull))
}

// reach is how the rower reaches, where the boat floats upright.
func (t teller) reach(f *rowing.Fit) report.Table {
	pulled, carried := "-", "-"
	if f.Fault == nil {
		pulled, carried = t.Length(f.Level.Drive), t.Length(f.Level.Recover)
	}
	out := report.Facts("Reach", "outboard of the button", t.Length(f.Oar.Outboard()), "heels from the seat's back", t.Length(f.Legs.Heel),
		"handles over the seat, pulled", pulled, "handles over the seat, carried clear", carried)
	if f.Fault != nil {
		out.Note = "- depends on the water, and the boat does not float upright."
	}
	return out
}

func (t teller) frame(f *rowing.Fit) report.Table {
	s := f.Strength
	return report.Facts("Frame: two bars on the gunwales, a board under each pair of ends",
		"bars", t.Length(rowing.BarWide)+" x "+t.Length(f.BarThick), "long", t.Length(f.BarLong()),
		"pull on a handle, on the rowlock", newtons(s.Pull)+", "+newtons(s.AtLock), "sag", t.Length(s.Sag),
		"each clip, and its lift", newtons(s.Clip)+", "+newtons(s.ClipLift))
}
