package frame_test

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
)

// byGap is a shipped boat with mortises by gap, and the same with mortises that are cut.
func byGap(t *testing.T, name string) (gap, cut *frame.Frame) {
	t.Helper()
	gap = frametest.Shipped(t, name, func(d *design.Design) { d.Gunwale.Mortises = design.ByGap })
	if p := gap.Design.Check(); p != nil {
		t.Fatalf("%s: %s %s", name, p.Key, p.Text)
	}
	return gap, frametest.Shipped(t, name, nil)
}

// TestGapsLieWhereMortisesWould: going along the blocks from the after end, what lies
// between two is exactly the slot that would be cut, and the ends are the gunwale's.
func TestGapsLieWhereMortisesWould(t *testing.T) {
	for _, name := range design.ShippedNames() {
		gap, cut := byGap(t, name)
		g, c := &gap.Gunwale, &cut.Gunwale
		if len(g.Blocks) != len(c.Mortises)+1 || c.Blocks != nil {
			t.Fatalf("%s: %d blocks and %d for %d mortises", name, len(g.Blocks), len(c.Blocks), len(c.Mortises))
		}
		at, length := g.Aft, 0.0
		for i, z := range g.Blocks {
			if z.From != at || z.To <= z.From {
				t.Errorf("%s: block %d from %.4f to %.4f mm, begun at %.4f", name, i+1, z.From, z.To, at)
			}
			length += z.To - z.From
			if at = z.To; i < len(c.Mortises) {
				lo, hi := c.Mortises[i].Ends()
				if math.Abs(at-lo) > 1e-9 {
					t.Errorf("%s: block %d ends at %.4f mm, the mortise of rib %s begins at %.4f", name, i+1, at, c.Mortises[i].Rib, lo)
				}
				at, length = hi, length+hi-lo
			}
		}
		if at != g.Fore || math.Abs(length-(c.Fore-c.Aft)) > 1e-9 {
			t.Errorf("%s: blocks and gaps end at %.4f mm after %.4f mm, the gunwale at %.4f after %.4f", name, at, length, c.Fore, c.Fore-c.Aft)
		}
		for i, m := range g.Mortises {
			ply := float64(gap.Design.Gunwale.Width) / float64(gap.Design.Gunwale.Plies)
			if m.Width != ply || math.Abs(2*m.Wall+m.Width-g.Width) > 1e-9 || m.Deep != m.Wall || m.Depth != c.Mortises[i].Depth || m.Bevel != c.Mortises[i].Bevel {
				t.Errorf("%s: gap %+v for %+v", name, m, c.Mortises[i])
			}
		}
	}
}

// TestTaperedHeadGoesIn: a head of the rib's thickness less its taper at the tip, turned
// by the rib's lean, is held by the slot: corner by corner it is no wider than the gap,
// and where no taper is told a full one is wider by less than a shaving.
func TestTaperedHeadGoesIn(t *testing.T) {
	for _, name := range design.ShippedNames() {
		gap, _ := byGap(t, name)
		d := gap.Design
		thick, tenon := float64(d.Ribs.Thickness), float64(d.Ribs.MortiseDepth-d.Ribs.TenonGap)
		tapered := 0
		for _, m := range gap.Gunwale.Mortises {
			a := math.Abs(m.Bevel)
			across := func(along, off float64) float64 { return along*math.Sin(a) + off*math.Cos(a) }
			// The shoulder is at 0; the tip leans out by the lean. The tip is planed on the side to
			// which it leans.
			deep := tenon / math.Cos(a)
			left, right := math.Inf(1), math.Inf(-1)
			for _, c := range [][2]float64{{0, -thick / 2}, {0, thick / 2}, {deep, -thick / 2}, {deep, thick/2 - m.Taper}} {
				left, right = math.Min(left, across(c[0], c[1])), math.Max(right, across(c[0], c[1]))
			}
			if over := right - left - m.Width; over > 0.2 || m.Taper > 0 && over > 0.01 {
				t.Errorf("%s, rib %s: the head is %.3f mm wider than its gap", name, m.Rib, over)
			}
			if m.Taper > 0 {
				tapered++
			}
		}
		if tapered == 0 {
			t.Errorf("%s: no head is tapered, though ribs lean", name)
		}
	}
}

// TestGapRefusesMuchLean: a head that would lose more than half is refused with a cure.
func TestGapRefusesMuchLean(t *testing.T) {
	d, err := design.Shipped("lake")
	if err != nil {
		t.Fatal(err)
	}
	d.Gunwale.Mortises, d.Gunwale.Tilt = design.ByGap, 0
	for i := range d.Hull.Sections {
		d.Hull.Sections[i].Flare = 18 * math.Pi / 180
	}
	_, err = frame.Build(d)
	if err == nil || !strings.Contains(err.Error(), "by gap, the head of rib") || !strings.Contains(err.Error(), `gunwale.mortises = "cut"`) {
		t.Errorf("got %v", err)
	}
}
