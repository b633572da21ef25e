package curve

import (
	"fmt"
	"math"
	"testing"

	"ribwright/geometry"
)

func TestPolyline(t *testing.T) {
	a, b, c := pt(0, 0), pt(10, 0), pt(10, 5)
	for _, row := range []struct {
		name   string
		pts    []geometry.Point
		want   Path
		closed bool
	}{ // definition, by hand
		{"no point", nil, nil, false},
		{"one point", []geometry.Point{a}, nil, false},
		{"one point twice", []geometry.Point{a, a}, nil, false},
		{"two points", []geometry.Point{a, b}, Path{Line{a, b}}, false},
		{"a point repeated", []geometry.Point{a, b, b, b, c}, Path{Line{a, b}, Line{b, c}}, false},
		{"there and back", []geometry.Point{a, b, a}, Path{Line{a, b}, Line{b, a}}, true},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := Polyline(row.pts...)
			samePath(t, fmt.Sprintf("through %v", row.pts), got, row.want)
			if got.Closed() != row.closed {
				t.Errorf("through %v: closed %v, want %v", row.pts, got.Closed(), row.closed)
			}
		})
	}
}

func TestPolygon(t *testing.T) {
	a, b, c := pt(0, 0), pt(10, 0), pt(10, 5)
	for _, row := range []struct {
		name string
		pts  []geometry.Point
		want Path
	}{ // definition, by hand
		{"no point", nil, nil},
		{"two points enclose nothing", []geometry.Point{a, b}, nil},
		{"one point three times", []geometry.Point{a, a, a}, nil},
		{"triangle", []geometry.Point{a, b, c}, Path{Line{a, b}, Line{b, c}, Line{c, a}}},
		{"last point repeats the first", []geometry.Point{a, b, c, a}, Path{Line{a, b}, Line{b, c}, Line{c, a}}},
		{"two places in three points", []geometry.Point{a, b, b}, Path{Line{a, b}, Line{b, a}}},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := Polygon(row.pts...)
			samePath(t, fmt.Sprintf("through %v", row.pts), got, row.want)
			if got.Closed() != (row.want != nil) {
				t.Errorf("through %v: closed %v", row.pts, got.Closed())
			}
		})
	}
	pts := make([]geometry.Point, 3, 4) // room to spare must not be written to
	copy(pts, []geometry.Point{a, b, c})
	spare := pts[:4]
	spare[3] = pt(77, 77)
	if Polygon(pts...); spare[3] != pt(77, 77) {
		t.Errorf("Polygon wrote %v behind the points it was given", spare[3])
	}
}

// samePath fails the test unless both paths have the same segments.
func samePath(t *testing.T, what string, got, want Path) {
	t.Helper()
	if (got == nil) != (want == nil) || fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("%s: got %v, want %v mm", what, got, want)
	}
}

func TestRectangleAndCircle(t *testing.T) {
	b := geometry.Box{Min: pt(-5, 2), Max: pt(9, 8)}
	for _, row := range []struct {
		name              string
		p                 Path
		length, area, tol float64
		bounds            geometry.Box
		start             geometry.Point
	}{ // arithmetic; the polygon with chords off by at most 1e-6 mm falls short by less than 7e-4 mm2
		{"rectangle 14 by 6", Rectangle(b), 40, 84, 0, b, pt(-5, 2)},
		{"circle of 100", Circle(pt(3, 4), 100), 200 * math.Pi, 10000 * math.Pi, 0.0007, geometry.Box{Min: pt(-97, -96), Max: pt(103, 104)}, pt(103, 4)},
	} {
		t.Run(row.name, func(t *testing.T) {
			near(t, "length", row.p.Length(), row.length, 1e-12, "mm")
			near(t, "area", Area(row.p.Flatten(1e-6)), row.area, row.tol, "mm2, counter-clockwise")
			nearPoint(t, "start", row.p[0].Start(), row.start, 0)
			nearPoint(t, "lower left", row.p.Bounds().Min, row.bounds.Min, 1e-12)
			nearPoint(t, "upper right", row.p.Bounds().Max, row.bounds.Max, 1e-12)
			if !row.p.Closed() || !row.p.Joined() {
				t.Errorf("closed %v, joined %v", row.p.Closed(), row.p.Joined())
			}
		})
	}
}

func TestPathLengthAndBounds(t *testing.T) {
	// A slot: two half turns of 10 mm and two runs of 50 mm between them.
	slot := Path{
		Line{pt(0, -10), pt(50, -10)}, Arc{pt(50, 0), 10, -math.Pi / 2, math.Pi},
		Line{pt(50, 10), pt(0, 10)}, Arc{pt(0, 0), 10, math.Pi / 2, math.Pi},
	}
	for _, row := range []struct {
		name      string
		p         Path
		want, tol float64
		bounds    geometry.Box
	}{ // arithmetic
		{"nothing", nil, 0, 0, geometry.EmptyBox()},
		{"slot", slot, 100 + 20*math.Pi, 1e-12, geometry.Box{Min: pt(-10, -10), Max: pt(60, 10)}},
		{"half a slot", slot[:2], 50 + 10*math.Pi, 1e-12, geometry.Box{Min: pt(0, -10), Max: pt(60, 10)}},
	} {
		t.Run(row.name, func(t *testing.T) {
			near(t, "length", row.p.Length(), row.want, row.tol, "mm")
			if b := row.p.Bounds(); b != row.bounds && !(b.Min.Sub(row.bounds.Min).Norm() < 1e-12 && b.Max.Sub(row.bounds.Max).Norm() < 1e-12) {
				t.Errorf("bounds %v, want %v mm", b, row.bounds)
			}
		})
	}
}

func TestClosedAndJoined(t *testing.T) {
	a, b, c := pt(0, 0), pt(10, 0), pt(10, 5)
	for _, row := range []struct {
		name           string
		p              Path
		closed, joined bool
	}{ // definition: ends within 1e-6 mm are one point
		{"nothing", nil, false, true},
		{"one line", Path{Line{a, b}}, false, true},
		{"full circle", Circle(a, 5), true, true},
		{"two lines apart", Path{Line{a, b}, Line{c, a}}, true, false},
		{"a gap below the limit", Path{Line{a, b}, Line{b.Add(pt(0, 0.9e-6)), c}}, false, true},
		{"a gap above the limit", Path{Line{a, b}, Line{b.Add(pt(0, 1.1e-6)), c}}, false, false},
		{"closed to below the limit", Path{Line{a, b}, Line{b, a.Add(pt(0.9e-6, 0))}}, true, true},
		{"closed to above the limit", Path{Line{a, b}, Line{b, a.Add(pt(1.1e-6, 0))}}, false, true},
		{"first gap counts too", Path{Line{a, b}, Line{c, a}, Line{a, b}}, false, false},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := row.p.Closed(); got != row.closed {
				t.Errorf("%v: closed %v, want %v", row.p, got, row.closed)
			}
			if got := row.p.Joined(); got != row.joined {
				t.Errorf("%v: joined %v, want %v", row.p, got, row.joined)
			}
		})
	}
}

// Property: reversing keeps the length, swaps the ends, and undoes itself.
func TestPathReverse(t *testing.T) {
	p := Path(AllKinds())
	before := fmt.Sprint(p)
	r := p.Reverse()
	if fmt.Sprint(p) != before {
		t.Errorf("Reverse changed its path to %v", p)
	}
	near(t, "length", r.Length(), p.Length(), 1e-9, "mm")
	back := r.Reverse()
	for i, s := range p {
		nearPoint(t, fmt.Sprintf("start of %d", i), r[len(p)-1-i].Start(), s.End(), 1e-9)
		nearPoint(t, fmt.Sprintf("end of %d", i), r[len(p)-1-i].End(), s.Start(), 1e-9)
		nearPoint(t, fmt.Sprintf("%d twice, middle", i), back[i].At(0.3), s.At(0.3), 1e-9)
	}
	outline := Polygon(pt(0, 0), pt(10, 0), pt(10, 5))
	if got := outline.Reverse(); !got.Joined() || !got.Closed() {
		t.Errorf("%v reversed is %v: joined %v, closed %v", outline, got, got.Joined(), got.Closed())
	}
	near(t, "area of the outline reversed", Area(outline.Reverse().Flatten(1)), -25, 0, "mm2")
}
