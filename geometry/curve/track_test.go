package curve

import (
	"fmt"
	"math"
	"testing"

	"ribwright/geometry"
)

// level is the coordinate that stays 0.
func level(float64) (float64, float64) { return 0, 0 }

// slanted returns the straight coordinate with the given slope.
func slanted(slope float64) Func {
	return func(x float64) (float64, float64) { return slope * x, slope }
}

// circle returns y = sqrt(R^2 - x^2) with its slope.
func circle(r float64) Func {
	return func(x float64) (float64, float64) {
		y := math.Sqrt(r*r - x*x)
		return y, -x / y
	}
}

// mustTrack returns the track between the stations.
func mustTrack(t *testing.T, x0, x1, zero float64, y, z Func) *Track {
	t.Helper()
	track, err := NewTrack(x0, x1, zero, Apart(y, z))
	if err != nil {
		t.Fatal(err)
	}
	return track
}

// The length between two stations of a circle is R times the angle between
// them. Arithmetic.
func TestTrackAgainstArc(t *testing.T) {
	for _, row := range []struct {
		name         string
		r, x0, x1, z float64
	}{
		{"gunwale of 5 m", 7400, -2440, 2440, 0},
		{"zero at the after end", 7400, -2440, 2440, -2440},
		{"full bow", 3000, -1500, 2100, 300},
		{"shorter than a panel", 500, 100, 117, 110},
		{"steep at one end", 1000, -100, 700, 0},
	} {
		t.Run(row.name, func(t *testing.T) {
			track := mustTrack(t, row.x0, row.x1, row.z, circle(row.r), level)
			for k := 0; k <= 60; k++ {
				x := row.x0 + (row.x1-row.x0)*float64(k)/60
				want := row.r * (math.Asin(x/row.r) - math.Asin(row.z/row.r))
				near(t, fmt.Sprintf("R %g from %g to %g", row.r, row.z, x), track.Length(x), want, 1e-9, "mm")
			}
		})
	}
}

// A real gunwale is a batten, whose bend has corners at its pins. Panels that
// straddle a pin cost a little, still far below a pencil line. Property: sums over
// fine panels that end at the pins.
func TestTrackOverBatten(t *testing.T) {
	pins := []float64{-2440, -1611, -703, 0, 703, 1611, 2440}
	breadth := mustBatten(t, pins, []float64{0, 260, 395, 430, 395, 260, 0})
	height := mustBatten(t, pins, []float64{480, 370, 290, 260, 290, 370, 480})
	coordinate := func(b *Batten) Func {
		return func(x float64) (float64, float64) {
			value, slope, _ := b.At(x)
			return value, slope
		}
	}
	track := mustTrack(t, -2440, 2440, -2440, coordinate(breadth), coordinate(height))
	speed := func(x float64) float64 {
		_, dy, _ := breadth.At(x)
		_, dz, _ := height.At(x)
		return math.Hypot(1, math.Hypot(dy, dz))
	}
	sum := 0.0
	for i := 1; i < len(pins); i++ {
		sum += Integrate(speed, pins[i-1], pins[i], 200)
		near(t, fmt.Sprintf("length to pin %d at %g", i, pins[i]), track.Length(pins[i]), sum, 1e-6, "mm")
		near(t, fmt.Sprintf("station of pin %d at %g", i, pins[i]), track.Station(sum), pins[i], 1e-6, "mm")
	}
}

func TestTrackKnownLengths(t *testing.T) {
	const k = 2 * math.Pi / 2500 // one turn of the helix in 2.5 m
	for _, row := range []struct {
		name    string
		y, z    Func
		x, want float64
		tol     float64
	}{ // arithmetic and calculus
		{"straight ahead", level, level, 700, 700, 1e-10},
		{"3 to port in 4", slanted(0.75), level, 800, 1000, 1e-10},
		{"up and to port, 2 and 2 in 1", slanted(2), slanted(-2), 100, 300, 1e-10},
		{"abaft", slanted(0.75), level, -800, -1000, 1e-10},
		// A cable y = c cosh(x/c) is c sinh(x/c) long.
		{"catenary", func(x float64) (float64, float64) { return 900 * math.Cosh(x/900), math.Sinh(x / 900) }, level, 750, 900 * math.Sinh(750.0/900), 1e-9},
		{"catenary on edge", level, func(x float64) (float64, float64) { return 900 * math.Cosh(x/900), math.Sinh(x / 900) }, -750, -900 * math.Sinh(750.0/900), 1e-9},
		// A helix of radius 100 has one speed everywhere.
		{"helix", func(x float64) (float64, float64) { return 100 * math.Cos(k*x), -100 * k * math.Sin(k*x) },
			func(x float64) (float64, float64) { return 100 * math.Sin(k*x), 100 * k * math.Cos(k*x) }, 900, 900 * math.Hypot(1, 100*k), 1e-9},
	} {
		t.Run(row.name, func(t *testing.T) {
			track := mustTrack(t, -1000, 1000, 0, row.y, row.z)
			near(t, fmt.Sprintf("length to %g", row.x), track.Length(row.x), row.want, row.tol, "mm")
			near(t, fmt.Sprintf("station of %g", row.want), track.Station(row.want), row.x, row.tol, "mm")
		})
	}
}

// Property: lengths are 0 at their zero, negative abaft it and grow forward,
// and differences do not depend on where zero lies.
func TestTrackOrigin(t *testing.T) {
	middle := mustTrack(t, -2000, 2000, 0, circle(4000), slanted(0.1))
	for _, zero := range []float64{-2000, -1234.5, 0, 1999, 2000, 2050} {
		t.Run(fmt.Sprint(zero), func(t *testing.T) {
			track := mustTrack(t, -2000, 2000, zero, circle(4000), slanted(0.1))
			near(t, "length at the zero", track.Length(zero), 0, 1e-10, "mm")
			near(t, "station of length 0", track.Station(0), zero, 1e-9, "mm")
			if ahead := track.Length(zero + 1); !(ahead >= 1) {
				t.Errorf("1 mm ahead of the zero %g the length is %g mm, want at least 1", zero, ahead)
			}
			if abaft := track.Length(zero - 1); !(abaft <= -1) {
				t.Errorf("1 mm abaft the zero %g the length is %g mm, want at most -1", zero, abaft)
			}
			near(t, "from -1500 to 700", track.Length(700)-track.Length(-1500), middle.Length(700)-middle.Length(-1500), 1e-9, "mm")
		})
	}
}

// Property: Station undoes Length, on the table's stations, between and beyond
// them.
func TestTrackRoundTrip(t *testing.T) {
	for _, row := range []struct {
		name   string
		x0, x1 float64
		y, z   Func
	}{
		{"gunwale", -2440, 2440, circle(7400), circle(20000)},
		{"steep", -900, 900, circle(1000), slanted(-0.5)},
		{"short", 3, 4, slanted(5), level},
	} {
		t.Run(row.name, func(t *testing.T) {
			track := mustTrack(t, row.x0, row.x1, row.x0, row.y, row.z)
			span := row.x1 - row.x0
			last := math.Inf(-1)
			for k := -2; k <= 102; k++ { // 2 percent beyond both ends
				x := row.x0 + span*float64(k)/100
				s := track.Length(x)
				if !(s > last) {
					t.Errorf("length %g mm at %g does not grow from %g", s, x, last)
				}
				last = s
				near(t, fmt.Sprintf("station of the length at %g", x), track.Station(s), x, 1e-9, "mm")
			}
		})
	}
}

// Beyond its ends a track is followed on along its own functions. Arithmetic.
func TestTrackExtended(t *testing.T) {
	for _, row := range []struct {
		name    string
		y, z    Func
		x, want float64
		tol     float64
	}{
		{"straight, abaft", slanted(0.75), level, -1400, -1750, 1e-9},
		{"straight, ahead", slanted(0.75), level, 1400, 1750, 1e-9},
		{"arc, abaft", circle(4000), level, -1020, 4000 * math.Asin(-0.255), 1e-9},
		{"arc, ahead", circle(4000), level, 1020, 4000 * math.Asin(0.255), 1e-9},
	} {
		t.Run(row.name, func(t *testing.T) {
			track := mustTrack(t, -1000, 1000, 0, row.y, row.z)
			near(t, fmt.Sprintf("length to %g", row.x), track.Length(row.x), row.want, row.tol, "mm")
			near(t, fmt.Sprintf("station of %g", row.want), track.Station(row.want), row.x, row.tol, "mm")
		})
	}
}

func TestTrackPoint(t *testing.T) {
	track := mustTrack(t, -30, 40, 0, slanted(0.75), func(x float64) (float64, float64) { return x * x, 2 * x })
	for _, row := range []struct {
		x      float64
		want   geometry.Point3
		dy, dz float64
	}{ // arithmetic
		{0, geometry.Point3{}, 0.75, 0},
		{20, geometry.Point3{X: 20, Y: 15, Z: 400}, 0.75, 40},
		{-40, geometry.Point3{X: -40, Y: -30, Z: 1600}, 0.75, -80},
	} {
		t.Run(fmt.Sprint(row.x), func(t *testing.T) {
			if got := track.Point(row.x); got != row.want {
				t.Errorf("at %g: got %v, want %v mm", row.x, got, row.want)
			}
			dy, dz := track.Slopes(row.x)
			near(t, "dy/dx", dy, row.dy, 0, "mm per mm")
			near(t, "dz/dx", dz, row.dz, 0, "mm per mm")
		})
	}
	if a, b := track.Ends(); a != -30 || b != 40 {
		t.Errorf("ends %g and %g, want -30 and 40 mm", a, b)
	}
}

func TestTrackRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, row := range []struct {
		name   string
		x0, x1 float64
	}{
		{"no length", 5, 5},
		{"backwards", 5, 4},
		{"after end not a number", nan, 4},
		{"forward end not a number", 4, nan},
		{"endless ahead", 0, inf},
		{"endless abaft", -inf, 0},
		{"longer than a kilometre", 0, 1.0001e6},
	} {
		t.Run(row.name, func(t *testing.T) {
			if track, err := NewTrack(row.x0, row.x1, 0, Apart(level, level)); err == nil || track != nil {
				t.Errorf("from %g to %g: got %v, %v, want an error", row.x0, row.x1, track, err)
			}
		})
	}
	if _, err := NewTrack(0, 1e6, 0, Apart(level, level)); err != nil {
		t.Errorf("a kilometre: %v", err)
	}
}
