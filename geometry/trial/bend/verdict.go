// Package bend tells for every part of a frame whether the wood takes the bend
// that the design asks of it, how it is to be bent, how much room is left, and
// what would cost least if there is none.
//
// The limits of steamed bends are from memory, so every verdict on them is a
// reason for a test bend and not a promise. Stresses are those of beam theory in
// clear wood.
package bend

import (
	"ribwright/geometry/wood/timber"
)

// Verdict is what a part needs.
type Verdict string

// The verdicts, from the easiest.
const (
	Holds    Verdict = "holds"             // bears its load for years
	Dry      Verdict = "bends dry"         // and stays below what wood bears for years
	Eases    Verdict = "dry, eases"        // bends dry, and gives up part of its spring over the years
	Steam    Verdict = "steam"             // with room to spare
	Pick     Verdict = "steam, pick stock" // straight-grained, air-dried, moist
	Strap    Verdict = "needs a strap"     // with end stops
	TooTight Verdict = "too tight"         // breaks
	Weak     Verdict = "too weak"          // bears too much in place
)

// Finding is the verdict on one part.
type Finding struct {
	Part     string // "ribs F3-F5, bilge"
	Verdict  Verdict
	Pass     bool            // can be built with what the design says
	Value    float64         // what the part has: inner radius over thickness, or N/mm2
	Limit    float64         // what the verdict allows, in the same unit
	Unit     string          // "radius/thickness", "N/mm2", "mm"
	Margin   float64         // room over the limit as a share of it; below 0 when it does not hold
	Cure     string          // what costs least to make it hold, or to spare the steam; "" when nothing is needed
	Standing timber.Standing // of the limit
}

// ofBand puts a band into a verdict.
func ofBand(b timber.Band) Verdict {
	return [...]Verdict{TooTight, Strap, Pick, Steam, Dry}[b]
}

// harder returns the one of two verdicts that asks for more.
func harder(a, b Verdict) Verdict {
	order := []Verdict{Holds, Dry, Eases, Steam, Pick, Strap, TooTight, Weak}
	for _, v := range order {
		if v == a {
			return b
		}
		if v == b {
			return a
		}
	}
	return a
}

// passes reports whether a verdict can be built: a strap only where the design
// has one.
func passes(v Verdict, strap bool) bool {
	return v != TooTight && v != Weak && (v != Strap || strap)
}

// byRatio judges a steamed bend of the given inner radius over thickness.
func byRatio(part string, wood timber.Species, ratio float64, strap bool) Finding {
	f := Finding{Part: part, Verdict: ofBand(wood.Band(ratio)), Value: ratio, Unit: "radius/thickness", Limit: wood.FreeRatio, Standing: wood.Bending}
	if strap {
		f.Limit = wood.StrapRatio
	}
	if f.Verdict == Dry {
		f.Limit, f.Standing = wood.ColdRatio(), wood.Strength
	}
	f.Margin = f.Value/f.Limit - 1
	f.Pass = passes(f.Verdict, strap)
	return f
}

// steamed judges a bend that is steamed however slight it is.
func steamed(part string, wood timber.Species, ratio float64, strap bool) Finding {
	f := byRatio(part, wood, ratio, strap)
	if f.Verdict == Dry {
		f.Verdict, f.Limit, f.Standing = Steam, wood.FreeRatio, wood.Bending
		f.Margin = f.Value/f.Limit - 1
	}
	return f
}

// byStress judges a part bent dry and left so, by its stress in N/mm2; over is
// the verdict past half the MOR.
func byStress(part string, wood timber.Species, stress float64, over Verdict) Finding {
	f := Finding{Part: part, Verdict: Dry, Value: stress, Unit: "N/mm2", Limit: timber.LastingShare * wood.MOR, Standing: wood.Strength}
	if over == Weak {
		f.Verdict = Holds
	}
	if stress > f.Limit {
		f.Verdict, f.Limit = Eases, timber.AssemblyShare*wood.MOR
	}
	if !(stress <= f.Limit) {
		f.Verdict = over
	}
	f.Margin = f.Limit/f.Value - 1
	f.Pass = passes(f.Verdict, false)
	return f
}
