package compare

import (
	"fmt"
	"strings"

	"ribwright/layout/report"
	"ribwright/layout/reprint"
)

// print tells which sheets to print, and of each pattern which pieces.
func (p page) print() []report.Block {
	if p.equal() {
		return nil
	}
	out := []report.Block{report.Section("What to print, on " + p.Paper), report.List{Items: []string{
		"Print: " + ranges(p.Sheets.Sheets(reprint.Reprint), "no sheet") + ".",
		"Need not be printed, for nothing on them moved by more than matters on wood: " + ranges(p.Sheets.Sheets(reprint.Serves), "none") + ".",
		"Equal but for the title block, keep yours: " + ranges(p.Sheets.Sheets(reprint.Keep), "none") + ".",
	}}}
	t := report.Titled("By piece").Words("Pattern").Numbers("Pieces", "Equal").Names("Print").Words("Sheets")
	for _, pattern := range p.Sheets.Patterns() {
		t.Row(p.pattern(pattern)...)
	}
	out = append(out, t)
	var gone []string
	for _, f := range p.Sheets.Gone {
		gone = append(gone, strings.TrimSpace(f.Title+" "+f.Tile))
	}
	if len(gone) > 0 {
		out = append(out, report.Say("Throw away: %s.", strings.Join(gone, "; ")))
	}
	return out
}

// pattern is the row of one pattern.
func (p page) pattern(name string) []string {
	title, same, all := "", 0, 0
	var tiles []string
	var sheets []int
	served := true
	for _, k := range p.Sheets.All {
		if k.Pattern != name {
			continue
		}
		title, all = k.Title, all+1
		switch k.Use {
		case reprint.Keep:
			same++
		case reprint.Reprint:
			served = false
			tiles = append(tiles, k.Tile)
			sheets = append(sheets, k.Sheet)
		}
	}
	print := strings.Join(tiles, " ")
	switch {
	case same == all:
		print = "none"
	case served:
		print = "still serves"
	case all == 1 || len(tiles) == all:
		print = "all"
	}
	return []string{title, fmt.Sprint(all), fmt.Sprint(same), print, ranges(sheets, "")}
}

// ranges letters sheet numbers that rise or repeat: "2-5, 9".
func ranges(sheets []int, none string) string {
	if len(sheets) == 0 {
		return none
	}
	on := map[int]bool{}
	last := 0
	for _, n := range sheets {
		on[n] = true
		last = max(last, n)
	}
	var out []string
	for n := 1; n <= last; n++ {
		if !on[n] {
			continue
		}
		from := n
		for on[n+1] {
			n++
		}
		if from == n {
			out = append(out, fmt.Sprint(n))
		} else {
			out = append(out, fmt.Sprintf("%d-%d", from, n))
		}
	}
	return strings.Join(out, ", ")
}
