package afloat

import (
	"ribwright/geometry/trial/afloat"
	"ribwright/layout/figure/plot"
)

// Plots returns the curves of a report one by one, for pages that show each in its
// place.
func Plots(r *afloat.Report) []plot.Plot {
	return []plot.Plot{righting(r), displacement(r), resistance(r), power(r)}
}
