// Package afloat takes a boat out on paper: it sets hull and weights on the water
// and gathers what a builder wants to know before a stick is cut, as figures and
// as findings in plain words. Nothing it says certifies a boat.
package afloat

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/finding"
	"ribwright/geometry/outfit"
	"ribwright/geometry/trial/cargo"
	"ribwright/geometry/trial/swamped"
	"ribwright/geometry/water"
	"ribwright/geometry/water/effort"
	"ribwright/geometry/water/float"
)

// Options are the conditions of a trial.
type Options struct {
	Water     water.Water
	Freeboard float64   // mm, that the findings ask for
	Draft     float64   // mm, a fixed level waterline instead of the weights; 0 for the weights
	Speeds    []float64 // m/s, of the effort
	Smooth    bool      // try it with the cloth on the arcs too, for comparison

	Outfits *outfit.Outfits // that are in the boat's weights, to tell of; nil for none
}

// Report is what a trial found.
type Report struct {
	Boat    aboard.Boat
	Options Options

	Load         float.Load // boat and all aboard
	Rest         float.Hydrostatics
	Fault        *float.Fault   // set when the boat will not stay upright; Rest is then the upright figures
	Curve        float.Curve    // empty with a Fault
	Standing     float.Standing // with a Fault, of a boat that nothing rights
	Smooth       *float.Hydrostatics
	Effort       []effort.Point
	Hull         effort.Hull
	Displacement []Displacement  // with more and more aboard, from nothing on
	Clearance    *skin.Clearance // how the cloth clears the ribs; nil for a table of offsets
	Carried      *Carried        // as one person carries it; likewise
	Swamped      *swamped.Report // full of water; likewise
	Cargo        *cargo.Report   // when it moves; nil without live cargo
	Findings     finding.List

	unsmooth error // why the smooth hull has no figures; nil when it has, or is not asked for
}

// Displacement is how deep the boat floats level with a weight.
type Displacement struct {
	Draft     float64 // mm
	Mass      float64 // kg in all
	Freeboard float64 // least, mm
}

// Run makes the trial.
//
// Errors: *float.Fault when there is no rest: sinks, swamps, load outside the
// hull; a draft that the hull has not; a rib whose arcs have no line outside them.
func Run(b aboard.Boat, o Options) (*Report, error) {
	r, err := Goes(b, o)
	if err != nil {
		return nil, err
	}
	r.displace()
	r.find()
	return r, nil
}

// Goes makes the part of a trial that tells how the boat stands and goes, without what more
// load does, and without the findings. Its errors are Run's.
func Goes(b aboard.Boat, o Options) (*Report, error) {
	r, err := Stands(b, o)
	if err != nil {
		return nil, err
	}
	if r.Hull, err = Towed(b.Hull, r.Rest); err != nil {
		return nil, err
	}
	for _, u := range o.Speeds {
		r.Effort = append(r.Effort, r.Hull.At(o.Water, u))
	}
	r.Cargo, err = cargo.Of(b, r.Standing, o.Water.Density)
	return r, err
}

// Stands makes the part of a trial that is soon done: how the boat lies and how it
// stands up, without the effort, what more load does, and the findings. Its errors are
// Run's.
func Stands(b aboard.Boat, o Options) (*Report, error) {
	r := &Report{Boat: b, Options: o, Load: b.Load()}
	if b.Frame == nil { // a weight that is not known yet has its height all the same
		r.Load.At.Z = b.Gear[0].Loads[0].At.Z
	}
	density := o.Water.Density
	plane, err := r.settle()
	if errors.As(err, &r.Fault); err != nil && (r.Fault == nil || r.Fault.Outcome != float.Capsizes) {
		return nil, err
	}
	r.Rest = b.Hull.Upright(plane, r.Load, density)
	if o.Smooth && b.Frame != nil {
		if err := r.smooth(plane); err != nil {
			return nil, err
		}
	}
	r.Curve.Flooding = math.NaN()
	if r.Fault == nil {
		if r.Curve, err = b.Hull.Curve(r.Load, density, float.Fine); err != nil {
			return nil, err
		}
	}
	r.Standing = r.Curve.Standing(r.Load.Mass, r.Boat.Carried(), r.Rest)
	return r, nil
}

// displace works out the weights at which the boat floats level, up to three quarters of
// the draft that puts its sheer under.
func (r *Report) displace() {
	h := r.Boat.Hull
	top := h.Freeboard(float.Level(h.Deepest())).Least
	const steps = 40
	for i := range steps + 1 {
		draft := top * 0.75 * float64(i) / steps
		v := h.Immerse(float.Level(h.Deepest() + draft)).Volume
		r.Displacement = append(r.Displacement, Displacement{draft, v * r.Options.Water.Density * 1e-9, top - draft})
	}
}

// smooth tries the boat with its cloth on the arcs, from a plane near its rest.
func (r *Report) smooth(near float.Plane) error {
	h, err := skin.Smooth(r.Boat.Frame, r.Boat.Cloth)
	if err != nil {
		return err
	}
	var p float.Plane
	if p, _, r.unsmooth = h.Balance(r.Load, r.Options.Water.Density, 0, &near); r.unsmooth == nil {
		s := h.Upright(p, r.Load, r.Options.Water.Density)
		r.Smooth = &s
	}
	return nil
}

// settle finds the plane of rest: for a fixed draft the weight follows from the
// water, else the water from the weight.
func (r *Report) settle() (float.Plane, error) {
	h, density := r.Boat.Hull, r.Options.Water.Density
	if r.Options.Draft == 0 {
		if r.Boat.Frame == nil {
			return r.level()
		}
		plane, _, err := h.Settle(r.Load, density)
		return plane, err
	}
	plane := float.Level(h.Deepest() + r.Options.Draft)
	if free := h.Freeboard(plane); free.Least <= 0 {
		return plane, fmt.Errorf("a draft of %.0f mm puts the sheer %.0f mm under water at station %.0f mm; accepted: less than %.0f mm",
			r.Options.Draft, -free.Least, free.At.X, r.Options.Draft+free.Least)
	}
	m := h.Immerse(plane)
	r.Load.Mass, r.Load.At.X = m.Volume*density*1e-9, m.Center().X
	if gm := float.GM(plane, m, r.Load); gm <= 0 {
		_, _, err := h.Settle(r.Load, density)
		return plane, err
	}
	return plane, nil
}

// level puts the weight of a table of offsets over the buoyancy of a level
// waterline.
func (r *Report) level() (float.Plane, error) {
	h, density := r.Boat.Hull, r.Options.Water.Density
	if !(r.Load.Mass > 0) {
		return float.Plane{}, errors.New("a table of offsets has no weight; accepted: the whole weight, or the draft")
	}
	if want := float.Volume(r.Load.Mass, density); want < h.Holds() {
		plane := h.Sunk(want)
		r.Load.At.X = h.Immerse(plane).Center().X
	}
	plane, _, err := h.Settle(r.Load, density)
	return plane, err
}

// The grid of the wave resistance: half-breadths at this many depths are read off
// the sections and faired on to even stations.
const (
	waterlines = 15
	gridLines  = 15
	gridRows   = 61
)

// Towed readies a hull at rest for its effort.
//
// Errors: a shape that no even grid can be laid through.
func Towed(h *float.Hull, rest float.Hydrostatics) (effort.Hull, error) {
	x, depth, half := h.WetOffsets(rest.Plane, waterlines)
	g, err := effort.Offsets{X: x, Depth: depth, Half: half}.Even(gridRows, gridLines)
	if err != nil {
		return effort.Hull{}, fmt.Errorf("effort: %w", err)
	}
	return effort.Hull{Length: rest.LWL / 1000, Wetted: rest.Wetted / 1e6, Grid: g}, nil
}

// Entries lists the weights of the trial: the boat, what is aboard, and the whole
// as it floats.
func (r *Report) Entries() []weight.Item {
	var out []weight.Item
	if r.Boat.Frame != nil && r.Options.Draft == 0 {
		own := weight.Item{Name: "Boat, empty"}
		for _, p := range r.Boat.Parts {
			own.Loads = append(own.Loads, p.Loads...)
		}
		out = slices.Concat([]weight.Item{own}, r.Boat.Outfits, r.Boat.Aboard())
	}
	return append(out, weight.Item{Name: "All up", Loads: []float.Load{r.Load}})
}
