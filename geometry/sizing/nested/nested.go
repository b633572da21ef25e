// Package nested sizes a boat for its people that goes into another one, or around it, as
// boats do on a car's roof: thwarts, yoke and seats of the outer one are out.
package nested

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/trial/stow"
)

// Wish is the boat that the one to be sized shall nest with.
type Wish struct {
	Other  *stow.Boat
	Around bool    // the boat to be sized is the outer one
	Room   float64 // mm, all round, over 0
}

// Trial is the wish as a check of a finished boat. The check's value is the least room, mm,
// with the inner boat on its pads: below 0 they overlap. Where stems, breasthooks or a keel
// hold it up, the room lacks as much as it rides up.
func (w Wish) Trial() sizing.Trial { return sizing.Trial{Name: w.name(), Of: w.check} }

func (w Wish) name() string {
	if w.Around {
		return "around"
	}
	return "inside"
}

// String says where the boat shall go: "inside Lake".
func (w Wish) String() string { return w.name() + " " + w.Other.Title }

func (w Wish) check(b *sizing.Boat) (formula.Check, error) {
	p, err := w.pair(b)
	if err != nil {
		return formula.Check{}, err
	}
	return w.judge(p), nil
}

// judge is the check of two boats in one another.
func (w Wish) judge(p *stow.Pair) formula.Check {
	v := formula.Check{Name: w.name(), Passed: p.Nests, Sized: true, Dim: formula.Length, Limit: w.Room}
	if p.Nests {
		v.Value = math.Max(w.Room, math.Floor(p.Rooms.Least().Room))
		v.Reason = "it goes " + w.String()
		return v
	}
	const fine = 0.5 // mm: wood is not worked closer
	v.Value = math.Floor((w.Room-p.Short)/fine) * fine
	v.Reason = fmt.Sprintf("it does not go %s: %s %s", w.String(), p.Upper.Title, p.Held(whole, up))
	return v
}

// whole and up letter lengths: no boat is measured finer, and what lacks is not rounded away.
func whole(mm float64) string { return fmt.Sprintf("%.0f mm", mm) }
func up(mm float64) string    { return whole(math.Ceil(mm)) }

// both are the lower boat and the upper one.
func (w Wish) both(b *sizing.Boat) (lower, upper *stow.Boat, err error) {
	mine, err := stow.NewBoat(b.Frame)
	if w.Around {
		return mine, w.Other, err
	}
	return w.Other, mine, err
}

// pair puts a sized boat into the other, or the other into it.
func (w Wish) pair(b *sizing.Boat) (*stow.Pair, error) {
	lower, upper, err := w.both(b)
	if err != nil {
		return nil, err
	}
	return stow.Fit(lower, upper, w.options()), nil
}

// stands reports whether the two nest at a place.
func (w Wish) stands(b *sizing.Boat, at stow.Place) bool {
	lower, upper, err := w.both(b)
	return err == nil && stow.Stands(lower, upper, at, w.options())
}

func (w Wish) options() stow.Options { return stow.Options{Pad: w.Room} }

// Change is a measure that differs from what the family gives these people by itself, mm.
type Change struct {
	Name     string
	From, To float64
}

// String says it: "12 mm less beam".
func (c Change) String() string {
	more := "more"
	if c.To < c.From {
		more = "less"
	}
	return fmt.Sprintf("%.0f mm %s %s", math.Abs(c.To-c.From), more, c.Name)
}

// Result is the boat that was found.
type Result struct {
	Wish
	Boat     *sizing.Boat // with the wish among its checks, failed where no boat would do
	Pair     *stow.Pair   // the two in one another as they are
	Changes  []Change     // none where the people's own boat nests, or none would do
	Searched bool         // the boat is that of a search, which kept to the wish
}

// Found is the boat that a search found, with the wish among its trials.
func (w Wish) Found(b *sizing.Boat) (*Result, error) {
	p, err := w.pair(b)
	return &Result{Wish: w, Boat: b, Pair: p, Searched: true}, err
}

// Of is the boat of the case that make makes anew each time: the people's own where it
// nests, else the one that is changed least, in beam, depth or length, or beam and one more
// of them, and fails no check that their own passes. Where there is none it is their own,
// and its check says by how much it does not nest and what would make it.
//
// A value that was set by hand stays. Errors: as for the case.
func (w Wish) Of(make func() (*sizing.Case, error)) (*Result, error) {
	s := &seeker{wish: w, make: make}
	own, err := s.boat(nil)
	if err != nil {
		return nil, err
	}
	s.own = own
	out := &Result{Wish: w, Boat: own}
	if out.Pair, err = w.pair(own); err != nil {
		return nil, err
	}
	if s.at = out.Pair.Place; !out.Pair.Nests {
		if best := s.seek(); best != nil {
			out.Boat, out.Changes, out.Pair = best.boat, best.changes, best.pair
		}
	}
	v := w.judge(out.Pair)
	if !v.Passed {
		v.Reason += "; cure: " + s.cure(out.Pair)
	}
	out.Boat.Ask(v)
	return out, nil
}

// cure says what would make two boats nest that do not.
func (s *seeker) cure(p *stow.Pair) string {
	var all []string
	for _, t := range s.refused {
		all = append(all, fmt.Sprintf("with %s it would, but not for these people: %s", t.words(), t.fails(s.own)[0].String()))
	}
	for _, c := range p.Cures(s.wish.options()) {
		if c.Upper == s.wish.Around {
			all = append(all, c.Words(whole)+" would do")
		}
	}
	if len(all) == 0 {
		return fmt.Sprintf("no beam, depth or length up to %.0f %% from the people's own would do", 100*most)
	}
	return strings.Join(all, "; ")
}
