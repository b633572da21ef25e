package sail

import (
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// bowLeast is the freeboard at the bow that a sail before the wind must leave, mm.
// From memory.
const bowLeast = 120.0

// run finds the wind that presses the bow of a boat before it down too far.
func (f *Fit) run() error {
	f.Run = nil
	if f.Sail.Rig != design.Vee {
		return nil
	}
	area, high := f.Plan.Area(), f.Tack+f.Plan.Center().Y
	bow := func(v float64) float64 {
		force := Pressure(v) * Force * area
		l := f.Load
		l.At.X += force * (high - f.Hull.Center.Y) / (f.Load.Mass * measure.Gravity)
		p, _, err := f.Boat.Hull.Balance(l, f.Water.Density, 0, &f.Rest.Plane)
		if err != nil {
			return -1
		}
		return f.Boat.Hull.Freeboard(p).Least
	}
	lo, hi := 0.0, 40.0
	for range 24 {
		if mid := (lo + hi) / 2; bow(mid) >= bowLeast {
			lo = mid
		} else {
			hi = mid
		}
	}
	f.Run = &Run{lo, bowLeast}
	return nil
}

// Rough is the wind, m/s, past which no open canoe has a sail up, whatever its
// righting moment: the top of force 4, where waves break into it. Common practice,
// no source.
const Rough = 7.9

// tabulate says what to do in which wind.
func (f *Fit) tabulate() {
	f.Wind = Wind{}
	for i := range f.States {
		f.Wind.Reef = append(f.Wind.Reef, f.TakeIn(i, f.Chosen()))
	}
	f.Wind.Stop = f.Wind.Reef[len(f.Wind.Reef)-1]
}
