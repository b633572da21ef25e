package job

import (
	"regexp"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/design"
	"ribwright/layout/label"
)

// TestCodesOffSlots keeps the codes of a strip's joints, "3" and "4", off its mortises
// and peg holes; figures have no tails under their line.
func TestCodesOffSlots(t *testing.T) {
	code := regexp.MustCompile(`^\d+(-\d+)?$`)
	for _, name := range design.ShippedNames() {
		for _, paper := range []string{"letter", "a4"} {
			for _, s := range laidOut(t, name, paper).printed.Sheets {
				for _, v := range s.Views {
					for _, k := range v.Drawing.Strokes {
						b := k.Path.Bounds()
						if v.Drawing.Name != "mortises" || !k.Path.Closed() || b.H() < 2 || !b.Overlaps(v.Frame) {
							continue
						}
						f := v.Frame // what it shows of the slot
						b.Min = geometry.Pt(max(b.Min.X, f.Min.X), max(b.Min.Y, f.Min.Y))
						b.Max = geometry.Pt(min(b.Max.X, f.Max.X), min(b.Max.Y, f.Max.Y))
						b = geometry.Around(v.ToSheet.Apply(b.Min), v.ToSheet.Apply(b.Max))
						for _, x := range s.Texts {
							if code.MatchString(x.Words) && label.BlockOf(x).Bounds().Overlaps(b) {
								t.Errorf("%s on %s, sheet %d: %s at %.1f lies on a slot at %v", name, paper, s.Number, x.Words, x.At, b)
							}
						}
					}
				}
			}
		}
	}
}

// laidOut takes a shipped design as far as its sheets and its plate, once for all tests.
func laidOut(t testing.TB, name, paper string, flags ...string) lofted {
	t.Helper()
	args := append([]string{name, "--paper", paper, "--nest", "quick"}, flags...)
	return asked(t, "loft", args...).(*Loft).shared(t).lofted
}

// lay lofts a design as far as its sheets and its plate.
func lay(t testing.TB, name string, flags ...string) (lofted, error) {
	t.Helper()
	return asked(t, "loft", flags...).(*Loft).lay(known(t, name), World{})
}
