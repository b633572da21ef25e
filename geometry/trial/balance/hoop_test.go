package balance

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
)

const (
	ribR  = 300.0 // mm
	ribEI = 8e6   // N mm2
)

func semicircle() curve.Chain { return curve.Chain{curve.Turned(ribR, math.Pi/2)} }

// squareU is half of a square U; a corner is an arc so small that it counts for nothing.
func squareU(leg, bottom float64) curve.Chain {
	return curve.Chain{curve.Straight(bottom / 2), curve.Turned(1e-9, math.Pi/2), curve.Straight(leg)}
}

// oneRib is a rib in the middle of gunwales so limp that they bear nothing, with a cross
// piece of the stiffness of 1 N/mm on it.
func oneRib(t *testing.T, half curve.Chain, at []crossing, cloth []geometry.Point) *Model {
	t.Helper()
	h := newHoop(half, ribEI, 7, at, cloth)
	m := &Model{rail: even(testL, 1e-3), hoops: []*hoop{h}, pitches: []float64{140},
		ribs: []Member{{"M", testL / 2, 1 / h.give()}}, struts: []Member{{"bar", testL / 2, 1}}}
	if err := m.build(1); err != nil {
		t.Fatal(err)
	}
	return m
}

// headStiffness is what a rib's heads bear per mm of opening, found by pressing them
// apart: a bar w too long of 1 N/mm is left with p = w k/(1 + k).
func headStiffness(t *testing.T, m *Model, c Case) float64 {
	t.Helper()
	s := settle(t, m, nil, Setting{Slack: []float64{1}, Case: &c})
	return s.Struts[0] / (1 - s.Struts[0])
}

// TestHeads: Castigliano's closed forms for heads that turn and heads that do not. With m
// the height of the head, a head that turns opens by 2/EI ∫ m² ds for 1 N; one that
// cannot bears a moment that takes (∫ m ds)²/∫ ds off. Half circle: π R³/2, and R³ (π/2 -
// 4/π). Square U of legs h and bottom b: 2h³/3 + b h², and that less 2 (h²/2 + b h/2)²/(h
// + b/2). S. Timoshenko, Strength of Materials, part I, chapter on statically
// indeterminate curved bars.
func TestHeads(t *testing.T) {
	const leg, bottom = 285.0, 720.0
	u := 2*cube(leg)/3 + bottom*leg*leg
	r3 := ribR * ribR * ribR
	for _, c := range []struct {
		name        string
		half        curve.Chain
		loose, fast float64
	}{
		{"half circle", semicircle(), math.Pi / 2 * r3, (math.Pi/2 - 4/math.Pi) * r3},
		{"square U", squareU(leg, bottom), u, u - 2*math.Pow(leg*leg/2+bottom*leg/2, 2)/(leg+bottom/2)},
	} {
		m := oneRib(t, c.half, nil, nil)
		loose, fast := ribEI/c.loose, ribEI/c.fast
		within(t, c.name+", hinged", headStiffness(t, m, Case{}), loose, 1e-6)
		within(t, c.name+", fast", headStiffness(t, m, Case{Heads: 1}), fast, 1e-6)
		// Half of the moment takes off half of the opening that all of it takes off.
		within(t, c.name+", half", headStiffness(t, m, Case{Heads: 0.5}), 2/(1/loose+1/fast), 1e-6)
		// A rib opened by its width alone pushes with fast heads as a stiffer rib would, one
		// opened along its whole length only as with loose ones: all of it is straightened
		// back by the level push.
		for upright, k := range map[float64]float64{0: loose, 1: fast} {
			s := settle(t, m, nil, Setting{Open: []float64{10}, Slack: []float64{0}, Case: &Case{Heads: 1, Upright: upright}})
			within(t, c.name+", push of a rib opened by 10 mm", s.Struts[0], -10*k/(fast+1), 1e-6)
		}
	}
	// A quarter arc built in at one end, its other end kept from turning, gives half of
	// the half circle; a ring under a pair of forces P has 2 of those beside each other,
	// each under P/2: Timoshenko's 0.149 P R³/EI = (π/4 - 2/π) P R³/EI along the forces.
	k := headStiffness(t, oneRib(t, semicircle(), nil, nil), Case{Heads: 1})
	within(t, "ring", 1/(2*k), (math.Pi/4-2/math.Pi)*r3/ribEI, 1e-6)
	within(t, "ring, as the tables have it", 1/(2*k), 0.1488*r3/ribEI, 1e-3)
}

// TestCloth: cloth pulled by T for each mm over a pitch p, e outside a square U of legs h
// and bottom b all the way, opens it by T p e (h b + h²)/(E I): the moment T p e with the
// lever m, Castigliano. Heads that cannot turn take all of that where the bottom is as
// good as nothing: even bending is undone by an even moment.
func TestCloth(t *testing.T) {
	const leg, bottom, e, pull = 285.0, 720.0, 15.0, 0.5
	outline := func(b float64) []geometry.Point {
		under, side := geometry.Pt(0, -e), geometry.Pt(b/2+e, -e)
		return []geometry.Point{under, under, side, side, geometry.Pt(b/2+e, leg)}
	}
	opened := func(b float64, c Case) float64 {
		at := []crossing{{b / 2, geometry.Pt(b/2, 0)}}
		m := oneRib(t, squareU(leg, b), at, outline(b))
		return 2 * settle(t, m, nil, Setting{StrutsOut: map[int]bool{0: true}, Case: &c}).At(testL/2)
	}
	want := pull * 140 * e * (leg*bottom + leg*leg) / ribEI
	within(t, "hinged", opened(bottom, Case{Cloth: pull}), want, 1e-6)
	within(t, "twice the pull", opened(bottom, Case{Cloth: 2 * pull}), 2*want, 1e-6)
	if v := opened(bottom, Case{Heads: 1, Cloth: pull}); math.Abs(v) > 1e-4*want {
		t.Errorf("with fast heads an even moment opens the rib by %g mm", v)
	}
	// Cloth that would run inside the rib lies on its face.
	m := oneRib(t, squareU(leg, bottom), nil, []geometry.Point{{}, geometry.Pt(0, 40), geometry.Pt(bottom/2-40, leg)})
	within(t, "on the face", 2*settle(t, m, nil, Setting{StrutsOut: map[int]bool{0: true}, Case: &Case{Cloth: pull}}).At(testL/2),
		pull*140*3.5*(leg*bottom+leg*leg)/ribEI, 0.35)
}

// TestRibStress: a half circle pinched by P is bent most at the keel, by P R; one whose
// heads cannot turn by P R (1 - 2/π) there, and 2/π P R the other way at the heads
// (Timoshenko's ring).
func TestRibStress(t *testing.T) {
	m := oneRib(t, semicircle(), nil, nil)
	for _, c := range []struct{ heads, want float64 }{{0, 1}, {1, 2 / math.Pi}} {
		s := settle(t, m, nil, Setting{Slack: []float64{-20}, Case: &Case{Heads: c.heads}})
		within(t, "bending", s.Bent[0], math.Abs(s.Struts[0])*ribR*c.want, 1e-5)
		within(t, "push on the gunwale", -s.Ribs[0], s.Struts[0], 1e-5)
	}
}

// TestMoves: unit curvature all along a quarter arc swings its head and a place on the
// way by the moments of the arc about them: outward R² for the head; R² (φ... by area:
// the first moment of the arc up to φ about the place at φ is R² (sin φ - φ cos φ), and
// about the level through it the same turned by a quarter, R² (φ sin φ + cos φ - 1).
func TestMoves(t *testing.T) {
	const phi = 0.9
	at := []crossing{{ribR * phi, geometry.Pt(ribR*math.Sin(phi), ribR*(1-math.Cos(phi)))}}
	h := newHoop(semicircle(), ribEI, 7, at, nil)
	// The first way bends by m/∫m² = R cos(angle)/(π R³/4). A place at φ moves outward by
	// ∫0^φ c (z(φ) - z) R da with z = R (1 - cos a), and up, seen from the keel, by
	// -∫0^φ c (y(φ) - y) R da; the head is the same at π/2.
	c := func(a float64) float64 { return math.Cos(a) / (math.Pi / 4 * ribR * ribR) }
	move := func(phi float64) (out, up float64) {
		out = curve.Integrate(func(a float64) float64 { return c(a) * ribR * (math.Cos(a) - math.Cos(phi)) * ribR }, 0, phi, 8)
		up = -curve.Integrate(func(a float64) float64 { return c(a) * ribR * (math.Sin(phi) - math.Sin(a)) * ribR }, 0, phi, 8)
		return out, up
	}
	out, up := move(phi)
	head, headUp := move(math.Pi / 2)
	within(t, "head", head, 1, 1e-9)
	within(t, "stringer outward", h.move[1][0][0], out, 1e-8)
	within(t, "stringer up from the head", h.move[1][1][0], up-headUp, 1e-8)
	within(t, "keel up from the head", h.move[0][1][0], -headUp, 1e-8)
	if v := h.move[0][0][0]; v != 0 {
		t.Errorf("the keel moves aside by %g", v)
	}
}
