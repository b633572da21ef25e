package afloat

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/trial/yardstick"
)

// lineAbout is what the line about the boat on the water is about.
const lineAbout = "afloat"

// InALine says in a line whether the boat stands with the people and gear aboard, lies
// level and keeps its gunwales dry. It passes where all of that is as it should be. What
// is asked for is yardstick's, and the freeboard of the options.
func (r *Report) InALine() finding.Finding {
	f := finding.Finding{About: lineAbout, Standing: finding.Arithmetic, Verdict: finding.Unsafe}
	switch {
	case r.Fault != nil:
		f.Text, f.Mend = "it does not stand: "+r.Fault.Text+r.lower(), r.steady()
		return f
	case len(r.Boat.Crew) == 0:
		f.Verdict, f.Text = finding.Noted, fmt.Sprintf("nobody is aboard in the design, so whether it stands is not known; empty it floats with %.0f mm of freeboard", r.Rest.Freeboard.Least)
		return f
	}
	rolls, lies := r.rolls(), r.amiss()
	f.Verdict, f.Standing = finding.Missed, finding.Compared
	switch {
	case len(rolls) > 0:
		f.Cure, f.Mend = r.steadier(), r.steady()
		f.Text = "it does not stand as it should: " + strings.Join(append(rolls, lies...), "; ") + "; what helps: " + f.Cure
	case len(lies) > 0:
		f.Text, f.Mend = "it stands, but "+strings.Join(lies, "; "), r.leveled()
		if math.Round(r.Rest.Freeboard.Least) < r.Options.Freeboard {
			f.Mend = r.deeper()
		}
	default:
		f.Verdict, f.Text = finding.Holds, "it stands, with "+r.stands()
	}
	return f
}

// NoRest is the line about a boat that finds no rest on the water.
func NoRest(why error) finding.Finding {
	return finding.Finding{About: lineAbout, Standing: finding.Arithmetic, Verdict: finding.Unsafe, Text: "it finds no rest on the water: " + why.Error()}
}

// stands says how well a boat stands that does.
func (r *Report) stands() string {
	s := r.Standing
	than, of := yardstick.Steadier(s.Most, len(r.Boat.Crew))
	text := fmt.Sprintf("a greatest righting lever of %.0f mm, steadier than %d of %d known boats", s.Most, than, of)
	if than == 0 {
		text = fmt.Sprintf("a greatest righting lever of %.0f mm, not steadier than %d known boats but more than the %.0f mm that is the least asked for", s.Most, of, yardstick.LeastFor(len(r.Boat.Crew)).Lever)
	}
	if !math.IsNaN(s.Flooding) {
		text += fmt.Sprintf("; water comes in at %.0f deg of heel", deg(s.Flooding))
	}
	text += fmt.Sprintf("; freeboard %.0f mm", r.Rest.Freeboard.Least)
	if rise := r.Rest.TrimRise(); math.Abs(rise) >= 0.5 {
		return text + fmt.Sprintf(", %.0f mm down by the %s", math.Abs(rise), lowerEnd(rise))
	}
	return text + ", level"
}

// lowerEnd is the end that a boat lies deeper at whose bow stands so much higher.
func lowerEnd(rise float64) string {
	if rise < 0 {
		return "bow"
	}
	return "stern"
}

// rolls lists what it has less of against being rolled than is asked for.
func (r *Report) rolls() []string {
	var out []string
	s, least := r.Standing, yardstick.LeastFor(len(r.Boat.Crew))
	if math.Round(s.Most) < least.Lever {
		out = append(out, fmt.Sprintf("its greatest righting lever is %.0f mm, and %.0f mm is the least asked for", s.Most, least.Lever))
	}
	if s.GoesOver < least.Upright { // NaN where water comes in first
		out = append(out, fmt.Sprintf("past %.0f deg of heel it goes over by itself", deg(s.GoesOver)))
	}
	if math.Round(s.Held) < least.Held {
		out = append(out, fmt.Sprintf("people's weight can be held %.0f mm off the middle line, and %.0f mm is the least asked for", s.Held, least.Held))
	}
	return out
}

// amiss lists what is amiss with how it lies.
func (r *Report) amiss() []string {
	var out []string
	if free, want := r.Rest.Freeboard.Least, r.Options.Freeboard; math.Round(free) < want {
		out = append(out, fmt.Sprintf("its freeboard is %.0f mm, and %.0f mm is asked for", free, want))
	}
	least := yardstick.LeastFor(len(r.Boat.Crew))
	most, gear := least.Bare, 0.0
	for _, g := range r.Boat.Gear {
		gear += g.Load().Mass
	}
	if gear >= least.Gear {
		most = least.Trim
	}
	if rise := r.Rest.TrimRise(); math.Round(math.Abs(rise)) > most {
		out = append(out, fmt.Sprintf("it lies %.0f mm down by the %s over its waterline, and %.0f mm is the most: move people or gear", math.Abs(rise), lowerEnd(rise), most))
	}
	return out
}

// The most that seats are said to come down, mm, and the steps that a cure is rounded up to.
const (
	mostLower = 150.0
	lowerStep = 10.0
)

// steadier says what would make the boat stand as it should: lower seats by what the lever
// lacks, as far as seats can come down, else a wider boat.
func (r *Report) steadier() string {
	const wider = "a wider boat, or less weight high up"
	lacks, at := r.lacks()
	gain := r.Boat.Carried() / r.Load.Mass * math.Sin(at) // mm of lever for a mm of seat
	lower := math.Ceil(lacks/gain/lowerStep) * lowerStep
	room := r.room()
	switch {
	case room == 0:
		return wider
	case !(gain > 0) || lower > math.Min(mostLower, room):
		return "everyone on the floor, or " + wider
	}
	return fmt.Sprintf("seats some %.0f mm lower, or %s", lower, wider)
}

// room is how far the lowest of the seats that people sit on stands over the floor, mm;
// 0 where anyone sits on the floor or on a pad.
func (r *Report) room() float64 {
	if r.Boat.Frame == nil {
		return 0
	}
	out := math.Inf(1)
	for _, p := range r.Boat.People {
		s, seated := r.Boat.Frame.Design.SeatOf(p)
		if !seated || s.Kind == design.Pad {
			return 0
		}
		out = math.Min(out, float64(s.Height))
	}
	return out
}
