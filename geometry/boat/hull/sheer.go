package hull

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
)

// Sheer is the rise of the gunwales from midship to the ends. The natural part
// comes free with the tilt; the edge-set part is made into the gunwales or sprung.
type Sheer struct {
	MidZ             float64 // height of the gunwale lines at midship above the baseline, mm
	BowZ, SternZ     float64 // the same at their ends
	BowSet, SternSet EdgeSet

	tanTilt float64
}

// EdgeSet is the part of the sheer for which the gunwale is curved in its tall
// way. The curve is a parabola, so that the bend is the same all along it. Some of it may
// be made: sawn or laminated into the gunwales before they are marked; the rest is sprung
// in afterwards, and only that strains the wood and wants to be held.
type EdgeSet struct {
	From float64 // distance from midship where it begins, mm
	Rise float64 // at the gunwale's end, mm
	Made float64 // of that, mm; the same share of the rise all along
	run  float64 // from there to the gunwale's end, mm
}

// Sprung returns how much of the rise at the gunwale's end is sprung in, mm.
func (e EdgeSet) Sprung() float64 { return e.Rise - e.Made }

// Unmade returns the set as a straight stick must be sprung to it.
func (e EdgeSet) Unmade() EdgeSet { e.Made = 0; return e }

// RisesMade returns how high the made part stands at the distance u from midship, mm.
func (e EdgeSet) RisesMade(u float64) float64 {
	e.Rise = e.Made
	rise, _ := e.at(u)
	return rise
}

// MadeSlope returns how steeply the made part rises at the gunwale's end, as rise over
// run: so much the grain of a board runs out where the curve is sawn.
func (e EdgeSet) MadeSlope() float64 { e.Rise = e.Made; return e.EndSlope() }

// Radius returns the radius the edge-set bends the gunwale to, mm; infinite
// where none is sprung.
func (e EdgeSet) Radius() float64 { return e.run * e.run / (2 * e.Sprung()) }

// Strain returns the bending strain in the upper and lower faces of a gunwale
// of the given height (mm): half the height over the radius.
//
// Source: elementary beam theory.
func (e EdgeSet) Strain(height float64) float64 { return height / 2 / e.Radius() }

// Shift returns how far outward, away from midship, a mark on the underside of a
// gunwale of the given height moves (mm) at the distance u from midship when the
// edge-set is sprung in after marking: the underside is the stretched face, so its
// marks move by half the height times the slope. What is made before marking does not
// shift.
func (e EdgeSet) Shift(u, height float64) float64 {
	e.Rise = e.Sprung()
	_, slope := e.at(u)
	return height / 2 * slope
}

// EndShift is the Shift at the gunwale's end.
func (e EdgeSet) EndShift(height float64) float64 { return e.Shift(e.From+e.run, height) }

// EndSlope returns how steeply the edge-set alone rises at the gunwale's end, as
// rise over run. The natural part of the sheer does not tip the stock.
func (e EdgeSet) EndSlope() float64 {
	_, slope := e.at(e.From + e.run)
	return slope
}

func (e EdgeSet) at(u float64) (rise, slope float64) {
	if u <= e.From || e.run == 0 {
		return 0, 0
	}
	t := (u - e.From) / e.run
	return e.Rise * t * t, 2 * e.Rise * t / e.run
}

// At returns the edge-set of the end on the side of the station x, and how far x lies
// from midship, mm.
func (s Sheer) At(x float64) (EdgeSet, float64) {
	if x < 0 {
		return s.SternSet, -x
	}
	return s.BowSet, x
}

// set returns what the edge-set adds to the height at the station x, mm, and to its slope.
func (s Sheer) set(x float64) (rise, slope float64) {
	e, u := s.At(x)
	rise, slope = e.at(u)
	if x < 0 {
		slope = -slope
	}
	return rise, slope
}

// newSheer works out the heights; the runs follow when the ends are known.
func newSheer(d *design.Design, midZ float64) Sheer {
	g := d.Gunwale
	s := Sheer{MidZ: midZ, tanTilt: math.Tan(float64(g.Tilt))}
	s.BowSet = EdgeSet{From: float64(g.EdgeSetFrom), Rise: float64(g.EdgeSetBow)}
	s.SternSet = EdgeSet{From: float64(g.EdgeSetFrom), Rise: float64(g.EdgeSetAft)}
	for _, e := range []*EdgeSet{&s.BowSet, &s.SternSet} {
		e.Made = math.Min(float64(g.EdgeSetMade), e.Rise)
	}
	half := float64(d.Hull.Beam) / 2
	s.BowZ = midZ + (half-float64(d.Bow.Siding)/2)*s.tanTilt + s.BowSet.Rise
	s.SternZ = midZ + (half-float64(d.After().Siding)/2)*s.tanTilt + s.SternSet.Rise
	return s
}

// hollow is the bend the wrong way that still counts as straight, 1/mm: a radius
// of 100 m, 2 mm over the metre between spreaders.
const hollow = 1e-5

// checkPlan refuses gunwales that no spreaders can hold: bent hollow between two
// spreaders, or over the middle line. Outside the outermost spreaders, and as far
// in as ties pull, a hollow is a fine entry and may stand.
func checkPlan(plan *curve.Elastica, x []float64, held []design.Spreader) error {
	aft, fore := plan.Ends()
	for held[0].Tie { // midship is never one
		held = held[1:]
	}
	for held[len(held)-1].Tie {
		held = held[:len(held)-1]
	}
	if bulges(plan, x) {
		return nil
	}
	first, last := float64(held[0].At), float64(held[len(held)-1].At)
	const step = 10 // mm: a hollow shorter than this cannot be bent into a gunwale
	for x := aft; x <= fore; x += step {
		y, _, bend := plan.At(x)
		if y < 0 {
			return fmt.Errorf("at station %.0f mm it would cross the middle line; give the spreaders beside it more beam (hull.spreader)", x)
		}
		if bend > hollow && x > first && x < last {
			return fmt.Errorf("at station %.0f mm it would be bent hollow between two spreaders; give the narrower of them more beam, or the wider less (hull.beam, hull.spreader)", x)
		}
	}
	return nil
}

// bulges tells from its pins alone that a plan is bent hollow nowhere and stays off the
// middle line, as most do: the stick's bend goes straight from pin to pin, and a line that
// is nowhere hollow stays over its chords.
func bulges(plan *curve.Elastica, pins []float64) bool {
	const off, level = 1.0, 1e-9 // mm from the middle line; 1/mm, a radius of 1,000 km
	for _, x := range pins {
		if y, _, bend := plan.At(x); !(y > off && bend <= level) {
			return false
		}
	}
	return true
}

// gunwaleLine draws the port gunwale: in plan the straight stick held by the
// spreaders and pinned half the siding off the middle at both stems; in height the
// natural sheer of stock that stays in its tilted plane, plus the edge-set. That the
// stick bends in the tilted plane and not in plan is left out: it moves the
// half-breadth by 0.02 mm.
func (h *Hull) gunwaleLine(d *design.Design) (*curve.Track, error) {
	aft, fore := -h.Stern.GunwaleX, h.Bow.GunwaleX
	h.Sheer.BowSet.run = fore - h.Sheer.BowSet.From
	h.Sheer.SternSet.run = -aft - h.Sheer.SternSet.From
	x, y := []float64{aft}, []float64{float64(d.After().Siding) / 2}
	for _, s := range d.AllSpreaders() {
		x, y = append(x, float64(s.At)), append(y, float64(s.Beam)/2)
	}
	x, y = append(x, fore), append(y, float64(d.Bow.Siding)/2)
	plan, err := curve.NewElastica(x, y)
	if err != nil {
		return nil, fmt.Errorf("%w; move the spreaders there farther apart, or give them beams nearer to their neighbors' (hull.beam, hull.spreader)", err)
	}
	h.Plan = plan
	if err := checkPlan(plan, x, d.AllSpreaders()); err != nil {
		return nil, err
	}
	return curve.NewSloping(aft, fore, 0, func(x float64) (at, slope geometry.Point) {
		y, dy := plan.Rise(x)
		rise, up := h.Sheer.set(x)
		z := h.Sheer.MidZ + (h.Beam/2-y)*h.Sheer.tanTilt + rise
		return geometry.Point{X: y, Y: z}, geometry.Point{X: dy, Y: up - dy*h.Sheer.tanTilt}
	}, func(x float64) geometry.Point {
		dy := plan.Slope(x)
		_, up := h.Sheer.set(x)
		return geometry.Point{X: dy, Y: up - dy*h.Sheer.tanTilt}
	})
}
