// Package tile cuts patterns to sheet size and arranges them on sheets, with
// everything a builder needs to put them together again: registration crosses,
// absolute distances, trim lines, neighbours and scale bars.
package tile

import (
	"fmt"
	"strings"

	"ribwright/geometry"
	"ribwright/layout"
)

// Margins of a sheet that home printers may leave blank, mm. Printer manuals
// guarantee 4 to 6.4 mm on most edges and need up to 12.7 mm at the bottom.
const (
	sideMargin   = 10.0
	bottomMargin = 12.7
	footHigh     = 12.5 // the title block and the level scale bar
	columnWide   = 13.0 // the upright scale bar and the key map
	gap          = 2.0  // between title block, column and the patterns
)

// Letter and A4 as they lie on the bench: long edge across.
var papers = []layout.Paper{
	{Name: "letter", W: 279.4, H: 215.9}, // ANSI/ASME Y14.1 size A
	{Name: "a4", W: 297, H: 210},         // ISO 216
}

// ParsePaper returns the paper of the given name; capitals do not matter.
func ParsePaper(s string) (layout.Paper, error) {
	for _, p := range papers {
		if strings.EqualFold(p.Name, s) {
			return p, nil
		}
	}
	return layout.Paper{}, fmt.Errorf("no paper %q; accepted: letter, a4", s)
}

// area returns the part of the sheet that patterns may fill.
func area(p layout.Paper) geometry.Box {
	return geometry.Box{
		Min: geometry.Point{X: sideMargin, Y: bottomMargin + footHigh + gap},
		Max: geometry.Point{X: p.W - sideMargin - columnWide - gap, Y: p.H - sideMargin},
	}
}
