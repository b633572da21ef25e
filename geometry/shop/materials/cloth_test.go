package materials

import (
	"math"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// covered is what one boat takes after a change.
func covered(t *testing.T, name string, change func(*design.Design)) (*skin.Cloth, *Needs) {
	t.Helper()
	f := frametest.Shipped(t, name, change)
	c, err := skin.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	return c, &Needs{Cloth: sheetOf(f, c), Coating: coatingOf(f.Design.Skin, c)}
}

// TestRollFor: the narrowest width that is sold and covers the boat; past the widest, two
// lengths whose lap of 30 mm is counted once.
func TestRollFor(t *testing.T) {
	for _, c := range []struct {
		wide, own, roll float64
		sheets          int
	}{
		{900, 0, 1143, 1}, {1143, 0, 1143, 1}, {1144, 0, 1524, 1}, {1600, 0, 1829, 1},
		{1830, 0, 1143, 2}, {2*1143 - 30, 0, 1143, 2}, {2*1143 - 29, 0, 1524, 2},
		{1600, 1500, 1500, 2}, {1500, 1500, 1500, 1}, {3000, 800, 800, 4},
	} {
		if roll, sheets := rollFor(c.wide, c.own); roll != c.roll || sheets != c.sheets {
			t.Errorf("%g mm, own %g: %d of %g mm, want %d of %g", c.wide, c.own, sheets, roll, c.sheets, c.roll)
		}
	}
}

// TestJoined: a narrow roll takes twice the length, a seam along the boat with its thread,
// and less of each length.
func TestJoined(t *testing.T) {
	_, whole := covered(t, "lake", nil)
	_, joined := covered(t, "lake", func(d *design.Design) { d.Skin.Roll = 900 })
	if whole.Cloth.Seam != 0 || joined.Cloth.Sheets != 2 || joined.Cloth.Seam != joined.Cloth.Length {
		t.Errorf("%+v", joined.Cloth)
	}
	if more := joined.Cloth.Thread - whole.Cloth.Thread; math.Abs(more-(6*joined.Cloth.Length+1000)) > 1e-9 {
		t.Errorf("%.0f mm more thread for a seam of %.0f mm", more, joined.Cloth.Length)
	}
	if b := joined.Cloth.Bought(); math.Abs(b-900*(2*joined.Cloth.Length+joined.Cloth.Trial)) > 1e-6 {
		t.Errorf("%g mm2 bought", b)
	}
	if g := joined.Cloth.Grip; g < GripLeast || g > gripMost {
		t.Errorf("%g mm to pull by", g)
	}
}

// TestTrialCloth: where the strips that are trimmed off are too narrow for an iron, 300 mm of the
// roll come on top; cloth that is not ironed needs no such width.
func TestTrialCloth(t *testing.T) {
	for roll, want := range map[float64]float64{1524: 300, 1700: 300, 1829: 0} {
		_, n := covered(t, "lake", func(d *design.Design) { d.Skin.Roll = measure.Length(roll) })
		c := n.Cloth
		if strip := (roll - c.Wide) / 2; c.Trial != want || (strip < 150) != (want > 0) {
			t.Errorf("a roll of %g mm leaves strips of %.0f mm and %.0f mm to try on are bought", roll, strip, c.Trial)
		}
		if c.OffRoll() != c.Length+want {
			t.Errorf("%.0f mm off the roll for a sheet of %.0f", c.OffRoll(), c.Length)
		}
	}
	if _, n := covered(t, "river", nil); n.Cloth.Trial != 0 {
		t.Errorf("nylon with strips of %.0f mm: %.0f mm to try on", (n.Cloth.Sewn()-n.Cloth.Wide)/2, n.Cloth.Trial)
	}
}

// TestTrimmed: the sheet that the figure draws is the way round with what is left on both
// sides; no roll is narrower than it, and all of a roll that is only just wide enough is kept.
func TestTrimmed(t *testing.T) {
	for _, roll := range []float64{0, 1320, 900} {
		_, n := covered(t, "brook", func(d *design.Design) { d.Skin.Roll = measure.Length(roll) })
		c := n.Cloth
		sheet := float64(c.Sheets)*c.Roll - float64(c.Sheets-1)*JoinLap
		if math.Abs(c.Wide-c.Girth-2*c.Grip) > 1e-9 || c.Wide > sheet+1e-9 || c.Wide < c.Least || c.Grip < gripMost && c.Wide < sheet-1e-9 {
			t.Errorf("%+v", c)
		}
	}
}

// TestMarks: nylon is drawn by 2 % of half the way round, which the corners of the wood
// make; the greatest of them is half the greatest girth.
func TestMarks(t *testing.T) {
	over, n := covered(t, "river", nil)
	most := 0.0
	for i, m := range n.Cloth.Marks {
		pts, half := over.Ribs()[i].Corners, 0.0
		for k := 1; k < len(pts); k++ {
			half += math.Hypot(pts[k].X-pts[k-1].X, pts[k].Y-pts[k-1].Y)
		}
		if math.Abs(m.Half-half) > 1e-9 || math.Abs(m.Mark-0.98*half) > 1e-9 {
			t.Errorf("%+v, half way round %.3f", m, half)
		}
		most = math.Max(most, half)
	}
	if math.Abs(n.Cloth.Pull-0.02*n.Cloth.Girth) > 1e-9 || n.Cloth.Girth < 2*most-1e-9 {
		t.Errorf("drawn by %g over %g", n.Cloth.Pull, n.Cloth.Girth)
	}
}

// TestLies: at midship the sheet lies from the middle thread to half the girth of the
// cloth; at the tips the stem's head is as far from the thread as it is high over the
// keel's end; nowhere does it reach off the sheet.
func TestLies(t *testing.T) {
	for _, name := range design.ShippedNames() {
		over, n := covered(t, name, nil)
		stern, bow := over.Ends()
		for _, l := range n.Cloth.Lies {
			if l.Inner > l.Outer+1e-9 || l.Inner < 0 || l.Station > -stern.Toe && l.Station < bow.Toe && l.Inner != 0 || l.Outer > n.Cloth.Roll/2 {
				t.Errorf("%s: %+v", name, l)
			}
		}
		last := n.Cloth.Lies[len(n.Cloth.Lies)-1]
		if high := bow.Top - over.At(bow.Toe)[0].Y; math.Abs(last.Outer-high) > 1 {
			t.Errorf("%s: the stem's head lies %.0f mm from the middle thread, it is %.0f mm over the keel", name, last.Outer, high)
		}
	}
}

// TestSlack: a gunwale that turns through an angle between two places is longer than the
// straight way between them by about a third of half its square, for a flat arc turned
// by a on either side (a/sin a - 1 = a2/6), shares of some per cent in canoes.
func TestSlack(t *testing.T) {
	for _, name := range design.ShippedNames() {
		over, n := covered(t, name, nil)
		stern, bow := over.Ends()
		run := bow.Toe + stern.Toe
		// The breadth closes in from midship to the forefeet: an arc of that rise.
		rise := over.Width(0)/2 - (over.Width(bow.Toe)+over.Width(-stern.Toe))/4
		a := 2 * math.Atan(2*rise/run)
		arc := run * (a/math.Sin(a) - 1)
		if s := n.Cloth.Slack; s < 0.6*arc || s > 2.2*arc {
			t.Errorf("%s: %.0f mm of slack; an arc of the same breadth is %.0f mm longer", name, s, arc)
		}
	}
}

// TestPleats: polyester takes the slack of canoes; nylon takes 1 % of the length, and
// what is over lies in pleats of 20 mm, half at each end.
func TestPleats(t *testing.T) {
	for _, name := range design.ShippedNames() {
		_, p := covered(t, name, func(d *design.Design) { d.Skin.Fiber = 0 })
		if p.Cloth.Pleats != 0 || p.Cloth.Pleat != 0 || p.Cloth.TakesUp != p.Cloth.Slack {
			t.Errorf("%s: %d pleats in polyester", name, p.Cloth.Pleats)
		}
		_, y := covered(t, name, func(d *design.Design) { d.Skin.Fiber = 1 })
		over := y.Cloth.Slack - 0.01*(y.Cloth.Length-400)
		if want := int(math.Ceil(math.Max(0, over) / 40)); y.Cloth.Pleats != want {
			t.Errorf("%s: %d pleats in nylon for %.0f mm, want %d", name, y.Cloth.Pleats, over, want)
		}
		// What the fiber takes up and what lies in the pleats of both ends is all the slack.
		if sum := y.Cloth.TakesUp + 2*float64(y.Cloth.Pleats)*y.Cloth.Pleat; math.Abs(sum-y.Cloth.Slack) > 1e-9 || y.Cloth.Pleat > 20 {
			t.Errorf("%s: %.1f mm taken up of %.1f mm of slack", name, sum, y.Cloth.Slack)
		}
	}
}

// TestCoats: each coat is mixed to a tenth of a liter, and all of them together are what is
// bought, with 15 % left in tray and brush and less than a tenth over in each coat.
func TestCoats(t *testing.T) {
	for _, count := range []int{1, 2, 3, 5} {
		over, n := covered(t, "brook", func(d *design.Design) { d.Skin.Coats = count })
		k := n.Coating
		if sum := k.FirstCoat + float64(count-1)*k.EachLater; math.Abs(sum-k.Liters) > 1e-9 {
			t.Errorf("%d coats: %.3f L one by one, %.3f together", count, sum, k.Liters)
		}
		for _, l := range []float64{k.FirstCoat, k.EachLater} {
			if tenths := l * 10; math.Abs(tenths-math.Round(tenths)) > 1e-9 {
				t.Errorf("%d coats: %g L are mixed for one", count, l)
			}
		}
		if more := k.Liters - k.Liquid()*over.Area()/1e6/0.85; more < 0 || more >= 0.1*float64(count) {
			t.Errorf("%d coats: %.3f L more than the boat takes", count, more)
		}
	}
}

// TestBare: a frame without its skin buys neither cloth nor coating.
func TestBare(t *testing.T) {
	_, n := covered(t, "brook", func(d *design.Design) { d.Skin.Cloth, d.Skin.Coats = 0, 0 })
	n.cover(design.Skin{})
	for _, i := range n.Items {
		if i.Key == "cloth" || i.Key == "coating" {
			t.Errorf("%+v", i)
		}
	}
}
