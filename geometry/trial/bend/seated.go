package bend

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/fabric"
	"ribwright/geometry/finding"
	"ribwright/geometry/trial/laden"
	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wood/timber"
)

// underSeats readies half of a frame on which each hung seat pulls in turn; nil without one.
//
// Errors: woods that are not known; a frame that does not stand.
func underSeats(f *frame.Frame) (b *laden.Boat, err error) {
	var loads [][]laden.Load
	for _, s := range f.Seats {
		if s.Hung != nil {
			loads = append(loads, pulls(f, s))
		}
	}
	if loads == nil {
		return nil, nil
	}
	if b, err = laden.Of(f, loads...); err != nil {
		err = fmt.Errorf("frame under its seats: %w", err)
	}
	return b, err
}

// seated judges gunwales and ribs under each hung seat: all of a person's load on the front rail, as
// if either side bore the heavier side's share of it, on top of what the frame bears at rest. A
// hanger pulls along itself: the rail that is pegged to both keeps their feet apart.
//
// Errors: a frame that does not stand.
func (r *Report) seated(b *laden.Boat) error {
	if b == nil {
		return nil
	}
	in, err := b.Under(r.cases()...)
	if err != nil {
		return fmt.Errorf("frame under its seats: %w", err)
	}
	i := 0
	for _, s := range r.Frame.Seats {
		if s.Hung != nil {
			r.judgeSeated(s, [3]laden.Borne{in[0][i], in[1][i], in[2][i]}, in[3][i])
			i++
		}
	}
	return nil
}

// cases are the frame afloat: at its loosest, as is likely, and at its tightest; and aground.
func (r *Report) cases() []laden.Case {
	d := r.Frame.Design
	var cloth fabric.Range
	if d.Skin.Tension > 0 { // else it has none on
		cloth = d.Skin.Coated().Askew()
	}
	likely := laden.Case{Heads: r.Boat.Likely().Heads, Cloth: cloth.Likely}
	aground := likely
	aground.Ground = true
	return []laden.Case{{Heads: 0, Cloth: cloth.Low}, likely, {Heads: 1, Cloth: cloth.High}, aground}
}

// pulls are those of the front hanger's bolts.
func pulls(f *frame.Frame, s seat.Seat) (out []laden.Load) {
	h := s.Hung.Front.Hanger
	down := s.Share() / float64(len(h.Bolts))
	for _, b := range h.Bolts {
		out = append(out, laden.Load{At: f.Gunwale.StationOf(b), Up: -down, Out: -down * math.Tan(h.Lean())})
	}
	return out
}

// judgeSeated judges what bears most.
func (r *Report) judgeSeated(s seat.Seat, afloat [3]laden.Borne, aground laden.Borne) {
	var rails, ribs [3]worst
	for i, b := range afloat {
		rails[i], ribs[i] = r.railUnder(s, b), r.ribUnder(b)
	}
	r.judgeBand(s.Name+", gunwale under its load, afloat, at ", rails, r.Boat.Wood, "taller gunwales (gunwale.height), a stronger wood for them, or a saddle (kind = \"saddle\")")
	r.judgeBand(s.Name+", under its load, afloat, rib ", ribs, r.Boat.Ribs, "thicker ribs (ribs.thickness), a narrower ribs.pitch, or a saddle (kind = \"saddle\")")
	f := bearing(s.Name+", under its load, aground, rib ", r.ribUnder(aground), r.Boat.Ribs)
	if !(f.Value <= f.Limit) {
		f.Verdict, f.Cure = finding.Caution, "sit down and get up only where the boat floats"
	}
	r.note(f)
}

// judgeBand judges what a part bears in the loosest, the likely and the tightest frame: by the likely
// one, with a caution where another asks too much.
func (r *Report) judgeBand(about string, in [3]worst, wood timber.Species, cure string) {
	f := bearing(about, in[1], wood)
	least, most := min(in[0].bears, in[1].bears, in[2].bears), max(in[0].bears, in[1].bears, in[2].bears)
	f.Text = fmt.Sprintf("likely %.0f N/mm2, from %.0f to %.0f as heads sit tight or loose and the cloth is stiff or slack, at most %.0f", f.Value, least, most, f.Limit)
	switch {
	case !(f.Value <= f.Limit):
		f.Verdict, f.Cure = finding.Weak, cure
	case !(most <= f.Limit):
		f.Verdict, f.Cure = finding.Caution, "heads that fill their mortises and tight lashings, or "+cure
	}
	r.note(f)
}

// bearing is the stress of wood under a person's load beside its limit.
func bearing(about string, w worst, wood timber.Species) finding.Finding {
	return finding.Finding{About: about + w.of, Verdict: finding.Holds, Standing: finding.Estimate,
		Measure: finding.Measure{Value: w.bears, Limit: wood.MOR / seat.WantFactor, Unit: stressUnit, AtMost: true}}
}

// worst is what bears most, N/mm2.
type worst struct {
	of    string
	bears float64
}

func (w *worst) take(of string, bears float64) {
	if bears > w.bears {
		w.of, w.bears = of, bears
	}
}

// ribUnder is the rib that bears most, with what it bears in its place at rest.
func (r *Report) ribUnder(b laden.Borne) (w worst) {
	for i, stress := range b.Ribs {
		w.take(r.Ribs[i].Name, stress+r.Ribs[i].Stress)
	}
	return w
}

// railUnder is the hole at which the gunwale bears most: the hanger's bolts and the mortises beside them.
func (r *Report) railUnder(s seat.Seat, b laden.Borne) (w worst) {
	g, h := &r.Frame.Gunwale, s.Hung.Front.Hanger
	for _, m := range g.Mortises {
		if math.Abs(m.Station-h.Station) <= float64(r.Frame.Design.Ribs.Pitch) { // farther off the load bends it less
			hole := []beam.Opening{slot(m), r.Joints.Head.Out(g.Width)}
			w.take("mortise "+m.Rib, r.holeUnder(b, m.Station, hole, hole))
		}
	}
	for _, at := range h.Bolts {
		w.take("a hanger", r.holeUnder(b, g.StationOf(at), h.Out(), []beam.Opening{h.Bored()}))
	}
	return w
}

// holeUnder is what the gunwale bears at a hole: what is out while it lies at rest, and what the load
// finds out.
func (r *Report) holeUnder(b laden.Borne, x float64, out, then []beam.Opening) float64 {
	g, at := &r.Frame.Gunwale, b.At(x)
	n, rest := r.opened(x, out...)
	load := beam.Opened(g.Width, g.Height, nil, then...).Over(func(y, z float64) float64 {
		return r.Boat.Wood.MOE * (at.Long - at.Tall*(z-g.Height/2) - at.Flat*y)
	})
	return n.Worst(func(y, z float64) float64 { return rest(y, z) + load(y, z) })
}
