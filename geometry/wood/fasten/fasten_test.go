package fasten

import (
	"math"
	"testing"

	"ribwright/geometry/wood/timber"
)

// near fails where got is off want by more than the share off of it.
func near(t *testing.T, what string, got, want, off float64) {
	t.Helper()
	if !(math.Abs(got-want) <= off*math.Abs(want)) {
		t.Errorf("%s: got %.6g, want %.6g within %.2g", what, got, want, off)
	}
}

const (
	across = math.Pi / 2
	digit3 = 0.004 // the last of three digits in print
)

// least returns the lowest yield and its mode.
func least(y Yields) (load float64, mode int) {
	for m, v := range y {
		if v < y[mode] {
			mode = m
		}
	}
	return y[mode], mode
}

// double returns the yields of a main piece between two side pieces alike.
func double(r Rod, side, main Piece) Yields {
	y := Single(r, side, main)
	none := math.Inf(1)
	return Yields{Im: y[Im], Is: 2 * y[Is], II: none, IIIm: none, IIIs: 2 * y[IIIs], IV: 2 * y[IV]}
}

// TestBearing holds the table of bearing strengths that follows from NDS table 12.3.3,
// worked out by hand in three digits.
func TestBearing(t *testing.T) {
	for i, g := range []float64{0.31, 0.32, 0.40, 0.42, 0.48, 0.60, 0.68} {
		near(t, "small", Bearing(g, 6, 0.3), []float64{13.3, 14.1, 21.2, 23.2, 29.7, 44.7, 56.3}[i], digit3)
		near(t, "along", Bearing(g, 6.35, 0), []float64{23.9, 24.7, 30.9, 32.4, 37.1, 46.3, 52.5}[i], digit3)
		near(t, "across", Bearing(g, 8, across), []float64{13.7, 14.4, 19.9, 21.3, 25.9, 35.7, 42.8}[i], digit3)
	}
	near(t, "5600 psi", Bearing(0.5, 12.7, 0)/psi, 5600, 1e-12)
	near(t, "3157.6 psi", Bearing(0.5, 12.7, across)/psi, 3157.6, 1e-4)
	// At 45 degrees: twice the product over the sum (Hankinson).
	a, c := Bearing(0.5, 12.7, 0), Bearing(0.5, 12.7, across)
	near(t, "45 degrees", Bearing(0.5, 12.7, math.Pi/4), 2*a*c/(a+c), 1e-12)
}

// TestNailSingleShear is example E2.1 of the American Wood Council's Structural Wood
// Design Solved Example Problems, as the verification tests of an open program give it.
func TestNailSingleShear(t *testing.T) {
	r := Rod{0.148 * inch, 90000 * psi}
	fe := Bearing(0.50, r.Diameter, 0)
	near(t, "bearing, psi", fe/psi, 4637, 1e-4)
	y := Single(r, Piece{fe, 0.75 * inch}, Piece{fe, 2.25 * inch})
	for mode, want := range []float64{702, 234, 234, 244, 105.10, 117} {
		// The example prints whole pounds of design values: yields over 2.2.
		if z := y[mode] / 2.2 / lbf; math.Abs(z-want) > 0.6 {
			t.Errorf("mode %d: %.2f lbf, want %.2f", mode, z, want)
		}
	}
	z, mode := y.Design(r.Diameter, 0)
	near(t, "Z, N", z, 467.488, 1e-5)
	if mode != IIIs {
		t.Errorf("mode %d, want IIIs", mode)
	}
}

// TestScrewDoubleShear is example E2.2 of the same: a No. 10 wood screw, 0.152 in at the
// root and 0.190 in by its number, which the reduction goes by.
func TestScrewDoubleShear(t *testing.T) {
	r := Rod{0.152 * inch, 80000 * psi}
	fe := Bearing(0.55, r.Diameter, 0)
	near(t, "bearing, psi", fe/psi, 5526, 1e-4)
	y := double(r, Piece{fe, 1.31 * inch}, Piece{fe, 3 * inch})
	z, mode := y.Design(0.190*inch, 0)
	near(t, "Z, N", z, 1039.60, 1e-5)
	if mode != IV {
		t.Errorf("mode %d, want IV", mode)
	}
	near(t, "reduction", Reduction(0.190*inch, IV, 0), 2.4, 1e-12)
}

// TestBolts are derived by the quadratic form of TR12 and by the closed forms of NDS.
func TestBolts(t *testing.T) {
	half := Bolt(0.5 * inch)
	for _, c := range []struct {
		name  string
		angle float64
		want  float64 // lbf
	}{{"along", 0, 483.25}, {"across", across, 217.98}} {
		p := Piece{Bearing(0.5, half.Diameter, c.angle), 1.5 * inch}
		z, mode := Single(half, p, p).Design(half.Diameter, c.angle)
		near(t, c.name, z/lbf, c.want, 2e-5)
		if mode != II {
			t.Errorf("%s: mode %d, want II", c.name, mode)
		}
	}
	ash := Piece{Bearing(0.60, 6, 0), 20}
	for _, c := range []struct {
		name        string
		main        float64 // gravity
		yield, z    float64
		mode        int
		side        Piece
		doubleShear bool
	}{
		{"M6 in spruce", 0.40, 1620.1, 566.0, IIIm, ash, false},
		{"M6 in ash", 0.60, 2309.1, 806.7, IIIs, ash, false},
		{"M6 in cedar", 0.31, 1242.3, 434.0, IIIm, ash, false},
		{"M6 in a fork", 0.40, 3053.4, 1066.8, Im, Piece{ash.Bearing, 12}, true},
	} {
		joint := Single
		if c.doubleShear {
			joint = double
		}
		y := joint(Bolt(6), c.side, Piece{Bearing(c.main, 6, 0), 24})
		load, mode := least(y)
		z, _ := y.Design(6, 0)
		near(t, c.name+", yield", load, c.yield, 1e-4)
		near(t, c.name+", Z", z, c.z, 2e-4)
		if mode != c.mode {
			t.Errorf("%s: mode %d, want %d", c.name, mode, c.mode)
		}
	}
	y := Single(Bolt(6), ash, Piece{Bearing(0.40, 6, 0), 24})
	for mode, want := range []float64{3053.4, 5365.5, 1680.4, 1620.1, 1950.3, 1963.6} {
		near(t, "M6 in spruce, mode", y[mode], want, 1e-4)
	}
	y = Single(Bolt(8), Piece{Bearing(0.60, 8, 0), 20}, Piece{Bearing(0.40, 8, across), 24})
	load, mode := least(y)
	z, _ := y.Design(8, across)
	near(t, "M8, yield", load, 2220.2, 2e-4)
	near(t, "M8, Z", z, 493.4, 2e-4)
	if mode != II {
		t.Errorf("M8: mode %d", mode)
	}
}

// johansen are the six loads a to f of Eurocode 5 (8.6) without the rope effect, and
// without its 1.05 and 1.15, for rods that bend at the moment. It is another way to write
// the general dowel equations.
func johansen(one, two Piece, diameter, moment float64) [6]float64 {
	f1, d, t1, t2 := one.Bearing, diameter, one.Length, two.Length
	b := two.Bearing / f1
	r := t2 / t1
	bent := func(t float64) float64 { return moment / (f1 * d * t * t) }
	return [6]float64{
		f1 * t1 * d,
		two.Bearing * t2 * d,
		f1 * t1 * d / (1 + b) * (math.Sqrt(b+2*b*b*(1+r+r*r)+b*b*b*r*r) - b*(1+r)),
		f1 * t1 * d / (2 + b) * (math.Sqrt(2*b*(1+b)+4*b*(2+b)*bent(t1)) - b),
		f1 * t2 * d / (1 + 2*b) * (math.Sqrt(2*b*b*(1+b)+4*b*(1+2*b)*bent(t2)) - b),
		math.Sqrt(2*b/(1+b)) * math.Sqrt(2*moment*f1*d),
	}
}

// TestEurocode holds all six modes to Eurocode's formulas, for the joints of a boat and
// some far from any; its own cases are worked by hand, in N with the 1.05 and 1.15.
func TestEurocode(t *testing.T) {
	const my = 12658.3 // 0.3 of 400 N/mm2 and 6 mm to the 2.6
	soft := Piece{26.978, 20}
	for i, want := range []float64{3237.4, 3237.4, 1341.0, 1721.3 / 1.05, 1721.3 / 1.05, 2328.0 / 1.15} {
		near(t, "a bolt in softwood", johansen(soft, soft, 6, my)[i], want, 1e-4)
	}
	for _, p := range [][2]Piece{{soft, soft}, {{45.477, 20}, {18.735, 24}}, {{5, 60}, {50, 8}}, {{30, 3}, {20, 500}}} {
		got, want := Single(Bolt(6), p[0], p[1]), johansen(p[0], p[1], 6, Bolt(6).Moment())
		for i, mode := range []int{Is, Im, II, IIIs, IIIm, IV} {
			near(t, "mode", got[mode], want[i], 1e-9)
		}
	}
}

// TestYieldLaws: a joint that is turned round yields alike, one of very thick pieces
// yields by the rod alone at 2 sqrt(M f d / ...), and a weaker rod never helps.
func TestYieldLaws(t *testing.T) {
	a, b := Piece{20, 15}, Piece{30, 40}
	y, turned := Single(Bolt(6), a, b), Single(Bolt(6), b, a)
	for m, o := range map[int]int{Im: Is, Is: Im, II: II, IIIm: IIIs, IIIs: IIIm, IV: IV} {
		near(t, "turned", y[m], turned[o], 1e-12)
	}
	// Mode IV of equal woods: P = sqrt(2 M q), q = f d.
	p := Piece{20, 1000}
	load, mode := least(Single(Bolt(6), p, p))
	near(t, "thick", load, math.Sqrt(2*Bolt(6).Moment()*20*6), 1e-12)
	if mode != IV {
		t.Errorf("thick: mode %d", mode)
	}
	weak, _ := least(Single(Rod{6, 100}, a, b))
	strong, _ := least(y)
	if !(weak < strong) {
		t.Errorf("a weaker rod bears %.0f, a stronger %.0f", weak, strong)
	}
}

// TestReduction: NDS table 12.3.1B.
func TestReduction(t *testing.T) {
	for _, c := range []struct {
		d     float64
		mode  int
		angle float64
		want  float64
	}{
		{0.17 * inch, IV, across, 2.2}, {0.2 * inch, Im, 0, 2.5}, {6, IIIm, across, 2.8622},
		{0.25 * inch, Im, 0, 4}, {8, II, 0, 3.6}, {8, IIIs, 0, 3.2}, {8, II, across, 4.5}, {8, IV, across / 2, 3.6},
	} {
		near(t, "reduction", Reduction(c.d, c.mode, c.angle), c.want, 1e-5)
	}
}

// TestScrew: pilot holes, and what a washer bears on its wood, worked out by hand.
func TestScrew(t *testing.T) {
	u := Remembered()
	if !(u.Pilot(3, true) > u.Pilot(3, false)) {
		t.Error("a pilot hole in hardwood must be wider")
	}
	for wood, want := range map[string]float64{"white ash": 1778, "white oak": 1640, "Douglas-fir": 1226, "Sitka spruce": 889, "western redcedar": 705, "northern white cedar": 475} {
		near(t, "washer on "+wood, Washer(18, 6.4, known(t, wood).Crush), want, 0.002)
	}
}

// TestWithdraws: a screw No. 8, 4.17 mm, for each mm of its thread: 29.5, 13.1 and 8.4 N in white
// ash, Sitka spruce and western redcedar by 2850 G² D (NDS 2015 table 12.2B), worked by hand.
func TestWithdraws(t *testing.T) {
	for wood, want := range map[string]float64{"white ash": 29.5, "Sitka spruce": 13.1, "western redcedar": 8.4} {
		near(t, "a screw pulled out of "+wood, Withdraws(known(t, wood).Gravity(), 4.17, 1), want, 0.005)
		near(t, "by ten times the thread", Withdraws(known(t, wood).Gravity(), 4.17, 10), 10*want, 0.005)
	}
}

func known(t *testing.T, name string) timber.Species {
	t.Helper()
	s, err := timber.Lookup(name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestSplits: a gunwale splits at a bolt by Eurocode 5 (8.4), by hand.
func TestSplits(t *testing.T) {
	u := Remembered()
	for he, want := range map[float64]float64{12: 1391, 20: 2125, 30: 3681} {
		near(t, "splits", u.Splits(24, 40, he), want, 0.001)
	}
	if !math.IsInf(u.Splits(24, 40, 40), 1) {
		t.Error("a bolt at the far edge splits nothing")
	}
}

// TestPegs: the stresses and loads by hand from the rule that stands in Usual.
func TestPegs(t *testing.T) {
	u := Remembered()
	ash, oak := known(t, "white ash"), known(t, "white oak")
	spruce := known(t, "Sitka spruce")
	stress := func(peg, in timber.Species) float64 { return u.Shears(Peg{1, peg}, in) / (math.Pi / 4) }
	fir := timber.Species{Density: timber.Density12(0.50)}
	for _, c := range []struct {
		name string
		got  float64
		want float64
	}{
		{"ash in spruce", stress(ash, spruce), 10.1}, {"ash in ash", stress(ash, ash), 13.9},
		{"ash in white cedar", stress(ash, known(t, "northern white cedar")), 8.3}, {"oak in fir", stress(oak, fir), 13.5},
	} {
		near(t, c.name, c.got, c.want, 0.005)
	}
	for d, want := range map[float64]float64{2.5: 99, 3: 143, 4: 255, 5: 398, 6: 573, 8: 1018} {
		near(t, "two planes", 2*u.Shears(Peg{d, ash}, spruce), want, 0.005)
	}
	near(t, "relish", TearsOut(ash, 20, 8), 4214, 1e-3)
	// The wall crushes before the peg shears.
	wall := 2 * Peg{5, ash}.CrushesAcross(spruce, 5)
	near(t, "walls", wall, 200, 1e-9)
	if shear := 2 * u.Shears(Peg{5, ash}, spruce); !(wall < shear) {
		t.Errorf("the walls bear %.0f N, the peg %.0f N", wall, shear)
	}
	for thinner, want := range map[float64]float64{6: 2, 7: 2, 9: 3, 3: 2, 30: 6} {
		if got := u.PegFor(thinner, 2, 6); got != want {
			t.Errorf("a piece of %.0f mm gets a peg of %.1f mm, want %.1f", thinner, got, want)
		}
	}
}

// TestCord: mass and strength of cords by hand; a lashing of four turns of 220 N.
func TestCord(t *testing.T) {
	u := Remembered()
	for d, want := range map[float64][2]float64{1.0: {650, 224}, 1.5: {1463, 504}, 2.0: {2601, 895}} {
		c := Cord{Diameter: d, Density: Polyester}
		near(t, "tex", u.Tex(c), want[0], 0.001)
		near(t, "breaks", u.Strength(c), want[1], 0.002)
	}
	near(t, "nylon", u.Strength(Cord{Diameter: 1, Density: Nylon}), 185, 0.002)
	near(t, "four turns", u.Lashing(Cord{Breaks: 220}, 4), 528, 1e-12)
	near(t, "three turns", u.Lashing(Cord{Breaks: 220}, 3), 396, 1e-12)
	near(t, "1 gf/denier, N/tex", newtonsPerTex, 0.08826, 1e-4)
}
