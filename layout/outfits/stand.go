package outfits

import (
	"math"

	"ribwright/geometry/outfit/sail"
	"ribwright/layout"
	"ribwright/layout/figure/plot"
)

// StandPlot draws the righting moment with the crew in each place, to where the lee
// gunwale dips.
func StandPlot(f *sail.Fit) plot.Plot {
	p := plot.Plot{Title: "Righting moment by where the crew sits, to where the lee gunwale dips", XLabel: "heel, degrees", YLabel: "N m", W: 150, H: 70}
	for i, s := range f.Stands {
		c := plot.Curve{Name: s.Place.String(), Pen: []layout.Pen{layout.Mark, layout.Center, layout.Cut}[i]}
		for _, m := range s.Moments {
			c.Points = append(c.Points, pt(m.Heel*180/math.Pi, m.N))
		}
		p.Curves = append(p.Curves, c)
	}
	return p
}
