package afloat

import (
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/outfit"
	"ribwright/geometry/water"
	"ribwright/geometry/water/float"
)

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
