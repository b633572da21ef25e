package outfits

import (
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit"
	"ribwright/geometry/water"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// manned is a shipped boat with its people, after a change.
func manned(t *testing.T, boat string, change func(*design.Design)) outfit.Ship {
	t.Helper()
	f := frametest.Shipped(t, boat, change)
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		t.Fatal(err)
	}
	s, err := outfit.NewShip(f, f.Design.Gear, w)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// fitted is a shipped boat with every outfit, the sail of a rig.
func fitted(t *testing.T, boat string, r design.Rig) *outfit.Outfits {
	t.Helper()
	return outfit.Of(manned(t, boat, func(d *design.Design) {
		sail, pair, row := d.Sail(), d.Pair(), d.Row()
		sail.Rig, pair.Purpose = r, design.OpenWater
		d.Outfit = &design.Outfit{Sail: &sail, Pair: &pair, Row: &row}
	}))
}

// TestKitIsDrawn: what is weighed, bought and sawn is what the patterns show: as many
// boards of the same names, thickness and size, and as much wood left of the block as
// the outline holds. What is not drawn at full size is given by the words of its sketch.
func TestKitIsDrawn(t *testing.T) {
	for _, boat := range design.ShippedNames() {
		for _, r := range []design.Rig{design.Spritsail, design.LegOfMutton, design.Lug, design.Vee} {
			f := fitted(t, boat, r)
			compare(t, boat+" "+r.String(), f.Sail.Kit(), SailBoards(f.Sail, measure.Metric))
			sketchesGiveAll(t, boat+" "+r.String(), f.Sail.Kit(), SailBoards(f.Sail, measure.Metric))
			panelsAreTaped(t, boat+" "+r.String(), f.Sail)
			if r == design.Spritsail {
				compare(t, boat+" paired", f.Pair.Kit(), PairBoards(f.Pair, measure.Metric))
				compare(t, boat+" rowed", f.Row.Kit(), RowingBoards(f.Row, measure.Metric))
				sketchesGiveAll(t, boat+" paired", f.Pair.Kit(), append(beamBoards(f.Pair, measure.Metric), PairBoards(f.Pair, measure.Metric)...))
				sketchesGiveAll(t, boat+" rowed", f.Row.Kit(), RowingBoards(f.Row, measure.Metric))
			}
		}
	}
}

func compare(t *testing.T, what string, k kit.Kit, boards []Board) {
	t.Helper()
	pieces := map[string]kit.Piece{}
	for _, p := range k.Pieces {
		if p.Form == kit.Board {
			pieces[strings.ToLower(p.Name)] = p
		}
	}
	if len(pieces) != len(boards) {
		t.Errorf("%s: %d kinds of boards are sawn, %d are drawn", what, len(pieces), len(boards))
	}
	for _, b := range boards {
		p, ok := pieces[strings.ToLower(b.Title)]
		if !ok {
			t.Errorf("%s: %s is drawn and not sawn", what, b.Title)
			continue
		}
		box := b.Outline.Bounds()
		long, wide := math.Max(box.W(), box.H()), math.Min(box.W(), box.H())
		if p.Count != b.Count || p.Thick != b.Thick || math.Abs(math.Max(p.Long, p.Wide)-long) > 0.6 || math.Abs(math.Min(p.Long, p.Wide)-wide) > 0.6 {
			t.Errorf("%s: %s is drawn %d times, %.1f x %.1f x %.1f mm, and sawn %d times, %.1f x %.1f x %.1f", what, b.Title, b.Count, long, wide, b.Thick, p.Count, p.Long, p.Wide, p.Thick)
		}
		if strings.HasPrefix(p.Grain, "up and down") && math.Abs(p.Long-box.H()) > 0.6 {
			t.Errorf("%s: %s is sawn %.1f mm along the grain, and stands %.1f mm high", what, b.Title, p.Long, box.H())
		}
		left := math.Abs(curve.Area(b.Outline.Flatten(0.05)))
		for _, h := range b.Holes {
			left -= math.Abs(curve.Area(h.Flatten(0.05)))
		}
		if left /= long * wide; math.Abs(left-p.Fill) > 0.04 {
			t.Errorf("%s: %s fills %.2f of its block, taken as %.2f", what, b.Title, left, p.Fill)
		}
	}
}

// TestNamesOffHoles: what is engraved on a part stands off its holes.
func TestNamesOffHoles(t *testing.T) {
	for _, boat := range design.ShippedNames() {
		f := fitted(t, boat, design.Spritsail)
		for _, b := range slices.Concat(SailBoards(f.Sail, measure.Metric), PairBoards(f.Pair, measure.Metric), RowingBoards(f.Row, measure.Metric)) {
			for _, l := range b.Parts()[0].Letters {
				wide := lettering.StrokeWidth(l.Words, l.Height)
				box := geometry.Around(l.At, l.At.Add(geometry.Pt(wide, l.Height)))
				if l.Align == layout.Middle {
					box = geometry.Around(l.At.Sub(geometry.Pt(wide/2, 0)), l.At.Add(geometry.Pt(wide/2, l.Height)))
				}
				for _, h := range b.Holes {
					if h.Bounds().Overlaps(box) {
						t.Errorf("%s: %q at %.0f lies on a hole of the %s at %.0f", boat, l.Words, box, b.Title, h.Bounds())
					}
				}
			}
		}
	}
}
