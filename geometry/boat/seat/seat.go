// Package seat is the shape of everything that somebody sits on: pads, saddles, and seats
// hung from the gunwales, with what carries them. All of it follows from the height that
// the design gives. Units: mm, kg, N; x forward from midship, y to port, z up.
package seat

import (
	"cmp"
	"fmt"
	"sync"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/design"
)

// Gunwale is what seats hang from, with its places in the boat and on its straight stock.
type Gunwale interface {
	EdgeAt(x, across, up float64) geometry.Point3
	OnStock(x float64) float64
	StationOf(mark float64) float64
}

// Span is a stretch of gunwale stock, mm from midship.
type Span struct{ From, To float64 }

// Boat is what seats are fitted into.
type Boat struct {
	Design   *design.Design
	Hull     *hull.Hull
	Gunwale  Gunwale
	Stock    Span   // the whole of a gunwale
	Mortises []Span // from aft forward
	Crosses  []Span // under cross pieces

	gaps func() []window // for hangers, within reach of the seats; worked out once
}

// Seat is one seat with its place and its sizes.
type Seat struct {
	Name   string
	Number int // from 0, as the design has it
	Kind   design.SeatKind
	Wood   string

	At, Height float64 // of its middle: the station, and the top over the floor
	Floor      float64 // height of the floor there above the baseline
	Long, Wide float64 // over all along the boat; across where one sits
	Drop       float64 // of the front edge under the back one

	Load   float64 // of those who sit on it, kg; 0 for nobody
	Kneels bool    // one of them kneels

	Hung   *Hung   // nil for one that stands on the floor
	Saddle *Saddle // nil for any other
}

// TopZ returns the height of the top above the baseline, at its middle.
func (s Seat) TopZ() float64 { return s.Floor + s.Height }

// EdgeZ returns the height of the top so far forward of its middle.
func (s Seat) EdgeZ(forward float64) float64 {
	return s.TopZ() - s.Drop*forward/s.Long
}

// The sizes that a seat has where the design says nothing. Common practice, no source.
const (
	UsualWood   = "white ash"
	usualDrop   = 20.0
	padLong     = 350.0
	padWide     = 380.0
	saddleLong  = 260.0
	kneelWide   = 200.0
	sitWide     = 300.0
	hungWide    = 380.0
	hungApart   = 220.0 // between the middles of the rails
	railWide    = 40.0
	railDeep    = 25.0
	JudgedFor   = 100.0 // kg, where nobody sits on it in the design
	LoadFactor  = 1.5   // on the mass of who sits there
	LeastClear  = 130.0 // under a hung seat's front edge
	WantedClear = 150.0 // a bare heel is 117 to 152 mm deep: girths of ANSUR II (US Army 2012), 5th to 95th percentile
)

// All returns the seats of a boat, in the order of the design.
//
// Errors: a seat that cannot stand or hang where the design has it; each names the seat,
// the value, what is accepted and the cure.
func All(b Boat) ([]Seat, error) {
	var out []Seat
	b.gaps = sync.OnceValue(func() []window { return b.windows(b.reached) })
	for i := range b.Design.Seats {
		s, err := b.seat(i)
		if err != nil {
			return nil, err
		}
		for _, o := range out {
			if over := (s.Long+o.Long)/2 - abs(s.At-o.At); over > 0 {
				return nil, s.fault("lies %.0f mm over %q, at %.0f mm; move one of them", over, o.Name, o.At)
			}
		}
		out = append(out, s)
	}
	return out, nil
}

func abs(v float64) float64 { return max(v, -v) }

func (s Seat) fault(format string, args ...any) error {
	return fmt.Errorf("seat %q at %.0f mm %s", s.Name, s.At, fmt.Sprintf(format, args...))
}

func (b Boat) seat(i int) (Seat, error) {
	d := b.Design.Seats[i]
	s := Seat{Name: d.Name, Number: i, Kind: d.Kind, Wood: cmp.Or(d.Species, UsualWood), At: float64(d.At), Height: float64(d.Height),
		Long: float64(d.Long), Wide: float64(d.Wide), Drop: float64(d.Drop),
		Load: b.Design.SeatLoad(i), Kneels: b.Design.KneelsOn(i)}
	s.Floor = b.Hull.FloorZ(s.At)
	if s.Drop == 0 && s.Kneels && s.Kind != design.Pad {
		s.Drop = usualDrop
	}
	switch s.Kind {
	case design.Hung:
		return s, b.hang(&s, d)
	case design.Saddle:
		return s, b.stand(&s)
	}
	s.Wood = ""
	s.Long, s.Wide = cmp.Or(s.Long, padLong), cmp.Or(s.Wide, padWide)
	return s, nil
}

// Raised returns the seat so much higher in a boat that came out so. Its height over the
// floor stays: that is what a builder sets it by.
func (s Seat) Raised(by float64) Seat {
	s.Floor += by
	if s.Hung != nil {
		h := *s.Hung
		for _, r := range []*Rail{&h.Front, &h.After} {
			r.TopZ += by
			r.Hanger.stands.from.Z += by
		}
		s.Hung = &h
	}
	return s
}
