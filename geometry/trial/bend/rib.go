package bend

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/altered"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/trial/pushed"
	"ribwright/geometry/wood/timber"
)

// Rib is how one rib is bent and set. Widths are between its heads, to the middle of
// the thickness, mm.
type Rib struct {
	Name    string
	Hot     float64    // width to which it is bent hot, and held until it has cooled; not above 0 when its heads would cross
	Relax   float64    // width to which it is relaxed before it is fitted or pegged; 0 when there is no neutral set
	Held    []Sprung   // the same width by what the board springs back, in the steps of Report.Test
	Point   float64    // how much wider it stands free for each hundredth of springback more, mm
	Push    float64    // on each gunwale in its place, N
	Stress  float64    // in its place, N/mm2
	Stiff   float64    // of its heads as it stands free, N per mm of opening
	Minutes float64    // in steam
	Arcs    []Arc      // from the keel outward
	Parts   []string   // names of the half section's bends, straight ones too
	Pushed  pushed.Rib // what it does when it is only pushed into its mortises
}

// Where names the part of the half section where a rib stands off it.
func (r Rib) Where(a pushed.Apart) string {
	if a.Bend < len(r.Parts) {
		return r.Parts[a.Bend]
	}
	return "section"
}

// Arc is one bend of a rib. Radii are at mid-thickness, mm.
type Arc struct {
	Bend         int     // its number in the half section
	Name         string  // bottom, bilge, side (bottom and bilge in one), topside
	Radius       float64 // in the boat
	Free         float64 // standing free, relaxed; +Inf when straight
	Form         float64 // as it is bent hot, on a form or by hand; +Inf when straight
	Over         float64 // radians that it is bent hot beyond what it turns through in the boat
	Ratio        float64 // inner radius over thickness in the boat
	OnForm       float64 // the same as it is bent hot, where the wood bends most; never more than Ratio
	Outer, Inner float64 // strains there: stretch of the outer face, shortening of the inner one, mm per mm
	Band         timber.Band
}

func arcNames(s hull.Section) []string {
	names := []string{"bottom", "bilge", "topside"}
	switch {
	case s.Merged:
		names = []string{"side", "topside"}
	case len(s.Half) > 0 && s.Half[0].Radius == s.Shape.BilgeRadius:
		names = names[1:]
	}
	return names[:min(len(s.Half), len(names))]
}

func (r *Report) ribs(loose []pushed.Rib) {
	d := r.Frame.Design
	backs := backs(d.Bending.Springback)
	r.Ribs = make([]Rib, 0, len(r.Frame.Ribs))
	for i, rib := range r.Frame.Ribs {
		push := r.AtRest.Ribs[i]
		out := Rib{Name: rib.Name, Push: push, Stress: r.Boat.RibStress(i, r.AtRest), Stiff: r.Boat.Model.RibStiffness(i), Minutes: timber.SteamTime(rib.Thickness, d.Bending.Moisture, d.Bending.Stock == design.KilnDried)}
		if r.Boat.Why == nil {
			out.Relax = r.Boat.Width(i)
		}
		out.Pushed, out.Parts = loose[i], arcNames(rib.Section)
		out.Arcs = make([]Arc, 0, len(out.Parts))
		for j, b := range rib.Section.Half {
			if b.Radius > 0 && j < len(out.Parts) {
				out.Arcs = append(out.Arcs, r.arc(i, j, out.Parts[j], b))
			}
		}
		out.Hot, out.Point = sprung(rib.Section.Half, out.Arcs, d.Bending.Springback)
		out.Held = held(rib.Section.Half, out.Arcs, backs)
		r.Ribs = append(r.Ribs, out)
	}
	r.judgeRibs()
	r.loose()
	r.dry()
}

// Loose returns all ribs as they are when they are only pushed in, from aft forward.
func (r *Report) Loose() []pushed.Rib {
	out := make([]pushed.Rib, len(r.Ribs))
	for i, rib := range r.Ribs {
		out[i] = rib.Pushed
	}
	return out
}

// loose notes the ribs of which it is not known what they do when they are only pushed
// in.
func (r *Report) loose() {
	for _, rib := range r.Ribs {
		if why := rib.Pushed.Why; why != nil {
			r.note(finding.Finding{About: "rib " + rib.Name + " only pushed in", Text: why.Error(), Verdict: finding.Noted, Standing: finding.Arithmetic,
				Cure: "bend all of it by hand while it is hot; it will not find its place by itself"})
		}
	}
}

func (r *Report) arc(i, j int, name string, b curve.Bend) Arc {
	t, d := r.Frame.Ribs[i].Thickness, r.Frame.Design
	a := Arc{Bend: j, Name: name, Radius: b.Radius, Free: r.Boat.FreeRadius(i, j)}
	a.Form = timber.FormRadius(a.Free, d.Bending.Springback)
	a.Over = b.Length/a.Form - b.Sweep
	a.Ratio = (a.Radius - t/2) / t
	a.OnForm = math.Min(a.Ratio, (a.Form-t/2)/t)
	// However slight the bend, a rib must keep it by itself: never bent dry.
	a.Band = min(r.Boat.Ribs.Band(a.OnForm), timber.Steamed)
	a.Outer, a.Inner = timber.Strains(math.Max(a.OnForm, 0), a.Band == timber.Strap && r.strapped())
	return a
}

// judgeRibs notes one finding for each run of neighbouring ribs whose bends of
// one name have one verdict.
func (r *Report) judgeRibs() {
	for _, name := range []string{"bottom", "bilge", "side", "topside"} {
		for i := 0; i < len(r.Ribs); i++ {
			first := r.Ribs[i].arc(name)
			if first == nil {
				continue
			}
			from := i
			for ; i+1 < len(r.Ribs); i++ {
				if a := r.Ribs[i+1].arc(name); a == nil || a.Band != first.Band {
					break
				}
			}
			r.note(r.judgeRun(name, from, i))
		}
	}
}

func (r Rib) arc(name string) *Arc {
	if i := slices.IndexFunc(r.Arcs, func(a Arc) bool { return a.Name == name }); i >= 0 {
		return &r.Arcs[i]
	}
	return nil
}

// judgeRun judges the ribs from first to last by the tightest of their bends.
func (r *Report) judgeRun(name string, first, last int) finding.Finding {
	tight := math.Inf(1)
	for _, rib := range r.Ribs[first : last+1] {
		tight = math.Min(tight, rib.arc(name).OnForm)
	}
	called := "rib " + r.Ribs[first].Name
	if last > first {
		called = "ribs " + r.Ribs[first].Name + "-" + r.Ribs[last].Name
	}
	f := steamed(called+", "+name, r.Boat.Ribs, tight, r.strapped())
	if !f.Verdict.Passes() {
		f.Cure, f.Mend = r.cureRibs(name, first, last, f)
	}
	return f
}

// cureRibs says how much thinner the ribs or how much larger the radius must be
// for the wood to take it.
func (r *Report) cureRibs(name string, first, last int, f finding.Finding) (string, finding.Change) {
	thinner, larger := 0.0, 0.0
	for i := first; i <= last; i++ {
		t, a := r.Frame.Ribs[i].Thickness, r.Ribs[i].arc(name)
		mid := (a.OnForm + 0.5) * t // radius at mid-thickness where it is tightest
		thinner = math.Max(thinner, t-mid/(f.Limit+0.5))
		larger = math.Max(larger, ((f.Limit+0.5)*t/mid-1)*a.Radius)
	}
	cure := ""
	switch {
	case f.Verdict == finding.NoStrap && !r.OnForms():
		cure = "on forms with a strap (bending.method, bending.strap), or "
	case f.Verdict == finding.NoStrap:
		cure = "a strap (bending.strap), or "
	}
	cure += fmt.Sprintf("%.1f mm thinner, or ", math.Ceil(thinner*10)/10)
	mend := altered.RibThickness.Mend(r.Frame.Design, -thinner)
	if name == "bilge" {
		return cure + fmt.Sprintf("bilge radius %.0f mm larger there", math.Ceil(larger)), mend
	}
	return cure + fmt.Sprintf("%s rounder there, by %.0f mm of radius", name, math.Ceil(larger)), mend
}
