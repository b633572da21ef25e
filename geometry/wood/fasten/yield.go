package fasten

import "math"

// Piece is one of the pieces that a dowel goes through.
type Piece struct {
	Bearing float64 // N/mm2
	Length  float64 // of the dowel in it, mm
}

// The modes in which a joint yields (Johansen), by their usual numbers.
const (
	Im   = iota // the main piece is crushed
	Is          // the side piece is crushed
	II          // the rod turns stiffly and crushes both
	IIIm        // the rod bends in the main piece
	IIIs        // the rod bends in the side piece
	IV          // the rod bends in both
	modes
)

// Yields are the loads in N at which a joint yields in each mode.
type Yields [modes]float64

// Single returns the yields of a joint in which the rod goes through one face, side
// piece on main piece, without a gap between them.
//
// How: for each of the modes II to IV the positive root of A P² + B P + C = 0.
// Source: AWC Technical Report 12, general dowel equations, read second hand.
func Single(r Rod, side, main Piece) Yields {
	s, m := side.Bearing*r.Diameter, main.Bearing*r.Diameter
	ls, lm := side.Length, main.Length
	bend := r.Moment()
	root := func(a, b, c float64) float64 { return (-b + math.Sqrt(b*b-4*a*c)) / (2 * a) }
	return Yields{
		Im:   m * lm,
		Is:   s * ls,
		II:   root(1/(4*s)+1/(4*m), (ls+lm)/2, -(s*ls*ls+m*lm*lm)/4),
		IIIm: root(1/(2*s)+1/(4*m), lm/2, -bend-m*lm*lm/4),
		IIIs: root(1/(4*s)+1/(2*m), ls/2, -s*ls*ls/4-bend),
		IV:   root(1/(2*s)+1/(2*m), 0, -2*bend),
	}
}

// Wet is the share of a value, lateral or pulled out, that is left in wood that is wet
// in use (NDS).
const Wet = 0.7

// Reduction returns by what the yield in a mode is divided for a design value. nominal
// is the diameter that the fastener is sold by, mm; angle the greatest between push and
// grain in either piece.
//
// Source: NDS table 12.3.1B.
func Reduction(nominal float64, mode int, angle float64) float64 {
	switch d := nominal / inch; {
	case d <= 0.17:
		return 2.2
	case nominal < thick:
		return 10*d + 0.5
	}
	turned := 1 + 0.25*angle/(math.Pi/2)
	switch mode {
	case Im, Is:
		return 4 * turned
	case II:
		return 3.6 * turned
	}
	return 3.2 * turned
}

// Design returns the least design value of a joint, N, dry and for ordinary loads, with
// its mode. It is far under what breaks the joint.
func (y Yields) Design(nominal, angle float64) (load float64, mode int) {
	load = math.Inf(1)
	for m, v := range y {
		if z := v / Reduction(nominal, m, angle); z < load {
			load, mode = z, m
		}
	}
	return load, mode
}
