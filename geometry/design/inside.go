package design

import "cmp"

// usualInside is what is inside a design that does not say. Common practice, no source.
func usualInside() Inside {
	return Inside{Slats: 5, SlatWidth: 45, SlatThickness: 6, Backrest: true, Footbrace: true}
}

// InsideWood returns the wood of floor slats, footbraces and backrests.
func (d *Design) InsideWood() string { return cmp.Or(d.Inside.Species, d.Stringers.Species) }
