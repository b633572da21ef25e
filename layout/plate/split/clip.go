package split

import (
	"errors"

	"ribwright/geometry"
	"ribwright/geometry/curve"
)

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
