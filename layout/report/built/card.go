package built

import (
	"fmt"
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/survey/built"
	"ribwright/layout/report"
)

// blank is a cell to be written in with a pencil.
const blank = "________"

// Card is the card to be printed: how a frame is measured, weighed and inclined, with the
// drawing's figures as a tape reads them and room for one's own.
func Card(f *built.Frame, units measure.System) []report.Block {
	p := card{report.Letters{Units: units}, f}
	out := []report.Block{report.Chapter("The frame, rib by rib")}
	out = append(out, p.how()...)
	out = append(out, p.rows()...)
	out = append(out, report.Chapter("The boat weighed and inclined"))
	return append(out, p.inclining()...)
}

// How says how each thing on the card is measured.
func How(f *built.Frame, units measure.System) []report.Block {
	return card{report.Letters{Units: units}, f}.how()
}

type card struct {
	report.Letters
	f *built.Frame
}

// how says how each thing is measured.
func (p card) how() []report.Block {
	r := p.f.Frame.Ribs[p.f.TestRib()]
	steps := []string{
		"Set the gunwales level on the trestles, the stems upright. Fill in what you have: any ribs, any cells, as soon as a rib stands, or all at the end.",
		"Beam: hook the tape on the outer face of one gunwale at its underside and read it at the inner face of the other. That is from middle to middle.",
		fmt.Sprintf("Depth: lay a straightedge across the tops of the gunwales and measure down to the rib in its middle. Write what the tape reads; the %s that it reads more than the rib is deep, the gunwale's height less half the rib's thickness, are taken off for you.", p.Fine(p.f.Rail())),
		"Free width: when a rib has cooled, before it goes back into its mortises, between the middles of its heads. Held hot: the same while it is held bent, if that is not the width in the table.",
		"Blank: the length that it was cut to.",
	}
	if k := p.f.Bilge(); k >= 0 {
		steps = append(steps, fmt.Sprintf("Bilge: from a string over the keel, level, out to the rib's outside at the mark of stringer %d; first to port, then to starboard.", k+1))
	}
	steps = append(steps,
		"Moisture of the stock in percent and minutes of steam, if you know them. Write yes under broken for a rib that broke.",
		"Read to the millimeter, or to the sixteenth of an inch. Write figures only, with a point; no unit.")
	return []report.Block{report.List{First: 1, Items: steps},
		report.Figure{Drawing: p.section(), Caption: fmt.Sprintf("Where the tape goes at a rib, here %s, seen from the end.", r.Name), About: "A rib between its gunwales with the tape for beam, depth and bilges."}}
}

// rows are the ribs from midship outward, with the drawing's figures over the blanks.
func (p card) rows() []report.Block {
	t := report.Titled("As drawn, in "+p.Unit()).Names("Rib").Numbers("Beam", "Depth, from the straightedge", "Blank", "Free width", "Held hot", "Bilge")
	own := report.Titled("As it is").Names("Rib").Numbers("Beam", "Depth, from the straightedge", "Blank", "Free width", "Held hot", "Bilge, port", "starboard", "Broken")
	number := func(v float64) string {
		if math.IsNaN(v) {
			return "-"
		}
		return p.Whole(v)
	}
	ribs := p.f.Frame.Ribs
	for i, r := range ribs {
		hot := "-"
		if v := p.f.Drawn(i, built.Hot); v > 0 {
			hot = p.Rough(v)
		}
		t.Row(r.Name, number(p.f.Drawn(i, built.Beam)), number(p.f.Drawn(i, built.Depth)+p.f.Rail()), number(p.f.Drawn(i, built.Blank)),
			p.Rough(p.f.Drawn(i, built.Free)), hot, number(p.f.Drawn(i, built.BilgePort)))
	}
	for _, i := range report.Outward(p.f.Frame.Stations()) { // each on a row of its own, to be filled
		own.Row(ribs[i].Name, blank, blank, blank, blank, blank, blank, blank, "____")
	}
	return []report.Block{t.Outward(p.f.Frame.Stations()).Noted("From midship outward. Beam from middle to middle of the gunwales; widths between the middles of the heads."), own}
}

// inclining says how the boat is weighed and heeled.
func (p card) inclining() []report.Block {
	first, last := p.f.Frame.Ribs[0].Name, p.f.Frame.Ribs[len(p.f.Frame.Ribs)-1].Name
	steps := []string{
		"Weight: the finished boat, dry, with its seats and flotation and nothing loose, hung from a scale or on two bathroom scales at once; write the sum.",
		"Float it in still water, tied loosely at both ends, with nothing and nobody in it.",
		fmt.Sprintf("Freeboard: from the water up to the top of the gunwale at rib %s, at midship and at rib %s, on both sides; write the mean of both sides.", first, last),
		fmt.Sprintf("Set a weight of %s, as a can of water, on the floor on the middle line at midship.", p.Mass(10)),
		"Fasten a telephone flat across the gunwales, or a board with a plumb line, and set its reading to zero.",
		fmt.Sprintf("Move the weight straight to port, its middle %s from the middle line. Wait until the boat is still. Read the angle from the shore: that is an angle to port, with +.", p.Length(200)),
		"Move it as far to starboard and read again: an angle to starboard, with -. Do both once more.",
		"Aim at 5 to 12 degrees; take less weight when the gunwale comes within a hand's breadth of the water.",
	}
	return []report.Block{
		report.Caution{Words: "Two people, both in life jackets, one of them on the shore. Water that one can stand in, no wind, no cold water. Nobody leans over the boat while it is heeled. Take the weight out before anybody gets in.", Says: "common practice, no source"},
		report.List{First: 1, Items: steps},
		report.Figure{Drawing: p.heeled(), Caption: "The weight moved to port, and what is read. GM = mass moved x distance / (whole weight x tan of the angle).", About: "A boat heeled by a weight that was moved from its middle line, with the distance and the angle."},
		report.Titled("As it is").Words("Figure").Names("Read").Filled(
			"weight of the boat", blank, "freeboard at rib "+first, blank, "freeboard at midship", blank, "freeboard at rib "+last, blank,
			"mass that was moved", blank, "distance from the middle line", blank,
			"first angle, to port, +", blank, "first angle, to starboard, -", blank, "second angle, to port, +", blank, "second angle, to starboard, -", blank),
	}
}
