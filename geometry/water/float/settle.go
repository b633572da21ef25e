package float

import (
	"fmt"
	"math"
)

// Settle lets the boat go: it finds where the load comes to rest, with heel when
// the load lies off the middle line.
//
// Returns: the rest plane and what lies under it. With a *Fault of Capsizes or
// Swamps the upright plane is returned too, so that figures can be shown.
// Errors: *Fault: sinks, swamps, load outside the hull, capsizes.
func (h *Hull) Settle(l Load, density float64) (Plane, Immersed, error) {
	p, m, err := h.Balance(l, density, 0, nil)
	if err != nil {
		return p, m, err
	}
	v := Lever{Freeboard: h.Freeboard(p)}
	if v.Freeboard.Least <= 0 {
		return p, m, h.swamped(l, v)
	}
	if l.At.Y == 0 {
		if gm := GM(p, m, l); gm <= 0 {
			return p, m, h.loll(l, density, p, gm)
		}
		return p, m, nil
	}
	return h.lean(l, density, p, m)
}

// GM returns the height of the metacenter above the load, mm: the waterplane's
// inertia over the volume, less how far the weight stands above the buoyancy.
func GM(p Plane, m Immersed, l Load) float64 {
	up := p.Up()
	return m.AcrossInertia()/m.Volume - Dot(up, l.At) + Dot(up, m.Center())
}

// loll says what a boat does that does not stay upright: come to rest leaning,
// or go over.
func (h *Hull) loll(l Load, density float64, upright Plane, gm float64) *Fault {
	const step = 1 * math.Pi / 180
	from := &upright
	for heel := step; heel < math.Pi/2; heel += step {
		v, err := h.Righting(l, density, heel, from)
		if err != nil || v.Freeboard.Least <= 0 {
			break
		}
		if v.GZ > 0 {
			return &Fault{Capsizes, fmt.Sprintf("GM is %.0f mm, so it will not stay upright; it lolls to about %.0f deg either side", gm, heel*180/math.Pi)}
		}
		from = &v.Plane
	}
	return &Fault{Capsizes, fmt.Sprintf("GM is %.0f mm, so it will not stay upright, and it takes water over the sheer before it finds rest", gm)}
}

// lean finds the heel at which an off-center load comes to rest. It walks away
// from upright towards the load until the lever turns round, then bisects.
func (h *Hull) lean(l Load, density float64, upright Plane, m Immersed) (Plane, Immersed, error) {
	step := -math.Copysign(1*math.Pi/180, l.At.Y) // a load to port heels to port
	last, from := 0.0, upright
	over := &Fault{Capsizes, fmt.Sprintf("the weight lies %.0f mm off the middle line and water comes over the sheer before the boat finds rest", math.Abs(l.At.Y))}
	for heel := step; math.Abs(heel) < math.Pi/2; heel += step {
		v, err := h.Righting(l, density, heel, &from)
		if err != nil || v.Freeboard.Least <= 0 {
			return h.lastLean(l, density, last, heel, from, upright, m, over)
		}
		if v.GZ*step >= 0 {
			return h.rest(l, density, last, heel, from)
		}
		last, from = heel, v.Plane
	}
	return upright, m, over
}

// lastLean looks for rest in the last step before the sheer dips.
func (h *Hull) lastLean(l Load, density, dry, wet float64, from, upright Plane, m Immersed, over *Fault) (Plane, Immersed, error) {
	v := h.dip(l, density, Lever{Heel: dry, Plane: from}, wet)
	if v.GZ*(wet-dry) > 0 {
		return h.rest(l, density, dry, v.Heel, from)
	}
	return upright, m, over
}

// rest bisects between two heels with levers of different sign.
func (h *Hull) rest(l Load, density, lo, hi float64, from Plane) (Plane, Immersed, error) {
	way := math.Copysign(1, hi-lo)
	for range 60 {
		mid := (lo + hi) / 2
		v, err := h.Righting(l, density, mid, &from)
		if err != nil {
			return Plane{}, Immersed{}, err
		}
		if v.GZ*way < 0 {
			lo = mid
		} else {
			hi = mid
		}
		if math.Abs(hi-lo) < 1e-9 {
			break
		}
	}
	return h.Balance(l, density, (lo+hi)/2, &from)
}
