package job

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/paper"
	"ribwright/layout/report"
	"ribwright/layout/tile"
)

// Printer is what is known of a printer and its paper.
type Printer struct {
	Setup paper.Setup
	Way   tile.Way
}

// homePrinter is a printer at home with letter paper.
func homePrinter() Printer {
	return Printer{Setup: paper.Setup{Size: paper.Letter(), Margins: paper.HomeMargins()}}
}

const (
	paperForms  = "letter|a4|legal|tabloid|a3|both|roll24|roll36|WxH"
	marginsForm = `what the printer leaves blank: inkjet, laser, borderless, a length as "10 mm", or "left 8 mm, bottom 15 mm"`
)

func (p *Printer) fields() []Field {
	ways := []string{"best", "lying", "standing"}
	out := []Field{
		{Name: "paper", Takes: paperForms, Says: `size of the sheets in the printer; WxH as "300 mm x 420 mm" or 12x18in, both prints on letter and on a4`,
			Value: bind(&p.Setup.Size, paper.ParseSize, func(s paper.Size) string { return s.Name })},
		{Name: "way", Takes: strings.Join(ways, "|"), Says: "how the sheets lie; best costs least, a joint to tape counted as half a sheet",
			Value: oneOf(&p.Way, ways, []tile.Way{tile.Best, tile.Lying, tile.Standing})},
		{Name: "margins", Takes: "edges", Says: marginsForm, Value: bind(&p.Setup.Margins, paper.ParseMargins, paper.Margins.String)},
		{Name: "offset", Takes: "ways", Says: `moves all ink on the sheet as you read it, as "right 1.5 mm, up 0.5 mm"`,
			Value: bind(&p.Setup.Offset, paper.ParseOffset, orNothing(showOffset))},
		{Name: "printed-across", Takes: "measured", Says: `what the proof's bar along the short edge of the paper measures, as "200.8 mm of 200 mm"`,
			Value: bind(&p.Setup.Across, paper.ParsePrinted, orNothing(showPrinted))},
		{Name: "printed-down", Takes: "measured", Says: "the same for the bar along the long edge",
			Value: bind(&p.Setup.Down, paper.ParsePrinted, orNothing(showPrinted))},
	}
	return grouped(paperGroup, out)
}

func showOffset(by geometry.Point) string { return fmt.Sprintf("right %g mm, up %g mm", by.X, by.Y) }

func showPrinted(p paper.Printed) string { return fmt.Sprintf("%g mm of 1 mm", float64(p)) }

// grouped puts fields under a heading.
func grouped(heading string, fields []Field) []Field {
	for i := range fields {
		fields[i].Group = heading
	}
	return fields
}

// check finds out early whether anything can be printed so. An offset was read off a proof
// that lay one way, and on sheets that lie the other it is wrong.
func (p *Printer) check() error {
	if p.Way == tile.Best && p.Setup.Offset != (geometry.Point{}) {
		return misuse("offset", "sheets that lie are read otherwise than sheets that stand; say with it which way the proof lay; accepted: the way lying or standing")
	}
	var err error
	for _, lying := range p.Way.Lying() {
		if _, err = p.Setup.Sheet(lying); err == nil {
			return nil
		}
	}
	return wrong("margins", err)
}

// Printing is a printer and which patterns and sheets it is to print.
type Printing struct {
	Printer
	Only   string // names of patterns or of their kinds with commas between them; "" for all
	Sheets []Span // none for all
	Most   int    // sheets that are printed without asking
	busy   bool   // every core has work without these
}

// Span is a run of sheet numbers; To is 0 for all that follow.
type Span struct{ From, To int }

func newPrinting() Printing { return Printing{Printer: homePrinter(), Most: 200} }

// Part reports whether some of the sheets are asked for, and not the whole set.
func (p *Printing) Part() bool { return p.Only != "" || len(p.Sheets) > 0 }

func (p *Printing) fields() []Field {
	const most = 1 << 20
	return append(p.Printer.fields(), grouped(paperGroup, []Field{
		{Name: "only", Takes: "patterns", Says: "patterns to print, as mortises,stems,rib-F3; all when left out", Value: words(&p.Only)},
		{Name: "sheets", Takes: "numbers", Says: "sheets to print, as 1-4,9; all when left out", Value: bind(&p.Sheets, parseSpans, showSpans)},
		{Name: "max-sheets", Takes: "number", Says: "refuse to print more sheets than this", Value: whole(&p.Most, 1, most)},
	})...)
}

// parseSpans reads sheet numbers and ranges.
func parseSpans(text string) ([]Span, error) {
	var out []Span
	for _, part := range strings.Split(text, ",") {
		from, to, isRange := strings.Cut(strings.TrimSpace(part), "-")
		s := Span{}
		var err error
		if s.From, err = strconv.Atoi(from); err == nil {
			switch {
			case !isRange:
				s.To = s.From
			case to != "":
				s.To, err = strconv.Atoi(to)
			}
		}
		if err != nil || s.From < 1 || s.To != 0 && s.To < s.From || isRange && to == "0" {
			return nil, fmt.Errorf("%q is not understood; accepted: sheet numbers and ranges, as 1-4,9 or 12-", part)
		}
		out = append(out, s)
	}
	return out, nil
}

func showSpans(all []Span) string {
	var out []string
	for _, s := range all {
		switch s.To {
		case 0:
			out = append(out, fmt.Sprintf("%d-", s.From))
		case s.From:
			out = append(out, strconv.Itoa(s.From))
		default:
			out = append(out, fmt.Sprintf("%d-%d", s.From, s.To))
		}
	}
	return strings.Join(out, ",")
}

// patterns keeps the drawings that are asked for by their names, or by the name
// of their kind.
func (p *Printing) patterns(all []layout.Drawing) ([]layout.Drawing, error) {
	if p.Only == "" {
		return all, nil
	}
	is := func(d layout.Drawing, name string) bool {
		return strings.ToLower(d.Name) == name || kind(d.Name) == name
	}
	names := strings.Split(strings.ToLower(p.Only), ",")
	for i := range names {
		names[i] = strings.TrimSpace(names[i])
		if !slices.ContainsFunc(all, func(d layout.Drawing) bool { return is(d, names[i]) }) {
			return nil, misuse("only", "no pattern %q; accepted: %s", names[i], kinds(all))
		}
	}
	return slices.DeleteFunc(slices.Clone(all), func(d layout.Drawing) bool {
		return !slices.ContainsFunc(names, func(name string) bool { return is(d, name) })
	}), nil
}

// kind names what a pattern is one of: rib-F3 is one of ribs.
func kind(name string) string {
	if one, _, isOne := strings.Cut(name, "-"); isOne {
		return one + "s"
	}
	return name
}

// kinds lists the names that may be asked for.
func kinds(all []layout.Drawing) string {
	var out []string
	single := ""
	for _, d := range all {
		if k := kind(d.Name); !slices.Contains(out, k) {
			out = append(out, k)
		}
		if kind(d.Name) != d.Name && single == "" {
			single = ", or a single one, as " + d.Name
		}
	}
	return strings.Join(out, ", ") + single
}

// over lays a set over an older one, of which the same patterns are printed.
func (p *Printing) over(before, set tile.Set, o tile.Options) (*tile.Since, error) {
	before.Drawings = slices.DeleteFunc(slices.Clone(before.Drawings), func(d layout.Drawing) bool {
		return p.Only != "" && !slices.ContainsFunc(set.Drawings, func(n layout.Drawing) bool { return n.Name == d.Name || kind(n.Name) == kind(d.Name) })
	})
	before.First = set.First // always printed anew, so that one serves for both
	return tile.LaySince(before, set, o)
}

// pick keeps the sheets that are asked for and wanted, each once, in the order of the set.
func (p *Printing) pick(all []layout.Sheet, wanted func(number int) bool) ([]layout.Sheet, error) {
	for _, s := range p.Sheets {
		if last := max(s.From, s.To); last > len(all) {
			return nil, misuse("sheets", "there is no sheet %d; accepted: 1 to %d", last, len(all))
		}
	}
	var out []layout.Sheet
	for i, sheet := range all {
		asked := len(p.Sheets) == 0 || slices.ContainsFunc(p.Sheets, func(s Span) bool { return i+1 >= s.From && (s.To == 0 || i < s.To) })
		if asked && wanted(i+1) {
			out = append(out, sheet)
		}
	}
	return out, nil
}

// laid are patterns on sheets: the whole set, and the sheets of it that are printed.
type laid struct {
	tile.Laid
	printed layout.Document
	since   *tile.Since // the older set that it is laid over; nil for none
}

// lay puts the patterns of a set that are asked for on sheets: all of them, or those that
// differ from an older set's, nil for none.
func (p *Printing) lay(set tile.Set, before *tile.Set, units measure.System) (laid, error) {
	var out laid
	var err error
	if set.Drawings, err = p.patterns(set.Drawings); err != nil {
		return out, err
	}
	if p.Only != "" {
		set.First = nil
	}
	o := tile.Options{Paper: p.Setup, Way: p.Way, Units: units, Busy: p.busy}
	wanted := func(int) bool { return true }
	if before == nil {
		out.Laid, err = tile.Lay(set, o)
	} else if out.since, err = p.over(*before, set, o); err == nil {
		out.Laid = out.since.Now()
		wanted = func(number int) bool { return slices.Contains(out.since.Reprint, number) }
	}
	if err != nil {
		return out, err
	}
	out.printed = out.Document
	if out.printed.Sheets, err = p.pick(out.Sheets, wanted); err != nil {
		return out, err
	}
	if n := len(out.printed.Sheets); n > p.Most {
		room := out.Paper.Area
		return out, fmt.Errorf("it takes %d sheets, more than the %d that are allowed: a sheet of %s shows %.0f x %.0f mm; check the units of the design's lengths, choose patterns, take larger paper, or allow more",
			n, p.Most, out.Paper.Size.Name, room.W(), room.H())
	}
	return out, nil
}

// told says how much paper it takes, and what may go wrong with the margins.
func (l *laid) told(p *Printer) []report.Block {
	out := fmt.Sprintf("%s of %s, %s", wording.Counted(len(l.Sheets), "sheet"), l.Paper.Size.Name, l.Paper.Way())
	out += fmt.Sprintf(", %s with %s to tape", wording.Counted(l.Took.Pieces, "piece"), wording.Counted(l.Took.Joints, "joint"))
	if o := l.Other; o.Sheets > 0 {
		out += fmt.Sprintf(" (%s: %s, %s)", o.Way, wording.Counted(o.Sheets, "sheet"), wording.Counted(o.Joints, "joint"))
	}
	if c := l.Paper.Correction(); c != "" {
		out += ", " + c
	}
	if n := len(l.printed.Sheets); n < len(l.Sheets) {
		out += fmt.Sprintf("; %d of them printed", n)
	}
	out += fmt.Sprintf("; the patterns alone would fill %.1f, and lie on %d, %.2f times that", l.Least, l.Patterned(), float64(l.Patterned())/l.Least)
	blocks := []report.Block{report.Paragraph{Words: out + "."}}
	if l.since != nil {
		blocks = append(blocks, report.Say("Sheets of the older edition to keep: %s. Throw the others away and put these in their places.", cmp.Or(tile.Ranges(l.since.Kept), "none")))
	}
	if m := p.Setup.Margins; p.Way == tile.Best && m != paper.HomeMargins() && m != (paper.Margins{Left: m.Left, Right: m.Left, Top: m.Left, Bottom: m.Left}) {
		blocks = append(blocks, report.Say("The margins are taken as those of %s sheets; see that the proof that you measured lay so.", l.Paper.Way()))
	}
	if p.Setup.Margins.Narrow() {
		blocks = append(blocks, report.Paragraph{Words: "Some of these margins are under 6.4 mm (1/4 in), which many printers clip; print a proof and look."})
	}
	return blocks
}
