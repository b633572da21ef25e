package seat_test

import (
	"math"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/seat"
)

// TestBlockMakesGood: with half of its block the gunwale bears a bend at a bolt, either way,
// with no more stress in it than without block and nut's seat. The section is that of
// two woods in one: squares of 0.1 mm, each weighed by its wood's stiffness (S. Timoshenko,
// Strength of Materials, beams of two materials).
func TestBlockMakesGood(t *testing.T) {
	for _, name := range []string{"lake", "river"} {
		f := frametest.Shipped(t, name, nil)
		for _, s := range f.Seats {
			at := joined{Hanger: s.Hung.Front.Hanger, wide: float64(f.Design.Gunwale.Width), high: float64(f.Design.Gunwale.Height)}
			flat, tall := at.modulus(0, false)
			with, upright := at.modulus(0.5*moe(t, f, s.Wood)/moe(t, f, f.Design.Gunwale.Species), true)
			if with < flat || upright < tall {
				t.Errorf("%s, %s: %.0f mm3 sideways with block and nut's seat, %.0f without; upright %.0f and %.0f", name, s.Name, with, flat, upright, tall)
			}
		}
	}
}

func moe(t *testing.T, f *frame.Frame, species string) float64 {
	t.Helper()
	wood, err := f.Design.Wood(species)
	if err != nil {
		t.Fatal(err)
	}
	return wood.MOE
}

// joined is a gunwale, wide by high, with a hanger's block glued to its inner face.
type joined struct {
	seat.Hanger
	wide, high float64
}

// stiff is that of the wood at a place, the gunwale's being 1; let says whether a nut's seat
// is there.
func (j joined) stiff(y, z, block float64, let bool) float64 {
	up := math.Abs(z - (j.high - j.Down))
	switch {
	case up < seat.Hole/2, let && y > j.wide/2-seat.LetIn && up < seat.NutSeat/2:
		return 0
	case y > -j.wide/2:
		return 1
	case math.Abs(z-j.high/2) > j.BlockHigh()/2:
		return 0
	}
	return block
}

// modulus is that of the gunwale's own wood, mm3, bent sideways and upright.
func (j joined) modulus(block float64, let bool) (flat, tall float64) {
	const step = 0.1
	squares := func(each func(y, z, e float64)) {
		for y := -j.wide/2 - j.Block + step/2; y < j.wide/2; y += step {
			for z := step / 2; z < j.high; z += step {
				each(y, z, step*step*j.stiff(y, z, block, let))
			}
		}
	}
	var a, my, mz, iy, iz, out, top float64
	squares(func(y, z, e float64) { a, my, mz = a+e, my+e*y, mz+e*z })
	squares(func(y, z, e float64) {
		y0, z0 := y-my/a, z-mz/a
		iy, iz = iy+e*z0*z0, iz+e*y0*y0
		if e > 0 && y > -j.wide/2 {
			out, top = math.Max(out, math.Abs(y0)), math.Max(top, math.Abs(z0))
		}
	})
	return iz / out, iy / top
}
