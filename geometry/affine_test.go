package geometry

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// mirror turns port to starboard: x stays, y changes sign.
var mirror = Stretch(1, -1)

func TestApply(t *testing.T) {
	for _, row := range []struct {
		name    string
		m       Affine
		p, want Point
		tol     float64
	}{ // arithmetic, by hand
		{"shift", Shift(10, -20), Point{3, 4}, Point{13, -16}, 0},
		{"no shift", Shift(0, 0), Point{3, 4}, Point{3, 4}, 0},
		{"stretch", Stretch(2, -3), Point{3, 4}, Point{6, -12}, 0},
		{"turn by nothing", Turn(0), Point{3, 4}, Point{3, 4}, 0},
		{"quarter turn left", Turn(math.Pi / 2), Point{3, 4}, Point{-4, 3}, 1e-15},
		{"half turn", Turn(math.Pi), Point{3, 4}, Point{-3, -4}, 1e-15},
		{"30 degrees", Turn(math.Pi / 6), Point{2, 0}, Point{math.Sqrt(3), 1}, 1e-15},
		{"each of the six numbers", Affine{2, 3, 5, 7, 11, 13}, Point{10, 100}, Point{20 + 500 + 11, 30 + 700 + 13}, 0},
	} {
		t.Run(row.name, func(t *testing.T) {
			nearPoint(t, fmt.Sprintf("%v of %v", row.m, row.p), row.m.Apply(row.p), row.want, row.tol)
		})
	}
}

func TestThen(t *testing.T) {
	quarter := Turn(math.Pi / 2)
	for _, row := range []struct {
		name    string
		m       Affine
		p, want Point
		tol     float64
	}{ // arithmetic, by hand
		{"shift, then turn", Shift(10, 0).Then(quarter), Point{1, 2}, Point{-2, 11}, 1e-14},
		{"turn, then shift", quarter.Then(Shift(10, 0)), Point{1, 2}, Point{8, 1}, 1e-14},
		{"turn, then stretch", quarter.Then(Stretch(2, 3)), Point{1, 2}, Point{-4, 3}, 1e-14},
		{"stretch, then turn", Stretch(2, 3).Then(quarter), Point{1, 2}, Point{-6, 2}, 1e-14},
		{"two turns add", Turn(math.Pi / 12).Then(Turn(math.Pi / 12)), Point{2, 0}, Point{math.Sqrt(3), 1}, 1e-14},
		{"mirror twice", mirror.Then(mirror), Point{3, 4}, Point{3, 4}, 0},
		{"two of all six", Affine{2, 3, 5, 7, 11, 13}.Then(Affine{1, 2, 3, 4, 5, 6}), Point{10, 100}, Point{531 + 3*743 + 5, 2*531 + 4*743 + 6}, 0},
	} {
		t.Run(row.name, func(t *testing.T) { nearPoint(t, row.name, row.m.Apply(row.p), row.want, row.tol) })
	}
}

// Properties of composition: m.Then(n) does m and n one after the other, Then
// is associative, Shift(0, 0) changes nothing, and area factors multiply.
func TestThenProperties(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	draw := func() Affine {
		return Affine{random.NormFloat64(), random.NormFloat64(), random.NormFloat64(), random.NormFloat64(),
			100 * random.NormFloat64(), 100 * random.NormFloat64()}
	}
	for range 50 {
		m, n, o := draw(), draw(), draw()
		p := Point{100 * random.NormFloat64(), 100 * random.NormFloat64()}
		what := fmt.Sprintf("%v, %v, %v at %v", m, n, o, p)
		nearPoint(t, "in turn: "+what, m.Then(n).Apply(p), n.Apply(m.Apply(p)), 1e-10)
		nearPoint(t, "grouped: "+what, m.Then(n).Then(o).Apply(p), m.Then(n.Then(o)).Apply(p), 1e-10)
		nearPoint(t, "neutral first: "+what, Shift(0, 0).Then(m).Apply(p), m.Apply(p), 1e-12)
		nearPoint(t, "neutral last: "+what, m.Then(Shift(0, 0)).Apply(p), m.Apply(p), 1e-12)
		near(t, "areas: "+what, m.Then(n).Det(), m.Det()*n.Det(), 1e-12, "")
	}
}

func TestDet(t *testing.T) {
	for _, row := range []struct {
		name      string
		m         Affine
		want, tol float64
	}{ // arithmetic, by hand
		{"shift", Shift(10, -20), 1, 0},
		{"turn", Turn(0.7), 1, 1e-15},
		{"stretch", Stretch(2, 3), 6, 0},
		{"mirror", mirror, -1, 0},
		{"mirrored both ways", Stretch(-1, -1), 1, 0},
		{"flattened to a line", Affine{1, 2, 2, 4, 9, 9}, 0, 0},
		{"each of the four numbers", Affine{2, 3, 5, 7, 11, 13}, -1, 0},
	} {
		t.Run(row.name, func(t *testing.T) { near(t, fmt.Sprint(row.m), row.m.Det(), row.want, row.tol, "") })
	}
}

func TestSimilar(t *testing.T) {
	for _, row := range []struct {
		name string
		m    Affine
		want bool
	}{ // definition: a circle stays a circle
		{"shift", Shift(10, -20), true},
		{"turn", Turn(0.7), true},
		{"uniform stretch", Stretch(3, 3), true},
		{"mirror", mirror, true},
		{"mirrored about a slanted line", Turn(0.3).Then(mirror).Then(Turn(-1.1)), true},
		{"huge uniform stretch", Stretch(1e6, 1e6).Then(Turn(0.7)), true},
		{"tiny uniform stretch", Stretch(1e-6, 1e-6).Then(Turn(0.7)), true},
		{"stretch along x", Stretch(2, 1), false},
		{"stretch along y", Stretch(1, 2), false},
		{"slightly uneven stretch", Stretch(1, 1.000001), false},
		{"slightly uneven tiny stretch", Stretch(1e-6, 1.000001e-6), false},
		{"shear along x, rows of unequal length", Affine{1, 0, 0.5, 1, 0, 0}, false},
		{"shear that keeps both lengths", Affine{1, 0, 0.6, 0.8, 0, 0}, false},
		{"square but of two lengths", Turn(0.7).Then(Stretch(1, 2)), false},
		{"not a number", Affine{math.NaN(), 0, 0, 1, 0, 0}, false},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := row.m.Similar(); got != row.want {
				t.Errorf("%v: got %v, want %v", row.m, got, row.want)
			}
		})
	}
}

// Property: a similar transform multiplies every distance by one factor, the
// root of the area factor.
func TestSimilarKeepsShape(t *testing.T) {
	m := Turn(0.3).Then(Stretch(-2.5, 2.5)).Then(Shift(40, -70)).Then(Turn(1.9))
	if !m.Similar() {
		t.Fatalf("%v is a mix of turn, mirror, stretch and shift, but is not similar", m)
	}
	random := rand.New(rand.NewPCG(7, 8))
	for range 50 {
		p := Point{100 * random.NormFloat64(), 100 * random.NormFloat64()}
		q := Point{100 * random.NormFloat64(), 100 * random.NormFloat64()}
		near(t, fmt.Sprintf("from %v to %v", p, q), m.Apply(p).Sub(m.Apply(q)).Norm(), 2.5*p.Sub(q).Norm(), 1e-11, "mm")
	}
	near(t, "area factor", m.Det(), -6.25, 1e-12, "")
}
