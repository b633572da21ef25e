package curve

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
)

// rib is a run of 100, a quarter turn of 50 and a run of 30 mm.
var rib = Chain{Straight(100), Turned(50, math.Pi/2), Straight(30)}

func TestChainAt(t *testing.T) {
	h := 50 * math.Sqrt2 / 2
	bow := 12.5 * math.Pi // half of the quarter turn
	for _, row := range []struct {
		name    string
		c       Chain
		s       float64
		want    geometry.Point
		heading float64
		tol     float64
	}{ // arithmetic, by hand
		{"start", rib, 0, pt(0, 0), 0, 0},
		{"before the start", rib, -20, pt(-20, 0), 0, 0},
		{"on the first run", rib, 60, pt(60, 0), 0, 0},
		{"where the turn begins", rib, 100, pt(100, 0), 0, 1e-13},
		{"half round the turn", rib, 100 + bow, pt(100+h, 50-h), math.Pi / 4, 1e-12},
		{"where the turn ends", rib, 100 + 2*bow, pt(150, 50), math.Pi / 2, 1e-12},
		{"on the second run", rib, 110 + 2*bow, pt(150, 60), math.Pi / 2, 1e-12},
		{"end", rib, 130 + 2*bow, pt(150, 80), math.Pi / 2, 1e-12},
		{"beyond the end", rib, 150 + 2*bow, pt(150, 100), math.Pi / 2, 1e-12},
		{"no bends", nil, 12, pt(12, 0), 0, 0},
		{"no bends, backwards", nil, -12, pt(-12, 0), 0, 0},
		{"turn at once", Chain{Turned(80, math.Pi)}, 80 * math.Pi, pt(0, 160), math.Pi, 1e-12},
		{"turn, then beyond", Chain{Turned(80, math.Pi)}, 80*math.Pi + 7, pt(-7, 160), math.Pi, 1e-12},
		{"two radii without a kink", Chain{Turned(80, math.Pi/2), Turned(20, math.Pi/2)}, 50 * math.Pi, pt(60, 100), math.Pi, 1e-12},
		{"half a millimetre into a turn", Chain{Turned(5, math.Pi)}, 0.5, pt(5*math.Sin(0.1), 5*(1-math.Cos(0.1))), 0.1, 1e-14},
		{"one millimetre beyond", Chain{Straight(9)}, 10, pt(10, 0), 0, 0},
		{"one millimetre before", rib, -1, pt(-1, 0), 0, 0},
		{"a step of no length", Chain{Straight(0), Turned(80, 0), Straight(10)}, 10, pt(10, 0), 0, 1e-13},
	} {
		t.Run(row.name, func(t *testing.T) {
			p, heading := row.c.At(row.s)
			nearPoint(t, fmt.Sprintf("%v at %g mm", row.c, row.s), p, row.want, row.tol)
			near(t, fmt.Sprintf("%v at %g mm", row.c, row.s), heading, row.heading, row.tol, "rad")
		})
	}
}

func TestBend(t *testing.T) {
	for _, row := range []struct {
		name      string
		got, want Bend
		tol       float64
	}{ // arithmetic
		{"straight", Straight(40), Bend{Radius: 0, Sweep: 0, Length: 40}, 0},
		{"turned", Turned(50, 0.4), Bend{Radius: 50, Sweep: 0.4, Length: 20}, 0},
	} {
		t.Run(row.name, func(t *testing.T) {
			near(t, "radius", row.got.Radius, row.want.Radius, row.tol, "mm")
			near(t, "sweep", row.got.Sweep, row.want.Sweep, row.tol, "rad")
			near(t, "length", row.got.Length, row.want.Length, row.tol, "mm")
		})
	}
}

func TestChainEnd(t *testing.T) {
	for _, row := range []struct {
		name                 string
		c                    Chain
		length               float64
		end                  geometry.Point
		heading, tol, lenTol float64
	}{ // arithmetic, by hand; a half turn of R has the girth pi R
		{"nothing", nil, 0, pt(0, 0), 0, 0, 0},
		{"straight", Chain{Straight(40)}, 40, pt(40, 0), 0, 0, 0},
		{"half turn", Chain{Turned(200, math.Pi)}, 628.3185307179587, pt(0, 400), math.Pi, 1e-12, 1e-12},
		{"rib", rib, 130 + 25*math.Pi, pt(150, 80), math.Pi / 2, 1e-12, 1e-12},
		{"full turn", Chain{Turned(30, 2*math.Pi)}, 60 * math.Pi, pt(0, 0), 2 * math.Pi, 1e-12, 1e-12},
	} {
		t.Run(row.name, func(t *testing.T) {
			p, heading := row.c.End()
			nearPoint(t, fmt.Sprintf("end of %v", row.c), p, row.end, row.tol)
			near(t, fmt.Sprintf("heading of %v", row.c), heading, row.heading, row.tol, "rad")
			near(t, fmt.Sprintf("length of %v", row.c), row.c.Length(), row.length, row.lenTol, "mm")
		})
	}
}

// The path of a chain is the chain: same kinds, joined, as long, and every
// point where At has it, turned and moved to the start. Property.
func TestChainPath(t *testing.T) {
	long := Chain{Straight(100), Turned(50, 1), Straight(0), Straight(0.5), Turned(300, 0.4), Turned(20, 0), Straight(30), Turned(0.6, 1.2)}
	for _, row := range []struct {
		name    string
		c       Chain
		start   geometry.Point
		heading float64
		kinds   string
	}{
		{"nothing", nil, pt(5, 6), 1, "[]"},
		{"rib from the origin", rib, pt(0, 0), 0, "[curve.Line curve.Arc curve.Line]"},
		{"rib moved and turned", rib, pt(500, -30), 2.2, "[curve.Line curve.Arc curve.Line]"},
		{"steps of no length are passed over", long, pt(7, 8), -0.6, "[curve.Line curve.Arc curve.Line curve.Arc curve.Line curve.Arc]"},
	} {
		t.Run(row.name, func(t *testing.T) {
			p := row.c.Path(row.start, row.heading)
			kinds := []string{}
			for _, s := range p {
				kinds = append(kinds, fmt.Sprintf("%T", s))
			}
			if fmt.Sprint(kinds) != row.kinds {
				t.Errorf("%v draws %v, want %s", row.c, kinds, row.kinds)
			}
			if !p.Joined() {
				t.Errorf("%v is not joined", p)
			}
			near(t, "length", p.Length(), row.c.Length(), 1e-10, "mm")
			place := geometry.Turn(row.heading).Then(geometry.Shift(row.start.X, row.start.Y))
			done := 0.0
			for i, s := range p {
				for k := 0; k <= 8; k++ {
					u := float64(k) / 8
					want, _ := row.c.At(done + u*s.Length())
					nearPoint(t, fmt.Sprintf("segment %d at %g", i, u), s.At(u), place.Apply(want), 1e-9)
				}
				done += s.Length()
			}
		})
	}
}

func TestChainOffset(t *testing.T) {
	for _, row := range []struct {
		name   string
		c      Chain
		d      float64
		length float64
		tol    float64
	}{ // arithmetic, by hand: an arc gains or loses sweep times d
		{"nothing", nil, 10, 0, 0},
		{"straight keeps its length", Chain{Straight(40)}, 1000, 40, 0},
		{"circle inward", Chain{Turned(100, 2*math.Pi)}, 30, 140 * math.Pi, 1e-12},
		{"circle outward", Chain{Turned(100, 2*math.Pi)}, -30, 260 * math.Pi, 1e-12},
		{"half turn outward by half a rib", Chain{Turned(200, math.Pi)}, -4, 204 * math.Pi, 1e-12},
		{"rib inward", rib, 8, 130 + 21*math.Pi, 1e-12},
		{"by nothing", rib, 0, 130 + 25*math.Pi, 1e-12},
		{"all but the radius", Chain{Turned(10, 1)}, 9.75, 0.25, 1e-15},
	} {
		t.Run(row.name, func(t *testing.T) {
			got, err := row.c.Offset(row.d)
			if err != nil {
				t.Fatal(err)
			}
			near(t, fmt.Sprintf("%v by %g mm", row.c, row.d), got.Length(), row.length, row.tol, "mm")
		})
	}
}

// Property: every point of the offset, drawn from d to the left of the start,
// stands d to the left of the point of the chain with the same heading.
func TestChainOffsetIsParallel(t *testing.T) {
	c := Chain{Straight(100), Turned(50, 1), Turned(300, 0.4), Straight(30), Turned(20, 1.2)}
	for _, d := range []float64{12, -12, 19, 0} {
		t.Run(fmt.Sprint(d), func(t *testing.T) {
			o, err := c.Offset(d)
			if err != nil {
				t.Fatal(err)
			}
			inside, outside := o.Path(pt(0, d), 0), c.Path(pt(0, 0), 0)
			if len(inside) != len(outside) {
				t.Fatalf("%d segments offset to %d", len(outside), len(inside))
			}
			done := 0.0
			for i, s := range outside {
				for k := 0; k <= 8; k++ {
					u := float64(k) / 8
					_, heading := c.At(done + u*s.Length())
					want := s.At(u).Add(geometry.Polar(d, heading+math.Pi/2))
					nearPoint(t, fmt.Sprintf("%g mm left of segment %d at %g", d, i, u), inside[i].At(u), want, 1e-9)
				}
				done += s.Length()
			}
			back, err := o.Offset(-d)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "length there and back", back.Length(), c.Length(), 1e-9, "mm")
		})
	}
	if c[1] != Turned(50, 1) {
		t.Errorf("Offset changed its chain: %v", c)
	}
}

func TestChainOffsetRefuses(t *testing.T) {
	for _, row := range []struct {
		name string
		c    Chain
		d    float64
		want string
	}{ // definition: an arc of radius 0 or less is none
		{"exactly the radius", Chain{Straight(9), Turned(50, 1)}, 50, "50.0 mm radius"},
		{"more than the radius", Chain{Turned(50, 1)}, 60, "offset of 60.0 mm"},
		{"the smallest arc counts", Chain{Turned(500, 1), Turned(20, 1)}, 21, "20.0 mm radius"},
	} {
		t.Run(row.name, func(t *testing.T) {
			got, err := row.c.Offset(row.d)
			if err == nil || got != nil || !strings.Contains(err.Error(), row.want) {
				t.Errorf("%v by %g mm: got %v, %v, want an error with %q", row.c, row.d, got, err, row.want)
			}
		})
	}
}

// TestChainRight goes round a turn to the right, which mirrors one to the left, and
// along an arc too slight to draw.
func TestChainRight(t *testing.T) {
	right := Chain{Straight(100), Turned(-50, -math.Pi/2), Straight(30)}
	for s := -10.0; s < 230; s += 7 {
		left, turned := rib.At(s)
		p, heading := right.At(s)
		nearPoint(t, fmt.Sprintf("right at %g mm", s), p, pt(left.X, -left.Y), 1e-12)
		near(t, "heading", heading, -turned, 0, "rad")
	}
	path := right.Path(pt(0, 0), 0)
	if a, ok := path[1].(Arc); !ok || a.Radius != 50 || a.Sweep != -math.Pi/2 {
		t.Errorf("drawn as %v", path[1])
	}
	nearPoint(t, "drawn from", path[1].Start(), pt(100, 0), 1e-12)
	nearPoint(t, "drawn to", path[1].End(), pt(150, -50), 1e-12)
	out, err := right.Offset(10)
	if err != nil || out[1].Radius != -60 || math.Abs(out[1].Length-30*math.Pi) > 1e-12 {
		t.Errorf("10 mm to the left: %v, %v", out, err)
	}
	if _, err := right.Offset(-50); err == nil {
		t.Error("50 mm to the right leaves nothing of the turn")
	}
	slight := Chain{Bend{Radius: 1e12, Sweep: 1e-11, Length: 10}}
	if _, ok := slight.Path(pt(0, 0), 0)[0].(Line); !ok {
		t.Error("an arc of 1e9 m is not drawn straight")
	}
	end, heading := slight.End()
	nearPoint(t, "its end", end, pt(10, 5e-11), 1e-15)
	near(t, "its heading", heading, 1e-11, 1e-26, "rad")
}

// TestSinc checks both sides of where the series begins to serve.
func TestSinc(t *testing.T) {
	near(t, "at zero", Sinc(0), 1, 0, "")
	for _, a := range []float64{1e-9, 1e-4, 0.03, 0.0999999, 0.1, 1, math.Pi} {
		near(t, fmt.Sprint(a), Sinc(-a), math.Sin(a)/a, 2e-16, "")
	}
}

// TestAlong: the squares of the levers about the end of a quarter arc, pi R³/4 level and
// (3 pi/4 - 2) R³ upright; of a square corner, h³/3 + b h² and b³/3. A quarter arc lies R²
// under the level of its end, all together. Plane geometry.
func TestAlong(t *testing.T) {
	levers := func(c Chain) (x2, y2 float64) {
		end, _ := c.End()
		c.Along(func(_ int, p geometry.Point, ds float64) {
			l := end.Sub(p)
			x2, y2 = x2+ds*l.X*l.X, y2+ds*l.Y*l.Y
		})
		return x2, y2
	}
	const r = 300.0
	x2, y2 := levers(Chain{Turned(r, math.Pi/2)})
	if math.Abs(y2/(math.Pi/4*r*r*r)-1) > 1e-9 || math.Abs(x2/((3*math.Pi/4-2)*r*r*r)-1) > 1e-9 {
		t.Errorf("quarter arc: %.9g and %.9g", x2, y2)
	}
	sum := 0.0
	Chain{Turned(r, math.Pi/2)}.Along(func(_ int, p geometry.Point, ds float64) { sum += (r - p.Y) * ds })
	if math.Abs(sum/(r*r)-1) > 1e-9 {
		t.Errorf("first moment of a quarter arc: %.9g, want %.9g", sum, r*r)
	}
	const b, h = 200.0, 90.0
	c := Chain{Straight(b), Turned(1e-9, math.Pi/2), Straight(h)}
	if x2, y2 = levers(c); math.Abs(x2/(b*b*b/3)-1) > 1e-9 || math.Abs(y2/(h*h*h/3+b*h*h)-1) > 1e-9 {
		t.Errorf("corner: %.9g and %.9g", x2, y2)
	}
}

// TestRadiusAt: an arc, a straight run, an arc, by their lengths.
func TestRadiusAt(t *testing.T) {
	c := Chain{Turned(100, 1), Straight(50), Turned(30, 0.5)}
	for s, want := range map[float64]float64{0: 100, 100: 100, 100.1: 0, 149: 0, 151: 30, 165: 30, 166: 0} {
		if got := c.RadiusAt(s); got != want {
			t.Errorf("%g mm along: %g, want %g", s, got, want)
		}
	}
}

// TestWalked: places of a chain that was walked once are those of At, to the last bit, in
// any order and beyond both ends.
func TestWalked(t *testing.T) {
	chain := Chain{Straight(100), Turned(200, 1), Turned(-300, -0.5), Straight(0), Turned(50, 0.3)}
	for _, c := range []Chain{chain, chain[:1], nil} {
		w := c.Walk()
		for _, s := range []float64{250, 0, -50, 100, 125, 300, 450, 465, 600, 50} {
			p, heading := w.At(s)
			if want, turned := c.At(s); p != want || heading != turned {
				t.Errorf("%d bends, %g mm: %v heading %v, want %v heading %v", len(c), s, p, heading, want, turned)
			}
		}
	}
}
