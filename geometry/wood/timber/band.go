package timber

// Band says how a bend of given tightness is made in given wood.
type Band int

// The bands, the tightest first.
const (
	TooTight  Band = iota // below the limit with a strap
	Strap                 // only with a strap and end stops
	Picked                // steamed, in selected stock
	Steamed               // steamed, easy
	SprungDry             // bent dry
)

// carefulRatio is the inner radius over thickness below which a steamed bend
// needs selected stock, 20: a professional bender's craft book, which puts "needs
// care" there.
const carefulRatio = 20.0

// Band returns the band of a bend with the given inner radius over thickness.
// At a limit itself the kinder band holds.
//
// How: below the strap limit too tight; from there to the free limit with a
// strap; to 20 in selected stock; to ColdRatio steamed; above that dry. Where the
// free limit lies over 20 there is no careful band. ColdRatio is a radius at
// mid-thickness, so the last edge is half a thickness on the safe side.
// Requires: ratio > 0; +Inf for a straight piece. NaN is too tight.
func (s Species) Band(ratio float64) Band {
	switch {
	case ratio >= s.ColdRatio():
		return SprungDry
	case ratio >= carefulRatio && ratio >= s.FreeRatio:
		return Steamed
	case ratio >= s.FreeRatio:
		return Picked
	case ratio >= s.StrapRatio:
		return Strap
	}
	return TooTight
}

// Strains returns how much the outer face of a bend stretches and the inner one
// shortens, mm per mm, at the given inner radius over thickness.
//
// How: a slight bend is elastic about mid-thickness, 1/(2 ratio + 1) on either
// face; past MaxTensileStrain the outer face is held there, and the inner one
// takes the rest. A strap keeps the outer face at 0.
// Requires: ratio >= 0.
func Strains(ratio float64, strap bool) (outer, inner float64) {
	if strap {
		return 0, CompressionStrain(ratio, 0)
	}
	if even := 1 / (2*ratio + 1); even <= MaxTensileStrain {
		return even, even
	}
	return MaxTensileStrain, CompressionStrain(ratio, MaxTensileStrain)
}

// FormRadius returns the radius in mm, at mid-thickness, of the form for a bend
// that is to end at radius mm and loses the share springback of its curvature
// when it comes off: radius (1 - springback).
//
// Requires: radius > 0, 0 <= springback < 1. Ribs dried on the form are commonly
// bent 5 to 10 % tighter, ribs only cooled on it 10 to 20 %; from memory.
func FormRadius(radius, springback float64) float64 { return radius * (1 - springback) }
