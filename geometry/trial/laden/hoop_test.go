package laden

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
	"ribwright/geometry/wood/beam"
)

const (
	wide, moe = 22.0, 12000.0
	ring      = 300.0 // mm
)

// ribOf is a half rib that stringers cross.
func ribOf(thick float64, half curve.Chain, marks ...float64) frame.Rib {
	return frame.Rib{Thickness: thick, Stringers: marks, Section: hull.Section{Half: half}}
}

// quarter is a quarter of a ring.
func quarter() curve.Chain { return curve.Chain{curve.Turned(ring, math.Pi/2)} }

func stands(t *testing.T, r frame.Rib) hoop {
	t.Helper()
	h, ok := new(condenser).hoop(r, wide, moe)
	if !ok {
		t.Fatal("does not stand")
	}
	h.within.of, h.square.of = make([]int, 2*len(r.Stringers)+4), make([]int, len(r.Stringers)+4)
	return h
}

// gives is how far a block's movements go under forces of 1 with its keel held: the inverse of how they hold.
func gives(t *testing.T, b block, heads float64, held ...int) *mat.Dense {
	t.Helper()
	b = b.with(heads, nil)
	n := len(b.of)
	var free []int
	for i := range n {
		if !slices.Contains(held, i) {
			free = append(free, i)
		}
	}
	k := mat.NewDense(len(free), len(free), nil)
	for i, p := range free {
		for j, q := range free {
			k.Set(i, j, b.stiff[p*n+q])
		}
	}
	var out mat.Dense
	if err := out.Inverse(k); err != nil {
		t.Fatal(err)
	}
	return &out
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within*math.Abs(want)) {
		t.Errorf("%s: %.9g, want %.9g", what, got, want)
	}
}

// TestQuarterRing: in its plane the head of a quarter of a ring that is held at its foot goes upward
// by (3π/4 - 2) P r³/(E I) and outward by π/4 of it, and each way by half of it under the other push;
// its stretch adds π/4 and 1/2 of P r/(E A). Source: S. Timoshenko, Strength of Materials, the curved
// bar built in at one end.
func TestQuarterRing(t *testing.T) {
	const thick = 6.5
	unit, long := ring*ring*ring/(moe*wide*thick*thick*thick/12), ring/(moe*wide*thick)
	g := gives(t, stands(t, ribOf(thick, quarter())).within, 0, 0, 3) // keel held, head free to turn
	near(t, "out", g.At(0, 0), unit*math.Pi/4+long*math.Pi/4, 1e-6)
	near(t, "up", g.At(1, 1), unit*(3*math.Pi/4-2)+long*math.Pi/4, 1e-6)
	near(t, "up, pushed out", g.At(1, 0), -unit/2+long/2, 1e-6)
}

// TestSquareRing: square to its plane the head of that ring, its foot held against leaning along the
// boat, would go by P r³ (π/(4 E I) + (3π/4 - 2)/(G J)); a foot that may lean leaves nothing to hold
// a head that may turn. Source: the tables of curved beams in Roark's Formulas for Stress and Strain.
func TestSquareRing(t *testing.T) {
	const side = 10.0
	s := rectangle(side, side, moe)
	near(t, "a square's twist (Timoshenko and Goodier, 0.1406 a⁴)", s.twist, moe*beam.Rigidity*0.1406*side*side*side*side, 2e-3)
	var g give
	g.anew(3, s.flat, s.twist)
	half := quarter()
	end, _ := half.End()
	stretches(half, []float64{half.Length()}, func(_ int, at, ds float64, _ bool) {
		p, way := half.Way(at)
		a, c := end.X-p.X, end.Y-p.Y
		g.take([]pair{{-c*way.Y - a*way.X, c*way.X - a*way.Y}, {-way.Y, way.X}, {way.X, way.Y}}, ds)
	})
	near(t, "square to its plane", g.sums.Row(0)[0], ring*ring*ring*(math.Pi/4/s.flat+(3*math.Pi/4-2)/s.twist), 1e-6)
	h := stands(t, ribOf(side, quarter()))
	for i, force := range h.square.with(0, nil).forces([]float64{0: 1}, nil) { // all of it moves along by 1
		if math.Abs(force) > 1e-9 {
			t.Errorf("movement %d is held with %g N where nothing holds the boat", i+1, force)
		}
	}
}

// TestPortal: a half of a portal frame of leg h and beam b: heads that are pushed apart by P go out by
// P (h³/3 + b h²/2)/(E I) each, and heads that cannot turn bear a moment of P h (h + b)/(2 h + b).
// Source: the slope-deflection equations, as in S. Timoshenko and D. H. Young, Theory of Structures.
func TestPortal(t *testing.T) {
	const thick, h, b = 1.0, 300.0, 500.0 // thin, so that it hardly stretches
	ei := moe * wide * thick * thick * thick / 12
	half := curve.Chain{curve.Straight(b / 2), curve.Turned(0.001, math.Pi/2), curve.Straight(h)}
	x := stands(t, ribOf(thick, half)).within
	near(t, "free heads", gives(t, x, 0, 0, 3).At(0, 0), (h*h*h/3+b/2*h*h)/ei, 1e-4)
	g := gives(t, x, 1, 0)
	near(t, "moment of fast heads", -g.At(2, 0)/g.At(2, 2), h*(h+b)/(2*h+b), 1e-4)
}

// TestCondensed: a rib that is condensed to its head alone is one that is condensed to its stringers
// and more places too, which are then let go.
func TestCondensed(t *testing.T) {
	const thick = 6.5
	half := curve.Chain{curve.Turned(900, 0.1), curve.Turned(900, 0.2), curve.Turned(120, 0.3), curve.Turned(120, 0.7), curve.Straight(50), curve.Straight(125)}
	bare, whole := stands(t, ribOf(thick, half)), stands(t, ribOf(thick, half, 90, 270, 306, 390, 440))
	for what, c := range map[string][2]block{"within": {bare.within, whole.within}, "square": {bare.square, whole.square}} {
		n, m := len(c[0].of), len(c[1].of)
		let := slices.Clone(c[1].stiff)
		for i := 1; i <= m-n; i++ {
			ease(let, m, i, 0)
		}
		at := func(i int) int {
			if i == 0 {
				return 0
			}
			return i + m - n
		}
		for i := range n {
			for j := range n {
				got, want := let[at(i)*m+at(j)], c[0].stiff[i*n+j]
				size := math.Sqrt(c[0].stiff[i*n+i] * c[0].stiff[j*n+j])
				if math.Abs(got-want) > 1e-9*size {
					t.Errorf("%s, %d %d: %.12g, whole %.12g", what, i, j, got, want)
				}
			}
		}
	}
}

// TestHeads: a head that bears a share of the moment stands between one that turns and one that
// cannot, and comes to both.
func TestHeads(t *testing.T) {
	x := stands(t, ribOf(6.5, quarter())).within
	n := len(x.of)
	if full := x.with(1, nil).stiff; !slices.Equal(full, x.stiff) {
		t.Error("fast heads are not those of the whole rib")
	}
	for _, v := range x.with(0, nil).stiff[(n-1)*n:] {
		if v != 0 {
			t.Errorf("a hinge bears %g", v)
		}
	}
	spring := 3 * x.stiff[n*n-1] // of the mortise: three of four parts of the moment
	got := x.with(0.75, nil).stiff
	for i := range n - 1 {
		for j := range n - 1 {
			w := x.stiff[i*n+j] - x.stiff[i*n+n-1]*x.stiff[j*n+n-1]/(x.stiff[n*n-1]+spring)
			if math.Abs(got[i*n+j]-w) > 1e-9*math.Sqrt(x.stiff[i*n+i]*x.stiff[j*n+j]) {
				t.Errorf("%d %d: %g, a spring in the mortise makes it %g", i, j, got[i*n+j], w)
			}
		}
	}
}
