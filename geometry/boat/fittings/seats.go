package fittings

import (
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/design"
	"ribwright/geometry/wording"
)

// Seats is the kit of all seats: each seat is a group of its own, by its name.
const Seats = "seats"

// The minutes of what is done to a seat besides sawing and shaping boards. Common
// practice, no source.
const (
	minutesBore   = 8.0 // bore a gunwale with block and hanger, let in two nuts, glue its block
	minutesFrame  = 45.0
	minutesPeg    = 1.0
	minutesWeave  = 4.0
	minutesSaddle = 40.0
	minutesPad    = 20.0
)

func seats(f *frame.Frame) kit.Kit {
	all := kit.Kit{Name: Seats}
	for _, s := range f.Seats {
		k := Seat(s)
		all.Pieces, all.Things, all.Works = append(all.Pieces, k.Pieces...), append(all.Things, k.Things...), append(all.Works, k.Works...)
	}
	return all
}

func works(s seat.Seat) []kit.Work {
	name := wording.Clip(s.Name, 40)
	switch {
	case s.Hung != nil:
		out := []kit.Work{
			{Name: name + ": bore gunwales and hangers, let in nuts, glue blocks", Count: 4, Unit: "hangers", Minutes: minutesBore, Bare: true},
			{Name: name + ": slot hangers, glue and peg the frame, hang it", Count: 1, Unit: "seat", Minutes: minutesFrame + minutesPeg*float64(s.Hung.Pegs())}}
		if s.Hung.Bottom == design.Webbing {
			out = append(out, kit.Work{Name: name + ": cut, wrap and sew webbing", Count: float64(s.Hung.Along + s.Hung.Across), Unit: "straps", Minutes: minutesWeave})
		}
		return out
	case s.Saddle != nil:
		return []kit.Work{{Name: name + ": glue and screw the box, fit it to the floor, lash it", Count: 1, Unit: "seat", Minutes: minutesSaddle}}
	}
	return []kit.Work{{Name: name + ": cut and glue the foam, tie it down", Count: 1, Unit: "pad", Minutes: minutesPad}}
}
