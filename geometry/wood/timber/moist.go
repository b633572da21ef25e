package timber

import "math"

// FiberSaturation is the moisture in % from which on wood no longer swells and bends no
// better: what is above it is free water. Source: Wood Handbook FPL-GTR-282, ch. 4,
// about 30 %.
const FiberSaturation = 30.0

// Diffusivity is how fast moisture goes through wood across the grain, mm2/s. From
// memory: woods and temperatures differ by a factor of two or three either way, so
// hours worked out with it are a size to expect.
const Diffusivity = 1e-4

// MoistureHours returns after how many hours a slat of the given thickness, wet or dry
// on both faces, has taken up or given off a share of the moisture that it will in the
// end.
//
// How: diffusion into a plane sheet. The share goes with the root of time up to a half,
// and beyond it the first term of the series is enough:
//
//	t = pi share2 thickness2 / (16 D), then t = thickness2 ln(8 / (pi2 (1 - share))) / (pi2 D)
//
// Units: thickness mm >= 0. Requires: share < 1.
// Returns: 0 for a share of 0 or less.
// Accuracy: within 1 % of the whole series; Diffusivity decides.
// Source: J. Crank, The Mathematics of Diffusion, plane sheet (half after 0.049 l2/D).
func MoistureHours(thickness, share float64) float64 {
	if share <= 0 {
		return 0
	}
	t := math.Pi * share * share / 16
	if share > 0.5 {
		t = math.Log(8/(math.Pi*math.Pi*(1-share))) / (math.Pi * math.Pi)
	}
	const hour = 3600.0 // s
	return t * thickness * thickness / Diffusivity / hour
}

// SoakShare returns the share of what wood can take up that brings it from one moisture
// to another, both in %: 0 when it is as moist already, or wetter than it can take up.
func SoakShare(from, to float64) float64 {
	if to <= from || from >= FiberSaturation {
		return 0
	}
	return (to - from) / (FiberSaturation - from)
}
