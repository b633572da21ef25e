package design

import "slices"

// MadeOf lists the woods that the frame is made of, each once, in the order of the work.
func (d *Design) MadeOf() []string {
	var out []string
	all := []string{d.Gunwale.Species, d.StemWood(), d.Ribs.Species, d.Keel.Species, d.Stringers.Species, d.InsideWood(), d.OutsideWood()}
	for _, t := range d.Thwarts {
		all = append(all, t.Species)
	}
	for _, name := range all {
		if name != "" && !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}
