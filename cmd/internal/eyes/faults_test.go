package eyes

import (
	"math"
	"slices"
	"testing"

	"ribwright/layout"
	"ribwright/render/rendertest"
)

// TestSeesFaults makes faults on purpose in the tiles of a stem: the comparison
// must find each, or its silence elsewhere says nothing.
func TestSeesFaults(t *testing.T) {
	s := loft(t, "river", "letter")
	c := check{s, whole(t, "river", "stem-bow"), "stem-bow", Undone}
	l := Layer{Own: true, Only: Lines, Solid: true}
	want, err := c.one.Stitch(c.one.Views, l, Undone)
	if err != nil {
		t.Fatal(err)
	}
	views := c.Of("stem-bow")
	stitch := func(views []rendertest.View, l Layer) *Raster {
		r, err := s.Stitch(views, l, Undone)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}

	// The tile that most would be missed of; another may show little that its neighbors
	// do not.
	big, missed := 0, 0
	for i := range views {
		without := slices.Delete(slices.Clone(views), i, i+1)
		if off := Astray(want, stitch(without, l), lineDots).Off; off > missed {
			big, missed = i, off
		}
	}
	moved := slices.Clone(views)
	moved[big].ToSheet[4] += 0.25 // mm to the right: the frame on the sheet no longer meets its clip,
	if r := stitch(moved, l); Astray(want, r, lineDots).Off == 0 {
		t.Error("a tile whose frame is not where the table says goes unseen") // so nothing of it is drawn
	}
	lay := func(v rendertest.View) Motion {
		if v.Tile == views[big].Tile {
			return Undone(v).Then(Shift(0.25, 0))
		}
		return Undone(v)
	}
	r, err := s.Stitch(views, l, lay)
	if err != nil {
		t.Fatal(err)
	}
	if missing, doubled := Astray(want, r, lineDots), Astray(r, want, lineDots); missing.Off == 0 || doubled.Off == 0 {
		t.Errorf("a tile laid 0.25 mm off goes unseen: %v; %v", missing, doubled)
	}
	off := c
	off.lay = lay
	if missing, doubled := off.differences(t, l, lineDots); missing.Off == 0 || doubled.Off == 0 {
		t.Errorf("a tile laid 0.25 mm off goes unseen part by part: %v; %v", missing, doubled)
	}
	less := c
	less.Sheets = &Sheets{File: s.File, Drawn: s.Drawn, Views: slices.Delete(slices.Clone(views), big, big+1)}
	if len(c.beyond(t)) > 0 || len(less.beyond(t)) == 0 {
		t.Errorf("beyond all tiles lies something at %v, and with one missing at %v", c.beyond(t), less.beyond(t))
	}
	if r := stitch(less.Views, l); Astray(want, r, lineDots).Off == 0 {
		t.Error("a missing tile goes unseen")
	}
	if r := stitch(views, Layer{Only: Lines, Solid: true}); Astray(r, want, lineDots).Off == 0 {
		t.Error("the sheet's own crosses and joints, left in, go unseen")
	}
	right := stitch(views, l)
	b := right.Box()
	mid := rendertest.Point{X: (b.X0 + b.X1) / 2, Y: (b.Y0 + b.Y1) / 2}
	right.Rule([]Line{{Points: []rendertest.Point{mid, {X: mid.X + 3, Y: mid.Y + 1}}}}, layout.Tick.Width())
	if Astray(right, want, lineDots).Off == 0 {
		t.Error("a line of 3 mm that does not belong goes unseen")
	}
}

// TestSeesLinesDrawnTwice: a line drawn twice over at the same place darkens its
// soft edges, 1 - (1-a)^2 for a share a. Whatever its pen and its place on the
// grid, that must weigh more than what is allowed, there or half a dot off: a line as wide
// as some whole dots may fill them, and has no soft edge at one of the two.
func TestSeesLinesDrawnTwice(t *testing.T) {
	for _, pen := range layout.Pens() {
		least := math.Inf(1)
		for shift := 0.0; shift < 2*halfDot; shift += 0.005 {
			least = math.Min(least, math.Max(twiceAt(pen, shift), twiceAt(pen, shift+halfDot)))
		}
		t.Logf("pen %d, %.2f mm: drawn twice it weighs %.1f %% more at least", pen, pen.Width(), least*100)
		if least <= mayWeigh {
			t.Errorf("pen %d, %.2f mm: drawn twice it weighs only %.1f %% more", pen, pen.Width(), least*100)
		}
	}
}

// twiceAt is by which share a level line weighs more, drawn twice.
func twiceAt(pen layout.Pen, shift float64) float64 {
	once := NewRaster(rendertest.Box{X1: 20, Y1: 4.1})
	once.Rule([]Line{{Points: []rendertest.Point{{X: 0, Y: 2 + shift}, {X: 20, Y: 2 + shift}}}}, pen.Width())
	twice := NewRaster(once.Box())
	for i, ink := range once.Ink {
		bare := 1 - float64(ink)/255
		twice.Ink[i] = uint8(math.Round(255 * (1 - bare*bare)))
	}
	share, _ := Heavier(twice, once)
	return share
}
