package frame

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
)

// Off is how far a rib in the boat is off the drawing, mm.
type Off struct {
	HalfBreadth float64 // wider at its head
	Depth       float64 // deeper, from the gunwale line down to its middle
	Keel        float64 // its middle higher over the baseline: minus Depth where the gunwales lie as drawn
}

// Ends is how much higher each stem stands than drawn, with the ends of gunwales, keel
// and stringers that are fastened to it, mm.
type Ends struct{ Stern, Bow float64 }

// Sections returns the sections of all ribs, each so far off the drawing and solved
// anew with the same turns and bilge radius. As measured on the trestles: half the
// beam, the depth from a straightedge across the gunwales, and Keel minus the depth's.
//
// Errors: a number of offs that is not that of the ribs; a half-breadth and depth from
// which the shape cannot be made.
func (f *Frame) Sections(off []Off) ([]hull.Section, error) {
	if len(off) != len(f.Ribs) {
		return nil, fmt.Errorf("%d ribs are measured; the frame has %d", len(off), len(f.Ribs))
	}
	out := make([]hull.Section, len(f.Ribs))
	for i, r := range f.Ribs {
		s := r.Section
		if off[i] != (Off{}) {
			made, err := hull.Solve(s.HalfBreadth+off[i].HalfBreadth, s.Depth+off[i].Depth, s.Shape)
			if err != nil {
				return nil, fmt.Errorf("rib %s %.0f mm wider and %.0f mm deeper than drawn: %w", r.Name, 2*off[i].HalfBreadth, off[i].Depth, err)
			}
			made.Station, made.KeelZ = s.Station, s.KeelZ+off[i].Keel
			s = made
		}
		out[i] = s
	}
	return out, nil
}

// Reshaped returns the frame as it came out: every rib has the given section, at its
// station, and the stems stand so much higher than drawn. A section may be any chain
// that ends on its half-breadth and depth, as that of a rib which was only pushed in.
//
// How: gunwales, keel and stringers go through the ribs as they are. Between the ribs
// the change from the drawing runs as a natural cubic spline, to the rise of the stem at
// each end and to none across the boat.
// Returns: a frame to cover, weigh and float; the faces of its ribs are not drawn. What
// was cut stays as it was cut: lengths and marks on the stock, mortises, scarfs, cross
// pieces, groups of ribs and gauges.
// Accuracy: with the drawing's own sections the shape is the drawing's, to the last bit.
// Errors: a number of sections that is not that of the ribs, ribs out of their order, a
// bend too tight for the rib's thickness.
func Reshaped(f *Frame, sections []hull.Section, ends Ends) (*Frame, error) {
	if len(sections) != len(f.Ribs) {
		return nil, fmt.Errorf("there are %d sections for %d ribs", len(sections), len(f.Ribs))
	}
	out := *f
	m := making{from: f, sections: sections, ends: ends}
	if err := m.ribs(&out); err != nil {
		return nil, err
	}
	for _, step := range []func(*Frame) error{m.gunwaleAndKeel, m.stringers} {
		if err := step(&out); err != nil {
			return nil, fmt.Errorf("the frame as it came out: %w", err)
		}
	}
	if out.Gunwale.Line != f.Gunwale.Line {
		out.railed()
	}
	out.Seats = slices.Clone(f.Seats)
	for i, s := range out.Seats {
		out.Seats[i] = s.Raised(out.Hull.FloorZ(s.At) - f.Hull.FloorZ(s.At))
	}
	out.Bow, out.Stern = f.Bow.raised(ends.Bow), f.Stern.raised(ends.Stern)
	out.Skin = newSkin(&out)
	return &out, nil
}

// making is a frame as it comes out of one drawn.
type making struct {
	from     *Frame
	sections []hull.Section
	ends     Ends
}

func (m *making) ribs(out *Frame) error {
	out.Ribs = slices.Clone(m.from.Ribs)
	for i := range out.Ribs {
		r := &out.Ribs[i]
		r.Stringers = r.StringersOn(m.sections[i])
		r.Section, r.Station, r.Tightest = m.sections[i], m.sections[i].Station, math.Inf(1)
		for _, b := range r.Section.Half {
			if b.Radius != 0 && math.Abs(b.Radius) <= r.Thickness/2 {
				return fmt.Errorf("rib %s as it came out: a bend of %.1f mm radius has no inner face in wood %.1f mm thick", r.Name, b.Radius, r.Thickness)
			}
			if b.Radius > 0 {
				r.Tightest = min(r.Tightest, (b.Radius-r.Thickness/2)/r.Thickness)
			}
		}
		r.Outer, r.Inner = nil, nil
	}
	return nil
}

func (m *making) gunwaleAndKeel(out *Frame) (err error) {
	line := m.from.Gunwale.Line
	heads := func(_ int, s hull.Section) geometry.Point {
		return geometry.Point{X: s.HalfBreadth, Y: s.KeelZ + s.Depth}
	}
	if out.Gunwale.Line, err = m.moved(line, heads); err != nil {
		return fmt.Errorf("gunwale: %w", err)
	}
	h := m.from.Hull
	seat := m.from.Ribs[0].Section.KeelZ // of a rib's middle over the keel's skin
	z, _ := h.KeelZ(m.from.Ribs[0].Station)
	seat -= z
	higher := make([]float64, len(m.sections))
	for k, s := range m.sections {
		z, _ := h.KeelZ(s.Station)
		higher[k] = off(s.KeelZ-seat, z)
	}
	keel, err := m.change(-h.Stern.Toe.X, h.Bow.Toe.X, m.ends, higher)
	if err != nil {
		return fmt.Errorf("keel: %w", err)
	}
	out.Hull = h.Reshaped(out.Gunwale.Line, keel.Rise, m.ends.Stern, m.ends.Bow)
	out.Keel.Line, err = m.from.Keel.Line.Moved(func(x float64) (at, slope geometry.Point) {
		at.Y, slope.Y = keel.Rise(x)
		return at, slope
	})
	return err
}

func (m *making) stringers(out *Frame) (err error) {
	half := float64(m.from.Design.Ribs.Thickness+m.from.Design.Stringers.Depth) / 2
	out.Stringers = slices.Clone(m.from.Stringers)
	faces := make([]func(along, out float64) geometry.Point, len(m.sections))
	for k, s := range m.sections {
		faces[k] = s.Faces()
	}
	for i := range out.Stringers {
		s := &out.Stringers[i]
		place := func(k int, _ hull.Section) geometry.Point { return faces[k](out.Ribs[k].Stringers[i], half) }
		if s.Line, err = m.moved(s.Line, place); err != nil {
			return fmt.Errorf("stringer %d: %w", s.Number, err)
		}
	}
	return nil
}

// moved returns a line of the drawing so moved that it goes through the place of each
// section, x the half-breadth and y the height, and at its ends rises with the stems.
func (m *making) moved(line *curve.Track, place func(int, hull.Section) geometry.Point) (*curve.Track, error) {
	out, up := make([]float64, len(m.sections)), make([]float64, len(m.sections))
	for k, s := range m.sections {
		is, was := place(k, s), line.Point(s.Station)
		out[k], up[k] = off(is.X, was.Y), off(is.Y, was.Z)
	}
	moves := func(v float64) bool { return v != 0 }
	if m.ends == (Ends{}) && !slices.ContainsFunc(out, moves) && !slices.ContainsFunc(up, moves) {
		return line, nil
	}
	aft, fore := line.Ends()
	y, err := m.change(aft, fore, Ends{}, out)
	if err != nil {
		return nil, err
	}
	z, err := m.change(aft, fore, m.ends, up)
	if err != nil {
		return nil, err
	}
	return line.Moved(curve.Apart(y.Rise, z.Rise))
}

// off is how far a place is off, mm: 0 where no more than rounding.
func off(is, was float64) float64 {
	const rounding = 1e-9 // mm: a line drawn through a rib leaves it by no more
	if math.Abs(is-was) < rounding {
		return 0
	}
	return is - was
}

// change is the spline from the after to the forward end through what is off at each
// rib.
func (m *making) change(aft, fore float64, ends Ends, off []float64) (*curve.Batten, error) {
	x := []float64{aft}
	for _, s := range m.sections {
		x = append(x, s.Station)
	}
	return curve.NewBatten(append(x, fore), slices.Concat([]float64{ends.Stern}, off, []float64{ends.Bow}))
}

// raised returns the stem so much higher, mm. The waterline stays where it is.
func (s Stem) raised(by float64) Stem {
	if by == 0 {
		return s
	}
	up := geometry.Point{Y: by}
	s.Outline = s.Outline.Map(geometry.Shift(0, by))
	s.Landings = slices.Clone(s.Landings)
	for _, p := range []*geometry.Point{&s.Shelf[0], &s.Shelf[1], &s.Forefoot, &s.Middle} {
		*p = p.Add(up)
	}
	for i := range s.Landings {
		s.Landings[i] = s.Landings[i].Add(up)
	}
	return s
}
