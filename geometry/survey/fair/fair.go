// Package fair takes the lines off a boat that exists: it fits the family of
// hulls that ribwright draws to a table of offsets, by least squares, and gives
// a design that can be lofted.
package fair

import (
	"fmt"
	"math"

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
//
// Errors: a boat outside what is built (the first limit it breaks), or one whose
// sections the family cannot make.
func Of(t *offsets.Table, title string) (*Result, error) {
	var best *Result
	var first error
	for _, r := range rails() {
		out, err := with(t, title, r)
		if err != nil && first == nil {
			first = err
		}
		if err == nil && (best == nil || out.RMS < best.RMS) {
			best = out
		}
		if best != nil && best.RMS <= good {
			break
		}
	}
	if best == nil {
		return nil, first
	}
	return best, nil
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
	return f.measure()
}

// fit is the work on one table.
type fit struct {
	t    *offsets.Table
	d    *design.Design
	rail rail
	even bool // alike at both ends
	bow  []offsets.Station
	aft  []offsets.Station // with places made positive, from midship out
	half float64           // length overall over two, mm
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
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if math.Abs(a[i].X-b[i].X) > 0.5 || len(a[i].Points) != len(b[i].Points) {
			return false
		}
		for k := range a[i].Points {
			if a[i].Points[k].Sub(b[i].Points[k]).Norm() > 0.5 {
				return false
			}
		}
	}
	return true
}

// rounded gives a length as a design file should show it: to a tenth of a
// millimetre.
func rounded(mm float64) measure.Length { return measure.Length(math.Round(mm*10) / 10) }

// turned gives an angle of so many degrees, to a tenth of one.
func turned(deg float64) measure.Angle {
	return measure.Angle(math.Round(deg*10) / 10 * math.Pi / 180)
}

// narrow is the half-breadth at the sheer, mm, under which a station is part of
// the end and no section with ribs of its own.
const narrow = 20.0

// wide lists the stations of one half that are sections.
func wide(half []offsets.Station) []offsets.Station {
	var out []offsets.Station
	for _, s := range half {
		if s.Sheer().X >= narrow && len(s.Points) >= 3 {
			out = append(out, s)
		}
	}
	return out
}

// lofts makes sure that the design can be built, moving the last ribs in and
// easing the mortises until it can.
func (f *fit) lofts() error {
	var err error
	d := f.d
	limit := 0.4 * float64(d.Hull.Length)
	for range 60 {
		if p := d.Check(); p != nil {
			return fmt.Errorf("the faired boat is outside what is built: %s: %s", p.Key, p.Text)
		}
		if _, err = frame.Build(d); err == nil {
			return nil
		}
		d.Ribs.FromBow += 25
		d.Ribs.FromStern += 25
		if float64(d.Ribs.FromBow) > limit {
			break
		}
	}
	return fmt.Errorf("the faired boat cannot be framed: %w", err)
}

// hullNow makes the hull of the design as it stands.
func (f *fit) hullNow() (*hull.Hull, error) {
	h, err := hull.New(f.d)
	if err != nil {
		return nil, fmt.Errorf("the faired boat cannot be drawn: %w", err)
	}
	return h, nil
}
