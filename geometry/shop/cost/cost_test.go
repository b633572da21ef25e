package cost

import (
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/shop/materials"
	"ribwright/geometry/shop/shoptest"
	"ribwright/geometry/trial/bend"
)

func estimate(t *testing.T, name string, table *Table, change func(*design.Design)) Estimate {
	t.Helper()
	return priced(t, table, frametest.Shipped(t, name, change))
}

// priced is what a frame, its skin and the kits cost.
func priced(t *testing.T, table *Table, f *frame.Frame, kits ...kit.Kit) Estimate {
	t.Helper()
	p, n := shoptest.Needs(t, f, kits...)
	return Of(n, p, table)
}

func level(t *testing.T, name string) *Table {
	t.Helper()
	table, err := Level(name)
	if err != nil {
		t.Fatal(err)
	}
	return table
}

// TestCheckValues has what home builders say they spend on materials: some 300 for
// a pack canoe with much local material, 450 for an average boat, 700 for a large
// tandem with everything shipped. Common practice, no published source; within 15 %. That is
// frame and skin, counted in the finished boat.
func TestCheckValues(t *testing.T) {
	for _, c := range []struct {
		boat, level string
		want        float64
	}{{"brook", "local", 300}, {"lake", "mixed", 450}, {"river", "shipped", 700}} {
		f := frametest.Shipped(t, c.boat, nil)
		e := priced(t, level(t, c.level), f, shoptest.Fittings(t, f)...)
		got := e.Within(kit.FrameAndSkin)
		t.Logf("%s, %s: %.0f, %+.1f %%; ready for the water %.0f", c.boat, c.level, got, 100*(got/c.want-1), e.Within(kit.ReadyForWater))
		if math.Abs(got/c.want-1) > 0.15 {
			t.Errorf("%s at the level %s: %.0f, want %.0f", c.boat, c.level, got, c.want)
		}
		// A fitting may fill what the frame leaves of a board: the subtotal is what the frame
		// costs alone, but for cord, glue, oil and pegs that are bought in whole amounts.
		if bare := priced(t, level(t, c.level), f); math.Abs(got/bare.Likely-1) > 0.01 || bare.Within(kit.FrameAndSkin) != bare.Likely {
			t.Errorf("%s: frame and skin %.1f of the finished boat, %.1f alone", c.boat, got, bare.Likely)
		}
	}
}

// TestWithin shares three lines by hand: of 10 at 2.0 the fittings take 3 and outfits 1; of boards
// for 50 the fittings have a fifth; the last line is nobody's but the frame's.
func TestWithin(t *testing.T) {
	e := Estimate{Lines: []Line{
		{Item: materials.Item{Amount: 10, Share: kit.Share{Own: 3, Outfits: 1}}, Likely: 20},
		{Item: materials.Item{Amount: 0.01, Share: kit.Share{Own: 0.002}}, Likely: 50},
		{Item: materials.Item{Amount: 1}, Likely: 7},
	}, Likely: 77}
	for scope, want := range map[kit.Scope]float64{kit.FrameAndSkin: 12 + 40 + 7, kit.ReadyForWater: 18 + 50 + 7, kit.WithOutfits: 77} {
		if got := e.Within(scope); math.Abs(got-want) > 1e-9 {
			t.Errorf("%v: %g, want %g", scope, got, want)
		}
	}
}

// TestSubtotalsStay: what frame and skin, and the boat ready for the water, cost and take is the same
// whatever outfit is made with it, from its wood or another, with its glue.
func TestSubtotalsStay(t *testing.T) {
	for _, boat := range design.ShippedNames() {
		f := frametest.Shipped(t, boat, nil)
		own := shoptest.Fittings(t, f)
		outfit := kit.Kit{Name: "trial"}
		for _, wood := range []string{f.Design.Ribs.Species, f.Design.Gunwale.Species, "black cherry"} {
			outfit.Pieces = append(outfit.Pieces, kit.Piece{Name: "board of " + wood, Count: 3, Wood: wood, Long: 900, Wide: 140, Thick: 60, Fill: 0.8})
		}
		with := append(slices.Clone(own), outfit)
		plan, needs := shoptest.Needs(t, f, own...)
		more, takes := shoptest.Needs(t, f, with...)
		table := level(t, "mixed")
		without, all := Of(needs, plan, table), Of(takes, more, table)
		work, allWork := hours.Count(f, plan, needs, own...), hours.Count(f, more, takes, with...)
		for _, s := range []kit.Scope{kit.FrameAndSkin, kit.ReadyForWater} {
			if a, b := without.Within(s), all.Within(s); math.Abs(a-b) > 0.01 {
				t.Errorf("%s, %v: costs %.2f, with an outfit %.2f", boat, s, a, b)
			}
			if a, b := hours.Within(work, s, hours.Average), hours.Within(allWork, s, hours.Average); math.Abs(a-b) > 0.01 {
				t.Errorf("%s, %v: takes %.2f hours, with an outfit %.2f", boat, s, a, b)
			}
		}
		if all.Likely < without.Likely+1 {
			t.Errorf("%s: the outfit costs nothing", boat)
		}
	}
}

// TestTraceable adds every line up again and wants its source.
func TestTraceable(t *testing.T) {
	for _, boat := range design.ShippedNames() {
		for _, name := range Levels() {
			e := estimate(t, boat, level(t, name), nil)
			sum := 0.0
			for _, l := range e.Lines {
				sum += l.Each * l.Amount
				if l.From == "" || l.How == "" || l.Spread <= 0 {
					t.Errorf("%s, %s: %+v", boat, name, l)
				}
			}
			if math.Abs(sum-e.Likely) > 1e-9 || e.Without() != "" || !(e.Off > 0 && e.Off < e.OffAll && e.OffAll < e.Likely) {
				t.Errorf("%s, %s: lines make %.2f, estimate %+v", boat, name, sum, e)
			}
		}
	}
}

// TestSpread: two things of 100, each 30 and 40 either way, make 200, give or take
// 50 apart (3-4-5) and 70 together.
func TestSpread(t *testing.T) {
	table := &Table{Name: "x", Item: map[string]float64{"a": 10, "b": 100}, Spread: map[string]float64{"a": 0.3, "other": 0.4}}
	e := Of(&materials.Needs{Items: []materials.Item{{Key: "a", Amount: 10}, {Key: "b", Amount: 1}, {Key: "c", Name: "c", Amount: 1}}}, &cutlist.Plan{}, table)
	if math.Abs(e.Likely-200) > 1e-9 || math.Abs(e.Off-50) > 1e-9 || math.Abs(e.OffAll-70) > 1e-9 || len(e.Lines) != 3 || !e.Lines[2].Lacks || e.Without() != ", without 1 of 3 things to buy that the table has no price for" {
		t.Errorf("%+v", e)
	}
}

// TestForms: every table has a price for a sheet for forms, and forms cost as many.
func TestForms(t *testing.T) {
	for _, name := range Levels() {
		table, n := level(t, name), &materials.Needs{}
		n.AddForms([]bend.Form{{Outline: curve.Rectangle(geometry.Rect(0, 0, 700, 350)), Layers: 1}})
		e := Of(n, &cutlist.Plan{}, table)
		if e.Without() != "" || e.Likely != table.Item["form"] || e.Likely <= 0 {
			t.Errorf("%s: a form costs %+v", name, e)
		}
	}
}

// TestNamedBoards uses the price of a board where the design gives it.
func TestNamedBoards(t *testing.T) {
	e := estimate(t, "brook", level(t, "local"), func(d *design.Design) {
		d.Stock.Boards = []design.Board{{Species: "western redcedar", Length: 3700, Width: 240, Thickness: 40, Price: new(55.0)}}
	})
	if l := e.Lines[0]; l.Likely != 55 || !strings.Contains(l.From, "1 board at the prices in the design") {
		t.Errorf("%+v, want 55 for one board", l)
	}
}

// TestOwnBoards: boards at a price of 0 are owned and cost nothing; the others of their
// wood are paid for by volume, and the words say which.
func TestOwnBoards(t *testing.T) {
	at := func(boards ...design.Board) Line {
		e := estimate(t, "brook", level(t, "local"), func(d *design.Design) { d.Stock.Boards = boards })
		return e.Lines[0]
	}
	cedar := design.Board{Species: "western redcedar", Length: 3700, Width: 240, Thickness: 40, Price: new(0.0)}
	if l := at(cedar); l.Likely != 0 || l.Amount != 0 || l.How != "nothing to buy: 1 board of the ripping plan, your own" || l.From != "1 board of your own costs nothing" {
		t.Errorf("all owned: %+v", l)
	}
	few := cedar
	few.Width, few.Count = 100, 1
	more := few
	more.Count, more.Price = 0, nil
	l := at(few, more)
	each := 3.7 * 0.1 * 0.04
	if n := l.Amount / each; n < 0.99 || math.Abs(n-math.Round(n)) > 1e-9 || math.Abs(l.Likely-1500*l.Amount) > 1e-9 || !strings.Contains(l.How, "; 1 more is your own") {
		t.Errorf("some owned: %+v", l)
	}
	more.Price = new(20.0)
	if l := at(few, more); math.Abs(l.Likely-20*math.Round(l.Amount/each)) > 1e-9 || !strings.Contains(l.From, "at the prices in the design; 1 board of your own costs nothing") {
		t.Errorf("the others priced: %+v", l)
	}
}

// TestRead reads a table of one's own and refuses what is none.
func TestRead(t *testing.T) {
	table, err := Read(strings.NewReader("name = 'mine'\n[wood]\nother = 1000\n[item]\ncloth = 9\n"), "mine.toml")
	if err != nil || table.Wood["other"] != 1000 || table.Item["cloth"] != 9 {
		t.Errorf("%+v %v", table, err)
	}
	for _, c := range []struct{ text, want string }{
		{"", "mine.toml: wood.other: is missing"},
		{"[wood]\nother = -1", "mine.toml: wood.other: -1 is out of range; accepted: 0 to 1e+09"},
		{"[wood]\nother = nan", "mine.toml: wood.other: NaN is out of range"},
		{"[wood]\nother = inf", "is out of range"},
		{"[wood]\nother = 1\n[spread]\nwood = 2", "spread.wood: 2 is out of range; accepted: 0 to 1"},
		{"[wood]\nother = 'x'", "mine.toml:2: wood.other: is of the wrong kind; accepted: name, about, [wood]"},
		{"[wood]\nother = 1\n'white ahs' = 2", `mine.toml:3: wood.white ahs: species "white ahs" is not known; the nearest are white ash`},
		{"[wood]\nother = 1\nash = 2", "mine.toml:3: wood.ash"},
		{"[wood]\nother = 1\n'douglas-fir' = 2\n'Douglas fir' = 2", "is given twice"},
		{"[item]\nclth = 2\n[wood]\nother = 1", "mine.toml:2: item.clth: no such key; the nearest known key is cloth"},
		{"wood.other = 1\nspread.woods = 0.2", "mine.toml:2: spread.woods: no such key; the nearest known key is wood"},
		{"[wood]\nother = 1\n[itme]\n", "mine.toml:3: itme: no such key"},
		{"[word]\nother = 1", "mine.toml:1: word: no such key"},
		{"[wood", "mine.toml:1: no price table"},
		{strings.Repeat("#", maxFile+1), "larger than 1 MB"},
	} {
		if _, err := Read(strings.NewReader(c.text), "mine.toml"); err == nil || !strings.Contains(err.Error(), c.want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%.30q: %v, want %q", c.text, err, c.want)
		}
	}
	if _, err := Level("cheap"); err == nil || !strings.Contains(err.Error(), "local, mixed, shipped") {
		t.Errorf("Level(cheap): %v", err)
	}
}

// TestWoodsAsNamed: a table finds a wood however it spells it, and a design's own wood by its name;
// the shipped tables have no key that they would refuse in another's.
func TestWoodsAsNamed(t *testing.T) {
	table, err := Read(strings.NewReader("[wood]\nother = 1\n'Douglas Fir' = 2\nplum = 3\n"), "mine.toml")
	if err != nil || table.Wood["Douglas-fir"] != 2 || table.Wood["plum"] != 3 || table.Wood["other"] != 1 {
		t.Errorf("%+v, %v", table, err)
	}
	for _, name := range Levels() {
		text, err := Text(name)
		if err != nil {
			t.Fatal(err)
		}
		own, err := Read(strings.NewReader(string(text)), name)
		if err != nil || own.Wood["Douglas-fir"] != own.Wood["western redcedar"] || level(t, name).Wood["Douglas-fir"] != own.Wood["Douglas-fir"] {
			t.Errorf("%s: %v, %v", name, own, err)
		}
	}
}

// FuzzRead: whatever is read is a table of prices that are numbers, or is refused in one line.
func FuzzRead(f *testing.F) {
	for _, s := range []string{"", "name = 'mine'\n[wood]\nother = 1000\n[item]\ncloth = 9\n", "[wood]\nother = nan", "[wood]\nother = 1\n[spread]\nwood = 0.5", "[[["} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		table, err := Read(strings.NewReader(string(data)), "mine.toml")
		if err != nil {
			if s := err.Error(); !strings.HasPrefix(s, "mine.toml") || strings.ContainsAny(s, "\n\r") {
				t.Fatalf("%q is no one line about the file", s)
			}
			return
		}
		for _, prices := range []map[string]float64{table.Wood, table.Item} {
			for name, p := range prices {
				if !(p >= 0 && p <= 1e9) {
					t.Fatalf("%s costs %g", name, p)
				}
			}
		}
	})
}
