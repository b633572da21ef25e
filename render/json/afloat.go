package json

import (
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/design"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/water/effort"
	"ribwright/geometry/water/float"
)

// AfloatReport is what a trial on paper found.
type AfloatReport struct {
	Design       Header          `json:"design"`
	Water        waterPart       `json:"water"`
	Weights      []afloatWeight  `json:"weights"`
	Hydrostatics hydrostatics    `json:"hydrostatics"`
	Smooth       *smoothPart     `json:"smooth,omitempty"`
	GZ           []leverPart     `json:"gz"`
	Downflooding significant     `json:"downflooding_deg"` // null where no water comes in
	Effort       []effortPart    `json:"effort"`
	Assumed      assumedPart     `json:"effort_assumes"`
	Findings     []afloatFinding `json:"findings"`
}

type waterPart struct {
	Kind        string      `json:"kind"`
	Temperature significant `json:"temperature_c"`
	Density     significant `json:"density_kg_m3"`
	Viscosity   float64     `json:"viscosity_m2_s"`
}

type afloatWeight struct {
	Name string      `json:"name"`
	Mass significant `json:"mass_kg"`
	X    significant `json:"x_mm"`
	Z    significant `json:"z_mm"`
}

type hydrostatics struct {
	Displacement significant `json:"displacement_kg"`
	Volume       significant `json:"volume_m3"`
	Draft        significant `json:"draft_mm"`
	Trim         significant `json:"trim_deg"` // positive with the bow up
	Freeboard    significant `json:"freeboard_min_mm"`
	FreeboardAt  significant `json:"freeboard_min_at_mm"`
	Wetted       significant `json:"wetted_surface_m2"`
	Waterplane   significant `json:"waterplane_m2"`
	LWL          significant `json:"lwl_mm"`
	BWL          significant `json:"bwl_mm"`
	CB           significant `json:"cb"`
	CP           significant `json:"cp"`
	CM           significant `json:"cm"`
	CWP          significant `json:"cwp"`
	LCB          significant `json:"lcb_mm"`
	LCF          significant `json:"lcf_mm"`
	KB           significant `json:"kb_mm"`
	BM           significant `json:"bm_mm"`
	BML          significant `json:"bml_mm"`
	KG           significant `json:"kg_mm"`
	GM           significant `json:"gm_mm"`
	Moment       significant `json:"moment_to_trim_1mm_n_m"`
}

type smoothPart struct {
	Volume     significant `json:"volume_m3"`
	Draft      significant `json:"draft_mm"`
	Wetted     significant `json:"wetted_surface_m2"`
	Waterplane significant `json:"waterplane_m2"`
	BM         significant `json:"bm_mm"`
	GM         significant `json:"gm_mm"`
}

type leverPart struct {
	Heel significant `json:"heel_deg"`
	GZ   significant `json:"gz_mm"`
}

type effortPart struct {
	Speed    significant `json:"speed_m_s"`
	Froude   significant `json:"froude"`
	Friction significant `json:"friction_n"`
	Form     significant `json:"form_n"`
	Wave     significant `json:"wave_n"`
	Total    significant `json:"total_n"`
	Power    significant `json:"power_w"`
}

type assumedPart struct {
	Form       significant `json:"form_share_of_friction"`
	Efficiency significant `json:"paddle_efficiency"`
}

type afloatFinding struct {
	About    string `json:"about"`
	Text     string `json:"text"`
	Standing string `json:"standing"`
}

// Afloat gathers what a trial on paper found. A table of offsets is of no design: its
// header has no edition and no fingerprint. Heights are above the baseline, places are
// stations from midship, forward positive.
//
// Errors: as HeaderOf.
func Afloat(r *afloat.Report) (*AfloatReport, error) {
	head, err := afloatHeader(r.Boat)
	if err != nil {
		return nil, err
	}
	d := &AfloatReport{
		Design: head,
		Water: waterPart{r.Options.Water.Kind.String(), significant(r.Options.Water.Temperature),
			significant(r.Options.Water.Density), figures(r.Options.Water.Viscosity*1e9) / 1e9},
		Hydrostatics: hydrostaticsOf(r.Rest),
		GZ:           []leverPart{},
		Effort:       effortOf(r.Effort),
		Assumed:      assumedPart{significant(effort.Allowance), significant(effort.Efficiency)},
		Weights:      weightsOf(r), Downflooding: significant(none),
	}
	if s := r.Smooth; s != nil {
		d.Smooth = &smoothPart{significant(s.Volume * 1e-9), significant(s.Draft), significant(s.Wetted * 1e-6), significant(s.Waterplane * 1e-6), significant(s.BM), significant(s.GM)}
	}
	for _, v := range r.Curve.Levers {
		d.GZ = append(d.GZ, leverPart{significant(inDegrees(v.Heel)), significant(v.GZ)})
	}
	if r.Fault == nil {
		d.Downflooding = significant(inDegrees(r.Curve.Flooding))
	}
	for _, f := range r.Findings {
		d.Findings = append(d.Findings, afloatFinding{f.About, f.Text, string(f.Standing)})
	}
	return d, nil
}

func afloatHeader(b aboard.Boat) (Header, error) {
	if b.Frame != nil {
		return HeaderOf(b.Frame.Design)
	}
	return Header{Title: b.Title, Slug: (&design.Design{Title: b.Title}).Slug()}, nil
}

func weightsOf(r *afloat.Report) []afloatWeight {
	out := []afloatWeight{}
	for _, i := range r.Entries() {
		l := i.Load()
		out = append(out, afloatWeight{i.Name, significant(l.Mass), significant(l.At.X), significant(l.At.Z)})
	}
	return out
}

func hydrostaticsOf(o float.Hydrostatics) hydrostatics {
	return hydrostatics{
		significant(o.Displacement), significant(o.Volume * 1e-9), significant(o.Draft), significant(inDegrees(o.Trim)),
		significant(o.Freeboard.Least), significant(o.Freeboard.At.X), significant(o.Wetted * 1e-6), significant(o.Waterplane * 1e-6),
		significant(o.LWL), significant(o.BWL), significant(o.CB), significant(o.CP), significant(o.CM), significant(o.CWP),
		significant(o.LCB), significant(o.LCF), significant(o.KB), significant(o.BM), significant(o.BML), significant(o.KG), significant(o.GM),
		significant(o.MomentToTrim / 1000),
	}
}

func effortOf(all []effort.Point) []effortPart {
	out := []effortPart{}
	for _, p := range all {
		out = append(out, effortPart{significant(p.Speed), significant(p.Froude), significant(p.Friction), significant(p.Form), significant(p.Wave), significant(p.Total), significant(p.Power)})
	}
	return out
}
