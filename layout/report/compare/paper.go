package compare

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"ribwright/layout/report"
	"ribwright/layout/reprint"
	"ribwright/layout/tile"
)

// print tells which sheets to print, and of each pattern which pieces.
func (p page) print() []report.Block {
	if p.equal() {
		return nil
	}
	out := []report.Block{report.Section("What to print, on " + p.Paper), report.List{Items: []string{
		"Print: " + cmp.Or(tile.Ranges(p.Sheets.Reprint), "no sheet") + ".",
		"Of these may stay as you have them, for nothing on them moved by more than matters on wood: " + cmp.Or(tile.Ranges(p.Sheets.Sheets(reprint.Serves)), "none") + ".",
		"Equal but for the title block, keep yours: " + cmp.Or(tile.Ranges(p.Sheets.Sheets(reprint.Keep)), "none") + ".",
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
	slices.Sort(sheets)
	return []string{title, fmt.Sprint(all), fmt.Sprint(same), print, tile.Ranges(sheets)}
}
