package outfits

import (
	"fmt"
	"io"
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/pair"
	"ribwright/geometry/wood/beam"
	"ribwright/layout"
)

// PairPage writes a pair of hulls to be read.
func PairPage(w io.Writer, c *pair.Craft, units measure.System) error {
	p := newPage(units)
	p.Line("%s and %s side by side, %s apart", c.Boats[0].Frame.Design.Title, c.Boats[1].Frame.Design.Title, p.Length(c.Spacing))
	p.Line("")
	p.cautions(c.Findings)
	p.Line("AS ONE CRAFT, %.0f kg in all", c.Load.Mass)
	p.two("width over all", p.Length(c.Over), "beams over water", p.Length(c.Beneath))
	p.two("least freeboard", p.Length(c.Rest.Freeboard), "list at rest", fmt.Sprintf("%.1f deg", math.Abs(deg(c.Rest.Heel))))
	p.two("BM", fmt.Sprintf("%.0f mm", c.BM), "GM", fmt.Sprintf("%.0f mm", c.GM))
	p.two("GM of one hull", fmt.Sprintf("%.0f mm", c.Single), "", "")
	p.Line("")
	p.Line("RIGHTING LEVER GZ, at each heel the lesser of both sides, to where it ends")
	lesser := c.Lesser()
	p.levers(lesser)
	for _, end := range []struct {
		what string
		heel float64
	}{{"the windward hull lifts", lesser.Lift}, {"water comes in", lesser.Flooded}} {
		if !math.IsNaN(end.heel) {
			p.Line("  at %.1f deg %s", deg(end.heel), end.what)
		}
	}
	p.Line("")
	p.Line("BEAMS: %d of %s, %.1f kg each", len(c.Beams.At), c.Beams.Wood.Name, c.BeamMass())
	p.Line("  %s wide, %s deep, %s long", p.Length(c.Beams.Width), p.Length(c.Beams.Depth), p.Length(c.Beams.Long))
	at := ""
	for _, x := range c.Beams.At {
		at += "  " + p.Length(x)
	}
	p.Line("  at stations%s", at)
	p.Line("  %-39s %9s %9s %8s %8s", "", "moment", "stress", "sag", "lashing")
	for _, k := range c.Cases {
		sag := "       -"
		if k.Sag > 0 {
			sag = fmt.Sprintf("%5.0f mm", k.Sag)
		}
		p.Line("  %-39s %5.0f N m %4.1f N/mm2 %s %6.0f N", k.Name, k.Moment, k.Stress, sag, k.Lash)
		p.Wrap("      ", k.Why)
	}
	p.Line("  asked of the wood: %.1f N/mm2 and a sag of %.0f mm under a person", beam.Working(c.Beams.Wood), c.Spacing/60)
	p.Line("")
	p.Line("WAVES of both hulls, N, on deep water: for comparing spacings")
	p.Line("  %6s %12s %12s %9s", "km/h", "far apart", "together", "change")
	for _, v := range c.Waves {
		p.Line("  %6.1f %12.1f %12.1f %+8.0f %%", v.Speed*3.6, v.Apart, v.Together, v.Change()*100)
	}
	p.Line("")
	p.ranges(c.Practices)
	p.notes(c.Findings)
	_, err := p.WriteTo(w)
	return err
}

// levers writes GZ in rows of eight, every other degree.
func (p *page) levers(c pair.Curve) {
	const columns = 9
	var shown []pair.Lever
	for i, v := range c.Levers {
		if i%2 == 0 || i == len(c.Levers)-1 {
			shown = append(shown, v)
		}
	}
	for from := 0; from < len(shown); from += columns {
		heel, gz, up := "  heel, deg", "  GZ, mm   ", "  windward "
		for _, v := range shown[from:min(len(shown), from+columns)] {
			heel += fmt.Sprintf(" %6.0f", deg(v.Heel))
			gz += fmt.Sprintf(" %6.0f", math.Round(v.GZ)+0)
			up += fmt.Sprintf(" %4.0f %%", v.Share*100)
		}
		p.Line("%s", heel)
		p.Line("%s", gz)
		p.Line("%s", up)
	}
	p.Line("  windward: the share of the weight that the windward hull still carries")
}

type pairCase struct {
	Name   string `json:"name"`
	Load   number `json:"load_n"`
	Moment number `json:"moment_n_m"`
	Stress number `json:"stress_n_mm2"`
	Sag    number `json:"sag_mm"`
	Lash   number `json:"lashing_n"`
	Why    string `json:"taken_as"`
}

type pairLever struct {
	Heel      number `json:"heel_deg"`
	GZ        number `json:"gz_mm"`
	Share     number `json:"windward_share"`
	Freeboard number `json:"freeboard_mm"`
}

type pairWave struct {
	Speed    number `json:"speed_m_s"`
	Apart    number `json:"far_apart_n"`
	Together number `json:"together_n"`
}

type pairRow struct {
	Levers  []pairLever `json:"gz"`
	Lift    number      `json:"lift_deg"`
	Flooded number      `json:"downflooding_deg"`
}

// pairFigures are the figures of a pair.
type pairFigures struct {
	Boats     [2]string  `json:"boats"`
	Spacing   number     `json:"spacing_mm"`
	Over      number     `json:"width_over_all_mm"`
	Mass      number     `json:"displacement_kg"`
	BM        number     `json:"bm_mm"`
	GM        number     `json:"gm_mm"`
	Single    number     `json:"gm_single_mm"`
	List      number     `json:"list_deg"`
	Freeboard number     `json:"freeboard_min_mm"`
	Beneath   number     `json:"beams_over_water_mm"`
	Lifting   number     `json:"lifting_moment_n_m"`
	Starboard pairRow    `json:"to_starboard"`
	Port      pairRow    `json:"to_port"`
	Lesser    pairRow    `json:"lesser_of_both"`
	Stations  []number   `json:"beam_stations_mm"`
	Width     number     `json:"beam_width_mm"`
	Depth     number     `json:"beam_depth_mm"`
	Long      number     `json:"beam_length_mm"`
	Wood      string     `json:"beam_species"`
	BeamMass  number     `json:"beam_kg"`
	Working   number     `json:"working_stress_n_mm2"`
	Enough    bool       `json:"beams_enough"`
	Turns     int        `json:"lashing_turns"`
	Cases     []pairCase `json:"cases"`
	Waves     []pairWave `json:"waves"`
	Practice  []span     `json:"practice"`
	Findings  []note     `json:"findings"`
}

// PairJSON writes a pair as JSON, with the table of its sheets when there are some.
func PairJSON(w io.Writer, c *pair.Craft, id Identity, doc *layout.Document) error {
	_, lash := c.Worst()
	f := &pairFigures{
		Boats:   [2]string{c.Boats[0].Frame.Design.Title, c.Boats[1].Frame.Design.Title},
		Spacing: number(c.Spacing), Over: number(c.Over), Mass: number(c.Load.Mass), BM: number(c.BM), GM: number(c.GM), Single: number(c.Single),
		List: number(deg(c.Rest.Heel)), Freeboard: number(c.Rest.Freeboard), Beneath: number(c.Beneath), Lifting: number(c.Lifting),
		Starboard: pairCurve(c.Curves[0]), Port: pairCurve(c.Curves[1]), Lesser: pairCurve(c.Lesser()),
		Width: number(c.Beams.Width), Depth: number(c.Beams.Depth), Long: number(c.Beams.Long), Wood: c.Beams.Wood.Name, BeamMass: number(c.BeamMass()),
		Working: number(beam.Working(c.Beams.Wood)), Enough: c.Beams.Enough, Turns: pair.Turns(lash),
		Practice: rangesOf(c.Practices), Findings: notesOf(c.Findings),
	}
	for _, x := range c.Beams.At {
		f.Stations = append(f.Stations, number(x))
	}
	for _, k := range c.Cases {
		sag := k.Sag
		if sag == 0 { // not worked
			sag = math.NaN()
		}
		f.Cases = append(f.Cases, pairCase{k.Name, number(k.Load), number(k.Moment), number(k.Stress), number(sag), number(k.Lash), k.Why})
	}
	for _, v := range c.Waves {
		f.Waves = append(f.Waves, pairWave{number(v.Speed), number(v.Apart), number(v.Together)})
	}
	return document{Design: id, Pair: f}.encode(w, doc)
}

func pairCurve(c pair.Curve) pairRow {
	out := pairRow{Levers: []pairLever{}, Lift: number(deg(c.Lift)), Flooded: number(deg(c.Flooded))}
	for _, v := range c.Levers {
		out.Levers = append(out.Levers, pairLever{number(deg(v.Heel)), number(v.GZ), number(v.Share), number(v.Freeboard)})
	}
	return out
}
