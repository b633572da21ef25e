package frame

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/wood/timber"
)

// Gunwale is the port gunwale; the starboard one is its mirror. Distances
// along it are measured on the straight stock from midship, forward positive; where an
// edge-set is sprung in afterwards they are less than the lengths along the bent line
// (OnStock). Stock into which some of the set is made is not straight in its tall way:
// distances then run along its curved underside.
type Gunwale struct {
	Line              *curve.Track // through the middle of its underside
	Width, Height     float64      // mm
	Tilt              float64      // lean outward, radians
	Aft, Fore         float64      // its ends along the stock, mm
	AftCut, ForeCut   float64      // of either end across the underside, off square, radians
	AftRise, ForeRise float64      // how much longer the upper face is at either end, so that the end stands plumb, mm
	Mortises          []Mortise    // from aft forward
	ScarfLength       float64      // of one ply's scarf at the design's slope, mm
	Scarfs            []Scarf      // as the design places them
	Blocks            []Zone       // of the middle ply, between which it is left open for mortises, from aft forward; nil where mortises are cut
	NoScarf           []Zone       // where no part of a scarf may lie, from aft forward, none touching

	sheer hull.Sheer
}

// OnStock returns where the station x is marked on the underside of the straight stock,
// mm from midship along it, forward positive.
//
// How: the length along the line, which runs on the underside, less what springing in
// the edge-set stretches that face. The stock keeps its length at mid-height.
func (g *Gunwale) OnStock(x float64) float64 {
	set, u := g.sheer.At(x)
	return g.Line.Length(x) - math.Copysign(set.Shift(u, g.Height), x)
}

// Raised returns how far the made part of the edge-set curves the stock up at a mark, mm
// square to the straight line of its middle: the set rises plumb, and the stock leans.
func (g *Gunwale) Raised(mark float64) float64 {
	set, u := g.sheer.At(g.StationOf(mark))
	return set.RisesMade(u) * math.Cos(g.Tilt)
}

// Made reports whether some of the edge-set is made into the gunwales.
func (g *Gunwale) Made() bool { return g.sheer.BowSet.Made > 0 || g.sheer.SternSet.Made > 0 }

// StationOf returns the station of a mark on the straight stock, mm: the inverse of
// OnStock, to 1e-9 mm.
func (g *Gunwale) StationOf(mark float64) float64 {
	x := g.Line.Station(mark)
	for range 20 { // the shift changes by some thousandth of a millimeter for each: a round wins three digits
		miss := g.OnStock(x) - mark
		if math.Abs(miss) < 1e-10 {
			break
		}
		dy, dz := g.Line.Slopes(x)
		x -= miss / math.Sqrt(1+dy*dy+dz*dz)
	}
	return x
}

// Mortise is the slot for a rib head in the gunwale's underside.
type Mortise struct {
	Rib         string
	Station     float64 // mm from midship along the boat
	FromMidship float64 // mm from midship along the straight stock, to the slot's middle: where it is marked and cut
	AlongLine   float64 // mm from midship along the bent line: more than FromMidship where edge-set, sprung in afterwards, stretches the underside
	Length      float64 // along the stock, mm
	Width       float64 // across the stock, mm
	Depth       float64 // mm
	Bevel       float64 // lean of the rib beyond the gunwale's own square, outward positive, radians
	Along       float64 // lean of the rib's head along the stock off square to its underside, forward positive, radians
	Twist       float64 // of the rib's head about its own length, from the rib's plane to the slot: its forward edge outboard positive, radians
	Ease        float64 // what must come off the leading edge of a head's tip, or off the slot's end there, for that lean along, mm; 0 where the slot has room for it
	Wall        float64 // wood left on each side at the mouth, mm
	Deep        float64 // wood left on the thinner side at the bottom, where the lean has carried the slot, mm
	ToNext      float64 // wood to the next mortise forward, or to the end for the last, mm
	ToScarf     float64 // wood to the nearest scarf, mm; +Inf without scarfs
	Taper       float64 // planed off the tip of a leaning rib's head so that it goes into a slot that does not lean, mm; 0 for cut mortises, which do
}

// leastEnd is the least wood between the last mortise and the gunwale's end,
// mm: general joinery texts, 25 to 35 mm while cutting.
const leastEnd = 25

// leastWall is the least wood beside a mortise's bottom, mm: half of what general
// joinery texts ask for at its mouth, 4.5 mm. Common practice, no source.
const leastWall = 2.0

func newGunwale(d *design.Design, h *hull.Hull, ribs []Rib) (Gunwale, error) {
	aft, fore := h.Gunwale.Ends()
	g := Gunwale{
		Line: h.Gunwale, Width: float64(d.Gunwale.Width), Height: float64(d.Gunwale.Height),
		Tilt: float64(d.Gunwale.Tilt), sheer: h.Sheer,
	}
	g.Aft, g.Fore = g.OnStock(aft), g.OnStock(fore)
	g.AftCut, g.AftRise = g.endCut(aft, h.Sheer.SternSet)
	g.ForeCut, g.ForeRise = g.endCut(fore, h.Sheer.BowSet)
	length, err := timber.ScarfLength(g.Width/float64(d.Gunwale.Plies), d.Gunwale.ScarfSlope)
	if err != nil {
		return g, err
	}
	g.ScarfLength = length
	for _, s := range d.Gunwale.Scarfs {
		g.Scarfs = append(g.Scarfs, Scarf{float64(s), length})
	}
	for _, r := range ribs {
		g.Mortises = append(g.Mortises, newMortise(d, g, r))
	}
	g.measureGaps()
	if d.Gunwale.Mortises == design.ByGap {
		return g, g.leaveGaps(d)
	}
	return g, g.check()
}

// checkEnds keeps the end mortises clear of the gunwale's ends.
func (g *Gunwale) checkEnds() error {
	first, _ := g.Mortises[0].Ends()
	last := g.Mortises[len(g.Mortises)-1]
	if room := math.Min(first-g.Aft, last.ToNext); room < leastEnd {
		return fmt.Errorf("the end mortise leaves %.0f mm of wood to the gunwale's end; accepted: %d mm or more (ribs.from_bow, ribs.from_stern)", room, leastEnd)
	}
	return nil
}

// endCut returns the angle off square of the cut across the stock's underside at
// the station x of an end, so that the end lies across the boat, and by how much
// its upper face must reach on, so that it stands plumb. Stock bent in its tilted
// plane only keeps its tall way across the boat; edge-set alone tips it.
func (g *Gunwale) endCut(x float64, set hull.EdgeSet) (angle, longer float64) {
	dy, dz := g.Line.Slopes(x)
	angle = math.Atan(math.Abs(dy) / math.Cos(g.Tilt))
	return angle, g.Height * math.Cos(g.Tilt) * set.EndSlope() / math.Sqrt(1+dy*dy+dz*dz)
}

func newMortise(d *design.Design, g Gunwale, r Rib) Mortise {
	m := Mortise{
		Rib: r.Name, Station: r.Station, FromMidship: g.OnStock(r.Station), AlongLine: g.Line.Length(r.Station),
		Length: float64(d.Ribs.Width + d.Ribs.FitWidth),
		Width:  float64(d.Ribs.Thickness + d.Ribs.FitThickness),
		Depth:  float64(d.Ribs.MortiseDepth), Bevel: r.Section.Shape.Flare - g.Tilt,
		ToScarf: math.Inf(1),
	}
	m.Along, m.Twist = g.head(r.Station, r.Section.Shape.Flare)
	m.Ease = math.Max(0, r.Tenon*math.Tan(math.Abs(m.Along))-float64(d.Ribs.FitWidth))
	m.Wall = (g.Width - m.Width) / 2
	m.Deep = m.Wall - m.Depth*math.Tan(math.Abs(m.Bevel))
	return m
}

// head returns how the head of a rib that stands across the boat lies to the stock at the
// station x, radians: its lean along the stock off square, forward positive, and by how
// much it twists from the rib's plane to lie along the slot, its forward edge outboard
// positive. flare is the rib's lean off plumb there, outward positive. Where no edge-set
// is sprung in, a head without bevel leans along nothing and twists as the stock turns.
func (g *Gunwale) head(x, flare float64) (along, twist float64) {
	dy, dz := g.Line.Slopes(x)
	sin, cos := math.Sincos(flare)
	return math.Asin((dy*sin + dz*cos) / math.Sqrt(1+dy*dy+dz*dz)), math.Atan(dy*cos - dz*sin)
}

// Ends returns the after and the forward end of the slot, mm along the stock.
func (m Mortise) Ends() (float64, float64) {
	return m.FromMidship - m.Length/2, m.FromMidship + m.Length/2
}

func (g *Gunwale) measureGaps() {
	for i := range g.Mortises {
		m := &g.Mortises[i]
		lo, hi := m.Ends()
		m.ToNext = g.Fore - hi
		if i+1 < len(g.Mortises) {
			next, _ := g.Mortises[i+1].Ends()
			m.ToNext = next - hi
		}
		for _, s := range g.Scarfs {
			gap := math.Max(lo-(s.Middle+s.Length/2), s.Middle-s.Length/2-hi)
			m.ToScarf = math.Min(m.ToScarf, gap)
		}
	}
}

func (g *Gunwale) check() error {
	if err := g.checkEnds(); err != nil {
		return err
	}
	for _, m := range g.Mortises {
		if m.Deep < leastWall {
			return fmt.Errorf("the mortise of rib %s leans %.0f deg off the gunwale's square and leaves %.1f mm of wood beside its bottom; accepted: %.0f mm or more (bring hull.section.flare and gunwale.tilt nearer each other, or make ribs.mortise_depth less)",
				m.Rib, math.Abs(m.Bevel)*180/math.Pi, math.Floor(10*m.Deep)/10, leastWall)
		}
	}
	return nil
}

// At returns the place in the boat of a point of the bent stock: at the station
// x of its underside's middle, across mm outboard of it and up mm above it,
// both measured square to the stock as it stands before any edge-set.
func (g *Gunwale) At(x, across, up float64) geometry.Point3 {
	p, dy, _ := g.Line.At(x)
	sin, cos := math.Sincos(g.Tilt)
	along, ahead := math.Sincos(math.Atan(dy / cos)) // of the stock's turn in its own tilted plane
	return geometry.Point3{
		X: p.X - across*along,
		Y: p.Y + across*ahead*cos + up*sin,
		Z: p.Z - across*ahead*sin + up*cos,
	}
}

// EdgeAt returns the point of the same edge of the stock (across, up) that lies
// exactly at the distance x along the boat.
func (g *Gunwale) EdgeAt(x, across, up float64) geometry.Point3 {
	at := x
	const settled = 1e-11 // mm: far below what a bisection over the width would leave
	for range 20 {        // the edge runs along beside the line, so each step leaves a hundredth
		p := g.At(at, across, up)
		if math.Abs(p.X-x) < settled {
			return p
		}
		at += x - p.X
	}
	reach := g.Width + math.Abs(across)
	return g.At(curve.Bisect(x-reach, x+reach, func(station float64) bool { return g.At(station, across, up).X < x }), across, up)
}

// Outer returns the outer face in the section at the distance x along the boat, its
// lower edge first: x the half-breadth, y the height above the baseline, mm.
func (g *Gunwale) Outer(x float64) [2]geometry.Point {
	edge := g.EdgeAt(x, g.Width/2, 0)
	low := geometry.Point{X: edge.Y, Y: edge.Z}
	return [2]geometry.Point{low, low.Add(geometry.Polar(g.Height, math.Pi/2-g.Tilt))}
}

// Scarf is the stretch of gunwale in which the plies of one place are joined.
type Scarf struct{ Middle, Length float64 } // mm along the stock

// Zone is a stretch of gunwale stock, mm from midship.
type Zone struct{ From, To float64 }

// scarfClear is the whole wood kept between a mortise and a scarf, mm. Common
// practice, no source.
const scarfClear = 5

// placeScarfs works out where no scarf may lie and refuses one that does: not
// across a mortise, not under a cross piece, not in the middle third, where the
// gunwale is bent most. Common practice, no source.
func (f *Frame) placeScarfs() error {
	g := &f.Gunwale
	third := (g.Fore - g.Aft) / 3
	zones := []Zone{{g.Aft, g.Aft + leastEnd}, {g.Aft + third, g.Fore - third}, {g.Fore - leastEnd, g.Fore}}
	for _, m := range g.Mortises {
		lo, hi := m.Ends()
		zones = append(zones, Zone{lo - scarfClear, hi + scarfClear})
	}
	for _, t := range f.Design.Thwarts {
		at, half := float64(t.At), float64(t.Width)/2
		zones = append(zones, Zone{g.OnStock(at - half), g.OnStock(at + half)})
	}
	g.NoScarf = Merged(zones)
	for i, s := range g.Scarfs {
		for _, o := range g.Scarfs[:i] {
			if gap := math.Abs(s.Middle-o.Middle) - s.Length; gap < s.Length {
				return fmt.Errorf("the scarfs at %.0f and %.0f mm leave %.0f mm between them; stagger them by a scarf's length of %.0f mm at least", o.Middle, s.Middle, math.Max(0, gap), s.Length)
			}
		}
		from, to := s.Middle-s.Length/2, s.Middle+s.Length/2
		if from < g.Aft || to > g.Fore {
			return fmt.Errorf("the scarf at %.0f mm runs from %.0f to %.0f mm along the stock, past its end; %s", s.Middle, from, to, g.nearestRoom(s))
		}
		for _, z := range g.NoScarf {
			if to < z.From || from > z.To {
				continue
			}
			return fmt.Errorf("the scarf at %.0f mm runs from %.0f to %.0f mm along the stock, into the stretch from %.0f to %.0f mm that mortises, cross pieces or the middle third need whole; %s",
				s.Middle, from, to, z.From, z.To, g.nearestRoom(s))
		}
	}
	return nil
}

// Merged joins zones that touch and sorts them from aft forward.
func Merged(zones []Zone) []Zone {
	slices.SortStableFunc(zones, func(a, b Zone) int { return cmp.Compare(a.From, b.From) })
	var out []Zone
	for _, z := range zones {
		if n := len(out); n > 0 && z.From <= out[n-1].To {
			out[n-1].To = math.Max(out[n-1].To, z.To)
			continue
		}
		out = append(out, z)
	}
	return out
}

// ScarfRooms returns the stretches between the no-scarf zones that are long
// enough for a scarf of the given length, mm.
func (g *Gunwale) ScarfRooms(length float64) []Zone {
	var out []Zone
	for i := 1; i < len(g.NoScarf); i++ {
		if room := (Zone{g.NoScarf[i-1].To, g.NoScarf[i].From}); room.To-room.From >= length {
			out = append(out, room)
		}
	}
	return out
}

func (g *Gunwale) nearestRoom(s Scarf) string {
	best := middleNear(g.ScarfRooms(s.Length), s.Middle)
	if math.IsInf(best, 1) {
		return fmt.Sprintf("no gap is long enough for its %.0f mm; use thinner plies, a wider rib pitch or full-length stock", s.Length)
	}
	return fmt.Sprintf("put its middle at %.0f mm", best)
}

// middleNear returns the middle of a zone that is nearest to s, +Inf without any.
func middleNear(zones []Zone, s float64) float64 {
	best := math.Inf(1)
	for _, z := range zones {
		if mid := (z.From + z.To) / 2; math.Abs(mid-s) < math.Abs(best-s) {
			best = mid
		}
	}
	return best
}
