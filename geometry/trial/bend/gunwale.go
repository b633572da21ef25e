package bend

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/finding"
	"ribwright/geometry/trial/balance"
	"ribwright/geometry/wood/grain"
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

	EdgeSets []EdgeSet // of the ends where one is sprung, the bow first
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
	part := fmt.Sprintf("gunwale ply of %.1f mm", out.Ply)
	if b.Glue.Plies == 1 {
		part = fmt.Sprintf("gunwale of %.1f mm, in plan", out.Ply)
	}
	ply := byStress(part, b.Wood, out.PlyBend, finding.TooTight)
	r.noteCure(ply, "plies of %.1f mm or thinner, glued bent", math.Floor(out.Ply*ply.Limit/out.PlyBend*10)/10)
	for i, set := range []hull.EdgeSet{r.Frame.Hull.Sheer.BowSet, r.Frame.Hull.Sheer.SternSet} {
		if set.Sprung() > 0 {
			s := EdgeSet{End: [2]string{"bow", "stern"}[i], EdgeSet: set, Stress: b.Wood.MOE * set.Strain(g.Height)}
			f := byStress("edge-set, "+s.End, b.Wood, s.Stress, finding.TooTight)
			less := math.Ceil(s.Sprung() * (1 - f.Limit/s.Stress))
			s.TooTight = !r.noteCure(f, "%.0f mm less rise, or begin it nearer midship, or saw or laminate %.0f mm of it into the gunwales (gunwale.edge_set_made)", less, less+float64(r.Frame.Design.Gunwale.EdgeSetMade))
			out.EdgeSets = append(out.EdgeSets, s)
		}
	}
	r.madeGrain()
	r.noteCure(byStress(fmt.Sprintf("gunwale at rest, station %.0f mm", out.Rest.X), b.Wood, out.Rest.Sum(), finding.Weak),
		"more plies glued bent, a thinner gunwale, or an edge-set that begins nearer midship or is made into them (gunwale.edge_set_made)")
	r.Gunwale = out
}

// madeGrain judges how far the grain of a board runs out where the sheer is sawn into it.
func (r *Report) madeGrain() {
	s := r.Frame.Hull.Sheer
	slope := math.Max(s.BowSet.MadeSlope(), s.SternSet.MadeSlope()) * math.Cos(r.Frame.Gunwale.Tilt)
	if slope == 0 {
		return
	}
	f := finding.Finding{About: "slope of grain where the sheer is sawn into the gunwales, 1 in", Verdict: finding.Holds, Standing: finding.Common,
		Measure: finding.Measure{Value: 1 / slope, Limit: 1 / math.Tan(grain.Short)}}
	if !(f.Value >= f.Limit) {
		f.Verdict, f.Cure = finding.Caution, "laminate it from strips on a form instead of sawing"
	}
	r.note(f)
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

// What general joinery texts ask for, mm, and shares of the stock.
const (
	leastMouth = 4.5  // wood beside a mortise's mouth
	mostDepth  = 0.75 // of a blind mortise over the stock's depth; from memory
	leastNext  = 25.0 // wood to the next mortise; common practice, no source
)

// judgeWalls holds walls, depth and spacing to what joinery texts ask.
func (r *Report) judgeWalls() {
	g := &r.Frame.Gunwale
	thin := slices.MinFunc(g.Mortises, func(a, b frame.Mortise) int { return cmp.Compare(a.Wall, b.Wall) })
	close := slices.MinFunc(g.Mortises[:len(g.Mortises)-1], func(a, b frame.Mortise) int { return cmp.Compare(a.ToNext, b.ToNext) })
	r.note(sized("wood beside mortise "+thin.Rib+" at its mouth", thin.Wall, leastMouth, "a wider gunwale or thinner ribs"))
	r.note(sized("wood between mortises, from "+close.Rib, close.ToNext, leastNext, "a wider ribs.pitch"))
	under := g.Height - thin.Depth
	r.note(sized("wood over the mortises", under, (1-mostDepth)*g.Height, "a shallower mortise (ribs.mortise_depth)"))
}

// sized judges a size in mm that must not be less than a limit.
func sized(part string, value, limit float64, cure string) finding.Finding {
	f := finding.Finding{About: part, Verdict: finding.Holds, Standing: finding.Common, Measure: finding.Measure{Value: value, Limit: limit, Unit: "mm"}}
	if !(value >= limit) {
		f.Verdict, f.Cure = finding.Weak, cure
	}
	return f
}

// judgeScarfs holds the stress at every scarf to what is left of the strength
// there: one ply is joined, the others run through.
func (r *Report) judgeScarfs() {
	g, d := &r.Frame.Gunwale, r.Frame.Design
	n := float64(d.Gunwale.Plies)
	kept := (n - 1 + scarfKept(d.Gunwale.ScarfSlope)) / n
	for _, s := range g.Scarfs {
		stress := r.Boat.RestAt(r.AtRest, g.StationOf(s.Middle)).Sum() / kept
		r.noteCure(byStress(fmt.Sprintf("gunwale at the scarf at %.0f mm", s.Middle), r.Boat.Wood, stress, finding.Weak),
			"a scarf nearer the end, or a longer slope (gunwale.scarf_slope)")
	}
}
