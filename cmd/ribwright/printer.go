package main

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"ribwright/geometry"
	"ribwright/layout/paper"
	"ribwright/layout/tile"
)

// sizeFlag is a size of paper as a flag.
type sizeFlag struct{ *paper.Size }

func (p sizeFlag) String() string {
	if p.Size == nil {
		return ""
	}
	return p.Name
}
func (p sizeFlag) Type() string       { return "letter|a4|legal|tabloid|a3|both|roll24|roll36|WxH" }
func (p sizeFlag) Set(s string) error { var err error; *p.Size, err = paper.ParseSize(s); return err }

// marginsFlag is what the printer leaves blank as a flag.
type marginsFlag struct{ *paper.Margins }

func (m marginsFlag) Type() string { return "edges" }
func (m marginsFlag) Set(s string) error {
	var err error
	*m.Margins, err = paper.ParseMargins(s)
	return err
}
func (m marginsFlag) String() string {
	if m.Margins == nil {
		return ""
	}
	return m.Margins.String()
}

// offsetFlag is how far all ink is moved as a flag.
type offsetFlag struct{ by *geometry.Point }

func (o offsetFlag) String() string     { return "" }
func (o offsetFlag) Type() string       { return "ways" }
func (o offsetFlag) Set(s string) error { var err error; *o.by, err = paper.ParseOffset(s); return err }

// printedFlag is what the printer makes of a length as a flag.
type printedFlag struct{ *paper.Printed }

func (p printedFlag) String() string { return "" }
func (p printedFlag) Type() string   { return "measured" }
func (p printedFlag) Set(s string) error {
	var err error
	*p.Printed, err = paper.ParsePrinted(s)
	return err
}

// wayFlag is how the sheets lie as a flag.
type wayFlag struct{ *tile.Way }

func (w wayFlag) Type() string { return "best|lying|standing" }
func (w wayFlag) String() string {
	if w.Way == nil {
		return ""
	}
	return strings.Split(w.Type(), "|")[*w.Way]
}
func (w wayFlag) Set(s string) error {
	for i, name := range strings.Split(w.Type(), "|") {
		if strings.EqualFold(s, name) {
			*w.Way = tile.Way(i)
			return nil
		}
	}
	return fmt.Errorf("no such way %q; accepted: best, lying, standing", s)
}

// printer is what the flags say of the printer and its paper.
type printer struct {
	setup paper.Setup
	way   tile.Way
}

// newPrinter adds the flags of a printer to a verb's.
func newPrinter(f *pflag.FlagSet) *printer {
	p := &printer{setup: paper.Setup{Size: paper.Letter(), Margins: paper.HomeMargins()}}
	f.Var(sizeFlag{&p.setup.Size}, "paper", `size of the sheets in the printer; WxH as "300 mm x 420 mm" or 12x18in, both prints on letter and on a4`)
	f.Var(wayFlag{&p.way}, "way", "how the sheets lie; best takes the fewest")
	f.Var(marginsFlag{&p.setup.Margins}, "margins", `what the printer leaves blank, as "10 mm" or "left 8 mm, bottom 15 mm"`)
	f.Var(offsetFlag{&p.setup.Offset}, "offset", `moves all ink on the sheet as you read it, as "right 1.5 mm, up 0.5 mm"`)
	f.Var(printedFlag{&p.setup.Across}, "printed-across", `what the proof's bar along the short edge of the paper measures, as "200.8 mm of 200 mm"`)
	f.Var(printedFlag{&p.setup.Down}, "printed-down", "the same for the bar along the long edge")
	return p
}

// check finds out early whether anything can be printed so.
func (p *printer) check(v verb) error {
	var err error
	for _, lying := range p.way.Lying() {
		if _, err = p.setup.Sheet(lying); err == nil {
			return nil
		}
	}
	return usageError{fmt.Errorf("%s: --margins: %w", v.name, err)}
}

// warning says what may go wrong with the margins, "" when nothing.
func (p *printer) warning() string {
	if p.setup.Margins.Narrow() {
		return "  some of these margins are under 6.4 mm (1/4 in), which many printers clip; check with ribwright proof\n"
	}
	return ""
}
