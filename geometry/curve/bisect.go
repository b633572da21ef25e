package curve

// Bisect returns the place in [lo, hi] where below turns from true to false, to
// the last bit: eighty halvings leave nothing of any span. It returns hi when
// below holds everywhere, and lo, to a 2^-80th of the span, when it holds nowhere.
func Bisect(lo, hi float64, below func(float64) bool) float64 {
	for range 80 {
		mid := lo + (hi-lo)/2
		if below(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi
}
