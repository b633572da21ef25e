package seat

import (
	"cmp"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/design"
	"ribwright/geometry/wood/beam"
)

// Hung is what carries a hung seat: two rails across the boat, each with a hanger at
// either end, and two spreaders that keep the rails apart beside the bottom.
type Hung struct {
	Front, After Rail
	Width, Depth float64 // of a rail, along the boat and up and down
	Spreader     float64 // length of one, between the rails
	Clear        float64 // height under the front rail over the floor, for the feet
	Bottom       design.Bottom
	Along        int // straps or slats from rail to rail
	Across       int // straps from spreader to spreader
}

// Pegs is how many hold the frame together: one through the hanger into each end of a
// rail, and one through the rail into each end of a spreader.
func (h *Hung) Pegs() int { return 4 + 4 }

// IntoSpreader is how deep the hole is for the peg of a spreader's end, from the rail's
// outer side, mm.
func (h *Hung) IntoSpreader() float64 { return h.Width + 5*Peg }

// IntoRail is how deep the hole is for the peg of a rail's end, from the after edge of its
// hanger to the rail's middle, mm.
func (r Rail) IntoRail() float64 { return r.Hanger.Wide/2 + r.Hanger.Off }

// A peg's length over its hole. Common practice, no source.
const (
	drawn = 20.0 // what a rail's peg stands out, to be pulled by: a finger's breadth
	cut   = 5.0  // what a spreader's peg stands out when it is driven
)

// PegLong is how long the pegs of a rail's ends are, mm: they have no glue and come out.
func (r Rail) PegLong() float64 { return 5 * math.Ceil((r.IntoRail()+drawn)/5) }

// SpreaderPegLong is how long the pegs of the spreaders' ends are, mm: glued and cut flush.
func (h *Hung) SpreaderPegLong() float64 { return 5 * math.Ceil((h.IntoSpreader()+cut)/5) }

// Room is what a front hanger and the after one on its side leave between them along the
// gunwale, mm, for a drill.
func (h *Hung) Room() float64 {
	middle := func(g Hanger) float64 { return (g.Bolts[0] + g.Bolts[1]) / 2 }
	return middle(h.Front.Hanger) - middle(h.After.Hanger) - (h.Front.Hanger.Wide+h.After.Hanger.Wide)/2
}

// Rail is one rail and the pair of hangers that it lies in.
type Rail struct {
	Station float64
	TopZ    float64
	Length  float64 // over all: it ends flush with the hangers' outer faces
	Between float64 // the hangers' inner faces
	Hanger  Hanger  // on the port side; starboard is its mirror
}

// Hanger is a board that lies against the gunwale's inner face, behind a block, and
// carries a rail's end in a slot near its foot. Down is measured along the gunwale's
// inner face from its upper edge, in from that face inboard.
type Hanger struct {
	Station float64    // of its middle where the rail goes through
	Bolts   [2]float64 // marks on the stock, the after one first
	Down    float64    // of the bolts
	Slot    float64    // down to the rail's top, at the middle of the board
	Length  float64    // down to the foot
	Wide    float64    // along the boat
	Off     float64    // how far the rail's middle lies forward of its own, half-way through
	Block   float64    // thickness of the block between it and the gunwale
	Skew    float64    // of the gunwale in plan off the middle line, radians

	stands     board
	high, wide float64 // of the gunwale, mm
}

// The sizes of hangers and bolts. Common practice, no source, unless a comment says
// otherwise.
const (
	Thick      = 20.0 // of a hanger
	Peg        = 6.0  // of rails and spreaders
	Bolt       = 6.0  // diameter
	Hole       = 6.4
	Washer     = 24.0                              // under a bolt's head and its nut
	NutSeat    = 25.0                              // across: the drill for it
	clearOf    = 25.0                              // from a bolt's hole to a mortise
	boltsApart = 40.0                              // at most
	leastApart = 24.0                              // 4 diameters
	boltEdge   = 14.0                              // from a bolt to the hanger's edge
	beside     = 8.0                               // wood beside a slot
	relish     = 20.0                              // wood under a slot
	toSpreader = 10.0                              // from a hanger to the spreader inboard of it
	usualDown  = 200.0                             // from a gunwale's top to a rail
	leastWall  = 4.5                               // wood under a nut's seat, as beside a mortise
	leastOver  = 2.5 * Bolt                        // wood of the hanger's end over a bolt, the least in hardwood (NDS)
	leastHigh  = leastOver + NutSeat/2 + leastWall // of a gunwale
	leastBlock = 12.0
	mostBlock  = 30.0
	toRibs     = 3.0 // from a hanger to a rib
	SpreadWide = 20.0
	StrapWide  = 50.0
	SlatWide   = 45.0
	SlatThick  = 12.0
	strapPitch = 72.0
	leastRails = 150.0 // between the rails' middles, and the most
	mostRails  = 330.0
)

// Point returns where the section through the hanger's middle meets it, so far down and in:
// x the half-breadth, y the height above the baseline.
func (h Hanger) Point(down, in float64) geometry.Point {
	p := h.At(0, down, in)
	p = h.At((h.Station-p.X)/h.stands.fore.X, down, in)
	return geometry.Point{X: p.Y, Y: p.Z}
}

// Lean returns how far the hanger leans outward from upright, radians.
func (h Hanger) Lean() float64 {
	up := h.Point(0, 0).Sub(h.Point(1, 0))
	return math.Atan2(up.X, up.Y)
}

// SlotInboard returns where the middle of the rail's top goes through the face that looks
// inboard: x forward of the hanger's middle, y down from its top. The rail is level in the
// boat, and the board leans.
func (r Rail) SlotInboard() geometry.Point {
	return r.Hanger.stands.meets(r.Station, r.TopZ, r.Hanger.Block+Thick)
}

// BlockLong returns the length of the block along the gunwale: 4 bolt diameters past
// either bolt.
func (h Hanger) BlockLong() float64 { return h.Bolts[1] - h.Bolts[0] + 8*Bolt }

// BlockHigh returns how far the block reaches down the gunwale: all but 2 mm at either
// edge.
func (h Hanger) BlockHigh() float64 { return h.high - 4 }

// Bolts come from inboard, so that nothing stands in a hanger's way when they are out. Their
// nuts lie on washers in seats in the gunwale's outer face, as deep as washer, nut and what
// the bolt may stand past the nut. Sizes of M6 by ISO 7093 and 4032, from memory.
const (
	washerThick = 1.6
	nutHigh     = 5.2
	past        = 2.0 // the outer face beyond the nut: a bolt ends between the two
	LetIn       = washerThick + nutHigh + past
	under       = 0.2 // the outer face, at least, ends a bolt
	boltStep    = 5.0 // lengths that are sold
)

// BoltLong returns the length of the hanger's bolts under their heads, mm: the longest sold
// that ends between nut and outer face with one washer under its head, or the next, with more.
func (h Hanger) BoltLong() float64 {
	long := boltStep * math.Floor((washerThick+h.through()-under)/boltStep)
	if washerThick+h.through()-long > past {
		long += boltStep
	}
	return long
}

// Washers returns how many lie under each bolt's head, so that it ends short of the outer face.
func (h Hanger) Washers() int {
	const whole = 1e-9 // of a washer, that sums of tenths leave
	return int(math.Ceil((h.BoltLong()+under-h.through())/washerThick - whole))
}

// through is the wood that a bolt goes through, its nut's seat with it.
func (h Hanger) through() float64 { return Thick + h.Block + h.wide }

// Out is what a bolt takes out of the gunwale's section through its middle: the seat of its
// nut, which epoxy fills and no wood, and its own hole.
func (h Hanger) Out() []beam.Opening {
	up, face := h.high-h.Down, h.wide/2
	return []beam.Opening{{From: face - LetIn, To: face, Bottom: up - NutSeat/2, Top: up + NutSeat/2}, h.Bored()}
}

// Bored is what a bolt takes out of the section for loads that come when the block is glued
// on: its own hole alone. Half of the block makes good the nut's seat, and about so much of
// it bears with the gunwale four bolt diameters from its end: an estimate.
func (h Hanger) Bored() beam.Opening {
	up := h.high - h.Down
	return beam.Opening{From: -h.wide / 2, To: h.wide / 2, Bottom: up - Hole/2, Top: up + Hole/2}
}

// Under returns the stretches of gunwale stock that lie over cross pieces.
func Under(crosses []design.Thwart, onStock func(x float64) float64) []Span {
	var out []Span
	for _, t := range crosses {
		at, half := float64(t.At), float64(t.Width)/2
		out = append(out, Span{onStock(at - half), onStock(at + half)})
	}
	return out
}

// hang works out a hung seat.
func (b Boat) hang(s *Seat, d design.Seat) error {
	h := &Hung{Width: cmp.Or(float64(d.RailWidth), railWide), Depth: cmp.Or(float64(d.RailDepth), railDeep), Bottom: d.Bottom}
	s.Hung = h
	p, err := b.between(s, h.Width)
	if err != nil {
		return err
	}
	s.Long = 2*p.half + h.Width
	if err := b.clears(s, p.half); err != nil {
		return err
	}
	for _, r := range []struct {
		rail    *Rail
		w       window
		forward float64
	}{{&h.Front, p.front, p.half}, {&h.After, p.after, -p.half}} {
		if err := b.rail(s, r.rail, r.w, r.forward); err != nil {
			return err
		}
	}
	return s.fillIn(float64(d.Wide))
}

// between finds the gaps between the ribs in which the hangers go.
func (b Boat) between(s *Seat, width float64) (pair, error) {
	const aside = boltsApart/2 + boltEdge // half of the widest hanger: a rail off its middle by more leaves it
	p, ok := choose(pairs(b.gaps(), s.At, s.Long, width, aside))
	if ok && p.off <= p.most(width) {
		return p, nil
	}
	best, all := math.Inf(1), b.windows(anywhere)
	for q := range pairs(all, s.At, s.Long, width, math.Inf(1)) {
		at := (q.front.middle() + q.after.middle()) / 2
		if again, ok := choose(pairs(all, at, s.Long, width, aside)); ok && again.off <= again.most(width) && abs(at-s.At) < abs(best-s.At) {
			best = at
		}
	}
	switch {
	case math.IsInf(best, 1) && s.Long > 0:
		return p, s.fault("is %.0f mm long, and no two gaps between the ribs take its hangers' bolts so far apart; leave seat.long out", s.Long)
	case math.IsInf(best, 1):
		return p, s.fault("cannot hang: bolts of its hangers need %.0f mm between two mortises to stay %.0f mm from each, and two such gaps %.0f to %.0f mm apart without a cross piece; give a wider ribs.pitch, or make it a saddle (kind = \"saddle\")",
			math.Ceil(leastApart+2*clearOf+Hole+2), clearOf, leastRails, mostRails)
	}
	return p, s.fault("would have hanger bolts nearer than %.0f mm to a mortise; put it at %.1f mm", clearOf, math.Round(10*best)/10)
}

// railZ is the height of a rail's top: slats lie on the rails, webbing round them.
func (s *Seat) railZ(forward float64) float64 {
	if s.Hung.Bottom == design.Slats {
		return s.EdgeZ(forward) - SlatThick
	}
	return s.EdgeZ(forward)
}

// clears keeps the feet free under the front edge.
func (b Boat) clears(s *Seat, half float64) error {
	h := s.Hung
	front := s.At + half
	floor := max(b.Hull.FloorZ(front-h.Width/2), b.Hull.FloorZ(front+h.Width/2))
	h.Clear = s.railZ(half) - h.Depth - floor
	if h.Clear >= LeastClear {
		return nil
	}
	return s.fault("would clear the floor by %.0f mm under its front rail, and a heel is up to 152 mm deep: feet caught there do not come out after a capsize; accepted: %.0f mm or more. Make it a saddle between the feet (kind = \"saddle\"), or %.0f mm higher",
		h.Clear, LeastClear, math.Ceil(LeastClear-h.Clear))
}

// fillIn finds the bottom between the rails; wide is what the design asks for, 0 for the
// usual.
func (s *Seat) fillIn(wide float64) error {
	h := s.Hung
	room := math.Floor(min(h.Front.Between, h.After.Between)) - 2*SpreadWide - 2*toSpreader
	s.Wide = min(cmp.Or(wide, hungWide), room)
	if s.Wide < 200 || wide > room {
		return s.fault("has %.0f mm between its hangers for what one sits on; accepted: seat.wide up to %.0f mm and 200 mm at least, so put it nearer midship", min(h.Front.Between, h.After.Between), room)
	}
	h.Spreader = h.Front.Station - h.After.Station - h.Width
	h.Along = max(3, int(s.Wide/strapPitch))
	h.Across = max(2, int(h.Spreader/strapPitch))
	if h.Bottom == design.Slats {
		h.Along, h.Across = max(4, int(s.Wide/60)), 0
	}
	return nil
}
