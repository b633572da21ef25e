package curve

import "math"

// Root returns a place between lo and hi at which f is nothing, to within tol or to the
// last bits, whichever is more. f has different signs at the two ends; where it has not,
// the end at which it is nearer to nothing is returned. Where f leaps from one sign to the
// other the leap is found.
//
// How: Chandrupatla's method, which puts a parabola through the last three places where
// that is safe and halves the way where it is not; the first step goes along the chord.
// Cost: five to ten calls for a smooth f, and never more than some three times as many as
// halving would need.
// Source: T. R. Chandrupatla, "A new hybrid quadratic/bisection algorithm for finding the
// zero of a nonlinear function without using derivatives", Advances in Engineering
// Software 28(3), 1997.
func Root(lo, hi, tol float64, f func(float64) float64) float64 {
	a, b := lo, hi // the place found last and the one on the other side of nothing
	fa, fb := f(a), f(b)
	if !(fa*fb < 0) {
		return nearer(a, b, fa, fb)
	}
	share := fa / (fa - fb) // of the way from a to b that is gone next
	for range 200 {
		at := a + share*(b-a)
		v := f(at)
		c, fc := a, fa // the place before
		if v > 0 != (fa > 0) {
			c, fc, b, fb = b, fb, a, fa
		}
		a, fa = at, v
		least := (math.Abs(nearer(a, b, fa, fb))*4e-16 + tol/2) / math.Abs(b-a)
		if fa == 0 || !(least < 0.5) {
			break
		}
		share = 0.5
		xi, phi := (a-b)/(c-b), (fa-fb)/(fc-fb)
		if phi*phi < xi && (1-phi)*(1-phi) < 1-xi {
			share = fa/(fb-fa)*fc/(fb-fc) + (c-a)/(b-a)*fa/(fc-fa)*fb/(fc-fb)
		}
		share = min(max(share, least), 1-least)
	}
	return nearer(a, b, fa, fb)
}

func nearer(a, b, fa, fb float64) float64 {
	if math.Abs(fb) < math.Abs(fa) {
		return b
	}
	return a
}
