package rendertest

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
)

// Built is what a NAME-numbers.json says of the wood: enough to ask whether the boat
// could be a boat. Lengths are mm.
type Built struct {
	Hull struct {
		Length float64 `json:"length_mm"`
		Beam   float64 `json:"beam_mm"`
	} `json:"hull"`
	Gunwale struct {
		Width    float64      `json:"width_mm"`
		Height   float64      `json:"height_mm"`
		Ends     [2]float64   `json:"ends_mm"`
		Line     [][3]float64 `json:"line_mm"`
		Mortises []struct {
			Rib      string  `json:"rib"`
			Midship  float64 `json:"from_midship_mm"`
			Length   float64 `json:"length_mm"`
			Width    float64 `json:"width_mm"`
			Depth    float64 `json:"depth_mm"`
			AtBottom float64 `json:"wall_at_bottom_mm"`
		} `json:"mortises"`
	} `json:"gunwale"`
	Ribs        []Rib `json:"ribs"`
	Stems       []drilled
	Breasthooks []drilled
	Thwarts     []drilled
	Keel        Batten   `json:"keel"`
	Stringers   []Batten `json:"stringers"`
}

// drilled is a flat part with its holes.
type drilled struct {
	Flat
	Name     string
	End      string
	Holes    [][2]float64 `json:"holes_mm"`
	Wide     float64      `json:"hole_diameter_mm"`
	Lashings [][2]float64 `json:"stringer_holes_mm"`
	Cord     float64      `json:"stringer_hole_diameter_mm"`
}

// Batten is a long stick with a mark at every rib, laid straight, and the line it takes in
// the boat; the keel has none.
type Batten struct {
	Number int          `json:"number"`
	Ends   [2]float64   `json:"ends_mm"`
	Marks  []float64    `json:"rib_marks_mm"`
	Line   [][3]float64 `json:"line_mm"`
}

// Absurd returns what is wrong with the numbers of a boat by plain geometry, a line each:
// slots without wood round them, parts that cross themselves or are larger than the boat, marks that lie
// off their part, ribs that do not end where they should.
//
// Errors: no JSON, or a boat without gunwales or ribs.
func Absurd(src []byte) ([]string, error) {
	b := &Built{}
	if err := json.Unmarshal(src, b); err != nil {
		return nil, err
	}
	if len(b.Gunwale.Mortises) == 0 || len(b.Ribs) == 0 || len(b.Gunwale.Line) < 2 {
		return nil, fmt.Errorf("%d mortises, %d ribs, %d points of the gunwale", len(b.Gunwale.Mortises), len(b.Ribs), len(b.Gunwale.Line))
	}
	var out faults
	out.mortises(b)
	for _, r := range b.Ribs {
		out.rib(b, r)
	}
	for kind, parts := range map[string][]drilled{"stem": b.Stems, "breasthook": b.Breasthooks, "thwart": b.Thwarts} {
		for _, p := range parts {
			out.part(b, fmt.Sprintf("the %s %s%s", kind, p.Name, p.End), p)
		}
	}
	for _, s := range append(b.Stringers, b.Keel) {
		out.batten(b, s)
	}
	return out, nil
}

// faults collects lines.
type faults []string

// unless adds a line where something does not hold; NaN never holds.
func (f *faults) unless(ok bool, format string, args ...any) {
	if !ok {
		*f = append(*f, fmt.Sprintf(format, args...))
	}
}

// leastWood is the thinnest wall that still is one, mm: two shavings. What a builder should keep
// is the design's own question.
const leastWood = 0.5

// mortises holds each slot inside its stick, with wood on all sides, each clear of the next.
func (f *faults) mortises(b *Built) {
	g := b.Gunwale
	for i, m := range g.Mortises {
		f.unless(m.Length > 0 && m.Width > 0 && m.Depth > 0, "mortise %s is %.2f x %.2f x %.2f mm", m.Rib, m.Length, m.Width, m.Depth)
		f.unless(g.Width-m.Width >= 2*leastWood, "mortise %s, %.2f mm wide, leaves no walls of %.2f mm", m.Rib, m.Width, g.Width)
		f.unless(m.AtBottom >= leastWood, "mortise %s leaves %.2f mm beside its bottom", m.Rib, m.AtBottom)
		f.unless(g.Height-m.Depth >= leastWood, "mortise %s, %.2f mm deep, goes through %.2f mm", m.Rib, m.Depth, g.Height)
		f.unless(m.Midship-m.Length/2 > g.Ends[0] && m.Midship+m.Length/2 < g.Ends[1], "mortise %s at %.2f mm lies off the stock from %.2f to %.2f", m.Rib, m.Midship, g.Ends[0], g.Ends[1])
		if i > 0 {
			before := g.Mortises[i-1]
			gap := m.Midship - m.Length/2 - before.Midship - before.Length/2
			f.unless(gap >= leastWood, "mortises %s and %s leave %.2f mm between them", before.Rib, m.Rib, gap)
		}
	}
}

// walked is by how much rounded lengths are off, summed over a rib, mm.
const walked = 0.01

// turned is by how much a rib's end is off because its sweeps are rounded to a ten-thousandth
// of a degree, mm: each turns all that follows, and the arc itself is by as much longer.
func (r Rib) turned() float64 {
	const half = 0.00005 * math.Pi / 180
	off := 0.0
	for _, b := range r.HalfArcs {
		off += half * r.Length
		if b.Radius != nil {
			off += half * *b.Radius
		}
	}
	return off
}

// rib walks the half rib: it must end at its head and go neither under the keel nor across
// the middle, and its marks must lie on it, in their order.
func (f *faults) rib(b *Built, r Rib) {
	end, _ := r.Walk()
	f.unless(end.To(Point{r.HalfBreadth, r.Depth}) < walked+r.turned(), "rib %s ends at %.2f, its head is at %.2f, %.2f", r.Rib, end, r.HalfBreadth, r.Depth)
	f.unless(r.HalfBreadth > 0 && r.Depth > 0, "rib %s has its head at %.2f, %.2f", r.Rib, r.HalfBreadth, r.Depth)
	f.unless(r.Length >= 2*math.Hypot(r.HalfBreadth, r.Depth)-walked, "rib %s, %.2f mm long, is shorter than straight lines from keel to heads", r.Rib, r.Length)
	f.unless(r.Blank > r.Length && r.Tenon > 0, "rib %s, %.2f mm, is cut from %.2f mm with tenons of %.2f mm", r.Rib, r.Length, r.Blank, r.Tenon)
	round := Around(r.Points(24)...)
	f.unless(round.X0 >= -walked && round.Y0 >= -walked, "rib %s runs to %.2f, %.2f, over the keel or the middle line", r.Rib, round.X0, round.Y0)
	f.unless(2*round.X1 <= 1.5*b.Hull.Beam, "rib %s is %.2f mm wide in a boat of %.2f mm", r.Rib, 2*round.X1, b.Hull.Beam)
	for what, marks := range map[string][]float64{"bend": r.BendMarks, "stringer": r.StringerMarks} {
		inside := !slices.ContainsFunc(marks, func(x float64) bool { return !(x > -walked && x < r.Length/2+walked) })
		f.unless(inside && slices.IsSorted(marks), "rib %s, %.2f mm to its head, has %s marks at %.2f", r.Rib, r.Length/2, what, marks)
	}
}

// Points walks the half rib in so many steps a piece.
func (r Rib) Points(steps int) []Point {
	var out []Point
	for i, b := range r.HalfArcs {
		for k := 0; k <= steps; k++ {
			part, t := r, float64(k)/float64(steps)
			part.HalfArcs = append(slices.Clone(r.HalfArcs[:i]), Bend{b.Radius, b.Sweep * t, b.Length * t})
			at, _ := part.Walk()
			out = append(out, at)
		}
	}
	return out
}

// part holds a flat part to the boat, and its holes to the part, with wood round each.
func (f *faults) part(b *Built, name string, p drilled) {
	edge := p.Outline().Points(1)
	f.unless(len(p.Corners) > 2 && !CrossesItself(edge), "the outline of %s crosses itself", name)
	f.unless(math.Abs(p.Outline().Area(1)) > 1, "the outline of %s holds no wood", name)
	round := p.Outline().Bounds()
	f.unless(math.Hypot(round.W(), round.H()) < b.Hull.Length/2+b.Hull.Beam, "%s is %.0f x %.0f mm in a boat of %.0f mm", name, round.W(), round.H(), b.Hull.Length)
	shape := p.Outline().Polygon()
	for wide, holes := range map[float64][][2]float64{p.Wide: p.Holes, p.Cord: p.Lashings} {
		for _, h := range holes {
			at := Point{h[0], h[1]}
			wood := shape.From(at) - wide/2
			f.unless(shape.Holds(at) && wood >= leastWood, "a hole of %.1f mm at %.1f, %.1f leaves %.2f mm of %s", wide, at.X, at.Y, wood, name)
		}
	}
}

// batten holds a stick's marks to the stick, and its line to its length: a stick bends, but
// gets neither longer nor shorter.
func (f *faults) batten(b *Built, s Batten) {
	name := fmt.Sprintf("stringer %d", s.Number)
	if s.Number == 0 {
		name = "the keel"
	}
	f.unless(s.Ends[0] < s.Ends[1] && s.Ends[1]-s.Ends[0] < 1.2*b.Hull.Length, "%s runs from %.2f to %.2f mm", name, s.Ends[0], s.Ends[1])
	f.unless(slices.IsSorted(s.Marks) && len(s.Marks) == len(b.Ribs), "%s has marks at %.2f for %d ribs", name, s.Marks, len(b.Ribs))
	if n := len(s.Marks); n > 0 {
		f.unless(s.Marks[0] > s.Ends[0] && s.Marks[n-1] < s.Ends[1], "%s from %.2f to %.2f mm has marks at %.2f", name, s.Ends[0], s.Ends[1], s.Marks)
	}
	if len(s.Line) > 0 {
		long := lengthOf(s.Line)
		f.unless(long <= s.Ends[1]-s.Ends[0]+walked, "%s is %.2f mm long in the boat and %.2f mm on the stick", name, long, s.Ends[1]-s.Ends[0])
	}
}

func lengthOf(line [][3]float64) float64 {
	long := 0.0
	for i, q := range line[1:] {
		p := line[i]
		long += math.Sqrt((q[0]-p[0])*(q[0]-p[0]) + (q[1]-p[1])*(q[1]-p[1]) + (q[2]-p[2])*(q[2]-p[2]))
	}
	return long
}
