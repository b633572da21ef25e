package bend

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/hull"
	"ribwright/geometry/finding"
	"ribwright/geometry/trial/balance"
	"ribwright/geometry/wood/timber"
)

// Gunwale is how the gunwales are bent and what they bear at rest.
type Gunwale struct {
	Ply     float64      // thickness that is bent at once, mm: a ply, or the whole width when glued straight
	Radius  float64      // tightest in the boat, mm at mid-width
	At      float64      // station of the tightest, mm
	Form    float64      // radius of the form there, for plies glued on one, mm
	Back    float64      // share of the curvature they are glued in that the plies lose
	OnForm  float64      // the same for plies glued on a form, whether they are or not; 1 for a single ply
	PlyBend float64      // stress in a ply when it is bent to be glued, N/mm2
	Rest    balance.Rest // where the finished gunwale bears most

	EdgeSets []EdgeSet // of the ends that have one, the bow first
}

// EdgeSet is an end where the gunwales are sprung in their tall way, which cannot be
// steamed in: stock that tall buckles sideways first.
type EdgeSet struct {
	End string // bow or stern
	hull.EdgeSet
	Stress   float64 // N/mm2
	TooTight bool    // it breaks, or is near to it
}

func (r *Report) gunwale() {
	b, g := r.Boat, &r.Frame.Gunwale
	out := Gunwale{Ply: g.Width / float64(b.Glue.Plies), Radius: math.Inf(1), Back: b.Glue.Back, OnForm: b.Back(), Rest: b.Worst(r.AtRest)}
	for _, x := range r.AtRest.X {
		if k := math.Abs(b.Curvature(x)); k*out.Radius > 1 {
			out.Radius, out.At = 1/k, x
		}
	}
	// A form is tightened by what springs back, however the builder glues.
	out.Form = out.Radius * (1 - out.OnForm)
	tight := out.Radius
	if b.Glue.Form > 1 {
		tight = out.Form
	}
	out.PlyBend = b.Wood.MOE * out.Ply / (2 * tight)
	r.Gunwale = out
	r.judgePly()
	for _, e := range []struct {
		name string
		set  hull.EdgeSet
	}{{"bow", r.Frame.Hull.Sheer.BowSet}, {"stern", r.Frame.Hull.Sheer.SternSet}} {
		if e.set.Rise > 0 {
			s := EdgeSet{End: e.name, EdgeSet: e.set, Stress: b.Wood.MOE * e.set.Strain(g.Height)}
			s.TooTight = !r.judgeEdgeSet(s)
			r.Gunwale.EdgeSets = append(r.Gunwale.EdgeSets, s)
		}
	}
	f := byStress(fmt.Sprintf("gunwale at rest, station %.0f mm", out.Rest.X), b.Wood, out.Rest.Sum(), finding.Weak)
	if !f.Verdict.Passes() {
		f.Cure = "more plies glued bent, a thinner gunwale, or an edge-set that begins nearer midship"
	}
	r.note(f)
}

func (r *Report) judgePly() {
	g := r.Gunwale
	part := fmt.Sprintf("gunwale ply of %.1f mm", g.Ply)
	if r.Boat.Glue.Plies == 1 {
		part = fmt.Sprintf("gunwale of %.1f mm, in plan", g.Ply)
	}
	f := byStress(part, r.Boat.Wood, g.PlyBend, finding.TooTight)
	if !f.Verdict.Passes() {
		f.Cure = fmt.Sprintf("plies of %.1f mm or thinner, glued bent", math.Floor(g.Ply*f.Limit/g.PlyBend*10)/10)
	}
	r.note(f)
}

// judgeEdgeSet judges the bend in the tall way and reports whether it passes.
func (r *Report) judgeEdgeSet(e EdgeSet) bool {
	f := byStress("edge-set, "+e.End, r.Boat.Wood, e.Stress, finding.TooTight)
	if !f.Verdict.Passes() {
		f.Cure = fmt.Sprintf("%.0f mm less rise, or begin it nearer midship, or cut or laminate the gunwale to the sheer", math.Ceil(e.Rise*(1-f.Limit/e.Stress)))
	}
	r.note(f)
	return f.Verdict.Passes()
}

// scarfKept is the share of its strength that wood keeps across a glued scarf of
// the given slope: 65 % at 5, 80 % at 8, 85 % at 10, 90 % from 12 up. From memory
// of the Wood Handbook.
func scarfKept(slope float64) float64 {
	steps := [][2]float64{{timber.MinScarfSlope, 0.65}, {8, 0.80}, {10, 0.85}, {12, 0.90}}
	for i := 1; i < len(steps); i++ {
		a, b := steps[i-1], steps[i]
		if slope <= b[0] {
			return a[1] + (b[1]-a[1])*(slope-a[0])/(b[0]-a[0])
		}
	}
	return 0.90
}
