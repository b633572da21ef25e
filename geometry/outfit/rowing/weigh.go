package rowing

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/inside"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/outfit/clip"
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

// Clips is how many hold the frame.
const Clips = 4 // one under each end of each bar

// What holds seat and footrest together: screws through the seat into a cheek, into the
// brace and through each cheek into it, and through the footrest into each knee; lashings of
// cheeks, rails and heel slats, two each.
const (
	cheekScrews, braceScrews, kneeScrews = 4, 3 + 2*2, 3
	lashed                               = 2
)

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
	seat, foot := at(f.SeatX, f.SeatZ-f.SeatOver/2), at(f.FootX, f.Boat.Floor(f.FootX)+f.Foot.Tall/2)
	board := func(group, name string, count int, long, wide, thick float64, p geometry.Point3) kit.Piece {
		return kit.Piece{Group: group, Name: name, Count: count, Wood: f.Row.Species,
			Long: math.Max(long, wide), Wide: math.Min(long, wide), Thick: thick, Fill: 1, At: p}
	}
	// A rowlock with its socket is some 0.35 kg, an oar 2.2 kg for 2.4 m; from memory.
	oars := 2 * 2.2 * f.Oar.Length / 2400
	cheek := board(seating, "Cheek of the seat", 2, 0, 0, BoardThick, seat)
	cheek.Block(f.CheekOutline())
	braceLong, braceHigh := f.SeatBrace()
	k := kit.Kit{Name: "row", Pieces: []kit.Piece{
		board(outrigger, "Forward bar", 1, f.BarLong(), BarWide, f.BarThick, at(f.Bars[0], top.Z)),
		board(outrigger, "After bar", 1, f.BarLong(), BarWide, f.BarThick, at(f.Bars[1], top.Z)),
		board(outrigger, "Rowlock board", 2, f.BoardLong(), BoardWide, BoardThick, top),
		kit.Clip(f.Boat.Frame.Gunwale, outrigger, f.Row.Species, Clips, top),
		board(seating, "Rowing seat", 1, f.SeatLong(), SeatWide, BoardThick, at(f.SeatX, f.SeatZ-BoardThick/2)),
		cheek,
		board(seating, "Brace of the seat", 1, braceLong, braceHigh, BoardThick, seat),
	}, Things: []kit.Thing{
		{Group: outrigger, Key: "rowlock", Name: "rowlocks with sockets", Amount: 2, Unit: "each", How: "one on each side", Mass: 0.7, At: top},
		kit.Bolts(outrigger, Clips+4, fmt.Sprintf("4 of %.0f mm through the bars and clips, 4 of %.0f mm through both ends of both bars", clip.BoltLong(f.Boat.Frame.Gunwale, f.BarThick), math.Ceil((f.BarThick+BoardThick+boltNut)/10)*10), top),
		{Group: pulling, Key: "oar", Name: "oars", Amount: 2, Unit: "each", How: "bought, or made to the figures of the outfit", Mass: oars, At: at(f.LockX, f.LockZ)},
	}}
	lashings, screws := 2*lashed, 2*cheekScrews+braceScrews
	if b := f.Foot; f.FootFits {
		k.Pieces = append(k.Pieces, board(seating, "Footrest", 1, b.Bar, b.Tall, b.Thick, foot),
			board(seating, "Rail of the footrest", 2, b.Rail, b.RailTall, b.RailWide, foot), board(seating, "Knee of the footrest", 2, inside.Knee, inside.Knee, b.RailWide, foot))
		k.Pieces[len(k.Pieces)-2].Fill = 1 - inside.Holes*math.Pi/4*inside.Peg*inside.Peg/(b.Rail*b.RailTall)
		k.Pieces[len(k.Pieces)-1].Fill = 0.5
		lashings, screws = lashings+2*lashed, screws+2*kneeScrews
		if wide, thick := f.HeelSlat(); wide > 0 {
			k.Pieces = append(k.Pieces, board(seating, "Slat under a heel", 2, b.Rail, wide, thick, foot))
			lashings += 2 * lashed
		}
		k.Things = append(k.Things, kit.Thing{Group: seating, Key: "brace-peg", Name: "hardwood pegs of 8 mm", Amount: 2, Unit: "each", How: "the footrest's, 60 mm long", Mass: 0.004, Dense: 670, At: foot})
	}
	n := float64(screws)
	k.Things = append(k.Things, kit.Thing{Group: seating, Key: kit.ScrewKey, Name: kit.ScrewName, Amount: n, Unit: "each", How: "45 mm: seat, cheeks and their brace; 30 mm: footrest", Mass: n * kit.ScrewMass, At: seat},
		kit.Thing{Group: seating, Key: "cord", Name: "lashing cord", Amount: float64(lashings) * inside.Lashing, Unit: "m", How: fmt.Sprintf("%d lashings of seat and footrest", lashings), At: seat})
	return k
}

// boltNut is what washers and wing nut take of a bolt, mm.
const boltNut = 12.0
