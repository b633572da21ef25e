package design

import (
	"slices"

	"ribwright/geometry/measure"
)

// mirror completes the after half of a symmetric design from the forward half.
// What is already given for the after half is kept for Check to compare.
func (d *Design) mirror() {
	if !d.Hull.Symmetric {
		return
	}
	follow(&d.Hull.RockerStern, d.Hull.RockerBow)
	follow(&d.Gunwale.EdgeSetAft, d.Gunwale.EdgeSetBow)
	follow(&d.Ribs.FromStern, d.Ribs.FromBow)
}

func follow(after *measure.Length, bow measure.Length) {
	if *after == 0 {
		*after = bow
	}
}

// AllSpreaders returns every place where the gunwales are held, midship and
// mirrored ones included, from aft forward.
func (d *Design) AllSpreaders() []Spreader {
	all := append([]Spreader{{At: 0, Beam: d.Hull.Beam}}, d.Hull.Spreaders...)
	if d.Hull.Symmetric {
		for _, s := range d.Hull.Spreaders {
			all = append(all, Spreader{-s.At, s.Beam})
		}
	}
	slices.SortFunc(all, func(a, b Spreader) int { return sign(float64(a.At - b.At)) })
	return all
}

// AllSections returns every section control, mirrored ones included, from aft
// forward.
func (d *Design) AllSections() []Section {
	all := slices.Clone(d.Hull.Sections)
	if d.Hull.Symmetric {
		for _, s := range d.Hull.Sections {
			if s.At != 0 {
				s.At = -s.At
				all = append(all, s)
			}
		}
	}
	slices.SortFunc(all, func(a, b Section) int { return sign(float64(a.At - b.At)) })
	return all
}

func sign(v float64) int {
	switch {
	case v < 0:
		return -1
	case v > 0:
		return 1
	}
	return 0
}
