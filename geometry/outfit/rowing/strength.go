package rowing

import (
	"math"

	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wood/timber"
)

// Strength is what the frame bears at the pull that is asked for.
type Strength struct {
	Pull     float64 // on each handle, N
	AtLock   float64 // on each rowlock, along the boat, N
	Weight   float64 // down on a rowlock, N
	Reach    float64 // from the gunwale to the rowlock, mm
	Flat     float64 // stress in a bar bent along the boat, with its push or tie, N/mm2
	Upright  float64 // stress in a bar bent down, N/mm2
	Working  float64 // N/mm2, that the wood is asked to carry
	Sag      float64 // of the rowlock under the weight, mm
	Clip     float64 // greatest force along the boat on one clip, one oar pulling alone, N
	ClipLift float64 // greatest force lifting one clip, N
}

// lean is the part of the pull that presses a rowlock down: the weight of the oar
// and of hands leaning on it. From memory.
const lean = 0.6

// bear works out the frame's stresses. Two bars carry each rowlock on a board that
// holds their ends together, so along the boat they sway as a pair; down each is
// held at the gunwales and free at the end. width between the gunwales' outer
// edges, pitch between the bars, mm.
func bear(o Oar, span, width, pitch, pull float64, barWide, barThick float64, s timber.Species) Strength {
	out := Strength{Pull: pull, AtLock: o.AtLock(pull), Working: beam.Working(s), Reach: (span - width) / 2}
	out.Weight = lean * out.AtLock
	flat, upright := beam.Rectangle(barThick, barWide), beam.Rectangle(barWide, barThick)
	each := out.AtLock / 2
	moment := beam.Sway().Bending(each, out.Reach)
	// The bars' own roots and heads carry half of the turning, push and tie the rest.
	tie := out.AtLock * out.Reach / 2 / pitch
	out.Flat = moment/flat.Modulus + tie/flat.Area
	out.Upright = beam.Tip().Bending(out.Weight/2, out.Reach) / upright.Modulus
	// Beyond the gunwale the bar is free; inside it runs on to the other one, so its
	// root turns. Both sides weighed down alike, the middle bends evenly and adds
	// reach squared times width over two.
	out.Sag = beam.Tip().Gives(out.Weight/2, out.Reach, s.MOE, upright) +
		out.Weight/2*out.Reach*out.Reach*width/(2*s.MOE*upright.Inertia)
	// One oar alone turns the frame about the boat: half its force on each side and
	// the couple over the boat's width, each side with two clips.
	out.Clip = out.AtLock * (0.5 + span/2/width) / 2
	// One rowlock weighed down lifts the far gunwale's clips.
	out.ClipLift = out.Weight * out.Reach / width / 2
	return out
}

// thickness returns the least bar, in whole steps of 2 mm, that carries the pull
// within the working stress and sags no more than allowed, mm.
func thickness(try func(thick float64) Strength) (float64, Strength) {
	for thick := leastBar; ; thick += 2 {
		s := try(thick)
		if math.Max(s.Flat, s.Upright) <= s.Working && s.Sag <= mostSag || thick >= mostBar {
			return thick, s
		}
	}
}

// The bars, mm: no thinner than holds a bolt; what sags more than a few mm feels
// soft. Common practice, no source.
const (
	leastBar = 18.0
	mostBar  = 60.0
	mostSag  = 6.0
)
