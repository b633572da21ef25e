package bend

import (
	"fmt"
	"math"

	"ribwright/geometry/finding"
	"ribwright/geometry/trial/edgeset"
	"ribwright/geometry/wood/timber"
)

// edgeSet judges whether the frame holds the edge-set that is sprung into the gunwales.
func (r *Report) edgeSet() error {
	e := r.EdgeSet
	if e == nil {
		return nil
	}
	off := finding.Finding{About: "edge-set, frame let go", Verdict: finding.Holds, Standing: finding.Estimate,
		Measure: finding.Measure{Value: e.Off(), Limit: edgeset.MostOff, Unit: "mm", AtMost: true}}
	if !(off.Value <= off.Limit) {
		off.Verdict = finding.Missed
		var err error
		if off.Cure, err = r.cureEdgeSet(); err != nil {
			return err
		}
	}
	r.note(off)
	wood, err := r.Frame.Design.Wood(r.Frame.Design.Keel.Species)
	if err != nil {
		return err
	}
	stress := math.Max(e.Free.Keel, e.Usual.Keel) / e.KeelModulus
	r.noteCure(byStress("keel, holding the edge-set", wood, stress, finding.Weak), "a deeper keel (keel.depth), or less edge-set that is sprung (gunwale.edge_set_made)")
	return nil
}

// cureEdgeSet says what rise the frame holds, and from where on it would hold the present
// one with wood that bears the bend.
func (r *Report) cureEdgeSet() (string, error) {
	most := 2 * timber.AssemblyShare * r.Boat.Wood.MOR / (r.Boat.Wood.MOE * r.Frame.Gunwale.Height)
	c, err := r.EdgeSet.Cure(most)
	if err != nil {
		return "", err
	}
	s := r.Frame.Hull.Sheer
	cure := fmt.Sprintf("saw or laminate %.0f mm of it into the gunwales (gunwale.edge_set_made), or give it %.0f mm of rise at the bow and %.0f mm at the stern",
		c.Made+float64(r.Frame.Design.Gunwale.EdgeSetMade), math.Floor(c.Rise[1]+s.BowSet.Made), math.Floor(c.Rise[0]+s.SternSet.Made))
	if c.Found {
		cure += fmt.Sprintf(", or begin it %.0f mm off midship (gunwale.edge_set_from)", c.Begin)
	}
	return cure, nil
}
