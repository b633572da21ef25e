package seat

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
)

// Piece is a kind of piece of wood of a seat.
type Piece struct {
	Name              string
	Count             int
	Long, Wide, Thick float64 // of the block that it fills, grain along Long
	Grain             string  // "" for along Long
	Fill              float64 // share of the block that is left
	At                geometry.Point3
}

// Volume returns the wood of one, mm3.
func (p Piece) Volume() float64 { return p.Long * p.Wide * p.Thick * p.Fill }

// Thing is bought, or sawn from what is bought.
type Thing struct {
	Key, Name string // as price tables name it, and in words
	Amount    float64
	Unit      string
	How       string
	Mass      float64 // kg
	At        geometry.Point3
}

// Masses of what is bought. Estimates, but for foam (30 to 35 kg/m3).
const (
	boltMass    = 0.025 // kg, M6 with its washers and nut
	webMass     = 0.045 // kg/m of webbing 50 mm wide
	foamDensity = 33e-9 // kg/mm3
	sewn        = 60.0  // mm of webbing doubled at each end
	lashing     = 2.0   // m of cord that hold down a pad or a saddle
)

func (s Seat) at(forward, z float64) geometry.Point3 { return geometry.Point3{X: s.At + forward, Z: z} }

// Pieces lists the wood of a seat.
func (s Seat) Pieces() []Piece {
	switch {
	case s.Hung != nil:
		return s.hungPieces()
	case s.Saddle != nil:
		return s.saddlePieces()
	}
	return nil
}

func (s Seat) hungPieces() []Piece {
	h := s.Hung
	var out []Piece
	for _, r := range []struct {
		word string
		rail Rail
	}{{"front", h.Front}, {"after", h.After}} {
		g := r.rail.Hanger
		deep := h.Depth / math.Cos(g.Lean())
		middle := g.Point(g.Length/2, g.Block+Thick/2).Y
		out = append(out,
			Piece{Name: r.word + " rail", Count: 1, Long: r.rail.Length, Wide: h.Width, Thick: h.Depth, Fill: 1,
				At: geometry.Point3{X: r.rail.Station, Z: r.rail.TopZ - h.Depth/2}},
			Piece{Name: r.word + " hanger", Count: 2, Long: g.Length, Wide: g.Wide, Thick: Thick, Fill: 1 - h.Width*deep/(g.Length*g.Wide),
				At: geometry.Point3{X: g.Station, Z: middle}},
			Piece{Name: r.word + " block", Count: 2, Long: g.BlockLong(), Wide: g.BlockHigh(), Thick: g.Block, Fill: 1,
				At: geometry.Point3{X: g.Station, Z: g.Point(g.BlockHigh()/2, 0).Y}})
	}
	out = append(out, Piece{Name: "spreader", Count: 2, Long: h.Spreader, Wide: h.Depth, Thick: SpreadWide, Fill: 1, At: s.at(0, s.TopZ()-h.Depth/2)})
	if h.Bottom == design.Slats {
		out = append(out, Piece{Name: "slat", Count: h.Along, Long: s.Long, Wide: SlatWide, Thick: SlatThick, Fill: 1, At: s.at(0, s.TopZ()-SlatThick/2)})
	}
	return out
}

func (s Seat) saddlePieces() []Piece {
	a := s.Saddle
	box := geometry.Around(a.Cheek...)
	return []Piece{
		{Name: "top", Count: 1, Long: s.Wide, Wide: s.Long, Thick: BoardThick, Grain: "across the boat", Fill: 1, At: s.at(0, s.TopZ()-BoardThick/2)},
		{Name: "cheek", Count: 2, Long: box.W(), Wide: box.H(), Thick: BoardThick, Fill: math.Abs(curve.Area(a.Cheek)) / (box.W() * box.H()), At: s.at(0, s.Floor+(box.Min.Y+box.Max.Y)/2)},
		{Name: "stretcher", Count: 1, Long: a.Stretcher, Wide: a.High, Thick: BoardThick, Fill: 1, At: s.at(0, s.TopZ()-BoardThick-a.High/2)},
	}
}

// Webbing returns how much of it a seat takes, mm: each strap round the members at both
// its ends, its last bit doubled and sewn.
func (s Seat) Webbing() float64 {
	h := s.Hung
	if h == nil || h.Bottom != design.Webbing {
		return 0
	}
	round := func(wide float64) float64 { return 2*wide + 2*h.Depth + sewn }
	fore := h.Spreader + 2*round(h.Width)
	over := s.Wide + 2*round(SpreadWide)
	return float64(h.Along)*fore + float64(h.Across)*over
}

// Things lists what is bought for a seat.
func (s Seat) Things() []Thing {
	top := s.at(0, s.TopZ())
	// The least that is mixed at once; what of it stays in the joints weighs a few grams.
	glue := Thing{Key: "glue", Name: "waterproof glue", Amount: 0.1, Unit: "kg", How: "blocks and joints", At: top}
	if h := s.Hung; h != nil {
		at := s.at(0, h.Front.Hanger.Point(h.Front.Hanger.Down, 0).Y)
		out := []Thing{{Key: "seat-bolt", Name: "bolts of 6 mm with flat heads, washers of 24 mm and wing nuts, that do not rust", Amount: 8, Unit: "each", How: "two for each hanger", Mass: 8 * boltMass, At: at}, glue}
		if m := s.Webbing() / 1000; m > 0 {
			out = append(out, Thing{Key: "webbing", Name: "webbing 50 mm wide, polypropylene or polyester", Amount: math.Ceil(2*m) / 2, Unit: "m", How: "each strap round both members, its ends sewn", Mass: m * webMass, At: top})
		}
		return out
	}
	cord := Thing{Key: "cord", Name: "lashing cord", Amount: lashing, Unit: "m", How: "to tie it to the ribs", At: top}
	if s.Saddle != nil {
		return []Thing{cord, glue}
	}
	return []Thing{{Key: "foam", Name: "closed-cell foam for pads", Amount: s.Long * s.Wide * s.Height * 1e-6, Unit: "L", How: "length by width by height", Mass: s.Long * s.Wide * s.Height * foamDensity,
		At: s.at(0, s.TopZ()-s.Height/2)}, cord}
}
