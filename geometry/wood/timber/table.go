package timber

import "ribwright/geometry/finding"

// entry is a species with the other names it answers to.
type entry struct {
	Species
	also []string
}

// table returns every species; the slice is new at each call, so nobody can
// change the values for somebody else.
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
func table() []entry {
	return []entry{
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

// stands sets the standing of the strength values.
func (e entry) stands(s finding.Standing) entry {
	e.Strength = s
	return e
}

// called adds other names of the same wood.
func (e entry) called(names ...string) entry {
	e.also = names
	return e
}
