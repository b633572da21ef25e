// Package bend tells for every part of a frame whether the wood takes the bend
// that the design asks of it, how it is to be bent, how much room is left, and
// what would cost least if there is none.
//
// The limits of steamed bends are from memory, so every verdict on them is a
// reason for a test bend and not a promise. Stresses are those of beam theory in
// clear wood.
package bend

import (
	"cmp"
	"fmt"

	"ribwright/geometry/boat/fittings"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/inside"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/finding"
	"ribwright/geometry/sidebyside"
	"ribwright/geometry/trial/balance"
	"ribwright/geometry/trial/edgeset"
	"ribwright/geometry/trial/laden"
	"ribwright/geometry/trial/pushed"
	"ribwright/geometry/trial/spreader"
	"ribwright/geometry/wood/timber"
)

// Report is what bending asks of a whole frame.
type Report struct {
	Frame  *frame.Frame
	Boat   *balance.Boat
	AtRest *balance.State // ribs in the neutral set, or as wide as their places when there is none
	Ribs   []Rib          // from aft forward
	Forms  []Form         // one for each group of ribs that has one; nil for ribs bent in place
	Gauges []frame.Gauge  // one for each group of ribs: of the free ribs where they are bent on forms, else of the shape in the boat
	Test   []Sprung       // what the first rib that is bent may come to, from little springback to much
	Slots  []Hole         // mortises, from aft forward
	Bolted []Hole         // of the bolts of cross pieces, then of hung seats

	LeastMoisture float64 // that stock for the ribs' bends should have, %; 0 when it does not matter
	Soak          Soak    // of the ribs' stock, and how it dries
	Shrink        float64 // of a rib's thickness at most until it is in service, mm; 0 when its wood's shrinkage is not known or its stock is dry
	Swell         float64 // of the ribs' stock across the grain at most from as it comes until it is steamed, a share; 0 when its wood's movement is not known
	SquareTenon   float64 // width of the widest sharp-edged rib that goes into a mortise with half-round ends, mm

	Gunwale   Gunwale
	EdgeSet   *edgeset.Report // what holds the edge-set and what it does to the boat; nil without one
	Spread    *spreader.Set   // what holds the gunwales while they are bent
	Stringers []Stringer      // from the keel up
	Stems     []Stem          // laminated stems; nil when they are cut
	Joints    *joint.Joints
	Outside   Outside      // what goes on over the skin
	Inside    inside.Fit   // and in the boat, besides flotation
	Findings  finding.List // one for each part or run of parts, from the ribs on
}

// Of works out the report of a frame.
//
// Errors: woods or sizes from which no balance can be made.
func Of(f *frame.Frame) (*Report, error) {
	p, err := fittings.Placed(f)
	if err != nil {
		return nil, err
	}
	b, err := balance.Of(f)
	if err != nil {
		return nil, fmt.Errorf("frame balance: %w", err)
	}
	a, err := ApartOf(f)
	if err != nil {
		return nil, err
	}
	return Fitted(p, b, a)
}

// Fitted is Of for a frame whose places and whose balance are worked out already, with
// what it settles alone.
func Fitted(p fittings.Places, b *balance.Boat, a Apart) (_ *Report, err error) {
	r := &Report{Frame: p.Frame, Boat: b, Joints: p.Joints, Inside: p.Inside, EdgeSet: a.EdgeSet}
	open := b.Open // the neutral set, where it can be made
	if b.Why != nil {
		open = nil
	}
	if r.AtRest, err = b.Settle(open, nil); err != nil {
		return nil, fmt.Errorf("frame balance: %w", err)
	}
	r.ribs(a.Loose)
	r.onForms()
	r.Test = r.test()
	r.gunwale()
	r.Spread = spreader.Of(b)
	r.Findings = append(r.Findings, r.Spread.Findings()...)
	if err := r.battens(); err != nil {
		return nil, err
	}
	if err := r.edgeSet(); err != nil {
		return nil, err
	}
	if err := r.stems(); err != nil {
		return nil, err
	}
	r.jointed()
	if err := r.outside(p.Outside); err != nil {
		return nil, err
	}
	r.slots()
	r.balanced()
	return r, r.seats(a.seated)
}

// Apart is what a frame settles alone, whatever its balance.
type Apart struct {
	Loose   []pushed.Rib    // the ribs as they are when they are only pushed in, from aft forward
	EdgeSet *edgeset.Report // what holds the edge-set and what it does to the boat; nil without one
	seated  *laden.Boat     // half of it on which the hung seats pull in turn; nil without one
}

// ApartOf works out, side by side, what a frame settles alone.
//
// Errors: a wood that is not known; a frame that does not stand.
func ApartOf(f *frame.Frame) (a Apart, err error) {
	wood, err := f.Design.Wood(f.Design.Ribs.Species)
	if err != nil {
		return a, err
	}
	var unfit error
	sidebyside.All(
		func() { a.EdgeSet, err = edgeset.Of(f) },
		func() { a.Loose = pushed.Of(f, wood) },
		func() { a.seated, unfit = underSeats(f) },
	)
	return a, cmp.Or(err, unfit)
}

func (r *Report) note(f finding.Finding) { r.Findings = append(r.Findings, f) }

// noteCure notes a finding with what cures it when it does not pass.
func (r *Report) noteCure(f finding.Finding, cure string, args ...any) bool {
	if !f.Verdict.Passes() {
		f.Cure = fmt.Sprintf(cure, args...)
	}
	r.note(f)
	return f.Verdict.Passes()
}

// seats judges what people sit on.
func (r *Report) seats(under *laden.Boat) error {
	for _, s := range r.Frame.Seats {
		found, err := s.Judge(r.Frame.Design)
		if err != nil {
			return err
		}
		for _, f := range found {
			if f.IsSet() {
				r.note(f)
			}
		}
	}
	return r.seated(under)
}

func (r *Report) balanced() {
	if why := r.Boat.Why; why != nil {
		r.note(*why)
		return
	}
	worst, name := 0.0, "all"
	for _, rib := range r.Ribs {
		if rib.Stress > worst {
			worst, name = rib.Stress, rib.Name
		}
	}
	r.noteCure(byStress("rib "+name+" in place, neutral", r.Boat.Ribs, worst, finding.Weak), "thicker ribs, thinner gunwales, or plies glued bent")
}

// The units of what is measured.
const (
	ratioUnit  = "radius/thickness" // inner radius
	stressUnit = "N/mm2"
)

// ofBand puts a band into a verdict; strap tells whether the design has one.
func ofBand(b timber.Band, strap bool) finding.Verdict {
	switch b {
	case timber.SprungDry:
		return finding.Dry
	case timber.Steamed:
		return finding.Steam
	case timber.Picked:
		return finding.Pick
	case timber.Strap:
		if strap {
			return finding.Strap
		}
		return finding.NoStrap
	}
	return finding.TooTight
}

// byRatio judges a steamed bend of the given inner radius over thickness.
func byRatio(part string, wood timber.Species, ratio float64, strap bool) finding.Finding {
	f := finding.Finding{About: part, Verdict: ofBand(wood.Band(ratio), strap), Standing: wood.Bending,
		Measure: finding.Measure{Value: ratio, Limit: wood.FreeRatio, Unit: ratioUnit}}
	if strap {
		f.Limit = wood.StrapRatio
	}
	if f.Verdict == finding.Dry {
		f.Limit, f.Standing = wood.ColdRatio(), wood.Strength
	}
	return f
}

// steamed judges a bend that is steamed however slight it is.
func steamed(part string, wood timber.Species, ratio float64, strap bool) finding.Finding {
	f := byRatio(part, wood, ratio, strap)
	if f.Verdict == finding.Dry {
		f.Verdict, f.Limit, f.Standing = finding.Steam, wood.FreeRatio, wood.Bending
	}
	return f
}

// byStress judges a part bent dry and left so, by its stress in N/mm2; over is
// the verdict past half the MOR.
func byStress(part string, wood timber.Species, stress float64, over finding.Verdict) finding.Finding {
	f := finding.Finding{About: part, Verdict: finding.Dry, Standing: wood.Strength,
		Measure: finding.Measure{Value: stress, Limit: timber.LastingShare * wood.MOR, Unit: stressUnit, AtMost: true}}
	if over == finding.Weak {
		f.Verdict = finding.Holds
	}
	if stress > f.Limit {
		f.Verdict, f.Limit = finding.Eases, timber.AssemblyShare*wood.MOR
	}
	if !(stress <= f.Limit) {
		f.Verdict = over
	}
	return f
}
