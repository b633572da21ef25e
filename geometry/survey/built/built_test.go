package built

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/trial/bend"
)

func frameOf(t testing.TB, name string, change func(*design.Design)) *Frame {
	t.Helper()
	b, err := bend.Of(frametest.Shipped(t, name, change))
	if err != nil {
		t.Fatal(err)
	}
	f, err := NewFrame(b)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// TestPooled: a board of 22 give or take 4, ribs that differ by 2, and five readings.
//
// Source: the product of two normal distributions, worked out by hand.
func TestPooled(t *testing.T) {
	readings := []float64{27.1, 25.4, 28.0, 26.2, 26.9}
	want := [][2]float64{{26.0800, 1.7889}, {25.7778, 1.3333}, {26.4615, 1.1094}, {26.4000, 0.9701}, {26.4952, 0.8729}}
	var all []Reading
	var each []float64
	for k, v := range readings {
		all, each = append(all, Reading{Back: v}), append(each, 4)
		if is, off := pooled(22, 16, all, each, -1); math.Abs(is-want[k][0]) > 5e-5 || math.Abs(off-want[k][1]) > 5e-5 {
			t.Errorf("after %d: %.4f +- %.4f, want %.4f +- %.4f", k+1, is, off, want[k][0], want[k][1])
		}
	}
	slices.Reverse(all)
	if is, _ := pooled(22, 16, all, each, -1); math.Abs(is-26.4952) > 5e-5 {
		t.Errorf("in another order %.4f", is)
	}
}

// TestFair: eleven even ribs of which the middle three stand 5, 6 and 7 off, with a batten
// ten times as stiff as an offset is dear, and stems too far off to be felt. Worked out with
// numpy by the normal equations of Whittaker's method.
func TestFair(t *testing.T) {
	f := &Frame{at: []float64{-1e12}}
	stand := nans(11)
	for i := range 11 {
		f.at = append(f.at, 150*float64(i))
	}
	f.at = append(f.at, 1e12)
	stand[4], stand[5], stand[6] = 5, 6, 7
	want := []float64{-0.864, 0.482, 1.914, 3.471, 5, 6, 7, 5.967, 4.112, 2.054, -0.004}
	for i, v := range f.fair(stand, 10, f.bendAt) {
		if math.Abs(v-want[i]) > 1e-3 {
			t.Errorf("rib %d: %.3f, want %.3f", i, v, want[i])
		}
	}
}

// TestFairByBumps: the same ribs with stems at the next even places as drawn, held fair by how
// far each stands off a cubic through its four neighbors, 1 -4 6 -4 1 over 6. Worked out with
// numpy by the normal equations.
func TestFairByBumps(t *testing.T) {
	f := &Frame{}
	for i := range 13 {
		f.at = append(f.at, 150*float64(i))
	}
	stand := nans(11)
	stand[4], stand[5], stand[6] = 5, 6, 7
	want := []float64{-0.329, -0.353, 0.656, 2.817, 5, 6, 7, 4.680, 1.287, -0.606, -0.720}
	for i, v := range f.fair(stand, 10, f.bumpAt) {
		if math.Abs(v-want[i]) > 1e-3 {
			t.Errorf("rib %d: %.3f, want %.3f", i, v, want[i])
		}
	}
}

// TestCommon: what ribs have in common is held to a millimeter amidships beside a chance of
// 2.2 mm a rib. Two ribs that answer alike share it evenly; of two of which one does not
// answer the rest goes to the answer. Worked out by hand, the normal equations of a regression
// with known spreads: 2.2^2 / 0.7^2 = 9.878 on the diagonal.
func TestCommon(t *testing.T) {
	f := &Frame{Report: &bend.Report{Ribs: []bend.Rib{{Point: 1}, {Point: 2}, {Point: 4}}}, ribs: []drawn{{}, {deeper: 0.5}, {deeper: 0.5}}}
	for _, c := range []struct {
		rests      []Rest
		all, point float64
	}{
		{nil, 0, 0},
		{[]Rest{{Rib: 1, Deeper: 3}}, 3 / 11.8776, 3 / 11.8776},
		{[]Rest{{Rib: 0, Deeper: 3}}, 3 / 10.8776, 0},
		{[]Rest{{Rib: 0}, {Rib: 2, Deeper: 3}}, 29.6327 / 160.832, 65.2653 / 160.832},
	} {
		if got := f.common(c.rests); math.Abs(got.All-c.all) > 1e-5 || math.Abs(got.Point-c.point) > 1e-5 {
			t.Errorf("%v: %+v, want %.5f and %.5f", c.rests, got, c.all, c.point)
		}
	}
}

// row is a line of a card as drawn, or off by some.
func (f *Frame) row(i int, beam, depth float64) Row {
	r := Row{Rib: i, Line: i + 2}
	for m := range r.Is {
		r.Is[m] = math.NaN()
	}
	r.Is[Beam], r.Is[Depth], r.Is[Free] = f.Drawn(i, Beam)+beam, f.Drawn(i, Depth)+depth, f.Drawn(i, Free)
	return r
}

// TestOneRibProud: a rib 8 mm too deep shows as a bump of 8 there and of 5.3 and 1.3 beside
// it, as 1 -4 6 -4 1 says; it alone wants something done, and by as much as the section
// solved anew is longer.
func TestOneRibProud(t *testing.T) {
	f := frameOf(t, "lake", nil)
	var card []Row
	const at = 10
	for i := range f.ribs {
		card = append(card, f.row(i, 0, map[bool]float64{true: 8}[i == at]))
	}
	r := f.Of(card)
	for i, b := range r.Ribs {
		want := map[int]float64{0: 8, 1: -8 * 4. / 6, 2: 8 / 6.}[max(i-at, at-i)]
		if i > 0 && i < len(f.ribs)-1 && (i > 1 && i < len(f.ribs)-2) && math.Abs(b.DepthBump-want) > 1e-6 {
			t.Errorf("rib %d: bump %.2f, want %.2f", i, b.DepthBump, want)
		}
		if (b.Verdict != Leave) != (i == at) {
			t.Errorf("rib %d: %s", i, b.Verdict)
		}
	}
	if b := r.Ribs[at]; b.Verdict != Shorten || math.Abs(b.By-8*f.curb[at].Depth) > 1e-6 {
		t.Errorf("rib %d: %s by %.2f, want shorten by %.2f", at, b.Verdict, b.By, 8*f.curb[at].Depth)
	}
	if r.Off.Fix != 1 || !r.Done() || r.Fair() {
		t.Errorf("fix %d, done %v, fair %v", r.Off.Fix, r.Done(), r.Fair())
	}
}

// TestFarOff: ribs that stand farther off than hands come are measured again, each alone or
// all alike, and none that remains follows them: it is set as if they did not stand. In a
// frame that stands as a whole, what its neighbors bear out is left.
func TestFarOff(t *testing.T) {
	f := frameOf(t, "lake", nil)
	mid := f.TestRib()
	near := f.Of([]Row{f.row(mid, 0, 1)})
	set := map[int]float64{}
	for _, m := range near.Remaining {
		set[m.Rib] = m.Length
	}
	for _, far := range [][]Row{{f.row(mid-6, 0, 31), f.row(mid+6, 0, 37)}, {f.row(mid+5, 0, 33), f.row(mid+6, 0, 32)}} {
		r := f.Of(append([]Row{f.row(mid, 0, 1)}, far...))
		if r.Off.Again != 2 || r.Off.Fix != 0 || r.Fair() {
			t.Errorf("%d to be measured again, %d to be mended", r.Off.Again, r.Off.Fix)
		}
		for _, m := range r.Remaining {
			if math.Abs(m.Length-set[m.Rib]) > 1e-6 {
				t.Errorf("rib %s is set %.2f mm long, and %.2f where nothing is far off", f.name(m.Rib), m.Length, set[m.Rib])
			}
		}
	}
	var all, five []Row
	for i := range f.ribs {
		row := f.row(i, 0, 20*math.Cos(math.Pi/2*f.at[i+1]/f.at[len(f.at)-1]))
		if all = append(all, row); i >= mid-2 && i <= mid+2 {
			five = append(five, row)
		}
	}
	if r := f.Of(five); r.Off.Again != 5 {
		t.Errorf("five ribs 20 mm deep: %d to be measured again", r.Off.Again)
	}
	if r := f.Of(all); !r.Fair() {
		t.Errorf("all ribs deep along a smooth line: %d to be measured again", r.Off.Again)
	}
	if r := f.Of([]Row{f.row(mid-1, 0, 0), f.row(mid, 0, 0), f.row(mid+1, 0, 30)}); r.Off.Again != 1 || r.Off.Fix != 0 {
		t.Errorf("beside one far off: %d to be measured again, %d to be mended", r.Off.Again, r.Off.Fix)
	}
}

// TestSmoothIsLeft: a frame that is wide and deep along a smooth line is off and fair, and a
// frame as drawn but for what a tape misreads is left alone.
func TestSmoothIsLeft(t *testing.T) {
	rnd := rand.New(rand.NewPCG(18, 1))
	for _, name := range []string{"lake", "brook", "river"} {
		f := frameOf(t, name, nil)
		for k := range 40 {
			far := 0.0
			if k%2 == 1 {
				far = 12
			}
			var card []Row
			for i := range f.ribs {
				bow := math.Cos(math.Pi / 2 * f.at[i+1] / f.at[len(f.at)-1])
				card = append(card, f.row(i, far*bow+0.7*rnd.NormFloat64(), far*bow/2+0.7*rnd.NormFloat64()))
			}
			if r := f.Of(card); !r.Fair() || len(r.Remaining) > 0 {
				t.Errorf("%s, %g mm off: %d ribs want something done", name, far, r.Off.Fix)
			}
		}
	}
}

// TestOffCenter: a rib whose bilge is 290 mm out to port and 245 to starboard wants its middle
// moved by half the difference, whether its neighbors stand or not.
func TestOffCenter(t *testing.T) {
	f := frameOf(t, "lake", nil)
	mid := f.TestRib()
	for _, beside := range [][]int{nil, {-2, -1, 1, 2}} {
		row := f.row(mid, 0, 0)
		row.Is[BilgePort], row.Is[BilgeStarboard] = 290, 245
		card := []Row{row}
		for _, d := range beside {
			card = append(card, f.row(mid+d, 0, 0))
		}
		for _, r := range f.Of(card).Ribs {
			if want := r.Rib == mid; (r.Verdict == Center) != want || want && math.Abs(r.By-22.5) > 1e-9 {
				t.Errorf("with %d beside: rib %s: %s by %.1f mm", len(beside), f.name(r.Rib), r.Verdict, r.By)
			}
		}
	}
}

// TestNothingOff: a card as drawn asks the ribs that remain to be as drawn.
func TestNothingOff(t *testing.T) {
	f := frameOf(t, "river", nil)
	mid := f.TestRib()
	r := f.Of([]Row{f.row(mid, 0, 0), f.row(mid+1, 0, 0)})
	if len(r.Remaining) != len(f.ribs)-2 || r.Remaining[0].Rib != mid-1 {
		t.Fatalf("%d remain, first %d", len(r.Remaining), r.Remaining[0].Rib)
	}
	if math.Abs(r.Spring.Now-r.Spring.Prior) > 1e-6 {
		t.Errorf("springback %.4f, want %.4f", r.Spring.Now, r.Spring.Prior)
	}
	for _, m := range r.Remaining {
		drawn := f.Frame.Ribs[m.Rib]
		if math.Abs(m.Length-drawn.Length) > 1e-6 || math.Abs(m.Free-f.Drawn(m.Rib, Free)) > 1e-6 || math.Abs(m.Hot-f.Drawn(m.Rib, Hot)) > 0.5 {
			t.Errorf("rib %s: %+v", drawn.Name, m)
		}
	}
}

// TestStrange: a board far from what was expected is told and trusted less.
func TestStrange(t *testing.T) {
	f := frameOf(t, "lake", nil)
	var card []Row
	for k := range 4 {
		row := f.row(f.TestRib()+k, 0, 0)
		row.Is[Free] += 14 * f.Report.Ribs[row.Rib].Point
		card = append(card, row)
	}
	r := f.Of(card)
	if !r.Spring.Strange || r.Spring.Now < 0.18 || r.Spring.Now > 0.24 {
		t.Errorf("%+v", r.Spring)
	}
	if r.Ribs[0].Verdict != OverBend || !(r.Ribs[0].Hot < f.Drawn(r.Ribs[0].Rib, Hot)) {
		t.Errorf("%+v", r.Ribs[0])
	}
}

// TestSlips: bad cards are caught by name with their line.
func TestSlips(t *testing.T) {
	f := frameOf(t, "brook", nil)
	const head = "rib,beam_mm,depth_mm,blank_mm,free_width_mm,bilge_port_mm,bilge_starboard_mm,broken\n"
	sides := head
	for i, name := range []string{"A2", "A1", "M", "F1", "F2"} {
		port, starboard := 275, 260
		if i == 2 {
			port, starboard = starboard, port
		}
		sides += fmt.Sprintf("%s,,,,,%d,%d,\n", name, port, starboard)
	}
	for _, c := range []struct{ name, card, line, says string }{
		{"ten times", head + "M,720,285\nF1,7180,286\n", ":3:", "nought too many"},
		{"a tenth", head + "M,72,285\n", ":2:", "centimeters"},
		{"inches among mm", head + "M,28.35,11.2\n", ":2:", "inches in a column of millimeters"},
		{"mm among inches", "rib,beam_in\nM,720\n", ":2:", "millimeters in a column of inches"},
		{"half a beam", head + "\n# remark\nM,360,285\n", ":4:", "half of it"},
		{"below zero", head + "M,-720,285\n", ":2:", "below zero"},
		{"far off", head + "M,560,285\n", ":2:", "measure again"},
		{"twice", head + "M,720,285\nF1,718,286\nm,721,285\n", ":4:", "stands on line 2 already"},
		{"no such rib", head + "F40,720,285\n", ":2:", "no rib \"F40\"; accepted: A11 to F11"},
		{"no rib", head + ",720,285\n", ":2:", "no rib is named"},
		{"changed over", sides, ":4:", "port and starboard look changed over"},
		{"shifted", head + "M,720,285\nF8,563,299\n", ":3:", "those of rib F7"},
		{"depths from the straightedge", head + "M,720,317\nF1,719,318\n", ":2:", "all depths are 32 mm too large"},
		{"the same taken off twice", "rib,straightedge_mm\nM,285\nF1,286\n", ":2:", "all depths are 32 mm too small"},
		{"the same in inches", "rib,depth_in\nM,12 1/2\n", ":2:", "straightedge_in"},
		{"a depth far off by the straightedge", "rib,straightedge_mm\nM,217\n", ":2:", "217 mm is 100 mm from the 317 mm"},
		{"a depth twice", "rib,straightedge_mm,depth_mm\nM,317,285\n", ":2:", "given twice"},
		{"letters", head + "M,about 720,285\n", ":2:", "is no number"},
		{"a comma for a point", head + "M,720,5,285,0,0,0,0,0,0\n", ":2:", ""},
		{"too many cells", "rib,beam_mm\nM,720,5\n", ":2:", "more cells"},
		{"a column unknown", "rib,width_mm\nM,720\n", ":1:", "column \"width_mm\" is not known"},
		{"a column twice", "rib,beam_mm,beam_in\nM,720,28\n", ":1:", "twice"},
		{"no column of ribs", "beam_mm\n720\n", ":1:", "no column is called rib"},
		{"broken how", head + "M,,,,,,,perhaps\n", ":2:", "accepted: yes, no"},
		{"moisture", "rib,moisture_percent\nM,2300\n", ":2:", "out of range"},
		{"empty", "", "", "is empty"},
		{"nothing filled", head + "M,,,,,,,\n", "", "no rib that was measured"},
		{"no text", "rib\x00", "", "no card"},
	} {
		_, err := Read([]byte(c.card), "card.csv", f)
		if err == nil || !strings.Contains(err.Error(), "card.csv"+c.line) || !strings.Contains(err.Error(), c.says) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %v; want line %q and %q", c.name, err, c.line, c.says)
		}
	}
}

// TestRead: any columns, any order, any cells, inches with fractions, other separators.
func TestRead(t *testing.T) {
	f := frameOf(t, "brook", nil)
	for _, card := range []string{
		"rib,beam_mm,depth_mm\nF1,717,286\nM,720.5,285\n",
		"\uFEFFrib;depth_mm;beam_mm\r\nF1;286;717\r\nM;285;720.5\r\nF2;;\r\n",
		"rib,beam_mm,straightedge_mm\nF1,717,318.4\nM,720.5,317.4\n",
		"beam_mm,rib,depth_in\n717,f1,11 1/4\n720.5,\"M\",11.2205\n",
	} {
		rows, err := Read([]byte(card), "card.csv", f)
		if err != nil || len(rows) != 2 {
			t.Fatalf("%q: %v, %d rows", card, err, len(rows))
		}
		r := rows[1]
		if f.name(r.Rib) != "M" || math.Abs(r.Is[Beam]-720.5) > 0.01 || math.Abs(r.Is[Depth]-285) > 0.01 || !math.IsNaN(r.Is[Free]) || r.Line != 3 {
			t.Errorf("%q: %+v", card, r)
		}
	}
}

// TestAsBuilt: a frame that came out along lines which a design can have, 9 mm wider
// amidships and 6 mm deeper with a little less rocker, comes back as a design that lies
// within a millimeter and a half of every rib; and the frame as it is has the ribs measured.
func TestAsBuilt(t *testing.T) {
	for _, name := range []string{"lake", "river"} {
		f := frameOf(t, name, nil)
		other := frametest.Shipped(t, name, func(d *design.Design) {
			d.Hull.Beam += 9
			d.Hull.Depth += 6
			d.Hull.RockerBow -= 4
			d.Hull.RockerStern -= 4
		})
		var card []Row
		for i, r := range other.Ribs {
			row := f.row(i, 0, 0)
			row.Is[Beam], row.Is[Depth] = 2*r.Section.HalfBreadth, r.Section.Depth
			card = append(card, row)
		}
		r := f.Of(card)
		d, err := r.Design()
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(d.Beam.Worst) > 1.5 || math.Abs(d.Depth.Worst) > 1.5 {
			t.Errorf("%s: worst %.2f in beam, %.2f in depth", name, d.Beam.Worst, d.Depth.Worst)
		}
		if d.EditionName() == f.Frame.Design.EditionName() || !strings.Contains(d.Changed, "as built") {
			t.Errorf("edition %q, changed %q", d.EditionName(), d.Changed)
		}
		made, err := r.AsItIs()
		if err != nil {
			t.Fatal(err)
		}
		for i, rib := range made.Ribs {
			if math.Abs(rib.Section.HalfBreadth-other.Ribs[i].Section.HalfBreadth) > 1e-9 || math.Abs(rib.Section.Depth-other.Ribs[i].Section.Depth) > 1e-9 {
				t.Errorf("%s: rib %s is %v wide, %v deep", name, rib.Name, 2*rib.Section.HalfBreadth, rib.Section.Depth)
			}
			drawn := f.Frame.Ribs[i].Section // the gunwales lie as drawn, on their trestles
			if off := rib.Section.KeelZ + rib.Section.Depth - drawn.KeelZ - drawn.Depth; math.Abs(off) > 1e-9 {
				t.Errorf("%s: the gunwale at rib %s lies %v mm higher", name, rib.Name, off)
			}
		}
	}
}

// TestOddFrames: no stringers, one stringer, few ribs, no neutral set, a flat bottom: what
// can be judged is, and nothing is NaN that is told to be set.
func TestOddFrames(t *testing.T) {
	for name, change := range map[string]func(*design.Design){
		"no stringers": func(d *design.Design) { d.Stringers.At = nil },
		"few ribs":     func(d *design.Design) { d.Ribs.Pitch = 400; d.Ribs.FromBow, d.Ribs.FromStern = 1200, 1200 },
		"no thwarts":   func(d *design.Design) { d.Thwarts = nil },
		"off midship":  func(d *design.Design) { d.Ribs.AtMidship, d.Thwarts, d.Seats[0].At = false, nil, -453.5 },
		"flat bottom": func(d *design.Design) {
			for i := range d.Hull.Sections {
				d.Hull.Sections[i].BottomTurn = 0
			}
		},
		"no springback": func(d *design.Design) { d.Bending.Springback = 0 },
	} {
		f := frameOf(t, "lake", change)
		mid := f.TestRib()
		card := []Row{f.row(mid, 6, -4), f.row(mid+1, -3, 7)}
		card[1].Is[Free] += 20
		card[0].Is[Hot] = 2 * f.Frame.Ribs[mid].Length // as no rib is held
		card = append(card, Row{Rib: 0, Line: 9, Is: f.row(0, 0, 0).Is, Broken: true})
		r := f.Of(card)
		for _, m := range r.Remaining {
			for _, v := range []float64{m.Length, m.Blank, m.Free, m.Hot, m.HotOff, m.Longer} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Errorf("%s: rib %s: %+v", name, f.name(m.Rib), m)
				}
			}
		}
		if s := r.Spring; math.IsNaN(s.Now+s.Off+s.Next) || s.Now < -0.5 || s.Now > 0.9 {
			t.Errorf("%s: %+v", name, s)
		}
		if r.Ribs[0].Verdict != Replace || len(r.Remaining) != len(f.ribs)-2 {
			t.Errorf("%s: broken rib: %s; %d of %d remain", name, r.Ribs[0].Verdict, len(r.Remaining), len(f.ribs))
		}
		if _, err := r.AsItIs(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if _, err := r.Design(); err != nil {
			t.Logf("%s: no design: %v", name, err)
		}
	}
}

// FuzzCard: whatever is read is a card of ribs that the frame has, once each, with figures
// that are numbers or nothing, or is refused in one line.
func FuzzCard(f *testing.F) {
	frame := frameOf(f, "brook", nil)
	for _, s := range []string{"", "rib,beam_mm,depth_mm\nF1,717,286\nM,720.5,285\n", "\uFEFFrib;depth_mm;beam_mm\r\nF1;286;717\r\n", "rib,beam_in\nM,28 3/8\n", "rib,broken\nM,yes\nM,no\n", "rib\x00"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		rows, err := Read(data, "card.csv", frame)
		if err != nil {
			if s := err.Error(); !strings.HasPrefix(s, "card.csv") || strings.ContainsAny(s, "\n\r") {
				t.Fatalf("%q is no one line about the card", s)
			}
			return
		}
		met := map[int]bool{}
		for _, r := range rows {
			if r.Rib < 0 || r.Rib >= len(frame.Frame.Ribs) || met[r.Rib] {
				t.Fatalf("rib %d of %d, met before: %v", r.Rib, len(frame.Frame.Ribs), met[r.Rib])
			}
			met[r.Rib] = true
			for _, v := range r.Is {
				if math.IsInf(v, 0) || math.Abs(v) > 1e4 {
					t.Fatalf("rib %d: %g", r.Rib, v)
				}
			}
		}
	})
}
