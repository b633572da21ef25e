// Package spreader tells what each spreader does while the gunwales are bent round it:
// which way it holds them and how hard, before the plies are glued and after, and where
// the gunwales stand when sticks alone hold them.
//
// The gunwales bend in plan as one or more straight sticks, alike all along. Their lean
// makes the forces up to 2 % larger at 8 degrees, which is left out: the stiffness of
// wood is not known to a tenth.
package spreader

import (
	"fmt"
	"math"

	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/trial/balance"
)

// Holds says which way a spreader holds the gunwales.
type Holds int

// The ways.
const (
	Idle     Holds = iota // the gunwales come to its beam by themselves
	Apart                 // it pushes them apart
	Together              // it pulls them together
)

// String is the word for it.
func (h Holds) String() string { return [...]string{"idle", "apart", "together"}[h] }

// Spreader is one place where the gunwales are held to a beam. Forces are its push on
// each gunwale, N, outward positive: negative where it pulls.
type Spreader struct {
	At    float64 // station, mm
	Along float64 // where that is on the straight stock, mm from midship
	Beam  float64 // between the gunwale lines, mm
	Inner float64 // between the gunwales' inner lower edges, mm

	Holds  Holds
	Force  float64 // when each gunwale bends as one stick of its whole section: what the spreader must be able to hold, for clamped plies hardly slip
	Before float64 // when the plies slip past each other, before they are glued; 0 when a form holds them instead
	After  float64 // once they are glued
	Alone  float64 // beam here when every spreader is a stick that can only push, mm; Beam where the gunwales would find no rest so

	// What its stick keeps from being done while it stands.
	Waits []string // ribs whose heads are not pegged before it is out: no drill comes to them
	Over  []string // cross pieces that are not bolted before it is out
	Strap Strap    // where it pulls
}

// Set is all spreaders of a boat.
type Set struct {
	Spreaders []Spreader // from aft forward
	Ends      [2]float64 // push on each gunwale's after and forward end as one stick, N: negative, the stems hold them together
}

// What makes a spreader idle: without it no tape shows a change of beam and no hand
// feels a force. Our own choice; a spreader is cut and notched to some 3 mm.
const (
	idleBeam  = 2.0  // mm
	idleForce = 10.0 // N, the weight of a kilogram
)

// Of works out the spreaders of a boat.
func Of(b *balance.Boat) *Set {
	f := b.Frame
	p := pins{plan: f.Hull.Plan, stiff: b.Stiff()}
	aft, fore := p.plan.Ends()
	p.add(aft)
	all := f.Design.AllSpreaders()
	for _, s := range all {
		p.add(float64(s.At))
	}
	p.add(fore)
	loose := p.sticksAlone()
	force := p.forces(p.plan)
	out := &Set{Ends: [2]float64{force[0], force[len(force)-1]}}
	before, after := shares(f.Design, b.Glue)
	for i := 1; i <= len(all); i++ {
		x := p.x[i]
		alone, _ := loose.Rise(x)
		s := Spreader{
			At: x, Along: f.Gunwale.OnStock(x), Beam: 2 * p.y[i], Inner: 2 * f.Gunwale.EdgeAt(x, -f.Gunwale.Width/2, 0).Y,
			Holds: p.holds(i, force[i]), Force: force[i], Before: before * force[i], After: after * force[i], Alone: 2 * alone,
		}
		s.reach(&f.Gunwale, f.Thwarts)
		out.Spreaders = append(out.Spreaders, s)
	}
	return out
}

// shares returns what part of a stick's force a spreader bears before gluing and
// after. n plies that slip are together as stiff as one n-th squared of the stick; once
// glued, what they spring back by is what must still be held.
func shares(d *design.Design, g balance.Glue) (before, after float64) {
	n := float64(g.Plies)
	if before = 1 / (n * n); d.Gunwale.Glued == design.GluedOnForm && n > 1 {
		before = 0
	}
	return before, 1 - g.Kept
}

// pins are the places that the gunwale passes, its ends among them.
type pins struct {
	x, y  []float64
	plan  *curve.Elastica
	stiff float64 // of a gunwale, N mm2
}

func (p *pins) add(x float64) {
	y, _ := p.plan.Rise(x)
	p.x, p.y = append(p.x, x), append(p.y, y)
}

func (p *pins) forces(e *curve.Elastica) []float64 {
	out := e.Pushes()
	for i := range out {
		out[i] *= p.stiff
	}
	return out
}

// through bends the gunwale round the pins that are in.
func (p *pins) through(in []bool) (*curve.Elastica, error) {
	var x, y []float64
	for i, ok := range in {
		if ok {
			x, y = append(x, p.x[i]), append(y, p.y[i])
		}
	}
	return curve.NewElastica(x, y)
}

func (p *pins) holds(i int, force float64) Holds {
	if math.Abs(force) < idleForce {
		in := p.all()
		in[i] = false
		if e, err := p.through(in); err == nil {
			if y, _ := e.Rise(p.x[i]); 2*math.Abs(y-p.y[i]) < idleBeam {
				return Idle
			}
		}
	}
	if force < 0 {
		return Together
	}
	return Apart
}

func (p *pins) all() []bool {
	in := make([]bool, len(p.x))
	for i := range in {
		in[i] = true
	}
	return in
}

// sticksAlone bends the gunwale round the spreaders that push. A stick that would have
// to pull falls out, the hardest pull first; one that the gunwale then presses on comes
// back in. It returns the gunwale as designed when that finds no end.
func (p *pins) sticksAlone() *curve.Elastica {
	in := p.all()
	for range 4 * len(in) {
		e, err := p.through(in)
		if err != nil {
			break
		}
		at := p.wrong(e, in)
		if at < 0 {
			return e
		}
		in[at] = !in[at]
	}
	return p.plan
}

// wrong returns the stick that pulls hardest; without one, a stick left out through
// which the gunwale would pass by most; -1 when neither is.
func (p *pins) wrong(e *curve.Elastica, in []bool) int {
	at, worst := -1, -1e-9
	force, pin := p.forces(e), 0
	for i, ok := range in {
		if ok {
			if i > 0 && i < len(in)-1 && force[pin] < worst {
				at, worst = i, force[pin]
			}
			pin++
		}
	}
	if at >= 0 {
		return at
	}
	for i, ok := range in {
		if y, _ := e.Rise(p.x[i]); !ok && y-p.y[i] < worst-1e-6 {
			at, worst = i, y-p.y[i]
		}
	}
	return at
}

// Widest returns the spreader at which the gunwales stand farthest too wide or too
// narrow when sticks alone hold them.
func (s *Set) Widest() Spreader {
	worst := s.Spreaders[0]
	for _, o := range s.Spreaders {
		if math.Abs(o.Alone-o.Beam) > math.Abs(worst.Alone-worst.Beam) {
			worst = o
		}
	}
	return worst
}

// byHand is what a notched stick, a strap or a windlass of cord holds without care, N a
// gunwale: some 40 kg. Our own choice.
const byHand = 400.0

// Findings judges the hardest push and the hardest pull by what hands hold.
func (s *Set) Findings() finding.List {
	const alike = 1 + 1e-9 // two ends that are alike, but for rounding: the first
	var out finding.List
	for _, way := range []Holds{Apart, Together} {
		at := -1
		for i, o := range s.Spreaders {
			if o.Holds == way && (at < 0 || math.Abs(o.Force) > alike*math.Abs(s.Spreaders[at].Force)) {
				at = i
			}
		}
		if at < 0 {
			continue
		}
		o := s.Spreaders[at]
		f := finding.Finding{About: fmt.Sprintf("spreader at station %.0f mm, %s", o.At, way), Verdict: finding.Holds, Standing: finding.Practice,
			Measure: finding.Measure{Value: math.Abs(o.Force), Limit: byHand, Unit: "N", AtMost: true}}
		if f.Value > f.Limit {
			f.Verdict, f.Cure = finding.Caution, "a bolted bar with blocks on both sides of each gunwale there, or thinner plies glued bent"
		}
		out = append(out, f)
	}
	return out
}
