package json

import (
	"ribwright/geometry/outfit/sail"
	"ribwright/layout"
)

type sailLimit struct {
	Crew  string      `json:"crew"`
	Reef  significant `json:"take_in_m_s"`
	Under significant `json:"over_m_s"`
	Heel  significant `json:"heel_deg"`
	Left  significant `json:"lee_gunwale_mm"`
}

type sailState struct {
	Name   string      `json:"name"`
	Area   significant `json:"area_m2"`
	X      significant `json:"center_station_mm"`
	Z      significant `json:"center_height_mm"`
	Arm    significant `json:"arm_m"`
	DoAt   significant `json:"take_in_at_m_s"`
	Limits []sailLimit `json:"limits"`
}

type sailSpar struct {
	Name     string      `json:"name"`
	Length   significant `json:"length_mm"`
	Diameter significant `json:"diameter_mm"`
}

type sailStand struct {
	Crew    string           `json:"crew"`
	Moments [][2]significant `json:"heel_deg_moment_n_m"`
	Most    significant      `json:"most_n_m"`
	Flooded significant      `json:"downflooding_deg"`
	Calm    significant      `json:"lull_heel_deg"`
}

type sailBoard struct {
	Area  significant `json:"area_m2"`
	Chord significant `json:"chord_mm"`
	Long  significant `json:"length_mm"`
	Deep  significant `json:"under_water_mm"`
	At    significant `json:"station_mm"`
	From  significant `json:"station_least_mm"`
	To    significant `json:"station_greatest_mm"`
	Thick significant `json:"thickness_mm"`
	Load  significant `json:"load_n"`
}

type sailMast struct {
	At       significant `json:"station_mm"`
	Long     significant `json:"length_mm"`
	Diameter significant `json:"diameter_mm"`
	Force    significant `json:"sail_force_n"`
	Partner  significant `json:"partner_n"`
	Step     significant `json:"step_n"`
	Moment   significant `json:"moment_n_m"`
	Stress   significant `json:"stress_n_mm2"`
	Working  significant `json:"working_stress_n_mm2"`
}

// SailReport is what was worked out of a sail.
type SailReport struct {
	Design Header      `json:"design"`
	Sail   sailFigures `json:"sail"`
	Pages  []pagePart  `json:"pages,omitempty"`
}

type sailFigures struct {
	Rig        string           `json:"rig"`
	Area       significant      `json:"area_m2"`
	Mass       significant      `json:"all_up_kg"`
	Sailing    significant      `json:"counts_as_sailing_from_m2"`
	Stop       significant      `json:"no_sail_at_m_s"`
	Crew       string           `json:"crew"`
	Needed     int              `json:"reefs_needed"`
	States     []sailState      `json:"sails"`
	Stands     []sailStand      `json:"stands"`
	Mast       sailMast         `json:"mast"`
	Spars      []sailSpar       `json:"spars"`
	Board      *sailBoard       `json:"leeboard"`
	Corners    [][2]significant `json:"corners_mm"`
	ClothCut   significant      `json:"cloth_m2"`
	Panels     int              `json:"panels"`
	OutfitMass significant      `json:"outfit_kg"`
	Practice   []rangePart      `json:"practice"`
	Findings   []notePart       `json:"findings"`
}

// Sail gathers what was worked out of a sail; doc are the sheets of its patterns, nil
// without any.
//
// Errors: as HeaderOf; a wood that is not known.
func Sail(f *sail.Fit, doc *layout.Document) (*SailReport, error) {
	head, err := HeaderOf(f.Boat.Frame.Design)
	if err != nil {
		return nil, err
	}
	items, err := f.Items()
	if err != nil {
		return nil, err
	}
	m := f.Mast
	out := sailFigures{Rig: f.Sail.Rig.String(), Area: significant(f.Plan.Area()), Mass: significant(f.Load.Mass), Sailing: significant(sail.Sailing(f.Load.Mass)),
		Stop: significant(f.Wind.Stop), Crew: f.Chosen().String(), Needed: f.Needed(f.Chosen()) - 1, ClothCut: significant(f.Cloth.Area), Panels: len(f.Cloth.Panels),
		Mast:     sailMast{significant(m.At), significant(m.Long), significant(m.Diameter), significant(m.Force), significant(m.Partner), significant(m.Step), significant(m.Moment), significant(m.Stress), significant(m.Working)},
		Practice: rangesOf(f.Ranges), Findings: notesOf(f.Findings)}
	for _, i := range items {
		out.OutfitMass += significant(i.Load().Mass)
	}
	for i, s := range f.States {
		st := sailState{Name: s.Name, Area: significant(s.Area), X: significant(m.At + s.Center.X), Z: significant(f.Tack + s.Center.Y), Arm: significant(s.Arm), DoAt: significant(f.Wind.Reef[i])}
		for k, l := range s.Limits {
			st.Limits = append(st.Limits, sailLimit{sail.Place(k).String(), significant(l.Reef), significant(l.Under), significant(inDegrees(l.Heel)), significant(l.Left)})
		}
		out.States = append(out.States, st)
	}
	for _, s := range f.Stands {
		st := sailStand{Crew: s.Place.String(), Most: significant(s.Most.N), Flooded: significant(inDegrees(s.Flooded)), Calm: significant(inDegrees(s.Calm))}
		for _, v := range s.Moments {
			st.Moments = append(st.Moments, [2]significant{significant(inDegrees(v.Heel)), significant(v.N)})
		}
		out.Stands = append(out.Stands, st)
	}
	for _, s := range f.Plan.Spars {
		out.Spars = append(out.Spars, sailSpar{s.Name, significant(s.Length()), significant(s.Diameter)})
	}
	for _, c := range f.Plan.Corners {
		out.Corners = append(out.Corners, [2]significant{significant(c.X), significant(c.Y)})
	}
	if b := f.Board; b.Area > 0 {
		out.Board = &sailBoard{significant(b.Area), significant(b.Chord), significant(b.Long), significant(b.Deep), significant(f.BracketAt()), significant(b.Range[0]), significant(b.Range[1]), significant(b.Thick), significant(b.Load)}
	}
	return &SailReport{head, out, pagesIf(doc)}, nil
}
