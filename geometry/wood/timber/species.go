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
	"fmt"
	"slices"
	"strings"
	"unicode"

	"ribwright/geometry/finding"
	"ribwright/geometry/wording"
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
	for _, e := range table {
		all = append(all, e.Species)
	}
	slices.SortFunc(all, func(a, b Species) int {
		return cmp.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name))
	})
	return all
}

type entry struct {
	Species
	also []string
}

// table holds every species. Nothing changes it, and what is handed out is a copy.
//
// Strength: where the standing is Handbook, Wood Handbook FPL-GTR-282 (2021)
// Tables 5-3a and 5-3b, converted and rounded to 100 and 1 N/mm2, density from
// the specific gravity there. For white ash copies of the metric and
// the inch-pound table differ, 103 N/mm2 and 15 400 psi (106): the lower is
// used. European ash and European oak are remembered. Scots pine is as trade
// sheets give it; clear wood from eastern Finland tested at 10.0 to 10.1 GPa
// and 80 to 82 N/mm2 (Forests 2024, 15(3), 567).
//
// Bending ratios: all from memory of printed bending tables for 25 mm stock;
// where a range is remembered, its middle. For the two spruces the limit
// without a strap is 36 or more.
//
// Movement: Wood Handbook Table 13-5 as a second hand copied it, so it stands as
// practice.
var table = [...]entry{
	tested("western redcedar", Density12(0.32), 7700, 52).bends(35, 38).moves(0.00234, 0.00111),
	tested("northern white cedar", Density12(0.31), 5500, 45).bends(18, 25),
	tested("yellow cedar", Density12(0.44), 9800, 77).bends(16, 24).called("Alaska cedar", "Alaska yellow cedar"),
	tested("Sitka spruce", Density12(0.40), 10800, 70).bends(36, 36),
	tested("white spruce", Density12(0.36), 9900, 65).bends(36, 36),
	tested("Douglas-fir", Density12(0.48), 13400, 85).bends(18, 33).moves(0.00267, 0.00165).called("coast Douglas-fir"),
	tested("eastern white pine", Density12(0.35), 8500, 59).bends(24, 32).moves(0.00212, 0.00071),
	tested("yellow-poplar", Density12(0.42), 10900, 70).bends(8, 20).moves(0.00289, 0.00158),
	tested("white oak", Density12(0.68), 12300, 105).bends(0.5, 13).moves(0.00365, 0.00180),
	tested("red oak", Density12(0.63), 12500, 99).bends(1, 11.5).moves(0.00369, 0.00158).called("northern red oak"),
	tested("white ash", Density12(0.60), 12000, 103).bends(4.4, 13).moves(0.00274, 0.00169),
	tested("black ash", Density12(0.49), 11000, 87).bends(5.2, 14),
	tested("American elm", Density12(0.50), 9200, 81).bends(1.7, 13.5),
	tested("hickory", Density12(0.72), 14900, 139).bends(1.8, 15).moves(0.00411, 0.00259).called("shagbark hickory"),
	tested("black locust", Density12(0.69), 14100, 134).bends(1.5, 11),
	tested("European ash", 690, 11900, 116).bends(2.5, 12).stands(finding.Memory),
	tested("European oak", 690, 10100, 97).bends(2, 13).stands(finding.Memory),
	tested("Scots pine", 510, 10000, 83).bends(24, 32).stands(finding.Common),
}

// tested starts an entry: density in kg/m3, MOE and MOR in N/mm2, standing
// Handbook unless stands says otherwise.
func tested(name string, density, moe, mor float64) entry {
	return entry{Species: Species{Name: name, Density: density, MOE: moe, MOR: mor, Strength: finding.Handbook}}
}

// bends sets the limits of inner radius over thickness, with a strap and free.
func (e entry) bends(strap, free float64) entry {
	e.StrapRatio, e.FreeRatio, e.Bending = strap, free, finding.Memory
	return e
}

// moves sets the movement for 1 % of moisture, along and square to the rings.
func (e entry) moves(tangential, radial float64) entry {
	e.Tangential, e.Radial, e.Movement = tangential, radial, finding.Common
	return e
}

func (e entry) stands(s finding.Standing) entry {
	e.Strength = s
	return e
}

func (e entry) called(names ...string) entry {
	e.also = names
	return e
}

// maxName is the longest name, in bytes, that is compared. It is twice the
// longest in the table; anything longer is not a name.
const maxName = 40

// Lookup returns the species called name. Capitals, spaces and hyphens do not
// matter: "Western Red-Cedar" finds the western redcedar. A few second names are
// known, as "Alaska cedar" for yellow cedar.
//
// Errors: a name that is not known; the text gives the three nearest names, or
// every name when name is empty.
func Lookup(name string) (Species, error) {
	if len(name) > maxName {
		return Species{}, fmt.Errorf("species %q: the name is too long; write one as white oak", name[:20]+"...")
	}
	want := plain(name)
	if want == "" {
		return Species{}, fmt.Errorf("species %q: no name is written; write one of %s", name, names(All()))
	}
	for _, e := range table {
		if plain(e.Name) == want || slices.ContainsFunc(e.also, func(n string) bool { return plain(n) == want }) {
			return e.Species, nil
		}
	}
	return Species{}, fmt.Errorf("species %q is not known; the nearest are %s", name, nearest(name, 3))
}

// plain returns the letters of name in lower case and drops all else.
func plain(name string) string {
	return strings.Map(func(r rune) rune {
		if !unicode.IsLetter(r) {
			return -1
		}
		return unicode.ToLower(r)
	}, name)
}

// nearest lists the n names most like name, the likest first. A name that has
// a whole word of the text in it goes before one that is only spelled alike, so
// "oak" brings the oaks. Equals stay in the order of the alphabet.
func nearest(name string, n int) string {
	all := All()
	slices.SortStableFunc(all, func(a, b Species) int { return cmp.Compare(unlike(name, a), unlike(name, b)) })
	return names(all[:n])
}

func names(species []Species) string {
	return wording.List(species, func(s Species) string { return s.Name })
}

// unlike returns how far name is from the name of s; less is nearer.
func unlike(name string, s Species) int {
	d := wording.Edits(plain(name), plain(s.Name))
	for _, w := range strings.Fields(name) {
		// A word of one or two letters is in too many names to mean anything.
		if w = plain(w); len(w) > 2 && strings.Contains(plain(s.Name), w) {
			return d
		}
	}
	return d + maxName
}
