package frame

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/stringer"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/wood/timber"
)

// Rib is one bent rib. Distances along it are measured on the straight blank
// from its middle, for the port half; the other half is its mirror.
type Rib struct {
	Name          string // "M" at midship, "F1" the first forward of it, "A1" the first aft
	Station       float64
	Section       hull.Section
	Thickness     float64
	Correction    float64    // what the bends add to the mid-line, both halves together, mm
	Length        float64    // shoulder to shoulder on the blank, mm
	Tenon         float64    // beyond each shoulder, mm
	Blank         float64    // to cut, tenons and trim included, mm
	BendMarks     []float64  // where one bend passes into the next, mm from the middle
	Stringers     []float64  // how far along the half section the middles of the stringers cross, mm from the keel
	StringerMarks []float64  // on the blank, where the middles of the stringers cross, mm from the middle
	Outer, Inner  curve.Path // both faces of the port half from the middle line out, x half-breadth, y height, mm
	Tightest      float64    // least inner radius over thickness; +Inf for a straight rib
}

// newRibs spaces the ribs, makes each from its section and finds where the stringers
// cross them.
func newRibs(d *design.Design, h *hull.Hull) ([]Rib, *stringer.Courses, error) {
	places := ribPlaces(d, h)
	out, sections := make([]Rib, 0, len(places)), make([]hull.Section, 0, len(places))
	for _, p := range places {
		s, err := h.Section(p.station)
		if err != nil {
			return nil, nil, fmt.Errorf("rib %s at %w", p.name, err)
		}
		r, err := newRib(d, p.name, s)
		if err != nil {
			return nil, nil, fmt.Errorf("rib %s at station %.0f mm: %w", p.name, p.station, err)
		}
		out, sections = append(out, r), append(sections, s)
	}
	if len(out) < 3 {
		return nil, nil, fmt.Errorf("only %d ribs fit between the ends; accepted: at least 3 (reduce ribs.pitch, ribs.from_bow or ribs.from_stern)", len(out))
	}
	courses, err := stringer.Of(d, h, sections)
	if err != nil {
		return nil, nil, err
	}
	for k := range out {
		out[k].cross(courses.On[k])
	}
	return out, courses, nil
}

// cross marks the stringers, whose middles lie so far along the half section.
func (r *Rib) cross(stringers []float64) {
	r.Stringers, r.StringerMarks = stringers, make([]float64, 0, len(stringers))
	for _, along := range stringers {
		r.StringerMarks = append(r.StringerMarks, r.OnBlank(along))
	}
}

type ribPlace struct {
	name    string
	station float64
}

// ribPlaces steps outward from midship by the pitch until the next rib would
// come too near an end. It returns the places from aft forward.
func ribPlaces(d *design.Design, h *hull.Hull) []ribPlace {
	pitch, first := float64(d.Ribs.Pitch), float64(d.Ribs.Pitch)/2
	var aft, out []ribPlace
	if d.Ribs.AtMidship {
		first = pitch
		out = append(out, ribPlace{"M", 0})
	}
	const slack = 1e-6 // a rib exactly at the limit is in, whatever the rounding
	foreEnd := h.Bow.GunwaleX - float64(d.Ribs.FromBow) + slack
	aftEnd := h.Stern.GunwaleX - float64(d.Ribs.FromStern) + slack
	for i, u := 1, first; u <= math.Max(foreEnd, aftEnd); i, u = i+1, first+float64(i)*pitch {
		if u <= foreEnd {
			out = append(out, ribPlace{fmt.Sprintf("F%d", i), u})
		}
		if u <= aftEnd {
			aft = append([]ribPlace{{fmt.Sprintf("A%d", i), -u}}, aft...)
		}
	}
	return append(aft, out...)
}

func newRib(d *design.Design, name string, s hull.Section) (Rib, error) {
	t := float64(d.Ribs.Thickness)
	r := Rib{Name: name, Station: s.Station, Section: s, Thickness: t, Tightest: math.Inf(1)}
	for _, b := range s.Half {
		if b.Radius == 0 {
			continue
		}
		if b.Radius <= t {
			return r, fmt.Errorf("a bend of %.0f mm radius is tighter than twice the rib's %.1f mm thickness; give less flare, a larger bilge radius, or set the last rib farther from the stem", b.Radius, t)
		}
		r.Correction += 2 * timber.BendCorrection(b.Radius, t, b.Sweep)
		r.Tightest = min(r.Tightest, (b.Radius-t/2)/t)
	}
	r.Length = 2*s.Half.Length() + r.Correction
	r.Tenon = float64(d.Ribs.MortiseDepth - d.Ribs.TenonGap)
	r.Blank = r.Length + 2*(r.Tenon+float64(d.Ribs.Trim))
	at := 0.0
	if len(s.Half) > 1 {
		r.BendMarks = make([]float64, 0, len(s.Half)-1)
	}
	for _, b := range s.Half[:len(s.Half)-1] {
		at += b.Length
		r.BendMarks = append(r.BendMarks, r.OnBlank(at))
	}
	var err error
	if r.Outer, err = r.faceLine(t / 2); err != nil {
		return r, err
	}
	r.Inner, err = r.faceLine(-t / 2)
	return r, err
}

// StringersOn returns how far along another half section of the same rib the stringers
// cross, mm from the keel: at the same shares of its length.
func (r Rib) StringersOn(s hull.Section) []float64 {
	grown := s.Half.Length() / r.Section.Half.Length()
	out := slices.Clone(r.Stringers)
	for k := range out {
		out[k] *= grown
	}
	return out
}

// faceLine draws the half section moved by out mm square to it, outward.
func (r Rib) faceLine(out float64) (curve.Path, error) {
	chain, err := r.Section.Half.Offset(-out)
	if err != nil {
		return nil, err
	}
	return chain.Path(geometry.Point{Y: r.Section.KeelZ - out}, 0), nil
}

// OnBlank returns where the point at the distance s (mm) along the mid-line of
// the bent half rib lies on the straight blank, mm from its middle: farther out
// by what the bends on the way add.
func (r Rib) OnBlank(s float64) float64 {
	out := s
	for _, b := range r.Section.Half {
		on := min(s, b.Length)
		if on <= 0 {
			break
		}
		if b.Radius > 0 {
			out += timber.BendCorrection(b.Radius, r.Thickness, on/b.Radius)
		}
		s -= on
	}
	return out
}

// Face returns the point at the distance s (mm) along the mid-line of the bent
// half rib, moved by out mm square to it: outward to the skin when positive.
// x is the half-breadth and y the height above the baseline.
func (r Rib) Face(s, out float64) geometry.Point { return r.Section.Face(s, out) }

// Bilge returns the number of the rib's tightest bend in its half section, -1 for a
// straight rib, and where it begins along the half section, mm.
func (r Rib) Bilge() (bend int, from float64) {
	bend, at := -1, 0.0
	for i, b := range r.Section.Half {
		if b.Radius > 0 && (bend < 0 || b.Radius < r.Section.Half[bend].Radius) {
			bend, from = i, at
		}
		at += b.Length
	}
	return bend, from
}

// Correction is how much longer a rib must be, shoulder to shoulder, for each mm that
// the boat as built is off the drawing.
type Correction struct {
	Beam  float64 // wider at the rib's heads, both sides together, mm per mm
	Depth float64 // deeper, mm per mm

	// How far each half's bend marks then move outward, mm per mm: the bottom alone takes up
	// what the topside does not, so that all of them move alike.
	MarkBeam, MarkDepth float64
}

// Corrections returns those of all ribs, from aft forward.
//
// Errors: a section from which half a millimeter takes the shape away.
func Corrections(f *Frame) ([]Correction, error) {
	out := make([]Correction, len(f.Ribs))
	for i, r := range f.Ribs {
		var err error
		if out[i], err = correctionOf(r); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// correctionOf solves the section anew half a millimeter either way, with the same
// turns and bilge radius, and compares the lengths on the blank.
func correctionOf(r Rib) (c Correction, err error) {
	const step = 0.5 // mm either way; the lengths run smoothly, so the difference is good to 1e-5
	s := r.Section
	lengths := func(half, depth float64) (whole, mark float64) {
		n, solveErr := hull.Solve(s.HalfBreadth+half, s.Depth+depth, s.Shape)
		if solveErr != nil {
			if err == nil {
				err = fmt.Errorf("rib %s: %w", r.Name, solveErr)
			}
			return 0, 0
		}
		on := Rib{Section: n, Thickness: r.Thickness}
		return 2 * on.OnBlank(n.Half.Length()), on.OnBlank(n.Half[0].Length)
	}
	change := func(half, depth float64) (whole, mark float64) {
		more, out := lengths(half, depth)
		less, in := lengths(-half, -depth)
		return (more - less) / (2 * step), (out - in) / (2 * step)
	}
	// The beam grows by two half-breadths.
	c.Beam, c.MarkBeam = change(step/2, 0)
	c.Depth, c.MarkDepth = change(0, step)
	return c, err
}

// Group is a set of ribs so nearly alike that one marking strip serves them.
type Group struct {
	Rib   Rib      // the one nearest midship, whose marks the strip carries
	Names []string // of all of them, the nearest to midship first, forward before aft
}

// groupRibs gathers ribs whose lengths, marks, half-breadths and depths differ by
// less than tol mm from those of the group's first. It returns the groups from
// midship outward.
func groupRibs(ribs []Rib, tol float64) []Group {
	sorted := make([]*Rib, len(ribs))
	for i := range ribs {
		sorted[i] = &ribs[i]
	}
	slices.SortStableFunc(sorted, func(a, b *Rib) int {
		return cmp.Or(cmp.Compare(math.Abs(a.Station), math.Abs(b.Station)), cmp.Compare(b.Station, a.Station))
	})
	out := make([]Group, 0, len(ribs))
	for _, r := range sorted {
		i := 0
		for i < len(out) && !alike(&out[i].Rib, r, tol) {
			i++
		}
		if i == len(out) {
			out = append(out, Group{Rib: *r})
		}
		out[i].Names = append(out[i].Names, r.Name)
	}
	return out
}

func alike(a, b *Rib, tol float64) bool {
	near := func(a, b float64) bool { return a == b || math.Abs(a-b) < tol }
	return near(a.Length, b.Length) && near(a.Section.HalfBreadth, b.Section.HalfBreadth) && near(a.Section.Depth, b.Section.Depth) &&
		slices.EqualFunc(a.BendMarks, b.BendMarks, near) && slices.EqualFunc(a.StringerMarks, b.StringerMarks, near)
}

// Gauge is a flat template that lies inside a bent rib, from its middle to one
// head, to show by eye where the bend is off. x is the half-breadth, y the
// height above the baseline, mm.
type Gauge struct {
	Names   []string   // of the ribs it serves
	Outline curve.Path // closed, counter-clockwise
	Ticks   []curve.Path
	Middle  geometry.Point // of its band near the keel, for lettering
}

// gaugeBand is the width of a gauge, mm: stiff enough in 4 mm ply. It narrows
// inside tight bends.
const gaugeBand = 40.0

// NewGauge returns the gauge for the ribs of a group when each is bent as half says:
// as in the boat, or as it stands free.
//
// Units: half in mm and radians, from the keel outward, at mid-thickness.
// Errors: a bend too tight to leave the gauge an edge.
func NewGauge(g Group, half curve.Chain) (Gauge, error) {
	r := g.Rib
	r.Section.Half = half
	band := gaugeBand
	for _, b := range half {
		if b.Radius > 0 {
			band = math.Min(band, 0.6*(b.Radius-r.Thickness/2))
		}
	}
	inner, err := r.faceLine(-r.Thickness / 2)
	if err != nil {
		return Gauge{}, fmt.Errorf("gauge for rib %s: %w", r.Name, err)
	}
	back, err := r.faceLine(-r.Thickness/2 - band)
	if err != nil {
		return Gauge{}, fmt.Errorf("gauge for rib %s: %w", r.Name, err)
	}
	head := curve.Line{A: inner[len(inner)-1].End(), B: back[len(back)-1].End()}
	foot := curve.Line{A: back[0].Start(), B: inner[0].Start()}
	out := Gauge{Names: g.Names, Outline: slices.Concat(inner, curve.Path{head}, back.Reverse(), curve.Path{foot})}
	s := 0.0
	for _, b := range half[:len(half)-1] {
		s += b.Length
		out.Ticks = append(out.Ticks, curve.Polyline(r.Face(s, -r.Thickness/2), r.Face(s, -r.Thickness/2-band/4)))
	}
	out.Middle = r.Face(half.Length()*0.16, -r.Thickness/2-band/2)
	return out, nil
}

// Carries is the length of boat that rib i carries, mm: half-way to its neighbors, and half-way to
// the gunwale's end beyond the last one, for the boat tapers to nothing there.
func (f *Frame) Carries(i int) float64 {
	aft, fore := f.Gunwale.Line.Ends()
	if i > 0 {
		aft = f.Ribs[i-1].Station
	}
	if i < len(f.Ribs)-1 {
		fore = f.Ribs[i+1].Station
	}
	return (fore - aft) / 2
}
