package job

import (
	"math"
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

// TestMarksOffJoints: on the rib stick no mark stands within a millimeter of a joint, where it
// goes with the cut or is taken for the line to cut along.
func TestMarksOffJoints(t *testing.T) {
	const lap, least = 5.0, 1.0
	for _, name := range design.ShippedNames() {
		for _, paper := range []string{"letter", "a4"} {
			joints := 0
			for _, s := range laidOut(t, name, paper).printed.Sheets {
				for _, v := range s.Views {
					if v.Drawing.Name != "ribs" || v.Tile[len(v.Tile)-1] == '1' {
						continue
					}
					joints++
					for _, k := range v.Drawing.Strokes {
						if b := k.Path.Bounds(); b.W() < 0.01 && b.H() < 20 && b.H() > 3 && b.Overlaps(v.Frame.Grow(1)) && math.Abs(b.Min.X-v.Frame.Min.X-lap) < least {
							t.Errorf("%s on %s: a mark at %.1f mm stands at the joint of piece %s", name, paper, b.Min.X, v.Tile)
						}
					}
				}
			}
			if joints == 0 {
				t.Errorf("%s on %s: the rib stick has no joint", name, paper)
			}
		}
	}
}
