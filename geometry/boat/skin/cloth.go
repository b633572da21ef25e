// Package skin is the one model of a boat's cloth. Cloth bridges flat between the outer
// corners of keel, stringers and gunwales, so the boat that floats, nests and is
// covered is the polygon through them, not the ribs' arcs.
package skin

import (
	"math"
	"slices"
	"sort"
	"sync"

	"ribwright/geometry"
	"ribwright/geometry/water/float"
)

// Boat is what a boat must tell of itself to be covered: its port side, in a section x
// the half-breadth and y the height above the baseline, mm. A finished frame is one,
// and so is the quick sketch of a boat that is being sized.
type Boat interface {
	Ribs() []Rib                              // from aft forward
	Keel(x float64) float64                   // height of the cloth on the middle line, along keel and stems
	Stringer(i int, x float64) geometry.Point // a line along the i-th from the keel, from landing to landing
	Gunwale(x float64) [2]geometry.Point      // lower and upper edge of the outer face
	Ends() (stern, bow End)
	Thickness() float64 // of the cloth
}

// Rib is the wood under the cloth at a rib.
type Rib struct {
	Station float64
	Corners []geometry.Point // the keel's middle and edge, two of each stringer, the gunwale's lower and upper
}

// Girth returns the length of the half outline and the middle of its line, mm.
func (r Rib) Girth() (length float64, middle geometry.Point) {
	for i := 1; i < len(r.Corners); i++ {
		a, b := r.Corners[i-1], r.Corners[i]
		l := b.Sub(a).Norm()
		length += l
		middle = middle.Add(b.Lerp(a, 0.5).Scale(l))
	}
	return length, middle.Scale(1 / length)
}

// End is one end of the boat. Distances are from midship, positive, mm.
type End struct {
	Tip      float64   // the outermost point
	Toe      float64   // where the keel ends on the stem
	Gunwale  float64   // where the gunwales end
	Top      float64   // height of the stem head
	Siding   float64   // thickness of the stem
	Landings []float64 // where each stringer ends
}

// Cloth is the cloth over one boat. Nothing in it changes after New.
type Cloth struct {
	Hull *float.Hull // what it holds, for floating

	boat     Boat
	ribs     []Rib
	covered  [][]geometry.Point // by rib: the corners with the cloth over them
	off      []off              // by rib
	ends     [2]End             // stern, bow
	stations []float64
}

// off are the corners of the cloth over a rib off the lines of keel, stringers and gunwale,
// found when they are first asked for: a boat that only floats asks for a few ribs'.
type off struct {
	once    sync.Once
	corners []geometry.Point
}

// New covers a boat and makes it ready to float, with so many stations between the
// last rib and the tip of each end: an even number, so that Simpson's rule fits.
//
// Errors: an outline that is no section of a hull.
func New(b Boat, steps int) (*Cloth, error) {
	c := &Cloth{boat: b, ribs: b.Ribs()}
	c.ends[0], c.ends[1] = b.Ends()
	c.covered, c.off = make([][]geometry.Point, len(c.ribs)), make([]off, len(c.ribs))
	outlines := make(room, len(c.ribs)*c.corners())
	for k, r := range c.ribs {
		c.covered[k] = outlines.cut(len(r.Corners))
		covered(c.covered[k], r.Corners, b.Thickness())
	}
	first, last := c.ribs[0].Station, c.ribs[len(c.ribs)-1].Station
	c.stations = make([]float64, 0, len(c.ribs)+2*steps)
	for k := steps; k > 0; k-- {
		c.stations = append(c.stations, -between(-first, c.ends[0].Tip, k, steps))
	}
	for _, r := range c.ribs {
		c.stations = append(c.stations, r.Station)
	}
	for k := 1; k <= steps; k++ {
		c.stations = append(c.stations, between(last, c.ends[1].Tip, k, steps))
	}
	var err error
	rows := make(room, 2*steps*c.corners())
	c.Hull, err = c.float(func(x float64) []geometry.Point {
		switch i, onRib := c.rib(x); {
		case !onRib:
			return c.at(x, rows.cut(c.corners()))
		case meets(c.covered[i]):
			return slices.Clone(c.covered[i])
		default:
			return c.covered[i]
		}
	})
	return c, err
}

// room is room for many outlines, of which one after the other is cut off.
type room []geometry.Point

func (r *room) cut(n int) []geometry.Point {
	out := (*r)[:n:n]
	*r = (*r)[n:]
	return out
}

// offLines returns the corners over a rib off the lines there.
func (c *Cloth) offLines(rib int) []geometry.Point {
	o := &c.off[rib]
	o.once.Do(func() {
		corners := c.ribs[rib].Corners
		o.corners = make([]geometry.Point, c.corners())
		c.lines(o.corners, c.ribs[rib].Station, [2]geometry.Point(corners[len(corners)-2:]))
		for i, p := range c.covered[rib] {
			o.corners[i] = p.Sub(o.corners[i])
		}
	})
	return o.corners
}

// rib returns the first rib from x on, and whether x is its station.
func (c *Cloth) rib(x float64) (i int, onRib bool) {
	i = sort.Search(len(c.ribs), func(i int) bool { return c.ribs[i].Station >= x })
	return i, i < len(c.ribs) && c.ribs[i].Station == x
}

// meets reports whether two neighboring corners of an outline are one point.
func meets(outline []geometry.Point) bool {
	for i := 1; i < len(outline); i++ {
		if outline[i] == outline[i-1] {
			return true
		}
	}
	return false
}

// corners is how many an outline has.
func (c *Cloth) corners() int { return 4 + 2*len(c.ends[0].Landings) }

// between is the k-th of so many steps from the last rib to the tip.
func between(from, tip float64, k, steps int) float64 {
	return from + (tip-from)*float64(k)/float64(steps)
}

// Ribs returns the wood under the cloth, from aft forward.
func (c *Cloth) Ribs() []Rib { return c.ribs }

// Ends returns both ends.
func (c *Cloth) Ends() (stern, bow End) { return c.ends[0], c.ends[1] }

// Stations returns where the boat is cut to be floated: at the ribs and, more closely,
// in the ends, from tip to tip.
func (c *Cloth) Stations() []float64 { return slices.Clone(c.stations) }

func (c *Cloth) float(at func(x float64) []geometry.Point) (*float.Hull, error) {
	rows := make([]float.Station, len(c.stations))
	for i, x := range c.stations {
		knuckle := x == c.ribs[0].Station || x == c.ribs[len(c.ribs)-1].Station
		rows[i] = float.Station{X: x, Half: slices.Compact(at(x)), Knuckle: knuckle}
	}
	return float.New(rows)
}

// Area returns the whole outside of both sides, mm2.
func (c *Cloth) Area() float64 {
	const deep = 1e6 // mm of water: all of it is under
	return c.Hull.Wetted(float.Level(deep))
}

// Width returns the greatest width over the gunwales at a station, mm.
func (c *Cloth) Width(x float64) float64 {
	pts := c.At(x)
	return 2 * math.Max(pts[len(pts)-2].X, pts[len(pts)-1].X)
}

// At returns the outline at a station: as many corners as a rib has, from the middle
// of the keel out to the gunwale's upper edge. Where a batten has ended, its corners
// lie on the next one inward, and past the tip all lie on the middle line.
func (c *Cloth) At(x float64) []geometry.Point {
	return c.at(x, make([]geometry.Point, c.corners()))
}

// at is At in room for it.
func (c *Cloth) at(x float64, out []geometry.Point) []geometry.Point {
	i, onRib := c.rib(x)
	switch {
	case onRib:
		copy(out, c.covered[i])
		return out
	case i == 0, i == len(c.ribs):
		return c.Past(x, c.Lines(x), out)
	}
	a, b := c.ribs[i-1].Station, c.ribs[i].Station
	c.lines(out, x, c.boat.Gunwale(x))
	before, after := c.offLines(i-1), c.offLines(i)
	for k := range out {
		out[k] = out[k].Add(before[k].Lerp(after[k], (x-a)/(b-a)))
	}
	return out
}

// lines are what the corners follow from rib to rib: the keel's skin on the middle
// line, the stringers, the gunwale's edges as given.
func (c *Cloth) lines(out []geometry.Point, x float64, rail [2]geometry.Point) {
	keel := geometry.Point{Y: c.boat.Keel(x)}
	out[0], out[1] = keel, keel
	for i := range c.ends[0].Landings {
		p := c.boat.Stringer(i, x)
		out[2+2*i], out[3+2*i] = p, p
	}
	copy(out[len(out)-2:], rail[:])
}

// covered puts into out an outline moved out by the thickness of the skin: every corner along
// the line that halves it, so that each side moves by the thickness. The ends
// move square to their sides; the first stays on the middle line and the last,
// the gunwale's upper edge, at its height.
func covered(out, pts []geometry.Point, skin float64) {
	var before, after geometry.Point
	for i, p := range pts {
		if before = after; i < len(pts)-1 {
			after = unit(pts[i+1].Sub(p))
		}
		if i == 0 {
			before = after
		}
		// Out is to the right of the way from keel to gunwale.
		n := unit(before.Add(after).Left().Scale(-1))
		reach := skin / max(0.5, n.Dot(before.Left().Scale(-1)))
		out[i] = p.Add(n.Scale(reach))
	}
	out[0].X, out[len(out)-1].Y = pts[0].X, pts[len(pts)-1].Y
}

// unit is Unit of a step of millimeters, which is quicker without care for steps whose square
// is no number.
func unit(p geometry.Point) geometry.Point {
	n := math.Sqrt(p.Dot(p))
	if n == 0 {
		return geometry.Point{}
	}
	return geometry.Point{X: p.X / n, Y: p.Y / n}
}

// Lines are what the cloth follows at one station past the last rib.
type Lines struct {
	Keel      float64           // height of the keel or of the stem's outer edge
	Stringers []geometry.Point  // those that have not yet landed on the stem, from the keel up; zero for one that has
	Gunwale   [2]geometry.Point // zero past the gunwales' ends
	Off       []geometry.Point  // corners of the cloth off these lines at the last rib
}

// Lines returns them at a station past the last rib of either end.
func (c *Cloth) Lines(x float64) Lines {
	e, last, side := c.endAt(x)
	l := Lines{Keel: c.boat.Keel(x), Stringers: make([]geometry.Point, len(e.Landings)), Off: c.offLines(last)}
	for i, land := range e.Landings {
		if x*side < land {
			l.Stringers[i] = c.boat.Stringer(i, x)
		}
	}
	if x*side <= e.Gunwale {
		l.Gunwale = c.boat.Gunwale(x)
	}
	return l
}

// endAt returns the end past whose last rib the station x lies, that rib and the way out.
func (c *Cloth) endAt(x float64) (e End, last int, side float64) {
	if x < c.ribs[0].Station {
		return c.ends[0], 0, -1
	}
	return c.ends[1], len(c.ribs) - 1, 1
}

// Past draws the section at a station past the last rib from the lines there: the
// keel or the stem's outer edge, the stringers that have not yet landed on the stem,
// the gunwale or the stem's head. The keel's edge is taken bare, the gunwale's face
// moved straight out: at the last rib that is up to 0.2 mm off the covered corners. It
// is drawn in the room given, where that is large enough.
func (c *Cloth) Past(x float64, l Lines, room []geometry.Point) []geometry.Point {
	e, last, side := c.endAt(x)
	u, from := x*side, c.ribs[last].Station*side
	out := slices.Grow(room[:0], len(l.Off))[:len(l.Off)]
	low, top := l.Keel, geometry.Point{X: e.Siding / 2, Y: e.Top}
	if u >= e.Tip {
		low, top.X = math.Min(low, e.Top), 0
	}
	for i := range out {
		out[i] = geometry.Point{Y: low}
	}
	out[len(out)-2], out[len(out)-1] = top, top
	if u >= e.Tip {
		return out
	}
	share := math.Min(1, (u-from)/(e.Toe-from))
	edge := geometry.Point{X: c.ribs[last].Corners[1].X*(1-share) + e.Siding/2*share, Y: low}
	out[1] = edge
	for i, land := range e.Landings {
		out[2+2*i], out[3+2*i] = edge, edge
		if u >= land {
			continue
		}
		fade := 1 - (u-from)/(land-from)
		for k := 2 + 2*i; k < 4+2*i; k++ {
			p := l.Stringers[i].Add(l.Off[k].Scale(fade))
			if p.X = max(0, p.X); p.Y > low {
				out[k] = p
			}
		}
	}
	if u <= e.Gunwale {
		out := out[len(out)-2:]
		for k, p := range l.Gunwale {
			out[k] = p.Add(geometry.Point{X: c.boat.Thickness()})
		}
	}
	return out
}

// Over returns the outline of the cloth over a rib with the given corners.
func (c *Cloth) Over(corners []geometry.Point) []geometry.Point {
	out := make([]geometry.Point, len(corners))
	covered(out, corners, c.boat.Thickness())
	return out
}
