package json

import (
	"math"

	"ribwright/geometry/trial/balance"
	"ribwright/geometry/trial/bend"
)

// BendReport is what bending asks of the wood and what comes of taking members out.
// Forces are in N, stresses in N/mm2 (_mpa); changes of beam are of the whole width.
type BendReport struct {
	Design   Header        `json:"design"`
	Pass     bool          `json:"pass"`
	Findings []findingPart `json:"findings"`
	Gunwale  bentGunwale   `json:"gunwale"`
	Ribs     []bentRib     `json:"ribs"`
	Mortises []bentSlot    `json:"mortises"`
	Stems    []bentStem    `json:"laminated_stems"`
	Without  []string      `json:"without"`
	Neutral  *string       `json:"no_neutral_set"`
	Trials   []trialPart   `json:"trials"`
}

type findingPart struct {
	About    string `json:"about"`
	Verdict  string `json:"verdict"`
	Pass     bool   `json:"pass"`
	Value    fixed  `json:"value"`
	Limit    fixed  `json:"limit"`
	Unit     string `json:"unit"`
	Margin   fixed  `json:"margin_percent"`
	Cure     string `json:"cure"`
	Standing string `json:"standing"`
}

type bentGunwale struct {
	Plies     int    `json:"plies"`
	Glued     string `json:"glued"`
	Ply       fixed  `json:"ply_mm"`
	Radius    fixed  `json:"tightest_radius_mm"`
	At        fixed  `json:"tightest_station_mm"`
	Form      fixed  `json:"form_radius_mm"`
	Back      fixed  `json:"springback_percent"`
	PlyStress fixed  `json:"ply_bending_mpa"`
	RestAt    fixed  `json:"rest_station_mm"`
	RestPlan  fixed  `json:"rest_plan_mpa"`
	RestEdge  fixed  `json:"rest_edge_set_mpa"`
}

type bentRib struct {
	Rib       string    `json:"rib"`
	Station   fixed     `json:"station_mm"`
	Width     fixed     `json:"width_mm"`
	Relax     fixed     `json:"relax_to_mm"`
	Stiffness fixed     `json:"stiffness_n_per_mm"`
	Push      fixed     `json:"push_n"`
	Stress    fixed     `json:"rest_mpa"`
	Steam     fixed     `json:"steam_minutes"`
	Arcs      []bentArc `json:"arcs"`
}

// bentArc is one bend; a radius is null when the piece is straight.
type bentArc struct {
	Name    string `json:"name"`
	Radius  fixed  `json:"radius_mm"`
	Free    fixed  `json:"relaxed_radius_mm"`
	Form    fixed  `json:"form_radius_mm"`
	Ratio   fixed  `json:"radius_over_thickness"`
	OnForm  fixed  `json:"form_radius_over_thickness"`
	Stretch fixed  `json:"outer_strain_percent"`
	Shorten fixed  `json:"inner_strain_percent"`
}

type bentSlot struct {
	Rib    string `json:"rib"`
	Flat   fixed  `json:"modulus_left_plan_percent"`
	Tall   fixed  `json:"modulus_left_edge_percent"`
	Stress fixed  `json:"rest_mpa"`
}

type bentStem struct {
	End  string `json:"end"`
	Ply  fixed  `json:"ply_mm"`
	Form fixed  `json:"form_radius_mm"`
}

type trialPart struct {
	Set    string      `json:"ribs_set"`
	Miss   fixed       `json:"wide_of_neutral_mm"`
	Struts []strutPart `json:"cross_pieces"`
	Ribs   []shiftPart `json:"ribs"`
}

type strutPart struct {
	Code    string `json:"code"`
	Name    string `json:"name"`
	Station fixed  `json:"station_mm"`
	Force   fixed  `json:"force_n"`
	Out     bool   `json:"out"`
}

type shiftPart struct {
	Rib   string `json:"rib"`
	Push  fixed  `json:"push_n"`
	Off   fixed  `json:"beam_off_design_mm"`
	Moved fixed  `json:"beam_moved_mm"`
}

// Bend gathers a report of bending, the members taken out and what comes of it with
// the ribs set as each trial says; miss is by how much every rib of the trial "off"
// stands wide of the neutral set, mm.
//
// Errors: as HeaderOf.
func Bend(r *bend.Report, out *balance.Without, trials []balance.Trial, miss float64) (*BendReport, error) {
	d, g := r.Frame.Design, r.Gunwale
	head, err := HeaderOf(d)
	if err != nil {
		return nil, err
	}
	p := &BendReport{
		Design: head, Pass: r.Findings.Passes(), Stems: []bentStem{}, Without: append([]string{}, out.Names...),
		Gunwale: bentGunwale{d.Gunwale.Plies, d.Gunwale.Glued, fixed(g.Ply), fixed(g.Radius), fixed(g.At), fixed(g.Form), fixed(100 * g.Back),
			fixed(g.PlyBend), fixed(g.Rest.X), fixed(g.Rest.Plan), fixed(g.Rest.Edge)},
	}
	for _, f := range r.Findings {
		p.Findings = append(p.Findings, findingPart{f.About, f.Verdict.String(), f.Verdict.Passes(), fixed(f.Value), fixed(f.Limit), f.Unit, fixed(100 * f.Margin()), f.Cure, string(f.Standing)})
	}
	if r.Boat.Why != nil {
		why := r.Boat.Why.Text
		p.Neutral = &why
	}
	for i := range r.Ribs {
		p.Ribs = append(p.Ribs, bentRibOf(r, i))
	}
	for _, s := range r.Slots {
		p.Mortises = append(p.Mortises, bentSlot{s.Rib, fixed(100 * s.Flat), fixed(100 * s.Tall), fixed(s.Stress)})
	}
	for _, s := range r.Stems {
		p.Stems = append(p.Stems, bentStem{s.End, fixed(s.Ply), fixed(s.Form)})
	}
	for _, t := range trials {
		p.Trials = append(p.Trials, trialOf(r, out, t, miss))
	}
	return p, nil
}

func bentRibOf(r *bend.Report, i int) bentRib {
	rib, from := r.Ribs[i], r.Frame.Ribs[i]
	out := bentRib{Rib: rib.Name, Relax: fixed(none), Station: fixed(from.Station), Width: fixed(2 * from.Section.HalfBreadth), Push: fixed(rib.Push),
		Stiffness: fixed(rib.Stiff), Stress: fixed(rib.Stress), Steam: fixed(math.Round(rib.Minutes)), Arcs: []bentArc{}}
	if rib.Relax > 0 {
		out.Relax = fixed(rib.Relax)
	}
	for _, a := range rib.Arcs {
		out.Arcs = append(out.Arcs, bentArc{a.Name, fixed(a.Radius), fixed(a.Free), fixed(a.Form), fixed(a.Ratio), fixed(a.OnForm), fixed(100 * a.Outer), fixed(100 * a.Inner)})
	}
	return out
}

func trialOf(r *bend.Report, out *balance.Without, t balance.Trial, miss float64) trialPart {
	p := trialPart{Set: t.Set, Struts: []strutPart{}}
	if t.Set == "off" {
		p.Miss = fixed(miss)
	}
	for i, s := range r.Frame.Thwarts {
		p.Struts = append(p.Struts, strutPart{balance.Code(i), s.Name, fixed(s.At), fixed(t.In.Struts[i]), out.Struts(i)})
	}
	for i, rib := range r.Frame.Ribs {
		p.Ribs = append(p.Ribs, shiftPart{rib.Name, fixed(t.In.Ribs[i]), fixed(t.Off(rib.Station)), fixed(t.Moved(rib.Station))})
	}
	return p
}
