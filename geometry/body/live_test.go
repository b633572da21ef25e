package body

import (
	"math"
	"testing"
)

// TestChildrenMeetTheSurvey: at the women's 5th percentile of mass a child's measures run
// into the survey's: sitting height 803 mm (ANSUR II, read), hips of the median woman 397
// mm; and shares of grown people are the survey's.
func TestChildrenMeetTheSurvey(t *testing.T) {
	if got := SittingShare(StatureOf(Grown)) * StatureOf(Grown); math.Abs(got-803) > 3 {
		t.Errorf("sitting height %.1f mm at %.1f kg, the survey has 803", got, Grown)
	}
	if got := HipsOf(66.8); math.Abs(got/397-1) > 0.03 {
		t.Errorf("hips of %.0f mm at 66.8 kg, the survey's median is 397", got)
	}
	if StatureOf(80) != StatureOf(Grown) || SittingShare(1750) != GrownSitting || HeadHeavy(1750) != 0 {
		t.Error("grown people differ")
	}
}

// TestChildrenGrow: a heavier child is taller, sits higher and is broader; its sitting
// height is a smaller share of its stature. From memory of growth charts: 0.6 at birth to
// 0.52 grown.
func TestChildrenGrow(t *testing.T) {
	sits := func(kg float64) float64 { return SittingShare(StatureOf(kg)) * StatureOf(kg) }
	for kg := 3.0; kg < 51; kg++ {
		a, b := StatureOf(kg), StatureOf(kg+1)
		if b < a || sits(kg+1) < sits(kg) || SittingShare(b) > SittingShare(a) || HipsOf(kg+1) <= HipsOf(kg) {
			t.Errorf("%.0f and %.0f kg: %.0f and %.0f mm", kg, kg+1, a, b)
		}
		if s := SittingShare(a); s < 0.52 || s > 0.6 {
			t.Errorf("%.0f kg: sitting height is %.3f of the stature", kg, s)
		}
	}
	for mm, want := range map[float64]float64{1100: 0.55, 800: 0.58} { // at five years and at two
		if got := SittingShare(mm); math.Abs(got-want) > 0.01 {
			t.Errorf("%.0f mm of child sit %.3f of it high, want %.2f", mm, got, want)
		}
	}
	if d := Shoulder(30); d < 550 || d > 620 { // a retriever's standard: 560 to 620 mm
		t.Errorf("a dog of 30 kg stands %.0f mm", d)
	}
	if !(DogLying < DogStanding && DogWide(30) < DogLong(30)) {
		t.Error("a dog lies lower than it stands and is longer than wide")
	}
}
