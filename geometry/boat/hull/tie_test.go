package hull

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"ribwright/geometry/curve"
	"ribwright/geometry/design"
)

// TestTie: gunwales drawn in to a fine end are refused by plain spreaders and held
// by a tie. What they run through is the natural spline either way.
func TestTie(t *testing.T) {
	d := shipped(t, "brook")
	d.Hull.Spreaders[0].Beam = 500
	d.Hull.Spreaders = append(d.Hull.Spreaders, design.Spreader{At: 1400, Beam: 160})
	if _, err := New(d); err == nil || !strings.Contains(err.Error(), "bent hollow between two spreaders") {
		t.Fatalf("without a tie: %v, want it refused", err)
	}
	d.Hull.Spreaders[1].Tie = true
	h := newHull(t, d)
	if y := h.Gunwale.Point(1400).Y; math.Abs(y-80) > 1e-9 {
		t.Errorf("the tie holds %.3f mm, want half of 160", y)
	}
	if y := h.Gunwale.Point(-1400).Y; math.Abs(y-80) > 1e-9 {
		t.Errorf("its image holds %.3f mm, want half of 160", y)
	}
	// A tie between plain spreaders lets nothing hollow stand.
	d.Hull.Spreaders[0].Tie, d.Hull.Spreaders[1].Tie = true, false
	if _, err := New(d); err == nil {
		t.Error("a hollow between plain spreaders is accepted because a tie stands in it")
	}
	d.Hull.Spreaders[1].Tie, d.Hull.Spreaders[1].Beam = true, 30
	if p := d.Check(); p != nil {
		t.Errorf("a tie of 30 mm: %+v, want it accepted", p)
	}
	d.Hull.Spreaders[1].Tie = false
	if p := d.Check(); p == nil || p.Key != "hull.spreader.1.beam" {
		t.Errorf("a spreader of 30 mm: %+v, want it refused", p)
	}
}

// TestSlightTurns: a turn too slight to bend for makes a straight piece and not an
// arc whose center lies beyond any drawing; the section still ends where it must,
// and lies within a millimetre of the least turn that is drawn.
func TestSlightTurns(t *testing.T) {
	for _, turn := range []float64{1e-12, 1e-5, 1e-3, 3.9e-3} {
		s, err := Solve(360, 300, Shape{BottomTurn: turn, BilgeRadius: 110, Flare: 0.1, TopsideCurve: turn})
		if err != nil {
			t.Fatal(err)
		}
		for _, b := range s.Half {
			if b.Radius > 1e5 {
				t.Errorf("a turn of %g makes an arc of %g mm", turn, b.Radius)
			}
		}
		end, _ := s.Half.End()
		if math.Hypot(end.X-360, end.Y-300) > 1e-9 {
			t.Errorf("a turn of %g ends at %v", turn, end)
		}
		bent, err := Solve(360, 300, Shape{BottomTurn: 4.1e-3, BilgeRadius: 110, Flare: 0.1, TopsideCurve: 4.1e-3})
		if err != nil {
			t.Fatal(err)
		}
		for share := 0.0; share <= 1; share += 0.05 {
			p, _ := s.Half.At(share * s.Half.Length())
			q, _ := bent.Half.At(share * bent.Half.Length())
			if d := p.Sub(q).Norm(); d > 0.8 {
				t.Errorf("a turn of %g lies %.2f mm from one of 0.0041 at the share %.2f", turn, d, share)
			}
		}
	}
}

// TestBulges: a plan that is taken by its pins alone is nowhere hollow and nowhere near the
// middle line when it is stepped along, whatever the beams; most usual ones are.
func TestBulges(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 7))
	taken := 0
	for range 400 {
		x := []float64{-2400, -1200 - 300*rnd.Float64(), 0, 1200 + 300*rnd.Float64(), 2400}
		y := []float64{12, 200 + 250*rnd.Float64(), 420, 200 + 250*rnd.Float64(), 12}
		plan, err := curve.NewElastica(x, y)
		if err != nil || !bulges(plan, x) {
			continue
		}
		taken++
		for at := -2400.0; at <= 2400; at += 3 {
			if y, _, bend := plan.At(at); y < 1 || bend > 1e-8 {
				t.Fatalf("pins %v %v: %.3f mm off the middle line and bent by %g at %.0f mm", x, y, y, bend, at)
			}
		}
	}
	if taken < 100 || taken > 300 {
		t.Errorf("%d of 400 plans are taken by their pins", taken)
	}
}
