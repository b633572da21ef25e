package bend

import (
	"fmt"
	"math"

	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/wood/timber"
)

// Soak is how the ribs' stock takes up its moisture before it is steamed and gives it
// off afterwards. Hours are sizes to expect: how fast wood dries is from memory.
type Soak struct {
	Bought float64 // moisture as it comes, %
	Hours  float64 // under water until it is as moist as the design says; 0 for none
	Half   float64 // hours of drying, both faces in the air, after which half of the water has gone that will go
	Most   float64 // nine tenths of it
}

// severe is the moisture in % that only severe bends want.
const severe = 23.0

// dry works out how moist the ribs' stock should be, how long it is soaked and dried,
// and how far it shrinks.
func (r *Report) dry() {
	d, thick := r.Frame.Design, float64(r.Frame.Design.Ribs.Thickness)
	for _, rib := range r.Ribs {
		for _, a := range rib.Arcs {
			r.LeastMoisture = math.Max(r.LeastMoisture, timber.LeastMoisture(a.Band))
		}
	}
	bound := math.Min(d.Bending.Moisture, timber.FiberSaturation) // only what is bound in the wood swells it
	if bound > timber.ServiceMoisture {
		r.Shrink = timber.Shrink(thick, r.Boat.Ribs.Tangential, bound, timber.ServiceMoisture)
	}
	r.Swell = math.Max(0, timber.Shrink(1, r.Boat.Ribs.Tangential, bound, d.Bending.Stock.Bought()))
	r.Soak = Soak{Bought: d.Bending.Stock.Bought(), Half: timber.MoistureHours(thick, 0.5), Most: timber.MoistureHours(thick, 0.9)}
	r.Soak.Hours = timber.MoistureHours(thick, timber.SoakShare(r.Soak.Bought, d.Bending.Moisture))
	r.judgeStock()
}

// judgeStock notes what the stock asks for that is not as the bends want it.
func (r *Report) judgeStock() {
	b, most := r.Frame.Design.Bending, r.LeastMoisture
	if b.Moisture < most {
		r.note(finding.Finding{About: "moisture of the rib stock", Verdict: finding.Missed, Standing: finding.Common,
			Measure: finding.Measure{Value: b.Moisture, Limit: most, Unit: "%"}, Cure: "soak it longer, or take greener stock (bending.stock, bending.moisture)"})
	}
	switch {
	case b.Stock == design.KilnDried && most >= severe:
		r.note(finding.Finding{About: "kiln-dried rib stock", Verdict: finding.Missed, Standing: finding.Common,
			Text: "kiln-dried stock is advised against for bends as tight as these: it never gets all its suppleness back, however long it is soaked",
			Cure: "take air-dried or green stock, or thinner ribs; if you must use it, bend three blanks before you saw the rest"})
	case b.Stock == design.Green && b.Moisture > timber.FiberSaturation:
		r.note(finding.Finding{About: "green rib stock", Verdict: finding.Noted, Standing: finding.Memory,
			Text: fmt.Sprintf("steamed at %.0f %% it may split where water is shut in, and it dries long", b.Moisture),
			Cure: fmt.Sprintf("let the blanks lie in the air until they have about %.0f %%", severe)})
	}
}
