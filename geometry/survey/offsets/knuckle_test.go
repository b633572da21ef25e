package offsets

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/water/float"
)

// wallSided is a table of n+1 even stations over 4 m, plumb sides 300 mm high, whose
// half-breadth follows a formula of the share from midship, -1 at the stern to 1 at the
// bow.
func wallSided(n int, breadth func(u float64) float64) *Table {
	t := &Table{}
	for i := range n + 1 {
		u := 2*float64(i)/float64(n) - 1
		y := breadth(u)
		t.Stations = append(t.Stations, Station{X: 2000 * u, Points: []geometry.Point{{}, {X: y}, {X: y, Y: 300}}})
	}
	return t
}

// fairShape has its greatest breadth aft of midship.
func fairShape(u float64) float64 { return 400 * (1 - u*u) * (1 + u*u/2 - 0.3*u) }

// TestFairAmidships: lines that are fair run on through midship, which gives the volume
// of a finer grid nearer than a rule that starts afresh there; so they do at a slope.
func TestFairAmidships(t *testing.T) {
	fine := volumeOf(t, wallSided(400, fairShape), false)
	for _, n := range []int{10, 14, 18, 22} { // an odd count of intervals on either side
		tab := wallSided(n, fairShape)
		if tab.breaksAt(n / 2) {
			t.Errorf("%d stations: fair lines are taken to break", n+1)
		}
		on, afresh := math.Abs(volumeOf(t, tab, false)/fine-1), math.Abs(volumeOf(t, tab, true)/fine-1)
		t.Logf("%d stations: %.2e off run on, %.2e begun afresh", n+1, on, afresh)
		if on > afresh {
			t.Errorf("%d stations: the run is off by %.2g, begun afresh by %.2g", n+1, on, afresh)
		}
		h, err := tab.Hull()
		if err != nil {
			t.Fatal(err)
		}
		if got := h.Holds(); math.Abs(got-volumeOf(t, tab, false)) > 1 {
			t.Errorf("%d stations: the table holds %.0f mm3, not what the run does", n+1, got)
		}
	}
}

// TestWedgesAmidships: where two wedges meet, or one side only runs level, the rule starts
// afresh and stays exact: half of the box about them, and three quarters.
func TestWedgesAmidships(t *testing.T) {
	for want, shape := range map[float64]func(float64) float64{
		0.5:  func(u float64) float64 { return 400 * (1 - math.Abs(u)) },
		0.75: func(u float64) float64 { return 400 * (1 - math.Max(0, u)) },
	} {
		tab := wallSided(14, shape)
		if !tab.breaksAt(7) {
			t.Errorf("%.2f of a box: the break is not seen", want)
		}
		h, err := tab.Hull()
		if err != nil {
			t.Fatal(err)
		}
		if got := h.Holds() / (2 * 400 * 300 * 4000); math.Abs(got-want) > 1e-9 {
			t.Errorf("%.6f of a box, want %.2f", got, want)
		}
	}
}

func volumeOf(t *testing.T, tab *Table, afresh bool) float64 {
	t.Helper()
	var out []float.Station
	for _, s := range tab.Stations {
		out = append(out, float.Station{X: s.X, Half: s.Points, Knuckle: afresh && s.X == 0})
	}
	h, err := float.New(out)
	if err != nil {
		t.Fatal(err)
	}
	return h.Holds()
}

// TestReadingsAmidships: the readings of a printed table to an eighth of an inch are no
// break, and the volume stays within what they are good for of that by a spline through
// the areas of the stations (109.8, 155.5 and 204.0 l, worked out apart).
func TestReadingsAmidships(t *testing.T) {
	tab := load(t, "cruising.csv")
	for i, s := range tab.Stations {
		if s.X == 0 && tab.breaksAt(i) {
			t.Error("the printed table is taken to break amidships")
		}
	}
	h, err := tab.Hull()
	if err != nil {
		t.Fatal(err)
	}
	for inches, litres := range map[float64]float64{4: 109.8, 5: 155.5, 6: 204.0} {
		if got := h.Immerse(float.Level(inches*25.4)).Volume / 1e6; math.Abs(got/litres-1) > 5e-3 {
			t.Errorf("at %g in %.2f l, want %.1f within 0.5 %%", inches, got, litres)
		}
	}
}
