package book

import (
	"fmt"
	"math"

	"ribwright/geometry/design"
	"ribwright/geometry/wood/timber"
	"ribwright/layout/report"
)

// stock says how the ribs' wood comes, and what that asks of soaking, steaming and
// drying.
func (w *writer) stock() {
	d, s := w.Frame.Design, w.Bend.Soak
	w.section("The wood as it comes")
	words := map[design.Seasoning]string{
		design.AirDried:  "The design reckons on air-dried stock, which has about %.0f %% of moisture as it comes; soaked, it has %.0f %% when it is steamed.",
		design.Green:     "The design reckons on green stock, which has %.0f %% of moisture or more as it comes; it is steamed at %.0f %% and wants no soaking. Keep the blanks wrapped or under water until then: a thin blank dries in days.",
		design.KilnDried: "The design reckons on kiln-dried stock, which has about %.0f %% of moisture as it comes; soaked long, it has %.0f %% when it is steamed. It wants longer steam, never gets all of its suppleness back, and more of it breaks.",
	}[d.Bending.Stock]
	w.say(words, s.Bought, d.Bending.Moisture)
	if s.Hours > 0 {
		w.say("To get there, a blank lies under water for %s. Steam it for %.0f minutes.", atLength(s.Hours), w.Bend.Ribs[0].Minutes)
	} else if d.Bending.Stock != design.Green {
		w.say("It is steamed as dry as it comes, for %.0f minutes.", w.Bend.Ribs[0].Minutes)
	}
	w.say("Bent and set with air on both faces, a rib has lost half of the water that it will lose after %s, and nine tenths after %s. How fast wood takes up water and dries is from memory (a diffusivity of %g mm2/s): it may go twice as fast, or take twice as long in the cold. Weigh a blank if you can: it has settled when it loses no more from day to day.",
		atLength(s.Half), atLength(s.Most), timber.Diffusivity)
	w.add(w.byStock())
}

// byStock tells how stock differs by the way it was dried; common practice.
func (w *writer) byStock() report.Table {
	t := report.Titled("Rib stock, by how it was dried").Names("Stock").Words("As it comes", "Before steam", "Bends that it is advised for", "Afterwards")
	t.Row("green", "30 % or more", "no soaking", "all; above 30 % let it dry in the air first, for shut-in water splits it", "dries longest and shrinks most: pegs only when it has settled")
	t.Row("air-dried", "12 to 15 %", "soak a night, longer when thicker than 8 mm", "all", "a day or two")
	t.Row("kiln-dried", "6 to 8 %", "soak a day or two, steam a quarter longer at least", "mild ones; advised against where stock must be picked or a strap is needed", "a day or two")
	t.Note = "From extension articles on bending and common practice. If yours is another than the design reckons on, ask who made this book to change it in the design and make the book anew: soaking and steaming change with it. Where a yard has none but kiln-dried boards, soak and steam the hardest rib of the table of bends first, with a strap of thin steel along its outer face, a block fast to each end of it that the blank butts against, and go on with that stock only when it comes through whole."
	return t
}

// atLength letters hours as a builder waits: nights and days, for they are a size to
// expect.
func atLength(hours float64) string {
	switch {
	case hours < 4:
		return fmt.Sprintf("some %.0f hours", math.Max(1, math.Ceil(hours)))
	case hours <= 14:
		return "a night"
	case hours <= 30:
		return "a day and a night"
	}
	return fmt.Sprintf("%.0f days", math.Ceil(hours/24))
}

// soaked is the work of soaking blanks.
func (w *writer) soaked(what string) string {
	wait := " for " + atLength(w.Bend.Soak.Hours)
	if wait == " for a night" {
		wait = " overnight"
	}
	return "soak " + what + wait
}

// dried is how long a rib dries until it has settled.
func (w *writer) dried() string {
	if d := math.Ceil(w.Bend.Soak.Most / 24); d > 3 || w.Frame.Design.Bending.Stock == design.Green {
		return fmt.Sprintf("%.0f days at least", math.Max(4, 2*d))
	}
	return "some days"
}
