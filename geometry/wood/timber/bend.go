package timber

import "math"

// MaxTensileStrain is the stretch, mm per mm, that the outer face of a steamed
// bend without a strap is allowed. Steam lets the inner face crush by 25 to 30 %
// but hardly helps the outer one, which breaks near 2 %; 0.015 is the cautious
// value. From memory of the Wood Handbook's chapter on bending, not read.
const MaxTensileStrain = 0.02

// Shares of the MOR that dry wood is sprung to.
const (
	// AssemblyShare is for wood sprung in once: just under the limit of
	// proportion, 0.55 to 0.6 of the MOR. From memory.
	AssemblyShare = 0.5
	// LastingShare is for wood that stays stressed for years: it creeps, and
	// bears about 60 % as long as it does for minutes. From memory.
	LastingShare = 0.3
)

// BendCorrection returns how much longer, in mm, the neutral line of a steamed
// rib is than its mid-line, over one arc given at mid-thickness.
//
// How: up to the stretch e = MaxTensileStrain of the outer face the line that keeps
// its length runs at mid-thickness; in a tighter bend the outer face is held there
// and the rest is crushed: Rn = max(Ri + t/2, (Ri + t) / (1 + e)). The correction
// sweep (Rn - R) comes to sweep max(0, (t/2 - e R) / (1 + e)).
// Units: midRadius R and thickness t in mm, sweep in radians; the sense of the
// sweep does not matter.
// Requires: midRadius >= thickness/2, thickness >= 0.
// Returns: mm, >= 0. 0 from R = 25 t up, and for an infinite radius
// (straight) with a finite sweep. At most sweep t/2.
// Accuracy: arithmetic on an assumed strain limit; no measured place of the line
// was found.
func BendCorrection(midRadius, thickness, sweep float64) float64 {
	// The short form, as Rn - R would be Inf - Inf for a straight run.
	const e = MaxTensileStrain
	return math.Abs(sweep) * math.Max(0, (thickness/2-e*midRadius)/(1+e))
}

// CompressionStrain returns how much the inner face shortens, mm per mm, when
// the outer face stretches by tensile.
//
// How: both faces turn through one angle, so (Ri + t)/Ri = (1 + et)/(1 - ec),
// ec = 1 - (1 + et) ratio/(ratio + 1), ratio = Ri/t. Arithmetic.
// Requires: ratio >= 0, tensile >= 0 (0 with a strap and end stops).
// Returns: a share, 1 at ratio 0. Below zero the inner face would stretch too:
// the bend is too slight to stretch the outer face by tensile.
func CompressionStrain(ratio, tensile float64) float64 {
	return 1 - (1+tensile)*ratio/(ratio+1)
}

// SteamMinutes returns how many minutes a piece of thickness mm >= 0 is steamed
// at 100 C: one hour for 25 mm, whatever the width. Common practice; twice as
// long makes the inner face wrinkle.
func SteamMinutes(thickness float64) float64 { return thickness * 60 / 25 }

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
// when it comes off: radius (1 - springback). A bend made by hand is held as tight.
//
// Requires: radius > 0, 0 <= springback < 1. Ribs dried on the form are commonly
// bent 5 to 10 % tighter, ribs only cooled on it 10 to 20 %; from memory.
func FormRadius(radius, springback float64) float64 { return radius * (1 - springback) }

// SpringbackDoubt is by how much the share of springback may be off, either way, before
// the first rib of a board has been bent and measured. From memory; ribs of one board
// differ far less.
const SpringbackDoubt = 0.04

// ServiceMoisture is the moisture of wood under cover in use, and of the strength
// table, %.
const ServiceMoisture = 12.0

// LeastMoisture returns the moisture in % that stock should have for a bend of
// the band: 16 for a mild one, 23 for a severe one, 0 where it does not matter.
//
// Source: extension articles on bending, which give at least 16 % for mild bends
// and 23 to 25 % for severe ones.
func LeastMoisture(b Band) float64 {
	switch b {
	case Steamed:
		return 16
	case Picked, Strap:
		return 23
	}
	return 0
}

// dryStock is the moisture in % under which stock is steamed longer.
const dryStock = 20.0

// SteamTime returns how many minutes a piece is steamed at 100 C: SteamMinutes
// from 20 % of moisture up, at least 30 minutes for 10 mm when it is drier, or was dried
// in a kiln, however long it has been soaked since.
//
// Units: thickness mm >= 0, moisture %.
// Source: the shop rule; the longer time from memory of the Wood Handbook, and for
// kiln-dried stock of J. Ilic on bending. About twice the time makes the inner face
// wrinkle.
func SteamTime(thickness, moisture float64, kiln bool) float64 {
	if moisture >= dryStock && !kiln {
		return SteamMinutes(thickness)
	}
	return math.Max(SteamMinutes(thickness), 3*thickness)
}

// Shrink returns by how much a piece of the given size in mm across the grain
// shrinks when it dries from one moisture to another, %: size times coefficient
// times the difference. Negative when it takes up moisture.
//
// Source: Wood Handbook, chapter on moisture; good between 6 and 25 %.
func Shrink(size, coefficient, from, to float64) float64 {
	return size * coefficient * (from - to)
}
