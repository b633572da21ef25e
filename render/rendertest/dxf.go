package rendertest

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Entity is one thing drawn in a DXF file.
type Entity struct {
	Kind    string // LINE, ARC, CIRCLE or POLYLINE
	Layer   string
	Outline Outline
	Bulges  int     // corners with a bulge, of a POLYLINE
	Radius  float64 // of an ARC or a CIRCLE, mm
}

// DXF is a file that has been read.
type DXF struct {
	Header   map[string][]string // values of each variable, in order
	Layers   []string            // in the table's order
	Colors   map[string]int      // of the layers
	Comments []string
	Entities []Entity // in the order of the file
}

// group is one pair of lines: a code and its value.
type group struct {
	code  int
	value string
}

// ReadDXF reads an ASCII file of release 12.
//
// Errors: line ends other than CR LF, a code or number that is none, an entity
// that is not LINE, ARC, CIRCLE or POLYLINE, one on a layer the table lacks, or a
// file that stops short.
func ReadDXF(src []byte) (*DXF, error) {
	groups, err := readGroups(string(src))
	if err != nil {
		return nil, err
	}
	d := &DXF{Header: map[string][]string{}, Colors: map[string]int{}}
	section := ""
	for i := 0; i < len(groups); i++ {
		g := groups[i]
		switch {
		case g.code == 999:
			d.Comments = append(d.Comments, g.value)
		case g.code == 0 && g.value == "SECTION":
			i++
			section = groups[i].value
		case g.code == 0 && g.value == "ENDSEC":
			section = ""
		case g.code == 0 && g.value == "EOF":
			if i != len(groups)-1 {
				return nil, fmt.Errorf("more after EOF")
			}
			return d, nil
		case section == "HEADER" && g.code == 9:
			for i+1 < len(groups) && groups[i+1].code != 9 && groups[i+1].code != 0 {
				i++
				d.Header[g.value] = append(d.Header[g.value], groups[i].value)
			}
		case section == "TABLES" && g.code == 0 && g.value == "LAYER":
			i = d.readLayer(groups, i)
		case section == "ENTITIES" && g.code == 0:
			if i, err = d.readEntity(groups, i); err != nil {
				return nil, fmt.Errorf("entity %d, %s: %w", len(d.Entities)+1, g.value, err)
			}
		}
	}
	return nil, fmt.Errorf("no EOF")
}

func readGroups(src string) ([]group, error) {
	lines := strings.Split(src, "\r\n")
	if strings.Count(src, "\n") != len(lines)-1 || lines[len(lines)-1] != "" || len(lines)%2 != 1 {
		return nil, fmt.Errorf("not pairs of lines that end in CR LF")
	}
	var out []group
	for i := 0; i+1 < len(lines); i += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(lines[i]))
		if err != nil {
			return nil, fmt.Errorf("line %d: %q is no code", i+1, lines[i])
		}
		out = append(out, group{code, lines[i+1]})
	}
	return out, nil
}

// fields gathers the groups of what begins at i, up to the next group 0.
func fields(groups []group, i int) (map[int]string, int) {
	out := map[int]string{}
	for i++; i < len(groups) && groups[i].code != 0; i++ {
		out[groups[i].code] = groups[i].value
	}
	return out, i - 1
}

func (d *DXF) readLayer(groups []group, i int) int {
	f, last := fields(groups, i)
	d.Layers = append(d.Layers, f[2])
	d.Colors[f[2]], _ = strconv.Atoi(f[62])
	return last
}

func (d *DXF) readEntity(groups []group, i int) (int, error) {
	f, last := fields(groups, i)
	e := Entity{Kind: groups[i].value, Layer: f[8]}
	known := false
	for _, l := range d.Layers {
		known = known || l == e.Layer
	}
	if !known {
		return 0, fmt.Errorf("layer %q is not in the table", e.Layer)
	}
	r := &numberReader{f: f}
	switch e.Kind {
	case "LINE":
		e.Outline.Pieces = []Piece{{From: r.point(10), To: r.point(11)}}
	case "ARC":
		e.Radius = r.number(40)
		from, to := r.number(50)*math.Pi/180, r.number(51)*math.Pi/180
		if to <= from {
			to += 2 * math.Pi
		}
		e.Outline.Pieces = round(r.point(10), e.Radius, from, to-from)
	case "CIRCLE":
		e.Radius = r.number(40)
		e.Outline = Outline{round(r.point(10), e.Radius, 0, 2*math.Pi), true}
	case "POLYLINE":
		return d.readPolyline(groups, last+1, e, f[70] == "1")
	default:
		return 0, fmt.Errorf("not a kind that is read")
	}
	d.Entities = append(d.Entities, e)
	return last, r.err
}

// readPolyline reads the corners up to the end of the sequence.
func (d *DXF) readPolyline(groups []group, i int, e Entity, closed bool) (int, error) {
	type corner struct {
		at    Point
		bulge float64
	}
	var all []corner
	for ; i < len(groups) && groups[i].value == "VERTEX"; i++ {
		f, last := fields(groups, i)
		r := &numberReader{f: f}
		c := corner{at: r.point(10)}
		if _, ok := f[42]; ok {
			c.bulge = r.number(42)
			e.Bulges++
		}
		if r.err != nil || f[8] != e.Layer {
			return 0, fmt.Errorf("corner %d: %v, layer %q", len(all)+1, r.err, f[8])
		}
		all, i = append(all, c), last
	}
	if i >= len(groups) || groups[i].value != "SEQEND" || len(all) < 2 {
		return 0, fmt.Errorf("%d corners and no end", len(all))
	}
	for k, c := range all {
		if k+1 == len(all) && !closed {
			break
		}
		e.Outline.Pieces = append(e.Outline.Pieces, bulged(c.at, all[(k+1)%len(all)].at, c.bulge)...)
	}
	e.Outline.Closed = closed
	d.Entities = append(d.Entities, e)
	_, last := fields(groups, i)
	return last, nil
}

// bulged returns the arc from a to b whose sweep is four times the angle whose
// tangent is the bulge, counter-clockwise when positive; a straight line for 0.
func bulged(a, b Point, bulge float64) []Piece {
	if bulge == 0 {
		return []Piece{{From: a, To: b}}
	}
	sweep := 4 * math.Atan(bulge)
	half := a.To(b) / 2
	radius := half / math.Sin(math.Abs(sweep)/2)
	// The centre lies left of the chord for a short turn to the left.
	up := half / math.Tan(sweep/2)
	mx, my := (a.X+b.X)/2, (a.Y+b.Y)/2
	nx, ny := -(b.Y-a.Y)/(2*half), (b.X-a.X)/(2*half)
	c := Point{mx + nx*up, my + ny*up}
	return round(c, radius, math.Atan2(a.Y-c.Y, a.X-c.X), sweep)
}

// round returns an arc as Bézier cubics of at most 15 degrees, within 1e-8 of the
// radius.
func round(c Point, radius, from, sweep float64) []Piece {
	n := int(math.Ceil(math.Abs(sweep) / (math.Pi / 12)))
	step := sweep / float64(n)
	k := 4.0 / 3 * math.Tan(step/4) * radius
	out := make([]Piece, n)
	at := func(a float64) Point { return Point{c.X + radius*math.Cos(a), c.Y + radius*math.Sin(a)} }
	for i := range out {
		a, b := from+float64(i)*step, from+float64(i+1)*step
		p, q := at(a), at(b)
		out[i] = Piece{From: p, To: q, Curved: true,
			C1: Point{p.X - k*math.Sin(a), p.Y + k*math.Cos(a)}, C2: Point{q.X + k*math.Sin(b), q.Y - k*math.Cos(b)}}
	}
	return out
}

// numberReader reads numbers and keeps the first error.
type numberReader struct {
	f   map[int]string
	err error
}

func (r *numberReader) number(code int) float64 {
	s := r.f[code]
	v, err := strconv.ParseFloat(s, 64)
	if (err != nil || strings.Trim(s, "-.0123456789") != "") && r.err == nil {
		r.err = fmt.Errorf("group %d is %q, no plain number", code, s)
	}
	return v
}

func (r *numberReader) point(code int) Point { return Point{r.number(code), r.number(code + 10)} }

// On returns the entities of a layer.
func (d *DXF) On(layer string) []Entity {
	var out []Entity
	for _, e := range d.Entities {
		if e.Layer == layer {
			out = append(out, e)
		}
	}
	return out
}
