package pair

import "math"

// Lesser is the curve to count on whichever way the pair goes over: at each heel the
// lesser lever, share and freeboard of both sides, as far as both go, with the earliest
// lift and the earliest flooding. Its heels are positive; a plane belongs to the side
// with the lesser lever.
func (c *Craft) Lesser() Curve {
	a, b := c.Curves[0], c.Curves[1]
	out := Curve{Lift: earlier(a.Lift, b.Lift), Flooded: earlier(a.Flooded, b.Flooded)}
	if out.Lift > out.Flooded { // one side floods before the other lifts
		out.Lift = math.NaN()
	}
	for i := range min(len(a.Levers), len(b.Levers)) {
		v, w := a.Levers[i], b.Levers[i]
		share, freeboard := math.Min(v.Share, w.Share), math.Min(v.Freeboard, w.Freeboard)
		if w.GZ < v.GZ {
			v = w
		}
		v.Share, v.Freeboard = share, freeboard
		v.Heel = math.Abs(v.Heel)
		if v.GZ > out.Most.GZ {
			out.Most = v
		}
		out.Levers = append(out.Levers, v)
	}
	return out
}

// earlier returns the lesser heel, radians either way; NaN is never.
func earlier(a, b float64) float64 {
	a, b = math.Abs(a), math.Abs(b)
	if math.IsNaN(a) || b < a {
		return b
	}
	return a
}
