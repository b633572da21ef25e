package afloat

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/water"
	"ribwright/geometry/water/float"
)

// bare is the wind that is tried on the boat with the sail down, m/s: the top of
// force 4.
const bare = sail.Rough

func (r *Report) findFitted() {
	o := r.Options.Outfits
	if o == nil {
		return
	}
	if f := o.Sail; f != nil {
		area := r.overWater() + f.Mast.Long*f.Mast.Diameter/1e6
		for _, s := range f.Plan.Spars {
			area += s.Length() * s.Diameter / 1e6
		}
		m := sail.Windage(area, r.Rest.LWL/1000, r.Rest.Draft/1000, bare)
		heel := "more than the boat stands"
		if at, ok := r.heeledBy(m); ok {
			heel = fmt.Sprintf("a heel of about %.0f deg with nobody moving", deg(at))
		}
		r.Findings.Say("windage", finding.Borrowed, "with the sail down a beam wind of %.1f m/s on %.2f m2 of hull and spars makes %.0f N m by a worksheet for small craft, %s", bare, area, m, heel)
		r.Findings.Say("outfit", finding.Law, "the weights have the sail up. A sail takes the boat out of what is said of boats moved by people alone; the report on the sail has its winds and cautions")
	}
	if o.Pair != nil {
		r.Findings.Say("outfit", finding.Arithmetic, "these are the figures of this hull alone with half of the beams; the report on the pair floats both as one")
	}
	if o.Row != nil {
		r.Findings.Say("outfit", finding.Arithmetic, "the rowing frame and its seat are counted, and the crew is where the design has it; the report on rowing seats the rower")
	}
}

// overWater is what the hull shows of its side over the water, m2.
func (r *Report) overWater() float64 {
	rows := r.Boat.Hull.Profile()
	sum := 0.0
	shows := func(p [3]float64) float64 {
		return math.Max(0, p[2]-math.Max(p[1], r.Rest.Plane.Water(p[0])))
	}
	for i := 1; i < len(rows); i++ {
		sum += (rows[i][0] - rows[i-1][0]) * (shows(rows[i]) + shows(rows[i-1])) / 2
	}
	return sum / 1e6
}

// heeledBy finds the heel at which the righting moment answers one, N m.
func (r *Report) heeledBy(moment float64) (float64, bool) {
	last := float.Lever{}
	for i, v := range r.Curve.Levers {
		gz := moment / (r.Load.Mass * measure.Gravity) * 1000
		if v.GZ >= gz {
			if i == 0 {
				return 0, true
			}
			return last.Heel + (v.Heel-last.Heel)*(gz-last.GZ)/(v.GZ-last.GZ), true
		}
		last = v
	}
	return 0, false
}

// Outfitted is how the boat lies on the water with some of its outfits, its own people
// and gear aboard.
type Outfitted struct {
	With  string     // the outfits in words
	Added float64    // what they weigh, kg
	All   float.Load // boat and all aboard
	Rest  float.Hydrostatics
	Fault error // why it does not float upright, as a *float.Fault; Rest is then empty
}

// WithOutfits works out how a boat that has outfits aboard lies without them, with each
// of them, and with all where there are several.
//
// Errors: a wood that is not known.
func WithOutfits(b aboard.Boat, o *outfit.Outfits, w water.Water) ([]Outfitted, error) {
	weights, err := o.Weights()
	if err != nil {
		return nil, err
	}
	base := float.Total(b.Own(), weight.Sum(b.Aboard()))
	lie := func(with string, items []weight.Item) Outfitted {
		added := weight.Sum(items)
		l := Outfitted{With: with, Added: added.Mass, All: float.Total(base, added)}
		plane, _, err := b.Hull.Settle(l.All, w.Density)
		if l.Fault = err; err == nil {
			l.Rest = b.Hull.Upright(plane, l.All, w.Density)
		}
		return l
	}
	out := []Outfitted{lie("no outfit", nil)}
	for _, o := range weights {
		out = append(out, lie(o.Name.Words(), o.Items))
	}
	if len(weights) > 1 {
		out = append(out, lie("all of them together", b.Outfits))
	}
	return out, nil
}
