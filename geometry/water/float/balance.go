package float

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
)

// The limits of a search for balance. A boat trimmed past mostTrim stands on its
// end; nothing that a builder would load comes near it.
const (
	mostTrim  = 25 * math.Pi / 180
	mostSteps = 40
	near      = 1e-11 // of the volume, and of the volume times the length
)

// Balance finds the plane on which the hull carries the load at a fixed heel,
// free to sink and to trim.
//
// How: Newton's method on volume and on the lever between weight and buoyancy
// along the boat. The waterplane's area and moments are the exact derivatives.
// It begins at start, or from the volume alone when start is nil or leads
// nowhere; where Newton fails the trim is bisected.
// Units: density in kg/m3, heel in radians.
// Errors: *Fault when the hull cannot hold the mass, or when no trim up to 25
// degrees brings the buoyancy under it.
// Accuracy: 1e-11 of the volume. Cost: three to six times Immerse.
func (h *Hull) Balance(l Load, density, heel float64, start *Plane) (Plane, Immersed, error) {
	want := Volume(l.Mass, density)
	if !(want > 0) {
		return Plane{}, Immersed{}, fmt.Errorf("a load of %g kg, which is no weight", l.Mass)
	}
	if holds := h.Holds(); want >= holds {
		return Plane{}, Immersed{}, &Fault{Sinks, fmt.Sprintf("the whole is %.0f kg, and filled to the sheer the hull displaces %.0f kg", l.Mass, holds*density*1e-9)}
	}
	if start != nil {
		p := *start
		p.Heel = heel
		if p, m, ok := h.newton(p, want, l.At); ok {
			return p, m, nil
		}
	}
	p := h.sink(Plane{Heel: heel}, want)
	if p, m, ok := h.newton(p, want, l.At); ok {
		return p, m, nil
	}
	return h.bisectTrim(l, want, heel)
}

// Volume returns the volume in mm3 of water that weighs as much as the mass, kg.
func Volume(mass, density float64) float64 { return mass / density * 1e9 }

// newton refines a plane; it reports failure when it leaves the hull or does not
// close in.
func (h *Hull) newton(p Plane, want float64, g geometry.Point3) (Plane, Immersed, bool) {
	aft, fore := h.Ends()
	length := fore - aft
	for range mostSteps {
		m := h.Immerse(p)
		ahead := p.Ahead()
		lever := ahead.Dot(g)
		short := m.Volume - want
		moment := ahead.Dot(m.Moment) - m.Volume*lever
		if math.Abs(short) <= near*want && math.Abs(moment) <= near*want*length {
			return p, m, true
		}
		if !(m.Area > 0) || !(m.Volume > 0) {
			return p, m, false
		}
		rise, trim := m.slopes(p, g).step(short, moment)
		if !geometry.Finite(rise) || !geometry.Finite(trim) {
			return p, m, false
		}
		const longest = 0.1 // rad a step: farther off the derivatives say little
		if k := math.Abs(trim) / longest; k > 1 {
			rise, trim = rise/k, trim/k
		}
		p.Rise += rise
		p.Trim += trim
		if math.Abs(p.Trim) > mostTrim {
			return p, m, false
		}
	}
	return p, Immersed{}, false
}

// slopes are the derivatives of the volume and of the moment of balance by the rise
// and the trim of a plane.
type slopes struct{ volumeRise, volumeTrim, momentRise, momentTrim float64 }

func (m Immersed) slopes(p Plane, g geometry.Point3) slopes {
	up, lever := p.Up(), p.Ahead().Dot(g)
	return slopes{m.Area, -m.alongFirst, m.alongFirst - m.Area*lever,
		-m.alongSecond + lever*m.alongFirst + m.Volume*up.Dot(g) - up.Dot(m.Moment)}
}

// step is how far to rise and to trim when so much volume and moment are over.
func (s slopes) step(volume, moment float64) (rise, trim float64) {
	det := s.volumeRise*s.momentTrim - s.volumeTrim*s.momentRise
	return (-volume*s.momentTrim + moment*s.volumeTrim) / det, (-moment*s.volumeRise + volume*s.momentRise) / det
}

// Sunk returns the level plane, upright, that displaces a volume, mm3.
func (h *Hull) Sunk(volume float64) Plane { return h.sink(Plane{}, volume) }

// sink finds the rise of the plane for a volume at fixed heel and trim.
func (h *Hull) sink(p Plane, want float64) Plane {
	lo, hi := h.reach(p)
	p.Rise = (lo + hi) / 2
	for range 200 {
		m := h.Immerse(p)
		if m.Volume < want {
			lo = p.Rise
		} else {
			hi = p.Rise
		}
		if math.Abs(m.Volume-want) <= near*want || hi-lo < 1e-12*(1+math.Abs(hi)) {
			break
		}
		next := p.Rise - (m.Volume-want)/m.Area
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		p.Rise = next
	}
	return p
}

// reach returns the rises between which a plane of this heel and trim meets the
// hull.
func (h *Hull) reach(p Plane) (lo, hi float64) {
	up := p.Up()
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, s := range h.sections {
		for _, q := range s.half {
			r, side := up.X*s.x+up.Z*q.Y, math.Abs(up.Y*q.X)
			lo, hi = math.Min(lo, r-side), math.Max(hi, r+side)
		}
	}
	return lo, hi
}

// bisectTrim looks for a trim at which the buoyancy passes under the load. The
// first crossing that is stable, bow down to bow up, counts.
func (h *Hull) bisectTrim(l Load, want, heel float64) (Plane, Immersed, error) {
	lever := func(trim float64) (float64, Plane, Immersed) {
		p := h.sink(Plane{Heel: heel, Trim: trim}, want)
		m := h.Immerse(p)
		return p.Ahead().Dot(m.Center()) - p.Ahead().Dot(l.At), p, m
	}
	const steps = 50
	at := func(i int) float64 { return mostTrim * (2*float64(i)/steps - 1) }
	last, _, _ := lever(at(0))
	for i := 1; i <= steps; i++ {
		next, _, _ := lever(at(i))
		if last > 0 && next <= 0 { // bow up moves the buoyancy aft
			_, p, m := lever(curve.Bisect(at(i-1), at(i), func(trim float64) bool {
				v, _, _ := lever(trim)
				return v > 0
			}))
			return p, m, nil
		}
		last = next
	}
	side := "aft"
	if l.At.X > 0 || l.At.X == 0 && last > 0 {
		side = "forward"
	}
	return Plane{}, Immersed{}, &Fault{Outside, fmt.Sprintf("the weight lies at %.0f mm from midship, too far %s for any trim to bring the buoyancy under it", l.At.X, side)}
}

// Capacity returns how many times the payload leaves the given least freeboard,
// mm, with the boat's own weight as it is: 1.2 says a fifth more of everything,
// each where it lies. It is zero when the boat alone leaves less.
//
// How: twice as much and twice again, until it is too much, and between the last two a
// root of what the freeboard has to spare, each balanced from the plane of the one before.
// Accuracy: 1e-9 of the answer, or of the payload if that is more.
func (h *Hull) Capacity(boat, payload Load, density, freeboard float64) float64 {
	const sunk = -1e3 // mm to spare of a boat that finds no rest: far too little
	var last *Plane
	spare := func(k float64) float64 {
		part := payload
		part.Mass *= k
		p, _, err := h.Balance(Total(boat, part), density, 0, last)
		if err != nil {
			return sunk
		}
		last = &p
		return h.Freeboard(p).Least - freeboard
	}
	if spare(0) < 0 && spare(1e-6) < 0 {
		return 0
	}
	lo, hi := 0.0, 1.0
	for spare(hi) >= 0 && hi < 1e6 {
		lo, hi = hi, 2*hi
	}
	return curve.Root(lo, hi, 1e-9*max(1, hi), spare)
}
