// Package cargo tells what happens to a boat whose live cargo moves: passengers who lean
// over, a dog that stands up at the side. Units: mm, kg, radians.
package cargo

import (
	"errors"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/body"
	"ribwright/geometry/design"
	"ribwright/geometry/water/float"
)

// How far live cargo moves, mm; our own choice: aside as for a look over the side, and
// along the boat as for a step. Besides, it is tried as far aside as the gunwale's inside
// lets it, and there a dog stands.
const (
	Lean = 50.0
	Step = 300.0
)

// Move is what happens when all live cargo moves at once and the paddlers sit still.
type Move struct {
	What      string
	By        float64 // mm, the mean by weight, aside or along the boat
	Upset     bool    // water comes in or the boat goes over; the next three are then 0
	Heel      float64 // radians, at rest
	Freeboard float64 // mm, the least at rest
	Lever     float64 // mm, the greatest righting lever that is left
	Against   float64 // mm, how far the paddlers' weight must move the other way to keep it upright; 0 along the boat or without paddlers
}

// Report is what is known of a boat's live cargo.
type Report struct {
	Who   []string
	Mass  float64 // kg, together
	Held  float64 // mm, how far it can move aside at once, as low as it is, and be held by a boat whose paddlers sit still
	Moves []Move
}

// Of tries the moves. It is nil for a boat without live cargo, or of which only the hull is
// known. A boat that does not stay upright before anything moves is Upset by every move.
//
// Errors: a boat that finds no rest at all, as *float.Fault other than Capsizes or Swamps.
func Of(b aboard.Boat, s float.Standing, density float64) (*Report, error) {
	r, t := &Report{}, trial{boat: b, density: density, load: b.Load()}
	for i, p := range b.People {
		if p.Role.Live() {
			t.live = append(t.live, i)
			r.Who, r.Mass = append(r.Who, p.Name), r.Mass+p.Mass
		} else {
			t.paddlers += p.Mass
		}
	}
	if b.Frame == nil || r.Mass == 0 {
		return nil, nil
	}
	r.Held = s.Held * b.Carried() / r.Mass
	aside := "goes to one side"
	if slices.ContainsFunc(b.People, func(p design.Person) bool { return p.Role == design.Dog }) {
		aside += ", a dog standing"
	}
	for _, m := range []struct {
		what string
		to   func(p design.Person, at geometry.Point3) geometry.Point3
	}{
		{"leans aside", func(design.Person, geometry.Point3) geometry.Point3 { return geometry.Point3{Y: -Lean} }},
		{aside, t.side},
		{"goes forward", func(design.Person, geometry.Point3) geometry.Point3 { return geometry.Point3{X: Step} }},
		{"goes aft", func(design.Person, geometry.Point3) geometry.Point3 { return geometry.Point3{X: -Step} }},
	} {
		one, err := t.move(m.what, m.to)
		if err != nil {
			return nil, err
		}
		r.Moves = append(r.Moves, one)
	}
	return r, nil
}

// HeldEverywhere reports whether the boat holds live cargo wherever it goes.
func (r *Report) HeldEverywhere() bool { return !r.Moves[1].Upset }

type trial struct {
	boat     aboard.Boat
	density  float64
	load     float.Load
	live     []int   // numbers in the crew
	paddlers float64 // kg
}

// side is how far one moves to starboard until the body meets the gunwale's inside; a dog
// stands up there.
func (t trial) side(p design.Person, at geometry.Point3) geometry.Point3 {
	inner, _ := t.boat.GunwaleTop(at.X)
	out := geometry.Point3{Y: -math.Max(0, inner.Y-weight.Wide(p)/2)}
	if p.Role == design.Dog {
		out.Z = (body.DogStanding - body.DogLying) * body.Shoulder(p.Mass)
	}
	return out
}

func (t trial) move(what string, to func(design.Person, geometry.Point3) geometry.Point3) (Move, error) {
	out, l, mass, aside, along := Move{What: what}, t.load, 0.0, 0.0, 0.0
	for _, i := range t.live {
		p := t.boat.People[i]
		by := to(p, t.boat.Crew[i].Load().At)
		l = l.Shifted(p.Mass, by)
		mass, aside, along = mass+p.Mass, aside-p.Mass*by.Y, along+p.Mass*by.X
	}
	out.By = math.Max(aside, math.Abs(along)) / mass
	if t.paddlers > 0 {
		out.Against = aside / t.paddlers
	}
	h := t.boat.Hull
	rest, _, err := h.Settle(l, t.density)
	if fault := (*float.Fault)(nil); errors.As(err, &fault) && (fault.Outcome == float.Capsizes || fault.Outcome == float.Swamps) {
		out.Upset = true
		return out, nil
	} else if err != nil {
		return out, err
	}
	out.Heel, out.Freeboard = math.Abs(rest.Heel), h.Freeboard(rest).Least
	c, err := h.Curve(l, t.density, float.Fine)
	out.Lever = c.Standing(l.Mass, 0, float.Hydrostatics{}).Most
	return out, err
}
