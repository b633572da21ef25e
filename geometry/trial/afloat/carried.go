package afloat

import (
	"fmt"
	"math"

	"ribwright/geometry/altered"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
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

// carriedBy finds the yoke, or the thwart nearest to the balance where there is none, and
// returns it; the zero Thwart where there is neither.
func (r *Report) carriedBy() (by frame.Thwart) {
	own := r.Boat.Own()
	c := Carried{Mass: own.Mass, Balance: own.At.X}
	for _, kind := range []design.Kind{design.Yoke, design.PlainThwart} {
		for _, t := range r.Boat.Frame.Thwarts {
			if t.Kind == kind && (c.By == "" || math.Abs(t.At-c.Balance) < math.Abs(c.Off())) {
				by, c.By, c.At = t, t.Name, t.At
			}
		}
		if c.By != "" {
			break
		}
	}
	r.Carried = &c
	return by
}

func (r *Report) findCarried() {
	if r.Boat.Frame == nil {
		return
	}
	by := r.carriedBy()
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
		f.Verdict = finding.Missed
		text += fmt.Sprintf(", more than %.0f mm: one end pulls down", CarryWithin)
		if at, ok := nearest(r.Boat.Frame, by, c.Balance); ok && math.Abs(at-c.Balance) < f.Value {
			f.Cure = fmt.Sprintf("%s at %.0f mm, clear of the ribs", name, at)
			text += ". Put " + f.Cure
			if now, ok := altered.ThwartPlace.Band(r.Boat.Frame.Design); ok && now.Now == by.At {
				f.Mend = altered.ThwartPlace.Mend(r.Boat.Frame.Design, at-by.At)
			}
		} else {
			f.Verdict = finding.Caution
			text += fmt.Sprintf(". Ribs and people leave no nearer place: a hand on the gunwale 0.6 m away holds it level with %.0f N", c.Mass*measure.Gravity*f.Value/600)
		}
	}
	f.Text = text
	r.Findings = append(r.Findings, f)
}

// nearest is the station closest to another one at which a cross piece clears the ribs'
// heads and the other cross pieces, to the whole millimeter; false where it has no room.
func nearest(f *frame.Frame, t frame.Thwart, x float64) (float64, bool) {
	const clear = 2.0
	half := t.Outline.Bounds().H()/2 + clear
	best, found := 0.0, false
	g := f.Gunwale
	for i := 1; i < len(g.Mortises); i++ {
		_, lo := g.Mortises[i-1].Ends()
		hi, _ := g.Mortises[i].Ends()
		from, to := math.Ceil(g.StationOf(lo)+half), math.Floor(g.StationOf(hi)-half)
		at := math.Max(from, math.Min(to, math.Round(x)))
		if from > to || taken(f, t, at, half) {
			continue
		}
		if !found || math.Abs(at-x) < math.Abs(best-x) {
			best, found = at, true
		}
	}
	return best, found
}

// Where the trunk of one whose weight comes down at a place is, mm behind it and ahead.
// Estimates.
const trunkAft, trunkFore = 250.0, 60.0

// taken reports whether another cross piece, a seat's hanger or a person is there.
func taken(f *frame.Frame, t frame.Thwart, at, half float64) bool {
	meets := func(x, wide float64) bool { return math.Abs(x-at) < half+wide/2 }
	for _, o := range f.Thwarts {
		if o.At != t.At && meets(o.At, o.Outline.Bounds().H()) {
			return true
		}
	}
	for _, p := range f.Design.Crew {
		if w := f.Design.WeightAt(p); meets(w+(trunkFore-trunkAft)/2, trunkFore+trunkAft) {
			return true
		}
	}
	for _, s := range f.Seats {
		if h := s.Hung; h != nil && (meets(h.Front.Hanger.Station, h.Front.Hanger.Wide) || meets(h.After.Hanger.Station, h.After.Hanger.Wide)) {
			return true
		}
	}
	return false
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
