package design

import (
	"slices"
	"sort"

	"ribwright/geometry/measure"
)

// SternLikeBow gives the stern what the bow has, where the file leaves the stern's
// own value out; given reports whether a key stands in the file. What is given
// is kept, for Check to compare when the design is symmetric.
func (d *Design) SternLikeBow(given func(key string) bool) {
	for _, v := range []struct {
		key   string
		stern *measure.Length
		bow   measure.Length
	}{
		{"hull.rocker_stern", &d.Hull.RockerStern, d.Hull.RockerBow},
		{"gunwale.edge_set_stern", &d.Gunwale.EdgeSetAft, d.Gunwale.EdgeSetBow},
		{"ribs.from_stern", &d.Ribs.FromStern, d.Ribs.FromBow},
	} {
		if !given(v.key) {
			*v.stern = v.bow
		}
	}
}

// AllSpreaders returns every place where the gunwales are held, midship and
// mirrored ones included, from aft forward.
func (d *Design) AllSpreaders() []Spreader {
	all := append([]Spreader{{At: 0, Beam: d.Hull.Beam}}, d.Hull.Spreaders...)
	if d.Hull.Symmetric {
		for _, s := range d.Hull.Spreaders {
			all = append(all, Spreader{At: -s.At, Beam: s.Beam, Tie: s.Tie})
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].At < all[j].At })
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
	sort.SliceStable(all, func(i, j int) bool { return all[i].At < all[j].At })
	return all
}
