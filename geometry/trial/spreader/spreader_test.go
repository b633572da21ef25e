package spreader

import (
	"fmt"
	"math"
	"strconv"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/referencetest"
	"ribwright/geometry/trial/balance"
)

// boat is the balance of a shipped design with a change.
func boat(t *testing.T, name string, change func(*design.Design)) *balance.Boat {
	t.Helper()
	f := frametest.Shipped(t, name, change)
	b, err := balance.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// stiff is E I of a gunwale about its weak axis by hand, N mm2: E h w³/12.
func stiff(t *testing.T, b *balance.Boat) float64 {
	t.Helper()
	d := b.Frame.Design
	wood, err := d.Wood(d.Gunwale.Species)
	if err != nil {
		t.Fatal(err)
	}
	return wood.MOE * float64(d.Gunwale.Height) * math.Pow(float64(d.Gunwale.Width), 3) / 12
}

// The pushes of the shipped boats' spreaders and stems against a boundary-value
// solution of the elastica in arc length by another program:
// testdata/reference/elastica.py. 1 % is asked for; the two are alike to 0.01 %.
func TestForcesAgainstReference(t *testing.T) {
	for _, name := range design.ShippedNames() {
		b := boat(t, name, nil)
		ei, s := stiff(t, b), Of(b)
		got := []float64{s.Ends[0]}
		for _, o := range s.Spreaders {
			got = append(got, o.Force)
		}
		got = append(got, s.Ends[1])
		i := 0
		for _, row := range referencetest.Table(t, "../../../testdata/reference/elastica.csv") {
			if row[0] != name || row[1] != "pin" {
				continue
			}
			want, err := strconv.ParseFloat(row[4], 64)
			if err != nil || i == len(got) {
				t.Fatal(name, i, err)
			}
			if want *= ei; math.Abs(got[i]-want) > 1e-4*math.Abs(want) {
				t.Errorf("%s at %s mm: %.3f N, reference %.3f", name, row[2], got[i], want)
			}
			i++
		}
		if i != len(got) {
			t.Errorf("%s: %d pins in the table, %d in the boat", name, i, len(got))
		}
		for _, o := range s.Spreaders {
			want := Apart
			if o.At == 0 {
				want = Together
			}
			if o.Holds != want || (o.Force > 0) != (want == Apart) {
				t.Errorf("%s at %.0f mm: holds %s with %.1f N, want %s", name, o.At, o.Holds, o.Force, want)
			}
		}
	}
}

// A narrow boat is a slight bend: one spreader pushes 48 E I D/L³, two equal ones at a
// from the ends 6 E I D/(a² (3 L - 4 a)) each, D over the ends. Source: S. Timoshenko,
// Strength of Materials. The bend's slope is 1 %, so its square is 1e-4.
func TestForcesOfSlightBends(t *testing.T) {
	curved := func(x, y []float64) *pins {
		plan, err := curve.NewElastica(x, y)
		if err != nil {
			t.Fatal(err)
		}
		p := &pins{plan: plan, stiff: 2e8}
		for _, at := range x {
			p.add(at)
		}
		return p
	}
	const l, d, a = 3500.0, 10.0, 900.0
	one := curved([]float64{0, l / 2, l}, []float64{0, d, 0})
	if got, want := one.forces(one.plan)[1], 48*2e8*d/math.Pow(l, 3); math.Abs(got/want-1) > 3e-4 {
		t.Errorf("one spreader: %.5f N, want %.5f", got, want)
	}
	two := curved([]float64{0, a, l - a, l}, []float64{0, d, d, 0})
	if got, want := two.forces(two.plan)[1], 6*2e8*d/(a*a*(3*l-4*a)); math.Abs(got/want-1) > 3e-4 {
		t.Errorf("two spreaders: %.5f N, want %.5f", got, want)
	}
	// Two equal pushes leave (3 L² - 4 a²)/(4 a (3 L - 4 a)) D in the middle: held narrower
	// there the third spreader pulls, and sticks alone leave that width.
	free := d * (3*l*l - 4*a*a) / (4 * a * (3*l - 4*a))
	for _, c := range []struct {
		beam  float64
		holds Holds
	}{{free - 2, Together}, {free + 2, Apart}} {
		three := curved([]float64{0, a, l / 2, l - a, l}, []float64{0, d, c.beam, d, 0})
		three.stiff = 2e10 // so that the forces are felt
		if got := three.holds(2, three.forces(three.plan)[2]); got != c.holds {
			t.Errorf("middle at %.2f for a free %.2f mm holds %s, want %s", c.beam, free, got, c.holds)
		}
		y, _ := three.sticksAlone().Rise(l / 2)
		if want := math.Max(free, c.beam); math.Abs(y-want) > 2e-3 {
			t.Errorf("middle at %.2f: sticks alone leave %.4f mm, want %.4f", c.beam, y, want)
		}
	}
	three := curved([]float64{0, a, l / 2, l - a, l}, []float64{0, d, free, d, 0})
	if got := three.holds(2, three.forces(three.plan)[2]); got != Idle {
		t.Errorf("a spreader at the width that the others leave holds %s, want idle", got)
	}
}

// What sticks alone leave is at rest: those that are in push, those that are out are
// clear, whatever the boat.
func TestSticksAlone(t *testing.T) {
	for _, name := range design.ShippedNames() {
		b := boat(t, name, nil)
		s := Of(b)
		var x, y []float64
		aft, fore := b.Frame.Hull.Plan.Ends()
		x, y = append(x, aft), append(y, float64(b.Frame.Design.After().Siding)/2)
		for _, o := range s.Spreaders {
			if o.Alone < o.Beam-1e-6 {
				t.Errorf("%s at %.0f mm: a stick of %.2f mm stands between gunwales %.2f mm apart", name, o.At, o.Beam, o.Alone)
			}
			if math.Abs(o.Alone-o.Beam) < 1e-6 {
				x, y = append(x, o.At), append(y, o.Beam/2)
			}
		}
		x, y = append(x, fore), append(y, float64(b.Frame.Design.Bow.Siding)/2)
		e, err := curve.NewElastica(x, y)
		if err != nil {
			t.Fatal(err)
		}
		for i, p := range e.Pushes() {
			if i > 0 && i < len(x)-1 && p < 0 {
				t.Errorf("%s: the stick at %.0f mm would have to pull", name, x[i])
			}
		}
		for _, o := range s.Spreaders {
			if got, _ := e.Rise(o.At); math.Abs(2*got-o.Alone) > 1e-6 {
				t.Errorf("%s at %.0f mm: %.4f mm apart, want %.4f", name, o.At, o.Alone, 2*got)
			}
		}
		if w := s.Widest(); w.At != 0 || w.Alone < w.Beam+20 {
			t.Errorf("%s: widest off at %.0f mm by %.1f mm", name, w.At, w.Alone-w.Beam)
		}
	}
}

// n equal plies that slip are 1/n² as stiff as the stick, and glued by a rigid line they
// keep 1 - 1/n² of their curve: the force is the same before and after. A softer line
// leaves more; a form leaves nothing; a stick glued straight keeps nothing.
func TestShares(t *testing.T) {
	for _, c := range []struct {
		glued         string
		plies         int
		creep         float64
		before, after float64
	}{
		{design.GluedBent, 3, 1, 1.0 / 9, 1.0 / 9}, {design.GluedBent, 2, 1.2, 0.25, 0.3}, {design.GluedBent, 1, 1, 1, 1},
		{design.GluedOnForm, 3, 1, 0, 0}, {design.GluedStraight, 3, 1, 1, 1}, {design.GluedOnForm, 1, 1, 1, 1},
	} {
		t.Run(fmt.Sprint(c.plies, c.glued), func(t *testing.T) {
			b := boat(t, "brook", func(d *design.Design) {
				d.Gunwale.Glued, d.Gunwale.Plies, d.Bending.GlueCreep = c.glued, c.plies, c.creep
			})
			for _, o := range Of(b).Spreaders {
				if math.Abs(o.Before/o.Force-c.before) > 1e-9 || math.Abs(o.After/o.Force-c.after) > 1e-9 {
					t.Errorf("at %.0f mm: %.4f before and %.4f after of the stick's, want %.4f and %.4f", o.At, o.Before/o.Force, o.After/o.Force, c.before, c.after)
				}
			}
		})
	}
}

// Twice as stiff a wood doubles every force and moves nothing.
func TestForcesFollowStiffness(t *testing.T) {
	b := boat(t, "river", nil)
	was := Of(b)
	b.Wood.MOE *= 2
	for i, o := range Of(b).Spreaders {
		w := was.Spreaders[i]
		if math.Abs(o.Force-2*w.Force) > 1e-9 || o.Alone != w.Alone || o.Holds != w.Holds {
			t.Errorf("at %.0f mm: %+v, was %+v", o.At, o, w)
		}
	}
}

// Odd boats: held at midship only, by ties, one end unlike the other, one thick stick.
func TestOddBoats(t *testing.T) {
	for name, change := range map[string]func(*design.Design){
		"midship alone": func(d *design.Design) { d.Hull.Spreaders = nil },
		"tied in": func(d *design.Design) {
			d.Hull.Spreaders = append(d.Hull.Spreaders, design.Spreader{At: 1300, Beam: 290, Tie: true})
		},
		"lopsided": func(d *design.Design) {
			d.Hull.Symmetric, d.Hull.Spreaders = false, []design.Spreader{{At: 900, Beam: 500}}
		},
	} {
		s := Of(boat(t, "brook", change))
		for _, o := range s.Spreaders {
			for _, v := range []float64{o.At, o.Along, o.Beam, o.Inner, o.Force, o.Before, o.After, o.Alone} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Errorf("%s: %+v", name, o)
				}
			}
			if o.Inner >= o.Beam || o.Inner < o.Beam-40 {
				t.Errorf("%s at %.0f mm: %.1f mm between the edges of gunwales %.1f mm apart", name, o.At, o.Inner, o.Beam)
			}
		}
		switch name {
		case "midship alone":
			if len(s.Spreaders) != 1 || s.Spreaders[0].Holds != Apart || s.Spreaders[0].Alone != s.Spreaders[0].Beam {
				t.Errorf("%s: %+v", name, s.Spreaders)
			}
		case "tied in":
			if o := s.Spreaders[0]; o.Holds != Together || o.Alone < o.Beam+5 {
				t.Errorf("%s: the tie %+v", name, o)
			}
		}
	}
}

// A gunwale past what hands hold is told with a cure.
func TestFindings(t *testing.T) {
	light := Of(boat(t, "brook", nil)).Findings()
	if len(light) != 2 || !light.Passes() || light[0].Verdict != finding.Holds || light[1].Verdict != finding.Holds {
		t.Errorf("brook: %+v", light)
	}
	heavy := Of(boat(t, "river", func(d *design.Design) {
		d.Gunwale.Width, d.Bow.Siding, d.Gunwale.Species = measure.Length(40), 45, "white ash"
		d.Stern = nil
	})).Findings()
	if len(heavy) != 2 || heavy[0].Verdict != finding.Caution || heavy[0].Cure == "" {
		t.Errorf("heavy: %+v", heavy)
	}
}
