package measure

// Pound is one avoirdupois pound in kg, exactly: international yard and pound
// agreement of 1959.
const Pound = 0.45359237

// Gravity is the standard acceleration of free fall, m/s2: what turns a mass into its
// weight. Source: third General Conference on Weights and Measures, 1901.
const Gravity = 9.80665

// Knot is one nautical mile of 1852 m an hour, in m/s, exactly.
const Knot = 1852.0 / 3600

// OuncesPerSquareYard turns a mass of cloth in g/m2 into the ounces per square yard
// that it is sold by: an ounce is the sixteenth of a pound, a yard 0.9144 m exactly.
func OuncesPerSquareYard(grams float64) float64 {
	const ounce, yard = Pound * 1000 / 16, 0.9144
	return grams * yard * yard / ounce
}
