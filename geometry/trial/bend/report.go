package bend

import (
	"fmt"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/finding"
	"ribwright/geometry/trial/balance"
	"ribwright/geometry/wood/timber"
)

// Report is what bending asks of a whole frame.
type Report struct {
	Frame  *frame.Frame
	Boat   *balance.Boat
	AtRest *balance.State // ribs in the neutral set, or as wide as their places when there is none
	Ribs   []Rib          // from aft forward
	Slots  []Slot         // mortises, from aft forward

	LeastMoisture float64 // that stock for the ribs' bends should have, %; 0 when it does not matter
	Shrink        float64 // of a rib's thickness at most until it is in service, mm; 0 when its wood's shrinkage is not known or its stock is dry
	SquareTenon   float64 // width of the widest sharp-edged rib that goes into a mortise with half-round ends, mm

	Gunwale  Gunwale
	Stems    []Stem       // laminated stems; nil when they are cut
	Findings finding.List // one for each part or run of parts, from the ribs on
}

// Of works out the report of a frame.
//
// Errors: woods or sizes from which no balance can be made.
func Of(f *frame.Frame) (*Report, error) {
	b, err := balance.Of(f)
	if err != nil {
		return nil, fmt.Errorf("frame balance: %w", err)
	}
	r := &Report{Frame: f, Boat: b}
	if r.AtRest, err = b.Settle(r.set(), nil); err != nil {
		return nil, fmt.Errorf("frame balance: %w", err)
	}
	r.ribs()
	r.gunwale()
	if err := r.battens(); err != nil {
		return nil, err
	}
	if err := r.stems(); err != nil {
		return nil, err
	}
	r.slots()
	r.balanced()
	return r, nil
}

// set returns the openings of the ribs: the neutral set where it can be made.
func (r *Report) set() []float64 {
	if r.Boat.Why != nil {
		return nil
	}
	return r.Boat.Open
}

func (r *Report) note(f finding.Finding) { r.Findings = append(r.Findings, f) }

// balanced says whether the ribs can hold the gunwales, and at what stress.
func (r *Report) balanced() {
	if why := r.Boat.Why; why != nil {
		r.note(*why)
		return
	}
	worst, name := 0.0, ""
	for _, rib := range r.Ribs {
		if rib.Stress > worst {
			worst, name = rib.Stress, rib.Name
		}
	}
	if name == "" {
		name = "all"
	}
	f := byStress("rib "+name+" in place, neutral", r.Boat.Ribs, worst, finding.Weak)
	if !f.Verdict.Passes() {
		f.Cure = "thicker ribs, thinner gunwales, or plies glued bent"
	}
	r.note(f)
}

// wood returns a wood of a checked design, which knows all it names.
func (r *Report) wood(name string) (timber.Species, error) { return r.Frame.Design.Wood(name) }
