// Package fair takes the lines off a boat that exists: it fits the family of
// hulls that ribwright draws to a table of offsets, by least squares, and gives
// a design that can be lofted.
package fair

import (
	"cmp"
	"fmt"
	"iter"
	"math"
	"slices"

	"gonum.org/v1/gonum/optimize"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/survey/offsets"
)

// Result is a faired design with what it leaves of the offsets.
type Result struct {
	Design   *design.Design
	Stations []Residual
	RMS      float64 // mm, over all points
	Worst    Miss
	Displaced
}

// Residual is what is left at one station.
type Residual struct {
	Station float64 // mm from midship
	Points  int
	RMS     float64 // mm
	Worst   Miss
}

// Miss is a measured point with its distance from the faired hull.
type Miss struct {
	Station float64
	Point   geometry.Point // half-breadth and height as measured, mm
	Off     float64        // mm
}

// Of fits a design to a table. The same table gives the same design. A table of
// which one half was mirrored gives a design alike at both ends.
//
// How: the sheer by the gunwales' tilt and edge-set, the plan by spreaders where
// they are needed, the keel by its rocker, the ends by rake and forefoot; then the
// shape of the section at every measured station that is wide enough, with the
// gunwale and keel as they have come out.
// Errors: a boat outside what is built (the first limit it breaks), one whose
// sections the family cannot make, that is missed by more than MostRMS, or that must be
// left without ribs too far from its ends.
func Of(t *offsets.Table, title string) (*Result, error) {
	var best *Result
	var first error
	for _, r := range rails() {
		out, err := with(t, title, r)
		switch {
		case err != nil:
			first = cmp.Or(first, err)
		case best == nil || out.RMS < best.RMS:
			best = out
		}
		if best != nil && best.RMS <= good {
			break
		}
	}
	if best == nil {
		return nil, first
	}
	return best, best.near()
}

// MostRMS is the most that a faired boat may miss the offsets by in the mean, mm: three
// times what a drawing is read to. Beyond it is another boat. Our own choice.
const MostRMS = 15.0

// MostOff is the most that it may miss any point by, mm: more is a slip of the table,
// round which no gunwale can be bent, and which a mean over many points would hide. Our
// own choice.
const MostOff = 3 * MostRMS

// near refuses a fit that is another boat. What it misses by is told rounded up, so that
// it does not read as accepted.
func (r *Result) near() error {
	if r.RMS <= MostRMS && r.Worst.Off <= MostOff {
		return nil
	}
	w := r.Worst
	return fmt.Errorf("the nearest boat of this kind misses the offsets by %.0f mm in the mean (rms), by %.0f mm at station %.0f mm, half-breadth %.0f mm, height %.0f mm; accepted: %.0f mm or less in the mean, %.0f mm anywhere. Look there for a slip of the table; without one the boat has a shape that is not built here",
		math.Ceil(r.RMS), math.Ceil(w.Off), w.Station, w.Point.X, w.Point.Y, MostRMS, MostOff)
}

// good is a fit that no stouter gunwale need be tried for, mm: less than half of
// what a drawing is read to.
const good = 3.0

// with fits a design with the gunwales given.
func with(t *offsets.Table, title string, r rail) (*Result, error) {
	f := newFit(t, title, r)
	for _, step := range []func() error{f.fitSheer, f.fitPlan, f.fitEnds, f.fitSections, f.lofts} {
		if err := step(); err != nil {
			return nil, err
		}
	}
	out, err := f.measure()
	if err == nil {
		out.Displaced, err = displaced(t, f.frame)
	}
	return out, err
}

type fit struct {
	t    *offsets.Table
	d    *design.Design
	rail rail
	even bool // alike at both ends
	bow  []offsets.Station
	aft  []offsets.Station // with places made positive, from midship out
	half float64           // length overall over two, mm

	frame *frame.Frame // of the finished design
}

func newFit(t *offsets.Table, title string, r rail) *fit {
	f := &fit{t: t, rail: r, d: scantlings(title, t, r)}
	mid := (t.Stations[0].X + t.Stations[len(t.Stations)-1].X) / 2
	f.half = t.Length() / 2
	for _, s := range t.Stations {
		s.X -= mid
		if s.X >= 0 {
			f.bow = append(f.bow, s)
		}
		if s.X <= 0 {
			s.X = -s.X
			f.aft = append([]offsets.Station{s}, f.aft...)
		}
	}
	f.even = alike(f.bow, f.aft)
	f.d.Hull.Symmetric = f.even
	f.d.Hull.Length = rounded(2 * f.half)
	return f
}

// alike reports whether both ends have the same stations with the same points.
func alike(a, b []offsets.Station) bool {
	return slices.EqualFunc(a, b, func(s, o offsets.Station) bool {
		return math.Abs(s.X-o.X) <= 0.5 && slices.EqualFunc(s.Points, o.Points, func(p, q geometry.Point) bool { return p.Sub(q).Norm() <= 0.5 })
	})
}

// rounded gives a length as a design file should show it: to a tenth of a
// millimeter.
func rounded(mm float64) measure.Length { return measure.Length(math.Round(mm*10) / 10) }

// turned gives an angle of so many degrees, to a tenth of one.
func turned(deg float64) measure.Angle {
	return measure.Angle(math.Round(deg*10) / 10 * math.Pi / 180)
}

// narrow is the half-breadth at the sheer, mm, under which a station is part of
// the end and no section with ribs of its own.
const narrow = 20.0

// isSection reports whether a station is a section with ribs of its own.
func isSection(st offsets.Station) bool { return st.Sheer().X >= narrow && len(st.Points) >= 3 }

// stations are those that shape the boat, with the side of midship on which they stand,
// 1 forward: of a boat alike at both ends the forward ones.
func (f *fit) stations() iter.Seq2[float64, offsets.Station] {
	return func(yield func(float64, offsets.Station) bool) {
		for _, s := range f.bow {
			if !yield(1, s) {
				return
			}
		}
		for _, s := range f.aft {
			if !f.even && s.X != 0 && !yield(-1, s) {
				return
			}
		}
	}
}

// mostBare is the share of the length overall that may lie between the last rib and the
// gunwales' end: shipped designs leave a twelfth. Over more, no rib holds the shape that
// was measured. Our own choice.
const mostBare = 1.0 / 7

// lofts makes sure that the design can be built, moving the last ribs in as far as may
// be until it can.
func (f *fit) lofts() error {
	const step = 25 // mm
	d := f.d
	for {
		if p := d.Check(); p != nil {
			return fmt.Errorf("the faired boat is outside what is built: %s: %s", p.Key, p.Text)
		}
		built, err := frame.Build(d)
		if err == nil {
			f.frame = built
			return nil
		}
		if most := mostBare * float64(d.Hull.Length); float64(d.Ribs.FromBow)+step > most {
			return fmt.Errorf("the faired boat cannot be framed even with its last ribs pulled in to %.0f mm from the gunwales' ends, and farther in nothing would hold its shape: %w", float64(d.Ribs.FromBow), err)
		}
		d.Ribs.FromBow += step
		d.Ribs.FromStern += step
	}
}

func (f *fit) hullNow() (*hull.Hull, error) {
	h, err := hull.New(f.d)
	if err != nil {
		return nil, fmt.Errorf("the faired boat cannot be drawn: %w", err)
	}
	return h, nil
}

type span struct{ lo, hi float64 }

// least finds the parameters of least cost, each kept inside its span, from the
// most promising of several starts. The cost may be infinite where nothing can be
// made.
//
// How: the simplex of Nelder and Mead on parameters as shares of their spans,
// folded back at the ends. Deterministic; bounded by the steps.
func least(spans []span, starts [][]float64, cost func([]float64) float64) ([]float64, float64) {
	real := func(u []float64) []float64 {
		out := make([]float64, len(u))
		for i := range u {
			out[i] = spans[i].lo + (spans[i].hi-spans[i].lo)*folded(u[i])
		}
		return out
	}
	problem := optimize.Problem{Func: func(u []float64) float64 {
		c := cost(real(u))
		if math.IsNaN(c) || c > 1e12 {
			return 1e12
		}
		return c
	}}
	settings := optimize.Settings{MajorIterations: 250, FuncEvaluations: 900, Concurrent: 1}
	var best []float64
	lowest := math.Inf(1)
	for _, s := range promising(starts, cost) {
		u := make([]float64, len(s))
		for i := range s {
			u[i] = (s[i] - spans[i].lo) / (spans[i].hi - spans[i].lo)
		}
		settings.Converger = &optimize.FunctionConverge{Absolute: 1e-6, Relative: 1e-6, Iterations: 60}
		r, err := optimize.Minimize(problem, u, &settings, &optimize.NelderMead{SimplexSize: 0.08})
		if r != nil && (err == nil || r.X != nil) && r.F < lowest {
			lowest, best = r.F, real(r.X)
		}
	}
	return best, lowest
}

const descents = 4

// promising returns the cheapest of starts, the cheapest first.
func promising(starts [][]float64, cost func([]float64) float64) [][]float64 {
	order, costs := make([]int, len(starts)), make([]float64, len(starts))
	for i, s := range starts {
		order[i], costs[i] = i, cost(s)
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(costs[a], costs[b]) })
	var out [][]float64
	for _, i := range order[:min(descents, len(order))] {
		out = append(out, starts[i])
	}
	return out
}

// folded brings a number back into 0 to 1 as a mirror at each end would.
func folded(v float64) float64 {
	v = math.Abs(math.Mod(v, 2))
	return min(v, 2-v)
}
