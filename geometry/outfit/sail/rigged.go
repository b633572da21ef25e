package sail

import (
	"math"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/design"
	"ribwright/geometry/water/float"
)

// Rigged is a boat with a sail of the area in s, m2, as it stands to be looked at: mast,
// sail, spars and leeboard in their places. rest is how the boat lies without them. What
// anything bears, and how deep the rig puts the boat down, is left out: New works that out.
//
// Errors: a mast outside the boat, or gunwales too near one another for it.
func Rigged(b aboard.Boat, s design.Sail, rest float.Hydrostatics) (*Fit, error) {
	f := &Fit{Boat: b, Sail: s, Asked: true, Rest: rest, Hull: profile(b.Hull, rest.Plane)}
	if err := f.stepMast(); err != nil {
		return nil, err
	}
	f.hoist(s.Area)
	f.Mast.Long = f.mastLong()
	f.layBoard(s.Area)
	return f, nil
}

// hoist draws the sail with its spars, m2, which are not sized yet.
func (f *Fit) hoist(area float64) {
	f.Plan = NewPlan(f.Sail.Rig, area, f.Spread(f.Tack))
	for i, s := range f.Plan.Spars {
		if s.Hinge {
			f.Plan.Spars[i].Foot = (f.Tack - f.Mast.StepZ) * veeSlope
		}
	}
}

// Head is how high the rig stands over the baseline, mm.
func (f *Fit) Head() float64 {
	high := f.Mast.StepZ + f.Mast.Long
	for _, c := range f.Plan.Corners {
		high = math.Max(high, f.Tack+c.Y)
	}
	return high
}
