// Package fittings lists what the finished boat has besides its frame and its skin, each
// as a kit of its own, so that weight, boards, shopping, hours and order of work know it.
package fittings

import (
	"slices"

	"ribwright/geometry/boat/flotation"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/inside"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/outside"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/weight"
)

// Places is where everything goes that is fastened to a frame or lies in it. Weight,
// verdicts and marks all follow from it, so it is worked out once.
type Places struct {
	Frame   *frame.Frame
	Joints  *joint.Joints
	Outside outside.Fit
	Inside  inside.Fit // besides flotation
}

// Placed works the places out.
//
// Errors: a wood that is not known.
func Placed(f *frame.Frame) (Places, error) {
	j, err := joint.Of(f)
	if err != nil {
		return Places{Frame: f}, err
	}
	return Places{f, j, outside.Of(f, j.Driven()), inside.Of(f)}, nil
}

// All is what the finished boat has besides frame and skin.
type All struct {
	Kits      []kit.Kit // in the order in which they are fitted
	Flotation flotation.Fit

	items []weight.Item // what the kits weigh
}

// Of lists it for a frame that is covered, whose own parts are given.
//
// Errors: a wood that is not known.
func Of(p Places, c *skin.Cloth, parts []weight.Item) (All, error) {
	var out All
	f := p.Frame
	for _, k := range []kit.Kit{p.Outside.Kit(f), p.Inside.Kit(f.Hull, f.Design), seats(f)} { // seats stand on floor slats
		if err := out.add(k, f); err != nil {
			return All{}, err
		}
	}
	// Last, for it carries all of the others.
	out.Flotation = flotation.Of(p.Swamped(c), slices.Concat(parts, out.items))
	return out, out.add(out.Flotation.Kit(), f)
}

// Swamped is what flotation is placed in.
func (p Places) Swamped(c *skin.Cloth) flotation.Boat {
	return flotation.Boat{Frame: p.Frame, Cloth: c, Inside: p.Inside}
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
