package awash

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/measure"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %g, want %g within %g", what, got, want, tol)
	}
}

// sides and ends are 0.36 m2 of flotation, 0.4 m tall, without weight.
func sides() []Block {
	return []Block{{Long: 1500, Wide: 120, Tall: 400, At: geometry.Point3{Y: 300, Z: 200}}, {Long: 1500, Wide: 120, Tall: 400, At: geometry.Point3{Y: -300, Z: 200}}}
}

func ends() []Block {
	return []Block{{Long: 450, Wide: 400, Tall: 400, At: geometry.Point3{X: 1700, Z: 200}}, {Long: 450, Wide: 400, Tall: 400, At: geometry.Point3{X: -1700, Z: 200}}}
}

// TestLevel is the closed form: 60 kg 0.35 m over the bottom of 0.36 m2 sink it by
// 0.1667 m, KB is 0.0833 m; at the sides I = 2 (l w3/12 + l w y2) = 0.032832 m4 and GM
// +0.2805 m, as two blocks at the ends I = 0.0048 m4 and GM -0.1867 m.
func TestLevel(t *testing.T) {
	load := Block{Mass: 60, At: geometry.Point3{Z: 350}}
	for _, c := range []struct {
		blocks []Block
		gm     float64
	}{{sides(), 280.5}, {ends(), -186.7}} {
		r, err := Settle(append(c.blocks, load), 1000)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "surface, mm", r.Rise, 166.67, 0.01)
		near(t, "GM, mm", r.GM, c.gm, 0.05)
		near(t, "N m a degree", r.Righting, 60*c.gm/1000*measure.Gravity*math.Pi/180, 0.001)
		near(t, "more to sink it by 100 mm, kg", Lifted(c.blocks, 1000, r, 100)-60, 36, 1e-6)
	}
}

// TestArchimedes: a box of half the water's density lies half under, and what hangs
// under water and weighs what it pushes aside changes neither that nor the moment.
func TestArchimedes(t *testing.T) {
	box := []Block{{Mass: 50, Long: 1000, Wide: 500, Tall: 200, At: geometry.Point3{Z: 100}}}
	r, err := Settle(box, 1000)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "surface, mm", r.Rise, 100, 0.001)
	near(t, "GM by the textbook, mm", r.GM, 50-100+500*500/12.0/100, 0.01) // KB - KG + b2/12T
	more, err := Settle(append(box, Block{Mass: 4, Long: 400, Wide: 100, Tall: 100, At: geometry.Point3{Y: 80, Z: -300}}), 1000)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "with a neutral stone, mm", more.Rise, 100, 0.001)
	near(t, "N m a degree", more.Righting, r.Righting, 1e-9)
	if _, err := Settle([]Block{{Mass: 101, Long: 1000, Wide: 500, Tall: 200}}, 1000); err == nil {
		t.Error("a box heavier than water floats")
	}
}

// TestTrim: a weight w at x on two equal end blocks of area A at +-L trims them by
// w x / (2 rho A L2), and the end under it lies deeper.
func TestTrim(t *testing.T) {
	r, err := Settle(append(ends(), Block{Mass: 60, At: geometry.Point3{Z: 200}}, Block{Mass: 10, At: geometry.Point3{X: 600, Z: 200}}), 1000)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "slope", r.Slope, 10*600/(2*1e-6*450*400*1700*1700), 1e-4)
	if _, err := Settle(append(ends(), Block{Mass: 139, At: geometry.Point3{X: 1700, Z: 200}}), 1000); err == nil {
		t.Error("all the weight at one end, and it lies level")
	}
}
