package sail

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/water/float"
	"ribwright/geometry/wood/beam"
)

// Profile is what resists sideways under water, seen from the side.
type Profile struct {
	Area   float64        // m2
	Center geometry.Point // X the station, Y the height over the baseline, mm
}

// profile adds up the hull's under water, in straight lines between stations.
func profile(h *float.Hull, p float.Plane) Profile {
	var area, mx, mz float64
	rows := h.Profile()
	for i := 1; i < len(rows); i++ {
		a, b := rows[i-1], rows[i]
		ta, tb := math.Max(0, p.Water(a[0])-a[1]), math.Max(0, p.Water(b[0])-b[1])
		w := b[0] - a[0]
		part := w * (ta + tb) / 2
		if part == 0 {
			continue
		}
		area += part
		mx += w * (a[0]*(2*ta+tb) + b[0]*(ta+2*tb)) / 6
		mid := (p.Water(a[0]) + p.Water(b[0])) / 2
		mz += part*mid - w*(ta*ta+ta*tb+tb*tb)/6
	}
	return Profile{area / 1e6, geometry.Point{X: mx / area, Y: mz / area}}
}

func (p Profile) with(q Profile) Profile {
	a := p.Area + q.Area
	if a == 0 {
		return p
	}
	return Profile{a, p.Center.Scale(p.Area / a).Add(q.Center.Scale(q.Area / a))}
}

// Board is the leeboard.
type Board struct {
	Area     float64    // under water, m2
	Chord    float64    // mm
	Deep     float64    // under water, mm
	Long     float64    // whole, mm
	At       float64    // station of its middle, mm, for the middle of the lead
	Range    [2]float64 // stations for the greatest and the least lead, mm
	Depth    float64    // of its middle under the water, mm
	Thick    float64    // mm
	Load     float64    // N, sideways
	Moment   float64    // N m, at the gunwale
	Cheeks   float64    // N/mm2, in both cheeks beside the bar's hole
	Working  float64    // N/mm2, that their wood is asked to carry
	Pinch    float64    // N, the couple on the bracket over the gunwales' width
	OfSail   float64    // its area over the sail's, %
	AllUnder float64    // all the profile under water over the sail's area, %
}

// The leeboard: its share of the sail's area (4 is seen, a board that pierces the
// surface needs 5 to 8; forum grade), its length over its chord, and the lead of the
// sail's center before the lateral resistance as a share of the waterline (books: 5
// to 12 for small boats, 4 to 17 over all; from memory).
const (
	boardShare  = 0.06
	boardAspect = 2.6
	leadLow     = 0.05
	leadHigh    = 0.10
)

// place returns the station of a piece of area b that brings the middle of the
// resistance of hull and board to a station.
func place(hull Profile, b, want float64) float64 {
	return (want*(hull.Area+b) - hull.Area*hull.Center.X) / b
}

// layBoard sizes and places the leeboard for the lead; a vee has none.
func (f *Fit) layBoard(area float64) {
	f.Board = Board{}
	if f.Sail.Rig == design.Vee {
		return
	}
	b := &f.Board
	b.Area = boardShare * area
	b.Chord = math.Max(150, math.Round(math.Sqrt(b.Area*1e6/boardAspect)/5)*5)
	b.Deep = b.Area * 1e6 / b.Chord
	b.Depth = b.Deep / 2
	effort := f.Mast.At + f.Plan.Center().X
	for i, lead := range []float64{leadHigh, leadLow} {
		b.Range[i] = place(f.Hull, b.Area, effort-lead*f.Rest.LWL)
	}
	b.At = (b.Range[0] + b.Range[1]) / 2
	b.At += f.BracketClip().Hole.X - f.BracketAt()
	_, outer := f.Boat.GunwaleTop(f.BracketAt())
	over := outer.Z - f.Rest.Plane.Water(b.At)
	b.Long = math.Ceil((b.Deep+over-PivotDown+BladeHead)/10) * 10
	b.OfSail = boardShare * 100
	b.AllUnder = (f.Hull.Area + b.Area) / area * 100
}

// BracketAt is the station of the leeboard's bracket: where the lead wants it, or as
// near as the boat allows, mm.
func (f *Fit) BracketAt() float64 {
	ribs := f.Boat.Frame.Ribs
	return math.Max(ribs[0].Station, math.Min(ribs[len(ribs)-1].Station, f.Board.At))
}

// inner is how much of the boat between its last ribs a leeboard may lie in. Our own choice.
const inner = 0.8

// boardRoom are the stations between which a leeboard may lie, mm.
func (f *Fit) boardRoom() (aft, fore float64) {
	ribs := f.Boat.Frame.Ribs
	return inner * ribs[0].Station, inner * ribs[len(ribs)-1].Station
}

// Balanced reports whether a leeboard inside the boat balances the sail, or none is wanted.
func (f *Fit) Balanced() bool {
	aft, fore := f.boardRoom()
	return f.Board.Area == 0 || f.Board.At >= aft && f.Board.At <= fore
}

// balancedAt is the station between two ribs, nearest to the mast and clear of cross pieces,
// from which a leeboard inside the boat balances the sail; false for none.
func (f *Fit) balancedAt() (float64, bool) {
	var all []float64
	ribs := f.Boat.Frame.Ribs
	for i := 1; i < len(ribs); i++ {
		all = append(all, (ribs[i-1].Station+ribs[i].Station)/2)
	}
	slices.SortStableFunc(all, func(a, b float64) int {
		return cmp.Compare(math.Abs(a-f.Mast.At), math.Abs(b-f.Mast.At))
	})
	// The board goes farther than the mast by as much as hull and board resist more than it,
	// but for the trim: so who is far off need not be tried.
	share := f.Board.Area / (f.Hull.Area + f.Board.Area)
	for _, at := range all {
		board := f.Board.At + (at-f.Mast.At)/share
		if math.Abs(at) < 1 || board < ribs[0].Station || board > ribs[len(ribs)-1].Station || len(f.crossedAt(at)) > 0 {
			continue
		}
		g := &Fit{Boat: f.Boat, Sail: f.Sail, Water: f.Water}
		g.Sail.MastAt = measure.Length(at)
		if g.stepMast() == nil && g.try(f.Plan.Area(), false) == nil && g.Balanced() {
			return at, true
		}
	}
	return 0, false
}

// bearBoard works out what the leeboard bears when it alone holds the boat, and how
// thick it must be.
func (f *Fit) bearBoard(force, working float64) {
	b := &f.Board
	if b.Area == 0 {
		return
	}
	inner, outer := f.Boat.GunwaleTop(f.BracketAt())
	b.Load = force
	arm := outer.Z - f.Rest.Plane.Water(f.BracketAt()) + b.Depth
	b.Moment = force * arm / 1000
	b.Thick = math.Max(16, math.Ceil(math.Sqrt(6*b.Moment*1000/(b.Chord*working))))
	cheek := beam.Rectangle(CheekLong-BracketBar, CheekThick)
	b.Working, b.Cheeks = working, b.Moment*1000/(2*cheek.Modulus)
	b.Pinch = b.Moment * 1000 / (inner.Y + outer.Y)
}

// Resists is the middle of hull and leeboard under water, station and height, mm.
func (f *Fit) Resists() geometry.Point {
	b := Profile{f.Board.Area, geometry.Point{X: f.Board.At, Y: f.Rest.Plane.Water(f.Board.At) - f.Board.Depth}}
	return f.Hull.with(b).Center
}
