package json

import (
	"fmt"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/seat"
)

// seatsOf lists the seats, each with who sits on it and what carries it.
func seatsOf(l *lookup, f *frame.Frame) []Object {
	out := []Object{}
	for _, s := range f.Seats {
		out = append(out, seatOf(l.part(fmt.Sprintf("seat %d", s.Number+1)), f, s))
	}
	return out
}

func seatOf(p part, f *frame.Frame, s seat.Seat) Object {
	crew := []string{}
	for _, c := range f.Design.Crew {
		if f.Design.FindSeat(c.Seat) == s.Number {
			crew = append(crew, c.Name)
		}
	}
	var carried any // null for a seat that stands on the floor
	if s.Hung != nil {
		carried = Object{
			{"clear_under_front_mm", p.of("clear under front edge")}, {"bottom", s.Hung.Bottom.String()},
			{"rail_width_mm", p.of("rail width")}, {"rail_depth_mm", p.of("rail depth")}, {"spreader_mm", p.of("spreader")},
			{"front", railOf(p, "front")}, {"after", railOf(p, "after")},
		}
	}
	return Object{
		{"name", s.Name}, {"kind", s.Kind.String()}, {"station_mm", p.of("station")}, {"top_over_floor_mm", p.of("top over floor")},
		{"top_z_mm", p.of("top")}, {"crew", crew}, {"length_mm", p.of("long")}, {"width_mm", p.of("wide")}, {"front_edge_lower_mm", p.of("front edge under the back one")}, {"hung", carried},
	}
}

// railOf tells of a rail and the pair of hangers that carry it.
func railOf(p part, name string) Object {
	return Object{
		{"station_mm", p.of(name + " rail station")}, {"top_z_mm", p.of(name + " rail top")}, {"rail_length_mm", p.of(name + " rail length")},
		{"hanger_length_mm", p.of(name + " hanger length")}, {"hanger_to_rail_top_mm", p.of(name + " hanger to rail top")},
		{"bolts_from_midship_mm", p.part("gunwale").all("bolt of "+p.name+", "+name+", from midship", 2)}, {"bolts_under_gunwale_top_mm", p.of(name + " bolts under the gunwale top")},
		{"hanger_width_mm", p.of(name + " hanger width")}, {"slot_forward_of_middle_mm", p.of(name + " hanger slot forward of its middle")}, {"block_mm", p.of(name + " hanger block")},
		{"lean_deg", p.of(name + " hanger lean")}, {"skew_deg", p.of(name + " hanger skew")},
	}
}
