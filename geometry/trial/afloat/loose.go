package afloat

import (
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/sidebyside"
	"ribwright/geometry/trial/pushed"
	"ribwright/geometry/water"
	"ribwright/geometry/water/float"
)

// Loose is how a boat lies on the water whose ribs were only pushed into their mortises
// and never worked by hand, beside how it lies as drawn.
type Loose struct {
	Drawn   Lying
	Hinged  Lying // with heads that turn in their mortises
	Clamped Lying // with heads that do not
}

// Lying is how a boat lies that is held upright, free to sink and to trim.
type Lying struct {
	Rest  float.Hydrostatics // its GM is negative where it would not stay upright
	Fault error              // why it cannot be covered or does not carry its load; Rest is then empty
}

// LooseRibs covers and floats the boat anew with ribs that were only pushed in, from aft
// forward; those of which no such shape is known stay as drawn. The weights and their
// places stay too, and gunwales and keel, as the ribs' heads and middles do not move.
func LooseRibs(b aboard.Boat, ribs []pushed.Rib, w water.Water) *Loose {
	load := b.Load()
	lie := func(of func(pushed.Rib) pushed.Head) Lying {
		h, err := covered(b.Frame, ribs, of)
		if err != nil {
			return Lying{Fault: err}
		}
		return lying(h, load, w)
	}
	out := &Loose{Drawn: lying(b.Hull, load, w)}
	sidebyside.All(
		func() { out.Hinged = lie(func(r pushed.Rib) pushed.Head { return r.Hinged }) },
		func() { out.Clamped = lie(func(r pushed.Rib) pushed.Head { return r.Clamped }) },
	)
	return out
}

func lying(h *float.Hull, load float.Load, w water.Water) Lying {
	plane, _, err := h.Balance(load, w.Density, 0, nil)
	if err != nil {
		return Lying{Fault: err}
	}
	return Lying{Rest: h.Upright(plane, load, w.Density)}
}

// covered puts the cloth over the frame whose ribs have such shapes.
func covered(f *frame.Frame, ribs []pushed.Rib, of func(pushed.Rib) pushed.Head) (*float.Hull, error) {
	sections := make([]hull.Section, len(f.Ribs))
	for i, r := range f.Ribs {
		sections[i] = r.Section
		if ribs[i].Why == nil {
			h := of(ribs[i])
			sections[i].Half, sections[i].Shape.Flare = h.Half, h.Flare
		}
	}
	loose, err := frame.Reshaped(f, sections, frame.Ends{})
	if err != nil {
		return nil, err
	}
	cloth, err := skin.Of(loose)
	if err != nil {
		return nil, err
	}
	return cloth.Hull, nil
}
