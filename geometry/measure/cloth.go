package measure

// OuncesPerSquareYard turns a mass of cloth in g/m2 into the ounces per square yard
// that it is sold by: an ounce is 28.349523125 g, a yard 0.9144 m, both exactly
// (international yard and pound agreement of 1959).
func OuncesPerSquareYard(grams float64) float64 {
	return grams * 0.9144 * 0.9144 / 28.349523125
}
