package fittings

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/wording"
)

// What is bought for seats. Masses are estimates, but for foam (30 to 35 kg/m3).
const (
	boltMass     = 0.025 // kg, M6 with its washers and nut
	webMass      = 0.045 // kg/m of webbing 50 mm wide
	pegMass      = 0.001 // kg, of hardwood, 6 mm across and 55 to 75 mm long
	webDense     = 950.0 // kg/m3 of polypropylene with a buckle's share
	foamDensity  = 33e-9 // kg/mm3
	padWaste     = 1.1   // bought for what is cut. Common practice, no source
	threadPerEnd = 1.0   // m: two rows of 50 mm, six times their length with what goes through the webbing, and tails
	lashing      = 2.0   // m of cord that hold down a pad or a saddle

	saddleScrews = 10
)

// Seat is the kit of one seat, which is a group by its name.
func Seat(s seat.Seat) kit.Kit {
	k := kit.Kit{Name: Seats, Pieces: wood(s), Things: things(s), Works: works(s)}
	for i := range k.Pieces {
		p := &k.Pieces[i]
		p.Group, p.Wood, p.Name = s.Name, s.Wood, wording.Clip(s.Name, 40)+", "+p.Name
	}
	for i := range k.Things {
		k.Things[i].Group = s.Name
	}
	return k
}

func place(s seat.Seat, z float64) geometry.Point3 { return geometry.Point3{X: s.At, Z: z} }

func wood(s seat.Seat) []kit.Piece {
	switch {
	case s.Hung != nil:
		return hung(s)
	case s.Saddle != nil:
		return saddle(s)
	}
	return nil
}

// hung are the sticks of a hung seat, all planed square.
func hung(s seat.Seat) []kit.Piece {
	h := s.Hung
	out := make([]kit.Piece, 0, 8)
	for _, r := range []struct {
		word string
		rail seat.Rail
	}{{"front", h.Front}, {"after", h.After}} {
		g := r.rail.Hanger
		mouth := r.rail.Mouth(h.Width, h.Depth, true)
		middle := g.Point(g.Length/2, g.Block+seat.Thick/2).Y
		out = append(out,
			kit.Piece{Name: r.word + " rail", Count: 1, Long: r.rail.Length, Wide: h.Width, Thick: h.Depth, Fill: 1,
				At: geometry.Point3{X: r.rail.Station, Z: r.rail.TopZ - h.Depth/2}},
			kit.Piece{Name: r.word + " hanger", Count: 2, Long: g.Length, Wide: g.Wide, Thick: seat.Thick, Fill: 1 - curve.Area(mouth[:])/(g.Length*g.Wide),
				At: geometry.Point3{X: g.Station, Z: middle}},
			kit.Piece{Name: r.word + " block", Count: 2, Long: g.BlockLong(), Wide: g.BlockHigh(), Thick: g.Block, Fill: 1,
				At: geometry.Point3{X: g.Station, Z: g.Point(g.BlockHigh()/2, 0).Y}})
	}
	out = append(out, kit.Piece{Name: "spreader", Count: 2, Long: h.Spreader, Wide: h.Depth, Thick: seat.SpreadWide, Fill: 1, At: place(s, s.TopZ()-h.Depth/2)})
	if h.Bottom == design.Slats {
		out = append(out, kit.Piece{Name: "slat", Count: h.Along, Long: s.Long, Wide: seat.SlatWide, Thick: seat.SlatThick, Fill: 1, At: place(s, s.TopZ()-seat.SlatThick/2)})
	}
	for i := range out {
		out[i].Form = kit.Beam
	}
	return out
}

// saddle are the boards of a saddle.
func saddle(s seat.Seat) []kit.Piece {
	const thick = seat.BoardThick
	a := s.Saddle
	box := geometry.Around(a.Cheek...)
	cheek := kit.Piece{Name: "cheek", Count: 2, Thick: thick, At: place(s, s.Floor+(box.Min.Y+box.Max.Y)/2)}
	cheek.Block(a.Cheek)
	return []kit.Piece{
		{Name: "top", Count: 1, Long: s.Wide, Wide: s.Long, Thick: thick, Grain: "across the boat", Fill: 1, At: place(s, s.TopZ()-thick/2)},
		cheek,
		{Name: "stretcher", Count: 1, Long: a.Stretcher, Wide: a.High, Thick: thick, Fill: 1, At: place(s, s.TopZ()-thick-a.High/2)},
	}
}

// Of each strap of a hung seat, mm: what is doubled and sewn at either end, and what it is pulled
// by and is cut off afterwards.
const (
	Sewn = 60.0
	Held = 100.0
)

// Straps returns the length that each strap of a hung seat is cut to, from rail to rail and
// from spreader to spreader, mm, to the next 10 mm: the way between the members, once round
// each of them, both ends doubled and sewn, and what the hands hold while it is pulled.
func Straps(s seat.Seat) (along, across float64) {
	h := s.Hung
	cut := func(between, wide float64) float64 {
		return 10 * math.Ceil((between+2*(2*wide+2*h.Depth+Sewn)+Held)/10)
	}
	return cut(h.Spreader, h.Width), cut(s.Wide, seat.SpreadWide)
}

// boltSizes says how many bolts of which length hold a seat's hangers, and how many washers.
func boltSizes(h *seat.Hung) string {
	a, b := h.Front.Hanger, h.After.Hanger
	washers := 4 * (a.Washers() + b.Washers() + 2)
	if a.BoltLong() == b.BoltLong() {
		return fmt.Sprintf("8 of M6 x %.0f mm and %d washers", a.BoltLong(), washers)
	}
	return fmt.Sprintf("4 of M6 x %.0f mm in front, 4 of M6 x %.0f mm behind, and %d washers", a.BoltLong(), b.BoltLong(), washers)
}

// pegSizes says how many pegs of which length hold a seat's frame.
func pegSizes(h *seat.Hung) string {
	rails, n := fmt.Sprintf("2 of %.0f mm and 2 of %.0f mm", h.Front.PegLong(), h.After.PegLong()), h.Pegs()-4
	if h.Front.PegLong() == h.After.PegLong() {
		rails = fmt.Sprintf("4 of %.0f mm", h.Front.PegLong())
	}
	return fmt.Sprintf("of %g mm, for each seat %s in its rails' ends and %d of %.0f mm in its spreaders'", seat.Peg, rails, n, h.SpreaderPegLong())
}

// things are what is bought for a seat.
func things(s seat.Seat) []kit.Thing {
	top := place(s, s.TopZ())
	// The least that is mixed at once; what of it stays in the joints weighs a few grams.
	glue := kit.Thing{Key: "glue", Name: "waterproof glue", Amount: 0.1, Unit: "kg", How: "blocks and joints", At: top}
	if h := s.Hung; h != nil {
		at := place(s, h.Front.Hanger.Point(h.Front.Hanger.Down, 0).Y)
		out := []kit.Thing{{Key: "seat-bolt", Name: fmt.Sprintf("bolts M6 with hexagon heads, plain nuts and washers of %.0f mm across, that do not rust", seat.Washer), Amount: 8, Unit: "each", How: "two for each hanger; each seat takes " + boltSizes(h), Mass: 8 * boltMass, At: at}, glue,
			{Key: "epoxy", Name: "epoxy and its filler", Amount: 0.1, Unit: "kg", How: "beds the nuts of the bolts", At: at}}
		out = append(out, kit.Thing{Key: "peg", Name: "pegs", Amount: float64(h.Pegs()), Unit: "each", How: pegSizes(h), Mass: float64(h.Pegs()) * pegMass, At: top})
		if h.Bottom == design.Slats {
			n := 4 * float64(h.Along)
			out = append(out, kit.Thing{Key: kit.ScrewKey, Name: kit.ScrewName, Amount: n, Unit: "each", How: "30 mm, two at each end of a seat's slats", Mass: n * kit.ScrewMass, At: top})
		}
		if h.Bottom == design.Webbing {
			along, across := Straps(s)
			m := (float64(h.Along)*along + float64(h.Across)*across) / 1000
			out = append(out, kit.Thing{Key: "webbing", Name: "webbing 50 mm wide, polypropylene or polyester", Amount: math.Ceil(m), Unit: "m",
				How: fmt.Sprintf("%s, %d straps of %.0f mm and %d of %.0f mm", wording.Clip(s.Name, 40), h.Along, along, h.Across, across), Mass: m * webMass, Dense: webDense, At: top},
				kit.Thing{Key: "thread", Name: "waxed thread", Amount: threadPerEnd * 2 * float64(h.Along+h.Across), Unit: "m", How: fmt.Sprintf("%g m for each end of a seat's straps", threadPerEnd), At: top})
		}
		return out
	}
	cord := kit.Thing{Key: "cord", Name: "lashing cord", Amount: lashing, Unit: "m", How: "to tie it down to two ribs", At: top}
	if s.Saddle != nil {
		return []kit.Thing{cord, glue, {Key: kit.ScrewKey, Name: kit.ScrewName, Amount: saddleScrews, Unit: "each", How: "30 mm, six through the top and two through each cheek of a saddle", Mass: saddleScrews * kit.ScrewMass, At: top}}
	}
	return []kit.Thing{{Key: "foam", Name: "closed-cell foam for pads", Amount: padWaste * s.Long * s.Wide * s.Height * 1e-6, Unit: "L", How: "length by width by height, a tenth more to trim off", Mass: s.Long * s.Wide * s.Height * foamDensity, Dense: 1e9 * foamDensity,
		At: place(s, s.TopZ()-s.Height/2)}, cord, {Key: "foam-glue", Name: "glue for foam, tins of 0.5 l", Amount: 1, Unit: "each", How: "layers of a pad", At: top}}
}
