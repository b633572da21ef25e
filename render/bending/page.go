// Package bending writes what was judged of a frame's bends and its balance, to be
// read on a terminal.
package bending

import (
	"fmt"
	"io"
	"math"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/balance"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/wood/timber"
	"ribwright/layout/lettering"
)

// Told is what is said of one frame.
type Told struct {
	Report  *bend.Report
	Without *balance.Without // what comes out in the trials
	Trials  []balance.Trial
	Miss    float64 // by how much the ribs of the last trial miss the neutral set, mm
	Caution string  // what is said at the end of every page
}

// Page writes it at 80 columns, the rib table in the units asked for.
//
// Errors: the writer's own.
func Page(out io.Writer, b Told, units measure.System) error {
	var w strings.Builder
	fmt.Fprintf(&w, "%s: will the wood take it, and will the frame keep its shape\n", lettering.Clip(b.Report.Frame.Design.Title, 2.5, 80))
	b.verdicts(&w)
	b.ribTable(&w, units)
	b.gunwales(&w, units)
	b.forces(&w)
	b.beams(&w)
	says(&w, "\nLimits of steamed bends are from memory, stresses are for clear, straight wood: bend one rib first. Steam scalds: vent the box and wear gauntlets. "+strings.TrimSpace(b.Caution))
	_, err := io.WriteString(out, w.String())
	return err
}

// verdicts lists every finding, with its cure on a line of its own.
func (b Told) verdicts(w *strings.Builder) {
	fmt.Fprintf(w, "\nVERDICTS%s\n", yesNo(b.Report.Findings.Passes(), ": everything can be made as the design says", ": NOT everything can be made as the design says"))
	fmt.Fprintf(w, "%-34s %-17s %6s %6s %6s %5s\n", "part", "verdict", "has", "limit", "unit", "room")
	for _, f := range b.Report.Findings.Sorted() {
		mark := " "
		if !f.Verdict.Passes() {
			mark = "!"
		}
		line := fmt.Sprintf("%s%-33s %-17s", mark, f.About, f.Verdict)
		if f.IsSet() {
			line += fmt.Sprintf(" %6s %6s %6s %5s", figures(f.Value), figures(f.Limit), unitWord(f.Unit), percent(f.Margin()))
		}
		w.WriteString(strings.TrimRight(line, " ") + "\n")
		if f.Cure != "" {
			for _, line := range wrapped(f.Cure, 72) {
				fmt.Fprintf(w, "      %s\n", line)
			}
		}
	}
	w.WriteString("r/t is the inner radius over thickness, for ribs on the form: more is easier.\n" +
		"N/mm2 is a stress: less is easier. \"Dry, eases\" lies between what wood bears for\n" +
		"years and what it is bent to once: such a part gives up some of its spring.\n")
}

func yesNo(yes bool, a, b string) string {
	if yes {
		return a
	}
	return b
}

func unitWord(u string) string {
	if u == "radius/thickness" {
		return "r/t"
	}
	return u
}

func figures(v float64) string {
	if math.IsInf(v, 0) || math.Abs(v) >= 1000 {
		return "ample"
	}
	return fmt.Sprintf("%.1f", v)
}

// percent writes a margin as a share; what is far off needs no figure.
func percent(v float64) string {
	if v >= 9.99 {
		return "ample"
	}
	return fmt.Sprintf("%+.0f%%", 100*v)
}

// says writes a paragraph at 80 columns, after an empty line when it begins with
// one.
func says(w *strings.Builder, text string) {
	if strings.HasPrefix(text, "\n") {
		w.WriteString("\n")
	}
	for _, line := range wrapped(text, 80) {
		w.WriteString(line + "\n")
	}
}

// wrapped cuts text into lines of at most wide letters, between words.
func wrapped(text string, wide int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && len(line)+1+len(word) > wide {
			lines, line = append(lines, line), ""
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	return append(lines, line)
}

// ribTable says how each rib is bent and what it is relaxed to.
func (b Told) ribTable(w *strings.Builder, units measure.System) {
	d := b.Report.Frame.Design
	says(w, fmt.Sprintf("\nRIBS: %s, steam %.0f minutes at %.0f %% moisture; forms are for %.0f %% of springback. %s",
		b.Report.Boat.Ribs.Name, b.Report.Ribs[0].Minutes, d.Bending.Moisture, 100*d.Bending.Springback, b.moisture()))
	fmt.Fprintf(w, "Widths between the heads and radii are to the middle of the thickness, %s.\n", yesNo(units == measure.Imperial, "inches", "mm"))
	fmt.Fprintf(w, "%-5s %10s %10s %7s %7s  %s\n", "rib", "in place", "relax to", "push N", "N/mm2", "form radius, from the keel out")
	for i, r := range b.Report.Ribs {
		relax := "-"
		if r.Relax > 0 {
			relax = short(r.Relax, units)
		}
		arcs := make([]string, 0, len(r.Arcs))
		for _, a := range r.Arcs {
			arcs = append(arcs, a.Name+" "+radius(a.Form, units))
		}
		fmt.Fprintf(w, "%-5s %10s %10s %7s %7.1f  %s\n", r.Name, short(2*b.Report.Frame.Ribs[i].Section.HalfBreadth, units), relax,
			tenths(r.Push), r.Stress, strings.Join(arcs, ", "))
	}
}

// moisture warns of stock too dry for its bends, and says how far the ribs shrink
// in their mortises.
func (b Told) moisture() string {
	words := ""
	if least := b.Report.LeastMoisture; b.Report.Frame.Design.Bending.Moisture < least {
		words = fmt.Sprintf("Such bends want stock of at least %.0f %%: soak it, or take air-dried stock. ", least)
	}
	if t := b.Report.Shrink; t > 0 {
		words += fmt.Sprintf("Drying to %.0f %% they shrink up to %.2f mm in thickness (%s): fit them dry.", timber.ServiceMoisture, t, b.Report.Boat.Ribs.Movement)
	}
	return words
}

// short writes a length for a column.
func short(mm float64, units measure.System) string {
	if units == measure.Imperial {
		return strings.TrimSuffix(measure.Sixteenths(mm), " in")
	}
	return fmt.Sprintf("%.0f", mm)
}

func radius(mm float64, units measure.System) string {
	if math.IsInf(mm, 0) || mm > 1e5 {
		return "straight"
	}
	return short(mm, units)
}

// gunwales says how the gunwales are glued and what they keep.
func (b Told) gunwales(w *strings.Builder, units measure.System) {
	g, d := b.Report.Gunwale, b.Report.Frame.Design
	unit := yesNo(units == measure.Imperial, " in", " mm")
	words := fmt.Sprintf("\nGUNWALES: %s, %d plies, glued %s; tightest radius %s%s, at station %.0f mm. ", b.Report.Boat.Wood.Name, d.Gunwale.Plies, glued(d), radius(g.Radius, units), unit, g.At)
	if d.Gunwale.Plies > 1 {
		words += fmt.Sprintf("Plies are %.1f mm and lose %.0f %% of a form's curve: a form for the designed curve has a radius of %s%s there, and everywhere %.3f of the gunwale's own. ",
			float64(d.Gunwale.Width)/float64(d.Gunwale.Plies), 100*g.OnForm, radius(g.Form, units), unit, 1-g.OnForm)
	}
	words += fmt.Sprintf("By themselves they keep %.0f %% of the designed curve; ribs and cross pieces hold the rest. At rest they bear %.1f N/mm2 in plan and %.1f from edge-set; the wood breaks at about %.0f. ",
		100*b.Report.Boat.Glue.Kept, g.Rest.Plan, g.Rest.Edge, b.Report.Boat.Wood.MOR)
	least := b.Report.Slots[0]
	for _, s := range b.Report.Slots {
		if s.Tall < least.Tall {
			least = s
		}
	}
	m := b.Report.Frame.Gunwale.Mortises[0]
	if square := b.Report.SquareTenon; square < float64(d.Ribs.Width) {
		words += fmt.Sprintf("Mortises cut by a bit of %.1f mm have half-round ends and take a sharp-edged rib of %.1f mm: square them, or round the rib's edges there. ", m.Width, square)
	}
	says(w, words+fmt.Sprintf("A mortise leaves %.0f %% of the section modulus in plan, %.0f %% in the tall way.", 100*least.Flat, 100*least.Tall))
}

func glued(d *design.Design) string {
	switch d.Gunwale.Glued {
	case design.GluedBent:
		return "bent round the spreaders"
	case design.GluedOnForm:
		return "on a form"
	}
	return "straight"
}

// columns are the heads of the trials.
func (b Told) columns() []string {
	var out []string
	for _, t := range b.Trials {
		switch t.Set {
		case "off":
			out = append(out, fmt.Sprintf("%+.0f mm off", b.Miss))
		default:
			out = append(out, t.Set)
		}
	}
	return out
}

// forces lists the force in every cross piece.
func (b Told) forces(w *strings.Builder) {
	w.WriteString("\nCROSS PIECES: force in N, + pushes the gunwales apart, - holds them together.\n" +
		"Ribs unset are as wide as their places before fitting; neutral is \"relax to\".\n")
	if b.Report.Boat.Why != nil {
		says(w, "There is no neutral set: "+b.Report.Boat.Why.Text+".")
	}
	fmt.Fprintf(w, "%-26s %-10s %6s", "cross piece", "code", "at mm")
	b.heads(w)
	for i, s := range b.Report.Frame.Thwarts {
		fmt.Fprintf(w, "%-26s %-10s %+6.0f", clipTo(s.Name, 26), balance.Code(i), s.At)
		for _, t := range b.Trials {
			fmt.Fprintf(w, " %11s", force(t.In.Struts[i]))
		}
		w.WriteString("\n")
	}
}

func (b Told) heads(w *strings.Builder) {
	for _, c := range b.columns() {
		fmt.Fprintf(w, " %11s", c)
	}
	w.WriteString("\n")
}

// force writes a force, idle when there is none to speak of.
func force(v float64) string {
	if s := tenths(v); s != "0" {
		return s
	}
	return "idle"
}

// tenths writes a signed number to a tenth, plain 0 for what would be lettered as
// one.
func tenths(v float64) string {
	if math.Abs(v) < 0.05 {
		return "0"
	}
	return fmt.Sprintf("%+.1f", v)
}

// clipTo cuts a name to n letters.
func clipTo(s string, n int) string {
	if r := []rune(lettering.Safe(s)); len(r) > n {
		return string(r[:n-2]) + ".."
	}
	return lettering.Safe(s)
}

// beams lists how far the beam is off the design, and moves, at every rib.
func (b Told) beams(w *strings.Builder) {
	says(w, "\nBEAM: mm off the design with everything in, and by how much it moves without "+b.Without.String()+".")
	fmt.Fprintf(w, "%-6s %7s", "", "")
	for _, c := range b.columns() {
		fmt.Fprintf(w, " %19s", c)
	}
	fmt.Fprintf(w, "\n%-6s %7s", "rib", "at mm")
	for range b.Trials {
		fmt.Fprintf(w, " %9s %9s", "off", "moves")
	}
	w.WriteString("\n")
	for _, r := range b.Report.Frame.Ribs {
		fmt.Fprintf(w, "%-6s %+7.0f", r.Name, r.Station)
		for _, t := range b.Trials {
			fmt.Fprintf(w, " %9s %9s", tenths(t.Off(r.Station)), tenths(t.Moved(r.Station)))
		}
		w.WriteString("\n")
	}
}
