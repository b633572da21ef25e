package balance

import (
	"math"
	"slices"
	"testing"

	"ribwright/geometry/curve"
)

// The closed forms are those of S. Timoshenko, Strength of Materials, and M.
// Hetenyi, Beams on Elastic Foundation, derived again by hand.

func within(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%s: got %.9g, want %.9g, off by %.2e, allowed %.0e", what, got, want, got/want-1, share)
	}
}

// even is a straight gunwale from 0 to length, of one stiffness.
func even(length, ei float64) Rail {
	return Rail{From: 0, To: length,
		Stiffness: func(float64) float64 { return ei },
		Strain:    func(float64) float64 { return 0 }}
}

const (
	testEI = 7700 * 38 * 19 * 19 * 19 / 12.0 // N mm2: softwood 19 x 38 mm
	testL  = 3500.0                          // mm
	testD  = 360.0                           // mm
	stiff  = 1e7                             // N per mm, a strut that does not give
)

func settle(t *testing.T, m *Model, err error, s Setting) *State {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	out, err := m.Settle(s)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestOneSpreader holds a straight gunwale out by D in the middle: y(x) = D (3
// x/L - 4 (x/L)^3), 0.6875 D at the quarter, 3 D/L at the stem, 48 EI D / L^3 per
// gunwale.
func TestOneSpreader(t *testing.T) {
	m, err := sprung(even(testL, testEI), nil, []Member{{"spreader", testL / 2, stiff}}, 1)
	s := settle(t, m, err, Setting{Slack: []float64{2 * testD}})
	force := 48 * testEI * testD / math.Pow(testL, 3)
	within(t, "force, N", s.Struts[0], force, 1e-6)
	within(t, "quarter length, mm", s.At(testL/4), 0.6875*testD, 1e-6)
	within(t, "slope at the stem", s.Turn[0], 3*testD/testL, 1e-6)
	for _, u := range []float64{0.05, 0.13, 0.31, 0.5} {
		within(t, "y", s.At(u*testL), testD*(3*u-4*u*u*u), 1e-6)
		within(t, "y, mirrored", s.At((1-u)*testL), testD*(3*u-4*u*u*u), 1e-6)
	}
	// Moment in the middle: P L / 4, bulging.
	within(t, "moment, N mm", s.Moment[slices.Index(m.first, m.strutAt[0])], -force*testL/4, 1e-6)
}

// TestHeldToTheCurve asks the same force of a gunwale that is already drawn on
// that curve and would rather be straight.
func TestHeldToTheCurve(t *testing.T) {
	r := even(testL, testEI)
	r.Kinks = []float64{testL / 2}
	r.Strain = func(x float64) float64 { return -24 * testD * math.Min(x, testL-x) / math.Pow(testL, 3) }
	m, err := sprung(r, nil, []Member{{"spreader", testL / 2, stiff}}, 1)
	s := settle(t, m, err, Setting{})
	within(t, "force, N", s.Struts[0], 48*testEI*testD/math.Pow(testL, 3), 1e-6)
	for i, v := range s.Offset {
		if math.Abs(v) > 1e-6*testD {
			t.Errorf("at %.0f mm it leaves its curve by %g mm", s.X[i], v)
		}
	}
	// Let go, it is straight again: the offset is minus the curve.
	s = settle(t, m, err, Setting{StrutsOut: map[int]bool{0: true}})
	within(t, "let go, quarter length", s.At(testL/4), -0.6875*testD, 1e-6)
}

// TestTwoSpreaders at a from either end: each P = 6 EI D / (a^2 (3 L - 4 a)), D (3
// L^2 - 4 a^2) / (4 a (3 L - 4 a)) in the middle; at a = L/2 half of the force of
// one.
func TestTwoSpreaders(t *testing.T) {
	for _, a := range []float64{400, 1000, 1400} {
		m, err := sprung(even(testL, testEI), nil, []Member{{"after", a, stiff}, {"forward", testL - a, stiff}}, 1)
		s := settle(t, m, err, Setting{Slack: []float64{2 * testD, 2 * testD}})
		want := 6 * testEI * testD / (a * a * (3*testL - 4*a))
		within(t, "after force, N", s.Struts[0], want, 1e-6)
		within(t, "forward force, N", s.Struts[1], want, 1e-6)
		within(t, "middle, mm", s.At(testL/2), testD*(3*testL*testL-4*a*a)/(4*a*(3*testL-4*a)), 1e-6)
	}
	half := 6 * testEI * testD / (testL * testL / 4 * testL)
	within(t, "two in one place", half, 48*testEI*testD/math.Pow(testL, 3)/2, 1e-12)
}

// TestRibs: a half circle opens by pi P R^3 / (2 E I), a square U by P (2 h^3/3 +
// b h^2) / (E I), and a quarter arc built in at one end, half of the first, by pi
// P R^3 / (4 E I).
func TestRibs(t *testing.T) {
	const r, h, b = 300.0, 285.0, 720.0
	half := curve.Chain{curve.Turned(r, math.Pi/2)}
	within(t, "half circle", headsGive(half), math.Pi*r*r*r/2, 1e-9)
	within(t, "quarter arc", headsGive(half)/2, math.Pi*r*r*r/4, 1e-9)
	// A corner is an arc so small that it counts for nothing.
	u := curve.Chain{curve.Straight(b / 2), curve.Turned(1e-9, math.Pi/2), curve.Straight(h)}
	within(t, "square U", headsGive(u), 2*h*h*h/3+b*h*h, 1e-9)
	if g := headsGive(curve.Chain{curve.Straight(100)}); g != 0 {
		t.Errorf("a rib that lies flat gives %g mm3, want 0", g)
	}
}

// TestFoundation pushes on one rib of a long gunwale on close ribs: the load P
// moves it by P beta / (2 k), beta = (k / (4 EI))^(1/4), k the stiffness per
// length. With the ribs half as far apart the error falls at the fourth order or
// better, until it is rounding.
func TestFoundation(t *testing.T) {
	const k = 0.02 // N per mm of offset and mm of length
	beta := math.Pow(k/(4*testEI), 0.25)
	length := 24 / beta // long: exp(-12) at the ends
	miss := func(pitch float64) float64 {
		n := int(length/pitch/2) * 2
		pitch = length / float64(n)
		var ribs []Member
		for i := 1; i < n; i++ {
			ribs = append(ribs, Member{"", float64(i) * pitch, k * pitch / 2}) // 2 k_rib v is the push back
		}
		m, err := sprung(even(length, testEI), ribs, nil, 1)
		if err != nil {
			t.Fatal(err)
		}
		open := make([]float64, len(ribs))
		middle := n/2 - 1
		const p = 10.0 // N: the middle rib, set open so that it pushes with as much
		open[middle] = p / ribs[middle].Stiffness
		s := settle(t, m, nil, Setting{Open: open})
		return s.At(length/2)/(p*beta/(2*k)) - 1
	}
	coarse, fine := miss(0.4/beta), miss(0.2/beta)
	if math.Abs(fine) > 0.001 {
		t.Errorf("ribs %.0f mm apart are %.2e off, want 0.1 %%", 0.2/beta, fine)
	}
	if ratio := coarse / fine; ratio < 12 || ratio > 20 {
		t.Errorf("halving the pitch takes the error from %.2e to %.2e, by %.1f; the fourth order wants 16", coarse, fine, ratio)
	}
}

// TestConvergence refines a gunwale of uneven stiffness whose free shape is a sine:
// with nothing to hold it, it takes it, v = -A sin(pi x/L), whatever the
// stiffness. Cubic elements follow a smooth curve to the fourth order.
func TestConvergence(t *testing.T) {
	r := even(testL, testEI)
	r.Stiffness = func(x float64) float64 { return testEI * (1 + x/testL) }
	r.Strain = func(x float64) float64 {
		return -testD * math.Pow(math.Pi/testL, 2) * math.Sin(math.Pi*x/testL)
	}
	miss := func(fine int) float64 {
		m, err := sprung(r, nil, nil, fine)
		s := settle(t, m, err, Setting{})
		worst := 0.0
		for x := 3.0; x < testL; x += 7 {
			worst = math.Max(worst, math.Abs(s.At(x)+testD*math.Sin(math.Pi*x/testL)))
		}
		return worst
	}
	last := miss(1)
	if last > 1e-3*testD {
		t.Errorf("the coarsest is %.2e mm off", last)
	}
	for _, fine := range []int{2, 4} {
		next := miss(fine)
		if order := math.Log2(last / next); order < 3.8 || order > 4.3 {
			t.Errorf("cut %d times finer: error %.3e after %.3e mm, order %.2f, want 4", fine, next, last, order)
		}
		last = next
	}
}
