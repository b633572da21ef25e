// Package compare tells what moved between two editions of a design, and what of the
// paper and the wood still serves.
package compare

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/edition"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
	"ribwright/layout/reprint"
)

// Facts are what is told.
type Facts struct {
	*edition.Comparison
	Behave []edition.Figure
	Afloat []string // why an edition does not float, in words; none where both do
	Paper  string
	Sheets reprint.Set
	Cut    []edition.Judged // none where nothing is cut
	Kept   *edition.Kept    // nil where everything cut fits, or nothing is
	Prices string           // name of the price table
	Units  measure.System
}

type page struct {
	report.Letters
	Facts
}

// Of tells what came of the change: what to do first, then what moved, then how the boat
// behaves.
func Of(f Facts) []report.Block {
	p := page{report.Letters{Units: f.Units}, f}
	out := p.summary()
	for _, part := range []func() []report.Block{p.cut, p.kept, p.moved, p.print, p.behave, p.keys} {
		out = append(out, part()...)
	}
	return append(out, report.Paragraph{Words: report.Promise})
}

// equal reports whether there is nothing to do.
func (p page) equal() bool { return len(p.Keys) == 0 && len(p.Changes) == 0 }

// summary says in three lines what matters.
func (p page) summary() []report.Block {
	if p.equal() {
		return []report.Block{report.Paragraph{Words: "Both are the same boat: no mark moved, no sheet is out of date, and there is nothing to do."}}
	}
	var out []report.Block
	if changed := p.New.Design.Changed; changed != "" {
		out = append(out, report.Say("Edition %s: %s.", p.New.Design.EditionName(), strings.TrimSuffix(changed, ".")))
	}
	n, within, alone := 0, 0, 0
	for _, c := range p.Changes {
		switch {
		case !c.Moved():
			alone++
		case c.Matters():
			n++
		default:
			within++
		}
	}
	words := fmt.Sprintf("%s moved by more than matters on wood, %s by less", wording.Capital(wording.Counted(n, "mark")), counted(within))
	if alone > 0 {
		words += fmt.Sprintf(", %s in one edition alone", are(alone))
	}
	out = append(out, report.Paragraph{Words: fmt.Sprintf("%s; %d did not move.", words, p.Same)})
	print, serve, keep := p.Sheets.Reprint, p.Sheets.Sheets(reprint.Serves), p.Sheets.Sheets(reprint.Keep)
	return append(out, report.Say("On %s: print %s of %d; %s equal to those you have, and of those to print %s.", p.Paper, wording.Counted(len(print), "sheet"), len(print)+len(keep), are(len(keep)), stillServe(len(serve))))
}

func counted(n int) string {
	if n == 0 {
		return "none"
	}
	return fmt.Sprint(n)
}

func are(n int) string {
	if n == 1 {
		return "1 is"
	}
	return fmt.Sprintf("%d are", n)
}

func stillServe(n int) string {
	switch n {
	case 0:
		return "none would still serve"
	case 1:
		return "1 would still serve"
	}
	return fmt.Sprintf("%d would still serve", n)
}

// mostRows is how many rows a table of marks has: a screen full. All stand in the numbers.
const mostRows = 40

// row is a quantity of a sort of parts: all marks of it that matter.
type row struct {
	sort, quantity string
	many           int
	most           edition.Change // the one that moved most of its tolerance
}

// moved lists what matters on wood: of each quantity of each sort of parts the mark that
// moved most, those that moved most of what they may be off first.
func (p page) moved() []report.Block {
	if p.equal() {
		return nil
	}
	var rows []row
	for _, c := range p.Mattering() {
		sort, quantity := sortOf(c.Part), c.Quantity
		if of, rib, one := strings.Cut(quantity, " of rib "); one {
			quantity, c.Part = of+" of rib", c.Part+" at "+rib
		}
		i := slices.IndexFunc(rows, func(r row) bool { return r.sort == sort && r.quantity == quantity })
		switch {
		case !c.Moved(), strings.HasPrefix(c.Quantity, "no scarf"): // counted along the stock, not put on it
		case i < 0:
			rows = append(rows, row{sort, quantity, 1, c})
		default:
			rows[i].many++
		}
	}
	t := report.Titled("Marks that moved by more than matters on wood").Words("Part", "Mark").Numbers("How many").Words("Most").Numbers("Old", "New", "Moved", "May be off").Names("")
	for i, r := range rows {
		if i == mostRows {
			t.Note = fmt.Sprintf("and %s more of marks; all of them stand in the numbers", wording.Counted(len(rows)-i, "kind"))
			break
		}
		c, unit := r.most, p.Unit()
		if c.Unit == marks.Radian {
			unit = "deg"
		}
		old := p.value(c, c.Old)
		if strings.HasPrefix(c.Quantity, edition.Outline) {
			old = "" // it is how far the two lie apart
		}
		t.Row(r.sort, r.quantity, fmt.Sprint(r.many), which(c), old, p.value(c, c.New), p.signed(c, c.By()), p.value(c, c.Tolerance), unit)
	}
	out := append([]report.Block{report.Section("What moved")}, t.IfAny()...)
	out = append(out, p.alone()...)
	return append(out, p.shifted()...)
}

// sortOf is what a part is one of: "rib" of "rib A3", "stem" of "bow stem".
func sortOf(part string) string {
	first, second, several := strings.Cut(part, " ")
	switch {
	case !several || part == "keel strip" || part == "rib peg":
		return part
	case first == "bow" || first == "stern":
		return second
	}
	return first
}

// which is which of a sort a mark is on, with its number: "A3", "bow, 2".
func which(c edition.Change) string {
	words := ""
	if sort := sortOf(c.Part); sort != c.Part {
		words = strings.TrimSpace(strings.Replace(c.Part, sort, "", 1))
	}
	switch {
	case c.Number == 0:
		return words
	case words == "":
		return fmt.Sprint(c.Number)
	}
	return fmt.Sprintf("%s, %d", words, c.Number)
}

// value letters a value of a mark.
func (p page) value(c edition.Change, v float64) string {
	switch {
	case math.IsNaN(v):
		return "-"
	case c.Unit == marks.Radian:
		return report.Angle(v)
	}
	return p.Cell(v)
}

func (p page) signed(c edition.Change, v float64) string {
	if words := p.value(c, v); v < 0 || strings.HasPrefix(words, "-") {
		return words
	} else {
		return "+" + words
	}
}

// alone names the parts that have marks in one edition alone.
func (p page) alone() []report.Block {
	var fresh, gone []string
	add := func(to *[]string, part string) {
		if !slices.Contains(*to, part) {
			*to = append(*to, part)
		}
	}
	for _, c := range p.Changes {
		switch {
		case math.IsNaN(c.Old):
			add(&fresh, c.Part)
		case math.IsNaN(c.New):
			add(&gone, c.Part)
		}
	}
	var items []string
	for _, g := range []struct {
		parts []string
		words string
	}{{fresh, "Marks that are new are on: "}, {gone, "Marks that are gone are on: "}} {
		if len(g.parts) > 0 {
			items = append(items, g.words+strings.Join(g.parts, ", ")+".")
		}
	}
	if len(items) == 0 {
		return nil
	}
	return []report.Block{report.List{Items: items}}
}

// shifted says which stems lie elsewhere in the boat.
func (p page) shifted() []report.Block {
	var items []string
	for _, s := range p.Shifted {
		var went []string
		for _, way := range []struct {
			by         float64
			more, less string
		}{{s.Along, "forward", "aft"}, {s.Up, "up", "down"}} {
			switch {
			case way.by > 0:
				went = append(went, p.Fine(way.by)+" "+way.more)
			case way.by < 0:
				went = append(went, p.Fine(-way.by)+" "+way.less)
			}
		}
		if s.Turn != 0 {
			went = append(went, fmt.Sprintf("turned by %s deg", report.Angle(math.Abs(s.Turn))))
		}
		shape := "its own shape is the same"
		if s.Apart > 0 {
			shape = "its outline changes by up to " + p.Fine(s.Apart)
		}
		items = append(items, fmt.Sprintf("%s: %s; %s.", wording.Capital(s.Part), strings.Join(went, ", "), shape))
	}
	if len(items) == 0 {
		return nil
	}
	return []report.Block{report.Paragraph{Words: "Stems lie elsewhere:"}, report.List{Items: items}}
}

// keys lists the keys of the design that differ.
func (p page) keys() []report.Block {
	t := report.Titled("").Words("Key", "Old", "New")
	for _, k := range p.Keys {
		t.Row(k.Key, wording.Clip(k.Old, 60), wording.Clip(k.New, 60))
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []report.Block{report.Section("What differs in the design files"), t}
}

// behave tells what became better or worse.
func (p page) behave() []report.Block {
	if p.equal() {
		return nil
	}
	t := report.Titled("").Words("Figure").Numbers("Old", "New").Names("Unit", "It is").Noted(
		"Each edition with its own people and gear, in fresh water. Materials at prices " + p.Prices + " and hours of an average builder, sawn from boards without a search for the best plan: the build book may find a board less.")
	for _, f := range p.Behave {
		if math.IsNaN(f.Old) && math.IsNaN(f.New) {
			continue
		}
		old, unit := p.figure(f, f.Old)
		new, _ := p.figure(f, f.New)
		t.Row(f.About, old, new, unit, f.Trend.String())
	}
	out := []report.Block{report.Section("How the boat behaves"), t}
	if len(p.Afloat) > 0 {
		out = append(out, report.List{Items: p.Afloat})
	}
	return out
}

// figure letters a figure of the boat with its unit.
func (p page) figure(f edition.Figure, v float64) (words, unit string) {
	switch f.Quantity {
	case edition.Length:
		words, unit = p.Whole(v), p.Unit()
	case edition.Mass:
		words, unit, _ = strings.Cut(p.Mass(v), " ")
	case edition.Angle:
		words, unit = fmt.Sprintf("%.0f", v*180/math.Pi), "deg"
	case edition.Force:
		words, unit = p.Letters.Units.Cell(fmt.Sprintf("%.1f", v), "N"), p.Letters.Units.UnitOf("N")
	case edition.Ratio:
		words = fmt.Sprintf("%.1f", v)
	case edition.Money, edition.Time:
		words = fmt.Sprintf("%.0f", v)
	}
	if math.IsNaN(v) {
		words = "-"
	}
	return words, unit
}
