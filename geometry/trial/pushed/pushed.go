// Package pushed works out what a straight rib does that is only pushed into its
// mortises and on to the keel, and that nobody works by hand: it rests as an elastica,
// the curve of least bending energy of its length between its places, and not as the
// section that is asked for. How far the two are apart says what hands must add.
//
// The rib is straight and springs evenly all along; it is as long as the wanted
// section, level at the keel, and both halves are alike. Its shape does not depend on
// how stiff it is, its forces do. No part of it gives way: hot wood that is crushed
// turns more where it turns most, and comes somewhat nearer to the section than this
// says. What the blank is longer for the section's tight bends, under 2 mm, is left
// out; it would change the flare by 0.3 deg.
//
// Source: L. Euler's elastica; S. P. Timoshenko, J. M. Gere, Theory of Elastic
// Stability, has tables of it.
package pushed

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/wood/timber"
)

// Rib is one rib, only pushed into its place.
type Rib struct {
	Hinged  Head  // its heads turn freely in their mortises
	Clamped Head  // its heads stand in their mortises as the section wants, but for Slack
	Why     error // why there is no such curve, nil where there is one; both heads are empty then
}

// Head is the shape of a rib whose heads are held in one way.
type Head struct {
	Half    curve.Chain // half of it from the keel out, in arcs of one length; some may turn outward
	Flare   float64     // lean outward at the gunwale, radians
	Least   float64     // radius of its tightest bend, mm; +Inf when straight
	Out, In Apart       // its greatest distance outside and inside the wanted section
	Moved   []float64   // how far the middle of each stringer comes to lie from its wanted place, from the keel up, mm
	Push    float64     // on each gunwale, outward, of dry wood, N
	Lift    float64     // on each gunwale, upward, of dry wood, N; the keel bears twice as much
}

// Apart is how far a curve stands off the wanted section, measured square to that.
type Apart struct {
	By   float64 // mm, never negative
	At   float64 // where, mm along the half section from the keel
	Bend int     // the number of the section's bend there
}

// Off returns the greater of both distances.
func (h Head) Off() Apart {
	if h.In.By > h.Out.By {
		return h.In
	}
	return h.Out
}

// Slack is how far a head may lean off its mortise, radians: what the room in a mortise
// lets a rib lean over its depth. Common practice, no source.
const Slack = 2 * math.Pi / 180

// Of works out every rib of a frame, made of the given wood, from aft forward.
//
// Accuracy: against an independent solution places are within 0.03 mm, and forces within
// 0.3 %, where half a rib is at least 3 % longer than the straight way to its head.
func Of(f *frame.Frame, wood timber.Species) []Rib {
	out, room := make([]Rib, len(f.Ribs)), newYield(arcs)
	for i, r := range f.Ribs {
		if j := len(out) - 1 - i; j < i && same(r, f.Ribs[j]) {
			out[i] = out[j]
			continue
		}
		w := newWanted(r.Section, f.Design.Stringers.At)
		w.stiff = wood.MOE * float64(f.Design.Ribs.Width) * math.Pow(r.Thickness, 3) / 12
		out[i] = w.pushedIn(room)
	}
	return out
}

// same reports whether two ribs have one section but for rounding, as where a boat's ends
// are alike.
func same(a, b frame.Rib) bool {
	near := func(a, b float64) bool { return math.Abs(a-b) < 1e-9 } // mm; radians
	s, t := a.Section, b.Section
	return near(s.HalfBreadth, t.HalfBreadth) && near(s.Depth, t.Depth) && near(s.Shape.BottomTurn, t.Shape.BottomTurn) &&
		near(s.Shape.BilgeRadius, t.Shape.BilgeRadius) && near(s.Shape.Flare, t.Shape.Flare) && near(s.Shape.TopsideCurve, t.Shape.TopsideCurve)
}

// arcs is into how many arcs half a rib is cut. One that is hardly longer than the
// straight way to its head turns sharply by the keel and takes four times as many.
const arcs = 48

var errNoRest = errors.New("no even bend of its length leads from the keel to its heads")

// pushedIn works out one rib; y is room to work in, for as many arcs as a rib mostly has.
func (w *wanted) pushedIn(y *yield) Rib {
	far, n := math.Hypot(w.HalfBreadth, w.Depth), arcs
	if !(w.length > far) {
		return Rib{Why: fmt.Errorf("half of it is %.1f mm long and its heads stand %.1f mm from the keel", w.length, far)}
	}
	if w.length < 1.06*far {
		n *= 4
		y = newYield(n)
	}
	end, s := aim{x: w.HalfBreadth / w.length, y: w.Depth / w.length}, w.strip(n, y.turn)
	if !s.rests(end, y) {
		return Rib{Why: errNoRest}
	}
	out := Rib{Hinged: w.head(s)}
	lean := math.Pi/2 - out.Hinged.Flare - w.heading
	end.clamped, end.heading = true, w.heading+math.Max(-Slack, math.Min(Slack, lean))
	if !s.rests(end, y) {
		return Rib{Why: errNoRest}
	}
	out.Clamped = w.head(s)
	return out
}

// rests reports whether the strip comes to rest without a kink.
func (s *strip) rests(a aim, y *yield) bool {
	const kink = 0.5 // radians in one arc
	return s.relax(a, y) && slices.Max(s.turn) < kink && slices.Min(s.turn) > -kink
}

// head measures the rib that rests as a strip of length 1 does.
func (w *wanted) head(s *strip) Head {
	out := Head{Half: s.chain(w.length), Least: s.tightest(w.length), Flare: math.Pi / 2}
	for _, b := range out.Half {
		out.Flare -= b.Sweep
	}
	force := w.stiff / (w.length * w.length)
	out.Push, out.Lift = s.push*force, -s.lift*force
	half := out.Half.Walk()
	out.Moved = make([]float64, 0, len(w.stringers))
	// Stringers are met on the way, for all bends are of one length: to walk the curve once is
	// half of the work.
	meet := func(to float64) {
		for k := len(out.Moved); k < len(w.stringers) && w.stringers[k] <= to; k++ {
			is, _ := half.At(w.stringers[k] * w.length)
			out.Moved = append(out.Moved, is.Sub(w.crossings[k]).Norm())
		}
	}
	out.Out, out.In = w.measure(half, meet)
	meet(math.Inf(1)) // one that lies at the very head
	return out
}
