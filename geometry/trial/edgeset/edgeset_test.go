package edgeset

import (
	"math"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// TestAgainstReference holds the frame to the figures of an independent program: a boat
// unlike at its ends, given by formulas. testdata/reference/edgeset.py, its saved result.
func TestAgainstReference(t *testing.T) {
	m := Model{
		Gunwales: Chord{-2400, 2450, func(x float64) float64 { return 356 + 95*(x/2450)*(x/2450) + 10*math.Pow(x/2450, 3) }, 3.6e9, 2.4e7},
		Keel: Chord{-2150, 2180, func(x float64) float64 {
			over := math.Max(0, math.Abs(x)-1050) / 1130
			return 40 * over * over
		}, 1.3e8, 8e6},
		Sets: [2]Set{{900, 3e-5}, {900, 4.3e-5}}, Level: 1050,
	}
	for x := -1950.0; x <= 1950; x += 150 {
		m.Posts = append(m.Posts, Post{At: x, Held: 2 + 6*(x/2000)*(x/2000)})
	}
	for _, c := range []struct {
		name string
		held Held
		want Rest
	}{
		{"feet loose", Held{Ends: true, Ribs: true}, Rest{Pair{-33.0048, -49.8527}, Pair{-22.3172, -32.5958}, -0.3614, 0, 0, 3.72}},
		{"ends turn", Held{Feet: true, Ribs: true}, Rest{Pair{1.3779, -13.9565}, Pair{-0.8854, -12.0663}, -0.3545, 0, 121.27, 50.78}},
		{"ends held", Held{Feet: true, Ends: true, Ribs: true}, Rest{Pair{30.3788, 16.8078}, Pair{27.4564, 18.6375}, -0.3566, 0, 222.90, 3.27}},
	} {
		got := rest(t, m, c.held)
		for i, end := range []string{"stern", "bow"} {
			near(t, c.name+", sheer, "+end, got.Sheer[i], c.want.Sheer[i], 0.002)
			near(t, c.name+", rocker, "+end, got.Rocker[i], c.want.Rocker[i], 0.002)
		}
		near(t, c.name+", depth", got.Depth, c.want.Depth, 0.001)
		near(t, c.name+", thrust", got.Thrust, c.want.Thrust, 0.02)
		near(t, c.name+", pull", got.Pull, c.want.Pull, 0.02)
	}
}

// TestPostOfArch holds a half round rib to the closed forms of a two-hinged arch with a
// load at its crown: of radius r, P r³/(E I) (3 pi/8 - 1) where its feet slide and
// P r³/(E I) (3 pi² - 8 pi - 4)/(8 pi) where they cannot. Castigliano; Timoshenko and
// Young, Theory of Structures.
func TestPostOfArch(t *testing.T) {
	const r, moe, width, thick = 350.0, 12000.0, 22.0, 6.0
	rib := frame.Rib{Thickness: thick, Section: hull.Section{Half: curve.Chain{curve.Turned(r, math.Pi/2)}}}
	p := postOf(rib, moe, width)
	flex := moe * width * thick * thick * thick / 12
	free := flex / (r * r * r * (3*math.Pi/8 - 1))
	held := flex / (r * r * r * (3*math.Pi*math.Pi - 8*math.Pi - 4) / (8 * math.Pi))
	near(t, "feet slide", p.Free/free, 1, 1e-3)
	near(t, "feet held", p.Held/held, 1, 5e-3) // the wood gives along itself too
}

func frameOf(t *testing.T, name string, change func(*design.Design)) *frame.Frame {
	t.Helper()
	f := frametest.Shipped(t, name, change)
	if p := f.Design.Check(); p != nil {
		t.Fatalf("%s: %s", p.Key, p.Text)
	}
	return f
}

func set(bow, stern, from float64) func(*design.Design) {
	return func(d *design.Design) {
		d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft, d.Gunwale.EdgeSetFrom = measure.Length(bow), measure.Length(stern), measure.Length(from)
	}
}

// TestMoment of a gunwale by hand: E h³ w/12 over R = run²/(2 rise).
func TestMoment(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frameOf(t, name, nil)
		r, err := Of(f)
		if err != nil {
			t.Fatal(err)
		}
		wood, err := f.Design.Wood(f.Design.Gunwale.Species)
		if err != nil {
			t.Fatal(err)
		}
		g := f.Design.Gunwale
		_, fore := f.Gunwale.Line.Ends()
		run := fore - float64(g.EdgeSetFrom)
		want := wood.MOE * float64(g.Width*g.Height*g.Height*g.Height) / 12 * 2 * float64(g.EdgeSetBow) / (run * run)
		near(t, name, r.Moment[1]/want, 1, 1e-9)
	}
}

// TestJoinedHoldsMore: joined feet keep more of the shape than loose ones do, which let
// most of the rise go; the band is in order; no set is no report.
func TestJoinedHoldsMore(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frameOf(t, name, nil)
		r, err := Of(f)
		if err != nil {
			t.Fatal(err)
		}
		for i, s := range []hull.EdgeSet{f.Hull.Sheer.SternSet, f.Hull.Sheer.BowSet} {
			if r.Loose.Sheer[i] > -0.9*s.Rise || r.Loose.Sheer[i] < -1.02*s.Rise {
				t.Errorf("%s: of %.0f mm of rise %.1f mm are let go", name, s.Rise, r.Loose.Sheer[i])
			}
			if !(r.Loose.Sheer[i] < r.Free.Sheer[i] && r.Free.Sheer[i] < r.Usual.Sheer[i] && r.Usual.Sheer[i] < r.Fast.Sheer[i]) {
				t.Errorf("%s: the band is out of order: %+v %+v %+v", name, r.Free, r.Usual, r.Fast)
			}
		}
		if r, err := Of(frameOf(t, name, set(0, 0, 500))); r != nil || err != nil {
			t.Errorf("%s without a set: %+v, %v", name, r, err)
		}
	}
}

// TestSymmetric: a boat alike at its ends stays so; with one end set the profile is told
// for both.
func TestSymmetric(t *testing.T) {
	r, err := Of(frameOf(t, "lake", nil))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "sheer", r.Usual.Sheer[0], r.Usual.Sheer[1], 1e-6)
	near(t, "rocker", r.Usual.Rocker[0], r.Usual.Rocker[1], 1e-6)
	one, err := Of(frameOf(t, "river", set(60, 0, 900)))
	if err != nil {
		t.Fatal(err)
	}
	if one.Moment[0] != 0 || !(one.Moment[1] > 0) || one.Loose.Sheer[1] > -50 || math.Abs(one.Loose.Sheer[0]) > 5 {
		t.Errorf("bow set alone: %+v, loose %+v", one.Moment, one.Loose)
	}
}

// TestCure: the rise that is told is held to the limit when the boat is drawn anew, and
// so is the present rise from where it is told to begin.
func TestCure(t *testing.T) {
	f := frameOf(t, "river", set(80, 80, 1100))
	r, err := Of(f)
	if err != nil {
		t.Fatal(err)
	}
	if r.Off() <= MostOff {
		t.Fatalf("80 mm are held to %.1f mm", r.Off())
	}
	c, err := r.Cure(1)
	if err != nil {
		t.Fatal(err)
	}
	less, err := Of(frameOf(t, "river", set(c.Rise[1], c.Rise[0], 1100)))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "with less rise", less.Off(), MostOff, 1.5) // the sheer itself is lower then
	if !c.Found {
		t.Fatal("no place to begin is found")
	}
	nearer, err := Of(frameOf(t, "river", set(80, 80, c.Begin)))
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%+v", c)
	if w := nearer.Off(); w > MostOff+0.4 {
		t.Errorf("begun at %.0f mm: %.1f mm", c.Begin, w)
	}
}

// TestOddBoats: none falls over.
func TestOddBoats(t *testing.T) {
	for name, change := range map[string]func(*design.Design){
		"few ribs":     func(d *design.Design) { d.Ribs.Pitch = 400 },
		"no straight":  func(d *design.Design) { d.Hull.KeelStraight = 0 },
		"no rocker":    func(d *design.Design) { d.Hull.RockerBow, d.Hull.RockerStern = 0, 0 },
		"from midship": set(30, 30, 0),
		"far out":      set(30, 30, 1390),
		"a hair":       set(0.1, 0.1, 700),
		"limp keel":    func(d *design.Design) { d.Keel.Depth = 3 },
		"bow only":     set(30, 0, 700),
	} {
		f := frameOf(t, "brook", func(d *design.Design) { d.Hull.Symmetric = false; change(d) })
		r, err := Of(f)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for _, x := range []*Rest{r.Loose, r.Free, r.Usual, r.Fast} {
			if !(x.Worst() < 150) || math.IsNaN(x.Keel+x.Thrust+x.Pull) {
				t.Errorf("%s: %+v", name, *x)
			}
		}
		t.Logf("%s: likely %+v", name, *r.Usual)
	}
}

// TestMade: what is made into the gunwales wants no holding. All answers go with what is
// sprung, so that half of lake's even set leaves half of everything, and all of it none.
func TestMade(t *testing.T) {
	of := func(made measure.Length) *Report {
		r, err := Of(frametest.Shipped(t, "lake", func(d *design.Design) { d.Gunwale.EdgeSetMade = made }))
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	none, half := of(0), of(21)
	if all := of(42); all != nil {
		t.Errorf("all is made, and a moment of %v is to be held", all.Moment)
	}
	for i := range half.Moment {
		near(t, "moment", half.Moment[i], none.Moment[i]/2, 1e-9*none.Moment[i])
	}
	for _, pair := range [][2]*Rest{{half.Loose, none.Loose}, {half.Free, none.Free}, {half.Usual, none.Usual}, {half.Fast, none.Fast}} {
		got, want := pair[0], pair[1]
		for i := range got.Sheer {
			near(t, "sheer", got.Sheer[i], want.Sheer[i]/2, 1e-6)
			near(t, "rocker", got.Rocker[i], want.Rocker[i]/2, 1e-6)
		}
		near(t, "keel", got.Keel, want.Keel/2, 1e-6*want.Keel)
		near(t, "thrust", got.Thrust, want.Thrust/2, 1e-6*math.Abs(want.Thrust)+1e-6)
		near(t, "pull", got.Pull, want.Pull/2, 1e-6*want.Pull)
	}
}
