package pair

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/water"
)

func rivers(t *testing.T) *Craft {
	t.Helper()
	w, err := water.At(water.Fresh, 15)
	if err != nil {
		t.Fatal(err)
	}
	b := boat(t, "river")
	c, err := New(b, b, b.Frame.Design.Pair(), w)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestCordAsTold: every lashing goes its turns round beam, saddle, gunwale's height and the
// bar under it, and half as much again to frap them, with tails to tie; the two crossed
// lines go from hull to hull and from beam to beam, there and back. Braided polyester of 4 mm
// fills 0.6 of its round and has 1380 kg/m3: some 10 g a metre.
func TestCordAsTold(t *testing.T) {
	c := rivers(t)
	var cord kit.Thing
	for _, v := range c.Kit().Things {
		if v.Key == "beam-cord" {
			cord = v
		}
	}
	var places, turns int
	if _, err := fmt.Sscanf(cord.How, "%d lashings of %d turns, half as much again to frap them", &places, &turns); err != nil {
		t.Fatalf("%q: %v", cord.How, err)
	}
	g := c.Boats[0].Frame.Gunwale
	round := 2 * (c.Beams.Width + c.Beams.Depth + g.Height + SaddleBack + c.BarDeep()) / 1000
	inner, _ := c.Boats[0].GunwaleTop(c.Beams.At[0])
	across, along := c.Spacing-2*inner.Y, c.Beams.At[1]-c.Beams.At[0]
	least := float64(places)*float64(turns)*round*1.5 + 4*math.Hypot(across, along)/1000
	if cord.Amount < least+float64(places)*0.3 || cord.Amount > least+float64(places)+3 {
		t.Errorf("%.0f m of cord, the turns and their frapping take %.1f", cord.Amount, least)
	}
	if want := 4 * len(c.Beams.At); places != want {
		t.Errorf("%d lashings, want one on each gunwale of both boats at each beam, %d", places, want)
	}
	braid := math.Pi / 4 * 0.004 * 0.004 * 0.6 * 1380
	if k := cord.Mass / cord.Amount / braid; k < 0.8 || k > 1.2 {
		t.Errorf("%.1f g a metre, a braid of 4 mm has %.1f", cord.Mass/cord.Amount*1000, braid*1000)
	}
	// Two parts a turn, each bearing what the danger says.
	_, pull := c.Worst()
	if float64(turns)*2*CordPull < pull || turns > 4 && float64(turns-1)*2*CordPull >= pull {
		t.Errorf("%d turns for %.0f N", turns, pull)
	}
}

// TestCordHolds: braided polyester of 4 mm breaks at some 3 kN, a knot halves it, and
// a third of that is worked with (from memory, as the code says).
func TestCordHolds(t *testing.T) { near(t, "N in each part", CordPull, 3000.0/2/3, 1e-9) }

// TestHalfEach: each boat carries half of what ties them.
func TestHalfEach(t *testing.T) {
	c := rivers(t)
	all, err := c.Kit().Items(c.Boats[0].Frame.Design)
	if err != nil {
		t.Fatal(err)
	}
	half, err := c.Items()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "kg in one boat", weight.Sum(half).Mass, weight.Sum(all).Mass/2, 1e-9)
	boats := c.Boats[0].Load().Mass + c.Boats[1].Load().Mass
	near(t, "kg of the whole", c.Load.Mass, boats+weight.Sum(all).Mass, 1e-9)
}

// TestBeamsReachOver: a beam reaches over the outermost gunwale of each boat by more
// than a hand, so that a lashing has wood on both sides of it.
func TestBeamsReachOver(t *testing.T) {
	c := rivers(t)
	_, outer := c.Boats[0].GunwaleTop(0)
	if beyond := c.Beams.Long/2 - (c.Spacing/2 + outer.Y); beyond < 50 {
		t.Errorf("the beam ends %.0f mm beyond the gunwale", beyond)
	}
}

// TestStepAsTold: the case of a person who steps on a beam has the factor that its
// words name, and the one of hulls lifted takes the arm that its words name.
func TestStepAsTold(t *testing.T) {
	c := rivers(t)
	var factor float64
	step := c.Cases[0]
	if _, err := fmt.Sscanf(step.Why[strings.Index(step.Why, ", ")+2:], "%f times the weight for a step", &factor); err != nil {
		t.Fatalf("%q: %v", step.Why, err)
	}
	near(t, "N on the beam", step.Load, factor*c.Pair.Person*9.80665, 1e-6)
	if factor != 1.5 {
		t.Errorf("a step of %g times the weight", factor)
	}
}

// TestSaddlesBear: a saddle has wood beside the gunwale on both sides and as deep as
// a thumb below its top, and its back lies level under the beam.
func TestSaddlesBear(t *testing.T) {
	c := rivers(t)
	for _, s := range c.Saddles() {
		inner, outer := c.Boats[s.Boat].GunwaleTop(s.Station)
		if wide := s.Right - s.Left - (outer.Y - inner.Y); wide < 2*20 {
			t.Errorf("%s: %.1f mm of wood beside the gunwale, both sides together", s.Name, wide)
		}
		low := 0.0
		for _, p := range s.Outline {
			low = math.Min(low, p.Y)
		}
		if low > -20 {
			t.Errorf("%s reaches %.1f mm down beside the gunwale", s.Name, -low)
		}
	}
}

// TestDangersOfPairs: the lashings' pull and what is between the hulls are dangers.
func TestDangersOfPairs(t *testing.T) {
	dangers := map[string]string{}
	c := rivers(t)
	for _, n := range c.Findings {
		if n.Verdict.Danger() {
			dangers[n.About] += n.Text
		}
	}
	for about, words := range map[string]string{"water between": "keep a knife in each hull", "lashings": "before each trip"} {
		if !strings.Contains(dangers[about], words) {
			t.Errorf("no danger of %s says %q: %q", about, words, dangers[about])
		}
	}
}
