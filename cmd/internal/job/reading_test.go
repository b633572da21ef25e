package job

import (
	"cmp"
	"slices"
	"testing"

	"ribwright/geometry/design"
)

// TestReading: where two pieces of a pattern share a sheet the later one lies under the other
// or to its right. Over the sheets a pattern's pieces go in rising order but for one in ten: a
// sheet that small pieces of several patterns fill has one place in the order of work.
func TestReading(t *testing.T) {
	back, pieces := 0, 0
	for _, name := range design.ShippedNames() {
		for _, paper := range []string{"letter", "a4"} {
			l := laidOut(t, name, paper)
			for _, s := range l.printed.Sheets {
				for i, v := range s.Views {
					for _, w := range s.Views[:i] {
						a, b := w.OnSheet(), v.OnSheet()
						if w.Drawing.Name == v.Drawing.Name && b.Min.X < a.Max.X && b.Max.Y > a.Min.Y {
							t.Errorf("%s on %s, sheet %d: %s %s is read before %s", name, paper, s.Number, v.Drawing.Name, v.Tile, w.Tile)
						}
					}
				}
			}
			all := inTheirOrder(l)
			pieces += len(all)
			for i := 1; i < len(all); i++ {
				if a, b := all[i-1], all[i]; a.pattern == b.pattern && b.sheet < a.sheet {
					back++
					t.Logf("%s on %s: %s %s lies on sheet %d, after sheet %d", name, paper, b.pattern, b.tile, b.sheet, a.sheet)
				}
			}
		}
	}
	if t.Logf("%d of %d pieces lie on a sheet before that of the piece before", back, pieces); back*10 > pieces {
		t.Errorf("%d of %d pieces lie on a sheet before that of the piece before, more than one in ten", back, pieces)
	}
}

type laidPiece struct {
	pattern, tile string
	sheet         int
}

// inTheirOrder lists the pieces of a set, those of a pattern as they are counted.
func inTheirOrder(l lofted) []laidPiece {
	var out []laidPiece
	for _, s := range l.printed.Sheets {
		for _, v := range s.Views {
			out = append(out, laidPiece{v.Drawing.Name, v.Tile, s.Number})
		}
	}
	slices.SortFunc(out, func(a, b laidPiece) int {
		return cmp.Or(cmp.Compare(a.pattern, b.pattern), cmp.Compare(len(a.tile), len(b.tile)), cmp.Compare(a.tile, b.tile))
	})
	return out
}
