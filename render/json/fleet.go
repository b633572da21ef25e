package json

import (
	"math"
	"slices"

	"ribwright/geometry/trial/stow"
)

// Fleet gathers what was found of boats put into one another. Stations are from
// midship and heights over the baseline of the lower boat of a pair; in the order they
// are in the axes of the first boat.
//
// Errors: a design that has no fingerprint, which Check would have refused.
func Fleet(r *stow.Report) (Object, error) {
	s := r.Stack
	var designs []Object
	for _, b := range s.Boats {
		head, err := headerOf(b.Frame.Design)
		if err != nil {
			return nil, err
		}
		designs = append(designs, head)
	}
	fitted := slices.DeleteFunc(slices.Clone(r.Proposed), func(b *stow.Boat) bool { return b == nil })
	return Object{
		{"designs", designs}, // in the order of the stack
		{"room_asked_mm", fixed(r.Options.Pad)},
		{"thwarts_left_in", r.Options.LeftIn},
		{"nests", s.Nests},
		{"order", upTo(len(s.Boats), func(i int) Object { // from the outermost in
			b, p := s.Boats[i], s.Places[i]
			return Object{{"title", b.Title}, {"mass_kg", fixed(b.Mass)}, {"x_mm", fixed(p.X)}, {"z_mm", fixed(p.Z)},
				{"turned", p.Turned}, {"take_out", s.TakenOut(i)}}
		})},
		{"pairs", upTo(len(s.Pairs), func(i int) Object { return stackedPair(s.Pairs[i], r.Cures[i]) })},
		{"stack", stack(s)},
		{"fitted", each(fitted, func(b *stow.Boat) Object {
			d := b.Frame.Design
			return Object{{"title", b.Title}, {"slug", d.Slug()}, {"beam_mm", fixed(d.Hull.Beam)}, {"length_mm", fixed(d.Hull.Length)}}
		})},
		{"stack_fitted", stack(r.After)},
		{"limits", judgments(r)},
	}, nil
}

// stack tells the size of a stack; null without one.
func stack(s *stow.Stack) any {
	if s == nil {
		return nil
	}
	return Object{{"height_mm", fixed(s.Height)}, {"length_mm", fixed(s.Length)}, {"width_mm", fixed(s.Width)},
		{"mass_kg", fixed(s.Mass)}, {"nests", s.Nests}}
}

func stackedPair(p *stow.Pair, cures []stow.Cure) Object {
	return Object{
		{"lower", p.Lower.Title}, {"upper", p.Upper.Title}, {"nests", p.Nests},
		{"x_mm", fixed(p.Place.X)}, {"z_mm", fixed(p.Place.Z)}, {"turned", p.Place.Turned},
		{"first_contact_z_mm", fixed(p.Touch)}, {"first_contact", contact(p.First)},
		{"seat_z_mm", fixed(p.Seat)}, {"above_seat_mm", fixed(p.Lift())},
		{"least_floor", contact(p.Rooms[stow.Floor])}, {"least_sides", contact(p.Rooms[stow.Sides])},
		{"least_ends", contact(p.Rooms[stow.Ends])}, {"least_cross_pieces", contact(p.Rooms[stow.Across])},
		{"held_up_by", contact(p.Bound)}, {"lacking_mm", fixed(p.Short)}, {"cures", each(cures, cure)},
	}
}

func cure(c stow.Cure) Object {
	which, by := "lower", field{"by_mm", fixed(c.By)}
	if c.Upper {
		which = "upper"
	}
	if c.Measure == stow.Flare {
		by = field{"by_deg", deg(c.By)}
	}
	return Object{{"boat", c.Boat.Title}, {"which", which}, {"measure", c.Measure.String()}, by}
}

// contact tells where two boats come nearest; null where they do not meet.
func contact(c stow.Contact) any {
	if !c.Meets() {
		return nil
	}
	return Object{{"room_mm", fixed(c.Room)}, {"station_mm", fixed(c.At.X)}, {"half_breadth_mm", fixed(c.At.Y)},
		{"height_mm", fixed(c.At.Z)}, {"lower_part", c.Lower.Name}, {"upper_part", c.Upper.Name}}
}

func judgments(r *stow.Report) []Object {
	out := []Object{}
	judge := func(about string, limit, value float64, unit string, ok bool) {
		out = append(out, Object{{"about", about}, {"limit", fixed(limit)}, {"value", fixed(value)}, {"unit", unit}, {"ok", ok}})
	}
	if r.Limits.Roof > 0 {
		judge("roof", r.Limits.Roof, r.Stack.Mass, "kg", r.Over() <= 0)
	}
	if r.Limits.Door > 0 {
		level, side := r.Through()
		judge("door", r.Limits.Door, math.Min(r.Stack.Width, r.Stack.Height), "mm", level || side)
	}
	return out
}
