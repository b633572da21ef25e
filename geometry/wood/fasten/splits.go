package fasten

import "math"

// Splits returns the load, N, at which a bolt that pulls across the grain splits a
// softwood stick of the width b and the height h, when it stands he mm from the edge
// that it pulls towards; +Inf when it stands at the far edge or beyond.
//
// Source: Eurocode 5 (8.4), from memory; a characteristic value.
func (u Usual) Splits(b, h, he float64) float64 {
	if he >= h {
		return math.Inf(1)
	}
	return u.SplitFactor * b * math.Sqrt(he/(1-he/h))
}
