package joint

import (
	"fmt"
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wood/fasten"
)

// Head is where a rib's whole end goes into its mortise, pegged through the gunwale's
// inner wall and the tenon; the peg stops before the outer wall.
type Head struct {
	Joint
	Up       float64 // of the peg's middle from the gunwale's underside
	Wall     float64 // the thinnest inner wall at that height, of all mortises
	WallRib  string  // whose it is
	TenonEnd float64 // from the peg's middle to the tenon's end
	Tenon    float64
	Long     float64 // the hole, from the gunwale's inner face: through wall and tenon of every rib, to the next mm
	Outer    float64 // what stays of the gunwale beyond the hole
	Side     float64 // from the peg to the edges of the rib
	Thick    float64 // of the rib
	Glued    int     // ribs at each end whose heads are glued too: all where pegs alone would not bear Lifted
	Lifted   float64 // N on each head when the loaded boat is lifted by its gunwales, by Usual

	// What one head bears, N: the peg in one plane, the wall where it begins to be dented,
	// the end of the tenon; the glue.
	Shears, Crushes, TearsOut, GlueBears float64
	Shortage                             string
}

// Bears is the least of what holds a pegged head, N.
func (h *Head) Bears() float64 { return math.Min(h.Shears, math.Min(h.Crushes, h.TearsOut)) }

// rolling is the share of its strength in shear that wood has when it is sheared across
// its grain, as a gunwale's wall is by a rib's end: a fifth, from memory.
const rolling = 0.2

func (m *maker) head() Head {
	f, d, u := m.Frame, m.Frame.Design, m.Usual
	rib, gunwale := m.wood(d.Ribs.Species), m.wood(d.Gunwale.Species)
	h := Head{Tenon: f.Ribs[0].Tenon, Side: float64(d.Ribs.Width) / 2, Thick: float64(d.Ribs.Thickness)}
	// The thickest peg that leaves four diameters to the tenon's end and two walls' worth of
	// wood beside it, half-way up the mortise or as near to that as it may stand.
	peg := u.MostPeg
	for ; ; peg -= 0.5 {
		h.Up = math.Floor(2*math.Min(h.Tenon-u.PegEnd*peg, float64(d.Ribs.MortiseDepth)/2)) / 2
		h.Wall, h.WallRib = m.inner(h.Up)
		if h.Up >= u.PegEdge*peg && h.Wall >= u.PegInWall*peg || peg <= u.LeastPeg {
			break
		}
	}
	if h.Up < u.PegEdge*peg {
		h.Shortage = fmt.Sprintf("a peg of %.0f mm stands too near the tenon's end or the gunwale's edge; give ribs.mortise_depth %.0f mm more", peg, math.Ceil((u.PegEdge+u.PegEnd)*peg-h.Tenon))
		h.Up = math.Max(h.Up, 1)
		h.Wall, h.WallRib = m.inner(h.Up)
	}
	h.TenonEnd, h.Long = h.Tenon-h.Up, math.Min(math.Ceil(m.through(h.Up)-speck), math.Ceil(f.Gunwale.Width)-1)
	h.Outer = f.Gunwale.Width - h.Long
	p := m.peg(peg)
	h.Shears = u.Shears(p, gunwale)
	h.Crushes = math.Min(p.CrushesAcross(gunwale, h.Wall), p.CrushesAlong(rib, h.Thick))
	h.TearsOut = fasten.TearsOut(rib, h.TenonEnd, h.Thick)
	glued := 2 * h.Tenon * float64(d.Ribs.Width)
	h.GlueBears = glued * rolling * gunwale.Shear
	h.Joint = Joint{Name: "rib to gunwale", Count: 2 * len(f.Ribs), Fastener: Fastener{"peg", m.pegName(), peg, h.Long, 1}}
	h.Lifted = u.Handling * m.carried() * measure.Gravity / float64(h.Count)
	s := f.Hull.Sheer
	switch {
	case h.Bears() < h.Lifted:
		h.Glued, h.Glue = (len(f.Ribs)+1)/2, glued
	case s.BowSet.Sprung() > 0 || s.SternSet.Sprung() > 0:
		h.Glued = min(u.EndRib, len(f.Ribs)/2)
		h.Glue = glued * float64(4*h.Glued) / float64(h.Count) // spread over all heads
	}
	return h
}

// Out is what the peg's hole takes out of the section of a gunwale of that width.
func (h *Head) Out(width float64) beam.Opening {
	half := h.Fastener.Diameter / 2
	return beam.Opening{From: -width / 2, To: h.Long - width/2, Bottom: h.Up - half, Top: h.Up + half}
}

// All reports whether every head is glued.
func (h *Head) All() bool { return 4*h.Glued >= h.Count }

// carried is the mass of a boat with the people and gear of its design, kg.
func (m *maker) carried() float64 {
	sum := m.Usual.Hull
	for _, p := range m.Frame.Design.Crew {
		sum += p.Mass
	}
	for _, g := range m.Frame.Design.Gear {
		sum += g.Mass
	}
	return sum
}

// inner returns the thinnest inner wall of all mortises at a height over the gunwale's
// underside, and whose it is: where a slot leans out, the wall grows upward.
func (m *maker) inner(up float64) (wall float64, rib string) {
	wall = math.Inf(1)
	for _, w := range m.Frame.Gunwale.Mortises {
		if in := w.Wall + up*math.Tan(w.Bevel); in < wall {
			wall, rib = in, w.Rib
		}
	}
	return wall, rib
}

// through is how deep a hole at a height over the gunwale's underside must be to come out of
// the tenon of every rib, from the inner face: where a slot leans out, farther.
func (m *maker) through(up float64) (deep float64) {
	for _, w := range m.Frame.Gunwale.Mortises {
		deep = math.Max(deep, w.Wall+up*math.Tan(w.Bevel)+w.Width)
	}
	return deep
}

// speck is far below what a drill's stop is set to, mm.
const speck = 1e-6

func (m *maker) peg(diameter float64) fasten.Peg {
	return fasten.Peg{Diameter: diameter, Wood: m.wood(m.Frame.Design.Ribs.Species)}
}

// pegName says what pegs are split from: the ribs' wood, which is tough and at hand.
func (m *maker) pegName() string { return "peg of " + m.wood(m.Frame.Design.Ribs.Species).Name }
