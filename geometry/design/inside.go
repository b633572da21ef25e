package design

import (
	"cmp"

	"ribwright/geometry/measure"
)

// usualInside is what is inside a design that does not say. Common practice, no source.
func usualInside() Inside {
	return Inside{Slats: 5, SlatWidth: 45, SlatThickness: 6, Backrest: true, Footbrace: true}
}

// InsideWood returns the wood of floor slats, footbraces and backrests.
func (d *Design) InsideWood() string { return cmp.Or(d.Inside.Species, d.Stringers.Species) }

// Floor returns how thick the floor is on the ribs; 0 for a boat without slats.
func (i Inside) Floor() measure.Length {
	if i.Slats == 0 {
		return 0
	}
	return i.SlatThickness
}
