package rendertest

import (
	"encoding/json"
	"math"
	"slices"
)

// Fitted is what a NAME-numbers.json says of how parts meet. Lengths are mm.
type Fitted struct {
	Gunwale struct {
		Height   float64      `json:"height_mm"`
		Line     [][3]float64 `json:"line_mm"`
		Mortises []mortised   `json:"mortises"`
	} `json:"gunwale"`
	Ribs        []Rib      `json:"ribs"`
	Stems       []shaped   `json:"stems"`
	Stringers   []Batten   `json:"stringers"`
	Breasthooks []shaped   `json:"breasthooks"`
	Thwarts     []crossing `json:"thwarts"`
	Seats       []seated   `json:"seats"`
	Outside     struct {
		Outwales *struct {
			Screws []float64 `json:"screws_from_midship_mm"`
		} `json:"outwales"`
	} `json:"outside"`
	Inside struct {
		Floors []slatted `json:"floors"`
	} `json:"inside"`
}

type mortised struct {
	Rib     string  `json:"rib"`
	Station float64 `json:"station_mm"`
	Midship float64 `json:"from_midship_mm"`
	Length  float64 `json:"length_mm"`
	Depth   float64 `json:"depth_mm"`
}

// shaped is a flat part with what lies on it.
type shaped struct {
	Flat
	End      string       `json:"end"`
	Landings [][2]float64 `json:"stringer_landings_mm"`
	Hole     *[2]float64  `json:"gunwale_hole_mm"`
	Wide     float64      `json:"gunwale_hole_diameter_mm"`
	Painter  *float64     `json:"painters_hole_from_end_mm"`
}

type crossing struct {
	Name    string    `json:"name"`
	Station float64   `json:"station_mm"`
	Clear   float64   `json:"between_gunwales_mm"`
	Bolts   []float64 `json:"bolts_from_midship_mm"`
	Bolt    float64   `json:"hole_diameter_mm"`
}

type seated struct {
	Name    string  `json:"name"`
	Station float64 `json:"station_mm"`
	Top     float64 `json:"top_z_mm"`
	Length  float64 `json:"length_mm"`
	Hung    *struct {
		Front rail `json:"front"`
		After rail `json:"after"`
	} `json:"hung"`
}

// rail is one of the two that a hung seat rests on, with its hangers.
type rail struct {
	Station float64   `json:"station_mm"`
	Top     float64   `json:"top_z_mm"`
	Length  float64   `json:"rail_length_mm"`
	Hanger  float64   `json:"hanger_length_mm"`
	ToTop   float64   `json:"hanger_to_rail_top_mm"`
	Bolts   []float64 `json:"bolts_from_midship_mm"`
	Down    float64   `json:"bolts_under_gunwale_top_mm"`
}

type slatted struct {
	Width float64   `json:"width_mm"`
	At    []float64 `json:"from_middle_line_mm"`
	Ribs  []string  `json:"ribs"`
}

// Misfits returns where the parts of a boat do not meet as parts must, a line each: heads
// off the gunwale, stringers off the ribs, holes in one another, seats out of the boat, floors
// through the ribs.
//
// Errors: no JSON.
func Misfits(src []byte) ([]string, error) {
	b := &Fitted{}
	if err := json.Unmarshal(src, b); err != nil {
		return nil, err
	}
	var out faults
	for _, r := range b.Ribs {
		out.head(b, r)
	}
	for i, s := range b.Stringers {
		out.stringer(b, i, s)
	}
	for kind, all := range map[string][]shaped{"stem": b.Stems, "breasthook": b.Breasthooks} {
		for _, p := range all {
			out.shaped(p, p.End+" "+kind)
		}
	}
	out.bored(b)
	out.crossings(b)
	for _, s := range b.Seats {
		out.seat(b, s)
	}
	for _, l := range b.Inside.Floors {
		out.floor(b, l)
	}
	return out, nil
}

// over is where a line runs over a station; NaN beyond its ends.
func over(line [][3]float64, x float64) (y, z float64) {
	for i := 1; i < len(line); i++ {
		if p, q := line[i-1], line[i]; p[0] <= x && x <= q[0] {
			t := (x - p[0]) / (q[0] - p[0])
			return p[1] + t*(q[1]-p[1]), p[2] + t*(q[2]-p[2])
		}
	}
	return math.NaN(), math.NaN()
}

// head holds a rib's head to the gunwale, which runs through it, over the rib's mortise.
func (f *faults) head(b *Fitted, r Rib) {
	y, z := over(b.Gunwale.Line, r.Station)
	name, up := r.Rib, r.Keel+r.Depth
	f.unless(math.Hypot(y-r.HalfBreadth, z-up) < walked, "rib %s has its head at %.2f, %.2f, the gunwale runs at %.2f, %.2f", name, r.HalfBreadth, up, y, z)
	f.unless(slices.ContainsFunc(b.Gunwale.Mortises, func(m mortised) bool { return m.Rib == name && m.Station == r.Station }), "rib %s at station %.2f has no mortise there", name, r.Station)
}

// farOut is how far the middle of a stringer may stand outside the middle of a rib, mm: more
// than any stick is thick.
const farOut = 60

// stringer holds a stringer's line to the ribs: it passes outside each at that rib's mark, and
// from rib to rib it is as long as on the stick.
func (f *faults) stringer(b *Fitted, i int, s Batten) {
	for k, r := range b.Ribs {
		y, z := over(s.Line, r.Station)
		at, heading := r.WalkTo(r.StringerMarks[i])
		sin, cos := math.Sincos(heading)
		dx, dy := y-at.X, z-r.Keel-at.Y
		out, along := dx*sin-dy*cos, dx*cos+dy*sin
		f.unless(out > 0 && out < farOut && math.Abs(along) < math.Abs(r.Correction)+1, "stringer %d passes rib %s %.2f mm out of it and %.2f mm from its mark", s.Number, r.Rib, out, along)
		if k > 0 {
			drawn, marked := lengthOf(between(s.Line, b.Ribs[k-1].Station, r.Station)), s.Marks[k]-s.Marks[k-1]
			f.unless(math.Abs(drawn-marked) < 0.1, "stringer %d is %.2f mm long from rib %s on and marked %.2f", s.Number, drawn, b.Ribs[k-1].Rib, marked)
		}
	}
}

// between is what of a line lies from one station to another.
func between(line [][3]float64, from, to float64) [][3]float64 {
	end := func(x float64) [3]float64 { y, z := over(line, x); return [3]float64{x, y, z} }
	out := [][3]float64{end(from)}
	for _, p := range line {
		if p[0] > from && p[0] < to {
			out = append(out, p)
		}
	}
	return append(out, end(to))
}

// WalkTo goes so far along the half rib, and says which way it heads there.
func (r Rib) WalkTo(far float64) (Point, float64) {
	part, heading := r, 0.0
	part.HalfArcs = nil
	for _, a := range r.HalfArcs {
		share := math.Min(1, far/a.Length)
		part.HalfArcs = append(part.HalfArcs, Bend{a.Radius, a.Sweep * share, a.Length * share})
		heading += a.Sweep * share * math.Pi / 180
		if far -= a.Length; far <= 0 {
			break
		}
	}
	end, _ := part.Walk()
	return end, heading
}

// shaped holds what is marked on a flat part to its wood.
func (f *faults) shaped(p shaped, name string) {
	wood := p.Outline().Polygon()
	for _, l := range p.Landings {
		at := Point{l[0], l[1]}
		f.unless(wood.Holds(at) || wood.From(at) < walked, "a stringer lands at %.1f, beside the %s", at, name)
	}
	if p.Hole != nil {
		at := Point{p.Hole[0], p.Hole[1]}
		f.unless(wood.Holds(at) && wood.From(at)-p.Wide/2 >= leastWood, "the gunwales' hole at %.1f lies %.2f mm from the edge of the %s", at, wood.From(at), name)
	}
	if p.Painter != nil {
		at := Point{-*p.Painter, 0}
		f.unless(wood.Holds(at), "the painter's hole at %.1f lies beside the %s", at, name)
	}
}
