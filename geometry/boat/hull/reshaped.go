package hull

import "ribwright/geometry/curve"

// drawn is the hull as designed under one that came out otherwise.
type drawn struct {
	hull *Hull
	keel curve.Func // how much higher the keel came out
}

func (d *drawn) keelZ(x float64) (z, slope float64) {
	z, slope = d.hull.KeelZ(x)
	more, steeper := d.keel(x)
	return z + more, slope + steeper
}

// Reshaped returns the hull as it came out: with another gunwale line, its keel
// higher by the given change, and its ends raised, mm. The change of the keel should
// reach the rise of each end at its toe. Sizes and sheer stay those of the design, and
// so do the shapes from which a section is made between the ribs.
func (h *Hull) Reshaped(gunwale *curve.Track, keel curve.Func, stern, bow float64) *Hull {
	out := *h
	out.Gunwale, out.drawn = gunwale, &drawn{h, keel}
	out.Stern, out.Bow = h.Stern.raised(stern), h.Bow.raised(bow)
	return &out
}

// raised returns the end so much higher. Its outer edge hangs on its toe.
func (e End) raised(by float64) End {
	e.Toe.Y += by
	e.GunwaleZ += by
	e.TopZ += by
	return e
}
