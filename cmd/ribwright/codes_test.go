package main

import (
	"regexp"
	"testing"

	"github.com/spf13/pflag"

	"ribwright/geometry"
	"ribwright/geometry/design"
)

// TestCodesOffSlots keeps the codes of a strip's joints, "3-4", off its mortises
// and peg holes.
func TestCodesOffSlots(t *testing.T) {
	code := regexp.MustCompile(`^\d+-\d+$`)
	for _, name := range design.ShippedNames() {
		for _, paper := range []string{"letter", "a4"} {
			for _, s := range laidOut(t, name, paper).sheets.Sheets {
				for _, v := range s.Views {
					for _, k := range v.Drawing.Strokes {
						b := k.Path.Bounds()
						if v.Drawing.Name != "mortises" || !k.Path.Closed() || b.H() < 2 || !b.Overlaps(v.Frame) {
							continue
						}
						b = geometry.Around(v.ToSheet.Apply(b.Min), v.ToSheet.Apply(b.Max))
						for _, x := range s.Texts {
							if code.MatchString(x.Words) && x.Bounds().Overlaps(b) {
								t.Errorf("%s on %s: code %s lies on a slot at %v", name, paper, x.Words, b)
							}
						}
					}
				}
			}
		}
	}
}

// laidOut takes a shipped design as far as its sheets.
func laidOut(t *testing.T, name, paper string) *lofting {
	t.Helper()
	d, err := design.Shipped(name)
	if err != nil {
		t.Fatal(err)
	}
	l, err := lay(t, d, name, unitsFlag{}, "--paper", paper)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// lay lofts a design as far as its sheets, with the flags of printer and choice.
func lay(t testing.TB, d *design.Design, name string, units unitsFlag, flags ...string) (*lofting, error) {
	t.Helper()
	f := pflag.NewFlagSet("loft", pflag.ContinueOnError)
	p, c := newPrinter(f), newChoice(f)
	if err := f.Parse(flags); err != nil {
		t.Fatal(err)
	}
	return newLofting(d, name, p, c, units)
}
