package afloat

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/skin"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/water/effort"
)

// touring is the power at the paddle that a paddler keeps up, W: all day, and for
// an hour. From memory: 40 to 80 and 100 to 150.
const (
	allDay = 50.0
	anHour = 110.0
)

func (r *Report) findEffort() {
	people := math.Max(1, float64(len(r.Boat.People)))
	each := ""
	if people > 1 {
		each = " each"
	}
	slow, fast := r.Hull.SpeedAt(r.Options.Water, allDay*people), r.Hull.SpeedAt(r.Options.Water, anHour*people)
	r.Findings.Say("effort", finding.Designs, "%.0f W%s at the paddle, an easy day's work, keeps up about %.1f km/h; %.0f W%s, an hour's hard work, %.1f km/h. Flat, deep, still water; power and a paddle's efficiency of %.0f %% are from memory",
		allDay, each, slow*3.6, anHour, each, fast*3.6, effort.Efficiency*100)
	const hump = 0.40
	u := hump * math.Sqrt(measure.Gravity*r.Hull.Length)
	r.Findings.Say("effort", finding.Memory, "past %.1f km/h (Froude number %.2f on %.2f m of waterline) effort climbs steeply; Michell's integral exaggerates the humps and hollows before it", u*3.6, hump, r.Hull.Length)
}

func (r *Report) findSkin() {
	if r.unsmooth != nil {
		r.Findings.Say("skin", finding.Arithmetic, "the ribs' smooth arcs find no rest to be compared with: %v", r.unsmooth)
	}
	if r.Smooth == nil {
		return
	}
	a, b := r.Rest, *r.Smooth
	r.Findings.Say("skin", finding.Arithmetic, "the cloth, flat between stringers, floats %.1f mm deeper than the ribs' smooth arcs would; GM %.0f mm against %.0f mm, wetted surface %.2f m2 against %.2f m2",
		a.Draft-b.Draft, a.GM, b.GM, a.Wetted/1e6, b.Wetted/1e6)
}

func (r *Report) findWeights() {
	if r.Boat.Frame == nil {
		return
	}
	r.Findings.Say("weights", finding.Estimate, "the boat's %.1f kg are worked from volumes and densities, without seats, floor or footrests: weigh it. How high people's weight lies is good to some 30 mm, and GM with it", r.Boat.Own().Mass)
}

func (r *Report) findReminders() {
	text := "a wearable life jacket for each person"
	if n := len(r.Boat.People); n > 1 {
		text = fmt.Sprintf("%d wearable life jackets, one for each person", n)
	}
	r.Findings.Say("on board", finding.Law, "%s (in the United States 33 CFR 175.15). Registration, lights and sound signals follow local law; sail, motor, passengers for hire or a sale change which rules apply", text)
}

// findCloth tells of ribs that stand outside the flat cloth: it lies on them, so
// the volume worked out between the stringers is a little less than the boat's.
func (r *Report) findCloth() {
	f := r.Boat.Frame
	if f == nil {
		return
	}
	c := skin.ClearanceOf(f)
	r.Clearance = c
	if len(c.Proud) == 0 {
		return
	}
	worst := c.Nearest
	mm := func(v float64) string { return fmt.Sprintf("%.1f mm", v) }
	text := fmt.Sprintf("between %s the cloth lies on ribs instead of spanning flat: rib %s stands %s out of it, the most of %s. Ribs then show and chafe the cloth, and the boat floats a little higher than worked out here",
		worst.Between(f), worst.Rib, mm(worst.By), skin.Runs(f, c.Proud))
	if c.Cure != nil {
		text += fmt.Sprintf("; to keep all ribs %s inside it, %s", mm(-c.Cure.By), c.Cure.Words(f.Design, mm))
	}
	r.Findings.Say("skin", finding.Arithmetic, "%s", text)
}
