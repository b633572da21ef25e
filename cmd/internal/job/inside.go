//go:build !js

package job

import (
	"fmt"

	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/nested"
	"ribwright/geometry/trial/stow"
	"ribwright/layout/report"
	"ribwright/layout/report/trial"
)

// nesting asks for a boat that goes into another, or around it.
type nesting struct {
	Inside, Around string  // the other design, "" for none
	Room           float64 // mm, the least between the boats

	trials []sizing.Trial // none where nothing is asked
	wish   nested.Wish
	result *nested.Result // of the boat, where it was no search
}

func (n *nesting) fields() []Field {
	return grouped("Boats in one another", []Field{
		{Name: "inside", Takes: "DESIGN", Says: "a boat that the new one shall go into, as on a car's roof; its thwarts and seats are out", Value: words(&n.Inside)},
		{Name: "around", Takes: "DESIGN", Says: "a boat that shall go into the new one", Value: words(&n.Around)},
		room(&n.Room),
	})
}

// check refuses two others, and another where no one boat is sized.
func (n *nesting) check(many bool) error {
	switch {
	case n.Inside != "" && n.Around != "":
		return misuse("inside,around", "one boat is sized to nest with one other; give one of them")
	case n.Inside+n.Around != "" && many:
		return misuse("inside,around", "only one boat that is sized alone is tried in another; leave them out")
	}
	return nil
}

// open reads the other boat.
func (n *nesting) open(w World) error {
	name := n.Inside + n.Around
	if name == "" {
		return nil
	}
	k, err := w.factsOf(name)
	if err != nil {
		return err
	}
	other, err := then(name, k.frame, stow.NewBoat)()
	n.wish = nested.Wish{Other: other, Around: n.Around != "", Room: n.Room}
	n.trials = []sizing.Trial{n.wish.Trial()}
	return err
}

// size finds the boat.
func (n *nesting) size(make func() (*sizing.Case, error)) (_ *sizing.Boat, err error) {
	if n.result, err = n.wish.Of(make); err != nil {
		return nil, err
	}
	return n.result.Boat, nil
}

// kept takes the boat of a search, or says of one that found none what it was asked too.
func (n *nesting) kept(b *sizing.Boat, err error) error {
	if err != nil {
		return fmt.Errorf("%w; it was also asked to go %s", err, n.wish)
	}
	n.result, err = n.wish.Found(b)
	return err
}

// told says how the two go into one another.
func (n *nesting) told() []report.Block {
	if n.result == nil {
		return nil
	}
	return trial.Nested(n.result)
}
