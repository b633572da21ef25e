package measure

import (
	"fmt"
	"math"
)

// Force letters a force, N, without its sign, as hands know it: to 5 N under 100 N, to
// 10 N above, with the weight that feels like it beside it, in kilograms (under 2 kg to
// the half) or pounds.
// Under 2.5 N it is "next to nothing".
func (s System) Force(newtons float64) string {
	n := math.Abs(newtons)
	step := 5.0
	if n >= 97.5 {
		step = 10
	}
	told := step * math.Round(n/step)
	if told == 0 {
		return "next to nothing"
	}
	kg := n / Gravity
	if s == Imperial {
		return fmt.Sprintf("%.0f N (%.0f lb)", told, math.Max(1, kg/Pound))
	}
	if kg < 2 {
		return fmt.Sprintf("%.0f N (%g kg)", told, math.Max(0.5, math.Round(2*kg)/2))
	}
	return fmt.Sprintf("%.0f N (%.0f kg)", told, kg)
}
