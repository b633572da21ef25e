package curve

import (
	"math"
	"math/rand/v2"
	"testing"

	"ribwright/geometry"
)

func TestCrossing(t *testing.T) {
	star := Polygon(geometry.Polar(10, 0), geometry.Polar(10, 0.8*math.Pi), geometry.Polar(10, 1.6*math.Pi), geometry.Polar(10, 0.4*math.Pi), geometry.Polar(10, 1.2*math.Pi))
	for _, c := range []struct {
		name string
		path Path
		want bool
	}{
		{"nothing", nil, false},
		{"circle", Circle(geometry.Pt(3, 4), 5), false},
		{"rectangle", Rectangle(geometry.Rect(0, 0, 20, 10)), false},
		{"five-pointed star, drawn in one go", star, true},
		{"bow tie", Polygon(geometry.Pt(0, 0), geometry.Pt(10, 10), geometry.Pt(10, 0), geometry.Pt(0, 10)), true},
		{"two squares that touch in a corner", Polygon(geometry.Pt(0, 0), geometry.Pt(5, 0), geometry.Pt(5, 5), geometry.Pt(10, 5), geometry.Pt(10, 10), geometry.Pt(5, 10), geometry.Pt(5, 5), geometry.Pt(0, 5)), false},
	} {
		at, got := c.path.Crossing(0.01)
		if got != c.want {
			t.Errorf("%s: crosses itself %v, want %v", c.name, got, c.want)
		}
		if c.name == "bow tie" && at.Sub(geometry.Pt(5, 5)).Norm() > 1e-9 {
			t.Errorf("%s: crosses at %v, want the middle", c.name, at)
		}
	}
}

// A closed line that does not cross itself turns by one whole turn, whichever way it winds.
//
// Source: the theorem of turning tangents (Hopf 1935), for polygons; from memory.
func TestCrossingTurnsOnce(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 4))
	simple := 0
	for range 20000 {
		pts := make([]geometry.Point, 3+r.IntN(5))
		for i := range pts {
			pts[i] = geometry.Pt(100*r.Float64(), 100*r.Float64())
		}
		if _, crosses := Polygon(pts...).Crossing(0.01); crosses {
			continue
		}
		simple++
		turned := 0.0
		for i := range pts {
			a, b, c := pts[i], pts[(i+1)%len(pts)], pts[(i+2)%len(pts)]
			turned += math.Atan2(b.Sub(a).Cross(c.Sub(b)), b.Sub(a).Dot(c.Sub(b)))
		}
		if math.Abs(math.Abs(turned)-2*math.Pi) > 1e-6 {
			t.Fatalf("%v turns by %.2f whole turns and is said not to cross itself", pts, turned/2/math.Pi)
		}
	}
	if simple < 1000 {
		t.Errorf("only %d polygons do not cross themselves", simple)
	}
}

// A star about its middle never crosses itself: its corners stand in the order of their
// bearings. It shows that what is whole is not refused.
func TestCrossingKeepsStars(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 5))
	for range 2000 {
		n := 3 + r.IntN(40)
		pts := make([]geometry.Point, n)
		for i := range pts {
			pts[i] = geometry.Polar(1+99*r.Float64(), 2*math.Pi*(float64(i)+0.9*r.Float64())/float64(n))
		}
		if at, crosses := Polygon(pts...).Crossing(0.01); crosses {
			t.Fatalf("%v is said to cross itself at %v", pts, at)
		}
	}
}
