package sail

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/kit"
	"ribwright/geometry/body"
	"ribwright/geometry/design"
)

// fitted fits lake with a sail of 3 m2.
func fitted(t *testing.T, r design.Rig) *Fit {
	t.Helper()
	b := boat(t, "lake")
	s := b.Frame.Design.Sail()
	s.Rig, s.Area = r, 3
	f, err := New(b, s, fresh(t))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func thing(t *testing.T, k kit.Kit, key string) kit.Thing {
	t.Helper()
	for _, v := range k.Things {
		if v.Key == key {
			return v
		}
	}
	t.Fatalf("no %s is bought", key)
	return kit.Thing{}
}

// TestSailWeighsItsCloth: a sail of 140 g/m2 weighs more than what hangs, for hems,
// patches and lines, and less than half as much again.
func TestSailWeighsItsCloth(t *testing.T) {
	for _, r := range design.Rigs() {
		f := fitted(t, r)
		cloth := thing(t, f.Kit(), "sailcloth")
		bare := 3 * f.Sail.Cloth / 1000
		if cloth.Mass <= bare || cloth.Mass > 1.5*bare {
			t.Errorf("%v: %.3f kg, the bare cloth has %.3f", r, cloth.Mass, bare)
		}
		if cut := f.Cloth.Area; cloth.Amount < cut {
			t.Errorf("%v: %.2f m2 bought, %.2f m2 are cut", r, cloth.Amount, cut)
		}
	}
}

// TestLineAsTold: as much line is bought as the pieces that are told add to, and of what
// moves or is laced the lengths by hand: a halyard goes up and comes down, a tie and a loop
// go round what they hold.
func TestLineAsTold(t *testing.T) {
	for _, r := range design.Rigs() {
		f := fitted(t, r)
		sum, all := 0.0, map[string]float64{}
		for _, l := range f.Lines() {
			sum, all[l.Name] = sum+l.Long, l.Long
		}
		line := thing(t, f.Kit(), "line")
		if line.Amount != math.Ceil(sum) || sum < 8 {
			t.Errorf("%v: %g m bought, %g told", r, line.Amount, sum)
		}
		if up := (f.Tack - f.Mast.PartnerZ + f.Plan.Mast) / 1000; f.Mast.Long > 0 && (all["halyard"] < 2*up+1 || all["halyard"] > 2*up+1.5) {
			t.Errorf("%v: %.1f m of halyard, the mast is %.1f m high over its partner", r, all["halyard"], up)
		}
		if n := float64(f.Loops()); all["loops of the laced edges"] < n*math.Pi*f.Mast.Diameter/1000 || n == 0 {
			t.Errorf("%v: %.1f m for %g loops", r, all["loops of the laced edges"], n)
		}
	}
}

// TestTaperedSpars: a spar planed thinner to its ends is less than a parallel stick,
// and more than one that runs out to half its breadth at both ends, which has
// (1 + 1/2 + 1/4) / 3 of it. Geometry.
func TestTaperedSpars(t *testing.T) {
	for _, p := range fitted(t, design.Spritsail).Kit().Pieces {
		if p.Form != kit.Spar {
			continue
		}
		parallel := math.Pi / 4 * p.Wide * p.Thick * p.Long
		if v := p.Volume() / parallel; v >= 1 || v <= 7.0/12 {
			t.Errorf("%s is %.2f of a parallel stick", p.Name, v)
		}
	}
}

// TestEveryClipIsBolted: each clip has its bolt, and the leeboard's bracket one more
// that keeps its cheeks on; a board lies on both gunwales and wants two clips on
// each, that it cannot turn about one.
func TestEveryClipIsBolted(t *testing.T) {
	for _, r := range design.Rigs() {
		f := fitted(t, r)
		clips, bolts := 0, 0.0
		for _, p := range f.Kit().Pieces {
			if p.Name == "Clip" {
				clips += p.Count
			}
		}
		for _, v := range f.Kit().Things {
			if v.Key == "bolt" {
				bolts += v.Amount
			}
		}
		want, on := clips, 1
		if f.Board.Area > 0 {
			want, on = clips+1, 2
		}
		if bolts != float64(want) {
			t.Errorf("%v: %g bolts for %d clips", r, bolts, clips)
		}
		if clips < 4 || clips > 4*on || clips%2 != 0 {
			t.Errorf("%v: %d clips", r, clips)
		}
	}
	if PartnerClips != 4 {
		t.Errorf("%d clips for the partner's four corners", PartnerClips)
	}
}

// TestHips: half of a person's breadth is half the median woman's hips, sitting
// (ANSUR II).
func TestHips(t *testing.T) {
	p := body.Person{Sex: body.Woman, Stature: 1626, Weight: 66.8}
	for _, e := range p.Estimates() {
		if e.Name == "hip_breadth" {
			near(t, "half of the hips", hipHalf, e.Value/2, 10)
			return
		}
	}
	t.Error("no hips are estimated")
}

// TestScaleOfWinds: the winds that end sailing are the tops of forces 4 and 8 of the
// Beaufort scale (WMO: 5.5 to 7.9 m/s and 17.2 to 20.7 m/s); a tenth more is the
// next force.
func TestScaleOfWinds(t *testing.T) {
	for v, force := range map[float64]int{Rough: 4, Rough + 0.1: 5, Gale: 8, Gale + 0.1: 9, 5.5: 4, 17.2: 8} {
		if got := Beaufort(v); got != force {
			t.Errorf("%.1f m/s is force %d, want %d", v, got, force)
		}
	}
	near(t, "10 m/s in knots, 19.438 rounded down", float64(Knots(10)), 19, 0) // a knot is 1852 m an hour
}

// TestHabitsOfSails: what the program chooses by itself lies in what the sources say
// that it names: a lead of 5 to 12 % of the waterline, a board of 4 to 8 % of the
// sail, a cruising canoe's 44 sq ft and a racing class's 55 at most.
func TestHabitsOfSails(t *testing.T) {
	if !(0.05 <= leadLow && leadLow < leadHigh && leadHigh <= 0.12) {
		t.Errorf("a lead of %g to %g", leadLow, leadHigh)
	}
	if !(0.04 <= boardShare && boardShare <= 0.08) {
		t.Errorf("a board of %g of the sail", boardShare)
	}
	const squareFoot = 0.3048 * 0.3048
	near(t, "cruising canoe", ceiling, 44*squareFoot, 0.05)
	near(t, "racing class", large, 55*squareFoot, 0.05)
	f := fitted(t, design.Spritsail)
	for _, r := range f.Ranges {
		var low, high float64
		if _, err := fmt.Sscanf(r.Source, "%f to %f", &low, &high); err == nil && (r.Low < low || r.High > high) {
			t.Errorf("%s: %g to %g, the source has %g to %g", r.Name, r.Low, r.High, low, high)
		}
		if !r.Inside() && r.Name != "all under water over sail" { // what the hull gives, not chosen
			t.Errorf("%s: %.3g, practice is %g to %g", r.Name, r.Value, r.Low, r.High)
		}
	}
}

// TestDangersOfSails: what can drown people or break is told as a danger, with what
// to do.
func TestDangersOfSails(t *testing.T) {
	for _, r := range design.Rigs() {
		dangers := map[string]string{}
		for _, n := range fitted(t, r).Findings {
			if n.Verdict.Danger() {
				dangers[n.About] += n.Text
			}
		}
		for about, words := range map[string][]string{
			"capsize": {"climbing back", "Flotation", "life jacket", "knife"},
			"rules":   {"local law comes first"},
			"wind":    {"Never make the sheet fast", "gusts 1.4 times", "past 7.9 m/s"},
			"mast":    {"never on the skin"},
		} {
			for _, w := range words {
				if !strings.Contains(dangers[about], w) {
					t.Errorf("%v: no danger of %s says %q: %q", r, about, w, dangers[about])
				}
			}
		}
		if r == design.Vee && !strings.Contains(dangers["running"], "cannot bring you back to windward") {
			t.Errorf("a vee's danger is not told: %q", dangers["running"])
		}
	}
}

// TestLarge: a sail past what a racing class allows is told as a danger, and one
// within it is not.
func TestLarge(t *testing.T) {
	b, w := boat(t, "river"), fresh(t)
	for area, want := range map[float64]bool{5.0: false, 5.3: true} {
		s := b.Frame.Design.Sail()
		s.Area = area
		f, err := New(b, s, w)
		if err != nil {
			t.Fatal(err)
		}
		told := false
		for _, n := range f.Findings {
			told = told || n.Verdict.Danger() && strings.Contains(n.Text, "more than a racing class")
		}
		if told != want {
			t.Errorf("%.1f m2: told %v, want %v", area, told, want)
		}
	}
}

// TestHeelLimit: a canoe is in trouble at ten degrees, or sooner where the lee gunwale
// dips sooner: at half of that.
func TestHeelLimit(t *testing.T) {
	deg := math.Pi / 180
	near(t, "stiff boat", Stand{Flooded: math.NaN()}.heels()/deg, 10, 1e-9)
	near(t, "high sides", Stand{Flooded: 40 * deg}.heels()/deg, 10, 1e-9)
	near(t, "low sides", Stand{Flooded: 12 * deg}.heels()/deg, 6, 1e-9)
}

// TestSheetLeadsAft: a sheet runs under a cross piece that lies aft of the clew, or straight
// from there; from before it, nothing would pull a loose foot aft. Common practice, no source.
func TestSheetLeadsAft(t *testing.T) {
	everyRig(t, func(name string, r design.Rig, f *Fit) {
		b := f.Boat
		clew := f.Mast.At + f.Plan.Corners[len(f.Plan.Corners)-1].X
		says := f.under(clew)
		led := strings.Contains(says, "aft of it")
		for _, p := range b.Frame.Thwarts {
			if !strings.Contains(says, p.Name) {
				continue
			}
			if led = true; p.At > clew {
				t.Errorf("%s, %v: the sheet runs under %s at %.0f, the clew is at %.0f", name, r, p.Name, p.At, clew)
			}
		}
		if !led {
			t.Errorf("%s, %v: the sheet is led %q", name, r, says)
		}
	})
}
