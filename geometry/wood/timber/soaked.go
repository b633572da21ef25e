package timber

// greenGravity is oven-dry mass over the volume of green wood, to water, of woods whose
// gravity at 12 % moisture the table of species has: Wood Handbook FPL-GTR-282, Table
// 5-3a; all but western redcedar and white ash from memory.
var greenGravity = map[string]struct{ green, dry float64 }{
	"western redcedar":     {0.31, 0.32},
	"northern white cedar": {0.29, 0.31},
	"yellow cedar":         {0.42, 0.44},
	"Sitka spruce":         {0.37, 0.40},
	"white spruce":         {0.33, 0.36},
	"Douglas-fir":          {0.45, 0.48},
	"yellow-poplar":        {0.40, 0.42},
	"white oak":            {0.60, 0.68},
	"red oak":              {0.56, 0.63},
	"white ash":            {0.55, 0.60},
	"black ash":            {0.45, 0.49},
}

// saturated is the moisture at which cell walls hold no more, a share of the dry mass:
// about 30 % (Wood Handbook, chapter 4).
const saturated = 0.30

// Soaked returns what happens to wood that lies a day or more in water: how many times
// its volume at 12 % moisture it takes up, and how many times its mass it weighs. Open
// pores may fill in longer soaking, which nobody has counted here. Other woods than
// those of the table swell as gravity has it: green = G / (1 + 0.159 G) of the gravity G
// at 12 % (Wood Handbook, chapter 4, from memory).
func (s Species) Soaked() (volume, mass float64) {
	volume = 1 + 0.159*s.Density/1120
	if g, ok := greenGravity[s.Name]; ok {
		volume = g.dry / g.green
	}
	return volume, (1 + saturated) / 1.12
}
