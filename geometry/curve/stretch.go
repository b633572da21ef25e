package curve

import "fmt"

// Stretch returns the piece of a segment from the parameter a to b, 0 <= a <= b <= 1,
// run through as the segment is; the segment itself from 0 to 1.
//
// Accuracy: that of doubles; of a cubic it is the same curve, cut after de Casteljau.
func Stretch(s Segment, a, b float64) Segment {
	if a <= 0 && b >= 1 {
		return s
	}
	switch s := s.(type) {
	case Line:
		return Line{A: s.At(a), B: s.At(b)}
	case Arc:
		return Arc{Center: s.Center, Radius: s.Radius, From: s.From + a*s.Sweep, Sweep: (b - a) * s.Sweep}
	case Cubic:
		// The handles of a stretch are a third of the slope at its ends.
		k := (b - a) / 3
		p, q := s.At(a), s.At(b)
		return Cubic{P0: p, P1: p.Add(s.Slope(a).Scale(k)), P2: q.Sub(s.Slope(b).Scale(k)), P3: q}
	}
	panic(fmt.Sprintf("a segment of no known kind: %T", s))
}
