package seat

import (
	"cmp"

	"ribwright/geometry"
)

// Saddle is a box that stands on the floor slats, or on the ribs of a boat without: a top board, two cheeks under it along the
// boat and a stretcher between them.
type Saddle struct {
	Cheek     []geometry.Point // seen from the side: x forward of the seat's middle, y over the floor there, counter-clockwise
	Apart     float64          // the cheeks' middles
	Stretcher float64          // its length, between the cheeks
	High      float64          // of the stretcher
}

// The boards of a saddle. Common practice, no source.
const (
	BoardThick    = 15.0
	cheekIn       = 22.0 // from the top board's edge to a cheek's middle
	leastCheek    = 20.0 // its least height
	stretcherHigh = 40.0
)

// stand works out a saddle.
func (b Boat) stand(s *Seat) error {
	usual := sitWide
	if s.Kneels || s.Load == 0 {
		usual = kneelWide
	}
	s.Long, s.Wide = cmp.Or(s.Long, saddleLong), cmp.Or(s.Wide, usual)
	a := &Saddle{Apart: s.Wide - 2*cheekIn}
	s.Saddle = a
	a.Stretcher = a.Apart - BoardThick
	half := s.Long / 2
	var foot [2]float64
	for i, x := range []float64{-half, half} {
		face, err := b.inside(s.At + x)
		if err != nil {
			return s.fault("cannot stand: %v", err)
		}
		if room := 2 * face.broad(s.EdgeZ(x)); room < s.Wide+10 {
			return s.fault("is %.0f mm wide, and the boat %.0f mm there inside; make it narrower (seat.wide) or put it nearer midship", s.Wide, room)
		}
		foot[i] = face.floorAt((a.Apart+BoardThick)/2) + float64(b.Design.Inside.Floor()) - s.Floor
	}
	top := func(x float64) float64 { return s.EdgeZ(x) - s.Floor - BoardThick }
	a.Cheek = []geometry.Point{{X: -half, Y: foot[0]}, {X: half, Y: foot[1]}, {X: half, Y: top(half)}, {X: -half, Y: top(-half)}}
	low := min(top(half)-foot[1], top(-half)-foot[0])
	if low < leastCheek {
		return s.fault("leaves its cheeks %.0f mm of height; accepted: %.0f mm or more, so make it higher or narrower, or a pad", low, leastCheek)
	}
	a.High = min(stretcherHigh, low)
	return nil
}
