package paper

import (
	"cmp"
	"fmt"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/measure"
)

// most is the largest stretch of a printer that is corrected: makers allow 3 %
// at the worst, so more is a slip in measuring or of the unit.
const most = 0.05

// Printed is what a printer makes of a length along one edge of the paper: 1.004
// prints 200 mm as 200.8. The zero Printed stands for 1, a true printer.
type Printed float64

func printedForm() string {
	return fmt.Sprintf(`what the bar of the proof measures and what it should be, as "200.8 mm of 200 mm" or '8 1/32 in of 8 in'; up to %.0f %% off`, 100*most)
}

// ParsePrinted reads a measured length "of" its nominal one.
//
// Errors: anything else, a nominal of 0, a stretch over 5 % either way.
func ParsePrinted(s string) (Printed, error) {
	got, nominal, found := strings.Cut(strings.ToLower(s), " of ")
	if !found {
		return 0, fmt.Errorf("%q is not understood; accepted: %s", s, printedForm())
	}
	a, err := measure.ParseLength(got)
	b, err2 := measure.ParseLength(nominal)
	if err = cmp.Or(err, err2); err != nil {
		return 0, fmt.Errorf("%w; accepted: %s", err, printedForm())
	}
	if p := float64(a / b); b > 0 && p >= 1-most && p <= 1+most {
		return Printed(p), nil
	}
	return 0, fmt.Errorf("%s is no small error of a printer; accepted: %s", s, printedForm())
}

// Factor returns the stretch; 1 when none is known.
func (p Printed) Factor() float64 {
	if p == 0 {
		return 1
	}
	return float64(p)
}

// Margins are what a printer leaves blank along the edges of a sheet as it is
// read, mm.
type Margins struct{ Left, Right, Top, Bottom float64 }

// safe is the margin that nearly every home printer keeps, mm: a quarter inch.
// Common practice, no source.
const safe = 6.35

// HomeMargins are kept when none are given. Printer manuals guarantee 4 to 6.4
// mm on most edges and need up to 12.7 mm at the bottom.
func HomeMargins() Margins { return Margins{10, 10, 10, 12.7} }

// Narrow reports whether an edge is under what home printers print up to.
func (m Margins) Narrow() bool { return min(m.Left, m.Right, m.Top, m.Bottom) < safe }

// String writes the margins as ParseMargins reads them.
func (m Margins) String() string {
	return fmt.Sprintf("left %s mm, right %s mm, top %s mm, bottom %s mm",
		measure.MM(m.Left, 1), measure.MM(m.Right, 1), measure.MM(m.Top, 1), measure.MM(m.Bottom, 1))
}

// kinds are what printers of a kind leave blank, mm: many inkjets hold the end of a sheet
// by its last half inch, lasers leave the same all round. Where a printer prints without
// borders its driver mostly enlarges the page, so an edge is kept that the bars can tell it
// by. Common practice, no source; a printer's own manual comes first.
var kinds = map[string]Margins{
	"inkjet":     {6.5, 6.5, 6.5, 12.7},
	"laser":      {6.5, 6.5, 6.5, 6.5},
	"borderless": {3, 3, 3, 3},
}

const marginForm = `a kind of printer, inkjet, laser or borderless; a length for all edges, as "10 mm"; or some of them, as "left 8 mm, bottom 15 mm"`

// ParseMargins reads a kind of printer, one length for all edges, or edges by name; edges
// not named keep their home margins.
func ParseMargins(s string) (Margins, error) {
	if m, ok := kinds[strings.ToLower(strings.TrimSpace(s))]; ok {
		return m, nil
	}
	m := HomeMargins()
	if all, err := measure.ParseLength(s); err == nil {
		m = Margins{float64(all), float64(all), float64(all), float64(all)}
		return m, m.check()
	}
	err := eachNamed(s, marginForm, map[string]func(float64){
		"left": func(v float64) { m.Left = v }, "right": func(v float64) { m.Right = v },
		"top": func(v float64) { m.Top = v }, "bottom": func(v float64) { m.Bottom = v },
	})
	return m, cmp.Or(err, m.check())
}

func (m Margins) check() error {
	if least := min(m.Left, m.Right, m.Top, m.Bottom); least < 0 {
		return fmt.Errorf("a margin of %s mm reaches over the edge; accepted: 0 mm or more", measure.MM(least, 1))
	}
	return nil
}

const offsetForm = `one or two ways with a length, as "right 1.5 mm, up 0.5 mm"`

// mostOffset is the farthest that all ink is moved, mm: more is a misprint.
const mostOffset = 20

// ParseOffset reads how far all ink is moved on the sheet as it is read: right
// or left, up or down.
func ParseOffset(s string) (geometry.Point, error) {
	var by geometry.Point
	err := eachNamed(s, offsetForm, map[string]func(float64){
		"right": func(v float64) { by.X = v }, "left": func(v float64) { by.X = -v },
		"up": func(v float64) { by.Y = v }, "down": func(v float64) { by.Y = -v },
	})
	if err == nil && max(by.X, -by.X, by.Y, -by.Y) > mostOffset {
		err = fmt.Errorf("%s moves the ink by more than %d mm; accepted: up to %d mm each way", s, mostOffset, mostOffset)
	}
	return by, err
}

// eachNamed reads "NAME LENGTH, NAME LENGTH" and hands each length to the
// setter of that name.
func eachNamed(s, form string, set map[string]func(float64)) error {
	for _, part := range strings.Split(s, ",") {
		name, length, _ := strings.Cut(strings.TrimSpace(part), " ")
		take := set[strings.ToLower(name)]
		if take == nil {
			return fmt.Errorf("%q is not understood; accepted: %s", strings.TrimSpace(part), form)
		}
		v, err := measure.ParseLength(length)
		if err != nil {
			return fmt.Errorf("%w; accepted: %s", err, form)
		}
		take(float64(v))
	}
	return nil
}
