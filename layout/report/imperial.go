package report

import (
	"regexp"
	"slices"
	"strings"

	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
)

// In is the report with every metric figure lettered for people in this system. The
// title and what the design is for stay as they are, and axes of plots, which say their own.
func (r Report) In(units measure.System) Report {
	if units != measure.Imperial {
		return r
	}
	r.Blocks = slices.Clone(r.Blocks)
	for i, b := range r.Blocks {
		r.Blocks[i] = blockIn(b, units)
	}
	return r
}

// blockIn is a block so lettered.
func blockIn(b Block, units measure.System) Block {
	switch v := b.(type) {
	case Heading:
		v.Words = units.Words(v.Words)
		return v
	case Paragraph:
		return Paragraph{units.Words(v.Words)}
	case Caution:
		v.Words = units.Words(v.Words)
		return v
	case List:
		v.Items = each(v.Items, units.Words)
		return v
	case Table:
		return tableIn(v, units)
	case Findings:
		v.List = slices.Clone(v.List)
		for i := range v.List {
			v.List[i] = FindingIn(v.List[i], units)
		}
		v.Note, v.Units = units.Words(v.Note), units
		return v
	case Figure:
		v.Drawing, v.Caption, v.About = v.Drawing.Said(units.Words), units.Words(v.Caption), units.Words(v.About)
		return v
	}
	return b
}

func each(all []string, do func(string) string) []string {
	out := make([]string, len(all))
	for i, s := range all {
		out[i] = do(s)
	}
	return out
}

// FindingIn is a finding with its words lettered in this system. Its measure stays.
func FindingIn(f finding.Finding, units measure.System) finding.Finding {
	f.About, f.Text, f.Cure = units.Words(f.About), units.Words(f.Text), units.Words(f.Cure)
	return f
}

// headed is the unit in the head of a column, and began that of a row whose first cell is
// its head.
var (
	headed = regexp.MustCompile(`(^|, |[a-z] )(N/mm2|N m|km/h|mm|kg|N)$`)
	began  = regexp.MustCompile(`(, )(N/mm2|N m|km/h|mm|kg|N)$`)
)

// tableIn letters the cells by the unit in the head of their column, in that of their row,
// or in the row's cell under "Unit"; all others as words.
func tableIn(t Table, units measure.System) Table {
	out := Table{Title: units.Words(t.Title), Note: units.Words(t.Note), Columns: slices.Clone(t.Columns)}
	of := make([]string, len(t.Columns))
	unit := -1
	for i, c := range t.Columns {
		if m := headed.FindStringSubmatch(c.Head); m != nil {
			of[i] = m[2]
			out.Columns[i].Head = strings.TrimSuffix(c.Head, m[2]) + units.UnitOf(m[2])
		}
		if c.Head == "Unit" {
			unit = i
		}
	}
	for _, row := range t.Rows {
		out.Rows = append(out.Rows, rowIn(row, of, unit, units))
	}
	return out
}

func rowIn(row, of []string, unit int, units measure.System) []string {
	out, head := slices.Clone(row), began.FindStringSubmatch(row[0])
	for i, cell := range row {
		u := of[i]
		if u == "" && unit >= 0 && i < unit {
			u = row[unit]
		} else if u == "" && head != nil {
			u = head[2]
		}
		if out[i] = units.Cell(cell, u); out[i] == cell {
			out[i] = units.Words(cell)
		}
		if i == unit {
			out[i] = units.UnitOf(cell)
		}
	}
	if head != nil {
		out[0] = strings.TrimSuffix(row[0], head[2]) + units.UnitOf(head[2])
	}
	return out
}
