// Package afloat writes what a trial on paper found: as JSON for other programs
// and as a page for a terminal. The names of the JSON fields are a promise; they
// are added to, never changed. Lengths end in _mm, heights are above the
// baseline, places are stations from midship, forward positive.
package afloat

import (
	"encoding/json"
	"io"
	"math"

	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/water/effort"
	"ribwright/geometry/water/float"
)

type document struct {
	Design       string       `json:"design"`
	Water        waterFields  `json:"water"`
	Weights      []weight     `json:"weights"`
	Hydrostatics hydrostatics `json:"hydrostatics"`
	Smooth       *comparison  `json:"smooth,omitempty"`
	GZ           []lever      `json:"gz"`
	Downflooding *number      `json:"downflooding_deg"`
	Effort       []point      `json:"effort"`
	Assumed      assumed      `json:"effort_assumes"`
	Findings     []finding    `json:"findings"`
}

type waterFields struct {
	Kind        string  `json:"kind"`
	Temperature number  `json:"temperature_c"`
	Density     number  `json:"density_kg_m3"`
	Viscosity   float64 `json:"viscosity_m2_s"`
}

type weight struct {
	Name string `json:"name"`
	Mass number `json:"mass_kg"`
	X    number `json:"x_mm"`
	Z    number `json:"z_mm"`
}

type hydrostatics struct {
	Displacement number `json:"displacement_kg"`
	Volume       number `json:"volume_m3"`
	Draft        number `json:"draft_mm"`
	Trim         number `json:"trim_deg"` // positive with the bow up
	Freeboard    number `json:"freeboard_min_mm"`
	FreeboardAt  number `json:"freeboard_min_at_mm"`
	Wetted       number `json:"wetted_surface_m2"`
	Waterplane   number `json:"waterplane_m2"`
	LWL          number `json:"lwl_mm"`
	BWL          number `json:"bwl_mm"`
	CB           number `json:"cb"`
	CP           number `json:"cp"`
	CM           number `json:"cm"`
	CWP          number `json:"cwp"`
	LCB          number `json:"lcb_mm"`
	LCF          number `json:"lcf_mm"`
	KB           number `json:"kb_mm"`
	BM           number `json:"bm_mm"`
	BML          number `json:"bml_mm"`
	KG           number `json:"kg_mm"`
	GM           number `json:"gm_mm"`
	Moment       number `json:"moment_to_trim_1mm_n_m"`
}

type comparison struct {
	Volume     number `json:"volume_m3"`
	Draft      number `json:"draft_mm"`
	Wetted     number `json:"wetted_surface_m2"`
	Waterplane number `json:"waterplane_m2"`
	BM         number `json:"bm_mm"`
	GM         number `json:"gm_mm"`
}

type lever struct {
	Heel number `json:"heel_deg"`
	GZ   number `json:"gz_mm"`
}

type point struct {
	Speed    number `json:"speed_m_s"`
	Froude   number `json:"froude"`
	Friction number `json:"friction_n"`
	Form     number `json:"form_n"`
	Wave     number `json:"wave_n"`
	Total    number `json:"total_n"`
	Power    number `json:"power_w"`
}

type assumed struct {
	Form       number `json:"form_share_of_friction"`
	Efficiency number `json:"paddle_efficiency"`
}

type finding struct {
	About    string `json:"about"`
	Text     string `json:"text"`
	Standing string `json:"standing"`
}

// number is written to seven figures, which is more than any figure means and
// less than two processors differ by.
type number float64

// MarshalJSON writes the number, null when it is none.
func (v number) MarshalJSON() ([]byte, error) {
	f := float64(v)
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return []byte("null"), nil
	}
	return json.Marshal(figures(f, 7))
}

// figures rounds to a number of significant figures; specks beside everything a
// boat has become zero.
func figures(v float64, n int) float64 {
	if math.Abs(v) < 1e-9 {
		return 0
	}
	k := math.Pow(10, float64(n-1)-math.Floor(math.Log10(math.Abs(v))))
	if k > 1e6 {
		k = 1e6 // no finer than a millionth
	}
	r := math.Round(v*k) / k
	if r == 0 {
		return 0
	}
	return r
}

// Encode writes a report as JSON.
func Encode(w io.Writer, r *afloat.Report) error {
	e := json.NewEncoder(w)
	e.SetIndent("", " ")
	e.SetEscapeHTML(false)
	return e.Encode(gather(r))
}

func gather(r *afloat.Report) document {
	d := document{
		Design: r.Boat.Title,
		Water: waterFields{r.Options.Water.Kind.String(), number(r.Options.Water.Temperature),
			number(r.Options.Water.Density), figures(r.Options.Water.Viscosity*1e9, 7) / 1e9},
		Hydrostatics: rest(r.Rest),
		GZ:           []lever{},
		Effort:       points(r.Effort),
		Assumed:      assumed{number(effort.Allowance), number(effort.Efficiency)},
		Weights:      weights(r),
	}
	if s := r.Smooth; s != nil {
		d.Smooth = &comparison{number(s.Volume * 1e-9), number(s.Draft), number(s.Wetted * 1e-6), number(s.Waterplane * 1e-6), number(s.BM), number(s.GM)}
	}
	for _, v := range r.Curve.Levers {
		d.GZ = append(d.GZ, lever{number(deg(v.Heel)), number(v.GZ)})
	}
	if f := number(deg(r.Curve.Flooding)); r.Fault == nil && !math.IsNaN(float64(f)) {
		d.Downflooding = &f
	}
	for _, f := range r.Findings {
		d.Findings = append(d.Findings, finding{f.About, f.Text, string(f.Standing)})
	}
	return d
}

func weights(r *afloat.Report) []weight {
	out := []weight{}
	for _, i := range r.Entries() {
		l := i.Load()
		out = append(out, weight{i.Name, number(l.Mass), number(l.At.X), number(l.At.Z)})
	}
	return out
}

func rest(o float.Hydrostatics) hydrostatics {
	return hydrostatics{
		number(o.Displacement), number(o.Volume * 1e-9), number(o.Draft), number(deg(o.Trim)),
		number(o.Freeboard.Least), number(o.Freeboard.At.X), number(o.Wetted * 1e-6), number(o.Waterplane * 1e-6),
		number(o.LWL), number(o.BWL), number(o.CB), number(o.CP), number(o.CM), number(o.CWP),
		number(o.LCB), number(o.LCF), number(o.KB), number(o.BM), number(o.BML), number(o.KG), number(o.GM),
		number(o.MomentToTrim / 1000),
	}
}

func points(all []effort.Point) []point {
	out := []point{}
	for _, p := range all {
		out = append(out, point{number(p.Speed), number(p.Froude), number(p.Friction), number(p.Form), number(p.Wave), number(p.Total), number(p.Power)})
	}
	return out
}

func deg(a float64) float64 { return a * 180 / math.Pi }
