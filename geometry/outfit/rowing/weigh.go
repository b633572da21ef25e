package rowing

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/weight"
)

// SeatLong returns the length of the seat across the boat, mm: the rower's hips and
// a hand's breadth, as much as fits between the gunwales.
func (f *Fit) SeatLong() float64 {
	inner, _ := f.Boat.GunwaleTop(f.SeatX)
	return math.Min(math.Ceil((f.Body.Hip+60)/10)*10, math.Floor(2*inner.Y/10)*10-20)
}

// BarLong returns the length of a bar, mm.
func (f *Fit) BarLong() float64 { return f.Span + 2*BarSpare }

// BoardThick is the thickness of seat, footrest and rowlock boards, mm.
const BoardThick = 18.0

// FootrestHigh is the height of the footrest, mm; Clips is how many hold the frame.
const (
	FootrestHigh = 120.0
	Clips        = 4
)

// FootrestLong is the length of the footrest across the boat, mm.
func (f *Fit) FootrestLong() float64 { return math.Min(f.SeatLong(), 420) }

// CheekLong and CheekHigh are the measures of the seat's cheeks, mm.
const CheekLong = SeatWide - 20

// CheekHigh stands the seat over the ribs.
func (f *Fit) CheekHigh() float64 { return math.Max(20, f.SeatOver-BoardThick) }

// Items lists what the outfit weighs besides the rower.
//
// Errors: a wood that is not known.
func (f *Fit) Items() ([]weight.Item, error) { return f.Kit().Items(f.Boat.Frame.Design) }

// The entries of the list of weights.
const (
	outrigger = "Rowing frame, rowlocks"
	seating   = "Rowing seat and footrest"
	pulling   = "Oars"
)

// Kit lists what the outfit is made of.
func (f *Fit) Kit() kit.Kit {
	at := func(x, z float64) geometry.Point3 { return geometry.Point3{X: x, Z: z} }
	top := at(f.LockX, f.GunwaleZ+f.BarThick/2)
	seat, foot := at(f.SeatX, f.SeatZ-f.SeatOver/2), at(f.FootX, f.Boat.Floor(f.FootX)+FootrestHigh/2)
	board := func(group, name string, count int, long, wide, thick float64, p geometry.Point3) kit.Piece {
		return kit.Piece{Group: group, Name: name, Count: count, Wood: f.Row.Species,
			Long: math.Max(long, wide), Wide: math.Min(long, wide), Thick: thick, Fill: 1, At: p}
	}
	// A rowlock with its socket is some 0.35 kg, an oar 2.2 kg for 2.4 m; from memory.
	oars := 2 * 2.2 * f.Oar.Length / 2400
	return kit.Kit{Name: "row", Pieces: []kit.Piece{
		board(outrigger, "Forward bar", 1, f.BarLong(), BarWide, f.BarThick, at(f.LockX+Pitch/2, top.Z)),
		board(outrigger, "After bar", 1, f.BarLong(), BarWide, f.BarThick, at(f.LockX-Pitch/2, top.Z)),
		board(outrigger, "Rowlock board", 2, BoardLong, BoardWide, BoardThick, top),
		kit.Clip(f.Boat.Frame.Gunwale, outrigger, f.Row.Species, Clips, top),
		board(seating, "Rowing seat", 1, f.SeatLong(), SeatWide, BoardThick, at(f.SeatX, f.SeatZ-BoardThick/2)),
		board(seating, "Cheek of the seat", 2, CheekLong, f.CheekHigh(), BoardThick, seat),
		board(seating, "Footrest", 1, f.FootrestLong(), FootrestHigh, BoardThick, foot),
	}, Things: []kit.Thing{
		{Group: outrigger, Key: "rowlock", Name: "rowlocks with sockets", Amount: 2, Unit: "each", How: "one on each side", Mass: 0.7, At: top},
		kit.Bolts(outrigger, Clips+4, "one through each clip, one through each end of both bars", top),
		{Group: pulling, Key: "oar", Name: "oars", Amount: 2, Unit: "each", How: "bought, or made to the figures of the outfit", Mass: oars, At: at(f.LockX, f.LockZ)},
	}}
}
