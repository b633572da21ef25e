package fasten

import "math"

// Distance is how far a fastener stands from an edge or an end, mm: where the joint has
// its whole design value, and the least at all.
type Distance struct{ Full, Least float64 }

// Pulled returns the distance of a bolt of 6 mm or more to an end that the load pulls
// towards, along the grain; at Least the joint has half of its value.
//
// Source: NDS table 12.5.1A.
func Pulled(diameter float64, hard bool) Distance {
	if hard {
		return Distance{5 * diameter, 2.5 * diameter}
	}
	return Distance{7 * diameter, 3.5 * diameter}
}

// Pressed returns that to an end that the load pushes away from, and to any end when it
// pushes across the grain.
func Pressed(diameter float64) Distance { return Distance{4 * diameter, 2 * diameter} }

// Share returns the share of the design value that a bolt has so far from an end: 0
// under the least, 1 from the full distance on.
func (d Distance) Share(from float64) float64 {
	if from < d.Least {
		return 0
	}
	return math.Min(1, from/d.Full)
}

// EndsEC5 are the distances of a bolt by Eurocode 5 table 8.4, mm; angle of the push to
// the grain. From memory.
type EndsEC5 struct{ LoadedEnd, LoadedEdge, Edge, Along, Across float64 }

// BoltEC5 returns them.
func BoltEC5(diameter, angle float64) EndsEC5 {
	sin, cos := math.Sincos(angle)
	return EndsEC5{
		LoadedEnd:  math.Max(7*diameter, 80),
		LoadedEdge: math.Max((2+2*math.Abs(sin))*diameter, 3*diameter),
		Edge:       3 * diameter,
		Along:      (4 + math.Abs(cos)) * diameter,
		Across:     4 * diameter,
	}
}

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
