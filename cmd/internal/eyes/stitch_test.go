package eyes

import (
	"slices"
	"strings"
	"testing"

	"ribwright/layout"
	"ribwright/render/rendertest"
)

// Most that a line may lie off its place in the stitched pattern, mm.
const (
	mayStitch = 0.10 // as the file has it
	mayPrint  = 0.15 // after a printer that stretches, and the correction for it
)

// halfDot is half a dot of the grid, mm.
const halfDot = 0.5 / perMM

// mayWeigh is by which share the ink in a square of 4 mm may differ.
const mayWeigh = 0.05

// Most that a dark dot may lie off, dots.
const (
	lineDots = 1
	// PDFium sets each letter on whole dots, and rounds either way.
	letterDots = 2
)

// patterns are what is stitched: the longest boat's gunwale strip, and its stems.
func patterns() []string { return []string{"mortises", "stem-bow", "stem-stern"} }

// TestStitched puts the tiles of a pattern together and holds them against the
// pattern in one piece and against the numbers. Corrected sheets are undone by
// the table of pages here; what a printer makes of them is TestPrinted's matter.
func TestStitched(t *testing.T) {
	for _, paper := range oneOf("letter", "a4") {
		s := loft(t, "river", paper)
		for _, pattern := range patterns() {
			t.Run(pattern+" on "+paper, func(t *testing.T) {
				c := check{s, whole(t, "river", pattern), pattern, Undone}
				c.nothingBeyond(t)
				c.linesInOnePiece(t)
				c.drawnOnce(t)
				c.lettersInOnePiece(t)
				c.covered(t)
				c.sameInk(t)
				c.againstNumbers(t, mayStitch)
			})
		}
	}
}

// TestStitchedCorrected is TestStitched for sheets that make up for a printer.
func TestStitchedCorrected(t *testing.T) {
	flags := correction(stretched)
	for _, paper := range oneOf("a4", "letter") {
		s := loft(t, "river", paper, flags...)
		for _, pattern := range patterns() {
			t.Run(pattern+" on "+paper, func(t *testing.T) {
				c := check{s, whole(t, "river", pattern), pattern, Undone}
				c.linesInOnePiece(t)
				c.againstNumbers(t, mayStitch)
			})
		}
	}
}

// TestStitchedAll does so for every line of every pattern of the smallest boat,
// halves and all, with its ribs on one stick and on strips.
func TestStitchedAll(t *testing.T) {
	seen := map[string]bool{}
	for _, ribs := range []string{"stick", "strips"} {
		s := loft(t, "brook", "a4", "--ribs", ribs)
		for _, v := range s.Views {
			if seen[v.Pattern] {
				continue
			}
			seen[v.Pattern] = true
			t.Run(v.Pattern, func(t *testing.T) {
				c := check{s, whole(t, "brook", v.Pattern), v.Pattern, Undone}
				c.nothingBeyond(t)
				c.linesInOnePiece(t)
			})
		}
	}
}

// TestTurned lays the half strip of a boat with equal ends a second time, turned
// end for end: together the two show every mortise of the numbers, fore and aft,
// each in its place.
func TestTurned(t *testing.T) {
	s := loft(t, "brook", "letter")
	both := s.Both("mortises")
	if len(both) == len(s.Of("mortises")) {
		t.Fatal("the table has no turned half")
	}
	for _, slot := range s.numbers.slots() {
		box := rendertest.Around(slot.Points...)
		var all Reading
		for _, v := range both {
			if v.Frame().Grow(-1.5).HoldsBox(box) {
				tile, err := s.Tile(v, cutOnly(), Printer{1, 1}.Laid)
				if err != nil {
					t.Fatal(err)
				}
				all.Join(tile.Measure(slot, layout.Cut.Width()))
			}
		}
		if all.Count == 0 || all.Unclear > 0 || all.Worst > mayStitch {
			t.Errorf("%s: %v; %d unclear: %s", slot.Name, all, all.Unclear, all.Unclearly)
		}
	}
}

// check is one pattern of one set, looked at in one way.
type check struct {
	set
	one     *Sheets
	pattern string
	lay     func(rendertest.View) Motion
}

// rim is what is drawn round a part, mm: as far as a dark dot is looked for.
const rim = float64(farthest) / perMM

// open lays the tiles, and the pattern in one piece.
func (c check) open(t *testing.T, l Layer) (tiles, one *Laid) {
	t.Helper()
	views := c.Of(c.pattern)
	if len(views) == 0 {
		t.Fatalf("no tiles of %s", c.pattern)
	}
	tiles, err := c.Lay(views, l, c.lay)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { tiles.Close() })
	if one, err = c.one.Lay(c.one.Views, l, Undone); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { one.Close() })
	return tiles, one
}

// parts looks at the whole pattern, tile after tile: at what all tiles together show
// of each one's frame and a rim round it, and at the same in one piece.
func (c check) parts(t *testing.T, l Layer, look func(part rendertest.Box, got, want *Raster)) {
	t.Helper()
	tiles, one := c.open(t, l)
	for _, v := range c.Of(c.pattern) {
		around := NewRaster(v.Frame().Grow(rim)).Box()
		look(v.Frame(), show(t, tiles, around), show(t, one, around))
	}
}

func show(t *testing.T, l *Laid, part rendertest.Box) *Raster {
	t.Helper()
	r, err := l.Show(part)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// linesInOnePiece: every dark dot of the one picture has a dark dot of the other
// within one dot, both ways: no line is missing and none is there twice, in
// another place.
func (c check) linesInOnePiece(t *testing.T) {
	t.Logf("%d tiles", len(c.Of(c.pattern)))
	c.same(t, Layer{Own: true, Only: Lines, Solid: true}, lineDots)
}

// lettersInOnePiece: the tiles together hold every letter of the pattern once, however its
// words are moved or broken beside a joint.
func (c check) lettersInOnePiece(t *testing.T) {
	if got, want := letters(c.Sheets, c.Of(c.pattern)), inOnePiece(c.one); got != want {
		t.Errorf("the tiles hold the letters\n%q, one piece\n%q", got, want)
	}
}

// letters are all letters and figures that tiles show as the pattern's own, in order.
func letters(s *Sheets, views []rendertest.View) string {
	var all []rune
	for _, v := range views {
		for _, x := range s.Drawn[v.Page-1].Texts {
			if x.Clip.Off(v.OnSheet()) <= clipTol {
				all = append(all, []rune(strings.ReplaceAll(x.Words, " ", ""))...)
			}
		}
	}
	slices.Sort(all)
	return string(all)
}

// inOnePiece are the letters of a pattern in one piece: on several long pages, of which the
// next may show the same words again, moved off the joint on one of them.
func inOnePiece(s *Sheets) string {
	const moved = 5.0 // mm
	var all []rune
	before := map[string][]rendertest.Point{}
	for _, v := range s.Views {
		here := map[string][]rendertest.Point{}
		for _, x := range s.Drawn[v.Page-1].Texts {
			at := v.Back(x.At)
			again := slices.IndexFunc(before[x.Words], func(p rendertest.Point) bool { return p.To(at) < moved })
			if again < 0 {
				all = append(all, []rune(strings.ReplaceAll(x.Words, " ", ""))...)
				here[x.Words] = append(here[x.Words], at)
				continue
			}
			before[x.Words] = slices.Delete(before[x.Words], again, again+1)
		}
		for words, at := range here {
			before[words] = append(before[words], at...)
		}
	}
	slices.Sort(all)
	return string(all)
}

// same compares dot by dot, both ways.
func (c check) same(t *testing.T, l Layer, may float64) {
	t.Helper()
	missing, doubled := c.differences(t, l, may)
	judge(t, missing, doubled)
}

func (c check) differences(t *testing.T, l Layer, may float64) (missing, doubled Difference) {
	t.Helper()
	c.parts(t, l, func(part rendertest.Box, got, want *Raster) {
		missing.Join(Astray(want.Within(part), got, may))
		doubled.Join(Astray(got.Within(part), want, may))
	})
	return missing, doubled
}

func judge(t *testing.T, missing, doubled Difference) {
	t.Helper()
	t.Logf("%d dark dots; the worst is missing by %.2f dots, or too much by %.2f", missing.Dark, missing.Worst, doubled.Worst)
	if missing.Off > 0 || missing.Dark == 0 {
		t.Errorf("missing from the tiles: %v", missing)
	}
	if doubled.Off > 0 {
		t.Errorf("too much on the tiles: %v", doubled)
	}
}

// nothingBeyond: in one piece the pattern's lines have no dark dot but where some tile
// shows it, so comparing tile after tile leaves nothing out.
func (c check) nothingBeyond(t *testing.T) {
	for _, ink := range c.beyond(t) {
		t.Errorf("no tile shows what lies at %.1f", ink)
	}
}

// beyond returns where there are such dots.
func (c check) beyond(t *testing.T) []rendertest.Box {
	t.Helper()
	var out []rendertest.Box
	_, one := c.open(t, Layer{Only: Lines})
	all := rendertest.Nowhere()
	for _, v := range c.one.Views {
		all = rendertest.Around(ends(all, v.Frame())...)
	}
	for x := all.X0; x < all.X1; x += partLong {
		for y := all.Y0; y < all.Y1; y += partLong {
			r := show(t, one, rendertest.Box{X0: x, Y0: y, X1: x + partLong, Y1: y + partLong})
			for _, v := range c.Of(c.pattern) {
				r.Erase(v.Frame().Grow(letterDots / perMM))
			}
			if r.Darkest() >= dark {
				out = append(out, r.Inked())
			}
		}
	}
	return out
}

// partLong is the edge of the squares that are looked at for it, mm.
const partLong = 400.0

// drawnOnce: on every tile the ink weighs the same as in one piece, square by
// square, so no line is drawn twice over at one place. It is weighed once more half a dot
// off, where a line that filled its dots has soft edges.
func (c check) drawnOnce(t *testing.T) {
	l := Layer{Own: true, Only: Lines, Solid: true}
	worst, where := 0.0, rendertest.Point{}
	for _, off := range []Motion{Shift(0, 0), Shift(halfDot, halfDot)} {
		moved := c
		moved.lay = func(v rendertest.View) Motion { return c.lay(v).Then(off) }
		one, err := c.one.Lay(c.one.Views, l, func(v rendertest.View) Motion { return Undone(v).Then(off) })
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { one.Close() })
		for _, v := range c.Of(c.pattern) {
			tile, err := c.Tile(v, l, moved.lay)
			if err != nil {
				t.Fatal(err)
			}
			// At the rim the tile's own clip moves with it.
			tile = tile.Within(tile.Box().Grow(-2 * halfDot))
			if share, at := Heavier(tile, show(t, one, tile.Box())); share > worst {
				worst, where = share, at
			}
		}
	}
	t.Logf("the ink of a square of 4 mm weighs %.2f %% more or less at most", worst*100)
	if worst > mayWeigh {
		t.Errorf("the ink at %.1f %.1f weighs %.1f %% more or less than in one piece", where.X, where.Y, worst*100)
	}
}

// covered: with all lines on it that a sheet carries, no dark dot of the
// pattern's own has gone: nothing white lies over it.
func (c check) covered(t *testing.T) {
	var gone Difference
	c.parts(t, Layer{Only: Lines, Solid: true}, func(part rendertest.Box, got, want *Raster) {
		gone.Join(Astray(want.Within(part), got, letterDots))
	})
	if gone.Off > 0 || gone.Dark == 0 {
		t.Errorf("covered on the tiles: %v", gone)
	}
}

// sameInk: drawn as they are, dashes and all, the pattern's lines take as much ink as in
// one piece, so what is dashed there is dashed here. What two tiles show counts
// twice on both sides.
func (c check) sameInk(t *testing.T) {
	got, want := 0.0, 0.0
	c.parts(t, Layer{Own: true, Only: Lines}, func(part rendertest.Box, tiles, one *Raster) {
		got, want = got+tiles.Within(part).Weight(), want+one.Within(part).Weight()
	})
	t.Logf("ink %.0f dots, in one piece %.0f", got, want)
	if off := got/want - 1; !(off > -0.01 && off < 0.01) {
		t.Errorf("the tiles take %.2f %% more or less ink than one piece", off*100)
	}
}

// againstNumbers holds the lines to cut against the numbers: the picture that an
// independent pen makes of them, dot by dot and both ways, and a rule laid
// across them on every tile.
func (c check) againstNumbers(t *testing.T, may float64) {
	lines, err := c.numbers.CutLines(c.pattern)
	if err != nil {
		t.Fatal(err)
	}
	got, err := c.Stitch(c.Of(c.pattern), cutOnly(), c.lay)
	if err != nil {
		t.Fatal(err)
	}
	want := NewRaster(got.Box())
	want.Rule(lines, layout.Cut.Width())
	judge(t, Astray(want, got, lineDots), Astray(got, want, lineDots))
	c.measured(t, lines, may)
}

// cutOnly are the lines to cut, by their weight.
func cutOnly() Layer { return Layer{Own: true, Only: Lines, Width: layout.Cut.Width()} }

// measured: no line to cut lies further from its place than it may, mm.
func (c check) measured(t *testing.T, lines []Line, may float64) {
	t.Helper()
	r := c.measure(t, lines, cutOnly())
	t.Logf("lines to cut: %v", r)
	if r.Count == 0 || r.Unclear > 0 || r.Worst > may {
		t.Errorf("%v, allowed %.2f; %d unclear: %s", r, may, r.Unclear, r.Unclearly)
	}
}

// measure lays the rule on every tile by itself, so that where two show the same
// line both are measured.
func (c check) measure(t *testing.T, lines []Line, l Layer) Reading {
	t.Helper()
	var all Reading
	for _, v := range c.Of(c.pattern) {
		tile, err := c.Tile(v, l, c.lay)
		if err != nil {
			t.Fatal(err)
		}
		for _, line := range lines {
			all.Join(tile.Measure(line, layout.Cut.Width()))
		}
	}
	return all
}
