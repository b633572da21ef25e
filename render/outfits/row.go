package outfits

import (
	"fmt"
	"io"
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/rowing"
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
