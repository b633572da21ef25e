package cargo

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/water/float"
)

// with is a shipped boat with live cargo added on the floor amidships.
func with(t *testing.T, name string, more ...design.Person) (aboard.Boat, float.Standing, float.Hydrostatics) {
	t.Helper()
	f := frametest.Shipped(t, name, nil)
	for i := range more {
		more[i].Seat, more[i].Posture = design.OnFloor, design.Floor
	}
	b, err := aboard.New(f, append(f.Design.Crew[:len(f.Design.Crew):len(f.Design.Crew)], more...), f.Design.Gear)
	if err != nil {
		t.Fatal(err)
	}
	plane, _, err := b.Hull.Settle(b.Load(), 1000)
	if err != nil {
		t.Fatal(err)
	}
	rest := b.Hull.Upright(plane, b.Load(), 1000)
	c, err := b.Hull.Curve(b.Load(), 1000, float.Fine)
	if err != nil {
		t.Fatal(err)
	}
	return b, c.Standing(b.Load().Mass, b.Carried(), rest), rest
}

func dog(kg float64) design.Person { return design.Person{Name: "Dog", Role: design.Dog, Mass: kg} }

// TestMoves holds the moves to closed forms: a small weight moved aside heels by
// atan(m a / (M GM)); along the boat nothing heels; paddlers hold it upright by as much
// moment the other way; a heavy dog at the side upsets, and moves by what the gunwale's
// inside leaves of half the beam.
func TestMoves(t *testing.T) {
	b, s, rest := with(t, "river", dog(4))
	r, err := Of(b, s, 1000)
	if err != nil {
		t.Fatal(err)
	}
	lean := r.Moves[0]
	want := math.Atan(4 * Lean / (b.Load().Mass * rest.GM))
	if math.Abs(lean.Heel/want-1) > 0.03 || lean.By != Lean || lean.Upset {
		t.Errorf("%+v, want a heel of %.5f", lean, want)
	}
	paddlers := b.Carried() - 4
	if math.Abs(lean.Against*paddlers-4*Lean) > 1e-6 {
		t.Errorf("paddlers move %.3f mm", lean.Against)
	}
	if lean.Lever >= s.Most || lean.Lever < s.Most-2 || lean.Freeboard >= rest.Freeboard.Least {
		t.Errorf("lever %.2f of %.2f mm, freeboard %.1f of %.1f mm", lean.Lever, s.Most, lean.Freeboard, rest.Freeboard.Least)
	}
	for _, m := range r.Moves[2:] {
		if m.Heel > 1e-6 || m.By != Step || m.Against != 0 || m.Upset {
			t.Errorf("along the boat: %+v", m)
		}
	}
	inner, _ := b.GunwaleTop(0)
	if side := r.Moves[1]; side.Upset || math.Abs(side.By-(inner.Y-65*math.Cbrt(4)/2)) > 1e-6 || !r.HeldEverywhere() {
		t.Errorf("at the side: %+v", side)
	}

	b, s, _ = with(t, "river", dog(60))
	if r, err = Of(b, s, 1000); err != nil || !r.Moves[1].Upset || r.Moves[1].Heel != 0 {
		t.Errorf("60 kg at the side: %+v, %v", r.Moves[1], err)
	}
	if f := r.Findings(); len(f) == 0 || !strings.Contains(f[0].Text, "upsets the boat") || !f[0].Verdict.Danger() {
		t.Errorf("%+v", f)
	}
}

// TestHeld: live cargo that stays low is held just inside what is said, and upsets just
// outside.
func TestHeld(t *testing.T) {
	child := design.Person{Name: "Child", Role: design.Passenger, Mass: 70}
	b, s, _ := with(t, "lake", child)
	r, err := Of(b, s, 1000)
	if err != nil {
		t.Fatal(err)
	}
	for share, holds := range map[float64]bool{0.96: true, 1.04: false} {
		l := b.Load()
		l.At.Y = 70 * share * r.Held / l.Mass
		if _, _, err := b.Hull.Settle(l, 1000); (err == nil) != holds {
			t.Errorf("moved aside by %.2f of %.1f mm: %v", share, r.Held, err)
		}
	}
}

// TestNone: no live cargo, no report; a heavier dog upsets sooner and is never steadier.
func TestNone(t *testing.T) {
	b, s, _ := with(t, "river")
	if r, err := Of(b, s, 1000); r != nil || err != nil || len(r.Findings()) != 0 {
		t.Errorf("%+v, %v", r, err)
	}
	heel, held := 0.0, math.Inf(1)
	for kg := 5.0; kg <= 45; kg += 10 {
		b, s, _ := with(t, "river", dog(kg))
		r, err := Of(b, s, 1000)
		if err != nil || r.Moves[0].Heel <= heel || r.Held >= held {
			t.Errorf("%.0f kg: %+v, %v", kg, r, err)
			continue
		}
		heel, held = r.Moves[0].Heel, r.Held
	}
}
