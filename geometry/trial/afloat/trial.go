// Package afloat takes a boat out on paper: it sets hull and weights on the water
// and gathers what a builder wants to know before a stick is cut, as figures and
// as findings in plain words. Nothing it says certifies a boat.
package afloat

import (
	"errors"
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/outfit"
	"ribwright/geometry/survey/offsets"
	"ribwright/geometry/water"
	"ribwright/geometry/water/effort"
	"ribwright/geometry/water/float"
)

// Boat is what is tried: a hull with what it weighs and carries.
type Boat struct {
	Title  string
	For    string
	Hull   *float.Hull
	Smooth *float.Hull // with the cloth on the arcs, for comparison; nil without

	Empty  weight.Item   // the boat itself; without mass for a table of offsets
	Fitted []weight.Item // outfits of the design
	Aboard []weight.Item // people and gear, one item each
	People int           // how many of Aboard, the first, are people
	Crew   []design.Person
	Frame  *frame.Frame // nil for a table of offsets

	outfits *outfit.Outfits // nil where FitOut was not called
	weights []outfit.Weight // of the outfits

	Notes []string // what was understood of the input
}

// Options are the conditions of a trial.
type Options struct {
	Water     water.Water
	Freeboard float64   // mm, that the findings ask for
	Draft     float64   // mm, a fixed level waterline instead of the weights; 0 for the weights
	Speeds    []float64 // m/s, of the effort
}

// Report is what a trial found.
type Report struct {
	Boat    Boat
	Options Options

	Load         float.Load // boat and all aboard
	Rest         float.Hydrostatics
	Fault        *float.Fault // set when the boat will not stay upright; Rest is then the upright figures
	Curve        float.Curve  // empty with a Fault
	Smooth       *float.Hydrostatics
	Effort       []effort.Point
	Hull         effort.Hull
	Displacement []Displacement  // with more and more aboard, from nothing on
	Clearance    *skin.Clearance // how the cloth clears the ribs; nil for a table of offsets
	Findings     finding.List

	unsmooth error // why the smooth hull has no figures; nil when it has, or is not asked for
}

// Displacement is how deep the boat floats level with a weight.
type Displacement struct {
	Draft     float64 // mm
	Mass      float64 // kg in all
	Freeboard float64 // least, mm
}

// OfFrame gives the boat of a frame with the crew and gear given; FitOut adds the
// outfits of its design.
func OfFrame(f *frame.Frame, crew []design.Person, gear []design.Gear, smooth bool) (Boat, error) {
	b := Boat{Title: f.Design.Title, For: f.Design.For, Crew: crew, People: len(crew), Frame: f}
	var err error
	if b.Hull, err = skin.Hull(f); err != nil {
		return b, err
	}
	if smooth {
		if b.Smooth, err = skin.Smooth(f); err != nil {
			return b, err
		}
	}
	parts, err := weight.Covered(f, b.Hull)
	if err != nil {
		return b, err
	}
	for _, p := range parts {
		b.Empty.Loads = append(b.Empty.Loads, p.Loads...)
	}
	b.Empty.Name = "Boat, empty"
	b.Aboard = append(weight.Crew(f, crew), weight.Gear(f, gear)...)
	if len(b.Aboard) == 0 {
		b.Notes = append(b.Notes, "nobody is aboard: the design has no [[crew]] and no [[gear]]")
	}
	return b, nil
}

// AssumedKG is the height of the weight over the baseline that a table of offsets
// is given when nothing is known, mm: boat and paddlers kneeling or low.
const AssumedKG = 300.0

// OfOffsets gives the boat of a table. all is the whole weight in kg, 0 for none;
// its height kg is in mm, 0 when not known. It lies where the boat floats level.
func OfOffsets(title string, t *offsets.Table, all, kg float64) (Boat, error) {
	b := Boat{Title: title, Notes: t.Notes}
	var err error
	if b.Hull, err = t.Hull(); err != nil {
		return b, err
	}
	if kg == 0 {
		kg = AssumedKG
		b.Notes = append(b.Notes, fmt.Sprintf("the height of the weight is not known; %.0f mm over the baseline is assumed", kg))
	}
	b.Aboard = []weight.Item{{Name: "All up", Loads: []float.Load{{Mass: all, At: geometry.Point3{Z: kg}}}}}
	return b, nil
}

// load returns the boat with all aboard.
func (b Boat) load() float.Load {
	return float.Total(b.light(), weight.Sum(b.Aboard))
}

// Run makes the trial.
//
// Errors: *float.Fault when there is no rest: sinks, swamps, load outside the
// hull; a draft that the hull has not.
func Run(b Boat, o Options) (*Report, error) {
	r := &Report{Boat: b, Options: o, Load: b.load()}
	if b.Frame == nil { // a weight that is not known yet has its height all the same
		r.Load.At.Z = b.Aboard[0].Loads[0].At.Z
	}
	density := o.Water.Density
	plane, err := r.settle()
	var f *float.Fault
	switch {
	case errors.As(err, &f) && f.Outcome == float.Capsizes:
		r.Fault = f
	case err != nil:
		return nil, err
	}
	r.Rest = b.Hull.Upright(plane, r.Load, density)
	if b.Smooth != nil {
		var p float.Plane
		if p, _, r.unsmooth = b.Smooth.Balance(r.Load, density, 0, &plane); r.unsmooth == nil {
			s := b.Smooth.Upright(p, r.Load, density)
			r.Smooth = &s
		}
	}
	if r.Fault == nil {
		if r.Curve, err = b.Hull.Curve(r.Load, density, levers); err != nil {
			return nil, err
		}
	}
	if r.Hull, err = towed(b.Hull, r.Rest); err != nil {
		return nil, err
	}
	r.Effort = r.Hull.Curve(o.Water, o.Speeds)
	r.displace()
	r.find()
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

// levers is the step of the righting curve, radians.
const levers = 2.5 * math.Pi / 180

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

// towed prepares the hull at rest for the effort.
func towed(h *float.Hull, rest float.Hydrostatics) (effort.Hull, error) {
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
		out = append(out, r.Boat.Empty)
		out = append(out, r.Boat.Fitted...)
		out = append(out, r.Boat.Aboard...)
	}
	return append(out, weight.Item{Name: "All up", Loads: []float.Load{r.Load}})
}
