package joint

import (
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wood/fasten"
)

// Crossing is where a rib crosses the keel or a stringer, lashed in an X.
type Crossing struct {
	Joint
	Rib, Thick  float64 // width and thickness of the rib
	Wide, Depth float64 // of the batten
	Fraps       int     // turns round the strands between rib and batten
	Bears       float64 // for years, of the turns alone, N
	Round       float64 // of the batten's edges under the cord
	RoundRib    float64 // and of the rib's
}

// The turns of one lashing, of an X two on each diagonal, those that draw an X tight, and
// both tails together, mm. Common practice, no source; old beam lashings of skin boats have
// three to four turns (Murdoch, Ninth Annual Report of the Bureau of Ethnology, 1892).
const (
	Turns = 4
	Fraps = 1
	Tails = 200.0
)

// edge returns the radius that the edges of a stick are rounded to under cord, in half
// millimeters: what the cord wants, but no more than a quarter of the stick's thickness, or
// little is left of its narrow faces. The quarter is our own choice.
func (m *maker) edge(thick float64) float64 {
	const finest = 0.5 // mm that a plane or a cloth leaves
	return math.Max(finest, math.Floor(2*math.Min(m.Usual.CordEdge*m.Usual.Cord.Diameter, thick/4))/2)
}

// Lashing returns the cord of one X lashing, mm: a rib of width a and thickness t
// crossed by a batten of width b and depth d, with so many turns:
//
//	turns (2 sqrt(a2 + b2) + 2 (t + d)) + tails
//
// Derived: each turn goes over the crossing on one diagonal and back under it.
func Lashing(a, t, b, d float64, turns int, tails float64) float64 {
	return float64(turns)*(2*math.Hypot(a, b)+2*(t+d)) + tails
}

// begun is what an X lashing takes besides its turns on a rib of width a and thickness t, mm: a
// clove hitch, which goes round the rib twice, and the way level behind the rib from the one
// diagonal to the other.
func begun(a, t float64) float64 { return 2*2*(a+t) + a }

// frap is one turn round the strands beside the crossing: once round both sticks.
func frap(a, b float64) float64 { return 2 * (a + b) }

func (m *maker) crossings() (keel, stringers Crossing) {
	d, n := m.Frame.Design, len(m.Frame.Ribs)
	kind := func(name string, count int, wide, depth float64) Crossing {
		a, t := float64(d.Ribs.Width), float64(d.Ribs.Thickness)
		return Crossing{Rib: a, Thick: t, Wide: wide, Depth: depth, Fraps: Fraps, Bears: m.Usual.Bears(Turns), Round: m.edge(depth), RoundRib: m.edge(t),
			Joint: Joint{Name: name, Count: count, Turns: Turns, Cord: Lashing(a, t, wide, depth, Turns, Tails) + begun(a, t) + Fraps*frap(a, wide)}}
	}
	return kind("rib to keel", n, float64(d.Keel.Width), float64(d.Keel.Depth)),
		kind("stringer to rib", 2*len(m.Frame.Stringers)*n, float64(d.Stringers.Width), float64(d.Stringers.Depth))
}

// Cross is a cross piece under the gunwales, bolted to both.
type Cross struct {
	Joint
	Piece     string
	Of        frame.Thwart
	PerEnd    int
	Apart     float64 // between the two bolts of an end, along the boat; 0 for one
	In        float64 // from the cross piece's end to a bolt's middle, at its middle line
	Side      float64 // from a bolt to the nearer edge of the cross piece
	Gunwale   float64 // from a bolt to the gunwale's faces
	Mortise   float64 // from a bolt's middle to the nearest mortise, along the stock
	Washer    float64
	Sunk      float64 // how deep heads and washers lie in the gunwale's top, mm
	Pulls     float64 // at which the washers of one end begin to dent the dry gunwale, N
	Pushes    float64 // across the gunwale, of one end, wet, by the design value, N
	EdgeWants float64 // what a bolt should stand from a gunwale's face
	Lean      float64 // of the bolts off upright, square to the gunwale's underside: their heads outboard, radians
	Drift     float64 // how much farther inboard they come out of the cross piece's lower face than they go in at its upper one, mm
	Seat      float64 // how deep the lower face is pared at the inboard edge of a washer, so that it lies square to its bolt, mm
}

// Out is what a bolt takes out of the section of a gunwale of that height through its middle:
// its own hole and what its head and washer are sunk in.
func (c *Cross) Out(height float64) []beam.Opening {
	return []beam.Opening{{From: -c.Of.Hole / 2, To: c.Of.Hole / 2, Top: height}, {From: -c.Washer / 2, To: c.Washer / 2, Bottom: height - c.Sunk, Top: height}}
}

func (m *maker) cross(t frame.Thwart, species string) Cross {
	f, u := m.Frame, m.Usual
	g := &f.Gunwale
	c := Cross{Piece: t.Name, Of: t, PerEnd: len(t.Holes) / 2, Washer: math.Max(2*u.Bolt, math.Min(u.Washer, math.Floor(g.Width-2*u.Beside))), Sunk: u.Sunk, Gunwale: g.Width / 2, EdgeWants: u.BoltEdge * u.Bolt, Mortise: math.Inf(1)}
	var at []float64 // of the bolts along the boat, off the piece's middle
	for _, h := range t.Holes {
		b := h.Bounds()
		if b.Min.X > 0 {
			at = append(at, (b.Min.Y+b.Max.Y)/2)
			c.In = (t.ForeEnd+t.AftEnd)/2 - (b.Min.X+b.Max.X)/2
		}
	}
	half := t.Outline.Bounds().H() / 2
	c.Side = half
	for _, y := range at {
		c.Side = math.Min(c.Side, half-math.Abs(y))
		along := g.OnStock(t.At + y)
		for _, w := range g.Mortises {
			lo, hi := w.Ends()
			c.Mortise = math.Min(c.Mortise, math.Max(lo-along, along-hi))
		}
	}
	if len(at) > 1 {
		c.Apart = math.Abs(at[1] - at[0])
	}
	piece, rail := m.wood(species), m.wood(f.Design.Gunwale.Species)
	bolt := fasten.Bolt(u.Bolt)
	y := fasten.Single(bolt, fasten.Piece{Bearing: fasten.Bearing(piece.Gravity(), u.Bolt, 0), Length: t.Thickness},
		fasten.Piece{Bearing: fasten.Bearing(rail.Gravity(), u.Bolt, math.Pi/2), Length: g.Height - u.Sunk})
	z, _ := y.Design(u.Bolt, math.Pi/2)
	c.Pushes = float64(c.PerEnd) * z * fasten.Wet
	c.Pulls = float64(c.PerEnd) * fasten.Washer(c.Washer, u.BoltHole, rail.Crush)
	const nut = 9.0 // mm for washers, nut and a thread or two
	c.Lean = g.Tilt
	c.Drift, c.Seat = t.Thickness*math.Tan(g.Tilt), c.Washer*math.Sin(math.Abs(g.Tilt))
	long := 5 * math.Ceil((g.Height+t.Thickness/math.Cos(g.Tilt)+nut)/5)
	c.Joint = Joint{Name: "cross piece to gunwales, " + t.Name, Count: 1,
		Fastener: Fastener{"bolt-5", "stainless bolt M5 with washers and wing nut", u.Bolt, long, 2 * c.PerEnd}}
	return c
}
