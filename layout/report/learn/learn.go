// Package learn tells what many builds say of the program's figures, with the lines that
// are proposed.
package learn

import (
	"fmt"
	"math"
	"strconv"

	"ribwright/geometry/learn"
	"ribwright/geometry/learn/feedback"
	"ribwright/geometry/learn/pool"
	"ribwright/geometry/measure"
	"ribwright/geometry/sizing"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// Facts are what is told.
type Facts struct {
	*learn.Report
	Proposed []learn.Proposal
	Units    measure.System
	Family   string
	Tried    *Tried // nil where nobody asked
}

// Tried is the family tried on many as it is, and with the proposed lines.
type Tried struct{ Before, After sizing.Population }

type page struct {
	report.Letters
	Facts
}

// Of tells what is proposed first, then what every figure rests on.
func Of(f Facts) []report.Block {
	p := page{report.Letters{Units: f.Units}, f}
	out := []report.Block{report.Say("%s read. Nothing is changed: what follows from them is proposed, line by line, for you to take or leave.", wording.Counted(len(f.Builds), "build"))}
	for _, b := range p.Builds {
		if len(b.Lines) == 0 {
			out = append(out, report.Say("%s has nothing that was measured, weighed or timed.", wording.Capital(b.Name)))
		}
	}
	out = append(out, p.proposals()...)
	out = append(out, p.tried()...)
	for _, q := range p.Quantities {
		out = append(out, p.quantity(q)...)
	}
	return append(out, p.breaks()...)
}

func (p page) proposals() []report.Block {
	if len(p.Proposed) == 0 {
		return []report.Block{report.Section("Proposed"), report.Say("Nothing: with what the builds say, every figure stays what it was counted on, as finely as it is told.")}
	}
	out := []report.Block{report.Section("Proposed")}
	for _, l := range p.Proposed {
		out = append(out, report.Say("For the %s file: %s", l.Home, l.Line), report.Say("Why: %s. %s.", l.Why, wording.Capital(l.Evidence)))
	}
	return out
}

// tried tells how the family does on many with the lines and without.
func (p page) tried() []report.Block {
	t := p.Tried
	if t == nil {
		return nil
	}
	out := []report.Block{report.Section("The family on many"), report.Say("Of boats for %s, %d pass everything with the family as it is and %d with the proposed lines.", wording.Counted(t.Before.Tried, "random crew"), t.Before.Passed, t.After.Passed)}
	table := report.Titled("").Words("Fails").Numbers("as it is", "as proposed")
	counts := map[string][2]int{}
	var order []string
	for k, pop := range []sizing.Population{t.Before, t.After} {
		for _, c := range pop.Counts() {
			n, met := counts[c.Name]
			if !met {
				order = append(order, c.Name)
			}
			n[k] = c.Times
			counts[c.Name] = n
		}
	}
	for _, name := range order {
		table.Row(name, fmt.Sprint(counts[name][0]), fmt.Sprint(counts[name][1]))
	}
	if len(order) > 0 {
		out = append(out, table)
	}
	return out
}

// titles head the quantities.
var titles = map[feedback.What]string{
	feedback.Springback: "What ribs spring back",
	feedback.Deeper:     "How much deeper ribs come out than their bend and length explain",
	feedback.Weight:     "What parts weigh, times what was worked out",
	feedback.Hours:      "What the work takes, times what an experienced builder was given",
}

func (p page) quantity(q *learn.Quantity) []report.Block {
	out := []report.Block{report.Section(titles[q.What])}
	unit := "Builds"
	if q.Boards {
		unit = "Boards"
	}
	t := report.Titled("").Words(kindHead(q.What)).Numbers(unit, "Readings", "Say", "nine in ten", "Before", "as builds", "Together")
	for _, k := range q.Kinds {
		t.Row(k.Name, fmt.Sprint(k.Units), fmt.Sprint(k.Readings), p.cell(q, k.Says.Is), p.within(k.Says, func(v float64) string { return p.cell(q, v) }), p.cell(q, k.Before), fmt.Sprintf("%.1f", k.Worth), p.cell(q, k.Now))
	}
	t.Note = fmt.Sprintf("%s. %s count, not readings: those of one are alike. Nine in ten is what they alone say, before is what was counted on, and as builds how many that counts as. -: too few to say.", p.unit(q), unit)
	out = append(out, t)
	if len(q.Sides) > 0 {
		s := report.Titled("").Words(sideHead(q.What)).Numbers(unit, "Readings", sideSays(q), "nine in ten")
		for _, side := range q.Sides {
			s.Row(side.Name, fmt.Sprint(side.Units), fmt.Sprint(side.Readings), p.side(q, side.Says.Is), p.within(side.Says, func(v float64) string { return p.side(q, v) }))
		}
		s.Note = "Drawn to one another as far as they are alike, so that a few readings do not shout. An interval that holds nothing at all does not say that all are the same."
		if q.What == feedback.Weight {
			s.Note = "Drawn to one another as far as they are alike, so that a few readings do not shout. Where a part comes heavier, weigh a stick of its stock and give its wood's density in your design: that moves the weight, the trim and the height of it."
		}
		out = append(out, s)
	}
	for _, k := range q.Kinds {
		if k.Doubt {
			out = append(out, report.Caution{Words: fmt.Sprintf("%s: the builds lie far from the %s that was counted on. Ask whether wood, moisture and tools were as the designs have them.", wording.Capital(k.Name), p.value(q, k.Before)), Says: "one such set of builds in a hundred lies as far"})
		}
	}
	return append(out, p.doubts(q)...)
}

func kindHead(w feedback.What) string {
	switch w {
	case feedback.Springback:
		return "Wood of the ribs"
	case feedback.Hours:
		return "Skill"
	}
	return "Of"
}

func sideHead(w feedback.What) string {
	return map[feedback.What]string{feedback.Springback: "Boiler", feedback.Weight: "Part", feedback.Hours: "Stage"}[w]
}

func sideSays(q *learn.Quantity) string {
	switch q.What {
	case feedback.Weight:
		return "Weighs"
	case feedback.Hours:
		return "Takes, beside all"
	}
	return "Off the mean of all"
}

// unit says what the figures of a table are in.
func (p page) unit(q *learn.Quantity) string {
	switch q.What {
	case feedback.Springback:
		return "In percent of a rib's bend, which it loses when it is let go; of boilers, points of that"
	case feedback.Deeper:
		return "Figures in " + p.Unit() + ", deeper with +"
	}
	return "Factors: 1.10 is a tenth more"
}

// value letters a figure in a sentence, no finer than it is known.
func (p page) value(q *learn.Quantity, v float64) string {
	switch q.What {
	case feedback.Springback:
		return p.cell(q, v) + " %"
	case feedback.Deeper:
		return p.cell(q, v) + " " + p.Unit()
	}
	return p.cell(q, v)
}

// cell is the same in a table, which says what its figures are in.
func (p page) cell(q *learn.Quantity, v float64) string {
	switch q.What {
	case feedback.Springback:
		return fmt.Sprintf("%.1f", 100*v)
	case feedback.Deeper:
		return p.signed(v)
	}
	return fmt.Sprintf("%.2f", math.Exp(v))
}

// signed letters a length to the half millimeter, deeper with +.
func (p page) signed(mm float64) string {
	v := math.Round(2*mm) / 2
	if v == 0 {
		return "0"
	}
	s := report.Either(p.Letters.Units, strconv.FormatFloat(math.Abs(v), 'f', -1, 64), fmt.Sprintf("%.2f", math.Abs(mm)/25.4))
	if v < 0 {
		return "-" + s
	}
	return "+" + s
}

// side letters what a side is: a difference of springback in points.
func (p page) side(q *learn.Quantity, v float64) string {
	if q.What == feedback.Springback {
		return fmt.Sprintf("%+.1f", 100*v)
	}
	return p.cell(q, v)
}

func (p page) within(i pool.Interval, letter func(float64) string) string {
	if math.IsInf(i.Low, 0) || math.IsNaN(i.Low) {
		return "-"
	}
	return letter(i.Low) + " to " + letter(i.High)
}

// doubts tells of the error of a newcomer, and names what does not go with the others.
func (p page) doubts(q *learn.Quantity) []report.Block {
	var out []report.Block
	unit := "build"
	if q.Boards {
		unit = "board"
	}
	if q.Left.Units > 1 {
		words := fmt.Sprintf("Left out one after the other and guessed from the rest, %s are missed by %s in the mean (rms)", wording.Counted(q.Left.Units, unit), p.spread(q, q.Left.RMS))
		if q.Left.Of > 0 {
			words += fmt.Sprintf("; %d of %d lie within what is told to hold nine in ten", q.Left.Held, q.Left.Of)
		}
		out = append(out, report.Say("%s. That is the error that the next %s will meet.", words, unit))
	}
	for _, u := range q.Unlike {
		out = append(out, report.Say("%s does not go with the others: it is off by %s from what they say. Ask what was different there.", wording.Capital(u.Build.Name), p.signedSpread(q, u.Error)))
	}
	for _, o := range q.Odd {
		words := fmt.Sprintf("%s: %s of %s is %s where the others say %s; it counts for less", place(o.Build, o.Line), o.Line.What, o.Line.Of, p.value(q, o.Found), p.value(q, o.Guess))
		if o.Slip != "" {
			words += ". It looks like " + o.Slip
		}
		out = append(out, report.Paragraph{Words: words + "."})
	}
	return out
}

func place(b *feedback.Build, l feedback.Line) string {
	if l.At == 0 {
		return b.Name
	}
	return fmt.Sprintf("%s:%d", b.Name, l.At)
}

// spread letters a difference.
func (p page) spread(q *learn.Quantity, v float64) string {
	switch q.What {
	case feedback.Springback:
		return fmt.Sprintf("%.1f points", 100*v)
	case feedback.Deeper:
		return p.Fine(v)
	}
	return fmt.Sprintf("%.0f %%", 100*math.Expm1(v))
}

func (p page) signedSpread(q *learn.Quantity, v float64) string {
	switch {
	case q.What == feedback.Weight || q.What == feedback.Hours:
		return fmt.Sprintf("%+.0f %%", 100*math.Expm1(v))
	case v < 0:
		return "-" + p.spread(q, -v)
	}
	return "+" + p.spread(q, v)
}

func (p page) breaks() []report.Block {
	b := p.Breaks
	if b == nil {
		return nil
	}
	out := []report.Block{report.Section("Where ribs break"),
		report.Say("%d of %s broke in %s. One in twenty breaks at an inner radius of %.1f thicknesses, %.1f to %.1f in nine cases of ten; %g was counted on and counts as %.0f builds.",
			b.Broken, wording.Counted(b.Bent, "rib"), wording.Counted(b.Builds, "build"), b.Limit.Is, b.Limit.Low, b.Limit.High, b.Before, b.Worth)}
	t := report.Titled("").Words("Inner radius over thickness").Numbers("Bent", "Broken", "To be expected")
	for _, r := range b.Rows {
		t.Row(band(r), fmt.Sprint(r.Bent), fmt.Sprint(r.Broken), fmt.Sprintf("%.0f %%", 100*r.Now))
	}
	out = append(out, t)
	if s := b.Spread; s != nil {
		words := fmt.Sprintf("Builders broke %.0f to %.0f %% of their ribs. Each is known by few; drawn together they come to %.0f to %.0f %%.", 100*s.Least, 100*s.Most, 100*s.DrawnLeast, 100*s.DrawnMost)
		if b.Apart > 1.5 {
			words += fmt.Sprintf(" They differ %.1f times as much as ribs would by chance, so that every rib counts for less.", b.Apart)
		}
		out = append(out, report.Paragraph{Words: words})
	}
	return out
}

func band(r learn.BreakRow) string {
	switch {
	case r.From == 0:
		return fmt.Sprintf("under %.0f", r.To)
	case math.IsInf(r.To, 0):
		return fmt.Sprintf("%.0f and more", r.From)
	}
	return fmt.Sprintf("%.0f to %.0f", r.From, r.To)
}
