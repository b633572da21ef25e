package json

import (
	"ribwright/geometry/outfit/pair"
	"ribwright/geometry/wood/beam"
	"ribwright/layout"
)

type pairCase struct {
	Name   string      `json:"name"`
	Load   significant `json:"load_n"`
	Moment significant `json:"moment_n_m"`
	Stress significant `json:"stress_n_mm2"`
	Sag    significant `json:"sag_mm"`
	Lash   significant `json:"lashing_n"`
	Why    string      `json:"taken_as"`
}

type pairLever struct {
	Heel      significant `json:"heel_deg"`
	GZ        significant `json:"gz_mm"`
	Share     significant `json:"windward_share"`
	Freeboard significant `json:"freeboard_mm"`
}

type pairWave struct {
	Speed    significant `json:"speed_m_s"`
	Apart    significant `json:"far_apart_n"`
	Together significant `json:"together_n"`
}

type pairLevers struct {
	Levers  []pairLever `json:"gz"`
	Lift    significant `json:"lift_deg"`
	Flooded significant `json:"downflooding_deg"`
}

// PairReport is what was worked out of two hulls side by side; the design is the first
// one's.
type PairReport struct {
	Design Header      `json:"design"`
	Pair   pairFigures `json:"pair"`
	Pages  []pagePart  `json:"pages,omitempty"`
}

type pairFigures struct {
	Boats     [2]string     `json:"boats"`
	Spacing   significant   `json:"spacing_mm"`
	Over      significant   `json:"width_over_all_mm"`
	Mass      significant   `json:"displacement_kg"`
	BM        significant   `json:"bm_mm"`
	GM        significant   `json:"gm_mm"`
	Single    significant   `json:"gm_single_mm"`
	List      significant   `json:"list_deg"`
	Freeboard significant   `json:"freeboard_min_mm"`
	Beneath   significant   `json:"beams_over_water_mm"`
	Lifting   significant   `json:"lifting_moment_n_m"`
	Starboard pairLevers    `json:"to_starboard"`
	Port      pairLevers    `json:"to_port"`
	Lesser    pairLevers    `json:"lesser_of_both"`
	Stations  []significant `json:"beam_stations_mm"`
	Width     significant   `json:"beam_width_mm"`
	Depth     significant   `json:"beam_depth_mm"`
	Long      significant   `json:"beam_length_mm"`
	Wood      string        `json:"beam_species"`
	BeamMass  significant   `json:"beam_kg"`
	Working   significant   `json:"working_stress_n_mm2"`
	Enough    bool          `json:"beams_enough"`
	Turns     int           `json:"lashing_turns"`
	Cases     []pairCase    `json:"cases"`
	Waves     []pairWave    `json:"waves"`
	Practice  []rangePart   `json:"practice"`
	Findings  []notePart    `json:"findings"`
}

// Pair gathers what was worked out of a pair; doc are the sheets of its patterns, nil
// without any.
//
// Errors: as HeaderOf.
func Pair(c *pair.Craft, doc *layout.Document) (*PairReport, error) {
	head, err := HeaderOf(c.Boats[0].Frame.Design)
	if err != nil {
		return nil, err
	}
	_, lash := c.Worst()
	f := pairFigures{
		Boats:   [2]string{c.Boats[0].Frame.Design.Title, c.Boats[1].Frame.Design.Title},
		Spacing: significant(c.Spacing), Over: significant(c.Over), Mass: significant(c.Load.Mass), BM: significant(c.BM), GM: significant(c.GM), Single: significant(c.Single),
		List: significant(inDegrees(c.Rest.Heel)), Freeboard: significant(c.Rest.Freeboard), Beneath: significant(c.Beneath), Lifting: significant(c.Lifting),
		Starboard: pairLeversOf(c.Curves[0]), Port: pairLeversOf(c.Curves[1]), Lesser: pairLeversOf(c.Lesser()),
		Width: significant(c.Beams.Width), Depth: significant(c.Beams.Depth), Long: significant(c.Beams.Long), Wood: c.Beams.Wood.Name, BeamMass: significant(c.BeamMass()),
		Working: significant(beam.Working(c.Beams.Wood)), Enough: c.Beams.Enough, Turns: pair.Turns(lash),
		Practice: rangesOf(c.Practices), Findings: notesOf(c.Findings),
	}
	for _, x := range c.Beams.At {
		f.Stations = append(f.Stations, significant(x))
	}
	for _, k := range c.Cases {
		sag := k.Sag
		if sag == 0 { // not worked
			sag = none
		}
		f.Cases = append(f.Cases, pairCase{k.Name, significant(k.Load), significant(k.Moment), significant(k.Stress), significant(sag), significant(k.Lash), k.Why})
	}
	for _, v := range c.Waves {
		f.Waves = append(f.Waves, pairWave{significant(v.Speed), significant(v.Apart), significant(v.Together)})
	}
	return &PairReport{head, f, pagesIf(doc)}, nil
}

func pairLeversOf(c pair.Curve) pairLevers {
	out := pairLevers{Levers: []pairLever{}, Lift: significant(inDegrees(c.Lift)), Flooded: significant(inDegrees(c.Flooded))}
	for _, v := range c.Levers {
		out.Levers = append(out.Levers, pairLever{significant(inDegrees(v.Heel)), significant(v.GZ), significant(v.Share), significant(v.Freeboard)})
	}
	return out
}
