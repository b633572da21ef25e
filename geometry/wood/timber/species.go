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
	"fmt"
	"math"
	"slices"
	"sort"
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
	Hard     bool             // from a broad-leaved tree; false where it is not known, which is the safe side for joints

	// What joints ask of the wood, N/mm2.
	CrushAlong float64          // pressed along the grain, at the greatest load
	Crush      float64          // pressed across the grain, where it begins to stay dented
	Shear      float64          // along the grain
	Split      float64          // pulled apart across the grain
	Joints     finding.Standing // of the four: Estimate where they are derived

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
	sort.SliceStable(all, func(i, j int) bool { return strings.ToLower(all[i].Name) < strings.ToLower(all[j].Name) })
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
// Joints: where the standing is Handbook, Wood Handbook FPL-GTR-282 (2021) Table 5-3b
// read second hand in open data, converted and rounded to 0.1 and 0.01 N/mm2. The
// American woods that stand as Memory are remembered from the same table. The others
// are derived (Derived).
//
// Movement: Wood Handbook Table 13-5 as a second hand copied it, so it stands as
// practice.
var table = completed([...]entry{
	tested("western redcedar", Density12(0.32), 7700, 52).joins(31.4, 3.17, 6.83, 1.52).bends(35, 38).moves(0.00234, 0.00111),
	tested("northern white cedar", Density12(0.31), 5500, 45).joins(27.3, 2.14, 5.86, 1.65).bends(18, 25),
	tested("yellow cedar", Density12(0.44), 9800, 77).joins(43.5, 4.27, 7.79, 2.48).bends(16, 24).called("Alaska cedar", "Alaska yellow cedar"),
	tested("Sitka spruce", Density12(0.40), 10800, 70).joins(38.7, 4, 7.93, 2.55).bends(36, 36),
	tested("white spruce", Density12(0.36), 9900, 65).joins(35.7, 2.96, 6.69, 2.48).bends(36, 36),
	tested("Douglas-fir", Density12(0.48), 13400, 85).joins(49.8, 5.52, 7.79, 2.34).bends(18, 33).moves(0.00267, 0.00165).called("coast Douglas-fir"),
	tested("eastern white pine", Density12(0.35), 8500, 59).joins(33.1, 3.03, 6.21, 2.14).remembered().bends(24, 32).moves(0.00212, 0.00071),
	tested("yellow-poplar", Density12(0.42), 10900, 70).hard().joins(38.2, 3.45, 8.2, 3.72).bends(8, 20).moves(0.00289, 0.00158),
	tested("white oak", Density12(0.68), 12300, 105).hard().joins(51.3, 7.38, 13.79, 5.52).bends(0.5, 13).moves(0.00365, 0.00180),
	tested("red oak", Density12(0.63), 12500, 99).hard().joins(46.6, 6.96, 12.27, 5.52).remembered().bends(1, 11.5).moves(0.00369, 0.00158).called("northern red oak"),
	tested("white ash", Density12(0.60), 12000, 103).hard().joins(51.1, 8, 13.17, 6.48).bends(4.4, 13).moves(0.00274, 0.00169),
	tested("black ash", Density12(0.49), 11000, 87).hard().joins(41.2, 5.24, 10.82, 4.83).bends(5.2, 14),
	tested("American elm", Density12(0.50), 9200, 81).hard().joins(38.1, 4.76, 10.41, 4.55).remembered().bends(1.7, 13.5),
	tested("hickory", Density12(0.72), 14900, 139).hard().joins(63.5, 12.13, 16.75, 0).remembered().bends(1.8, 15).moves(0.00411, 0.00259).called("shagbark hickory"),
	tested("black locust", Density12(0.69), 14100, 134).hard().joins(70.2, 12.62, 17.1, 4.41).remembered().bends(1.5, 11),
	tested("European ash", 690, 11900, 116).hard().bends(2.5, 12).stands(finding.Memory),
	tested("European oak", 690, 10100, 97).hard().bends(2, 13).stands(finding.Memory),
	tested("Scots pine", 510, 10000, 83).bends(24, 32).stands(finding.Common),
})

// completed gives every wood what joints ask for.
func completed(all [18]entry) [18]entry {
	for i := range all {
		all[i].Species = all[i].derived(all[:])
	}
	return all
}

// Derived returns s with the values that joints ask for where it has none: the lowest
// that any wood read from the Wood Handbook has for its strength in bending. They stand
// as estimates.
func (s Species) Derived() Species { return s.derived(table[:]) }

func (s Species) derived(all []entry) Species {
	for _, v := range []func(*Species) *float64{
		func(s *Species) *float64 { return &s.CrushAlong }, func(s *Species) *float64 { return &s.Crush },
		func(s *Species) *float64 { return &s.Shear }, func(s *Species) *float64 { return &s.Split },
	} {
		if *v(&s) > 0 {
			continue
		}
		least := math.Inf(1)
		for _, e := range all {
			if e.Joints == finding.Handbook {
				least = math.Min(least, *v(&e.Species)/e.MOR)
			}
		}
		*v(&s), s.Joints = least*s.MOR, finding.Estimate
	}
	return s
}

// Gravity returns the specific gravity: oven-dry mass over volume at 12 % of moisture,
// relative to water. The inverse of Density12.
func (s Species) Gravity() float64 { return s.Density / Density12(1) }

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

// hard marks the wood of a broad-leaved tree.
func (e entry) hard() entry {
	e.Hard = true
	return e
}

// joins sets what joints ask of the wood, N/mm2; 0 for what is not known.
func (e entry) joins(along, across, shear, split float64) entry {
	e.CrushAlong, e.Crush, e.Shear, e.Split, e.Joints = along, across, shear, split, finding.Handbook
	return e
}

func (e entry) remembered() entry {
	e.Joints = finding.Memory
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
	for i := range table { // as most names are written
		if n := table[i].Name; len(n) == len(name) && strings.EqualFold(n, name) {
			return table[i].Species, nil
		}
	}
	return otherwise(name)
}

// otherwise looks a name up that is written in another way than the table has it.
func otherwise(name string) (Species, error) {
	want := plain(name)
	if want == "" {
		return Species{}, fmt.Errorf("species %q: no name is written; write one of %s", name, names(All()))
	}
	for i := range table {
		e := &table[i]
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
	sort.SliceStable(all, func(i, j int) bool { return unlike(name, all[i]) < unlike(name, all[j]) })
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
