package afloat

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/wording"
)

// Carried is the boat as one person carries it: finished, without people, gear and
// outfits, its cross pieces in.
type Carried struct {
	Mass, Balance float64 // kg; station at which it balances, mm
	By            string  // the cross piece that it is carried by; "" where it has none for it
	At            float64 // station of its middle, mm
}

// Off is how far forward of the balance the boat is carried, mm.
func (c Carried) Off() float64 { return c.At - c.Balance }

// CarryWithin is how far from the balance a yoke may lie, mm: farther, one hand pulls an
// end down all the way. Common practice, no source.
const CarryWithin = 50.0

// carriedBy finds the yoke, or the thwart nearest to the balance where there is none.
func (r *Report) carriedBy() {
	own := r.Boat.Own()
	c := Carried{Mass: own.Mass, Balance: own.At.X}
	for _, kind := range []design.Kind{design.Yoke, design.PlainThwart} {
		for _, t := range r.Boat.Frame.Thwarts {
			if t.Kind == kind && (c.By == "" || math.Abs(t.At-c.Balance) < math.Abs(c.Off())) {
				c.By, c.At = t.Name, t.At
			}
		}
		if c.By != "" {
			break
		}
	}
	r.Carried = &c
}

func (r *Report) findCarried() {
	if r.Boat.Frame == nil {
		return
	}
	r.carriedBy()
	c := r.Carried
	text := fmt.Sprintf("as it is carried, %.1f kg without people and gear, the boat balances %s", c.Mass, off(c.Balance, "midship"))
	if c.By == "" {
		r.Findings.Say("carrying", finding.Estimate, "%s; it has no yoke and no thwart to carry it by", text)
		return
	}
	name := wording.OneLine(wording.Clip(c.By, 40))
	text += fmt.Sprintf("; %s is %s", name, off(c.Off(), "that"))
	f := finding.Finding{About: "carrying", Standing: finding.Common, Verdict: finding.Holds,
		Measure: finding.Measure{Value: math.Round(math.Abs(c.Off())), Limit: CarryWithin, Unit: "mm", AtMost: true}}
	if f.Value > f.Limit {
		f.Verdict, f.Cure = finding.Missed, fmt.Sprintf("%s at %.1f mm, between two ribs", name, between(r.Boat.Frame, c.Balance))
		text += fmt.Sprintf(", more than %.0f mm: one end pulls down. Put %s", CarryWithin, f.Cure)
	}
	f.Text = text
	r.Findings = append(r.Findings, f)
}

// between is the middle between two ribs that is nearest to a station, mm.
func between(f *frame.Frame, x float64) float64 {
	best := math.Inf(1)
	for i := 1; i < len(f.Ribs); i++ {
		if mid := (f.Ribs[i-1].Station + f.Ribs[i].Station) / 2; math.Abs(mid-x) < math.Abs(best-x) {
			best = mid
		}
	}
	return best
}

// off says how far forward or aft of something a station lies.
func off(x float64, of string) string {
	switch x = math.Round(x); {
	case x > 0:
		return fmt.Sprintf("%.0f mm forward of %s", x, of)
	case x < 0:
		return fmt.Sprintf("%.0f mm aft of %s", -x, of)
	}
	return "at " + of
}
