// Package reasons tells why a boat was sized as it was: the boat of one brief, what a
// search found, the boats of a sweep, a family tried on many, the derivation of one
// value, and how a class came out. The terminal, a page and a browser set the same
// blocks.
package reasons

import (
	"fmt"
	"math"

	"ribwright/geometry/body"
	"ribwright/geometry/sizing"
	"ribwright/layout/report"
	"ribwright/layout/report/trial"
)

// Boat tells what was decided and why, what the boat does with its load, and what to
// be careful about.
func Boat(b *sizing.Boat) []report.Block {
	out := append([]report.Block{report.Paragraph{Words: "Sized for " + b.Case.Brief.Who() + "."}}, failures(b)...)
	out = append(out,
		values("What the family "+b.Case.Family.Name+" decides", b, b.Case.Family.Program.OnPage(), b.Why),
		values("Afloat with this load", b, []string{"all_up", "boat_weight", "draft", "freeboard", "gm", "trim_rise", "effort"}, func(name string) string {
			if name == "effort" {
				return fmt.Sprintf("at %.1f km/h; an estimate, only to compare designs", b.Case.Brief.Speed*3.6/1000)
			}
			return b.Case.Run().Reason(name)
		}),
		trial.Standing(b.Standing, len(b.Design.Crew)), seatPrice(b))
	out = append(out, trial.Cargo(b.Cargo, report.Letters{})...)
	if len(b.Failures()) == 0 {
		still := ""
		if len(b.Case.Brief.Riders()) > 0 {
			still = " They judge the boat while passengers and dogs keep their places, not while they move."
		}
		out = append(out, report.Say("All %d checks of the family hold.%s", b.Rules(), still))
	}
	return append(out, bodies(b)...)
}

// seatPrice says what a higher seat costs.
func seatPrice(b *sizing.Boat) report.Paragraph {
	if wish := b.SeatWish(); wish >= 1 {
		return report.Say("The seat is %.0f mm higher than the lowest in comfort, as you wish: that costs %.0f mm of the greatest righting lever, for which section and beam make up as far as they can.", wish, b.SeatPrice(wish))
	}
	return report.Say("A seat 10 mm higher costs some %.0f mm of the greatest righting lever; one 10 mm lower gives as much.", b.SeatPrice(10))
}

func values(title string, b *sizing.Boat, names []string, why func(name string) string) report.Table {
	t := report.Titled(title).Names("Value").Numbers("Is").Words("Why")
	for _, name := range names {
		t.Row(name, b.Case.Run().Shown(name), why(name))
	}
	return t
}

// failures lists the checks that do not hold; the page opens with them.
func failures(b *sizing.Boat) []report.Block {
	failed := b.Failures()
	if len(failed) == 0 {
		return nil
	}
	l := report.List{}
	for _, v := range failed {
		l.Items = append(l.Items, v.String())
	}
	of, do := fmt.Sprintf("the family's %d checks", b.Rules()), "checks do"
	if len(b.Checks) > b.Rules() {
		of += " and what was asked beside them"
	}
	if len(failed) == 1 {
		do = "check does"
	}
	return []report.Block{report.Say("Of %s %d %s not hold:", of, len(failed), do), l}
}

// bodies says what is known of the crew only by estimate.
func bodies(b *sizing.Boat) []report.Block {
	out := []report.Block{report.Paragraph{Words: "Bodies: " + body.Source + "."}}
	l := report.List{}
	for _, p := range b.Case.Brief.Crew {
		if p.Role.Live() {
			continue
		}
		for _, e := range p.Estimates() {
			if e.Name == "span" && e.Spread > 0 {
				l.Items = append(l.Items, fmt.Sprintf("arm span estimated at %.0f mm, give or take %.0f mm for two people in three; measure it with a tape and add \"span %.0f cm\"", e.Value, e.Spread, math.Round(e.Value/10)))
			}
		}
		l.Items = append(l.Items, p.Outside()...)
	}
	if len(l.Items) > 0 {
		out = append(out, l)
	}
	return out
}
