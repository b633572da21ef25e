package fasten

import "math"

// Cord is a lashing cord.
type Cord struct {
	Diameter float64 // mm
	Density  float64 // of its fiber, kg/m3
	Breaks   float64 // N; 0 where the maker does not say
}

// Densities of fibers, kg/m3, from textile property pages.
const (
	Polyester = 1380.0
	Nylon     = 1140.0
)

// Tex returns the mass of the cord, g/km.
func (u Usual) Tex(c Cord) float64 {
	return math.Pi / 4 * c.Diameter * c.Diameter * u.CordFull * c.Density / 1000 * 1000
}

// newtonsPerTex is 1 gf/denier: 9.80665e-3 N over 1/9 tex.
const newtonsPerTex = 9.80665e-3 * 9

// Strength returns the load that breaks the cord, N: what its maker says, else by its
// thickness.
func (u Usual) Strength(c Cord) float64 {
	if c.Breaks > 0 {
		return c.Breaks
	}
	return u.Tex(c) * u.Tenacity * newtonsPerTex * u.CordTwist
}

// Lashing returns the load, N, that pulls a lashing of so many turns apart: two parts of
// each turn bear, all weakened by the knot, and not all alike.
func (u Usual) Lashing(c Cord, turns int) float64 {
	return 2 * float64(turns) * u.Strength(c) * u.KnotKeeps * u.TurnShare
}
