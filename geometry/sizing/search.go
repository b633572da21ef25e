package sizing

import (
	"math"
	"slices"

	"ribwright/geometry/sizing/formula"
)

// Aim is what a search makes least.
type Aim int

// The aims.
const (
	Smallest Aim = iota // length times beam times depth
	Easiest             // the effort at the brief's speed
)

// Aims lists them.
func Aims() []Aim { return []Aim{Smallest, Easiest} }

// String returns "smallest" or "easiest".
func (a Aim) String() string { return [...]string{"smallest", "easiest"}[a] }

// search looks for the boat that meets every target and has the least of its aim.
type search struct {
	c       *Case
	free    []FreeValue
	asked   []Target // as the designer and the family have them
	targets []Target // as tightened
	aim     Aim
	tried   int
	memory  map[string]candidate

	finished map[string]finished // by free values
}

// candidate is one boat of a search.
type candidate struct {
	x       []float64 // by free value, 0 at its lowest and 1 at its highest
	cost    float64
	margins []float64 // by target
	bad     bool      // it cannot be drawn or floated
}

// worst is how far the worst target is missed, 0 when all are met.
func (l candidate) worst() float64 {
	if l.bad {
		return math.Inf(1)
	}
	w := 0.0
	for _, m := range l.margins {
		w = math.Max(w, -m)
	}
	return w
}

// The weight of a missed target against the cost, which is a logarithm: far more
// than any real trade between them.
const missing = 50

func (l candidate) merit() float64 { return l.cost + missing*l.worst() }

// at judges the boat at x.
func (s *search) at(x []float64) candidate {
	key := ""
	for _, v := range x {
		key += string(rune(int(v*1e6)+32)) + "|"
	}
	if l, ok := s.memory[key]; ok {
		return l
	}
	s.tried++
	l := candidate{x: slices.Clone(x)}
	if s.settle(x) != nil {
		l.bad, l.cost = true, math.Inf(1)
		s.c.forget()
	} else {
		l.cost = s.cost()
		l.margins, l.bad = s.margins()
	}
	s.memory[key] = l
	return l
}

// margins judges the boat that the case has settled on by every target.
func (s *search) margins() (out []float64, bad bool) {
	checks, err := s.c.run.Checks()
	for _, t := range s.targets {
		m, _ := s.judge(t, checks)
		out = append(out, m)
	}
	return out, err != nil
}

// judge tells how far the case is on the right side of a target, as a share of scale.
func (s *search) judge(t Target, checks []formula.Check) (margin, scale float64) {
	if !t.Rule {
		return t.margin(s.c.run.Number(t.Name)), t.scale()
	}
	v := checkOf(checks, t.Name)
	if t.late && v.Name == "" {
		return 1, 1 // not tried yet
	}
	t.Limit, t.Dim = v.Limit, v.Dim
	return (v.Margin() + t.ease) / t.scale(), t.scale()
}

// checkOf is the check of a name, which the family is known to have.
func checkOf(checks []formula.Check, name string) (v formula.Check) {
	if i := slices.IndexFunc(checks, func(v formula.Check) bool { return v.Name == name }); i >= 0 {
		v = checks[i]
	}
	return v
}

func (s *search) settle(x []float64) error {
	for i, f := range s.free {
		if err := s.c.Set(f.Name, f.Lo+(f.Hi-f.Lo)*x[i]); err != nil {
			return err
		}
	}
	return s.c.Settle()
}

// cost is the logarithm of what is to be least, so that a hundredth is a hundredth
// whatever the size of the boat.
func (s *search) cost() float64 {
	r := s.c.run
	if s.aim == Easiest {
		return math.Log(math.Max(1e-9, r.Number("effort")))
	}
	return math.Log(r.Number("hull.length") * r.Number("hull.beam") * r.Number("hull.depth"))
}

// The steps of a search, as shares of the limits.
const (
	probe     = 0.01 // for slopes: wide enough for what is left unsettled not to count
	firstStep = 0.3
	lastStep  = 2e-4
	mostTried = 400
)

// from improves a boat step by step: slopes by looking beside it, then the best
// boat in reach if all were straight lines. A step that does not help is bent by
// what it missed, and if that does not help either, tried a third as long.
func (s *search) from(x []float64) candidate {
	best := s.at(x)
	reach := firstStep
	for reach > lastStep && s.tried < mostTried && !best.bad {
		n, ok := s.slopesAt(best)
		if !ok {
			return best
		}
		l, ok := s.better(best, n, reach)
		if !ok {
			reach /= 3
			continue
		}
		moved := 0.0
		for i := range l.x {
			moved = math.Max(moved, math.Abs(l.x[i]-best.x[i]))
		}
		best = l
		if moved < lastStep {
			return best
		}
		reach = math.Min(2*reach, firstStep)
	}
	return best
}

// better takes a step from a boat; ok is false when none in reach is better.
func (s *search) better(best candidate, n slopes, reach float64) (candidate, bool) {
	bend := make([]float64, len(best.margins))
	for range 2 {
		next, ok := s.step(best, n, reach, bend)
		if !ok {
			return best, false
		}
		l := s.at(next)
		if l.merit() < best.merit()-1e-7 {
			return l, true
		}
		if l.bad {
			return best, false
		}
		for j, m := range l.margins {
			straight := best.margins[j]
			for i := range next {
				straight += n.margins[j][i] * (next[i] - best.x[i])
			}
			bend[j] = m - straight
		}
	}
	return best, false
}

// slopes say how cost and margins change from a boat on, for one whole way from limit
// to limit.
type slopes struct {
	cost    []float64   // by free value
	margins [][]float64 // by target and free value
}

// slopesAt looks beside a boat; ok is false when nothing there can be drawn.
func (s *search) slopesAt(at candidate) (slopes, bool) {
	n := slopes{make([]float64, len(at.x)), make([][]float64, len(at.margins))}
	for j := range n.margins {
		n.margins[j] = make([]float64, len(at.x))
	}
	for i := range at.x {
		side := probe
		if at.x[i]+side > 1 {
			side = -probe
		}
		l, by := s.beside(at, i, side)
		if l.bad || by == 0 {
			l, by = s.beside(at, i, -side)
		}
		if l.bad || by == 0 {
			return n, false
		}
		n.cost[i] = (l.cost - at.cost) / by
		for j := range n.margins {
			n.margins[j][i] = (l.margins[j] - at.margins[j]) / by
		}
	}
	return n, true
}

// beside judges the boat with one free value moved to the side, and tells how far it was.
func (s *search) beside(at candidate, i int, side float64) (candidate, float64) {
	x := slices.Clone(at.x)
	x[i] = math.Max(0, x[i]+side)
	return s.at(x), x[i] - at.x[i]
}

// step solves the straightened problem in reach of a boat, with the margins bent
// by what is known of their curves. The last unknown is how far targets are missed.
func (s *search) step(at candidate, around slopes, reach float64, bend []float64) ([]float64, bool) {
	n := len(at.x)
	c, lo, hi := make([]float64, n+1), make([]float64, n+1), make([]float64, n+1)
	for i := range n {
		c[i] = around.cost[i]
		lo[i], hi[i] = math.Max(-at.x[i], -reach), math.Min(1-at.x[i], reach)
	}
	c[n], hi[n] = missing, 1e3
	var in []half
	for j, m := range at.margins {
		h := half{a: make([]float64, n+1), b: m + bend[j]}
		for i := range n {
			h.a[i] = -around.margins[j][i]
		}
		h.a[n] = -1
		in = append(in, h)
	}
	move, ok := linear(c, in, lo, hi)
	if !ok {
		return nil, false
	}
	out := slices.Clone(at.x)
	for i := range out {
		out[i] = math.Max(0, math.Min(1, out[i]+move[i]))
	}
	return out, true
}

// best searches from the family's own boat, and from the middle and the ends of
// the limits when that does not meet every target.
func (s *search) best(own []float64) candidate {
	out := s.from(own)
	for _, start := range []float64{0.5, 0.85, 0.15} {
		if out.worst() <= met {
			return out
		}
		s.tried = 0
		if l := s.from(slices.Repeat([]float64{start}, len(own))); l.merit() < out.merit() {
			out = l
		}
	}
	return out
}

// met is the share of a limit by which a target may be missed and still counts as
// met: a tenth of a millimetre on a draft of 100 mm.
const met = 1e-3
