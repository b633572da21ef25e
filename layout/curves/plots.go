package curves

import (
	"ribwright/geometry/trial"
	"ribwright/layout/plot"
)

// Plots returns the curves of a report one by one, for pages that show each in its
// place.
func Plots(r *trial.Report) []plot.Plot {
	return []plot.Plot{righting(r), displacement(r), resistance(r), power(r)}
}
