// Package fittings lists what the finished boat has besides its frame and its skin, each
// as a kit of its own, so that weight, boards, shopping, hours and order of work know it.
package fittings

import (
	"slices"

	"ribwright/geometry/boat/flotation"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/inside"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/outside"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/weight"
)

// All is what the finished boat has besides frame and skin.
type All struct {
	Kits      []kit.Kit // in the order in which they are fitted
	Flotation flotation.Fit

	items []weight.Item // what the kits weigh
}

// Of lists it for a covered frame whose own parts are given.
//
// Errors: a wood that is not known.
func Of(f *frame.Frame, c *skin.Cloth, parts []weight.Item) (All, error) {
	var out All
	for _, list := range []func(*frame.Frame, *skin.Cloth) (kit.Kit, error){
		outside.Kit, inside.Kit, seats, // seats stand on floor slats
	} {
		k, err := list(f, c)
		if err == nil {
			err = out.add(k, f)
		}
		if err != nil {
			return All{}, err
		}
	}
	// Last, for it carries all of the others.
	out.Flotation = flotation.Of(f, c, slices.Concat(parts, out.items))
	return out, out.add(out.Flotation.Kit(), f)
}

// add lists a kit that has something in it.
func (a *All) add(k kit.Kit, f *frame.Frame) error {
	k.Own = true
	if len(k.Pieces)+len(k.Things)+len(k.Works) == 0 {
		return nil
	}
	items, err := k.Items(f.Design)
	a.Kits, a.items = append(a.Kits, k), append(a.items, items...)
	return err
}
