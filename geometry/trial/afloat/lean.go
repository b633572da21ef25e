package afloat

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/water/float"
)

// Lean is what happens when a part of the weight moves aside.
type Lean struct {
	Heel      float64 // radians
	Freeboard float64 // mm, at its lowest then
}

// lean moves a mass, kg, aside by mm; ok is false when water comes in or the boat
// goes over.
func (r *Report) lean(mass, aside float64) (Lean, bool) {
	l := r.Load.Shifted(mass, geometry.Point3{Y: aside})
	p, _, err := r.Boat.Hull.Settle(l, r.Options.Water.Density)
	if err != nil {
		return Lean{}, false
	}
	return Lean{math.Abs(p.Heel), r.Boat.Hull.Freeboard(p).Least}, true
}

// farthest returns how far a mass, kg, can move aside before the boat rolls until
// water comes in, mm.
func (r *Report) farthest(mass float64) float64 {
	lo, hi := 0.0, 2000.0
	for range 14 {
		mid := (lo + hi) / 2
		if _, ok := r.lean(mass, mid); ok {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// heaviest returns the person, or lacking people the load, of the most mass.
func (r *Report) heaviest() (name string, l float.Load) {
	for _, i := range r.Boat.Crew {
		if v := i.Load(); v.Mass > l.Mass {
			name, l = i.Name, v
		}
	}
	return name, l
}
