package materials

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/shop/cutlist"
)

// item returns the thing that a price table knows by a key.
func item(t *testing.T, n *Needs, key string) Item {
	t.Helper()
	for _, i := range n.Items {
		if i.Key == key {
			return i
		}
	}
	t.Fatalf("no %s is bought", key)
	return Item{}
}

// read takes the figures out of words that say how an amount is worked out.
func read(t *testing.T, i Item, form string, into ...any) {
	t.Helper()
	if _, err := fmt.Sscanf(i.How, form, into...); err != nil {
		t.Fatalf("%s: %q does not read %q: %v", i.Key, i.How, form, err)
	}
}

// upto fails the test unless the amount is the reckoned one, rounded up to a step;
// slack is what the figures of the words lost by rounding.
func upto(t *testing.T, i Item, reckoned, step, slack float64) {
	t.Helper()
	if i.Amount < reckoned-slack || i.Amount > reckoned+step+slack {
		t.Errorf("%s: %g %s bought, but %q makes %.3f", i.Key, i.Amount, i.Unit, i.How, reckoned)
	}
}

// TestAmountsAsTold buys again what the list says: each amount is what a builder
// reckons from the words beside it, rounded up to what shops sell.
func TestAmountsAsTold(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f, n := needs(t, name)
		var area, rate, by float64
		var coats int

		i := item(t, n, "coating")
		read(t, i, "%d coats on %f m2, each mixed by itself: %f L for the first, %f L for each later one", &coats, &area, &rate, &by)
		upto(t, i, rate+by*float64(coats-1), 0, 1e-9)

		i = item(t, n, "oil")
		read(t, i, "%f m2 of wood, %d coats at %f m2/L", &area, &coats, &by)
		upto(t, i, area*float64(coats)/by, 0.1, 0.02)

		i = item(t, n, "glue")
		read(t, i, "%f m2 of glue line at %f kg/m2, half as much again", &area, &rate)
		upto(t, i, area*rate*1.5, 0.1, 0.005)

		i = item(t, n, "tack")
		read(t, i, "every %f mm along both gunwales", &by)
		upto(t, i, 2*(f.Gunwale.Fore-f.Gunwale.Aft)/by, 2, 1e-9)

		i = item(t, n, "thread")
		read(t, i, "%f times %f m of seam, and %f m at each of its ends", &rate, &area, &by)
		upto(t, i, rate*area+2*2*by, 1, 0.05)

		// A rib has two heads, each pegged; a breasthook six pegs; a bolt fills every hole.
		holes := 0
		for _, c := range f.Thwarts {
			holes += len(c.Holes)
		}
		upto(t, item(t, n, "peg"), float64(2*len(f.Ribs)+2*6), 0, 1e-9)
		upto(t, item(t, n, "bolt-5"), float64(holes), 0, 1e-9)
		upto(t, item(t, n, "screw"), 4, 0, 1e-9)
		for _, key := range []string{"peg", "bolt-5", "screw"} { // the sizes add up to all of them
			sum, i := 0.0, item(t, n, key)
			for _, m := range regexp.MustCompile(`(\d+) of [0-9.]+(?: x | mm for holes of )\d+ mm`).FindAllStringSubmatch(i.How, -1) {
				n, _ := strconv.ParseFloat(m[1], 64)
				sum += n
			}
			if sum != i.Amount {
				t.Errorf("%s: %q makes %g, %g are bought", name, i.How, sum, i.Amount)
			}
		}

		sheet := n.Cloth.Bought() / 1e6
		i = item(t, n, "cloth")
		read(t, i, "%f m off a roll %f m wide", &area, &rate)
		upto(t, i, area*rate, 0.1, 0.01)
		if sheet < n.Cloth.Area/1e6 {
			t.Errorf("%s: a sheet of %.2f m2 for %.2f m2 of boat", name, sheet, n.Cloth.Area/1e6)
		}
	}
}

// TestCordOfBrook reckons Brook's cord by hand: ribs of 20 x 6 mm cross stringers of
// 20 x 10 and a keel of 40 x 12; four turns, one round both sticks, 200 mm of tails, a
// clove hitch of two rounds of the rib and 20 mm to the next corner, cut to the next 50 mm, a tenth to spare; at each end one lashing of the foot, one of the gunwales and three of
// pairs of stringers, each some 0.7 to 1.1 m.
func TestCordOfBrook(t *testing.T) {
	f, n := needs(t, "brook")
	cut := func(mm float64) float64 { return 50 * math.Ceil(mm/50) }
	begin := 2*2*(20+6) + 20.0
	stringer := cut(4*(2*math.Sqrt(20*20+20*20)+2*(6+10)) + 2*(20+20) + 200 + begin)
	keel := cut(4*(2*math.Sqrt(20*20+40*40)+2*(6+12)) + 2*(20+40) + 200 + begin)
	ribs := float64(len(f.Ribs))
	ends := 10 * 0.9
	want := 1.1 * (ribs*(6*stringer+keel)/1000 + ends)
	upto(t, item(t, n, "cord"), want, 1, 1.1*10*0.2)
	var crossings, lashings int
	read(t, item(t, n, "cord"), "%d crossings, %d lashings at the ends, a tenth to spare", &crossings, &lashings)
	if crossings != 7*len(f.Ribs) || lashings != 10 {
		t.Errorf("%d crossings and %d lashings at the ends, want %d and 10", crossings, lashings, 7*len(f.Ribs))
	}
}

// TestWoodIsItsBoards: what is bought of each wood is the boards of the plan.
func TestWoodIsItsBoards(t *testing.T) {
	f, n := needs(t, "river")
	for _, w := range cutlist.Heat(nil).Make(f).Woods {
		sum := 0.0
		for _, b := range w.Boards {
			sum += b.Board.Length * b.Board.Width * b.Board.Thickness * 1e-9
		}
		if got := item(t, n, "wood: "+w.Species).Amount; math.Abs(got-sum) > 1e-9 {
			t.Errorf("%s: %.4f m3, its boards are %.4f", w.Species, got, sum)
		}
	}
}

// TestOutfitsAdd: what an outfit is bought for is added to what is bought already,
// and two outfits take twice as much of what both need.
func TestOutfitsAdd(t *testing.T) {
	k := kit.Kit{Name: "trial", Things: []kit.Thing{{Key: "bolt", Name: "bolts", Amount: 4, Unit: "each", How: "four"}, {Key: "cord", Name: "more cord", Amount: 7, Unit: "m", How: "seven"}}}
	f, n := needs(t, "brook")
	c, err := skin.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	both := Count(n.Joints, c, cutlist.Heat(nil).Make(f), k, k)
	if got, want := item(t, both, "cord").Amount, item(t, n, "cord").Amount+14; math.Abs(got-want) > 1e-9 {
		t.Errorf("%g m of cord, want %g", got, want)
	}
	if got := item(t, both, "bolt").Amount; got != 8 {
		t.Errorf("%g bolts, want 8", got)
	}
}

// TestStemBlanks: what is bought of plywood for stems holds each layer with its longer side
// along the grain, and the blanks that the words name make the area.
func TestStemBlanks(t *testing.T) {
	f, n := needs(t, "river")
	i := item(t, n, "stem-ply")
	sum := 0.0
	for _, m := range regexp.MustCompile(`(\d+) blanks? of \d+ mm, (\d+) x (\d+) mm`).FindAllStringSubmatch(i.How, -1) {
		var v [3]float64
		for k := range v {
			v[k], _ = strconv.ParseFloat(m[k+1], 64)
		}
		if v[1] < v[2] {
			t.Errorf("%q: the longer side is not first", i.How)
		}
		sum += v[0] * v[1] * v[2] / 1e6
	}
	upto(t, i, sum, 0.05, 1e-9)
	for _, s := range []frame.Stem{f.Stern, f.Bow} {
		if least := math.Abs(curve.Area(s.Outline.Flatten(0.1))) * s.Thickness / 12 / 1e6; 2*least > i.Amount {
			t.Errorf("two stems of %.3f m2 from %g m2", least, i.Amount)
		}
	}
}

// TestNamesOfBoth: foam of pads and foam of flotation is bought as closed-cell foam, whichever comes
// first, of one boat and of several.
func TestNamesOfBoth(t *testing.T) {
	pad, side := kit.Thing{Key: "foam", Name: "closed-cell foam for pads", Amount: 4, Unit: "L", How: "pads"}, kit.Thing{Key: "foam", Name: "closed-cell foam", Amount: 40, Unit: "L", How: "sides"}
	var boats [][]Item
	for _, things := range [][]kit.Thing{{pad, side}, {side, pad}, {pad}, {side}} {
		n := &Needs{}
		for _, v := range things {
			n.fitted([]kit.Kit{{Name: v.How, Things: []kit.Thing{v}}})
		}
		if want := map[bool]string{true: pad.Name, false: side.Name}[len(things) == 1 && things[0] == pad]; len(n.Items) != 1 || n.Items[0].Name != want {
			t.Errorf("%+v, want %q", n.Items, want)
		}
		boats = append(boats, n.Items)
	}
	for _, of := range [][][]Item{{boats[2], boats[3]}, {boats[3], boats[2]}} {
		if all := Together(of, &cutlist.Plan{}).Items; len(all) != 1 || all[0].Name != side.Name || all[0].Amount != 44 {
			t.Errorf("%+v", all)
		}
	}
	if got := bothNames("bolts M5", "screws"); got != "bolts M5, screws" {
		t.Errorf("%q", got)
	}
}
