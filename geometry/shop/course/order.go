package course

import (
	"fmt"
	"slices"

	"ribwright/geometry/boat/seat"
	"ribwright/geometry/design"
	"ribwright/geometry/shop/materials"
)

// all lists the operations of any boat with what comes before each; those that a boat has no
// work for are left out later.
func (b boat) all() []Operation {
	return slices.Concat(b.wood(), b.frame(), b.cover(), []Operation{
		{Name: fitGlue, After: []After{{planing, 0}}},
		{Name: fitShape, After: []After{{planing, 0}, {fitGlue, overnight}}},
		{Name: fitting, After: []After{{fitShape, day}, {b.lastCoat(), overnight}}},            // its wood is oiled; a skin that can be touched
		{Name: firstWater, Whole: true, After: []After{{b.lastCoat(), cured}, {fitting, day}}}, // a day for bedding compound
		{Name: outfits, After: []After{{firstWater, 0}}},
	})
}

func (b boat) wood() []Operation {
	glued := 0.0 // blanks of stems that are glued up with the other sticks
	if b.Frame.Design.MadeStems() != design.StemsSolid {
		glued = overnight
	}
	return []Operation{
		{Name: patterns},
		{Name: sawing, At: Saw},
		{Name: scarfing, After: []After{{sawing, 0}}},
		{Name: planing, After: []After{{sawing, 0}, {scarfing, overnight}}},
		{Name: blocks, Whole: true, After: []After{{patterns, 0}, {planing, 0}}},
		{Name: gluing, Whole: true, After: []After{{patterns, 0}, {planing, 0}, {blocks, overnight}}},
		{Name: mortises, After: []After{{patterns, 0}, {planing, 0}, {blocks, overnight}, {gluing, overnight}}},
		{Name: ends, After: []After{{patterns, 0}, {planing, glued}}},
	}
}

func (b boat) frame() []Operation {
	set := 0.0
	if b.needs.Joints.Head.Glue > 0 {
		set = overnight
	}
	return slices.Concat([]Operation{
		{Name: setup, After: []After{{gluing, overnight + day}, {mortises, 0}, {ends, 0}}},
		{Name: ready, After: []After{{patterns, 0}, {planing, 0}, {mortises, 0}, {setup, 0}}}, // their heads are tried; they are marked by what is measured there
		{Name: forms, After: []After{{patterns, 0}}},
	}, b.bent(), []Operation{
		{Name: battens, After: []After{{pegging, set}}},
		{Name: hotEnds, At: Boiler, Whole: true, After: []After{{pegging, set}, {battens, 0}}},
		{Name: lashing, After: []After{{pegging, set}, {battens, 0}, {hotEnds, 0}}},
		{Name: smoothing, After: []After{{lashing, 0}}},
	})
}

// bent is the work on the ribs. The first one tells the springback of the others, which are
// not soaked before.
func (b boat) bent() []Operation {
	room, tells, hold := After{setup, overnight}, overnight, overnight
	switch {
	case b.OnForms():
		room, tells, hold = After{forms, 0}, day, day+b.dries()
	case b.needs.Joints.Head.Glue > 0:
		hold = damp
	}
	return []Operation{
		{Name: rigging},
		{Name: firstRib, At: Boiler, Whole: true, After: []After{room, {rigging, 0}, {ready, b.Soak.Hours}}},
		{Name: ribs, At: Boiler, Whole: true, After: []After{{firstRib, tells + b.Soak.Hours}}},
		{Name: pegging, After: []After{{setup, overnight}, {ribs, hold}}},
	}
}

func (b boat) cover() []Operation {
	before := After{smoothing, 0}
	if slices.ContainsFunc(b.Frame.Seats, func(s seat.Seat) bool { return s.Hung != nil }) {
		before.Hours = overnight // glue of the blocks behind the seats' bolts
	}
	var out []Operation
	for n := 1; n <= materials.OilCoats; n++ {
		o := Operation{Name: fmt.Sprint(oiling, n), After: []After{before}}
		out, before = append(out, o), After{o.Name, day}
	}
	out = append(out, Operation{Name: loops, After: []After{before}},
		Operation{Name: skin, After: []After{before, {loops, 0}, {ribs, b.dries()}}})
	before = After{skin, b.drawn()}
	for n := 1; n <= b.needs.Coating.Count; n++ {
		o := Operation{Name: fmt.Sprint(coating, n), Whole: true, After: []After{before}}
		out, before = append(out, o), After{o.Name, betweenCoat}
	}
	return out
}

// lastCoat is the operation that the skin is ready with.
func (b boat) lastCoat() string {
	if n := b.needs.Coating.Count; n > 0 {
		return fmt.Sprint(coating, n)
	}
	return skin
}

// linked leaves out operations without work. What came after one of them comes after what was
// before it.
func linked(all []Operation) (out []Operation) {
	through := map[string][]After{}
	for _, o := range all {
		var before []After
		for _, a := range o.After {
			if by, gone := through[a.Name]; gone {
				for _, b := range by {
					before = with(before, b)
				}
			} else {
				before = with(before, a)
			}
		}
		if o.After = before; o.Hours > 0 {
			out = append(out, o)
		} else {
			through[o.Name] = before
		}
	}
	return out
}

// with adds what comes before, once with the longest wait.
func with(all []After, a After) []After {
	if i := slices.IndexFunc(all, func(o After) bool { return o.Name == a.Name }); i >= 0 {
		all[i].Hours = max(all[i].Hours, a.Hours)
		return all
	}
	return append(all, a)
}
