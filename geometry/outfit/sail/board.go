package sail

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/design"
	"ribwright/geometry/wood/beam"
)

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
	_, outer := f.Boat.GunwaleTop(f.boardStation())
	over := outer.Z - f.Rest.Plane.Water(b.At)
	b.Long = math.Ceil((b.Deep+over-PivotDown+BladeHead)/10) * 10
	b.OfSail = boardShare * 100
	b.AllUnder = (f.Hull.Area + b.Area) / area * 100
}

// boardStation keeps the board's station inside the boat.
func (f *Fit) boardStation() float64 {
	ribs := f.Boat.Frame.Ribs
	return math.Max(ribs[0].Station, math.Min(ribs[len(ribs)-1].Station, f.Board.At))
}

// bearBoard works out what the leeboard bears when it alone holds the boat, and how
// thick it must be.
func (f *Fit) bearBoard(force, working float64) {
	b := &f.Board
	if b.Area == 0 {
		return
	}
	inner, outer := f.Boat.GunwaleTop(f.boardStation())
	b.Load = force
	arm := outer.Z - f.Rest.Plane.Water(f.boardStation()) + b.Depth
	b.Moment = force * arm / 1000
	b.Thick = math.Max(16, math.Ceil(math.Sqrt(6*b.Moment*1000/(b.Chord*working))))
	cheek := beam.Rectangle(CheekLong-BracketBar, CheekThick)
	b.Working, b.Cheeks = working, b.Moment*1000/(2*cheek.Modulus)
	b.Pinch = b.Moment * 1000 / (inner.Y + outer.Y)
}

// BracketAt is the station of the leeboard's bracket: where the lead wants it, or as
// near as the boat allows, mm.
func (f *Fit) BracketAt() float64 { return f.boardStation() }

// Resists is the middle of hull and leeboard under water, station and height, mm.
func (f *Fit) Resists() geometry.Point { return f.resists() }
