package materials

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/design"
	"ribwright/geometry/shop/cutlist"
)

func needs(t *testing.T, name string) (*frame.Frame, *Needs) {
	t.Helper()
	f := frametest.Shipped(t, name, nil)
	c, err := skin.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	j, err := joint.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	return f, Count(j, c, cutlist.Heat(nil).Make(f))
}

// TestCrossings counts them by the ribs and battens of the frame.
func TestCrossings(t *testing.T) {
	for name, want := range map[string]int{"brook": 23 * 7, "river": 29 * 9} {
		f, n := needs(t, name)
		if got := n.Joints.Keel.Count + n.Joints.Stringers.Count; got != want || got != len(f.Ribs)*(2*len(f.Stringers)+1) {
			t.Errorf("%s: %d crossings, want %d", name, got, want)
		}
	}
}

// TestCloth: the sheet must cover the girth at every rib and be a grip's length
// longer than the boat; the area lies between half-round and box of the same size.
func TestCloth(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f, n := needs(t, name)
		for _, r := range f.Ribs {
			girth := 0.0
			pts := f.Corners(r)
			for i := 1; i < len(pts); i++ {
				girth += 2 * math.Hypot(pts[i].X-pts[i-1].X, pts[i].Y-pts[i-1].Y)
			}
			if c := n.Cloth; float64(c.Sheets)*c.Roll-float64(c.Sheets-1)*JoinLap < girth+120 {
				t.Errorf("%s: cloth of %.0f mm, rib %s is %.0f mm round", name, c.Roll, r.Name, girth)
			}
		}
		if n.Cloth.Length < f.Hull.Length+300 {
			t.Errorf("%s: cloth of %.0f mm for a boat of %.0f mm", name, n.Cloth.Length, f.Hull.Length)
		}
		box := f.Hull.Length * f.Skin.Girth
		if s := n.Cloth.Area / box; s < 0.6 || s > 0.95 {
			t.Errorf("%s: the outside is %.2f of length times girth", name, s)
		}
	}
}

// TestGlue adds up the glue lines of Brook by hand: three plies 36 mm tall, two
// lines in each gunwale, no scarfs; eight heads at the ends, 18 by 20 mm on both faces,
// both edges of two breasthooks of some 161 by 12 mm, and one line in each of two stems, whose
// layers are cut as the shopping list says.
func TestGlue(t *testing.T) {
	f, n := needs(t, "brook")
	want := 2*2*36*(f.Gunwale.Fore-f.Gunwale.Aft+50) + 8*2*18*20 + 4*161*12
	var thick, long, wide float64
	read(t, item(t, n, "stem-ply"), "4 blanks of %f mm, %f x %f mm", &thick, &long, &wide)
	want += 2 * long * wide
	if math.Abs(n.GlueArea-want) > 50 {
		t.Errorf("%.0f mm2 of glue line, want %.0f", n.GlueArea, want)
	}
}

// TestItems: every item says how its amount is worked out, and none is nothing.
func TestItems(t *testing.T) {
	for _, name := range design.ShippedNames() {
		_, n := needs(t, name)
		seen := map[string]bool{}
		for _, i := range n.Items {
			if !(i.Amount > 0) || i.How == "" || i.Unit == "" || i.Name == "" || seen[i.Key] {
				t.Errorf("%s: %+v", name, i)
			}
			seen[i.Key] = true
			if strings.HasPrefix(i.Key, "wood") && i.Unit != "m3" {
				t.Errorf("%s: %+v is not priced by volume", name, i)
			}
		}
		if len(seen) < 10 {
			t.Errorf("%s: only %d items", name, len(seen))
		}
	}
}

// TestGlueOfBlocks: a middle ply in blocks is glued to its neighbors as a whole one is,
// less the gaps, and each block along its strip besides. Blocks are 20 mm tall and 19 / 3
// mm thick.
func TestGlueOfBlocks(t *testing.T) {
	_, whole := needs(t, "brook")
	f := frametest.Shipped(t, "brook", func(d *design.Design) { d.Gunwale.Mortises = design.ByGap })
	c, err := skin.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	p := cutlist.Heat(nil).Make(f)
	j, err := joint.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	gap := Count(j, c, p)
	blocks, gaps := 0.0, 0.0
	for _, s := range p.Sticks {
		if s.Family == cutlist.Block {
			blocks += s.Length
		}
	}
	for _, m := range f.Gunwale.Mortises {
		gaps += 2 * m.Length
	}
	// 48 blocks have 2 mm to trim, and the four at the ends reach as far as the plies.
	want := whole.GlueArea - 20*gaps + 20*2*48 + blocks*19/3
	if math.Abs(gap.GlueArea-want) > 1 {
		t.Errorf("%.0f mm2 of glue line, want %.0f", gap.GlueArea, want)
	}
}
