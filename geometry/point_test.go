package geometry

import (
	"math"
	"math/rand/v2"
	"testing"
)

// near fails the test unless got is within tol of want; what names the inputs.
func near(t *testing.T, what string, got, want, tol float64, unit string) {
	t.Helper()
	if d := math.Abs(got - want); !(d <= tol) {
		t.Errorf("%s: got %v, want %v %s, off by %g, allowed %g", what, got, want, unit, d, tol)
	}
}

// nearPoint fails the test unless got is within tol mm of want.
func nearPoint(t *testing.T, what string, got, want Point, tol float64) {
	t.Helper()
	if d := math.Hypot(got.X-want.X, got.Y-want.Y); !(d <= tol) {
		t.Errorf("%s: got %v, want %v mm, off by %g, allowed %g", what, got, want, d, tol)
	}
}

func TestPointSteps(t *testing.T) {
	p, q := Point{3, -4}, Point{10, 20}
	for _, row := range []struct {
		name      string
		got, want Point
		tol       float64
	}{ // arithmetic, by hand
		{"add", p.Add(q), Point{13, 16}, 0},
		{"sub", p.Sub(q), Point{-7, -24}, 0},
		{"scale", p.Scale(-2), Point{-6, 8}, 0},
		{"scale by 0", p.Scale(0), Point{}, 0},
		{"left of +x is +y", Point{1, 0}.Left(), Point{0, 1}, 0},
		{"left", p.Left(), Point{4, 3}, 0},
		{"unit", p.Unit(), Point{0.6, -0.8}, 1e-15},
		{"unit of nothing", Point{}.Unit(), Point{}, 0},
		{"lerp at 0", p.Lerp(q, 0), p, 0},
		{"lerp at 1", p.Lerp(q, 1), q, 0},
		{"lerp at a quarter", p.Lerp(q, 0.25), Point{4.75, 2}, 0},
		{"lerp beyond", p.Lerp(q, 2), Point{17, 44}, 0},
		{"polar along x", Polar(5, 0), Point{5, 0}, 0},
		{"polar a quarter turn on", Polar(5, math.Pi/2), Point{0, 5}, 1e-15},
		{"polar clockwise", Polar(2, -math.Pi/6), Point{math.Sqrt(3), -1}, 1e-15},
	} {
		t.Run(row.name, func(t *testing.T) { nearPoint(t, row.name, row.got, row.want, row.tol) })
	}
}

func TestPointProducts(t *testing.T) {
	p, q := Point{3, -4}, Point{10, 20}
	for _, row := range []struct {
		name      string
		got, want float64
		tol       float64
		unit      string
	}{ // arithmetic, by hand
		{"dot", p.Dot(q), -50, 0, "mm2"},
		{"cross", p.Cross(q), 100, 0, "mm2"},
		{"cross the other way", q.Cross(p), -100, 0, "mm2"},
		{"cross of x and y", Point{1, 0}.Cross(Point{0, 1}), 1, 0, "mm2"},
		{"norm", p.Norm(), 5, 0, "mm"},
		{"norm of nothing", Point{}.Norm(), 0, 0, "mm"},
		{"norm in space", Point3{2, -3, 6}.Norm(), 7, 0, "mm"},
	} {
		t.Run(row.name, func(t *testing.T) { near(t, row.name, row.got, row.want, row.tol, row.unit) })
	}
}

// Property of plane vectors: dot and cross of p and q together carry the whole
// of both lengths, and a quarter turn turns one into the other.
func TestPointProductsAgree(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 100 {
		p := Point{random.NormFloat64() * 1000, random.NormFloat64() * 1000}
		q := Point{random.NormFloat64() * 1000, random.NormFloat64() * 1000}
		near(t, "dot2 + cross2", math.Hypot(p.Dot(q), p.Cross(q)), p.Norm()*q.Norm(), 1e-12*p.Norm()*q.Norm(), "mm2")
		near(t, "left p . q", p.Left().Dot(q), p.Cross(q), 1e-12*p.Norm()*q.Norm(), "mm2")
		near(t, "length of unit", p.Unit().Norm(), 1, 1e-15*4, "mm")
		near(t, "unit along p", p.Unit().Dot(p), p.Norm(), 1e-12*p.Norm(), "mm")
	}
}

func TestPoint3Steps(t *testing.T) {
	p, q := Point3{1, 2, 3}, Point3{10, 200, -3000}
	for _, row := range []struct {
		name      string
		got, want Point3
	}{ // arithmetic, by hand
		{"add", p.Add(q), Point3{11, 202, -2997}},
		{"sub", p.Sub(q), Point3{-9, -198, 3003}},
	} {
		t.Run(row.name, func(t *testing.T) {
			if row.got != row.want {
				t.Errorf("%v and %v: got %v, want %v mm", p, q, row.got, row.want)
			}
		})
	}
}

func TestFinite(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, row := range []struct {
		name string
		p    Point
		want bool
	}{ // definition
		{"origin", Point{}, true},
		{"as large as can be", Point{math.MaxFloat64, -math.MaxFloat64}, true},
		{"x not a number", Point{nan, 0}, false},
		{"y not a number", Point{0, nan}, false},
		{"x infinite", Point{inf, 0}, false},
		{"y infinite", Point{0, -inf}, false},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := row.p.Finite(); got != row.want {
				t.Errorf("%v: got %v, want %v", row.p, got, row.want)
			}
		})
	}
}
