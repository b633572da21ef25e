// Package bend tells for every part of a frame whether the wood takes the bend
// that the design asks of it, how it is to be bent, how much room is left, and
// what would cost least if there is none.
//
// The limits of steamed bends are from memory, so every verdict on them is a
// reason for a test bend and not a promise. Stresses are those of beam theory in
// clear wood.
package bend

import (
	"ribwright/geometry/finding"
	"ribwright/geometry/wood/timber"
)

// The units of what is measured.
const (
	ratioUnit  = "radius/thickness" // inner radius
	stressUnit = "N/mm2"
)

// ofBand puts a band into a verdict; strap tells whether the design has one.
func ofBand(b timber.Band, strap bool) finding.Verdict {
	switch b {
	case timber.SprungDry:
		return finding.Dry
	case timber.Steamed:
		return finding.Steam
	case timber.Picked:
		return finding.Pick
	case timber.Strap:
		if strap {
			return finding.Strap
		}
		return finding.NoStrap
	}
	return finding.TooTight
}

// byRatio judges a steamed bend of the given inner radius over thickness.
func byRatio(part string, wood timber.Species, ratio float64, strap bool) finding.Finding {
	f := finding.Finding{About: part, Verdict: ofBand(wood.Band(ratio), strap), Standing: wood.Bending,
		Measure: finding.Measure{Value: ratio, Limit: wood.FreeRatio, Unit: ratioUnit}}
	if strap {
		f.Limit = wood.StrapRatio
	}
	if f.Verdict == finding.Dry {
		f.Limit, f.Standing = wood.ColdRatio(), wood.Strength
	}
	return f
}

// steamed judges a bend that is steamed however slight it is.
func steamed(part string, wood timber.Species, ratio float64, strap bool) finding.Finding {
	f := byRatio(part, wood, ratio, strap)
	if f.Verdict == finding.Dry {
		f.Verdict, f.Limit, f.Standing = finding.Steam, wood.FreeRatio, wood.Bending
	}
	return f
}

// byStress judges a part bent dry and left so, by its stress in N/mm2; over is
// the verdict past half the MOR.
func byStress(part string, wood timber.Species, stress float64, over finding.Verdict) finding.Finding {
	f := finding.Finding{About: part, Verdict: finding.Dry, Standing: wood.Strength,
		Measure: finding.Measure{Value: stress, Limit: timber.LastingShare * wood.MOR, Unit: stressUnit, AtMost: true}}
	if over == finding.Weak {
		f.Verdict = finding.Holds
	}
	if stress > f.Limit {
		f.Verdict, f.Limit = finding.Eases, timber.AssemblyShare*wood.MOR
	}
	if !(stress <= f.Limit) {
		f.Verdict = over
	}
	return f
}
