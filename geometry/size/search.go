package size

import (
	"math"
	"slices"
)

// Aim is what a search makes least.
type Aim int

// The aims.
const (
	Smallest Aim = iota // length times beam times depth
	Easiest             // the effort at the brief's speed
)

// search looks for the boat that meets every target and has the least of its aim.
type search struct {
	c       *Case
	free    []Freed
	targets []Target
	aim     Aim
	looks   int
	memory  map[string]look
}

// look is one boat of a search.
type look struct {
	x       []float64 // by free value, 0 at its lowest and 1 at its highest
	cost    float64
	margins []float64 // by target
	bad     bool      // it cannot be drawn or floated
}

// worst is how far the worst target is missed, 0 when all are met.
func (l look) worst() float64 {
	w := 0.0
	for _, m := range l.margins {
		w = math.Max(w, -m)
	}
	if l.bad {
		return math.Inf(1)
	}
	return w
}

// The weight of a missed target against the cost, which is a logarithm: far more
// than any real trade between them.
const missing = 50

func (l look) merit() float64 { return l.cost + missing*l.worst() }

// at judges the boat at x.
func (s *search) at(x []float64) look {
	key := ""
	for _, v := range x {
		key += string(rune(int(v*1e6)+32)) + "|"
	}
	if l, ok := s.memory[key]; ok {
		return l
	}
	s.looks++
	l := look{x: slices.Clone(x)}
	if err := s.settle(x); err != nil {
		l.bad = true
		l.cost = math.Inf(1)
		s.c.forget()
	} else {
		l.cost = s.cost()
		for _, t := range s.targets {
			l.margins = append(l.margins, t.margin(s.c.run.Number(t.Name)))
		}
	}
	s.memory[key] = l
	return l
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
	mostLooks = 400
)

// from improves a boat step by step: slopes by looking beside it, then the best
// boat in reach if all were straight lines. A step that does not help is tried
// half as long.
func (s *search) from(x []float64) look {
	best := s.at(x)
	reach := firstStep
	for reach > lastStep && s.looks < mostLooks {
		if best.bad {
			return best
		}
		next, ok := s.step(best, reach)
		if !ok {
			return best
		}
		l := s.at(next)
		if l.merit() < best.merit()-1e-7 {
			moved := 0.0
			for i := range l.x {
				moved = math.Max(moved, math.Abs(l.x[i]-best.x[i]))
			}
			best = l
			if moved < lastStep {
				return best
			}
			reach = math.Min(2*reach, firstStep)
			continue
		}
		reach /= 3
	}
	return best
}

// step solves the straightened problem in reach of a boat. The last unknown is how
// far targets are missed.
func (s *search) step(at look, reach float64) ([]float64, bool) {
	n := len(at.x)
	slopes := make([]look, n)
	for i := range slopes {
		y := slices.Clone(at.x)
		side := probe
		if y[i]+side > 1 {
			side = -probe
		}
		y[i] += side
		slopes[i] = s.at(y)
		if slopes[i].bad {
			return nil, false
		}
	}
	d := func(i int, to, from float64) float64 { return (to - from) / (slopes[i].x[i] - at.x[i]) }
	c, lo, hi := make([]float64, n+1), make([]float64, n+1), make([]float64, n+1)
	for i := range n {
		c[i] = d(i, slopes[i].cost, at.cost)
		lo[i], hi[i] = math.Max(-at.x[i], -reach), math.Min(1-at.x[i], reach)
	}
	c[n], hi[n] = missing, 1e3
	var in []half
	for j, m := range at.margins {
		h := half{a: make([]float64, n+1), b: m}
		for i := range n {
			h.a[i] = -d(i, slopes[i].margins[j], m)
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
func (s *search) best(own []float64) look {
	out := s.from(own)
	for _, start := range []float64{0.5, 0.85, 0.15} {
		if out.worst() <= met {
			return out
		}
		x := make([]float64, len(own))
		for i := range x {
			x[i] = start
		}
		s.looks = 0
		if l := s.from(x); l.merit() < out.merit() {
			out = l
		}
	}
	return out
}

// met is the share of a limit by which a target may be missed and still counts as
// met: a tenth of a millimetre on a draft of 100 mm.
const met = 1e-3

// forget makes the case begin again from the family's guesses, after a boat that
// could not be floated.
func (c *Case) forget() {
	fixed := map[string]float64{}
	for _, n := range c.Family.Program.Names() {
		if c.run.IsFixed(n) {
			fixed[n] = c.run.Number(n)
		}
	}
	if c.restart() != nil {
		return
	}
	for n, v := range fixed {
		_ = c.Set(n, v) // it was set before
	}
}
