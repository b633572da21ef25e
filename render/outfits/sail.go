package outfits

import (
	"fmt"
	"io"
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/wording"
	"ribwright/layout"
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
	cloth := f.Plan.Cut(f.Sail)
	p.two("cloth", fmt.Sprintf("%.2f m2 cut", cloth.Area), "panels", fmt.Sprint(len(cloth.Panels)))
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

type sailLimit struct {
	Crew  string `json:"crew"`
	Reef  number `json:"take_in_m_s"`
	Under number `json:"over_m_s"`
	Heel  number `json:"heel_deg"`
	Left  number `json:"lee_gunwale_mm"`
}

type sailState struct {
	Name   string      `json:"name"`
	Area   number      `json:"area_m2"`
	X      number      `json:"center_station_mm"`
	Z      number      `json:"center_height_mm"`
	Arm    number      `json:"arm_m"`
	DoAt   number      `json:"take_in_at_m_s"`
	Limits []sailLimit `json:"limits"`
}

type sailSpar struct {
	Name     string `json:"name"`
	Length   number `json:"length_mm"`
	Diameter number `json:"diameter_mm"`
}

type sailStand struct {
	Crew    string      `json:"crew"`
	Moments [][2]number `json:"heel_deg_moment_n_m"`
	Most    number      `json:"most_n_m"`
	Flooded number      `json:"downflooding_deg"`
	Calm    number      `json:"lull_heel_deg"`
}

type sailBoard struct {
	Area  number `json:"area_m2"`
	Chord number `json:"chord_mm"`
	Long  number `json:"length_mm"`
	Deep  number `json:"under_water_mm"`
	At    number `json:"station_mm"`
	From  number `json:"station_least_mm"`
	To    number `json:"station_greatest_mm"`
	Thick number `json:"thickness_mm"`
	Load  number `json:"load_n"`
}

type sailMast struct {
	At       number `json:"station_mm"`
	Long     number `json:"length_mm"`
	Diameter number `json:"diameter_mm"`
	Force    number `json:"sail_force_n"`
	Partner  number `json:"partner_n"`
	Step     number `json:"step_n"`
	Moment   number `json:"moment_n_m"`
	Stress   number `json:"stress_n_mm2"`
	Working  number `json:"working_stress_n_mm2"`
}

type sailing struct {
	Rig        string      `json:"rig"`
	Area       number      `json:"area_m2"`
	Mass       number      `json:"all_up_kg"`
	Sailing    number      `json:"counts_as_sailing_from_m2"`
	Stop       number      `json:"no_sail_at_m_s"`
	Crew       string      `json:"crew"`
	Needed     int         `json:"reefs_needed"`
	States     []sailState `json:"sails"`
	Stands     []sailStand `json:"stands"`
	Mast       sailMast    `json:"mast"`
	Spars      []sailSpar  `json:"spars"`
	Board      *sailBoard  `json:"leeboard"`
	Corners    [][2]number `json:"corners_mm"`
	ClothCut   number      `json:"cloth_m2"`
	Panels     int         `json:"panels"`
	OutfitMass number      `json:"outfit_kg"`
	Practice   []span      `json:"practice"`
	Findings   []note      `json:"findings"`
}

// SailJSON writes a sail as JSON, with the table of its sheets when there are some.
func SailJSON(w io.Writer, f *sail.Fit, id Identity, doc *layout.Document) error {
	items, err := f.Items()
	if err != nil {
		return err
	}
	m, cloth := f.Mast, f.Plan.Cut(f.Sail)
	out := &sailing{Rig: f.Sail.Rig.String(), Area: number(f.Plan.Area()), Mass: number(f.Load.Mass), Sailing: number(sail.Sailing(f.Load.Mass)),
		Stop: number(f.Wind.Stop), Crew: f.Chosen().String(), Needed: f.Needed(f.Chosen()) - 1, ClothCut: number(cloth.Area), Panels: len(cloth.Panels),
		Mast:     sailMast{number(m.At), number(m.Long), number(m.Diameter), number(m.Force), number(m.Partner), number(m.Step), number(m.Moment), number(m.Stress), number(m.Working)},
		Practice: rangesOf(f.Ranges), Findings: notesOf(f.Findings)}
	for _, i := range items {
		out.OutfitMass += number(i.Load().Mass)
	}
	for i, s := range f.States {
		st := sailState{Name: s.Name, Area: number(s.Area), X: number(m.At + s.Center.X), Z: number(f.Tack + s.Center.Y), Arm: number(s.Arm), DoAt: number(f.Wind.Reef[i])}
		for k, l := range s.Limits {
			st.Limits = append(st.Limits, sailLimit{sail.Place(k).String(), number(l.Reef), number(l.Under), number(deg(l.Heel)), number(l.Left)})
		}
		out.States = append(out.States, st)
	}
	for _, s := range f.Stands {
		st := sailStand{Crew: s.Place.String(), Most: number(s.Most.N), Flooded: number(deg(s.Flooded)), Calm: number(deg(s.Calm))}
		for _, v := range s.Moments {
			st.Moments = append(st.Moments, [2]number{number(deg(v.Heel)), number(v.N)})
		}
		out.Stands = append(out.Stands, st)
	}
	for _, s := range f.Plan.Spars {
		out.Spars = append(out.Spars, sailSpar{s.Name, number(s.Length()), number(s.Diameter)})
	}
	for _, c := range f.Plan.Corners {
		out.Corners = append(out.Corners, [2]number{number(c.X), number(c.Y)})
	}
	if b := f.Board; b.Area > 0 {
		out.Board = &sailBoard{number(b.Area), number(b.Chord), number(b.Long), number(b.Deep), number(f.BracketAt()), number(b.Range[0]), number(b.Range[1]), number(b.Thick), number(b.Load)}
	}
	return document{Design: id, Sail: out}.encode(w, doc)
}
