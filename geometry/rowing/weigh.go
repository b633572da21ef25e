package rowing

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/float"
	"ribwright/geometry/mass"
)

// Clip is the hook that holds a bar to a gunwale: how thick its board is, mm.
const ClipThick = 18.0

// SeatLong returns the length of the seat across the boat, mm: the rower's hips and
// a hand's breadth, as much as fits between the gunwales.
func (f *Fit) SeatLong() float64 {
	inner, _ := f.Boat.GunwaleTop(f.SeatX)
	return math.Min(math.Ceil((f.Body.Hip+60)/10)*10, math.Floor(2*inner.Y/10)*10-20)
}

// BarLong returns the length of a bar, mm.
func (f *Fit) BarLong() float64 { return f.Span + 2*BarSpare }

// BoardThick is the thickness of seat, footrest and rowlock boards, mm.
const BoardThick = 18.0

// Items lists what the outfit weighs besides the rower.
//
// Errors: a wood that is not known.
func (f *Fit) Items() ([]mass.Item, error) {
	s, err := f.Boat.Frame.Design.Wood(f.Row.Species)
	if err != nil {
		return nil, err
	}
	d := s.Density * 1e-9
	at := func(x, z float64) geometry.Point3 { return geometry.Point3{X: x, Z: z} }
	frame := 2*f.BarLong()*BarWide*f.BarThick*d + 2*BoardLong*BoardWide*BoardThick*d + 4*100*80*ClipThick*d
	const metal = 1.2 // kg of rowlocks, sockets and bolts; common practice, no source
	seat := f.SeatLong()*SeatWide*BoardThick*d + 2*f.SeatOver*SeatWide*BoardThick*d
	foot := f.SeatLong() * 120 * BoardThick * d
	// Oars are about 2.2 kg for 2.4 m; from memory.
	oars := 2 * 2.2 * f.Oar.Length / 2400
	one := func(name string, m float64, p geometry.Point3) mass.Item {
		return mass.Item{Name: name, Loads: []float.Load{{Mass: m, At: p}}}
	}
	return []mass.Item{
		one("Rowing frame, rowlocks", frame+metal, at(f.LockX, f.GunwaleZ+f.BarThick/2)),
		one("Rowing seat and footrest", seat+foot, at((f.SeatX+f.FootX)/2, f.SeatZ-f.SeatOver/2)),
		one("Oars", oars, at(f.LockX, f.LockZ)),
	}, nil
}
