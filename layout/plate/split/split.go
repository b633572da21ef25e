// Package split makes a part that is longer than its stock in pieces, joined by
// scarfs through the thickness.
package split

import (
	"errors"
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/wood/timber"
	"ribwright/layout"
)

// Slope is the slope of every scarf, length over thickness. Common practice, no
// source; the bounds are timber's.
const Slope = 8.0

// engraved is the height of letters on the joints, mm.
const engraved = 5

// Part cuts the part across its grain, or across its longer side where the grain
// does not matter, into n pieces of one length, each longer by the scarfs it
// shares: at each joint both reach past its middle by half the scarf. A line marks
// where the bevel begins, and letters say on which face it is planed.
//
// Errors: n below 2, stock of unknown thickness, or a joint that would meet a
// hole or cross the part twice, with the reason.
func Part(p layout.Part, n int) ([]layout.Part, error) {
	if n < 2 {
		return nil, errors.New("a part is split into two pieces or more")
	}
	scarf, err := timber.ScarfLength(p.Thickness, Slope)
	if err != nil {
		return nil, err
	}
	turn := along(p)
	level := p.Mapped(geometry.Turn(-turn))
	box := level.Outline().Bounds()
	each := box.W() / float64(n)
	if scarf > each/2 {
		return nil, fmt.Errorf("pieces of %.0f mm are too short for scarfs of %.0f mm (1:%g)", each, scarf, Slope)
	}
	var out []layout.Part
	for k := range n {
		s := stretch{from: box.Min.X + float64(k)*each, to: box.Min.X + float64(k+1)*each, scarf: scarf}
		s.first, s.last = k == 0, k == n-1
		piece, err := s.of(level, fmt.Sprintf("%d of %d", k+1, n))
		if err != nil {
			return nil, err
		}
		out = append(out, piece.Mapped(geometry.Turn(turn)))
	}
	return out, nil
}

// along returns the angle that pieces lie end to end in.
func along(p layout.Part) float64 {
	if b := p.Outline().Bounds(); p.Loose && b.H() > b.W() {
		return math.Pi / 2
	} else if p.Loose {
		return 0
	}
	return p.Grain
}

// stretch is one piece of a part that lies along x: from and to are the middles of
// its joints, or its ends.
type stretch struct {
	from, to, scarf float64
	first, last     bool
}

// of cuts the piece out of the part.
func (s stretch) of(p layout.Part, which string) (layout.Part, error) {
	lo, hi := s.from-s.scarf/2, s.to+s.scarf/2
	if s.first {
		lo = math.Inf(-1)
	}
	if s.last {
		hi = math.Inf(1)
	}
	out := p
	out.Name, out.Cut, out.Marks, out.Letters, out.Blank = p.Name+", piece "+which, nil, nil, nil, nil
	for i, c := range p.Cut {
		kept, err := between(c, lo, hi, i < len(p.Cut)-1)
		if err != nil {
			return out, fmt.Errorf("a joint at %.0f mm along %s: %w", s.to-p.Outline().Bounds().Min.X, p.Name, err)
		}
		if kept != nil {
			out.Cut = append(out.Cut, kept)
		}
	}
	for _, m := range p.Marks {
		runs := inside(m, func(q geometry.Point) float64 { return math.Min(q.X-lo, hi-q.X) })
		out.Marks = append(out.Marks, runs...)
	}
	for _, t := range p.Letters {
		if s.first && t.At.X < s.from || s.last && t.At.X >= s.to || t.At.X >= s.from && t.At.X < s.to {
			out.Letters = append(out.Letters, t)
		}
	}
	if !s.first {
		s.bevel(&out, s.from-s.scarf/2, s.from+s.scarf/2, which+", scarf 1:8, other face")
	}
	if !s.last {
		s.bevel(&out, s.to+s.scarf/2, s.to-s.scarf/2, which+", scarf 1:8, this face")
	}
	return out, nil
}

// bevel marks where the scarf that ends at end begins, and letters it.
func (s stretch) bevel(p *layout.Part, end, begin float64, words string) {
	low, high := math.Inf(1), math.Inf(-1)
	for _, at := range crossings(p.Outline(), func(q geometry.Point) float64 { return q.X - begin }) {
		low, high = math.Min(low, at.Y), math.Max(high, at.Y)
	}
	if low >= high {
		return
	}
	p.Marks = append(p.Marks, curve.Polyline(geometry.Point{X: begin, Y: low}, geometry.Point{X: begin, Y: high}))
	mid := geometry.Point{X: (end + begin) / 2, Y: (low+high)/2 - engraved/2}
	p.Letters = append(p.Letters, layout.Text{At: mid, Height: engraved, Align: layout.Middle, Words: words})
}

// side says on which side of an edge a point lies: above 0 is kept.
type side func(geometry.Point) float64

// between returns what of a closed outline lies between two x, closed by straight
// ends; nil when nothing does. A hole must lie wholly on one side.
func between(c curve.Path, lo, hi float64, hole bool) (curve.Path, error) {
	for _, keep := range []side{func(q geometry.Point) float64 { return q.X - lo }, func(q geometry.Point) float64 { return hi - q.X }} {
		runs := inside(c, keep)
		switch {
		case len(runs) == 0:
			return nil, nil
		case len(runs) == 1 && runs[0].Closed():
			continue
		case hole:
			return nil, errors.New("it would meet a hole")
		case len(runs) > 1:
			return nil, errors.New("it would cross the part more than once")
		}
		c = append(runs[0], curve.Line{A: runs[0][len(runs[0])-1].End(), B: runs[0][0].Start()})
	}
	return c, nil
}

// inside returns the runs of a path on the kept side. A closed path that lies
// wholly there is one closed run.
func inside(p curve.Path, keep side) []curve.Path {
	var out []curve.Path
	var run curve.Path
	for _, s := range p {
		ts := append(append([]float64{0}, roots(s, keep)...), 1)
		for i := 1; i < len(ts); i++ {
			if keep(s.At((ts[i-1]+ts[i])/2)) > 0 {
				run = append(run, curve.Stretch(s, ts[i-1], ts[i]))
			} else if run != nil {
				out, run = append(out, run), nil
			}
		}
	}
	if run != nil {
		out = append(out, run)
	}
	// A closed path may begin in the middle of a run.
	if n := len(out); n > 1 && p.Closed() && keep(p[0].Start()) > 0 {
		out[0] = append(out[n-1], out[0]...)
		out = out[:n-1]
	}
	return out
}

// crossings returns where a path crosses the edge.
func crossings(p curve.Path, keep side) []geometry.Point {
	var out []geometry.Point
	for _, s := range p {
		for _, t := range roots(s, keep) {
			out = append(out, s.At(t))
		}
	}
	return out
}

// roots returns the parameters in (0, 1) at which a piece crosses the edge. Pieces
// are looked at in steps; two crossings within one step are passed over, which is
// a sliver below a thirtieth of the piece.
func roots(s curve.Segment, keep side) []float64 {
	const steps = 32
	var out []float64
	for i := range steps {
		a, b := float64(i)/steps, float64(i+1)/steps
		was, is := keep(s.At(a)) > 0, keep(s.At(b)) > 0
		if was != is {
			t := curve.Bisect(a, b, func(t float64) bool { return (keep(s.At(t)) > 0) == was })
			if t > 0 && t < 1 {
				out = append(out, t)
			}
		}
	}
	return out
}
