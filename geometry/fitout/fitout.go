// Package fitout sizes all outfits that a design has aboard, each with the weight of
// the others in the boat, so that a sail, beams and oars know of each other and
// nothing is typed twice.
package fitout

import (
	"errors"
	"fmt"

	"ribwright/geometry/design"
	"ribwright/geometry/float"
	"ribwright/geometry/frame"
	"ribwright/geometry/kit"
	"ribwright/geometry/laden"
	"ribwright/geometry/mass"
	"ribwright/geometry/pair"
	"ribwright/geometry/rig"
	"ribwright/geometry/rowing"
	"ribwright/geometry/water"
)

// Ship is the boat to fit out, and the one beside it in a pair.
type Ship struct {
	Boat   laden.Boat  // with its people and gear; Fitted is not looked at
	Beside *laden.Boat // nil for one like this
	Water  water.Water
}

// Manned makes a ship of a frame, with the people of its design or a usual one.
//
// Errors: an outside that cannot be drawn, or a wood that is not known.
func Manned(f *frame.Frame, gear []design.Gear, w water.Water) (Ship, error) {
	b, err := laden.New(f, laden.Manned(f.Design), gear)
	return Ship{Boat: b, Water: w}, err
}

// Outfits are what is aboard; nil for what is not.
type Outfits struct {
	Sail *rig.Fit
	Pair *pair.Craft
	Row  *rowing.Fit
	Left []string // outfits under which the boat does not float upright, and why
}

// fitted is an outfit that was sized.
type fitted interface {
	Kit() kit.Kit
	Items() ([]mass.Item, error)
}

// Name is what an outfit is called in the design and as a verb.
type Name string

// The outfits, in the order of tables.
const (
	Sail Name = "sail"
	Pair Name = "pair"
	Row  Name = "row"
)

// words are what the outfits are called in sentences.
func (n Name) words() string {
	switch n {
	case Sail:
		return "the sail"
	case Pair:
		return "the pair's beams"
	}
	return "the rowing frame"
}

// Of sizes the outfits of the ship's design: each alone, then each with the others'
// weight as it was found alone. One that capsizes or sinks the boat is left out and
// named in Left; one that does so only with the others keeps its size and is named
// too.
//
// Errors: what an outfit's own verb would refuse.
func Of(s Ship) (*Outfits, error) {
	out := &Outfits{}
	alone, err := s.each(out, "", nil)
	if err != nil || len(alone) < 2 {
		return out, err
	}
	_, err = s.each(out, "", alone)
	return out, err
}

// Others returns what the design's outfits other than the named one weigh, each as it
// is sized alone.
//
// Errors: as Of.
func Others(s Ship, n Name) ([]mass.Item, error) {
	all, err := s.each(&Outfits{}, n, nil)
	return all.but(n), err
}

// weights are the items of each outfit.
type weights map[Name][]mass.Item

func (w weights) but(n Name) []mass.Item {
	var out []mass.Item
	for _, other := range []Name{Sail, Pair, Row} {
		if other != n {
			out = append(out, w[other]...)
		}
	}
	return out
}

// each sizes every outfit but one with the weights of the others, and weighs it.
func (s Ship) each(out *Outfits, but Name, others weights) (weights, error) {
	d := s.Boat.Frame.Design
	o, all := d.Fitted(), weights{}
	for _, n := range []Name{Sail, Pair, Row} {
		if n == but || n == Sail && o.Sail == nil || n == Pair && o.Pair == nil || n == Row && o.Row == nil {
			continue
		}
		b := s.Boat
		b.Fitted = others.but(n)
		fit, err := s.size(out, n, b)
		var fault *float.Fault
		switch {
		case errors.As(err, &fault):
			out.leave(n, b.Fitted, err)
			continue
		case err != nil:
			return nil, err
		}
		if all[n], err = fit.Items(); err != nil {
			return nil, err
		}
	}
	return all, nil
}

func (o *Outfits) leave(n Name, others []mass.Item, err error) {
	said := "%s is not counted: %v"
	if len(others) > 0 {
		said = "%s is counted, but not together with the other outfits: %v"
	}
	o.Left = append(o.Left, fmt.Sprintf(said, n.words(), err))
}

// size works out one outfit as its own verb does.
func (s Ship) size(out *Outfits, n Name, b laden.Boat) (fitted, error) {
	d := b.Frame.Design
	switch n {
	case Sail:
		fit, err := rig.New(b, d.Sail(), s.Water)
		if err == nil {
			out.Sail = fit
		}
		return fit, err
	case Pair:
		beside := s.Boat
		if s.Beside != nil {
			beside = *s.Beside
		}
		craft, err := pair.New(b, beside, d.Pair(), s.Water)
		if err == nil {
			out.Pair = craft
		}
		return craft, err
	}
	fit, err := rowing.New(b, d.Row(), s.Water)
	if err == nil {
		out.Row = fit
	}
	return fit, err
}

// Weight is what one outfit weighs in the boat.
type Weight struct {
	Name  string // of its kit
	Items []mass.Item
}

// Weights lists what each outfit weighs.
//
// Errors: a wood that is not known.
func (o *Outfits) Weights() ([]Weight, error) {
	var out []Weight
	for _, f := range o.all() {
		items, err := f.Items()
		if err != nil {
			return nil, err
		}
		out = append(out, Weight{f.Kit().Name, items})
	}
	return out, nil
}

// Kits lists what all outfits are made of.
func (o *Outfits) Kits() []kit.Kit {
	var out []kit.Kit
	for _, f := range o.all() {
		out = append(out, f.Kit())
	}
	return out
}

func (o *Outfits) all() []fitted {
	var out []fitted
	if o.Sail != nil {
		out = append(out, o.Sail)
	}
	if o.Pair != nil {
		out = append(out, o.Pair)
	}
	if o.Row != nil {
		out = append(out, o.Row)
	}
	return out
}
