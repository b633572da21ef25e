package float

import (
	"math"
	"testing"

	"ribwright/geometry"
)

// leaning is a hull of V sections from x = 0 to 1000 mm: its keel is level, its sheer
// rises from 300 to 400 mm and spreads from 150 to 200 mm from the middle, so that the
// side leans 1 in 2 everywhere.
func leaning(t *testing.T) *Hull {
	t.Helper()
	h, err := New([]Station{
		{X: 0, Half: []geometry.Point{{}, {X: 150, Y: 300}}},
		{X: 1000, Half: []geometry.Point{{}, {X: 200, Y: 400}}},
	})
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// TestLinesOfStraightSides reads a hull whose every line is straight. Plane geometry.
func TestLinesOfStraightSides(t *testing.T) {
	h := leaning(t)
	same := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-5 {
			t.Errorf("%s: %.6f, want %.6f", what, got, want)
		}
	}
	for _, x := range []float64{0, 250, 500, 1000} {
		keel, sheer := h.Heights(x)
		same("keel", keel, 0)
		same("sheer", sheer, 300+x/10)
		for _, z := range []float64{0, 100, 299, 300, sheer - 1, sheer} {
			same("side", h.Side(x, z), z/2)
		}
		z, ok := h.ButtockHeight(x, 120)
		same("buttock", z, 240)
		if _, wide := h.ButtockHeight(x, 250); !ok || wide {
			t.Errorf("at %.0f mm: a buttock at 120 mm is %v, at 250 mm %v", x, ok, wide)
		}
		half := h.Half(x)
		same("top of the half section", half[len(half)-1].X, sheer/2)
	}
	same("beam", h.Beam(), 400)
	// Beyond the hull its end goes on.
	_, sheer := h.Heights(1500)
	same("sheer beyond the end", sheer, 400)
}
