package weighing

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/referencetest"
	"ribwright/geometry/water/float"
)

const degree = math.Pi / 180

// TestGM: 20 kg moved 250 mm in 120 kg of boat and people, read 15.2 and 15.5 one way and
// 15.9 and 15.7 the other, is a GM of 149.5 mm: worked out by hand from
// GM = m d / (M tan a).
func TestGM(t *testing.T) {
	i := Incline{Mass: 20, Distance: 250, Angles: []float64{15.2 * degree, -15.9 * degree, 15.5 * degree, -15.7 * degree}}
	if a, _ := i.Heel(); math.Abs(a-15.575*degree) > 1e-9 {
		t.Errorf("heel %.4f deg, want 15.575", a/degree)
	}
	gm, off := i.GM(120, 0.02)
	if math.Abs(gm-149.5) > 0.05 {
		t.Errorf("GM %.2f mm, want 149.5", gm)
	}
	// Relative squares: 1 % of the mass moved, 4 in 250 mm, 2 % of the whole, and four
	// readings of 0.25 deg: 0.125 deg in all, over sin a cos a.
	want := 149.5 * math.Sqrt(0.01*0.01+0.016*0.016+0.02*0.02+math.Pow(0.125*degree/(math.Sin(15.575*degree)*math.Cos(15.575*degree)), 2))
	if math.Abs(off-want) > 0.01 {
		t.Errorf("GM +- %.3f mm, want %.3f", off, want)
	}
	// A list of 2 deg that the boat has by itself does not count.
	for k := range i.Angles {
		i.Angles[k] += 2 * degree
	}
	if a, _ := i.Heel(); math.Abs(a-15.575*degree) > 1e-9 {
		t.Errorf("with a list the heel is %.4f deg, want 15.575", a/degree)
	}
}

// TestReference: a box's weight from all that is measured, as scipy's least squares find it
// with the closed forms of a wall-sided box (testdata/reference/weighing.py).
func TestReference(t *testing.T) {
	var box []float.Station
	for x := -2000.0; x <= 2000; x += 250 {
		box = append(box, float.Station{X: x, Half: []geometry.Point{{}, {X: 250}, {X: 250, Y: 300}}})
	}
	h, err := float.New(box)
	if err != nil {
		t.Fatal(err)
	}
	numbers := func(cell string) (out []float64) {
		for _, w := range strings.Fields(cell) {
			out = append(out, referencetest.Number(t, w))
		}
		return out
	}
	for _, row := range referencetest.Table(t, "../../../testdata/reference/weighing.csv") {
		tests := Tests{Scale: referencetest.Number(t, row[1])}
		if f := numbers(row[2]); f != nil {
			tests.Freeboards = &[3]float64{f[0], f[1], f[2]}
		}
		if a := numbers(row[3]); a != nil {
			tests.Incline = &Incline{Mass: 15, Distance: 150}
			for _, d := range a {
				tests.Incline.Angles = append(tests.Incline.Angles, d*degree)
			}
		}
		f, err := Of(Boat{Hull: h, Own: float.Load{Mass: 30, At: geometry.Point3{X: 10, Z: 150}}, Weight: geometry.Point3{Z: 160},
			At: [3]float64{-1500, 0, 1500}, Density: 1000}, tests)
		if err != nil {
			t.Fatalf("%s: %v", row[0], err)
		}
		for k, v := range []float64{f.Mass.Is, f.Along.Is, f.High.Is, f.Mass.Off, f.Along.Off, f.High.Off} {
			if want := referencetest.Number(t, row[4+k]); math.Abs(v-want) > 2e-3*math.Max(1, math.Abs(want)) {
				t.Errorf("%s: figure %d is %.4f, want %.4f", row[0], k, v, want)
			}
		}
		if row[0] == "apart" && !f.Disagree || row[0] == "all" && f.Disagree {
			t.Errorf("%s: tests that disagree: %v", row[0], f.Disagree)
		}
	}
}

// lake is a boat to be tested, with its first, middle and last ribs' places.
func lake(t testing.TB) Boat {
	t.Helper()
	f := frametest.Shipped(t, "lake", nil)
	b, err := aboard.New(f, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	n := len(f.Ribs) - 1
	return Boat{Hull: b.Hull, Own: b.Own(), Weight: geometry.Point3{Z: f.Hull.FloorZ(0) + 150}, At: [3]float64{f.Ribs[0].Station, 0, f.Ribs[n].Station}, Density: 1000}
}

// TestCoverage: boats whose weight is truly another, tested with hands as they are, lie
// within the spread told in nine of ten.
func TestCoverage(t *testing.T) {
	b := lake(t)
	rnd := rand.New(rand.NewPCG(18, 3))
	const boats = 200
	inside := [3]int{}
	gmIn := 0
	for range boats {
		truth := [3]float64{b.Own.Mass * (1 + usual.own*rnd.NormFloat64()), b.Own.At.X + usual.along*rnd.NormFloat64(), b.Own.At.Z + usual.high*rnd.NormFloat64()}
		tests := measured(t, b, truth, rnd)
		f, err := Of(b, tests)
		if err != nil {
			t.Fatal(err)
		}
		for k, v := range []Value{f.Mass, f.Along, f.High} {
			if math.Abs(v.Is-truth[k]) <= 1.645*v.Off {
				inside[k]++
			}
		}
		m := model{b: b, t: tests}
		if _, gm, err := m.shows(truth); err != nil {
			t.Fatal(err)
		} else if math.Abs(f.GM.Is-gm) <= 1.645*f.GM.Off {
			gmIn++
		}
	}
	for k, n := range append(inside[:], gmIn) {
		if share := float64(n) / boats; share < 0.85 || share > 0.95 {
			t.Errorf("figure %d: the truth lies within nine in ten's spread in %.0f of 100 boats, want 85 to 95", k, 100*share)
		}
	}
}

// measured tests a boat of a true weight, with noise.
func measured(t testing.TB, b Boat, truth [3]float64, rnd *rand.Rand) Tests {
	t.Helper()
	own := float.Load{Mass: truth[0], At: geometry.Point3{X: truth[1], Z: truth[2]}}
	all := float.Total(own, float.Load{Mass: 10, At: b.Weight})
	plane, _, err := b.Hull.Balance(own, b.Density, 0, nil)
	if err != nil {
		t.Fatal(err)
	}
	out := Tests{Scale: truth[0] + math.Hypot(usual.scale, usual.scaleShare*truth[0])*rnd.NormFloat64(), Freeboards: new([3]float64)}
	for k, x := range b.At {
		_, sheer := b.Hull.Heights(x)
		out.Freeboards[k] = plane.Above(geometry.Point3{X: x, Z: sheer}) + usual.freeboard*rnd.NormFloat64()
	}
	// The hull settles with the weight off the middle line, in whichever way that comes out.
	off := all.Shifted(10*(1+usual.moved*rnd.NormFloat64()), geometry.Point3{Y: 200 + usual.distance*rnd.NormFloat64()})
	heeled, _, err := b.Hull.Settle(off, b.Density)
	if err != nil {
		t.Fatal(err)
	}
	out.Incline = &Incline{Mass: 10, Distance: 200}
	for k := range 4 {
		a := math.Abs(heeled.Heel) + usual.angle*rnd.NormFloat64()
		out.Incline.Angles = append(out.Incline.Angles, a*float64(1-2*(k%2)))
	}
	return out
}

// TestRefused: tests from which nothing follows are refused in words.
func TestRefused(t *testing.T) {
	for _, c := range []struct {
		angles []float64
		says   string
	}{
		{[]float64{5}, "both ways"}, {[]float64{5, 6}, "both ways"}, {[]float64{-5, 0}, "both ways"},
		{[]float64{25, -25}, "steep"}, {[]float64{1, -1}, "too little"}, {nil, "both ways"},
	} {
		i := Incline{Mass: 10, Distance: 200}
		for _, d := range c.angles {
			i.Angles = append(i.Angles, d*degree)
		}
		if err := i.Check(); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("angles %v: %v, want %q", c.angles, err, c.says)
		}
	}
	b := lake(t)
	if _, err := Of(b, Tests{}); err == nil {
		t.Error("a boat is weighed by nothing")
	}
	// A scale read in pounds is far from what was worked out, and named.
	switch f, err := Of(b, Tests{Scale: 2.2 * b.Own.Mass}); {
	case err != nil:
		t.Error(err)
	case !f.Disagree || f.Worst().What != "mass worked out":
		t.Errorf("a scale read in pounds: disagree %v, worst %q", f.Disagree, f.Worst().What)
	}
}
