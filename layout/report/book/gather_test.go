package book

import (
	"slices"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit"
	"ribwright/geometry/shop/cost"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/shop/materials"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/flaw"
	"ribwright/geometry/trial/handwork"
	"ribwright/geometry/water"
	"ribwright/geometry/water/float"
	"ribwright/layout/lines"
	"ribwright/layout/pattern"
	"ribwright/layout/plate/nest"
)

// Options are what a builder says besides the design.
type Options struct {
	Units  measure.System
	Prices *cost.Table
	Skill  hours.Skill
	Water  water.Water
	Speeds []float64 // m/s, of the curves of effort

	Outfits *outfit.Outfits // that the design has aboard; nil for none
}

// wantFreeboard is the least freeboard that the findings ask for, mm; miss is by how
// much the ribs of the last trial of the frame balance miss the neutral set, mm.
const (
	wantFreeboard = 150.0
	miss          = 10.0
)

// Gather works out everything that the book tells of a checked design. A boat that
// finds no rest on the water, and sticks for which there is no wood, are told of in
// the book and are no errors.
//
// Errors: a frame that cannot be built or bent.
func Gather(d *design.Design, o Options) (Facts, error) {
	p := Facts{Units: o.Units, Prices: o.Prices, Skill: o.Skill, Miss: miss, Water: o.Water, Outfits: o.Outfits}
	if p.Outfits == nil {
		p.Outfits = &outfit.Outfits{}
	}
	var err error
	if p.Frame, err = frame.Build(d); err != nil {
		return p, err
	}
	if p.Fingerprint, err = d.Fingerprint(); err != nil {
		return p, err
	}
	if p.Afloat, err = aboard.New(p.Frame, d.Crew, d.Gear); err != nil {
		return p, err
	}
	if p.Bend, err = bend.Of(p.Frame); err != nil {
		return p, err
	}
	kits := slices.Concat(p.Afloat.Fittings, p.Outfits.Kits())
	p.Plan = cutlist.Heat(p.Bend.Heat()).Make(p.Frame, kits...)
	p.Needs = materials.Count(p.Bend.Joints, p.Afloat.Cloth, p.Plan, kits...)
	p.Needs.AddForms(p.Bend.Forms)
	p.Cost = cost.Of(p.Needs, p.Plan, o.Prices)
	p.Rings, p.Saved = p.Plan.Rings(), hours.Saved(p.Frame)
	p.Work = hours.Count(p.Frame, p.Plan, p.Needs, kits...)
	if p.InBoat, p.InOutfits, err = p.Plan.Finished(d); err != nil {
		return p, err
	}
	if p.Corrections, err = frame.Corrections(p.Frame); err != nil {
		return p, err
	}
	lay := nest.DefaultOptions()
	lay.Quick, lay.Split = true, true // a sketch of the plates
	if p.Plates, err = nest.Lay(d.Title, pattern.Parts(p.Bend), lay); err != nil {
		return p, err
	}
	p.Portrait = lines.Portrait(p.Frame, p.Afloat.Cloth)
	if err := p.tryAfloat(o); err != nil {
		return p, err
	}
	return p, p.tryFrame()
}

func (p *Facts) tryAfloat(o Options) error {
	var err error
	if p.Afloat, err = p.Outfits.PutAboard(p.Afloat); err != nil {
		return err
	}
	if p.Trial, err = afloat.Run(p.Afloat, afloat.Options{Water: o.Water, Freeboard: wantFreeboard, Speeds: o.Speeds, Outfits: p.Outfits}); err != nil {
		p.Trial, p.NoTrial = nil, err.Error()
		p.Clearance = skin.ClearanceOf(p.Frame)
	} else {
		p.Clearance = p.Trial.Clearance
	}
	p.Outfitted, err = afloat.WithOutfits(p.Afloat, p.Outfits, o.Water)
	return err
}

// tryFrame judges the bends and takes all cross pieces out.
func (p *Facts) tryFrame() error {
	var err error
	p.Loose = afloat.LooseRibs(p.Afloat, p.Bend.Loose(), p.Water)
	var all []string
	if len(p.Frame.Thwarts) > 0 {
		all = []string{"all"}
	}
	if p.Without, err = p.Bend.Boat.Choose(all); err != nil {
		return err
	}
	if p.Trials, err = p.Bend.Boat.Trials(p.Without, miss); err != nil {
		return err
	}
	if p.Hands, err = handwork.Of(p.Bend.Boat, &p.Afloat); err != nil {
		return err
	}
	var rest *float.Hydrostatics
	if p.Trial != nil && p.Trial.Fault == nil {
		rest = &p.Trial.Rest
	}
	p.Eye, err = flaw.Of(p.Frame, rest)
	return err
}
