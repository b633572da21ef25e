package bend

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/finding"
	"ribwright/geometry/trial/balance"
	"ribwright/geometry/wood/timber"
)

// Slot is what a mortise leaves of the gunwale.
type Slot struct {
	Rib    string
	Flat   float64 // share left of the section modulus against bending in plan
	Tall   float64 // share left of it against bending in the tall way
	Stress float64 // there at rest, N/mm2
}

// What general joinery texts ask for, mm, and shares of the stock.
const (
	leastMouth = 4.5  // wood beside a mortise's mouth
	mostDepth  = 0.75 // of a blind mortise over the stock's depth; from memory
	leastNext  = 25.0 // wood to the next mortise; common practice, no source
)

// left returns the shares of the section modulus that a slot of the given width
// and depth in the middle of the underside leaves of a stick width by height, all
// mm: about its weak axis, and about the level one through what is left.
//
// How: the slot's own second moment is taken off; about the level axis both are
// moved to the middle of what is left. Beam theory.
func left(width, height, slot, depth float64) (flat, tall float64) {
	flat = 1 - depth*math.Pow(slot, 3)/(height*math.Pow(width, 3))
	area := width*height - slot*depth
	middle := (width*height*height/2 - slot*depth*depth/2) / area
	second := width*math.Pow(height, 3)/12 + width*height*math.Pow(middle-height/2, 2) -
		slot*math.Pow(depth, 3)/12 - slot*depth*math.Pow(middle-depth/2, 2)
	return flat, second / math.Max(middle, height-middle) / (width * height * height / 6)
}

func (r *Report) slots() {
	g := &r.Frame.Gunwale
	rests := r.Boat.Rests(r.AtRest)
	first := g.Mortises[0]
	r.SquareTenon = timber.SquareTenon(first.Length, first.Width, float64(r.Frame.Design.Ribs.Thickness))
	var worst Slot
	for _, m := range g.Mortises {
		s := Slot{Rib: m.Rib}
		s.Flat, s.Tall = left(g.Width, g.Height, m.Width, m.Depth)
		at := restAt(rests, m.Station)
		s.Stress = at.Plan/s.Flat + at.Edge/s.Tall
		r.Slots = append(r.Slots, s)
		if s.Stress >= worst.Stress {
			worst = s
		}
	}
	f := byStress("gunwale at mortise "+worst.Rib, r.Boat.Wood, worst.Stress, finding.Weak)
	if !f.Verdict.Passes() {
		f.Cure = "a shallower mortise (ribs.mortise_depth), or more plies glued bent"
	}
	r.note(f)
	r.judgeWalls()
	r.judgeScarfs(rests)
}

// restAt returns the stress at the node nearest to the station x.
func restAt(rests []balance.Rest, x float64) balance.Rest {
	best := rests[0]
	for _, s := range rests {
		if math.Abs(s.X-x) < math.Abs(best.X-x) {
			best = s
		}
	}
	return best
}

// judgeWalls holds walls, depth and spacing to what joinery texts ask.
func (r *Report) judgeWalls() {
	g := &r.Frame.Gunwale
	wall, next := math.Inf(1), math.Inf(1)
	var thin, close frame.Mortise
	for i, m := range g.Mortises {
		if m.Wall < wall {
			wall, thin = m.Wall, m
		}
		if i+1 < len(g.Mortises) && m.ToNext < next {
			next, close = m.ToNext, m
		}
	}
	r.note(sized("wood beside mortise "+thin.Rib, wall, leastMouth, "a wider gunwale or thinner ribs"))
	r.note(sized("wood between mortises, from "+close.Rib, next, leastNext, "a wider ribs.pitch"))
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
func (r *Report) judgeScarfs(rests []balance.Rest) {
	g, d := &r.Frame.Gunwale, r.Frame.Design
	n := float64(d.Gunwale.Plies)
	kept := (n - 1 + scarfKept(d.Gunwale.ScarfSlope)) / n
	for _, s := range g.Scarfs {
		stress := restAt(rests, g.Line.Station(s.Middle)).Sum() / kept
		f := byStress(fmt.Sprintf("gunwale at the scarf at %.0f mm", s.Middle), r.Boat.Wood, stress, finding.Weak)
		if !f.Verdict.Passes() {
			f.Cure = "a scarf nearer the end, or a longer slope (gunwale.scarf_slope)"
		}
		r.note(f)
	}
}
