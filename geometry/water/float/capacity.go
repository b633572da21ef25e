package float

import "math"

// Capacity returns how many times the payload leaves the given least freeboard,
// mm, with the boat's own weight as it is: 1.2 says a fifth more of everything,
// each where it lies. It is zero when the boat alone leaves less.
func (h *Hull) Capacity(boat, payload Load, density, freeboard float64) float64 {
	leaves := func(k float64) bool {
		part := payload
		part.Mass *= k
		p, _, err := h.Balance(Total(boat, part), density, 0, nil)
		return err == nil && h.Freeboard(p).Least >= freeboard
	}
	if !leaves(0) && !leaves(1e-6) {
		return 0
	}
	lo, hi := 0.0, 1.0
	for leaves(hi) && hi < 1e6 {
		lo, hi = hi, 2*hi
	}
	for range 40 {
		if mid := (lo + hi) / 2; leaves(mid) {
			lo = mid
		} else {
			hi = mid
		}
		if hi-lo < 1e-9*math.Max(1, hi) {
			break
		}
	}
	return lo
}
