package marks

import (
	"fmt"

	"ribwright/geometry/boat/seat"
)

// seat lists what is marked and set for a seat, by its number from 1 as the design has it.
func (l *list) seat(s seat.Seat) {
	part := fmt.Sprintf("seat %d", s.Number+1)
	l.add(part, length("station", s.At, set), length("top over floor", s.Height, seatSet), length("top", s.TopZ(), seatSet),
		length("long", s.Long, sawn), length("wide", s.Wide, sawn), length("front edge under the back one", s.Drop, seatSet))
	if s.Hung == nil {
		return
	}
	l.add(part, length("clear under front edge", s.Hung.Clear, seatSet), length("rail width", s.Hung.Width, planed), length("rail depth", s.Hung.Depth, planed),
		length("spreader", s.Hung.Spreader, sawn))
	for _, r := range []struct {
		name string
		rail seat.Rail
	}{{"front", s.Hung.Front}, {"after", s.Hung.After}} {
		h := r.rail.Hanger
		l.add(part, length(r.name+" rail station", r.rail.Station, set), length(r.name+" rail top", r.rail.TopZ, seatSet), length(r.name+" rail length", r.rail.Length, pencil),
			length(r.name+" hanger length", h.Length, pencil), length(r.name+" hanger to rail top", h.Slot, pencil), length(r.name+" bolts under the gunwale top", h.Down, pencil),
			length(r.name+" hanger width", h.Wide, sawn), length(r.name+" hanger slot forward of its middle", h.Off, pencil), length(r.name+" hanger block", h.Block, planed),
			angle(r.name+" hanger lean", h.Lean()), angle(r.name+" hanger skew", h.Skew))
	}
}
