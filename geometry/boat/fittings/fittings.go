// Package fittings lists what the finished boat has besides its frame and its skin, each
// as a kit of its own, so that weight, boards, shopping, hours and order of work know it.
package fittings

import (
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/outside"
	"ribwright/geometry/boat/skin"
)

// Of lists the kits of a covered frame, in the order in which they are fitted.
//
// Errors: a wood that is not known.
func Of(f *frame.Frame, c *skin.Cloth) ([]kit.Kit, error) {
	var out []kit.Kit
	for _, list := range []func(*frame.Frame, *skin.Cloth) (kit.Kit, error){
		seats, outside.Kit,
	} {
		k, err := list(f, c)
		if err != nil {
			return nil, err
		}
		if k.Own = true; len(k.Pieces)+len(k.Things)+len(k.Works) > 0 {
			out = append(out, k)
		}
	}
	return out, nil
}
