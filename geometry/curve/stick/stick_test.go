package stick

import (
	"math"
	"math/rand/v2"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %.12g, want %.12g", what, got, want)
	}
}

func pin(x, y, z, flat float64) Pin {
	return Pin{geometry.Point3{X: x, Y: y, Z: z}, flat}
}

func bent3(t *testing.T, stiff float64, pins ...Pin) *Stick {
	t.Helper()
	s, err := New(pins, stiff)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// random pins along a hull, the flat turned by so much from each to the next.
func random(r *rand.Rand, n int, turn float64) []Pin {
	x, flat := 0.0, 0.4
	var out []Pin
	for range n {
		x += 90 + 80*r.Float64()
		flat += turn * r.Float64()
		out = append(out, pin(x, 40*r.Float64(), 30*r.Float64(), flat))
	}
	return out
}

// TestUntwisted: a stick whose flat never turns is a natural spline in plan and another
// in profile, however its flat stands and whatever its stiffness.
func TestUntwisted(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for _, stiff := range []float64{1, 2.8, 4, 25} {
		pins := random(r, 9, 0)
		var x, y, z []float64
		for _, p := range pins {
			x, y, z = append(x, p.X), append(y, p.Y), append(z, p.Z)
		}
		plan, _ := curve.NewBatten(x, y)
		side, _ := curve.NewBatten(x, z)
		s := bent3(t, stiff, pins...)
		for at := x[0] - 50; at < x[8]+50; at += 7.3 {
			p, slope, bend := s.Run(at)
			y, dy, ddy := plan.At(at)
			z, dz, ddz := side.At(at)
			near(t, "y", p.X, y, 1e-9)
			near(t, "z", p.Y, z, 1e-9)
			near(t, "dy", slope.X, dy, 1e-12)
			near(t, "dz", slope.Y, dz, 1e-12)
			near(t, "bend in plan", bend.X, ddy, 1e-14)
			near(t, "bend in profile", bend.Y, ddz, 1e-14)
		}
	}
}

// TestTies: a twisted stick goes through its pins, runs and bends on without a step, and
// is straight at its ends.
func TestTies(t *testing.T) {
	pins := random(rand.New(rand.NewPCG(3, 4)), 8, 0.4)
	s := bent3(t, 4, pins...)
	for i, p := range pins {
		at, before, bend := s.Run(p.X)
		near(t, "y at a pin", at.X, p.Y, 1e-9)
		near(t, "z at a pin", at.Y, p.Z, 1e-9)
		_, after, on := s.Run(p.X + 1e-7)
		near(t, "step of the run", after.Sub(before).Norm(), 0, 1e-9)
		if i == 0 || i == len(pins)-1 {
			near(t, "bend at an end", bend.Norm(), 0, 1e-15)
			continue
		}
		near(t, "step of the bend", on.Sub(bend).Norm(), 0, 1e-9)
		flat, _ := s.Flat(p.X)
		near(t, "flat", flat, p.Flat, 1e-12)
	}
}

// TestTurned: turning the whole about the fore-and-aft axis, flat and all, turns the
// stick with it and changes no energy.
func TestTurned(t *testing.T) {
	pins := random(rand.New(rand.NewPCG(5, 6)), 7, 0.3)
	a := bent3(t, 4, pins...)
	const by = 0.7
	turned := make([]Pin, len(pins))
	for i, p := range pins {
		q := geometry.Turn(by).Apply(geometry.Point{X: p.Y, Y: p.Z})
		turned[i] = pin(p.X, q.X, q.Y, p.Flat+by)
	}
	b := bent3(t, 4, turned...)
	for x := pins[0].X; x < pins[6].X; x += 11 {
		p, _, _ := a.Run(x)
		q, _, _ := b.Run(x)
		near(t, "off", geometry.Turn(by).Apply(p).Sub(q).Norm(), 0, 1e-9)
	}
	near(t, "energy", b.Energy(0, 1e6, 4)/a.Energy(0, 1e6, 4), 1, 1e-12)
}

// TestBeam holds the energy to the closed form of a beam on two supports pushed aside in
// the middle, half of 48 E I d^2 / L^3, off the flat and along it.
func TestBeam(t *testing.T) {
	const half, d, stiff = 400.0, 9.0, 4.0
	want := 48 * d * d / math.Pow(2*half, 3) / 2
	up := bent3(t, stiff, pin(-half, 0, 0, 0), pin(0, 0, d, 0), pin(half, 0, 0, 0))
	near(t, "off the flat", up.Energy(-half, half, stiff)/want, 1, 1e-12)
	out := bent3(t, stiff, pin(-half, 0, 0, 0), pin(0, d, 0, 0), pin(half, 0, 0, 0))
	near(t, "along the flat", out.Energy(-half, half, stiff)/want, stiff, 1e-12)
}

// TestLeast: no other line through the pins bends with less energy. The line is moved by
// any smooth bump that leaves the pins where they are, one that the stick's own formulas
// do not know, and the energy is summed from second derivatives anew.
func TestLeast(t *testing.T) {
	pins := random(rand.New(rand.NewPCG(7, 8)), 6, 0.2)
	const stiff = 4.0
	s := bent3(t, stiff, pins...)
	energy := func(push geometry.Point, bay int) float64 {
		sum := 0.0
		for i := 1; i < len(pins); i++ {
			a, b := pins[i-1].X, pins[i].X
			sum += curve.Integrate(func(x float64) float64 {
				_, _, bend := s.Run(x)
				// A wave that begins and ends level on its pins: 1 - cos.
				if i == bay {
					w := 2 * math.Pi / (b - a)
					bend = bend.Add(push.Scale(w * w * math.Cos(w*(x-a))))
				}
				flat, _ := s.Flat(x)
				sin, cos := math.Sincos(flat)
				off, along := cos*bend.Y-sin*bend.X, cos*bend.X+sin*bend.Y
				return (off*off + stiff*along*along) / 2
			}, a, b, 8)
		}
		return sum
	}
	base := energy(geometry.Point{}, 0)
	near(t, "energy", s.Energy(0, 1e6, stiff)/base, 1, 1e-9)
	for bay := 1; bay < len(pins); bay++ {
		for _, push := range []geometry.Point{{X: 0.5}, {X: -0.5}, {Y: 0.5}, {Y: -0.5}, {X: 0.4, Y: 0.3}} {
			if more := energy(push, bay) - base; more <= 0 {
				t.Errorf("bay %d pushed by %v bends with %.3g less", bay, push, -more)
			}
		}
	}
}

// TestLoose: what a loose end says of one more pin is what the whole stick's energy grows
// by, and how it runs by itself is how the stick without that pin does.
func TestLoose(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 20 {
		pins := random(r, 7, 0.15)
		const stiff = 2.8
		l := Loosen(pins[0], stiff)
		for _, p := range pins[1:6] {
			l = l.To(p)
		}
		short, whole := bent3(t, stiff, pins[:6]...), bent3(t, stiff, pins...)
		_, slope, _ := short.Run(pins[5].X)
		near(t, "run", l.Run().Sub(slope).Norm(), 0, 1e-12)
		grown := whole.Energy(0, 1e6, stiff) - short.Energy(0, 1e6, stiff)
		near(t, "energy", l.Energy(pins[6])/grown, 1, 1e-3)
		straight := slope.Scale(pins[6].X - pins[5].X)
		near(t, "energy straight on", l.Energy(pin(pins[6].X, pins[5].Y+straight.X, pins[5].Z+straight.Y, 2)), 0, 1e-18)
		before := Loosen(pins[0], stiff)
		for _, p := range pins[1:5] {
			before = before.To(p)
		}
		a, b, c := before.Runs(pins[5], pins[6])
		for i, got := range []geometry.Point{a, b, c} {
			_, want, _ := whole.Run(pins[4+i].X)
			near(t, "runs", got.Sub(want).Norm(), 0, 1e-12)
		}
	}
}

// TestParabola measures how far the flexibility of a bay that twists leaves the one of a
// flat that turns evenly, as a share of what the two stiffnesses differ by.
func TestParabola(t *testing.T) {
	for _, c := range []struct{ twist, tol float64 }{{0, 1e-15}, {10, 0.001}, {30, 0.012}, {65, 0.1}} {
		const stiff = 4.0
		a := pin(0, 0, 0, 0.3)
		b := pin(100, 0, 0, 0.3+c.twist*math.Pi/180)
		near := Loosen(a, stiff)
		f := near.bay(b).f
		for k := range 101 {
			u := float64(k) / 100
			n := [3]float64{(1 - u) * (1 - 2*u), 4 * u * (1 - u), u * (2*u - 1)}
			got := f[0].scale(n[0]).add(f[1].scale(n[1])).add(f[2].scale(n[2]))
			want := flexibility(a.Flat+(b.Flat-a.Flat)*u, stiff)
			for _, off := range []float64{got.xx - want.xx, got.xy - want.xy, got.yy - want.yy} {
				if math.Abs(off) > c.tol*(1-1/stiff) {
					t.Fatalf("%g deg in a bay: off by %.4f of the difference, at most %g", c.twist, math.Abs(off)/(1-1/stiff), c.tol)
				}
			}
		}
	}
}

// TestAbout: on a circle of 900 mm that lies in a plane tilted by an angle, the stick bends
// by 1/900 about one axis, whichever way the plane runs through the boat.
func TestAbout(t *testing.T) {
	const r = 900.0
	for _, tilt := range []float64{0, 0.5, 1.2, math.Pi / 2} {
		for _, u := range []float64{-0.5, 0, 0.4} {
			slope, second := math.Tan(u), 1/(r*math.Pow(math.Cos(u), 3))
			dir := geometry.Polar(1, tilt)
			off, along := about(dir.Scale(slope), dir.Scale(second), tilt)
			near(t, "along", along, 1/r, 1e-15)
			near(t, "off", off, 0, 1e-15)
			off, along = about(dir.Scale(slope), dir.Scale(second), tilt-math.Pi/2)
			near(t, "off its flat", off, 1/r, 1e-15)
			near(t, "not along", along, 0, 1e-15)
		}
	}
}

// TestTurn holds the angle between two runs to that of their unit tangents.
func TestTurn(t *testing.T) {
	near(t, "in plan", Turn(geometry.Point{X: math.Tan(0.2)}, geometry.Point{X: -math.Tan(0.3)}), 0.5, 1e-15)
	near(t, "in profile", Turn(geometry.Point{}, geometry.Point{Y: math.Tan(0.01)}), 0.01, 1e-15)
	a, b := geometry.Point{X: 0.3, Y: -0.2}, geometry.Point{X: -0.1, Y: 0.4}
	near(t, "both", Turn(a, b), math.Acos((1+a.Dot(b))/math.Sqrt((1+a.Dot(a))*(1+b.Dot(b)))), 1e-12)
	near(t, "none", Turn(a, a), 0, 0)
}

// TestRefused: pins that are none.
func TestRefused(t *testing.T) {
	good := []Pin{pin(0, 0, 0, 0), pin(100, 1, 1, 0)}
	for name, bad := range map[string]func() ([]Pin, float64){
		"one pin":      func() ([]Pin, float64) { return good[:1], 4 },
		"no stiffness": func() ([]Pin, float64) { return good, 0 },
		"NaN":          func() ([]Pin, float64) { return []Pin{good[0], pin(100, math.NaN(), 0, 0)}, 4 },
		"out of order": func() ([]Pin, float64) { return []Pin{good[1], good[0]}, 4 },
		"same place":   func() ([]Pin, float64) { return []Pin{good[0], good[0]}, 4 },
	} {
		if _, err := New(bad()); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
}
