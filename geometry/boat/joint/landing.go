package joint

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
)

// Landing is where the stringers of both sides end on a stem: each is planed to a feather
// on the stem's side, and the pair is lashed together through two holes in the stem, above
// and below it.
type Landing struct {
	Joint
	End   string
	Holes []StemHole // from the keel up; neighboring stringers may share one
	Ends  []StringerEnd
	Drill float64 // of the holes, mm
	Edge  float64 // least wood from a hole's middle to the stem's edge, mm
	Wants float64 // what it should be at least
}

// StemHole is a hole through a stem from side to side.
type StemHole struct {
	At       geometry.Point // on the stem's pattern
	Stringer int            // the lowest that is lashed through it
	Shared   bool           // with the next stringer above
	FromEdge float64        // middle to the stem's nearest edge
	FromOut  float64        // middle to the outer edge, square to it
	FromHead float64        // along the outer edge from the top of the stem's head down to where that is
}

// StringerEnd is one stringer's end on a stem.
type StringerEnd struct {
	Number int
	At     geometry.Point // the middle of its end
	Back   float64        // from its end to the middle between its holes, along it
	Taper  float64        // length over which its inner face is planed to a feather
}

func (m *maker) landing(e stemAt, outline outline) Landing {
	d := m.Frame.Design
	wide, depth := float64(d.Stringers.Width), float64(d.Stringers.Depth)
	l := Landing{End: e.End, Drill: m.Usual.cordHole(Turns), Edge: math.Inf(1)}
	off := wide/2 + l.Drill/2 + 0.5
	for i, s := range m.Frame.Stringers {
		at := e.Landings[i]
		way, turn := runBack(s, e.side)
		across := geometry.Polar(off, math.Atan2(way.Y, way.X)-math.Pi/2) // upward, for it runs inboard
		end := StringerEnd{Number: s.Number, At: at, Taper: math.Min(depth/math.Max(math.Tan(turn), 0.02), 15*depth)}
		end.Back = roomiest(8, 80, func(back float64) float64 {
			p := at.Add(way.Scale(back))
			return min(outline.edgeTo(p.Add(across)), outline.edgeTo(p.Sub(across)))
		})
		p := at.Add(way.Scale(end.Back))
		l.Ends = append(l.Ends, end)
		l.Holes = append(l.Holes, StemHole{At: p.Sub(across), Stringer: s.Number}, StemHole{At: p.Add(across), Stringer: s.Number})
	}
	l.share()
	for i := range l.Holes {
		h := &l.Holes[i]
		h.FromEdge = outline.edgeTo(h.At)
		h.FromOut, h.FromHead = fromOuter(e.hull, float64(d.Skin.Thickness()), h.At)
		l.Edge = math.Min(l.Edge, h.FromEdge)
	}
	l.Wants = m.Usual.PegEdge * l.Drill
	round := 2*(e.Thickness+2*depth) + 2*(2*off)
	l.Joint = Joint{Name: "stringers to stem, " + e.End, Count: len(l.Ends), Turns: Turns, Cord: Turns*round + Tails}
	return l
}

// fromOuter returns how far a place lies inside the stem's outer edge, and how far down
// that edge from the head the nearest point of it lies.
func fromOuter(e hull.End, skin float64, p geometry.Point) (in, down float64) {
	in, down = math.Inf(1), e.Outer.Length()
	s, long := 0.0, down
	for _, b := range e.Outer {
		start, heading := e.Inside(s, skin)
		share := p.Sub(start).Dot(geometry.Polar(1, heading)) / b.Length
		if b.Radius != 0 {
			center := start.Add(geometry.Polar(b.Radius-skin, heading+math.Pi/2))
			from, to := start.Sub(center), p.Sub(center)
			share = math.Atan2(from.Cross(to), from.Dot(to)) / b.Sweep
		}
		at := s + min(1, max(0, share))*b.Length
		q, _ := e.Inside(at, skin)
		if d := q.Sub(p).Norm(); d < in {
			in, down = d, long-at
		}
		s += b.Length
	}
	return in, down
}

// share makes one hole of two that would stand too near each other.
func (l *Landing) share() {
	var out []StemHole
	for _, h := range l.Holes {
		if n := len(out); n > 0 && out[n-1].Stringer != h.Stringer && h.At.Sub(out[n-1].At).Norm() < 2.5*l.Drill {
			out[n-1].At, out[n-1].Shared = out[n-1].At.Lerp(h.At, 0.5), true
			continue
		}
		out = append(out, h)
	}
	l.Holes = out
}

// runBack returns the way from a stringer's end inboard, as the stem's pattern has it,
// and the angle between the stringer and the stem's side.
func runBack(s frame.Stringer, side float64) (way geometry.Point, turn float64) {
	aft, fore := s.Line.Ends()
	x := fore
	if side < 0 {
		x = aft
	}
	dy, dz := s.Line.Slopes(x)
	return geometry.Point{X: -1, Y: -dz * side}.Unit(), math.Atan(math.Abs(dy))
}
