package balance

import (
	"ribwright/geometry/curve"
)

// Give returns how far the heads of a rib open for a pair of equal and opposite
// level forces of 1 N on them, times its bending stiffness: mm3, so that
//
//	opening = P Give / (E I)
//
// How: Castigliano, 2 ∫ m² ds over the half rib, m the height of the head above
// the place. half runs from the keel to the head, mm.
// Returns: > 0 for a rib that stands up, 0 for one without depth or length.
// Accuracy: 1e-9 of the result; the tests have the closed forms of arcs and legs.
func Give(half curve.Chain) float64 { return 2 * moments(half, 2) }

// moments returns ∫ m^power ds over the half rib for power 1 or 2, mm to the
// power+1.
func moments(half curve.Chain, power int) float64 {
	sum := 0.0
	for _, part := range legs(half) {
		sum += part.moment(power)
	}
	return sum
}

// leg is one bend of a half rib with where it begins.
type leg struct {
	bend  curve.Bend
	chain curve.Chain
	from  float64 // length along the chain to its start, mm
	head  float64 // height of the rib's head, mm
}

func legs(half curve.Chain) []leg {
	end, _ := half.End()
	out, from := make([]leg, 0, len(half)), 0.0
	for _, b := range half {
		out = append(out, leg{b, half, from, end.Y})
		from += b.Length
	}
	return out
}

// moment returns ∫ m^power ds over the leg.
func (l leg) moment(power int) float64 {
	// Four panels of five points leave 1e-12 for a quarter turn.
	return curve.Integrate(func(s float64) float64 {
		p, _ := l.chain.At(s)
		if m := l.head - p.Y; power == 2 {
			return m * m
		} else {
			return m
		}
	}, l.from, l.from+l.bend.Length, 4)
}
