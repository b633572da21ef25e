package stow

import (
	"fmt"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
)

// Refit proposes a boat like the upper one of a pair that stands in the lower
// one with the room asked for: narrower to the least whole millimetre, and only
// when that does not serve shorter as well, by steps of 5 mm. It bears the title
// given; a pair that nests returns its upper boat.
//
// Errors: no boat up to a quarter shorter and a fifth narrower nests, or none
// that can be built.
func (p *Pair) Refit(o Options, title string) (*Boat, error) {
	if p.Nests {
		return p.Upper, nil
	}
	was := p.Upper.Frame.Design
	_, most := Beam.steps(was)
	step, longest := Length.steps(was)
	stands := func(shorter, narrower int) bool {
		return stands(p.Lower, made(smaller(was, float64(shorter)*step, float64(narrower))), p.Place, o)
	}
	const tries = 3
	for k := range tries + 1 {
		shorter := int(longest/step) * k / tries
		narrower := firstGood(int(most), func(n int) bool { return stands(shorter, n) })
		if narrower == 0 {
			continue
		}
		if shorter > 0 {
			shorter = firstGood(shorter, func(n int) bool { return stands(n, narrower) })
		}
		d := smaller(was, float64(shorter)*step, float64(narrower))
		d.Title = title
		return weighed(d)
	}
	return nil, fmt.Errorf("no %s that can be built stands in %s, up to %.0f mm shorter and %.0f mm narrower; ask for less room, or draw a smaller boat",
		p.Upper.Title, p.Lower.Title, longest, most)
}

// smaller is a design shortened and narrowed, mm.
func smaller(d *design.Design, shorter, narrower float64) *design.Design {
	return changed(changed(d, Length, -shorter), Beam, -narrower)
}

// weighed builds and weighs a design.
func weighed(d *design.Design) (*Boat, error) {
	f, err := frame.Build(d)
	if err != nil {
		return nil, err
	}
	return NewBoat(f)
}
