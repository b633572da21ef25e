package afloat

import (
	"ribwright/geometry/boat/weight"
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

// Outfitted works out how the boat lies without outfits, with each of them, and with all
// where there are several.
func (b Boat) Outfitted(w water.Water) []Outfitted {
	base := float.Total(b.Empty.Load(), weight.Sum(b.Aboard))
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
	for _, o := range b.weights {
		out = append(out, lie(o.Name.Words(), o.Items))
	}
	if len(b.weights) > 1 {
		out = append(out, lie("all of them together", b.Fitted))
	}
	return out
}
