package float

import (
	"fmt"
	"math"

	"ribwright/geometry/curve"
)

// Lever is one point of the curve of righting levers.
type Lever struct {
	Heel      float64 // radians
	GZ        float64 // mm, positive when the boat comes back
	Freeboard Freeboard
	Plane     Plane
}

// Curve is the righting levers up to where water comes in.
type Curve struct {
	Levers   []Lever // from upright on; the last stands at Flooding when that was reached
	Flooding float64 // radians at which the sheer dips; NaN when it does not up to 90 degrees
	At       Freeboard
}

// Righting returns GZ at a heel: how far the buoyancy stands out from under the
// weight, with the boat free to sink and trim.
func (h *Hull) Righting(l Load, density, heel float64, start *Plane) (Lever, error) {
	p, m, err := h.Balance(l, density, heel, start)
	if err != nil {
		return Lever{}, err
	}
	across := p.ToPort()
	gz := across.Dot(l.At) - across.Dot(m.Center())
	return Lever{heel, gz, h.Freeboard(p), p}, nil
}

// Curve returns GZ from upright by the step, radians, to the angle at which the
// sheer dips, and no further: an open boat fills there. Its sign follows the
// step's; a negative step heels to port.
//
// Errors: *Fault when the boat does not float upright.
func (h *Hull) Curve(l Load, density, step float64) (Curve, error) {
	out := Curve{Flooding: math.NaN()}
	for i := 0; math.Abs(float64(i)*step) < math.Pi/2; i++ {
		v, err := h.beyond(l, density, float64(i)*step, out.Levers[max(0, i-3):]...)
		if err != nil && i == 0 {
			return out, err
		}
		if err != nil || v.Freeboard.Least <= 0 {
			if i == 0 {
				return out, swamped(l, v.Freeboard)
			}
			dip := h.dip(l, density, out.Levers[i-1], v)
			out.Flooding, out.At = dip.Heel, dip.Freeboard
			if math.Abs(dip.Heel-out.Levers[i-1].Heel) > 1e-9 {
				out.Levers = append(out.Levers, dip)
			}
			return out, nil
		}
		out.Levers = append(out.Levers, v)
	}
	return out, nil
}

// beyond returns the lever at a heel, looked for from where a parabola through the planes
// of up to three others leads; one that is not found has no freeboard, NaN.
func (h *Hull) beyond(l Load, density, heel float64, known ...Lever) (Lever, error) {
	var from *Plane
	if len(known) > 0 {
		from = &Plane{}
	}
	for i, a := range known {
		share := 1.0
		for j, b := range known {
			if i != j {
				share *= (heel - b.Heel) / (a.Heel - b.Heel)
			}
		}
		from.Rise, from.Trim = from.Rise+share*a.Plane.Rise, from.Trim+share*a.Plane.Trim
	}
	v, err := h.Righting(l, density, heel, from)
	if err != nil {
		v.Heel, v.Freeboard.Least = heel, math.NaN()
	}
	return v, err
}

// dip finds the heel between a dry lever and a wet one at which the sheer touches: it
// steps along the chord of the freeboards (Illinois), and halves the way where the wet
// side has none.
func (h *Hull) dip(l Load, density float64, dry, wet Lever) Lever {
	over, under := dry.Freeboard.Least, wet.Freeboard.Least
	for i := 0; i < 60 && math.Abs(wet.Heel-dry.Heel) >= 1e-9 && dry.Freeboard.Least >= 1e-6; i++ {
		next, known := (dry.Heel+wet.Heel)/2, []Lever{dry}
		if under < 0 {
			next, known = dry.Heel+(wet.Heel-dry.Heel)*over/(over-under), append(known, wet)
		}
		v, _ := h.beyond(l, density, next, known...)
		if free := v.Freeboard.Least; free > 0 {
			dry, over, under = v, free, under/2
		} else {
			wet, under, over = v, free, over/2
		}
	}
	return dry
}

func swamped(l Load, f Freeboard) *Fault {
	return &Fault{Swamps, fmt.Sprintf("with %.0f kg in all the sheer lies %.0f mm under water at station %.0f mm", l.Mass, -f.Least, f.At.X)}
}

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
	if free := h.Freeboard(p); free.Least <= 0 {
		return p, m, swamped(l, free)
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
	return m.AcrossInertia()/m.Volume - up.Dot(l.At) + up.Dot(m.Center())
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
// from upright towards the load until the lever turns round, and then looks between.
func (h *Hull) lean(l Load, density float64, upright Plane, m Immersed) (Plane, Immersed, error) {
	step := -math.Copysign(1*math.Pi/180, l.At.Y) // a load to port heels to port
	last := Lever{Plane: upright, Freeboard: h.Freeboard(upright)}
	over := &Fault{Capsizes, fmt.Sprintf("the weight lies %.0f mm off the middle line and water comes over the sheer before the boat finds rest", math.Abs(l.At.Y))}
	for heel := step; math.Abs(heel) < math.Pi/2; heel += step {
		v, err := h.beyond(l, density, heel, last)
		if err != nil || v.Freeboard.Least <= 0 {
			// Rest may still lie in the last step before the sheer dips.
			if v = h.dip(l, density, last, v); v.GZ*step > 0 {
				return h.rest(l, density, last.Heel, v.Heel, last.Plane)
			}
			return upright, m, over
		}
		if v.GZ*step >= 0 {
			return h.rest(l, density, last.Heel, heel, last.Plane)
		}
		last = v
	}
	return upright, m, over
}

// rest finds where the lever is nothing between two heels with levers of different sign.
// Every heel is balanced from the plane of the one before.
func (h *Hull) rest(l Load, density, lo, hi float64, from Plane) (Plane, Immersed, error) {
	const settled = 1e-9 // radians
	var fault error
	heel := curve.Root(lo, hi, settled, func(heel float64) float64 {
		v, err := h.Righting(l, density, heel, &from)
		if err != nil {
			fault = err
			return math.NaN()
		}
		from = v.Plane
		return v.GZ
	})
	if fault != nil {
		return Plane{}, Immersed{}, fault
	}
	return h.Balance(l, density, heel, &from)
}
