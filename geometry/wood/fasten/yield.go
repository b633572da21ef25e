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

// Yields are the loads in N at which a joint yields in each mode; +Inf for a mode that
// it does not have.
type Yields [modes]float64

// Least returns the lowest load and its mode.
func (y Yields) Least() (load float64, mode int) {
	for m, v := range y {
		if v < y[mode] {
			mode = m
		}
	}
	return y[mode], mode
}

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

// Double returns the yields of a main piece between two side pieces alike.
func Double(r Rod, side, main Piece) Yields {
	y := Single(r, side, main)
	none := math.Inf(1)
	return Yields{Im: y[Im], Is: 2 * y[Is], II: none, IIIm: none, IIIs: 2 * y[IIIs], IV: 2 * y[IV]}
}

// Wet is the share of a lateral or a withdrawal value that is left in wood that is wet
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

// SingleEC5 returns the six values a to f of a joint in single shear by Eurocode 5
// (8.6), N, without the rope effect: pieces 1 and 2, the rod's diameter in mm and its
// yield moment in N mm.
func SingleEC5(one, two Piece, diameter, moment float64) [6]float64 {
	f1, d, t1, t2 := one.Bearing, diameter, one.Length, two.Length
	b := two.Bearing / f1
	r := t2 / t1
	bent := func(t float64) float64 { return moment / (f1 * d * t * t) }
	return [6]float64{
		f1 * t1 * d,
		two.Bearing * t2 * d,
		f1 * t1 * d / (1 + b) * (math.Sqrt(b+2*b*b*(1+r+r*r)+b*b*b*r*r) - b*(1+r)),
		1.05 * f1 * t1 * d / (2 + b) * (math.Sqrt(2*b*(1+b)+4*b*(2+b)*bent(t1)) - b),
		1.05 * f1 * t2 * d / (1 + 2*b) * (math.Sqrt(2*b*b*(1+b)+4*b*(1+2*b)*bent(t2)) - b),
		1.15 * math.Sqrt(2*b/(1+b)) * math.Sqrt(2*moment*f1*d),
	}
}
