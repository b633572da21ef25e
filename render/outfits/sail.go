package outfits

import (
	"fmt"
	"io"
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/wording"
)

// SailPage writes a sail to be read.
func SailPage(w io.Writer, f *sail.Fit, units measure.System) error {
	p := newPage(units)
	p.Line("%s under a %s of %.2f m2, %.0f kg all up", f.Boat.Frame.Design.Title, f.Sail.Rig, f.Plan.Area(), f.Load.Mass)
	p.Line("")
	p.cautions(f.Findings)
	p.winds(f)
	p.Line("BALANCE (stations from midship, forward positive)")
	p.two("mast at", p.Length(f.Mast.At), "sail's center at", p.Length(f.Mast.At+f.Plan.Center().X))
	p.two("center over", fmt.Sprintf("%.2f m", f.States[0].Arm), "resistance at", p.Length(f.Resists().X))
	if b := f.Board; b.Area > 0 {
		p.two("leeboard", p.Length(b.Chord)+" x "+p.Length(b.Long), "of it under water", p.Length(b.Deep))
		p.two("leeboard at", p.Length(f.BracketAt()), "thick", p.Length(b.Thick))
	}
	p.Line("")
	p.Line("SPARS of %s", f.Sail.Spars)
	if f.Mast.Long > 0 {
		p.Line("  %-16s %10s long, %s thick at the partner", "mast", p.Length(f.Mast.Long), p.Length(f.Mast.Diameter))
	}
	for _, s := range f.Plan.Spars {
		p.Line("  %-16s %10s long, %s thick", s.Name, p.Length(s.Length()), p.Length(s.Diameter))
	}
	p.two("on the partner", fmt.Sprintf("%.0f N", f.Mast.Partner), "sideways on step", fmt.Sprintf("%.0f N", f.Mast.Step))
	p.two("at the partner", fmt.Sprintf("%.0f N m", f.Mast.Moment), "stress", fmt.Sprintf("%.1f of %.1f N/mm2", f.Mast.Stress, f.Mast.Working))
	p.two("cloth", fmt.Sprintf("%.2f m2 cut", f.Cloth.Area), "panels", fmt.Sprint(len(f.Cloth.Panels)))
	p.Line("")
	if len(f.Ranges) > 0 {
		p.ranges(f.Ranges)
	}
	p.notes(f.Findings)
	_, err := p.WriteTo(w)
	return err
}

// winds writes the table of what to do when.
func (p *page) winds(f *sail.Fit) {
	p.Line("WIND in m/s (knots): take the sail in at the first, it goes over at the second")
	head := fmt.Sprintf("  %-11s %5s", "", "m2")
	for _, s := range f.Stands {
		head += fmt.Sprintf(" %-19s", s.Place)
	}
	p.Line("%s", head)
	capped := false
	for i, s := range f.States[:f.Useful()] {
		row := fmt.Sprintf("  %-11s %5.2f", s.Name, s.Area)
		for k, l := range s.Limits {
			v, mark := f.TakeIn(i, sail.Place(k)), " "
			if v == sail.Rough {
				mark, capped = "*", true
			}
			row += fmt.Sprintf(" %4.1f%s(%2.0f) %9s", v, mark, sail.Knots(v), over(l.Under))
		}
		p.Line("%s", row)
	}
	if capped {
		p.Line("  * all sail down by then, whatever the boat would stand")
	}
	moments, flood, calm := fmt.Sprintf("  %-17s", "most moment"), fmt.Sprintf("  %-17s", "gunwale under"), fmt.Sprintf("  %-17s", "in a lull")
	for _, s := range f.Stands {
		moments += fmt.Sprintf(" %-19s", fmt.Sprintf("%.0f N m", s.Most.N))
		flood += fmt.Sprintf(" %-19s", fmt.Sprintf("at %.0f deg", deg(s.Flooded)))
		lull := "level"
		switch {
		case math.IsNaN(s.Calm):
			lull = "OVER to windward"
		case deg(s.Calm) > 0.5:
			lull = fmt.Sprintf("%.0f deg to windward", deg(s.Calm))
		}
		calm += fmt.Sprintf(" %-19s", lull)
	}
	p.Line("%s", moments)
	p.Line("%s", flood)
	p.Line("%s", calm)
	p.Line("")
	p.Line("WHAT TO DO with the crew %s", f.Chosen())
	p.Line("  %-11s %8s %6s %6s   %-18s %8s %12s", "", "m/s", "knots", "force", "", "heel", "lee gunwale")
	last := f.Needed(f.Chosen()) - 1
	for i, s := range f.States[:last+1] {
		what := "take in a reef"
		if i == last {
			what = "take the sail down"
		}
		l, v := s.Limits[f.Chosen()], f.Wind.Reef[i]
		p.Line("  %-11s %8.1f %6.0f %6d   %-18s %4.0f deg %12s", s.Name, v, sail.Knots(v), sail.Beaufort(v), what, deg(l.Heel), p.Length(l.Left))
	}
	if s := f.Spared(); s != "" {
		p.Wrap("  ", wording.Capital(s)+".")
	}
	p.Line("")
}

// over letters the wind in which it goes over, with knots where it has a figure.
func over(v float64) string {
	if v > sail.Gale {
		return sail.Over(v)
	}
	return fmt.Sprintf("%4.1f (%2.0f)", v, sail.Knots(v))
}
