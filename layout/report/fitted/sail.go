package fitted

import (
	"fmt"
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/figure"
	"ribwright/layout/report"
)

// Sail tells all of a sail.
func Sail(f *sail.Fit, units measure.System) []report.Block {
	t := in(units)
	return page(f.Findings, append([]report.Block{
		report.Facts("The sail", "rig", f.Sail.Rig.String(), "area", fmt.Sprintf("%.2f m2", f.Plan.Area()),
			"all up", t.Mass(f.Load.Mass), "bow up by, over the waterline", t.Length(f.Rest.TrimRise()), "cloth cut", fmt.Sprintf("%.2f m2 in %s", f.Cloth.Area, wording.Counted(len(f.Cloth.Panels), "panel"))),
		t.standing(f), t.winds(f), t.whatToDo(f), t.places(f), t.spars(f), rigging(f), Pieces(f.Kit(), units)}, t.ranges(f.Ranges)...)...)
}

// SailInBook tells a builder of a sail: how it looks, what to do in which wind, where its parts go.
func SailInBook(f *sail.Fit, units measure.System) []report.Block {
	t := in(units)
	out := []report.Block{report.Section("Sail"),
		report.Figure{Drawing: roomy(func(wide float64) layout.Drawing { return figure.SailSketch(f, wide) }),
			Caption: fmt.Sprintf("The %s of %.2f m2 with its reefs, not to scale. Across it the lines of its reefs, dashed what is left when it is let down to one: centers of the sail, and of what resists under water.", f.Sail.Rig, f.Plan.Area()),
			About:   "The boat from the side under sail, with mast, spars, reefs and leeboard."},
		t.whatToDo(f), figure.SailMoments(f).Block(), t.places(f), t.spars(f), rigging(f), report.Findings{List: f.Findings}}
	return append(out, t.ranges(f.Ranges)...)
}

// rigging is how the rig goes together and comes down.
func rigging(f *sail.Fit) report.Table {
	out := report.Titled("Rigging and use; common practice, to be tried ashore first").Words("What", "How")
	for _, a := range f.Rigging() {
		out.Row(wording.Capital(a.What), a.How)
	}
	return out
}

// whatToDo is the wind in which to make the sail smaller, for the crew in its place.
func (t teller) whatToDo(f *sail.Fit) report.Table {
	out := report.Titled("Wind: what to do with the crew "+f.Chosen().String()).Words("Sail").Numbers("m2", "Take it in at, m/s", "knots", "Force", "Goes over at, m/s")
	for i, s := range f.States[:f.Needed(f.Chosen())] {
		l, v := s.Limits[f.Chosen()], f.Wind.Reef[i]
		out.Row(s.Name, fmt.Sprintf("%.2f", s.Area), fmt.Sprintf("%.1f", v), fmt.Sprint(sail.Knots(v)), fmt.Sprint(sail.Beaufort(v)), sail.Over(l.Under))
	}
	out.Note = fmt.Sprintf("No sail up at %.1f m/s (%d knots); %s.", f.Wind.Stop, sail.Knots(f.Wind.Stop), f.InMiddle())
	if s := f.Spared(); s != "" {
		out.Note += " " + wording.Capital(s) + "."
	}
	return out
}

// winds is when to take every sail in and when it goes over, wherever the crew sits.
func (t teller) winds(f *sail.Fit) report.Table {
	out := report.Titled("Wind, m/s (knots): take the sail in at the first, it goes over at the second").Words("Sail")
	for _, s := range f.Stands {
		out = out.Numbers("Crew "+s.Place.String()+": take in", "over")
	}
	for i, s := range f.States[:f.Useful()] {
		row := []string{s.Name}
		for k, l := range s.Limits {
			v, mark := f.TakeIn(i, sail.Place(k)), ""
			if v == sail.Rough {
				mark, out.Note = "*", "* all sail down by then, whatever the boat would stand."
			}
			row = append(row, fmt.Sprintf("%.1f%s (%d)", v, mark, sail.Knots(v)), over(l.Under))
		}
		out.Row(row...)
	}
	return out
}

// over letters the wind in which it goes over, with knots where it has a figure.
func over(v float64) string {
	if v > sail.Gale {
		return sail.Over(v)
	}
	return fmt.Sprintf("%s (%d)", sail.Over(v), sail.Knots(v))
}

func (t teller) standing(f *sail.Fit) report.Table {
	out := report.Titled("What the boat stands").Words("Crew").Numbers("Most moment", "Gunwale under at").Words("In a lull")
	for _, s := range f.Stands {
		lull := "level"
		switch {
		case math.IsNaN(s.Calm):
			lull = "OVER to windward"
		case s.Calm > 0.5*math.Pi/180:
			lull = fmt.Sprintf("%.0f deg to windward", s.Calm*180/math.Pi)
		}
		out.Row(s.Place.String(), fmt.Sprintf("%.0f N m", s.Most.N), fmt.Sprintf("%.0f deg", s.Flooded*180/math.Pi), lull)
	}
	return out
}

func (t teller) places(f *sail.Fit) report.Table {
	out := report.Facts("Places and loads", "mast at", t.Station(f.Mast.At), "sail's center at", t.Station(f.Mast.At+f.Plan.Center().X),
		"resistance under water at", t.Station(f.Resists().X))
	if b := f.Board; b.Area > 0 {
		at := t.Station(f.BracketAt())
		if !f.Balanced() {
			at = "no place balances"
		}
		out = out.Filled("leeboard's bracket at", at, "leeboard under water", t.Length(b.Deep))
	}
	return out.Filled("push on the partner, on the step", newtons(f.Mast.Partner)+", "+newtons(f.Mast.Step),
		"tack over the gunwale", t.Length(f.Tack-(f.Mast.PartnerZ-sail.PartnerThick/2)))
}

func (t teller) spars(f *sail.Fit) report.Table {
	out := report.Titled("Spars of "+f.Sail.Spars).Words("Piece").Numbers("Long", "Thick")
	if f.Mast.Long > 0 {
		out.Row("mast, at the partner", t.Length(f.Mast.Long), t.Length(f.Mast.Diameter))
	}
	for _, s := range f.Plan.Spars {
		out.Row(s.Name, t.Length(s.Length()), t.Length(s.Diameter))
	}
	out.Note = fmt.Sprintf("At the partner the mast bears %.0f N m, %.1f of %.1f N/mm2.", f.Mast.Moment, f.Mast.Stress, f.Mast.Working)
	if b := f.Board; b.Area > 0 {
		out.Note += fmt.Sprintf(" Leeboard: %s x %s, %s thick.", t.Length(b.Chord), t.Length(b.Long), t.Length(b.Thick))
	}
	return out
}
