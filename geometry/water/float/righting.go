package float

import (
	"fmt"
	"math"
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
	gz := Dot(across, l.At) - Dot(across, m.Center())
	return Lever{heel, gz, h.Freeboard(p), p}, nil
}

// Levers returns GZ at the heels given, whether or not water comes in, each
// started from the one before.
func (h *Hull) Levers(l Load, density float64, heels []float64) ([]Lever, error) {
	out := make([]Lever, 0, len(heels))
	var from *Plane
	for _, heel := range heels {
		v, err := h.Righting(l, density, heel, from)
		if err != nil {
			return out, err
		}
		out = append(out, v)
		from = &v.Plane
	}
	return out, nil
}

// Curve returns GZ from upright by the step, radians, to the angle at which the
// sheer dips, and no further: an open boat fills there. Its sign follows the
// step's; a negative step heels to port.
//
// Errors: *Fault when the boat does not float upright.
func (h *Hull) Curve(l Load, density, step float64) (Curve, error) {
	out := Curve{Flooding: math.NaN()}
	var from *Plane
	for i := 0; math.Abs(float64(i)*step) < math.Pi/2; i++ {
		v, err := h.Righting(l, density, float64(i)*step, from)
		if err != nil && i == 0 {
			return out, err
		}
		if err != nil || v.Freeboard.Least <= 0 {
			if i == 0 {
				return out, h.swamped(l, v)
			}
			dip := h.dip(l, density, out.Levers[i-1], float64(i)*step)
			out.Flooding, out.At = dip.Heel, dip.Freeboard
			if math.Abs(dip.Heel-out.Levers[i-1].Heel) > 1e-9 {
				out.Levers = append(out.Levers, dip)
			}
			return out, nil
		}
		out.Levers = append(out.Levers, v)
		from = &v.Plane
	}
	return out, nil
}

// dip finds the heel between a dry lever and a wet heel at which the sheer
// touches, by bisection.
func (h *Hull) dip(l Load, density float64, dry Lever, wet float64) Lever {
	for range 40 {
		mid := (dry.Heel + wet) / 2
		v, err := h.Righting(l, density, mid, &dry.Plane)
		if err == nil && v.Freeboard.Least > 0 {
			dry = v
		} else {
			wet = mid
		}
		if math.Abs(wet-dry.Heel) < 1e-7 {
			break
		}
	}
	return dry
}

func (h *Hull) swamped(l Load, v Lever) *Fault {
	return &Fault{Swamps, fmt.Sprintf("with %.0f kg in all the sheer lies %.0f mm under water at station %.0f mm", l.Mass, -v.Freeboard.Least, v.Freeboard.At.X)}
}
