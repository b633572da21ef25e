package timber

import "math"

// MaxTensileStrain is the stretch, mm per mm, that the outer face of a steamed
// bend without a strap is allowed. Steam lets the inner face crush by 25 to 30 %
// but hardly helps the outer one, which breaks near 2 %; 0.015 is the cautious
// value. From memory of the Wood Handbook's chapter on bending, not read.
const MaxTensileStrain = 0.02

// Shares of the MOR for ColdRadius.
const (
	// AssemblyShare is for wood sprung in once: just under the limit of
	// proportion, 0.55 to 0.6 of the MOR. From memory.
	AssemblyShare = 0.5
	// LastingShare is for wood that stays stressed for years: it creeps, and
	// bears about 60 % as long as it does for minutes. From memory.
	LastingShare = 0.3
)

// NeutralRadius returns the radius in mm of the line in a steamed bend that
// keeps its length; sweep times this radius is the length of straight stock the
// bend uses up.
//
// How: up to maxStrain at the outer face the line runs at mid-thickness; in a
// tighter bend the outer face is held at maxStrain e and the rest is crushed,
//
//	Rn = max(Ri + t/2, (Ri + t) / (1 + e))
//
// Units: inner, the radius Ri of the inner face, and thickness t in mm.
// Requires: inner and thickness >= 0, maxStrain >= 0. maxStrain 0 stands for a
// strap with end stops: the result is the outer radius.
// Returns: mm; an infinite inner radius (straight) gives +Inf, NaN gives NaN.
// Accuracy: arithmetic on an assumed strain limit; no measured place of the line
// was found. The result never leaves the band from Ri + t/2 to Ri + t.
func NeutralRadius(inner, thickness, maxStrain float64) float64 {
	return math.Max(inner+thickness/2, (inner+thickness)/(1+maxStrain))
}

// BendCorrection returns how much longer, in mm, the neutral line of a steamed
// rib is than its mid-line, over one arc given at mid-thickness.
//
// How: sweep (Rn - R) with Rn from NeutralRadius at MaxTensileStrain e, which
// comes to sweep max(0, (t/2 - e R) / (1 + e)).
//
// Units: midRadius R and thickness t in mm, sweep in radians; the sense of the
// sweep does not matter.
// Requires: midRadius >= thickness/2, thickness >= 0.
// Returns: mm, >= 0. 0 from R = 25 t up, and for an infinite radius
// (straight) with a finite sweep. At most sweep t/2.
func BendCorrection(midRadius, thickness, sweep float64) float64 {
	// The short form, as Rn - R would be Inf - Inf for a straight run.
	const e = MaxTensileStrain
	return math.Abs(sweep) * math.Max(0, (thickness/2-e*midRadius)/(1+e))
}

// ColdRadius returns the radius in mm, at mid-thickness, to which dry wood is
// sprung when its faces reach the stress: E t / (2 sigma), from beam theory.
//
// Units: moe E and stress sigma in N/mm2, thickness t in mm, measured in the
// plane of the bend: use the width for edge-set.
// Requires: all > 0. A usual stress is the MOR times AssemblyShare or
// LastingShare.
// Returns: mm; +Inf for stress 0, NaN for NaN.
func ColdRadius(moe, thickness, stress float64) float64 { return moe * thickness / (2 * stress) }

// CompressionStrain returns how much the inner face shortens, mm per mm, when
// the outer face stretches by tensile.
//
// How: both faces turn through one angle, so (Ri + t)/Ri = (1 + et)/(1 - ec),
// ec = 1 - (1 + et) ratio/(ratio + 1), ratio = Ri/t. Arithmetic.
//
// Requires: ratio >= 0, tensile >= 0 (0 with a strap and end stops).
// Returns: a share, 1 at ratio 0. Below zero the inner face would stretch too:
// the bend is too slight to stretch the outer face by tensile.
func CompressionStrain(ratio, tensile float64) float64 {
	return 1 - (1+tensile)*ratio/(ratio+1)
}

// StrainRatio returns the inner radius over thickness at which the outer face
// stretches by tensile and the inner one shortens by compression: the inverse
// of CompressionStrain, (1 - ec)/(et + ec).
//
// Requires: tensile >= 0, 0 <= compression <= 1, both mm per mm.
// Returns: a ratio; +Inf (straight) when both are 0.
func StrainRatio(tensile, compression float64) float64 {
	return (1 - compression) / (tensile + compression)
}

// SteamMinutes returns how many minutes a piece of thickness mm >= 0 is steamed
// at 100 C: one hour for 25 mm, whatever the width. Common practice; twice as
// long makes the inner face wrinkle.
func SteamMinutes(thickness float64) float64 { return thickness * 60 / 25 }
