// Package built tells a builder what the measures of a frame on the trestles mean, and
// makes the card on which they are written.
package built

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/survey/built"
	"ribwright/geometry/survey/weighing"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/trial/handwork"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
	"ribwright/layout/report/trial"
)

// Facts are what is told. What was not measured is nil.
type Facts struct {
	Measured *built.Report
	Weighed  *weighing.Found
	Design   *built.Design
	NoDesign string           // why there is none, in words
	Trial    *afloat.Report   // as the boat is, with its crew; nil where it finds no rest
	Afloat   finding.Finding  // the same in a line
	Hands    *handwork.Report // how true first boats come out
	Units    measure.System
}

// Ship reports whether the boat can be covered and used as it is: every rib stands, none
// wants anything done, and it floats as it should.
func (f Facts) Ship() bool {
	m := f.Measured
	return m != nil && m.Done() && m.Fair() && f.Afloat.Verdict.Passes()
}

type page struct {
	report.Letters
	Facts
}

// Of tells what to do first, then what was found.
func Of(f Facts) []report.Block {
	p := page{report.Letters{Units: f.Units}, f}
	out := p.summary()
	for _, part := range []func() []report.Block{p.ribs, p.springback, p.remaining, p.beam, p.weight, p.afloat, p.design} {
		out = append(out, part()...)
	}
	return append(out, report.Paragraph{Words: report.Promise})
}

// Do lists what to do with each rib on the card, in words; "" where it is left alone.
func Do(f Facts) []string {
	p := page{report.Letters{Units: f.Units}, f}
	var out []string
	if f.Measured != nil {
		for _, r := range f.Measured.Ribs {
			out = append(out, p.do(r))
		}
	}
	return out
}

func (p page) summary() []report.Block {
	m := p.Measured
	if m == nil {
		return nil
	}
	name := func(i int) string { return m.Frame.Frame.Ribs[i].Name }
	out := []report.Block{}
	switch {
	case p.Ship():
		out = append(out, report.Say("Ship it: every rib stands, the frame is fair, and with its crew it floats as it should."))
	case m.Done() && m.Fair():
		out = append(out, report.Say("The frame is fair. Afloat it is not as it should be: see below before you cover it."))
	case m.Off.Again > 0:
		words := fmt.Sprintf("Measure again first: %s farther off the drawing than hands come. Set no others beside before.", are(m.Off.Again, "rib"))
		if m.Off.Fix > 0 {
			words += fmt.Sprintf(" And %s something done.", wants(m.Off.Fix))
		}
		out = append(out, report.Paragraph{Words: words})
	case !m.Fair():
		out = append(out, report.Say("Fix it: %s something done before the boat is covered. The table says what.", wants(m.Off.Fix)))
	default:
		out = append(out, report.Say("Go on: nothing that stands wants anything done, and %s still to be set.", are(len(m.Remaining), "rib")))
	}
	if m.Off.Standing == 0 {
		return out
	}
	var off []string
	if !math.IsNaN(m.Off.Beam) {
		off = append(off, fmt.Sprintf("%s in beam", p.Length(m.Off.Beam)))
	}
	if !math.IsNaN(m.Off.Depth) {
		off = append(off, fmt.Sprintf("%s in depth", p.Length(m.Off.Depth)))
	}
	words := fmt.Sprintf("%s measured, off the drawing by %s in the mean (rms).", wording.Capital(standing(m.Off.Standing)), strings.Join(off, " and "))
	if m.Off.Worst >= 0 {
		words += fmt.Sprintf(" The farthest is rib %s, %s %s.", name(m.Off.Worst), p.Length(math.Abs(m.Off.WorstOff)), way(m.Off.WorstIn, m.Off.WorstOff))
	}
	return append(out, report.Paragraph{Words: words})
}

func wants(n int) string {
	if n == 1 {
		return "1 rib wants"
	}
	return fmt.Sprintf("%d ribs want", n)
}

func are(n int, noun string) string {
	if n == 1 {
		return "1 " + noun + " is"
	}
	return wording.Counted(n, noun) + " are"
}

func standing(n int) string {
	if n == 1 {
		return "1 rib stands and is"
	}
	return fmt.Sprintf("%d ribs stand and are", n)
}

func way(measure int, off float64) string {
	words := [2]string{"narrower", "wider"}
	if measure == built.Depth {
		words = [2]string{"shallower", "deeper"}
	}
	if off < 0 {
		return words[0]
	}
	return words[1]
}

// words are what figures are in, in a sentence.
func (p page) words() string { return report.Either(p.Letters.Units, "mm", "inches") }

// cell letters what is off, with its sign; a dash where it is not known.
func (p page) cell(mm float64) string {
	if math.IsNaN(mm) {
		return "-"
	}
	s := p.Whole(math.Abs(mm))
	switch {
	case s == "0":
		return s
	case mm < 0:
		return "-" + s
	}
	return "+" + s
}

func (p page) ribs() []report.Block {
	m := p.Measured
	if m == nil {
		return nil
	}
	t := report.Titled("").Names("Rib").Numbers("Beam off", "Depth off", "Bump in beam", "in depth").Names("Verdict").Words("Do")
	var at []float64
	for _, r := range m.Ribs {
		at = append(at, m.Frame.Frame.Ribs[r.Rib].Station)
		t.Row(m.Frame.Frame.Ribs[r.Rib].Name, p.cell(r.Beam), p.cell(r.Depth), p.cell(r.BeamBump), p.cell(r.DepthBump), r.Verdict.String(), p.do(r))
	}
	t.Note = fmt.Sprintf("Figures in %s, wider and deeper with +. A bump is how far a rib stands off a batten through its four neighbors; a bump of up to 4 mm and a hollow of up to 5 mm are left alone (from memory of boats judged by eye). -: not measured, or its neighbors do not stand yet. Bending a rib again is worth its minutes for the first ones of a board: they carry all that was not known of it, and the others then need not follow them.", p.words())
	return []report.Block{report.Section("Rib by rib"), t.Outward(at)}
}

// do says what to do with a rib, how much, and why in half a sentence.
func (p page) do(r built.Rib) string {
	m := p.Measured
	switch r.Verdict {
	case built.Leave:
		if r.Beside {
			return "it is its neighbor that stands off"
		}
		return ""
	case built.Again:
		return "it is far off; if it holds, mend it before you set others: none follows it"
	case built.Wait:
		return "judge it when its neighbors stand"
	case built.Pack:
		return fmt.Sprintf("a wedge of %s between it and the keel: it is a little short", p.Length(math.Round(r.By)))
	case built.Shorten:
		return fmt.Sprintf("%s off each end: it stands proud", p.Length(math.Round(r.By/2)))
	case built.Center:
		side := "port"
		if r.Fuller < 0 {
			side = "starboard"
		}
		return fmt.Sprintf("steam it again and pull it %s from the fuller side, %s", p.Length(math.Round(r.By)), side)
	case built.Ease, built.OverBend:
		how := "stands open"
		if r.Verdict == built.Ease {
			how = "is bent too far"
		}
		hot := "at " + p.Rough(r.Hot) + " " + p.Unit()
		if !(r.Hot > 0) {
			hot = "with its heads crossed"
		}
		return fmt.Sprintf("bend it again, held hot %s: free it %s by %s %s. About %.0f minutes", hot, how, p.Rough(math.Abs(r.Wider)), p.Unit(), r.Minutes)
	}
	for _, again := range m.Remaining {
		if again.Rib == r.Rib {
			return "make another, as below"
		}
	}
	return fmt.Sprintf("make another, %s longer: it is too short for a wedge", p.Length(math.Round(r.By)))
}

func (p page) springback() []report.Block {
	m := p.Measured
	if m == nil || len(m.Spring.Readings) == 0 {
		return nil
	}
	s := m.Spring
	out := []report.Block{report.Section("What this board springs back"),
		report.Say("The design counts on %.0f %%, give or take %.0f. %s of this board %s %.0f %%, give or take %.1f (nine boards in ten). The next rib comes within %.0f of that.",
			100*s.Prior, 100*handwork.Within*built.BoardOff, wording.Capital(wording.Counted(len(s.Readings), "rib")), say(len(s.Readings)), 100*s.Now, 100*handwork.Within*s.Off, 100*handwork.Within*s.Next)}
	if s.Strange {
		out = append(out, report.Caution{Words: "That is far from what was expected. Ask whether the stock is drier or another wood than the design has, and whether the widths were read cold, between the middles of the heads.", Says: "our own choice: one board in a hundred lies as far"})
	}
	if w, odd := s.Worst(); odd {
		out = append(out, report.Say("Rib %s (line %d) springs back %.0f %%, which does not go with the others. Measure it again; if it holds, it came from other wood or cooled too soon.", m.Frame.Frame.Ribs[w.Rib].Name, w.Line, 100*w.Back))
	}
	return out
}

func say(n int) string {
	if n == 1 {
		return "says"
	}
	return "say"
}

func (p page) remaining() []report.Block {
	m := p.Measured
	if m == nil || len(m.Remaining) == 0 {
		return nil
	}
	t := report.Titled("").Names("Rib").Numbers("Length", "Blank", "Than drawn", "Free width", "Held hot at", "give or take")
	for _, r := range m.Remaining {
		hot := "-"
		if r.Hot > 0 {
			hot = p.Rough(r.Hot)
		}
		t.Row(m.Frame.Frame.Ribs[r.Rib].Name, p.Mark(r.Length), p.Mark(r.Blank), p.cell(r.Longer), p.Rough(r.Free), hot, p.Rough(handwork.Within*r.HotOff))
	}
	t.Note = fmt.Sprintf("From midship outward, figures in %s; length from shoulder to shoulder. Half of what a rib is longer or shorter than drawn goes to each end; bend and stringer marks keep their places from the middle. Widths are between the heads, to the middle of the thickness.", p.words())
	out := []report.Block{report.Section("The ribs still to set"), report.Say("Cut and bend them so, and the finished boat comes fair with what stands. Measure again after each pair.")}
	if m.Off.Again > 0 {
		out = append(out, report.Say("Measures that are to be taken again do not count in them."))
	}
	if bias := m.Bias(); math.Abs(bias) >= 0.5 {
		deeper := "deeper"
		if bias < 0 {
			deeper = "shallower"
		}
		out = append(out, report.Say("The ribs so far came out %s %s than their bend and length explain; the lengths below allow for that.", p.Fine(math.Abs(bias)), deeper))
	}
	return append(out, t)
}

// beam says how true the beam comes, and what that hangs on.
func (p page) beam() []report.Block {
	if p.Hands == nil {
		return nil
	}
	o := p.Hands.Outcomes[0]
	var by []string
	for _, e := range p.Hands.Ranked() {
		if v := handwork.Within * p.Hands.Moved(e, handwork.Beam); v >= 1 && len(by) < 3 {
			by = append(by, e.Name)
		}
	}
	words := fmt.Sprintf("Nine first boats in ten come within %s of the %s.", p.Length(math.Ceil(o.Spread.First)), o.Name)
	if len(by) > 0 {
		words += " What moves a beam most: " + strings.Join(by, "; ") + "."
	}
	return []report.Block{report.Section("What the beam hangs on"), report.Paragraph{Words: words}}
}

func (p page) weight() []report.Block {
	w := p.Weighed
	if w == nil {
		return nil
	}
	t := report.Titled("").Words("Of the boat alone").Numbers("worked out", "found", "give or take")
	t.Row("weight", p.Mass(w.Worked.Mass), p.Mass(w.Mass.Is), p.Mass(handwork.Within*w.Mass.Off))
	t.Row("its place, forward of midship", p.Length(w.Worked.At.X), p.Length(w.Along.Is), p.Length(handwork.Within*w.Along.Off))
	t.Row("its height over the baseline", p.Length(w.Worked.At.Z), p.Length(w.High.Is), p.Length(handwork.Within*w.High.Off))
	t.Note = "Nine in ten lie within what is given or taken. Everything measured counts by how well it is known, and what was worked out counts too."
	out := []report.Block{report.Section("Weighed and inclined"), t}
	if c := w.Closed; c != nil {
		out = append(out, report.Say("GM in the test: %.0f mm, give or take %.0f, from all measures on the hull as it is; %.0f, give or take %.0f, from mass x distance / (whole weight x tan of the heel).",
			w.GM.Is, handwork.Within*w.GM.Off, c.Is, handwork.Within*c.Off))
	}
	if w.Disagree {
		a := w.Worst()
		words := fmt.Sprintf("The tests do not go together; the %s lies farthest off, %s where the others say %s. Read it again, with its unit, before you trust the figures.", a.What, read(a.Measured), read(a.Found))
		if strings.HasSuffix(a.What, "worked out") { // which nobody can read again
			words = fmt.Sprintf("The tests do not go with the design: %s is the %s, and with the tests it comes to %s. Read the tests again, with their units; if they hold, look for what the boat has that the design has not, as heavier wood, more paint or a fitting.", read(a.Measured), a.What, read(a.Found))
		}
		out = append(out, report.Caution{Words: words, Says: "one set of such tests in a hundred lies as far apart"})
	}
	return out
}

// read letters what was read in a test, in its own unit.
func read(v float64) string {
	if math.Abs(v) < 100 {
		return fmt.Sprintf("%.1f", v)
	}
	return fmt.Sprintf("%.0f", v)
}

func (p page) afloat() []report.Block {
	if p.Measured == nil && p.Weighed == nil {
		return nil
	}
	out := []report.Block{report.Section("Afloat as it is, with its crew")}
	if p.Trial == nil {
		return append(out, report.Told(finding.List{p.Afloat})...)
	}
	out = append(out, report.Told(finding.List{p.Afloat})...)
	t := trial.AtRest(p.Trial, p.Letters)
	t.Title = ""
	return append(out, t, trial.Standing(p.Trial.Standing, len(p.Trial.Boat.Crew)))
}

func (p page) design() []report.Block {
	switch {
	case p.NoDesign != "":
		return []report.Block{report.Section("The boat as built, as a design"), report.Paragraph{Words: wording.Capital(p.NoDesign) + "."}}
	case p.Design == nil:
		return nil
	}
	name := func(i int) string { return p.Measured.Frame.Frame.Ribs[i].Name }
	b, d := p.Design.Beam, p.Design.Depth
	return []report.Block{report.Section("The boat as built, as a design"),
		report.Say("Edition %s has the beams, the depth and the rocker that come nearest to the ribs: %s off them in beam in the mean (rms), %s at worst at rib %s, and %s in depth, %s at worst at rib %s. What one rib has by itself no design holds. The figures afloat above are those of the ribs.",
			p.Design.EditionName(), p.Length(b.RMS), p.Length(math.Abs(b.Worst)), name(b.At), p.Length(d.RMS), p.Length(math.Abs(d.Worst)), name(d.At))}
}
