package rowing

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/finding"
	"ribwright/geometry/trial/balance"
	"ribwright/geometry/trial/yardstick"
)

// judge lays the figures beside what practice gives, and says what can hurt.
func (f *Fit) judge() {
	f.Boat.SayOutfits(&f.Findings)
	f.Ranges = []finding.Range{
		{Name: "rowlock behind the seat's after edge", Value: f.SeatX - SeatWide/2 - f.LockX, Low: 255, High: 355, Unit: "mm", Source: "10 to 14 in, three books on skiffs"},
		{Name: "rowlock over the seat", Value: f.LockZ - f.SeatZ, Low: 150, High: 205, Unit: "mm", Source: "6 to 8 in, the same and a round-up of rowers"},
		{Name: "seat along the boat", Value: SeatWide, Low: 165, High: 205, Unit: "mm", Source: "6.5 to 8 in, a skiff builder"},
		{Name: "back of the seat to the heels", Value: f.Legs.Heel, Low: 36 * 25.4, High: 40 * 25.4, Unit: "mm", Source: "36 to 40 in for an average adult, from memory"},
		{Name: "heels under the seat", Value: f.SeatOver - BoardThick, Low: 150, High: 205, Unit: "mm", Source: "6 to 8 in, from memory"},
		{Name: "oar to span", Value: f.Oar.Length / f.Span * 100, Low: 180, High: 210, Unit: "%", Source: "about twice the span, rowers' habit"},
		{Name: "inboard to outboard", Value: f.Oar.Leverage() * 100, Low: 36, High: 42, Unit: "%", Source: "7 to 18, the oar maker's rule"},
		{Name: "handles pass over each other", Value: f.Oar.Overlap(f.Span), Low: 0, High: 110, Unit: "mm", Source: "0 to 4 in for a fixed seat"},
		{Name: "span", Value: f.Span, Low: 42 * 25.4, High: 60 * 25.4, Unit: "mm", Source: "under 42 in the inboard part gets short"},
	}
	f.judgeFloat()
	if f.Fault == nil { // trim, blades and hands are told of a boat that stays upright
		f.judgeTrim()
		f.judgeReach()
	}
	n := &f.Findings
	if in := f.InWay(); len(in) > 0 {
		n.Warn("in the way", finding.Arithmetic, "between the rower's heels and back lie %s: these come out for rowing. Foam that comes out is missed when the boat swamps", strings.Join(in, "; "))
		f.judgeShape()
	}
	if short := f.low(); short > 0 {
		n.Judge(finding.Unfit, "seat", finding.Arithmetic, "the seat is %.0f mm too low for cheeks that stand on the ribs", short)
	}
	if !f.FootFits {
		n.Judge(finding.Unfit, "footrest", finding.Arithmetic, "at %.0f mm the boat is too narrow, or too near its last rib, for a footrest: move the seat forward", f.FootX)
	}
	n.Say("hands", finding.Practice, "the handles cross: one hand leads or lies above the other; before they reach the belly the oars swing %.0f deg past square", deg(f.Finish()))
	f.judgeFrame()
	n.Say("oars", finding.Practice, "the rule without the overlap gives %.0f mm with %.0f mm inboard; buy or make the nearest whole length and move the button", Short(f.Span).Length, Short(f.Span).Inboard)
	n.Say("rules", finding.Law, "oars leave a boat moved by people alone; a motor or a sail on it changes which rules apply. A wearable life jacket for each person (in the United States 33 CFR 175.15)")
}

// judgeShape tells what the frame may do without the cross pieces that come out.
func (f *Fit) judgeShape() {
	var out []string
	for i, t := range f.Boat.Frame.Thwarts {
		if f.amid(t.At) {
			out = append(out, balance.Code(i))
		}
	}
	b, err := balance.Of(f.Boat.Frame)
	if err != nil || len(out) == 0 {
		return // the report on bends says why
	}
	w, _ := b.Choose(out)
	trials, err := b.Trials(w, 0)
	if err != nil {
		return
	}
	by := trials[min(1, len(trials)-1)].Band.Over()
	f.Findings.Say("shape", finding.Estimate, "without %s the boat's beam most likely changes by %.0f mm, at worst from %.0f to %+.0f mm: let the frame rest so before the bars are bored for clips. Seats and foam hold no shape", w, math.Abs(by.Likely), by.Least, by.Most)
}

func (f *Fit) judgeFloat() {
	n := &f.Findings
	if f.Fault != nil {
		n.Judge(finding.Unsafe, "stability", finding.Arithmetic, "do not row it: with the rower on the seat: %s. Lower the seat and the rowlocks or carry weight on the floor", f.Fault.Error())
	} else {
		f.judgeStanding()
		n.Warn("stability", finding.Arithmetic, "with %s, %.0f kg, on the rowing seat GM is %.0f mm and the least freeboard %.0f mm. A rower sits high and cannot see ahead: sit before you unship the oars, and never stand",
			f.Who, f.Body.Mass, f.Rest.GM, f.Rest.Freeboard.Least)
	}
}

// leastGM is the stiffness that is asked of a boat that is rowed, mm: oars pull unevenly
// and the rower sits high. Our own choice.
const leastGM = 40.0

// judgeStanding lays lever, held shift and GM beside those of known boats.
func (f *Fit) judgeStanding() {
	s, least := f.Standing, yardstick.LeastFor(1)
	than, of := yardstick.Steadier(s.Most, 1)
	ends := "water comes over the gunwale"
	if !math.IsNaN(s.GoesOver) {
		ends = "it goes over by itself"
	}
	text := fmt.Sprintf("the greatest righting lever is %.0f mm, steadier than %d of %d known boats with one aboard; past %.0f deg %s; the rower's whole weight, moved aside at once, is held up to %.0f mm off the middle line", s.Most, than, of, deg(s.Over()), ends, s.Held)
	const about, cure = "row it or not", "lower seat and rowlocks, carry weight on the floor, or row a wider boat"
	if f.Rest.GM < leastGM || s.Most < least.Lever || s.Held < least.Held || s.GoesOver < least.Upright { // one that does not go over has NaN
		f.Findings.Judge(finding.Unsafe, about, finding.Compared, "do not row it as it is: %s. Wanted are a GM of %.0f mm, a lever of %.0f mm, a held shift of %.0f mm, and nothing that goes over before %.0f deg: %s", text, leastGM, least.Lever, least.Held, deg(least.Upright), cure)
		return
	}
	f.Findings.Warn(about, finding.Compared, "row it on calm water near the shore: waves up to %.0f mm, half of the least freeboard, and no white crests, a wind of some 4 m/s (7 knots), our own limits; %s", f.Rest.Freeboard.Least/2, text)
}

func (f *Fit) judgeTrim() {
	rise := f.Rest.TrimRise()
	way := "level"
	switch {
	case rise >= 1:
		way = "down by the stern"
	case rise <= -1:
		way = "down by the bow"
	}
	f.Findings.Say("trim", finding.Arithmetic, "%.0f mm %s over the waterline, with the rower's weight %.0f mm ahead of their back and the gear where the design has it", math.Abs(rise), way, massAhead)
}

func (f *Fit) judgeReach() {
	n := &f.Findings
	if !f.Reaches {
		n.Judge(finding.Unfit, "blades", finding.Arithmetic, "the blades do not reach the water from rowlocks %.0f mm over it; take longer oars or a wider span", f.WaterLock)
		return
	}
	n.Say("blades", finding.Arithmetic, "from rowlocks %.0f mm over the water the oar slopes %.0f deg with the blade in, %.0f deg on the high side when she rolls %.0f deg; the handle is then %.0f mm over the seat, the rower's shoulder at %.0f mm",
		f.WaterLock, deg(f.Level.Slope), deg(f.HighSide.Slope), deg(roll), f.HighSide.Drive, f.Body.Shoulder)
	if f.HighSide.Drive > 0.8*f.Body.Shoulder {
		n.Judge(finding.Unfit, "blades", finding.Memory, "that is higher than most can pull: lower the rowlocks, raise the seat or take longer oars")
	}
	if c := f.OverLegs(); c < overLegs {
		n.Judge(finding.Unfit, "hands", finding.Arithmetic, "the hands pass %.0f mm over the legs on the low side; %.0f mm and more is wanted: lower the seat or raise the rowlocks", c, overLegs)
	} else {
		n.Say("hands", finding.Arithmetic, "the hands pass %.0f mm over the legs on the low side, and the oar %.0f mm over the gunwale", c, f.OverGunwale())
	}
}

func (f *Fit) judgeFrame() {
	n, s := &f.Findings, f.Strength
	if !f.Clear {
		n.Judge(finding.Unfit, "frame", finding.Arithmetic, "a clip finds no room between rib heads and cross pieces: move the seat")
	}
	for _, x := range f.Bars {
		if _, foam := f.Boat.SideFoam(x-25, x+25); foam {
			n.Say("foam", finding.Arithmetic, "foam lies under the gunwales where the clips at station %.0f mm go: leave 50 mm of it open", x)
		}
	}
	v := finding.Holds
	if math.Max(s.Flat, s.Upright) > s.Working {
		v = finding.Weak
	}
	n.Judge(v, "frame", finding.Estimate, "a pull of %.0f N on each handle puts %.0f N on each rowlock; bars of %.0f x %.0f mm then carry %.1f and %.1f N/mm2 of the %.1f N/mm2 asked of %s, and the rowlock sags %.1f mm",
		s.Pull, s.AtLock, BarWide, f.BarThick, s.Flat, s.Upright, s.Working, f.Row.Species, s.Sag)
	n.Warn("frame", finding.Estimate, "each of the four clips must hold %.0f N along the boat and %.0f N of lift. The frame carries oars, not people: nobody sits, stands or climbs in over it. Fit the oars with a lanyard, and check every clip before you leave the shore", s.Clip, s.ClipLift)
}

func deg(a float64) float64 { return a * 180 / math.Pi }
