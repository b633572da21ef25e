// Package timber holds what a builder has to know of wood: the strength of
// each species, how tight it bends steamed or dry, how far a lamination springs
// back, and how long a scarf must be.
//
// The strengths are averages of small, clear, straight-grained pieces at 12 %
// moisture; single pieces scatter about the average by some 16 % in rupture and
// 22 % in stiffness (from memory). They serve to compare species and to judge a
// bend, not to certify a part.
package timber

import (
	"cmp"
	"slices"
	"strings"

	"ribwright/geometry/finding"
)

// Species is one kind of wood at 12 % moisture.
type Species struct {
	Name     string           // as printed, "white oak"
	Density  float64          // kg/m3, water included
	MOE      float64          // N/mm2 (MPa), modulus of elasticity in bending
	MOR      float64          // N/mm2 (MPa), modulus of rupture in bending
	Strength finding.Standing // of Density, MOE and MOR

	// Inner radius over thickness at which about 1 bend in 20 of good air-dry
	// stock breaks, steamed at 100 C. Radii for 25 mm stock are taken to
	// shrink in proportion with the thickness.
	StrapRatio float64          // with a strap and end stops
	FreeRatio  float64          // without
	Bending    finding.Standing // of the two ratios

	// Movement across the grain, mm per mm for 1 % of moisture; 0 where it is
	// not known.
	Tangential float64          // along the growth rings: across flat-sawn stock
	Radial     float64          // square to them
	Movement   finding.Standing // of the two
}

// Density12 returns the density in kg/m3 at 12 % moisture, water included, of
// wood of specific gravity sg > 0 (oven-dry mass over volume at 12 %, relative
// to water). Arithmetic: 1000 kg/m3 of water, and 12 % more mass for the
// moisture. Density12(0.60) is 672.
func Density12(sg float64) float64 { return sg * 1000 * 1.12 }

// ColdRatio returns radius over thickness when s is sprung in dry to half its
// MOR, radius at mid-thickness: E / (2 MOR/2) = MOE / MOR. At about half that
// it breaks. The zero Species gives NaN.
func (s Species) ColdRatio() float64 { return s.MOE / s.MOR }

// All returns every species known, sorted by name regardless of capitals. The
// slice is new and owned by the caller.
func All() []Species {
	var all []Species
	for _, e := range table() {
		all = append(all, e.Species)
	}
	slices.SortFunc(all, func(a, b Species) int {
		return cmp.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name))
	})
	return all
}
