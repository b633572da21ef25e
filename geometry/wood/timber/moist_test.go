package timber

import (
	"math"
	"testing"
)

// TestMoistureHours: a plane sheet is half done at 0.0492 l2/D and nine tenths at 0.213
// l2/D (J. Crank, The Mathematics of Diffusion); with the diffusivity from memory 8 mm
// take 9 and 38 hours. Against the series itself it is within 1 %.
func TestMoistureHours(t *testing.T) {
	for _, l := range []float64{5, 8, 12} {
		unit := l * l / Diffusivity / 3600
		near(t, MoistureHours(l, 0.5)/unit, 0.0492, 0.0005, "half")
		near(t, MoistureHours(l, 0.9)/unit, 0.2130, 0.0015, "nine tenths")
	}
	near(t, MoistureHours(8, 0.5), 8.75, 0.05, "h, half of 8 mm")
	near(t, MoistureHours(8, 0.9), 37.9, 0.4, "h, nine tenths of 8 mm")
	near(t, MoistureHours(8, 0), 0, 0, "h, nothing")
	near(t, MoistureHours(16, 0.7), 4*MoistureHours(8, 0.7), 1e-9, "h, twice as thick")
	last := 0.0
	for share := 0.02; share < 0.99; share += 0.02 {
		h := MoistureHours(10, share)
		if h < last-0.05 {
			t.Errorf("%.2f takes %.2f h, less than a smaller share", share, h)
		}
		last = h
		near(t, sheet(h*3600*Diffusivity/100), share, 0.005, "share by the series")
	}
}

// sheet is the share taken up by a plane sheet after the time T = D t / l2, by its series.
func sheet(t float64) float64 {
	left := 0.0
	for n := range 200 {
		odd := float64(2*n+1) * math.Pi
		left += 8 / (odd * odd) * math.Exp(-odd*odd*t)
	}
	return 1 - left
}

// TestSoakShare: from 14 to 23 % is 9 parts of the 16 to fiber saturation.
func TestSoakShare(t *testing.T) {
	near(t, SoakShare(14, 23), 9.0/16, 1e-12, "air-dried")
	near(t, SoakShare(7, FiberSaturation), 1, 1e-12, "all")
	near(t, SoakShare(30, 30), 0, 0, "green")
	near(t, SoakShare(30, 38), 0, 0, "wet")
	near(t, SoakShare(14, 12), 0, 0, "drier than bought")
}
