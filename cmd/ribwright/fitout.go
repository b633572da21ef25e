package main

import (
	"fmt"
	"path/filepath"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/outfit"
	"ribwright/geometry/water"
)

// shipOf readies a boat to be fitted out, with the people of its design or a usual
// one. name is the design's as it was given; beside is the second boat of a pair, ""
// for one like the first.
func shipOf(d *design.Design, gear []design.Gear, name, beside string, w water.Water) (outfit.Ship, error) {
	s, err := manned(d, gear, name, w)
	if err != nil || beside == "" {
		return s, err
	}
	other, err := open(beside)
	if err != nil {
		return s, fmt.Errorf("the boat beside %s: %w", name, err)
	}
	second, err := manned(other, other.Gear, beside, w)
	s.Beside = &second.Boat
	return s, err
}

func manned(d *design.Design, gear []design.Gear, name string, w water.Water) (outfit.Ship, error) {
	f, err := frame.Build(d)
	var s outfit.Ship
	if err == nil {
		s, err = outfit.NewShip(f, gear, w)
	}
	if err != nil {
		return s, fmt.Errorf("%s: %w", name, err)
	}
	return s, nil
}

// besideOf is the second boat that a design names, looked for beside the design.
func besideOf(d *design.Design, name string) string {
	with := d.Pair().With
	if with == "" || slices.Contains(design.ShippedNames(), with) || filepath.IsAbs(with) {
		return with
	}
	return filepath.Join(filepath.Dir(name), with)
}

// outfitsOf sizes the outfits that a design has aboard.
func outfitsOf(d *design.Design, gear []design.Gear, name string) (*outfit.Outfits, error) {
	if d.Fitted() == (design.Outfit{}) {
		return &outfit.Outfits{}, nil
	}
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		return nil, err
	}
	s, err := shipOf(d, gear, name, besideOf(d, name), w)
	if err != nil {
		return nil, err
	}
	return outfit.Of(s), nil
}

// fit sizes the outfit of a verb, with the weight of the others that its design has.
func (t *fitting) fit(d *design.Design, name, beside string, n outfit.Name) (*outfit.Outfits, error) {
	w, err := t.still()
	if err != nil {
		return nil, err
	}
	s, err := shipOf(d, d.Gear, name, beside, w)
	if err != nil {
		return nil, err
	}
	o, err := outfit.One(s, n)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return o, nil
}
