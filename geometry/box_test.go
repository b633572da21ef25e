package geometry

import (
	"math"
	"math/rand/v2"
	"testing"
)

// box returns the box from (x0, y0) to (x1, y1) mm.
func box(x0, y0, x1, y1 float64) Box { return Box{Point{x0, y0}, Point{x1, y1}} }

func TestAround(t *testing.T) {
	for _, row := range []struct {
		name string
		pts  []Point
		want Box
	}{ // arithmetic, by hand
		{"no points", nil, EmptyBox()},
		{"one point", []Point{{3, -4}}, box(3, -4, 3, -4)},
		{"every corner from another point", []Point{{0, 7}, {-5, 1}, {9, 2}, {1, -8}}, box(-5, -8, 9, 7)},
		{"the origin is not added", []Point{{10, 20}, {30, 40}}, box(10, 20, 30, 40)},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := Around(row.pts...); got != row.want {
				t.Errorf("around %v: got %v, want %v mm", row.pts, got, row.want)
			}
		})
	}
}

func TestEmpty(t *testing.T) {
	nan := math.NaN()
	for _, row := range []struct {
		name string
		b    Box
		want bool
	}{ // definition
		{"EmptyBox", EmptyBox(), true},
		{"around no points", Around(), true},
		{"zero box holds the origin", Box{}, false},
		{"a single point", box(3, 4, 3, 4), false},
		{"a line", box(3, 4, 9, 4), false},
		{"x the wrong way", box(1, 0, 0, 9), true},
		{"y the wrong way", box(0, 1, 9, 0), true},
		{"shrunk to nothing", box(0, 0, 10, 10).Grow(-5.5), true},
		{"empty grown is still empty", EmptyBox().Grow(1000), true},
		{"not a number", box(nan, 0, 1, 1), true},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := row.b.Empty(); got != row.want {
				t.Errorf("%v: got %v, want %v", row.b, got, row.want)
			}
			if row.want && row.b.Holds(Point{0.5, 0.5}) {
				t.Errorf("%v is empty and holds a point", row.b)
			}
		})
	}
}

func TestBoxSizes(t *testing.T) {
	b := box(-5, 2, 9, 8)
	for _, row := range []struct {
		name           string
		got, want, tol float64
	}{ // arithmetic, by hand
		{"W", b.W(), 14, 0},
		{"H", b.H(), 6, 0},
		{"center x", b.Center().X, 2, 0},
		{"center y", b.Center().Y, 5, 0},
		{"grown W", b.Grow(1.5).W(), 17, 0},
		{"grown H", b.Grow(1.5).H(), 9, 0},
		{"grown x", b.Grow(1.5).Min.X, -6.5, 0},
		{"grown y", b.Grow(1.5).Min.Y, 0.5, 0},
		{"shrunk H", b.Grow(-3).H(), 0, 0},
	} {
		t.Run(row.name, func(t *testing.T) { near(t, row.name, row.got, row.want, row.tol, "mm") })
	}
}

func TestUnion(t *testing.T) {
	for _, row := range []struct {
		name       string
		b, c, want Box
	}{ // arithmetic, by hand
		{"apart", box(0, 0, 1, 1), box(5, -6, 7, -4), box(0, -6, 7, 1)},
		{"one in the other", box(0, 0, 9, 9), box(2, 3, 4, 5), box(0, 0, 9, 9)},
		{"crossing", box(-1, -5, 1, 5), box(-5, -1, 5, 1), box(-5, -5, 5, 5)},
		{"with nothing", box(2, 3, 4, 5), EmptyBox(), box(2, 3, 4, 5)},
		{"nothing with nothing", EmptyBox(), EmptyBox(), EmptyBox()},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := row.b.Union(row.c); got != row.want {
				t.Errorf("%v and %v: got %v, want %v mm", row.b, row.c, got, row.want)
			}
			if got := row.c.Union(row.b); got != row.want {
				t.Errorf("%v and %v: got %v, want %v mm", row.c, row.b, got, row.want)
			}
		})
	}
}

func TestOverlaps(t *testing.T) {
	b := box(0, 0, 10, 10)
	for _, row := range []struct {
		name string
		c    Box
		want bool
	}{ // definition, by hand
		{"itself", b, true},
		{"inside", box(3, 3, 4, 4), true},
		{"a cross without a corner in either", box(-5, 4, 15, 6), true},
		{"right edge touches", box(10, 2, 20, 8), true},
		{"left edge touches", box(-9, 2, 0, 8), true},
		{"top edge touches", box(2, 10, 8, 20), true},
		{"bottom edge touches", box(2, -9, 8, 0), true},
		{"corner touches", box(10, 10, 20, 20), true},
		{"right of it", box(10.001, 0, 20, 10), false},
		{"left of it", box(-9, 0, -0.001, 10), false},
		{"above it", box(0, 10.001, 10, 20), false},
		{"below it", box(0, -9, 10, -0.001), false},
		{"nothing", EmptyBox(), false},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := b.Overlaps(row.c); got != row.want {
				t.Errorf("%v and %v: got %v, want %v", b, row.c, got, row.want)
			}
			if got := row.c.Overlaps(b); got != row.want {
				t.Errorf("%v and %v: got %v, want %v", row.c, b, got, row.want)
			}
		})
	}
	if EmptyBox().Overlaps(EmptyBox()) {
		t.Error("nothing overlaps nothing")
	}
}

func TestHolds(t *testing.T) {
	b := box(-1, 2, 10, 20)
	for _, row := range []struct {
		name string
		p    Point
		want bool
	}{ // definition, by hand
		{"inside", Point{3, 9}, true},
		{"lower left corner", Point{-1, 2}, true},
		{"upper right corner", Point{10, 20}, true},
		{"left of it", Point{-1.001, 9}, false},
		{"right of it", Point{10.001, 9}, false},
		{"below it", Point{3, 1.999}, false},
		{"above it", Point{3, 20.001}, false},
		{"not a number", Point{math.NaN(), 9}, false},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := b.Holds(row.p); got != row.want {
				t.Errorf("%v in %v: got %v, want %v", row.p, b, got, row.want)
			}
		})
	}
}

// Property: a box around points holds each of them and no smaller one does;
// a union holds what either part holds.
func TestAroundIsTight(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for range 50 {
		var pts []Point
		for range 5 {
			pts = append(pts, Point{random.NormFloat64() * 100, random.NormFloat64() * 100})
		}
		b := Around(pts...)
		if u := Around(pts[:2]...).Union(Around(pts[2:]...)); u != b {
			t.Errorf("around %v: %v, by parts %v mm", pts, b, u)
		}
		left, right, low, high := false, false, false, false
		for _, p := range pts {
			if !b.Holds(p) {
				t.Errorf("%v does not hold %v", b, p)
			}
			left, right = left || p.X == b.Min.X, right || p.X == b.Max.X
			low, high = low || p.Y == b.Min.Y, high || p.Y == b.Max.Y
		}
		if !(left && right && low && high) {
			t.Errorf("%v around %v has an edge that touches no point", b, pts)
		}
	}
}
